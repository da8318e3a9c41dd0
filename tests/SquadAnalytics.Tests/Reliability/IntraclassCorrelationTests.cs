using CsCheck;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Reliability;

public sealed class IntraclassCorrelationTests
{
    private static readonly IntraclassCorrelationOptions All = new() { Selection = SelectionOptions.KeepAll };

    [Fact]
    public void The_correlations_of_eight_athletes_match_R()
    {
        // R 4.2.2: psych::ICC(w, lmer = FALSE) of eight athletes by four tests.
        var result = IntraclassCorrelation.Fit(WorkedData.EightAthletes, All).GetOrThrow();
        Assert.Equal(0.982770, result.OneWay.Value, 5e-7);
        Assert.Equal(0.982804, result.Agreement.Value, 5e-7);
        Assert.Equal(0.933834, result.Agreement.Lower!.Value, 5e-7);
        Assert.Equal(0.996359, result.Agreement.Upper!.Value, 5e-7);
        Assert.Equal(0.990656, result.Consistency.Value, 5e-7);
        Assert.Equal(0.972640, result.Consistency.Lower!.Value, 5e-7);
        Assert.Equal(0.997890, result.Consistency.Upper!.Value, 5e-7);
        Assert.Equal(26.259639, result.BetweenAthletes.GetOrThrow().Value, 5e-7);
        Assert.Equal(ReliabilityWord.Excellent, result.Word);
        Assert.Equal("ICC(A,1)", result.Agreement.Method);
    }

    [Theory]
    [InlineData("shrout_fleiss")]
    [InlineData("weir_a")]
    [InlineData("generated_12x4")]
    [InlineData("peakflow_wright")]
    public void Every_form_of_the_published_tables_matches_R(string item)
    {
        var result = IntraclassCorrelation.FitTable(ReferenceTable.Load(item), ConfidenceLevel.NinetyFive).GetOrThrow();
        foreach (var row in ReferenceData.Values("reliability", item, "icc").EnumerateArray())
        {
            var form = row.GetProperty("form").GetString();
            var got = form switch
            {
                "ICC(1,1)" => result.OneWay,
                "ICC(2,1)" => result.Agreement,
                "ICC(3,1)" => result.Consistency,
                "ICC(1,k)" => result.OneWayOfMean,
                "ICC(2,k)" => result.AgreementOfMean,
                _ => result.ConsistencyOfMean,
            };
            ReferenceData.AssertClose(row.GetProperty("icc").GetDouble(), got.Value, 1e-9, what: $"{item} {form}");
            ReferenceData.AssertClose(row.GetProperty("lower").GetDouble(), got.Lower!.Value, 1e-9, what: $"{item} {form} lower");
            ReferenceData.AssertClose(row.GetProperty("upper").GetDouble(), got.Upper!.Value, 1e-9, what: $"{item} {form} upper");
        }
    }

    [Theory]
    [InlineData("shrout_fleiss")]
    [InlineData("weir_a")]
    [InlineData("generated_12x4")]
    [InlineData("peakflow_wright")]
    public void The_standard_error_of_measurement_depends_on_the_form(string item)
    {
        // R 4.2.2: sd(value) * sqrt(1 - ICC) for the forms (1,1), (2,1), (3,1); the typical error equals it only approximately.
        var table = ReferenceTable.Load(item);
        var result = IntraclassCorrelation.FitTable(table, ConfidenceLevel.NinetyFive).GetOrThrow();
        var expected = ReferenceData.Values("reliability", item, "sem_from_icc");
        var deviation = Descriptive.StandardDeviation([.. table.SelectMany(row => row)]);
        ReferenceData.AssertClose(expected.GetProperty("sd_all").GetDouble(), deviation, 1e-9);
        Estimate[] forms = [result.OneWay, result.Agreement, result.Consistency];
        for (var form = 0; form < 3; form++) ReferenceData.AssertClose(expected.GetProperty("sem")[form].GetDouble(), deviation * Math.Sqrt(1 - forms[form].Value), 1e-9);
    }

    [Fact]
    public void A_negative_estimate_is_shown_as_zero_and_said()
    {
        var result = IntraclassCorrelation.FitTable([[1, 5], [5, 1], [2, 4], [4, 2], [3.1, 3]], ConfidenceLevel.NinetyFive).GetOrThrow();
        Assert.Equal(0, result.Consistency.Value);
        Assert.Contains(result.Consistency.Notes, note => note.StartsWith("Negative variance component", StringComparison.Ordinal));
        Assert.Equal(Refusal.NegativeVarianceComponent, result.BetweenAthletes.Refusal!.Reason);
        Assert.Equal(ReliabilityWord.Poor, result.Word);
    }

    [Fact]
    public void Four_athletes_or_one_test_are_refused()
    {
        Assert.Equal("Not enough data for the intraclass correlation: needs 5 athletes with every test, has 4 athletes with every test.",
            IntraclassCorrelation.Fit(WorkedData.Weekly([300, 301], [310, 312], [320, 321], [330, 332], [340, double.NaN]), All).ToString());
        Assert.Equal(Refusal.TooFewSessions, IntraclassCorrelation.Fit(WorkedData.Weekly([300], [310], [320], [330], [340]), All).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => IntraclassCorrelation.FitTable([[1, 2], [1, 2, 3]], ConfidenceLevel.NinetyFive));
    }

    [Fact]
    public void A_squad_that_differs_far_less_than_its_noise_still_has_limits()
    {
        // R 4.2.2, McGraw and Wong's formulas: df 2.783234e-03, so qf(.975, 6, df) is Inf; the limit of the lower one is -I MSE / (k MSC + (kI - k - I) MSE); the upper one is -0.4220475.
        double[][] table = [[285.908078234324, 337, 343], [315, 295, 350.25], [337.341215136806, 31855.0 / 97, 3198.0 / 11], [302, 284, 373], [292.08855328270045, 323.3323335943236, 27463.0 / 78], [335.8, 19217.0 / 67, 339.76], [354.84182378351034, 298, 318]];
        var agreement = IntraclassCorrelation.FitTable(table, ConfidenceLevel.NinetyFive).GetOrThrow().Agreement;
        Assert.Equal(-7 * 915.1257 / (3 * 1703.905 + 11 * 915.1257), agreement.Lower!.Value, 1e-5);
        Assert.Equal(-0.4220475, agreement.Upper!.Value, 1e-6);
    }

    [Fact]
    public void Shift_scale_and_order_leave_the_correlations_unchanged() =>
        Gen.Select(Gen.Double[280, 380].Array[3].Array[5, 9], Gen.Double[1, 40], Gen.Double[0.2, 5]).Sample((table, shift, factor) =>
        {
            var before = IntraclassCorrelation.FitTable(table, ConfidenceLevel.NinetyFive).GetOrThrow();
            var after = IntraclassCorrelation.FitTable([.. table.Reverse().Select(row => row.Select(value => factor * value + shift).ToArray())], ConfidenceLevel.NinetyFive).GetOrThrow();
            Assert.Equal(before.Agreement.Value, after.Agreement.Value, 1e-9);
            Assert.Equal(before.Consistency.Value, after.Consistency.Value, 1e-9);
        });
}

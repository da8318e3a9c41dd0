using System.Text.Json;
using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Reliability;

/// <summary>What else R 4.2.2 says of the published reliability tables; calls and tolerances stand in tests/Reference/reliability.</summary>
public sealed class PublishedTablesTests
{
    private static readonly TypicalErrorOptions All = new() { Selection = SelectionOptions.KeepAll, Level = ConfidenceLevel.NinetyFive };

    public static TheoryData<string> Tables => ["shrout_fleiss", "weir_a", "generated_12x4", "peakflow_wright"];

    public static TheoryData<string> Pairs => ["weir_a", "peakflow_wright", "peakflow_methods"];

    [Theory]
    [MemberData(nameof(Tables))]
    public void Both_analyses_of_variance_match_R(string item)
    {
        var table = ReferenceTable.Load(item);
        double[] values = [.. table.SelectMany(row => row)];
        string[] subjects = [.. table.SelectMany((row, subject) => row.Select(_ => $"s{subject:00}"))];
        string[] trials = [.. table.SelectMany(row => row.Select((_, trial) => $"t{trial}"))];
        var two = TwoWayAnova.Fit(values, subjects, trials).GetOrThrow();
        AnovaRow[] rows = [two.Rows, two.Columns, two.Residual];
        foreach (var (index, expected) in ReferenceData.Values("reliability", item, "two_way").EnumerateArray().Index()) Same(expected, rows[index], item);
        var one = OneWayAnova.Fit(values, subjects).GetOrThrow();
        rows = [one.Between, one.Within];
        foreach (var (index, expected) in ReferenceData.Values("reliability", item, "one_way").EnumerateArray().Index()) Same(expected, rows[index], item);

        // The F of every form is one of the two analyses'.
        foreach (var form in ReferenceData.Values("reliability", item, "icc").EnumerateArray())
        {
            var (tested, residual) = form.GetProperty("form").GetString()!.StartsWith("ICC(1", StringComparison.Ordinal) ? (one.Between, one.Within) : (two.Rows, two.Residual);
            ReferenceData.AssertClose(form.GetProperty("f").GetDouble(), tested.F!.Value, 1e-9, what: $"{item} F");
            ReferenceData.AssertClose(form.GetProperty("p").GetDouble(), tested.PValue!.Value, 1e-9, what: $"{item} p");
            Assert.Equal((form.GetProperty("df1").GetInt32(), form.GetProperty("df2").GetInt32()), (tested.DegreesOfFreedom, residual.DegreesOfFreedom));
        }
    }

    [Theory]
    [MemberData(nameof(Tables))]
    public void Trial_means_and_the_spread_between_athletes_match_R(string item)
    {
        var table = ReferenceTable.Load(item);
        foreach (var expected in ReferenceData.Values("reliability", item, "trial_means").EnumerateArray())
        {
            double[] trial = [.. table.Select(row => row[expected.GetProperty("trial").GetInt32() - 1])];
            ReferenceData.AssertClose(expected.GetProperty("mean").GetDouble(), Descriptive.Mean(trial), 1e-12);
            ReferenceData.AssertClose(expected.GetProperty("sd").GetDouble(), Descriptive.StandardDeviation(trial), 1e-12);
        }

        var seconds = IntraclassCorrelation.FitTable(table, ConfidenceLevel.NinetyFive).GetOrThrow();
        var logs = IntraclassCorrelation.FitTable([.. table.Select(row => row.Select(value => Math.Log(value)).ToArray())], ConfidenceLevel.NinetyFive).GetOrThrow();
        void Between(string block, double got, double worthwhile)
        {
            var expected = ReferenceData.Values("reliability", item, block);
            ReferenceData.AssertClose(expected.GetProperty("pure_between_subject_sd").GetDouble(), got, 1e-9);
            ReferenceData.AssertClose(expected.GetProperty("smallest_worthwhile_change_0.2_between").GetDouble(), worthwhile, 1e-9);
        }

        Between("typical_error_all_trials", seconds.BetweenAthletes.GetOrThrow().Value, SmallestWorthwhileChange.FromSquadSpread(seconds).GetOrThrow().Estimate.Value);
        var log = logs.BetweenAthletes.GetOrThrow().Value;
        Between("typical_error_percent_all_trials", Percent.FromLog(log).Value, Percent.FromLog(0.2 * log).Value);
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Change_typical_error_and_repeatability_of_pairs_match_R(string item)
    {
        var (first, second) = Pair(item);
        var change = TTest.Paired(first, second).GetOrThrow();
        var interval = change.Interval(ConfidenceLevel.NinetyFive);
        var expected = ReferenceData.Values("reliability", item, "change_in_mean");
        Number(expected, "mean", change.Value);
        Number(expected, "lower95", interval.Lower);
        Number(expected, "upper95", interval.Upper);
        Number(expected, "t", change.T!.Value);
        Number(expected, "df", change.DegreesOfFreedom);
        Number(expected, "p", change.PValue!.Value);

        var error = TypicalError.Fit(WorkedData.Weekly([.. first.Zip(second, (a, b) => new[] { a, b })]), All).GetOrThrow();
        expected = ReferenceData.Values("reliability", item, "typical_error");
        Number(expected, "n", first.Length);
        Number(expected, "typical_error", error.Estimate.Value);
        Number(expected, "lower95", error.Estimate.Lower!.Value);
        Number(expected, "upper95", error.Estimate.Upper!.Value);
        Number(expected, "sd_diff", Math.Sqrt(2) * error.Estimate.Value);
        foreach (var (name, factor) in new[] { ("mdc95", DetectionFactor.Conventional), ("mdc95_exact_z", DetectionFactor.Normal), ("mdc95_t", DetectionFactor.StudentT) })
            Number(expected, name, MinimalDetectableChange.Fit(error, new MinimalDetectableChangeOptions { Factor = factor }).Value);
        expected = ReferenceData.Values("reliability", item, "typical_error_percent");
        var log = Math.Log(1 + error.Variation.GetOrThrow().Value / 100);
        Number(expected, "cv_percent", error.Variation.GetOrThrow().Value);
        Number(expected, "lower95", error.Variation.GetOrThrow().Lower!.Value);
        Number(expected, "upper95", error.Variation.GetOrThrow().Upper!.Value);
        Number(expected, "log_typical_error", log);
        Number(expected, "sd_log_diff", Math.Sqrt(2) * log);
        Number(expected, "mdc95_percent", Percent.FromLog(1.96 * Math.Sqrt(2) * log).Value);
        Number(expected, "change_in_mean_percent", Percent.FromLog(TTest.Paired([.. first.Select(value => Math.Log(value))], [.. second.Select(value => Math.Log(value))]).GetOrThrow().Value).Value);

        // Two other back-transformations that stand in the pack: not used here, and near enough to be mistaken for ours.
        Number(expected, "cv_percent_100_times_log_te", 100 * log);
        Number(expected, "cv_percent_lognormal_sqrt", 100 * Math.Sqrt(Math.Exp(log * log) - 1));

        var repeatability = Repeatability.FitPairs(first, second).GetOrThrow();
        Number(ReferenceData.Values("reliability", item, "within_subject_cv_root_mean_square"), "cv_percent", repeatability.Relative.GetOrThrow().Value);
        expected = ReferenceData.Values("reliability", item, "repeatability");
        Number(expected, "sw", repeatability.WithinAthlete.Value);
        Number(expected, "coefficient_1.96", repeatability.Coefficient.Value);
        Number(expected, "coefficient_2_rms", 2 * Math.Sqrt(2) * repeatability.WithinAthlete.Value);
        Number(expected, "coefficient_2_sd", 2 * Math.Sqrt(2) * error.Estimate.Value);

        var limits = LimitsOfAgreement.FitPairs(first, second, ConfidenceLevel.NinetyFive).GetOrThrow();
        expected = ReferenceData.Values("reliability", item, "limits_of_agreement");
        Number(expected, "se_limit_1999", limits.LimitError.Value);
        Number(expected, "lower_2sd", limits.Bias.Value - 2 * limits.Deviation.Value);
        Number(expected, "upper_2sd", limits.Bias.Value + 2 * limits.Deviation.Value);

        var correlation = PearsonCorrelation.Fit(first, second).GetOrThrow();
        expected = ReferenceData.Values("reliability", item, "correlation");
        Number(expected, "r", correlation.R);
        Number(expected, "p", correlation.PValue);
        var limitsOfR = correlation.Interval(ConfidenceLevel.NinetyFive)!.Value;
        Number(expected, "lower95", limitsOfR.Lower);
        Number(expected, "upper95", limitsOfR.Upper);
    }

    [Theory]
    [InlineData("weir_a")]
    [InlineData("peakflow_wright")]
    public void Chances_with_a_known_error_are_those_of_the_normal_distribution(string item)
    {
        // With 10^9 degrees of freedom the typical error is known and t is the normal distribution to the tolerance.
        var expected = ReferenceData.Values("reliability", item, "individual_change");
        var error = TypicalError.Entered(new Seconds(expected.GetProperty("typical_error").GetDouble()), 1_000_000_000, "known");
        var worthwhile = SmallestWorthwhileChange.Entered(new Seconds(expected.GetProperty("swc").GetDouble()));
        var (first, second) = Pair(item);
        foreach (var subject in expected.GetProperty("subjects").EnumerateArray())
        {
            var index = subject.GetProperty("subject").GetInt32() - 1;
            var chances = AthleteChange.Between([WorkedData.Total(first[index])], [WorkedData.Total(second[index], 1)], error, worthwhile, new AthleteChangeOptions { IncludeChances = true, Selection = SelectionOptions.KeepAll }).GetOrThrow().Chances!;
            ReferenceData.AssertClose(subject.GetProperty("p_above_z").GetDouble(), chances.Slower.Value, 1e-7, 1e-8);
            ReferenceData.AssertClose(subject.GetProperty("p_below_z").GetDouble(), chances.Faster.Value, 1e-7, 1e-8);
        }
    }

    [Fact]
    public void Repeatability_of_two_pairs_or_around_zero_is_refused()
    {
        Assert.Equal(Refusal.TooFewPairs, Repeatability.FitPairs([1, 2], [1, 2]).Refusal!.Reason);
        Assert.Equal(Refusal.NotComparable, Repeatability.FitPairs([-1, 2, 3], [1, 2, 3]).GetOrThrow().Relative.Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => Repeatability.FitPairs([1, 2, 3], [1, 2]));
    }

    private static (double[] First, double[] Second) Pair(string item)
    {
        if (item == "peakflow_methods") return (ReferenceData.Column("reliability", "peakflow_methods.csv", "mini"), ReferenceData.Column("reliability", "peakflow_methods.csv", "wright"));
        var table = ReferenceTable.Load(item);
        return ([.. table.Select(row => row[0])], [.. table.Select(row => row[1])]);
    }

    private static void Number(ReferenceValue expected, string name, double got) => ReferenceData.AssertClose(expected.GetProperty(name).GetDouble(), got, 1e-9, what: name);

    private static void Same(ReferenceValue expected, AnovaRow row, string item)
    {
        Assert.Equal(expected.GetProperty("Df").GetInt32(), row.DegreesOfFreedom);
        ReferenceData.AssertClose(expected.GetProperty("Sum Sq").GetDouble(), row.SumOfSquares, 1e-10, what: $"{item} {row.Term} sum");
        ReferenceData.AssertClose(expected.GetProperty("Mean Sq").GetDouble(), row.MeanSquare!.Value, 1e-10, what: $"{item} {row.Term} mean");
        if (expected.GetProperty("F value").ValueKind == JsonValueKind.Null)
        {
            Assert.Equal(JsonValueKind.Null, expected.GetProperty("Pr(>F)").ValueKind);
            Assert.Equal((null, null), (row.F, row.PValue));
            return;
        }

        ReferenceData.AssertClose(expected.GetProperty("F value").GetDouble(), row.F!.Value, 1e-10, what: $"{item} {row.Term} F");
        ReferenceData.AssertClose(expected.GetProperty("Pr(>F)").GetDouble(), row.PValue!.Value, 1e-9, what: $"{item} {row.Term} p");
    }
}

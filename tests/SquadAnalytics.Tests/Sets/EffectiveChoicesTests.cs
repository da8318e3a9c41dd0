using SquadAnalytics.Sets;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Sets;

public sealed class EffectiveChoicesTests
{
    private static readonly ConfidenceLevel Ninety = ConfidenceLevel.Ninety;

    public static TheoryData<string, int, int, double, double> Simulated => new()
    {
        { "late", 6, 6, 0.90, 4.166 },
        { "late", 6, 6, 0.95, 4.434 },
        { "late", 6, 20, 0.90, 3.884 },
        { "late", 5, 6, 0.90, 3.429 },
        { "kink", 6, 6, 0.90, 4.514 },
        { "kink", 6, 6, 0.95, 4.721 },
        { "kink", 5, 6, 0.90, 3.568 },
        { "slope", 6, 6, 0.90, 4.602 },
    };

    [Theory]
    [MemberData(nameof(Simulated))]
    public void Related_contrasts_are_worth_fewer_choices_than_their_number(string family, int sets, int sessions, double level, double expected)
    {
        // R 4.2.2, 1,000,000 draws (set.seed(11)): m rows of rnorm(n) times the weights, q <- quantile(max |mean / (sd / sqrt(m))| over b, level), (1 - level) / 2 / pt(q, m - 1, lower = FALSE).
        // With 20,000 draws the share beyond q has a standard error of 2 % at 90 % and of 3 % at 95 %.
        var choices = EffectiveChoices.Of(Contrasts.Every(sets, Weights(family)), sessions, new ConfidenceLevel(level));
        ReferenceData.AssertClose(expected, choices, level < 0.95 ? 0.05 : 0.08);
    }

    [Fact]
    public void Contrasts_that_are_the_same_but_for_a_factor_leave_no_choice()
    {
        // By hand: with three sets the kink after set 1 is the one after set 2 with its sign turned, (-1/2, 1, -1/2); n/2 times the slope is the same after every set.
        Assert.Equal(1, EffectiveChoices.Of(Contrasts.Every(3, Contrasts.Kink), 6, Ninety));
        Assert.Equal(1, EffectiveChoices.Of(Contrasts.Every(6, Contrasts.Line), 6, Ninety));
    }

    [Fact]
    public void Two_unrelated_contrasts_are_nearly_two_choices()
    {
        // Sidak 1967, J Am Stat Assoc 62:626-633 (from memory): two independent t hold together with (1 - p)^2 = 0.90, p = 1 - sqrt(0.90) = 0.0513167, 0.10 / p = 1.94868.
        ReferenceData.AssertClose(1.94868, EffectiveChoices.Of([[1, -1, 0, 0], [0, 0, 1, -1]], 12, Ninety), 0.05);
    }

    [Fact]
    public void From_thirty_sessions_on_the_number_stays()
    {
        double[][] weights = Contrasts.Every(5, Contrasts.Late);
        Assert.Equal(EffectiveChoices.Of(weights, 30, Ninety), EffectiveChoices.Of(weights, 300, Ninety));
    }

    [Fact]
    public void Limits_of_a_set_found_by_searching_are_those_of_all_sets_together()
    {
        // The definition: mean ± t quantile at α / 2 / choices times the standard error.
        var found = LateSlowdown.Fit(WorkedData.SixSessions, new LateSlowdownOptions { Scale = Scale.Seconds, Selection = SelectionOptions.KeepAll }).GetOrThrow();
        Assert.Equal(BreakChoice.FoundBySearch, found.Choice);
        AssertReach(found.LateContrast, Contrasts.Late);
        AssertReach(found.KinkContrast, Contrasts.Kink);

        static void AssertReach(Estimate contrast, Func<int, int, double[]> weights)
        {
            var choices = EffectiveChoices.Of(Contrasts.Every(5, weights), 6, Ninety);
            Assert.Equal(StudentTDistribution.UpperQuantile(0.05 / choices, 5) * contrast.StandardError!.Value, contrast.Interval!.Value.HalfWidth, 1e-9);
            Assert.InRange(contrast.Interval.Value.HalfWidth, StudentTDistribution.UpperQuantile(0.05 / 2, 5) * contrast.StandardError.Value, StudentTDistribution.UpperQuantile(0.05 / 4, 5) * contrast.StandardError.Value);
        }
    }

    private static Func<int, int, double[]> Weights(string family) => family switch { "late" => Contrasts.Late, "kink" => Contrasts.Kink, _ => Contrasts.SlopeBesideStep };
}

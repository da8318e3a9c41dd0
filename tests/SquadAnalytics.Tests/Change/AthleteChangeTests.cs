using CsCheck;
using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Tests.Change;

public sealed class AthleteChangeTests
{
    private static readonly AthleteChangeOptions All = new() { Selection = SelectionOptions.KeepAll, IncludeChances = true };
    private static readonly TypicalErrorResult Noise = TypicalError.Fit(WorkedData.EightAthletes, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
    private static readonly SmallestWorthwhileChange Five = SmallestWorthwhileChange.Entered(new Seconds(5));

    [Fact]
    public void A_clear_improvement_is_called_worthwhile()
    {
        // R 4.2.2: d <- 355.0 - 367.9; se <- 2.5502713 * sqrt(2); d + c(-1, 1) * qt(.95, 21) * se; pt((-5 - d) / se, 21); 1 - pt((5 - d) / se, 21).
        var change = FirstToLast("B7").GetOrThrow();
        Assert.Equal(-12.9, change.Change.Value, 1e-9);
        Assert.Equal(3.606628, change.Change.StandardError!.Value, 5e-7);
        Assert.Equal(-19.10608, change.Change.Lower!.Value, 5e-6);
        Assert.Equal(-6.69392, change.Change.Upper!.Value, 5e-6);
        Assert.Equal(21, change.Change.DegreesOfFreedom);
        Assert.Equal(ChangeVerdict.FasterWorthwhile, change.Verdict);
        Assert.Equal(0.980040, change.Chances!.Faster.Value, 5e-7);
        Assert.Equal(0.019927, change.Chances.Trivial.Value, 5e-7);
        Assert.Equal(0.0000327, change.Chances.Slower.Value, 5e-8);
        Assert.Equal(0.0017788, change.Change.PValue!.Value, 5e-8);
        Assert.Equal(0.0199596, change.FasterThanWorthwhilePValue.Value, 5e-8);
    }

    [Fact]
    public void An_unclear_change_is_not_called_anything()
    {
        // R 4.2.2: the same for 317.3 - 320.5; TOST p = max of the two one-sided p-values against ±5.
        var change = FirstToLast("B8").GetOrThrow();
        Assert.Equal(-3.2, change.Change.Value, 1e-9);
        Assert.Equal(-9.40608, change.Change.Lower!.Value, 5e-6);
        Assert.Equal(3.00608, change.Change.Upper!.Value, 5e-6);
        Assert.Equal(ChangeVerdict.NotClear, change.Verdict);
        Assert.Equal(0.31146, change.EquivalencePValue.Value, 5e-6);
        Assert.Equal(0.311455, change.Chances!.Faster.Value, 5e-7);
        Assert.Equal(0.671742, change.Chances.Trivial.Value, 5e-7);
        Assert.Equal(0.016803, change.Chances.Slower.Value, 5e-7);
        Assert.Equal(ChangeVerdict.NoWorthwhileChange, change.VerdictAtDouble);
    }

    [Theory]
    [InlineData("weir_a")]
    [InlineData("peakflow_wright")]
    public void The_change_of_each_published_subject_matches_R(string item)
    {
        var sessions = Reliability.ReferenceTable.Sessions(Reliability.ReferenceTable.Load(item));
        var noise = TypicalError.Fit(sessions, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
        var expected = ReferenceData.Values("reliability", item, "individual_change");
        var worthwhile = SmallestWorthwhileChange.Entered(new Seconds(expected.GetProperty("swc").GetDouble()));
        var subject = 0;
        foreach (var row in expected.GetProperty("subjects").EnumerateArray())
        {
            var athlete = $"B{++subject}";
            var own = sessions.Where(session => session.AthleteId == athlete).ToList();
            var change = AthleteChange.Fit(own, noise, worthwhile, All with { Level = ConfidenceLevel.NinetyFive }).GetOrThrow();
            void Same(string name, double got) => ReferenceData.AssertClose(row.GetProperty(name).GetDouble(), got, 1e-8, what: $"{item} {subject} {name}");
            Same("change", change.Change.Value);
            Same("lower95", change.Change.Lower!.Value);
            Same("upper95", change.Change.Upper!.Value);
            Same("p_above", change.Chances!.Slower.Value);
            Same("p_trivial", change.Chances.Trivial.Value);
            Same("p_below", change.Chances.Faster.Value);
        }
    }

    [Fact]
    public void The_baseline_is_the_mean_of_the_last_three_tests_where_available()
    {
        // Hand arithmetic: 322.9 - (329.0 + 325.2 + 327.1) / 3 = -4.2; SE 2.5502713 √(1 + 1/3).
        var own = WorkedData.EightAthletes.Where(session => session.AthleteId == "B1").ToList();
        var change = AthleteChange.Fit(own, Noise, Five, All).GetOrThrow();
        Assert.Equal(-4.2, change.Change.Value, 1e-9);
        Assert.Equal(2.944800, change.Change.StandardError!.Value, 5e-7);
        Assert.Equal(3, change.Baseline.Count);
    }

    [Fact]
    public void On_logarithms_the_change_is_in_percent()
    {
        // R 4.2.2: 100 * expm1(log(355.0 / 367.9)) and limits with log TE log(1.00752654).
        var own = WorkedData.EightAthletes.Where(session => session.AthleteId == "B7").ToList();
        var change = AthleteChange.Between([own[0]], [own[3]], Noise, SmallestWorthwhileChange.Entered(new Percent(1.5)), All with { Scale = Scale.Log }).GetOrThrow();
        Assert.Equal(100 * (355.0 / 367.9 - 1), change.Change.Value, 1e-9);
        var reach = 1.720742903 * Math.Log(1.00752654) * Math.Sqrt(2);
        Assert.Equal(100 * (Math.Exp(Math.Log(355.0 / 367.9) + reach) - 1), change.Change.Upper!.Value, 1e-5);
        Assert.Equal(ChangeVerdict.FasterWorthwhile, change.Verdict);
    }

    [Fact]
    public void Thin_data_are_refused_with_their_reason()
    {
        var own = WorkedData.EightAthletes.Where(session => session.AthleteId == "B1").ToList();
        Assert.Equal("Not enough data for the change: needs 2 eligible sessions, has 1 eligible sessions.", AthleteChange.Fit([own[0]], Noise, Five, All).ToString());
        Assert.Equal(Refusal.TooFewPairs, AthleteChange.Fit(own, TypicalError.Entered(new Seconds(2), 4, "hand-made"), Five, All).Refusal!.Reason);
        Assert.Equal(Refusal.MixedProtocols, AthleteChange.Between([own[0]], [WorkedData.One([60, 61, 62], 4, "B1")], Noise, Five).Refusal!.Reason);
        Assert.Throws<ArgumentException>(() => AthleteChange.Between([own[0]], [WorkedData.EightAthletes[^1]], Noise, Five));
        Assert.Throws<ArgumentException>(() => AthleteChange.Fit(own, Noise, SmallestWorthwhileChange.Entered(new Percent(2)), All));
    }

    [Fact]
    public void Equivalence_at_five_percent_is_the_same_as_a_ninety_percent_interval_inside_the_limits() =>
        Gen.Select(Gen.Double[300, 340], Gen.Double[300, 340], Gen.Double[0.5, 30]).Sample((first, second, size) =>
        {
            var change = AthleteChange.Between([WorkedData.Total(first)], [WorkedData.Total(second, 1)], Noise, SmallestWorthwhileChange.Entered(new Seconds(size)), All).GetOrThrow();
            Assert.Equal(change.EquivalencePValue.Value < 0.05, change.Change.Lower > -size && change.Change.Upper < size);
        });

    private static Answer<AthleteChangeResult> FirstToLast(string athlete)
    {
        var own = WorkedData.EightAthletes.Where(session => session.AthleteId == athlete).ToList();
        return AthleteChange.Between([own[0]], [own[3]], Noise, Five, All);
    }
}

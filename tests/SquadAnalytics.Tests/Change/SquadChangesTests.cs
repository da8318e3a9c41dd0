using CsCheck;
using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Tests.Change;

public sealed class SquadChangesTests
{
    private static readonly TypicalErrorResult Noise = TypicalError.Fit(WorkedData.EightAthletes, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();
    private static readonly SmallestWorthwhileChange Five = SmallestWorthwhileChange.Entered(new Seconds(5));
    private static readonly SquadChangesOptions FirstToLast = new()
    {
        BaselineUntil = WorkedData.EightAthletes[0].Date,
        Change = new AthleteChangeOptions { BaselineTests = 1, Selection = SelectionOptions.KeepAll },
    };

    [Fact]
    public void Two_of_eight_athletes_stay_flagged_after_adjustment()
    {
        // R 4.2.2: p.adjust(2 * pt(-abs(d) / se, 21), method = "BH").
        var result = SquadChanges.Fit(WorkedData.EightAthletes, Noise, Five, FirstToLast).GetOrThrow();
        Assert.Equal(["B3", "B7"], result.Flagged.Select(row => row.AthleteId));
        Assert.Equal(0.0069083, result.Rows[2].Change.GetOrThrow().Change.PValue!.Value, 5e-8);
        Assert.Equal(0.0276332, result.Rows[2].AdjustedPValue!.Value, 5e-8);
        Assert.Equal(0.0017788, result.Rows[6].Change.GetOrThrow().Change.PValue!.Value, 5e-8);
        Assert.Equal(0.0142304, result.Rows[6].AdjustedPValue!.Value, 5e-8);
        Assert.All(result.Rows.Where(row => !row.IsFlagged), row => Assert.True(row.AdjustedPValue!.Value > 0.21));
    }

    [Fact]
    public void No_athlete_is_flagged_as_faster_than_worthwhile()
    {
        // R 4.2.2: p.adjust(pt((d + 5) / se, 21), method = "BH"); the smallest 0.0199596 becomes 0.1596769.
        var result = SquadChanges.Fit(WorkedData.EightAthletes, Noise, Five, FirstToLast with { Flag = FlaggedChange.FasterThanWorthwhile }).GetOrThrow();
        Assert.Empty(result.Flagged);
        Assert.Equal(0.1596769, result.Rows.Min(row => row.AdjustedPValue!.Value), 5e-8);
    }

    [Fact]
    public void An_absent_athlete_keeps_a_row_with_the_refusal()
    {
        IReadOnlyList<Session> sessions = [.. WorkedData.EightAthletes.Where(session => session.Id != "B4-w3")];
        var result = SquadChanges.Fit(sessions, Noise, Five, FirstToLast).GetOrThrow();
        Assert.Equal(8, result.Rows.Count);
        Assert.Equal(Refusal.TooFewSessions, result.Rows[3].Change.Refusal!.Reason);
        Assert.Null(result.Rows[3].AdjustedPValue);
        Assert.False(result.Rows[3].IsFlagged);
    }

    [Fact]
    public void A_week_without_tests_is_refused() =>
        Assert.Equal(Refusal.TooFewSessions, SquadChanges.Fit(WorkedData.EightAthletes, Noise, Five, FirstToLast with { Week = new DateOnly(2032, 1, 1) }).Refusal!.Reason);

    [Fact]
    public void The_order_of_sessions_and_an_athlete_with_one_test_change_nothing_for_the_others() =>
        Gen.Double[280, 380].Array[3].Array[3, 8].Sample(totals =>
        {
            var options = FirstToLast with { BaselineUntil = null };
            var before = SquadChanges.Fit(WorkedData.Weekly(totals), Noise, Five, options).GetOrThrow();
            IReadOnlyList<Session> other = [.. WorkedData.Weekly(totals).Reverse(), WorkedData.Total(300, 2, "single")];
            var after = SquadChanges.Fit(other, Noise, Five, options).GetOrThrow();
            Assert.Equal(before.Rows.Select(row => row.AdjustedPValue!.Value), after.Rows.Where(row => row.AthleteId != "single").Select(row => row.AdjustedPValue!.Value));
        });
}

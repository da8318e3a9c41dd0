using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Reporting.Figures;
using SquadAnalytics.Reporting.Questions;
using SquadAnalytics.Reporting.Tests.Figures;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Tests;

public class ExplanationTablesTests
{
    private static ExplanationsResult Result => Explanations.Fit(Examples.Sessions, new ExplanationsOptions { AfterSet = 3, Selection = SelectionOptions.KeepAll }).GetOrThrow();

    [Fact]
    public void Every_candidate_has_a_row_with_its_standing_and_what_would_settle_it()
    {
        var table = Tables.Explanations(Result, new NumberFormat(1));
        Assert.Equal(7, table.Rows.Count);
        Assert.Equal("late break after set 3", table.Rows[1][0].Text);
        Assert.Equal("supported", table.Rows[1][1].Text);
        // By hand from the set means: sets 4 and 5 less sets 1 to 3 of the six sessions: 68.558 - 62.583 = 5.975 s.
        Assert.Equal("+5.98", table.Rows[1][2].Text);
        // No station times are there: the row says so instead of a number.
        Assert.Equal(["not estimable", "–", "not tested"], table.Rows[3].Skip(2).Select(cell => cell.Text));
        var settled = Tables.WhatWouldSettleIt(Result);
        Assert.All(settled.Rows, row => Assert.NotEqual("–", row[2].Text));
        Assert.StartsWith("For: Step with the drift held equal:", settled.Rows[1][1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Findings_begin_with_the_answer_and_end_with_what_stays_open()
    {
        var findings = ExplanationFindings.Of(Result, new NumberFormat(1)).Items;
        // The regression with slope and step beside each other: step + 2.5 slopes = the slow-down of 5.975 s, 3.267 of it the step (R 4.2.2: lm(t ~ k + (k > 3)) in every session).
        Assert.StartsWith("Slower from set 4 by 5.98 s a set: about 3.3 s of it a jump after set 3 and about 2.7 s a gradual drift. Why", findings[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("a stopwatch cannot say. Supported: ", findings[0].Sentence, StringComparison.Ordinal);
        Assert.Contains(findings, finding => finding.Sentence.StartsWith("Supported: late break after set 3; at most, if it were the only cause,", StringComparison.Ordinal));
        Assert.StartsWith("Cannot tell:", findings[^1].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void A_power_curve_becomes_a_table_and_a_figure()
    {
        var result = MoreTests.ForChange(TypicalError.Entered(new Seconds(2.6), 20, "entered"), SmallestWorthwhileChange.Entered(new Seconds(4)), 3);
        var table = Tables.MoreTests(result, new NumberFormat(1));
        // R 4.2.2: 1 - pt(qt(0.95, 20), 20, 4 / (2.6 * sqrt(1/3 + 1/4))) = 0.618.
        Assert.Equal(["4", "0.62"], table.Rows[3].Take(2).Select(cell => cell.Text));
        var figure = new HowManyMoreTests([PowerCurve.Of("4 s", result)], result.Wanted, "typical error 2.6 s");
        Assert.Contains("4 s", figure.AlternativeText, StringComparison.Ordinal);
    }
}

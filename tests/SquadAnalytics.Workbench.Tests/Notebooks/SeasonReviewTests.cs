using System.Globalization;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>The student's season review: on the sample against R, on the second squad against what was built in.</summary>
public sealed partial class SeasonReviewTests(GeneratedLogbook second) : IClassFixture<GeneratedLogbook>
{
    private const string Notebook = "04-season-review";

    [Fact]
    public void The_sample_comes_out_as_the_mixed_model_of_R_says()
    {
        var output = NotebookRun.Of(second.Work, Notebook);
        // R 4.2.2, lme4 1.1-31, the script that the notebook prints, on the exported table of sessions: 348 tests; week -0.49294, SE 0.05929, t -8.314;
        // SDs 18.254 and 0.21282, residual 4.40105. t.test of the athletes' own slopes: -0.49880, 95 % -0.62381 to -0.37379, t(16) = -8.4588.
        Assert.Contains("fell by 0.49 s per week (95 % CI [0.37, 0.62])", NotebookRun.Finding(output, "The session total"), StringComparison.Ordinal);
        Assert.Contains("= −8.31, p < .001", NotebookRun.Finding(output, "The session total"), StringComparison.Ordinal);
        Assert.Contains("−0.50 s/week (95 % CI [−0.62, −0.37]), t(16) = −8.46, p < .001", NotebookRun.Finding(output, "The session total"), StringComparison.Ordinal);
        Assert.Contains("level by an SD of 18.25 s", output, StringComparison.Ordinal);
        Assert.Contains("about its athlete's line by an SD of 4.40 s", output, StringComparison.Ordinal);
        Assert.Contains("348 tests of 17 athletes", output, StringComparison.Ordinal);
        // The built-in learning is there: the first test is 2.5 % slower, and the season gets faster.
        // R 4.2.2: t.test(second - first) over the 17 athletes: -8.7235, 95 % -12.1041 to -5.3430; 2.4 % of a total.
        Assert.Contains("the second test was on average 8.7 s faster than the first (95 % interval 5.3 to 12.1 s faster)", NotebookRun.Finding(output, "While the test is learnt"), StringComparison.Ordinal);
        Assert.Contains("All totals after the first test were on average 14.4 s faster than in it", output, StringComparison.Ordinal);
        // Sleep is built in at -0.2 % an hour, load at 0.08 % for 100 units.
        var circumstances = NotebookRun.Finding(output, "Within athletes, the session total goes with");
        Assert.Contains("sleep the night before", circumstances, StringComparison.Ordinal);
        Assert.Contains(": the more, the faster)", circumstances, StringComparison.Ordinal);
        Assert.Contains("the more load, the slower", NotebookRun.Finding(output, "Within athletes, the load"), StringComparison.Ordinal);
        // The noise is larger than the smallest worthwhile change and less than twice it.
        Assert.Contains("13.8 s faster over 28 weeks; the noise of one test is 3.91 s, the smallest worthwhile change 3.60 s", NotebookRun.Finding(output, "The session total"), StringComparison.Ordinal);
        Assert.Contains("a single test cannot show it, repeated tests may", NotebookRun.Finding(output, "Reliability"), StringComparison.Ordinal);
    }

    [Fact]
    public void The_interval_of_the_second_squad_holds_the_slope_that_was_built_in()
    {
        var protocol = second.Truth.Scenario.MainTest.Protocol.Id;
        var output = NotebookRun.Of(second.Work, Notebook, "--logbook", second.Folder, "--set", $"protocol={protocol}", "--set", $"athlete={second.Squad.Athlete(second.Truth.Improver.AthleteId).Code}");
        var limits = Limits().Match(NotebookRun.Finding(output, "The session total"));
        Assert.True(limits.Success, output);
        double Number(int group) => double.Parse(limits.Groups[group].Value.Replace('−', '-'), CultureInfo.InvariantCulture);
        // The season that was built in gets faster, and the limits are those of a fall.
        Assert.Contains(" fell by ", NotebookRun.Finding(output, "The session total"), StringComparison.Ordinal);
        Assert.InRange(-TrueSlope(), Number(1), Number(2));
    }

    /// <summary>Mean over athletes of the least-squares slope of the totals without noise, in seconds per week.</summary>
    private double TrueSlope()
    {
        var expected = second.Truth.Sessions.ToDictionary(session => session.SessionId, session => session.ExpectedTotal.Value);
        var eligible = SessionSelection.Of(second.Squad.Sessions, new SelectionOptions { Protocol = second.Truth.Scenario.MainTest.Protocol }).GetOrThrow().Sessions;
        return eligible.GroupBy(session => session.AthleteId, StringComparer.Ordinal).Where(own => own.Count() >= 3).Average(own =>
        {
            var rows = own.Select(session => (Week: session.Date.DayNumber / 7.0, Total: expected[session.Id])).ToList();
            var (week, total) = (rows.Average(row => row.Week), rows.Average(row => row.Total));
            return rows.Sum(row => (row.Week - week) * (row.Total - total)) / rows.Sum(row => (row.Week - week) * (row.Week - week));
        });
    }

    [GeneratedRegex(@"CI \[(−?[\d.]+), (−?[\d.]+)\]")]
    private static partial Regex Limits();
}

using System.Globalization;
using System.Text;

namespace SquadAnalytics.SampleSquad;

/// <summary>The README of a sample folder: what it is, how it was made, what is built in. Every number comes from the scenario.</summary>
internal static class SampleReadme
{
    public static string Of(GeneratedSquad generated, string command)
    {
        var scenario = generated.Truth.Scenario;
        var squad = generated.Squad;
        var effects = scenario.Effects;
        var juniors = scenario.Boxers.Count(boxer => boxer.Junior);
        var text = new StringBuilder();
        Line(text, $"# {squad.Name}");
        Line(text, $"");
        Line(text, $"Everything in this folder is invented: the club, its {squad.Athletes.Count} boxers ({juniors} of them juniors), their tests and every time. Names belong to");
        Line(text, $"nobody we know of. The folder is a logbook: tidy CSV files described by `datapackage.json`. It was made by");
        Line(text, $"");
        Line(text, $"    {command}");
        Line(text, $"");
        Line(text, $"with seed {scenario.Seed}, and a test makes it again and compares every byte. To change it, change the scenario under `tests/SquadAnalytics.SampleSquad`");
        Line(text, $"and run the command.");
        Line(text, $"");
        Line(text, $"## What is in it");
        Line(text, $"");
        Line(text, $"{squad.Sessions.Count} sessions in {scenario.Weeks} weeks from {scenario.Start:yyyy-MM-dd}, one test a week on Thursday, with absences.");
        Line(text, $"");
        foreach (var protocol in squad.Protocols)
        {
            Line(text, $"- **{protocol.Name}** (`{protocol.Id}`): {protocol.Sets} sets, one every {protocol.StartInterval!.Value.Value} s, of {string.Join(", ", protocol.Stations)}.");
            if (protocol.VariantOf is { } original) Line(text, $"  The scaled variant of `{original}` for juniors.");
        }

        Line(text, $"");
        foreach (var block in squad.Blocks) Line(text, $"- Block **{block.Name}** (`{block.Id}`), {block.From:yyyy-MM-dd} to {block.To:yyyy-MM-dd}: {block.Emphasis}.");
        Line(text, $"");
        Line(text, $"Station times were taken in every {(scenario.StationsEvery == 1 ? "" : "second ")}week of the main test. One test was given up, one stopped for health, one set missed by the watch, one test is void,");
        Line(text, $"and one boxer was kept from testing after a knock to the head until cleared.");
        Line(text, $"");
        Line(text, $"## What is built in");
        Line(text, $"");
        Line(text, $"Percent are of the boxer's own set time.");
        Line(text, $"");
        foreach (var boxer in scenario.Boxers.Where(boxer => boxer.Story is not null)) Line(text, $"- **{boxer.Name}** ({boxer.Code}) {Told(boxer.Story!)}.");
        Line(text, $"- Everyone: one set varies by {effects.SetNoisePercent} % (juniors {effects.JuniorSetNoisePercent} %), the day's form by {effects.DayFormPercent} % (SD); times are read to 0.1 s.");
        Line(text, $"- Everyone slows steadily, {effects.DriftPercentPerSet} % per set on average (SD {effects.DriftSpread} between boxers).");
        Line(text, $"- The first sessions of a test are slower while it is new: {string.Join(", then ", effects.LearningPercent.Select(percent => percent.ToString(CultureInfo.InvariantCulture) + " %"))}.");
        Line(text, $"- The second block makes a boxer {-effects.BlockEffectPercent} % faster on average (SD {effects.BlockEffectSpread} between boxers), growing over its first {effects.BlockRampWeeks} weeks;");
        Line(text, $"  beside it there is a trend of {effects.TrendPercentPerWeek} % per week (SD {effects.TrendSpread}).");
        Line(text, $"- Each round of sparring before the test beyond the usual costs {effects.SparringPercentPerRound} %, each hour of sleep beyond the usual gains {-effects.SleepPercentPerHour} %,");
        Line(text, $"  100 units of load above plan in the seven days before cost {effects.LoadPercentPerHundred} %, making weight for a bout costs {effects.WeightMakingPercent} %.");
        return text.ToString();
    }

    private static string Told(Story story) => story switch
    {
        LateBreak late => string.Create(CultureInfo.InvariantCulture, $"breaks late: from set {late.AfterSet + 1} on every set is {late.Percent} % slower (SD {late.SpreadPercent} from session to session), {100 * late.StationShare:0} % of it at the {late.Station}"),
        FastStart fast => string.Create(CultureInfo.InvariantCulture, $"starts too fast: the first set is {fast.MeanPercent} % faster than can be kept up (SD {fast.SpreadPercent}), and for each percent every later set is {fast.Payback} % slower"),
        Improvement improvement => string.Create(CultureInfo.InvariantCulture, $"improves by {-improvement.PercentPerWeek} % a week all season"),
        OnlyNoise => "does not change at all: whatever the times seem to say is noise, although the last test looks slow",
        _ => throw new ArgumentOutOfRangeException(nameof(story), story, "A story without words."),
    };

    private static void Line(StringBuilder text, FormattableString line) => text.Append(line.ToString(CultureInfo.InvariantCulture)).Append('\n');
}

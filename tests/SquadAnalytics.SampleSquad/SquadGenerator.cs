using System.Globalization;

namespace SquadAnalytics.SampleSquad;

/// <summary>Makes an invented squad and its truth from a scenario. The same scenario always gives the same squad.</summary>
public static class SquadGenerator
{
    /// <summary>Generates the squad of a scenario.</summary>
    public static GeneratedSquad Generate(SampleScenario scenario)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        var weather = new Dice(scenario.Seed, 0, Topic.Weather);
        var temperatures = Enumerable.Range(1, scenario.Weeks).Select(_ => Math.Round(weather.Normal(19, 2.5))).ToList();
        var seasons = scenario.Boxers.Select((_, index) => BoxerSeason.Draw(scenario, index + 1, temperatures)).ToList();

        var drafts = Mishaps.Apply(scenario, [.. seasons.SelectMany(season => season.Tests).OrderBy(test => test.Session.Date)]);
        var numbered = drafts.Select((test, index) => test.Numbered(Id('s', index + 1, 4))).ToList();
        var events = seasons.SelectMany(season => season.Events).OrderBy(item => item.Date).Select((item, index) => item with { Id = Id('e', index + 1, 3) });
        var notes = seasons.SelectMany(season => season.HealthNotes).Concat(Mishaps.HealthNotes(numbered))
            .OrderBy(note => note.Date).Select((note, index) => note with { Id = Id('h', index + 1, 3) });

        var squad = new Squad(
            scenario.Club,
            [.. seasons.Select(season => season.Athlete)],
            [scenario.MainTest.Protocol, scenario.JuniorTest.Protocol, scenario.LongTest.Protocol],
            [.. numbered.Select(test => test.Session)])
        {
            Contexts = [.. seasons.SelectMany(season => season.Contexts).OrderBy(context => context.Date)],
            Events = [.. events],
            Blocks = Blocks(scenario),
        };
        var truth = new SampleTruth(
            scenario,
            [.. seasons.Select(season => season.Truth)],
            [.. numbered.Select(test => new SessionTruth(test.Session.Id, new Seconds(test.ExpectedTotalSeconds)))]);
        return new GeneratedSquad(squad, [.. notes], truth);
    }

    internal static string Id(char kind, int number, int digits) => kind + number.ToString(CultureInfo.InvariantCulture).PadLeft(digits, '0');

    private static IReadOnlyList<TrainingBlock> Blocks(SampleScenario scenario)
    {
        var change = scenario.Day(scenario.SecondBlockFromWeek, DayOfWeek.Monday);
        return
        [
            new TrainingBlock("block-1", scenario.FirstBlock.Name, scenario.Start, change.AddDays(-1)) { Emphasis = scenario.FirstBlock.Emphasis },
            new TrainingBlock("block-2", scenario.SecondBlock.Name, change, scenario.Day(scenario.Weeks, DayOfWeek.Sunday)) { Emphasis = scenario.SecondBlock.Emphasis },
        ];
    }
}

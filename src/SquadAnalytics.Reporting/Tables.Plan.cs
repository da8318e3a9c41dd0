using SquadAnalytics.Change;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    private const int LongestPlan = 12;

    /// <summary>The smallest change of one athlete, and the smallest difference between two blocks, that a number of tests shows with the chance wanted.</summary>
    /// <param name="noise">The noise of one session total.</param>
    /// <param name="baselineTests">Earlier tests of the athlete.</param>
    /// <param name="athletes">Athletes who do both blocks; 2 or more.</param>
    /// <param name="individualResponses">SD of true differences between athletes, in seconds.</param>
    /// <param name="options">Chance wanted, level.</param>
    /// <param name="format">How numbers are written.</param>
    public static Table SmallestDifferences(TypicalErrorResult noise, int baselineTests, int athletes, double individualResponses, MoreTestsOptions options, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(noise);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            $"What tests can show with a chance of {NumberFormat.Fixed(100 * options.Wanted, 0)} %",
            [
                TableColumn.Figures("tests"), TableColumn.Figures("one athlete", "s"), TableColumn.Figures("interval", "s"), TableColumn.Figures("two blocks", "s"), TableColumn.Figures("interval", "s"),
            ],
            [.. Enumerable.Range(1, LongestPlan).Select(tests => (Tests: tests, One: SquadAnalytics.Change.MoreTests.SmallestChange(noise, baselineTests, tests, options), Blocks: SquadAnalytics.Change.MoreTests.SmallestBlockDifference(noise, athletes, tests, individualResponses, options)))
                .Select(row => (IReadOnlyList<TableCell>)
                [
                    Count(row.Tests), TableCell.Figure(row.One.Value, format.Decimals(row.One)), Limits(row.One, format),
                    row.Blocks.Match(smallest => TableCell.Figure(smallest.Value, format.Decimals(smallest)), TableCell.Refused), row.Blocks.Match(smallest => Limits(smallest, format), _ => TableCell.Nothing),
                ])])
        {
            Notes = [$"One athlete: change against {Sentences.Plural(baselineTests, "earlier test")}, by further tests. Two blocks: mean difference over {Sentences.Plural(athletes, "athlete")}, by tests per athlete in each block. Intervals come from the uncertainty of the noise.", .. SquadAnalytics.Change.MoreTests.SmallestBlockDifference(noise, athletes, 1, individualResponses, options).Match(smallest => smallest.Notes, _ => [])],
        };
    }
}

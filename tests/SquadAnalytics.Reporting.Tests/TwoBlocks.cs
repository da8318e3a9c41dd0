using SquadAnalytics.Change;
using SquadAnalytics.Reporting.Tests.Figures;

namespace SquadAnalytics.Reporting.Tests;

/// <summary>Seven invented athletes in two blocks, A a junior, and an eighth who came once.</summary>
internal static class TwoBlocks
{
    private static readonly DateOnly Start = new(2031, 1, 7);

    private static readonly double[][] First = [[330.1, 327.4, 329.0], [301.2, 299.8, 300.5, 298.9], [352.6, 349.9], [314.0, 311.2, 313.3], [341.8, 343.0, 340.1, 339.5], [287.0, 285.1, 286.6], [362.0, 358.3, 360.9], [300.0]];

    private static readonly double[][] Second = [[322.5, 324.0, 321.1, 323.2], [297.0, 295.2], [340.7, 343.9, 341.5], [309.8, 307.1, 308.2, 306.6], [338.0, 336.4, 337.7], [284.9, 283.0, 285.5, 282.6], [349.8, 351.6], []];

    public static TrainingBlock Base { get; } = new("b1", "Base", Start, Start.AddDays(40));

    public static TrainingBlock Power { get; } = new("b2", "Power", Start.AddDays(60), Start.AddDays(100));

    public static Squad Squad { get; } = new(
        "Eight (invented)",
        [.. "ABCDEFGH".Select(letter => new Athlete($"{letter}", $"Boxer {letter}", $"{letter}") { Groups = letter == 'A' ? [new GroupMembership(Athlete.Juniors, new DateOnly(2030, 1, 1))] : [] })],
        [Examples.Protocol],
        [.. First.SelectMany((own, i) => own.Select((total, week) => Test(total, i, week, "watch"))), .. Second.SelectMany((own, i) => own.Select((total, week) => Test(total, i, week + 9, "phone")))]);

    public static BlockComparisonResult Comparison(TrainingBlock second) =>
        BlockComparison.Fit(Squad.Sessions, Base, second, new BlockComparisonOptions { Selection = SelectionOptions.KeepAll }).GetOrThrow();

    public static BlockCircumstancesResult Facts(Squad squad, TrainingBlock second, BlockCircumstancesOptions? options = null) =>
        BlockCircumstances.Summarize(squad, Base, second, (options ?? new BlockCircumstancesOptions()) with { Selection = SelectionOptions.KeepAll }).GetOrThrow();

    private static Session Test(double total, int athlete, int week, string timer)
    {
        var id = $"{(char)('A' + athlete)}";
        return Session.FromTimes($"{id}-{week}", id, Start.AddDays(7 * week), Examples.Protocol, [.. Enumerable.Repeat(total / 5, 5)]) with { Timer = timer };
    }
}

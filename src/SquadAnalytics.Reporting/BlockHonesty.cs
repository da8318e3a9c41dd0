using System.Globalization;
using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting;

/// <summary>
/// What has to be said with every comparison of two training blocks, because order was not randomised and much else may differ.
/// Without a control series the words are "differed by", not "improved because of".
/// </summary>
/// <remarks>Common practice in reporting uncontrolled before-after comparisons; no source.</remarks>
public sealed record BlockHonesty
{
    /// <summary>The sentence that opens every list.</summary>
    public const string NotRandomised = "Order was not randomised.";

    private const int SmallestCountShown = 5;
    private const double NotableAttendance = 10;

    private readonly BlockCircumstancesResult _facts;
    private readonly Squad _squad;

    /// <summary>Makes the list for two blocks.</summary>
    /// <param name="facts">What was counted from the logbook.</param>
    /// <param name="squad">The squad, for the names of athletes; juniors are shown by code.</param>
    public BlockHonesty(BlockCircumstancesResult facts, Squad squad)
    {
        _facts = facts ?? throw new ArgumentNullException(nameof(facts));
        _squad = squad ?? throw new ArgumentNullException(nameof(squad));
    }

    /// <summary>The list, in the order in which it is printed.</summary>
    public IReadOnlyList<HonestyItem> Items =>
    [
        new("Was the order randomised?", NotRandomised, true),
        new("Were the blocks chosen before the results were seen?", Chosen(), _facts.DefinedAfterData),
        new("Which block came second?", Order(), true),
        new("Who came to the tests?", Attendance(), _facts.FirstDue.Share is not { } first || _facts.SecondDue.Share is not { } second || Math.Abs(first.Value - second.Value) >= NotableAttendance),
        new("Who was tested in one block only?", OnlyOne(), _facts.InOneBlockOnly.Count > 0),
        new("Did the timer, the place, the circuit or the start interval change?", Changes(), _facts.Conditions.Any(condition => condition.IsChanged || !condition.IsKnown)),
        new("Was there sparring before tests, or making weight?", Preparation(), _facts.AfterSparring.Total + _facts.SparringUnknown.Total + _facts.MakingWeight.Total > 0),
        new("Was anyone ill or injured?", Health(), _facts.AthletesWithHealthNotes is not { Total: 0 }),
        new("Were tests close to a bout?", Tests(_facts.NearABout, "lay within 72 hours of a bout"), _facts.NearABout.Total > 0),
        new("How many comparisons were tried?", Comparisons(), (_facts.ComparisonsTried ?? _facts.PairsOfBlocks) > 1),
    ];

    /// <summary>As a table: question, answer.</summary>
    public Table ToTable() => new("What else differed between the blocks", [new("asked of every comparison"), new("here")], [.. Items.Select(item => (IReadOnlyList<TableCell>)[item.Question, item.Sentence])])
    {
        Notes = ["Without a control series a difference between blocks is not the effect of the training."],
    };

    private string FirstName => _facts.First.Block.Name;

    private string SecondName => _facts.Second.Block.Name;

    private string Chosen() => _facts.DefinedAfterData
        ? "The blocks were chosen after the results were seen."
        : "The blocks were defined before the results were seen.";

    private string Order()
    {
        var juniors = _facts.Juniors == 0 ? "" : $" Juniors compared: {Count(_facts.Juniors)}.";
        return $"{SecondName} came second: the season, practice with the test and, in juniors, growth point the same way.{juniors}";
    }

    private string Attendance() => _facts.FirstDue.Share is { } first && _facts.SecondDue.Share is { } second
        ? string.Create(CultureInfo.InvariantCulture, $"Tests done of those due: {first.Value:0} % ({_facts.FirstDue}) in {FirstName}, {second.Value:0} % ({_facts.SecondDue}) in {SecondName}.")
        : "How many of the due tests were done is not known.";

    private string OnlyOne() => _facts.InOneBlockOnly.Count == 0
        ? "Every athlete compared was tested in both blocks."
        : $"Tested in one block only and left out ({Count(_facts.InOneBlockOnly.Count)}): {Sentences.List([.. _facts.InOneBlockOnly.Select(Lone)])}.";

    private string Lone(LeftOutAthlete athlete)
    {
        var tests = athlete.FirstTests + athlete.SecondTests;
        return $"{_squad.Athlete(athlete.AthleteId).LabelOn(_facts.Second.Block.From)} ({Sentences.Plural(tests, "test")} in {(athlete.FirstTests > 0 ? FirstName : SecondName)}, {(tests == 1 ? "" : "mean ")}{NumberFormat.Fixed(athlete.MeanSeconds, 1)} s)";
    }

    private string Changes()
    {
        string[] changed = [.. _facts.Conditions.Where(condition => condition.IsChanged).Select(condition => $"{condition.Kind.Words()} ({Values(condition.First)}; then {Values(condition.Second)})")];
        string[] unknown = [.. _facts.Conditions.Where(condition => !condition.IsKnown).Select(condition => condition.Kind.Words())];
        var sentence = changed.Length == 0 ? "No change of timer, place, circuit or start interval is recorded." : $"Changed between the blocks: {Sentences.List(changed)}.";
        return unknown.Length == 0 ? sentence : $"{sentence} Not recorded in both: {Sentences.List(unknown)}.";
    }

    private string Preparation()
    {
        string[] sentences = [AfterSparring(), Tests(_facts.MakingWeight, "fell in the week up to a weigh-in")];
        return string.Join(' ', _facts.SparringUnknown.Total == 0 ? sentences : [.. sentences, $"Sparring before the test is not recorded for {Both(_facts.SparringUnknown)}."]);
    }

    private string AfterSparring()
    {
        string Share(int tests, BlockAttendance block) => block.Tests == 0 ? Count(tests) : $"{NumberFormat.Fixed(100.0 * tests / block.Tests, 0)} % ({Count(tests)} of {Count(block.Tests)})";
        return _facts.AfterSparring.Total == 0 ? "No test followed sparring on the day."
            : $"{Share(_facts.AfterSparring.First, _facts.First)} of the tests in {FirstName} and {Share(_facts.AfterSparring.Second, _facts.Second)} in {SecondName} followed sparring on the day.";
    }

    /// <summary>Small counts are not printed: with the names of a small squad at hand they would tell who was ill.</summary>
    private string Health() => _facts.AthletesWithHealthNotes switch
    {
        null => "Health notes were not looked at.",
        { Total: 0 } => "No illness or injury note is recorded.",
        { First: 0 or >= SmallestCountShown, Second: 0 or >= SmallestCountShown } counts => $"Athletes with an illness or injury noted: {Count(counts.First)} in {FirstName}, {Count(counts.Second)} in {SecondName}.",
        _ => $"Illness or injury was noted; counts below {Count(SmallestCountShown)} athletes are not shown.",
    };

    private string Comparisons() => _facts switch
    {
        { ComparisonsTried: 1 } => "This is the only comparison made on these data.",
        { ComparisonsTried: { } tried } => $"{Sentences.Plural(tried, "comparison")} were made on these data; some differ by luck.",
        { PairsOfBlocks: > 1 } => $"Of the blocks in the logbook {Count(_facts.PairsOfBlocks)} pairs can be compared; how many were looked at is not recorded, and some differ by luck.",
        _ => "The logbook holds no other pair of blocks to compare.",
    };

    private string Tests(BlockCount count, string what) => count.Total == 0 ? $"No test {what}." : $"{Both(count)} {what}.";

    private string Both(BlockCount count) => $"{Sentences.Plural(count.Total, "test")} ({Count(count.First)} in {FirstName}, {Count(count.Second)} in {SecondName})";

    private static string Values(IReadOnlyList<ConditionCount> counts) => string.Join(", ", counts.Select(count => count.Value ?? "not recorded"));

    private static string Count(int number) => number.ToString(CultureInfo.InvariantCulture);
}

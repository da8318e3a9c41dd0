using System.Globalization;

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

    /// <summary>Makes the list for two blocks.</summary>
    /// <param name="first">The earlier block.</param>
    /// <param name="second">The later block.</param>
    public BlockHonesty(TrainingBlock first, TrainingBlock second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (second.From < first.From) throw new ArgumentException($"Block '{second.Name}' begins before '{first.Name}'; name the earlier block first.", nameof(second));
        First = first;
        Second = second;
    }

    /// <summary>The earlier block.</summary>
    public TrainingBlock First { get; }

    /// <summary>The later block.</summary>
    public TrainingBlock Second { get; }

    /// <summary>Share of due tests that were done in the earlier block, or null where it is not known.</summary>
    public Percent? FirstAttendance { get; init; }

    /// <summary>Share of due tests that were done in the later block, or null where it is not known.</summary>
    public Percent? SecondAttendance { get; init; }

    /// <summary>Athletes tested in one block only, as labelled in this report.</summary>
    public IReadOnlyList<string> InOneBlockOnly { get; init; } = [];

    /// <summary>Changes of timer, place, circuit or start interval between the blocks, each as a phrase.</summary>
    public IReadOnlyList<string> Changes { get; init; } = [];

    /// <summary>Number of tests preceded by sparring on the day or made in a week of making weight.</summary>
    public int TestsAfterSparringOrMakingWeight { get; init; }

    /// <summary>Number of athletes with an illness or injury note in either block.</summary>
    public int AthletesWithHealthNotes { get; init; }

    /// <summary>Number of tests within 72 hours of a bout.</summary>
    public int TestsNearABout { get; init; }

    /// <summary>How many comparisons were tried on these data, this one included.</summary>
    public int ComparisonsTried { get; init; } = 1;

    /// <summary>The list, in the order in which it is printed.</summary>
    public IReadOnlyList<HonestyItem> Items =>
    [
        new("Was the order randomised?", NotRandomised, true),
        new("Were the blocks chosen before the results were seen?", Chosen(), First.DefinedAfterData || Second.DefinedAfterData),
        new("Which block came second?", $"{Second.Name} came second: the season, practice with the test and, in juniors, growth point the same way.", true),
        new("Who came to the tests?", Attendance(), FirstAttendance is null || SecondAttendance is null || Math.Abs(FirstAttendance.Value.Value - SecondAttendance.Value.Value) >= 10),
        new("Who was tested in one block only?", OnlyOne(), InOneBlockOnly.Count > 0),
        new("Did the timer, the place, the circuit or the start interval change?", Changes.Count == 0 ? "No change of timer, place, circuit or start interval is recorded." : $"Changed between the blocks: {Sentences.List(Changes)}.", Changes.Count > 0),
        new("Was there sparring before tests, or making weight?", Tests(TestsAfterSparringOrMakingWeight, "followed sparring or fell in a week of making weight"), TestsAfterSparringOrMakingWeight > 0),
        new("Was anyone ill or injured?", Health(), AthletesWithHealthNotes > 0),
        new("Were tests close to a bout?", Tests(TestsNearABout, "lay within 72 hours of a bout"), TestsNearABout > 0),
        new("How many comparisons were tried?", ComparisonsTried == 1 ? "This is the only comparison made on these data." : $"{Sentences.Plural(ComparisonsTried, "comparison")} were made on these data; some differ by luck.", ComparisonsTried > 1),
    ];

    /// <summary>As a table: question, answer.</summary>
    public Table ToTable() => new("What else differed between the blocks", [new("asked of every comparison"), new("here")], [.. Items.Select(item => (IReadOnlyList<TableCell>)[item.Question, item.Sentence])])
    {
        Notes = ["Without a control series a difference between blocks is not the effect of the training."],
    };

    private string Chosen() => First.DefinedAfterData || Second.DefinedAfterData
        ? "The blocks were chosen after the results were seen."
        : "The blocks were defined before the results were seen.";

    private string Attendance() => FirstAttendance is { } first && SecondAttendance is { } second
        ? string.Create(CultureInfo.InvariantCulture, $"Tests done of those due: {first.Value:0} % in {First.Name}, {second.Value:0} % in {Second.Name}.")
        : "How many of the due tests were done is not known.";

    private string OnlyOne() => InOneBlockOnly.Count == 0
        ? "Every athlete compared was tested in both blocks."
        : $"Tested in one block only and left out: {Sentences.List(InOneBlockOnly)}.";

    /// <summary>Small counts are not printed: with the names of a small squad at hand they would tell who was ill.</summary>
    private string Health() => AthletesWithHealthNotes switch
    {
        0 => "No illness or injury note is recorded.",
        < SmallestCountShown => $"Illness or injury is noted for fewer than {SmallestCountShown} athletes.",
        _ => $"Illness or injury is noted for {Sentences.Plural(AthletesWithHealthNotes, "athlete")}.",
    };

    private static string Tests(int count, string what) => count == 0 ? $"No test {what}." : $"{Sentences.Plural(count, "test")} {what}.";
}

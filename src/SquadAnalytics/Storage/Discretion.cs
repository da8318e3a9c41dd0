using System.Text.RegularExpressions;
using SquadAnalytics.Storage.Removal;

namespace SquadAnalytics.Storage;

/// <summary>
/// What must not leave a logbook unasked: the names of juniors and of those who did not consent to be named, health notes, and what was noted
/// of body mass and head knocks. A coach's own screen shows everything; what is exported or shared goes through here.
/// </summary>
/// <remarks>Text is judged unit by unit (a sentence, a cell, a line): a unit that holds a health entry is withheld as a whole, a name becomes the
/// athlete's code; of a sentence on several things only the clause on body mass goes. Names are found whatever their case, accents, spacing and order of "Last, First".</remarks>
public sealed partial class Discretion
{
    /// <summary>What stands in the place of a text that holds a health entry.</summary>
    public const string Withheld = "(health entry withheld)";

    // A note of one or two short words is withheld where it stands alone, not wherever its words occur.
    private const int ShortNote = 14;

    private readonly IReadOnlyList<NameToHide> _names;
    private readonly IReadOnlyList<string> _notes;
    private readonly Squad _squad;

    private Discretion(Squad squad, IReadOnlyList<NameToHide> names, IReadOnlyList<string> notes)
    {
        _squad = squad;
        _names = names;
        _notes = notes;
    }

    /// <summary>Discretion over a squad.</summary>
    /// <param name="squad">The squad.</param>
    /// <param name="notes">Its health notes.</param>
    /// <param name="today">The day of the export. Consents and the juniors' group are looked up for it, or for the last test where that is later.</param>
    public static Discretion Of(Squad squad, IReadOnlyList<HealthNote> notes, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(notes);
        var day = squad.Sessions.Count > 0 && squad.Sessions[^1].Date > today ? squad.Sessions[^1].Date : today;
        return new Discretion(
            squad,
            [.. squad.Athletes.Where(athlete => !MayBeNamed(athlete, day)).Select(athlete => new NameToHide(new Mention(athlete, byNameOnly: true), athlete.Code))],
            [.. notes.Select(static note => SearchedText.Of(note.Text).Key).Where(static key => !string.IsNullOrWhiteSpace(key))]);
    }

    /// <summary>Whether an athlete may be named in what is exported: no junior, with a consent to be named that covers the day.</summary>
    public static bool MayBeNamed(Athlete athlete, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(athlete);
        return !athlete.IsJuniorOn(day) && athlete.Consents.Any(consent => consent.Covers(day) && string.Equals(consent.Purpose, Consent.NamedInReports, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>How many athletes of the squad are shown by code.</summary>
    public int AthletesByCode => _names.Count;

    /// <summary>Ids of the athletes whom a text shows, by id, code or name: for the list of exports.</summary>
    /// <param name="text">The text.</param>
    public IReadOnlyList<string> AthletesIn(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var searched = SearchedText.Of(text);
        return [.. _squad.Athletes.Where(athlete => new Mention(athlete).In(searched)).Select(static athlete => athlete.Id)];
    }

    /// <summary>Whether a heading announces health entries: body mass, head knocks, health notes.</summary>
    public static bool IsHealthHeading(string heading) => HealthWords().IsMatch(heading);

    /// <summary>Whether a text names somebody who must not be named, or holds a health entry.</summary>
    public bool Concerns(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var searched = SearchedText.Of(text);
        return HoldsHealthEntry(searched) || _names.Any(name => name.Mention.In(searched));
    }

    /// <summary>Whether a text as a whole, line ends and markup taken out, still names somebody who must not be named, or quotes a health note.</summary>
    public bool NamesOrQuotes(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var searched = SearchedText.Of(text);
        return HoldsNote(searched) || _names.Any(name => name.Mention.In(searched));
    }

    /// <summary>The text as it may be shared.</summary>
    public string Apply(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length == 0) return text;
        text = BodyMassClause().Replace(text, Withheld);
        var searched = SearchedText.Of(text);
        return HoldsHealthEntry(searched) ? Withheld : WithoutNames(searched);
    }

    /// <summary>A text of several lines as it may be shared, judged line by line and then as a whole.</summary>
    public string ApplyToLines(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var applied = string.Join('\n', text.ReplaceLineEndings("\n").Split('\n').Select(Apply));
        var searched = SearchedText.Of(applied);
        return HoldsNote(searched) ? Withheld : WithoutNames(searched);
    }

    private string WithoutNames(SearchedText text) => _names.Where(name => name.Mention.In(text)).Aggregate(text.Text, static (rest, name) => name.Mention.Erase(rest, name.Code)!);

    private bool HoldsHealthEntry(SearchedText text) => (text.Text.AsSpan().ContainsAnyInRange('0', '9') && HealthWords().IsMatch(text.Text)) || HoldsNote(text);

    // A note is kept between spaces, as a searched text is.
    private bool HoldsNote(SearchedText text) => _notes.Any(note => note.Length < ShortNote ? text.Key == note : text.Key.Contains(note, StringComparison.Ordinal));

    /// <summary>A clause such as "body mass 63.1 kg (usual 64.0)" within a sentence on other things; the rest of the sentence stays.</summary>
    [GeneratedRegex(@"body mass -?[0-9]+(?:\.[0-9]+)? kg(?: \([^)]*\))?", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex BodyMassClause();

    [GeneratedRegex(@"body[ _-]?mass|head[ _-]?knock|health[ _-]?note|cleared[ _-]?(on|date)", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex HealthWords();

    private sealed record NameToHide(Mention Mention, string Code);
}

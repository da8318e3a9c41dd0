using SquadAnalytics.Import;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>
/// A sheet to write set times on: a box for each athlete and set, the clock at which each set starts, the cautions, and a code by which the
/// file that is filled in from it is recognised at import.
/// </summary>
public sealed record RecordingSheet
{
    private RecordingSheet()
    {
    }

    /// <summary>Name of the squad.</summary>
    public required string Squad { get; init; }

    /// <summary>The protocol.</summary>
    public required Protocol Protocol { get; init; }

    /// <summary>The test date.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The sheet's code.</summary>
    public required SheetCode Code { get; init; }

    /// <summary>The heats in the order of their starts.</summary>
    public required IReadOnlyList<SheetHeat> Heats { get; init; }

    /// <summary>Athletes who are not on the sheet because a head knock has no clearance on the test date. For the coach's own screen; the sheet names nobody.</summary>
    public required IReadOnlyList<Athlete> NotCleared { get; init; }

    /// <summary>How it is laid out.</summary>
    public required RecordingSheetOptions Options { get; init; }

    /// <summary>Whether the page lies on its side.</summary>
    public bool IsLandscape => Options.Landscape ?? (Options.Stations ? Protocol.Stations.Count > 6 : Protocol.Sets > 7);

    /// <summary>When each set starts on the rolling clock, in order; empty where the start interval is not known.</summary>
    public IReadOnlyList<Seconds> Starts => Protocol.StartInterval is { } interval ? [.. Enumerable.Range(0, Protocol.Sets).Select(set => new Seconds(set * interval.Value))] : [];

    /// <summary>Composes a sheet.</summary>
    /// <remarks>
    /// On it are the members on the test date whose latest test within the protocol and its scaled variants was of this protocol; who has done
    /// none of them yet goes on the sheet of the unscaled protocol. Larger squads are split into heats of as equal a size as possible.
    /// </remarks>
    /// <param name="squad">The squad.</param>
    /// <param name="protocol">The protocol; one of the squad's.</param>
    /// <param name="date">The test date.</param>
    /// <param name="options">How it is laid out; null for the defaults.</param>
    /// <exception cref="ArgumentException">Stations are wanted and the protocol lists none, or nobody is in the group.</exception>
    public static RecordingSheet Of(Squad squad, Protocol protocol, DateOnly date, RecordingSheetOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(protocol);
        options ??= new RecordingSheetOptions();
        if (options.Stations && protocol.Stations.Count == 0) throw new ArgumentException($"The protocol '{protocol.Name}' lists no stations.", nameof(options));
        var known = squad.Athletes.Where(athlete => (athlete.Joined is null || athlete.Joined <= date) && (athlete.Left is null || athlete.Left >= date)).ToList();
        if (options.Group is { } group)
        {
            known = known.FindAll(athlete => athlete.Groups.Any(membership => string.Equals(membership.Group, group, StringComparison.OrdinalIgnoreCase) && membership.Covers(date)));
            if (known.Count == 0) throw new ArgumentException($"Nobody is in the group '{group}' on that date. Groups: {string.Join(", ", squad.Athletes.SelectMany(static athlete => athlete.Groups).Select(static membership => membership.Group).Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal))}.", nameof(options));
        }

        var due = known.FindAll(athlete => Does(squad, athlete, protocol, date));
        var barred = squad.Events.Where(item => item.BarsTestingOn(date)).Select(static item => item.AthleteId).ToHashSet(StringComparer.Ordinal);
        var labels = due.Where(athlete => !barred.Contains(athlete.Id)).Select(athlete => options.OnlyCodes || IsAmbiguous(squad, athlete) ? athlete.Code : athlete.LabelOn(date)).Order(StringComparer.OrdinalIgnoreCase).ToList();
        return new RecordingSheet
        {
            Squad = squad.Name,
            Protocol = protocol,
            Date = date,
            Code = SheetCode.Of(protocol, date),
            Heats = Split(labels, options.HeatSize),
            NotCleared = due.FindAll(athlete => barred.Contains(athlete.Id)),
            Options = options,
        };
    }

    /// <summary>The sheet as a page: self-contained HTML that prints on A4.</summary>
    public string ToHtml() => SheetPage.Write(this);

    /// <summary>An empty table to type the times into, as text with commas (UTF-8): title with the code, headers, a row for each athlete.</summary>
    public byte[] ToCsv() => SheetFiles.Csv(this);

    /// <summary>The same as a workbook. Its cells hold text, so that a spreadsheet does not turn 1:02 into an hour and two minutes.</summary>
    public byte[] ToWorkbook() => SheetFiles.Workbook(this);

    private static bool Does(Squad squad, Athlete athlete, Protocol protocol, DateOnly date)
    {
        var family = protocol.VariantOf ?? protocol.Id;
        var latest = squad.SessionsOf(athlete.Id).LastOrDefault(session => !session.IsVoid && session.Date <= date && (session.Protocol.VariantOf ?? session.Protocol.Id) == family);
        return latest is null ? protocol.VariantOf is null : latest.Protocol.Id == protocol.Id;
    }

    /// <summary>Whether another athlete answers to the name: then only the code tells who is meant.</summary>
    private static bool IsAmbiguous(Squad squad, Athlete athlete) =>
        squad.Athletes.Any(other => other.Id != athlete.Id && other.Aliases.Append(other.DisplayName).Append(other.Code).Append(other.Id).Any(text => string.Equals(text.Trim(), athlete.DisplayName.Trim(), StringComparison.OrdinalIgnoreCase)));

    private static IReadOnlyList<SheetHeat> Split(IReadOnlyList<string> labels, int size)
    {
        var heats = Math.Max(1, (labels.Count + size - 1) / size);
        return [.. Enumerable.Range(0, heats).Select(heat => new SheetHeat(heat + 1, [.. labels.Skip(heat * labels.Count / heats).Take(((heat + 1) * labels.Count / heats) - (heat * labels.Count / heats))]))];
    }
}

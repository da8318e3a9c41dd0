using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>Where everyone stands: recent level, band with its probability, best.</summary>
    /// <param name="standings">Where everyone stands.</param>
    /// <param name="label">How an athlete is labelled, by id.</param>
    /// <param name="format">How numbers are written.</param>
    public static Table Standing(Standings standings, Func<string, string> label, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(standings);
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            $"Where everyone stands, {Date(standings.On)}",
            [
                new("athlete"), TableColumn.Figures("level (tests)", "s"), TableColumn.Figures("interval", "s"), new("band of the level"), new("band of the latest test alone (chance)"), new("band to announce"), TableColumn.Figures("best", "s"),
            ],
            [.. standings.Athletes.Select(athlete => (IReadOnlyList<TableCell>)
            [
                label(athlete.AthleteId),
                TableCell.Shown($"{NumberFormat.Fixed(athlete.Level.Value, format.EntryDecimals)} ({Count(athlete.Level.Observations)})", athlete.Level.Value), Limits(athlete.Level, format),
                .. athlete.Band.Match<IReadOnlyList<TableCell>>(
                    band => [string.Join(" or ", band.Reached(athlete.Level)), $"{band.Observed} ({ChanceOfObserved(band)})", Announced(band)],
                    refusal => [TableCell.Refused(refusal), TableCell.Nothing, TableCell.Nothing]),
                TableCell.Figure(athlete.Best.TotalSeconds, format.EntryDecimals),
            ])])
        {
            Notes =
            [
                $"{standings.Athletes.Select(athlete => athlete.Level.ConfidenceLevel).FirstOrDefault()} intervals. The order is by level and no ranking: levels within noise of each other are not told apart.",
                "Level: mean of the last tests; its band: every band that its interval reaches. Chance: that the true total of the latest test lies in its band. A new band is announced where the chance of the latest test reaches what was chosen, or after two tests in a row: where the level may still lie in the band before, take the next test before acting on it.",
                .. standings.WithoutRecentTest.Count > 0 ? [$"Without a recent test: {Sentences.List([.. standings.WithoutRecentTest.Select(label)])}."] : Array.Empty<string>(),
                .. standings.Selection.Notes,
            ],
        };
    }

    /// <summary>The bands of a protocol with their edges, fastest first.</summary>
    /// <param name="bands">The bands that hold on a day.</param>
    /// <param name="protocol">The protocol.</param>
    /// <param name="on">The day.</param>
    public static Table Bands(IReadOnlyList<PerformanceBand> bands, Protocol protocol, DateOnly on)
    {
        ArgumentNullException.ThrowIfNull(bands);
        ArgumentNullException.ThrowIfNull(protocol);
        string Edge(Seconds edge) => NumberFormat.Fixed(edge.Value, edge.Value == Math.Floor(edge.Value) ? 0 : 1);
        return new Table(
            $"The bands of {protocol.Name}, {Date(on)}",
            [new("band"), TableColumn.Figures("from", "s"), TableColumn.Figures("to below", "s"), TableColumn.Figures("width", "s")],
            [.. bands.Select(band => (IReadOnlyList<TableCell>)[band.Name, TableCell.Shown(Edge(band.Low), band.Low.Value), TableCell.Shown(Edge(band.High), band.High.Value), TableCell.Shown(Edge(band.Width), band.Width.Value)])])
        {
            Notes = [bands.Count == 0 ? "No bands apply on this day." : "A total on an edge belongs to the slower band. The bands are the club's own choice, not a norm."],
        };
    }

    /// <summary>Mean levels of groups as they may be shared.</summary>
    public static Table GroupLevels(IReadOnlyList<GroupCell> groups, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentNullException.ThrowIfNull(format);
        return new Table(
            "Mean levels of groups, as they may be shared",
            [new("group"), TableColumn.Figures("athletes"), TableColumn.Figures("mean level", "s"), TableColumn.Figures("interval", "s")],
            [.. groups.Select(group => group.Figure.Match<IReadOnlyList<TableCell>>(
                mean => [group.Name, Count(group.Athletes), TableCell.Figure(mean.Value, format.EntryDecimals), Limits(mean, format)],
                _ => [group.Name, "withheld", "withheld", "withheld"]))])
        {
            Notes = ["Intervals that overlap show no difference between the groups; weights, sexes and ages are not allowed for.", $"Figures of fewer than {Count(SmallGroups.DefaultThreshold)} athletes are withheld, and as many others as it takes so that none can be found by subtraction."],
        };
    }

    /// <summary>The chance of the band that the latest total lies in: <c>97 %</c>, never a certainty.</summary>
    internal static string ChanceOfObserved(ProbableBandResult band)
    {
        var percent = 100 * band.Chances.First(chance => chance.Name == band.Observed).Chance.Value;
        return percent > 99 ? "> 99 %" : $"{NumberFormat.Fixed(percent, 0)} %";
    }

    private static string Announced(ProbableBandResult band) => band.Standing switch
    {
        BandStanding.Changed => $"{band.Announced}, new{(band.IsSlower is { } slower ? $" ({(slower ? "slower" : "faster")}{(band.InARow == 1 ? ", from one test" : "")})" : "")}",
        BandStanding.OnTheLine => $"on the line, {band.Announced} so far",
        _ => band.Announced ?? "none yet",
    };
}

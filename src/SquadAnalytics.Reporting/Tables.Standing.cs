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
                new("athlete"), TableColumn.Figures("level (tests)", "s"), TableColumn.Figures("interval", "s"), new("latest test in (probability)"), new("may be announced"), TableColumn.Figures("best", "s"),
            ],
            [.. standings.Athletes.Select(athlete => (IReadOnlyList<TableCell>)
            [
                label(athlete.AthleteId),
                TableCell.Shown($"{NumberFormat.Fixed(athlete.Level.Value, format.EntryDecimals)} ({Count(athlete.Level.Observations)})", athlete.Level.Value), Limits(athlete.Level, format),
                .. athlete.Band.Match<IReadOnlyList<TableCell>>(
                    band => [$"{band.Observed} ({NumberFormat.Fixed(band.Chances.First(chance => chance.Name == band.Observed).Chance.Value, 2)})", Announced(band)],
                    refusal => [TableCell.Refused(refusal), TableCell.Nothing]),
                TableCell.Figure(athlete.Best.TotalSeconds, format.EntryDecimals),
            ])])
        {
            Notes =
            [
                $"{standings.Athletes.Select(athlete => athlete.Level.ConfidenceLevel).FirstOrDefault()} intervals. The order is by level and no ranking: levels within noise of each other are not told apart.",
                "Level: mean of the last tests. Probability: that the true total of the latest test lies in its band. A new band is announced only from the probability that was chosen, or after two tests in a row.",
                .. standings.WithoutRecentTest.Count > 0 ? [$"Without a recent test: {Sentences.List([.. standings.WithoutRecentTest.Select(label)])}."] : Array.Empty<string>(),
                .. standings.Selection.Notes,
            ],
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
            Notes = [$"Figures of fewer than {Count(SmallGroups.DefaultThreshold)} athletes are withheld, and as many others as it takes so that none can be found by subtraction."],
        };
    }

    private static string Announced(ProbableBandResult band) => band.Standing switch
    {
        BandStanding.Changed => $"{band.Announced}, new",
        BandStanding.OnTheLine => $"on the line, {band.Announced} so far",
        _ => band.Announced ?? "none yet",
    };
}

using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>The set profile of a squad in one model: contrasts, and how athletes, sessions and sets scatter.</summary>
    public static Table Profile(ProfileModelResult model, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(format);
        var sets = model.Selection.Sessions[0].Protocol.Sets;
        return new Table(
            $"The set profile of {Sentences.Plural(model.Athletes.Count, "athlete")} in {Sentences.Plural(model.Selection.Sessions.Count, "session")}",
            [new("measure"), TableColumn.Figures("estimate"), TableColumn.Figures("interval"), TableColumn.Figures("degrees of freedom"), TableColumn.Figures("p")],
            [
                Row($"{Sentences.Sets(model.AfterSet + 1, sets)} minus {Sentences.Sets(1, model.AfterSet)}", model.LateContrast, format),
                Row("the part beyond a steady drift", model.KinkContrast, format),
                .. model.SetsAgainstFirst.Select((set, i) => Row($"set {Count(i + 2)} against the first", set, format)),
                Spread("SD between athletes: late effect", model.LateSpread),
                Spread("SD between athletes: level", model.AthleteSpread),
                Spread("SD between sessions of an athlete", model.SessionSpread),
                Spread("SD of a set", model.SetNoise),
            ])
        {
            OverAthletes = model.Athletes.Count,
            Notes = [$"{model.LateContrast.ConfidenceLevel} intervals; positive is slower. Percent from a model of logarithms.", .. model.Notes],
        };
    }

    /// <summary>By how much each athlete's late sets are slower, pulled toward the squad; in the order of the squad.</summary>
    public static Table LateEffects(ProfileModelResult model, Squad squad, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(squad);
        ArgumentNullException.ThrowIfNull(format);
        var rows = model.Athletes.ToDictionary(athlete => athlete.AthleteId, StringComparer.Ordinal);
        var last = model.Selection.Sessions[^1].Date;
        return new Table(
            $"Who slows after set {Count(model.AfterSet)}? Pulled toward the squad",
            [new("athlete"), TableColumn.Figures("sessions"), TableColumn.Figures("late sets against early", "%"), TableColumn.Figures("interval", "%"), TableColumn.Figures("against the squad", "%")],
            [.. squad.Athletes.Where(athlete => rows.ContainsKey(athlete.Id)).Select(athlete => (IReadOnlyList<TableCell>)
                [athlete.LabelOn(last), Count(rows[athlete.Id].Sessions), .. Signed(rows[athlete.Id].Late, format), rows[athlete.Id].Deviation.Match(deviation => Change(deviation, format), TableCell.Refused)])])
        {
            Notes = [$"{model.LateContrast.ConfidenceLevel} intervals; positive is slower. Pulled toward the squad: the fewer sessions, the more."],
        };
    }

    private static IReadOnlyList<TableCell> Spread(string name, Answer<Estimate> answer) =>
    [
        name, answer.Match(deviation => TableCell.Shown(NumberFormat.WithUnit(NumberFormat.Fixed(deviation.Value, 2), deviation.Unit), deviation.Value), TableCell.Refused),
        TableCell.Nothing, TableCell.Nothing, TableCell.Nothing,
    ];

    private static TableCell[] Signed(Answer<Estimate> answer, NumberFormat format) =>
        answer.Match<TableCell[]>(estimate => [Change(estimate, format), Limits(estimate, format)], refusal => [TableCell.Refused(refusal), TableCell.Nothing]);
}

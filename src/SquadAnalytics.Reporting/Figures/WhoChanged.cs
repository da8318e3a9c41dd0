using System.Globalization;
using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Who changed? Each athlete's change with its interval, sorted, the zone of changes too small to matter shaded.</summary>
public sealed record WhoChanged : Figure
{
    private readonly IReadOnlyList<LabelledEstimate> _rows;

    /// <summary>Makes the figure.</summary>
    /// <param name="changes">The squad's changes; sorted here, fastest first, refusals last.</param>
    /// <param name="squad">The squad, for how its athletes are labelled.</param>
    /// <exception cref="ArgumentException">There is no athlete.</exception>
    public WhoChanged(SquadChangesResult changes, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(squad);
        if (changes.Rows.Count == 0) throw new ArgumentException("There is no athlete to draw.", nameof(changes));
        Changes = changes;
        _rows = [.. changes.Rows
            .Select(row => new LabelledEstimate(squad.Athlete(row.AthleteId).LabelOn(changes.WeekFrom), row.Change.Select(change => change.Change))
            {
                Remark = row.Change.Match<string?>(change => change.Verdict.Words(), _ => null),
                IsSingledOut = row.IsFlagged,
            })
            .OrderBy(row => row.Estimate.Match(estimate => estimate.Value, _ => double.PositiveInfinity))];
    }

    /// <summary>The squad's changes.</summary>
    public SquadChangesResult Changes { get; }

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "Who changed?";

    /// <inheritdoc />
    public override string Caption =>
        $"Change of session total, {Week}, against each athlete's own tests before. Dot: change; line: {LevelText.Of(_rows)}; {Shaded}. "
        + $"Filled dots{(_rows.Any(row => row.IsSingledOut) ? "" : " (none this week)")}: flagged with {Sentences.Plural(_rows.Count(row => row.Estimate.IsEstimated), "athlete")} checked allowed for; of those flagged, expect at most {Share} to be false.";

    /// <inheritdoc />
    public override string AlternativeText => string.Join(" ", _rows.Select(row =>
        $"{row.Label}: {row.Estimate.Match(estimate => $"{Format.Change(estimate)} ({Format.ChangeLimits(estimate)}), {row.Remark}", refusal => Sentences.NoTestThisWeek(refusal) ?? Sentences.Refusal(refusal))}{(row.IsSingledOut ? ", flagged" : "")}."));

    private Estimate? Worthwhile => Changes.Rows.Select(row => row.Change.Match<Estimate?>(change => change.Worthwhile.Estimate, _ => null)).OfType<Estimate>().FirstOrDefault();

    private string Week => $"week of {Changes.WeekFrom.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}";

    private string Share => string.Create(CultureInfo.InvariantCulture, $"{Changes.FalseShare.Value:0.#} %");

    private string Shaded => Worthwhile is { } worthwhile ? $"shaded: smaller than the smallest worthwhile change of {Size(worthwhile)}" : "no worthwhile change is known";

    internal override Drawing Draw(FigureSize size) => new IntervalRows(_rows)
    {
        Heading = $"session total against each athlete's own tests before, {(Worthwhile?.Unit == Unit.Percent ? "%" : "s")}",
        AxisTitle = Worthwhile is { } worthwhile ? $"{Axis}; shaded: less than {Size(worthwhile)}" : Axis,
        Text = estimate => NumberFormat.WithUnit(NumberFormat.WithSign(estimate.Value, Format.Decimals(estimate)), estimate.Unit),
        Zone = Worthwhile?.Value,
    }.Draw(size);

    private string Axis => Worthwhile?.Unit == Unit.Percent ? "percent" : "seconds";

    private string Size(Estimate worthwhile) => NumberFormat.WithUnit(NumberFormat.Fixed(worthwhile.Value, Format.EntryDecimals), worthwhile.Unit);
}

using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>For whom did the blocks differ? Each athlete's own difference with its interval, sorted, what is too small to matter shaded.</summary>
public sealed record ForWhomDidItDiffer : Figure
{
    private readonly IReadOnlyList<LabelledEstimate> _rows;

    /// <summary>Makes the figure.</summary>
    /// <param name="firstBlock">Name of the earlier block.</param>
    /// <param name="secondBlock">Name of the later block.</param>
    /// <param name="changes">Each athlete's change between the blocks; those without are left out and counted in the caption.</param>
    /// <param name="squad">The squad, for how its athletes are labelled.</param>
    /// <exception cref="ArgumentException">No athlete has a change.</exception>
    public ForWhomDidItDiffer(string firstBlock, string secondBlock, SquadChangesResult changes, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(changes);
        ArgumentNullException.ThrowIfNull(squad);
        FirstBlock = firstBlock ?? throw new ArgumentNullException(nameof(firstBlock));
        SecondBlock = secondBlock ?? throw new ArgumentNullException(nameof(secondBlock));
        Changes = changes;
        _rows = [.. changes.Rows.Where(row => row.Change.IsEstimated)
            .Select(row => new LabelledEstimate(squad.Athlete(row.AthleteId).LabelOn(changes.WeekFrom), row.Change.Select(change => change.Change))
            {
                Remark = row.Change.GetOrThrow().Verdict.Words(),
                IsSingledOut = row.IsFlagged,
            })
            .OrderBy(row => row.Estimate.GetOrThrow().Value)];
        if (_rows.Count == 0) throw new ArgumentException("There is no athlete with a change to draw.", nameof(changes));
    }

    /// <summary>Name of the earlier block.</summary>
    public string FirstBlock { get; }

    /// <summary>Name of the later block.</summary>
    public string SecondBlock { get; }

    /// <summary>Each athlete's change between the blocks.</summary>
    public SquadChangesResult Changes { get; }

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "For whom did the blocks differ?";

    /// <inheritdoc />
    public override string Caption =>
        $"{SecondBlock} minus {FirstBlock}, mean session total of each athlete. Dot: difference; line: {LevelText.Of(_rows)} from the noise of the test; shaded: smaller than the smallest worthwhile change of {Size}. "
        + $"Filled dots: flagged with {Sentences.Plural(_rows.Count, "athlete")} checked allowed for. {LeftOut}A difference between blocks is not the effect of the training.";

    /// <inheritdoc />
    public override string AlternativeText => string.Join(" ", _rows.Select(row =>
        $"{row.Label}: {Format.Change(row.Estimate.GetOrThrow())} ({Format.ChangeLimits(row.Estimate.GetOrThrow())}), {row.Remark}{(row.IsSingledOut ? ", flagged" : "")}."));

    private Estimate Worthwhile => Changes.Rows.First(row => row.Change.IsEstimated).Change.GetOrThrow().Worthwhile.Estimate;

    private string Size => NumberFormat.WithUnit(NumberFormat.Fixed(Worthwhile.Value, Format.EntryDecimals), Worthwhile.Unit);

    private string LeftOut => Changes.Rows.Count == _rows.Count ? "" : $"Not drawn: {Sentences.Plural(Changes.Rows.Count - _rows.Count, "athlete")} without a test in both. ";

    internal override Drawing Draw(FigureSize size) => new IntervalRows(_rows)
    {
        Heading = $"{SecondBlock} minus {FirstBlock}",
        AxisTitle = $"{(Worthwhile.Unit == Unit.Percent ? "percent" : "seconds")}; shaded: less than {Size}",
        Text = estimate => NumberFormat.WithUnit(NumberFormat.WithSign(estimate.Value, Format.Decimals(estimate)), estimate.Unit),
        Zone = Worthwhile.Value,
    }.Draw(size);
}

using System.Globalization;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Who changed? Each athlete's change with its interval, sorted, the zone of changes too small to matter shaded.</summary>
public sealed record WhoChanged : Figure
{
    /// <summary>Makes the figure.</summary>
    /// <param name="changes">Later minus earlier seconds of each athlete; the remark is the verdict. They are sorted here, fastest first, refusals last.</param>
    /// <param name="smallestWorthwhile">Smallest worthwhile change S; above 0.</param>
    /// <param name="comparison">What is compared: <c>week of 3 March against the three tests before</c>.</param>
    /// <exception cref="ArgumentException">There is no athlete.</exception>
    public WhoChanged(IReadOnlyList<LabelledEstimate> changes, Seconds smallestWorthwhile, string comparison)
    {
        ArgumentNullException.ThrowIfNull(changes);
        if (changes.Count == 0) throw new ArgumentException("There is no athlete to draw.", nameof(changes));
        if (smallestWorthwhile.Value <= 0) throw new ArgumentOutOfRangeException(nameof(smallestWorthwhile), smallestWorthwhile, "The smallest worthwhile change lies above 0 s.");
        Changes = [.. changes.OrderBy(change => change.Estimate.Match(estimate => estimate.Value, _ => double.PositiveInfinity))];
        SmallestWorthwhile = smallestWorthwhile;
        Comparison = comparison;
    }

    /// <summary>The changes, fastest first, refusals last.</summary>
    public IReadOnlyList<LabelledEstimate> Changes { get; }

    /// <summary>Smallest worthwhile change S.</summary>
    public Seconds SmallestWorthwhile { get; }

    /// <summary>What is compared.</summary>
    public string Comparison { get; }

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "Who changed?";

    /// <inheritdoc />
    public override string Caption
    {
        get
        {
            var looked = Changes.Count(change => change.Estimate.IsEstimated);
            var expected = string.Create(CultureInfo.InvariantCulture, $"{(1 - Level) * looked:0.#}");
            return $"Change of session total, {Comparison}. Dot: change; line: {LevelText.Of(Changes)}; shaded: smaller than the smallest worthwhile change of {Format.Time(SmallestWorthwhile)}. Filled dots: the interval leaves out zero. "
                + $"With {Sentences.Plural(looked, "athlete")} looked at, about {expected} would be filled by chance alone.";
        }
    }

    /// <inheritdoc />
    public override string AlternativeText => string.Join(" ", Changes.Select(change =>
        $"{change.Label}: {change.Estimate.Match(estimate => $"{Format.Change(estimate)} ({Format.ChangeLimits(estimate)})", Sentences.Refusal)}{(change.Remark is { } remark ? $", {remark}" : "")}."));

    private double Level => Changes.Select(change => change.Estimate).Where(answer => answer.IsEstimated).Select(answer => answer.GetOrThrow().ConfidenceLevel).OfType<ConfidenceLevel>().FirstOrDefault().Fraction;

    internal override Drawing Draw(FigureSize size) => new IntervalRows([.. Changes.Select(change => change with { IsSingledOut = LeavesOutZero(change) })])
    {
        Heading = "change of session total",
        AxisTitle = $"seconds; shaded: less than {Format.Time(SmallestWorthwhile)}",
        Text = estimate => $"{NumberFormat.WithSign(estimate.Value, Format.Decimals(estimate))} s",
        Zone = SmallestWorthwhile.Value,
    }.Draw(size);

    private static bool LeavesOutZero(LabelledEstimate change) => change.Estimate.Match(estimate => estimate.Lower > 0 || estimate.Upper < 0, _ => false);
}

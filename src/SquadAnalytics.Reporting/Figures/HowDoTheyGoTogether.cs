using System.Globalization;
using ScottPlot;
using SquadAnalytics.Frames;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>How do two columns of a table go together? Dots, joined where each group has one value per place, or rows of dots over words.</summary>
public sealed partial record HowDoTheyGoTogether : Figure
{
    /// <summary>Groups that are named and told apart; further ones are drawn in grey.</summary>
    public const int NamedGroups = 5;

    /// <summary>Words that there is room for.</summary>
    public const int MostRows = 60;

    private readonly IReadOnlyList<FrameGroup> _groups;

    /// <summary>Makes the figure.</summary>
    /// <param name="frame">The table.</param>
    /// <param name="x">Name of the column across: numbers, dates, or words, which become rows.</param>
    /// <param name="y">Name of the column upwards: numbers.</param>
    /// <param name="by">Name of a column that tells groups apart, or null.</param>
    /// <exception cref="ArgumentException">There is no such column, <paramref name="y"/> does not hold numbers, no row has both, or there are more than 60 words.</exception>
    public HowDoTheyGoTogether(Frame frame, string x, string y, string? by = null)
    {
        ArgumentNullException.ThrowIfNull(frame);
        X = frame[x];
        Y = frame[y];
        By = by is null ? null : frame[by];
        if (!Y.IsNumeric) throw new ArgumentException($"{y} does not hold numbers, so it cannot be drawn upwards; name the columns the other way round or choose another.", nameof(y));
        _groups = FrameGroup.Of(X, Y, By);
        Points = _groups.Sum(static group => group.Points.Count);
        if (Points == 0) throw new ArgumentException($"No row has both {x} and {y}.", nameof(frame));
        Words = FrameGroup.HasWords(X) ? [.. X.Texts.OfType<string>().Distinct(StringComparer.Ordinal)] : [];
        if (Words.Count > MostRows) throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{x} holds {Words.Count} different words; there is room for {MostRows}. Filter or group the rows first."), nameof(x));
        LeftOut = frame.Count - Points;
    }

    /// <summary>The column across.</summary>
    public FrameColumn X { get; }

    /// <summary>The column upwards.</summary>
    public FrameColumn Y { get; }

    /// <summary>The column that tells groups apart, or null.</summary>
    public FrameColumn? By { get; }

    /// <summary>Rows drawn.</summary>
    public int Points { get; }

    /// <summary>Rows that lack one of the two.</summary>
    public int LeftOut { get; }

    /// <summary>The question that stands above; null for one that is made from the columns' names.</summary>
    public string? Question { get; init; }

    /// <summary>Whether dots of a group are joined; null to join them where each group has at most one value per place.</summary>
    public bool? Join { get; init; }

    /// <inheritdoc />
    public override string Title => Question ?? $"How do {X.Words} and {Y.Words} go together?";

    /// <inheritdoc />
    public override string Caption
    {
        get
        {
            var parts = new List<string> { $"{Sentences.Capital(Axis(Y))} against {Axis(X)}, {Sentences.Plural(Points, "row")}{(By is null ? "" : $", by {By.Words}")}." };
            if (_groups.Count > NamedGroups) parts.Add($"{Sentences.Plural(_groups.Count - NamedGroups, "further group")} in grey.");
            if (LeftOut > 0) parts.Add($"{Sentences.Plural(LeftOut, "row")} without a value left out.");
            parts.Add("The values as they stand in the table; nothing was fitted.");
            return string.Join(' ', parts);
        }
    }

    /// <inheritdoc />
    public override string AlternativeText
    {
        get
        {
            var told = _groups.Take(NamedGroups).Select(Told).ToList();
            if (_groups.Count > NamedGroups) told.Add($"{Sentences.Plural(_groups.Count - NamedGroups, "further group")}");
            return $"{Sentences.Capital(Axis(Y))} against {Axis(X)}. {string.Join("; ", told)}.";
        }
    }

    /// <summary>The words of the column across, in the order in which they stand in the table; empty for numbers and dates.</summary>
    internal IReadOnlyList<string> Words { get; }

    internal override Drawing Draw(FigureSize size) => Words.Count > 0 ? DrawRows(size) : DrawPlane(size);

    private string Told(FrameGroup group)
    {
        var values = group.Points.Select(static point => point.Y).ToList();
        var decimals = Tables.DecimalsOf(values);
        var unit = Y.Unit is { } symbol ? " " + symbol : "";
        string Number(double value) => NumberFormat.Fixed(value, decimals);
        var range = values.Min() < values.Max() ? $"{Number(values.Min())} to {Number(values.Max())}{unit}" : Number(values[0]) + unit;
        var ends = Words.Count > 0 ? "" : $", first {Number(values[0])}, last {Number(values[^1])}";
        return $"{(By is null ? "" : group.Name + ": ")}{Sentences.Plural(values.Count, "dot")}, {range}{ends}";
    }

    private static string Axis(FrameColumn column) => column.Unit is { } unit ? $"{column.Words}, {unit}" : column.Words;
}

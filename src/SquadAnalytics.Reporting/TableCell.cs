using System.Globalization;

namespace SquadAnalytics.Reporting;

/// <summary>A cell of a <see cref="Table"/>: the text that is shown and, for figures, the full-precision number that is exported.</summary>
public sealed record TableCell
{
    private TableCell(string text, double? number = null, bool isRefusal = false)
    {
        Text = text;
        Number = number;
        IsRefusal = isRefusal;
    }

    /// <summary>The text that is shown.</summary>
    public string Text { get; }

    /// <summary>The number behind the text, or null for words.</summary>
    public double? Number { get; }

    /// <summary>Whether the cell says why there is no number.</summary>
    public bool IsRefusal { get; }

    /// <summary>Over how many athletes the figure is an aggregate; null for one athlete's own figure and for words.</summary>
    public int? Athletes { get; private init; }

    /// <summary>A cell where nothing was recorded, shown as a dash.</summary>
    public static TableCell Nothing { get; } = new("–");

    /// <summary>A cell of words.</summary>
    public static TableCell Words(string text) => new(text ?? throw new ArgumentNullException(nameof(text)));

    /// <summary>A figure with fixed decimals.</summary>
    /// <param name="number">The number; finite.</param>
    /// <param name="decimals">Decimals shown.</param>
    public static TableCell Figure(double number, int decimals) => double.IsFinite(number)
        ? new(NumberFormat.Fixed(number, decimals), number)
        : throw new ArgumentOutOfRangeException(nameof(number), number, "A figure must be a finite number; show a refusal instead.");

    /// <summary>A figure with fixed decimals and its sign, plus included.</summary>
    public static TableCell SignedFigure(double number, int decimals) => Shown(NumberFormat.WithSign(number, decimals), number);

    /// <summary>A whole number.</summary>
    public static TableCell Count(int number) => new(number.ToString(CultureInfo.InvariantCulture), number);

    /// <summary>A figure that is shown as a text of its own, such as a value with its interval, and exported as the number.</summary>
    /// <param name="text">What is shown.</param>
    /// <param name="number">What is exported; finite.</param>
    public static TableCell Shown(string text, double number) => new(text, Figure(number, 0).Number);

    /// <summary>The reason why there is no number, shown in its row.</summary>
    public static TableCell Refused(NotEstimable refusal)
    {
        ArgumentNullException.ThrowIfNull(refusal);
        return new($"not estimable: needs {refusal.Needed}, has {refusal.Found}", isRefusal: true);
    }

    /// <summary>The cell as an aggregate over a group: what is exported or shared withholds it where the group is small.</summary>
    /// <param name="athletes">How many athletes stand behind it; 0 or more.</param>
    public TableCell OfGroup(int athletes) => athletes >= 0
        ? this with { Athletes = athletes }
        : throw new ArgumentOutOfRangeException(nameof(athletes), athletes, "A group has 0 or more athletes.");

    /// <summary>A cell as a file gave it back.</summary>
    internal static TableCell Restored(string text, double? number, bool isRefusal, int? athletes) => new(text, number, isRefusal) { Athletes = athletes };

    /// <summary>A cell of words.</summary>
    public static implicit operator TableCell(string text) => Words(text);

    /// <summary>A cell of words.</summary>
    public static TableCell FromString(string text) => Words(text);

    /// <summary>The text that is shown.</summary>
    public override string ToString() => Text;
}

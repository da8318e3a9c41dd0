using System.Globalization;

namespace SquadAnalytics.Reporting;

/// <summary>
/// How numbers are written: never more digits than the data carry. Times keep the resolution of their entry; an estimate gets as many
/// decimals as the half-width of its interval supports. Minus is U+2212 and always stands beside the word "faster".
/// </summary>
/// <remarks>Decimals of an estimate with half-width h: 1 - floor(log10 h), at least 0, at most one more than the entries have.
/// Common practice in reporting; no source.</remarks>
public sealed record NumberFormat
{
    private const double ZScoreNinety = 1.6448536269514722;

    /// <summary>Makes a format for data entered with a number of decimals.</summary>
    /// <param name="entryDecimals">Decimals of the times as written: 0, 1 or 2.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not 0, 1 or 2.</exception>
    public NumberFormat(int entryDecimals = 1)
    {
        if (entryDecimals is < 0 or > 2)
            throw new ArgumentOutOfRangeException(nameof(entryDecimals), entryDecimals, "Times are written with 0, 1 or 2 decimals.");
        EntryDecimals = entryDecimals;
    }

    /// <summary>Decimals of the times as written.</summary>
    public int EntryDecimals { get; }

    /// <summary>The format for sessions: the finest timing resolution among them, one decimal where none is recorded.</summary>
    public static NumberFormat For(IEnumerable<Session> sessions)
    {
        ArgumentNullException.ThrowIfNull(sessions);
        var steps = sessions.Select(session => session.TimingResolution?.Value).OfType<double>().Where(step => step > 0).ToList();
        return steps.Count == 0 ? new NumberFormat() : new NumberFormat(Math.Clamp((int)Math.Round(-Math.Log10(steps.Min())), 0, 2));
    }

    /// <summary>Decimals that an estimate with this half-width deserves.</summary>
    /// <param name="halfWidth">Half the width of its interval, in its unit; 0 or more.</param>
    public int Decimals(double halfWidth) =>
        halfWidth > 0 ? (int)Math.Clamp(1 - Math.Floor(Math.Log10(halfWidth)), 0, EntryDecimals + 1) : EntryDecimals + 1;

    /// <summary>Decimals of an estimate, its limits and its standard error.</summary>
    public int Decimals(Estimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        var halfWidth = estimate.Interval?.HalfWidth ?? ZScoreNinety * estimate.StandardError;
        return estimate.Unit switch
        {
            Unit.Percent or Unit.PercentPerSet or Unit.PercentPerWeek => halfWidth < 0.5 ? 2 : 1,
            Unit.Sessions or Unit.Load => 0,
            Unit.Probability => 2,
            Unit.None => halfWidth is > 0 and < 0.05 ? 3 : 2,
            Unit.LogSeconds or Unit.SecondsPerLoad => halfWidth is { } width and > 0 ? (int)Math.Clamp(1 - Math.Floor(Math.Log10(width)), 0, 6) : 4,
            _ => halfWidth is { } width ? Decimals(width) : EntryDecimals + 1,
        };
    }

    /// <summary>A time as entered, with its unit: <c>62.4 s</c>.</summary>
    public string Time(Seconds time) => $"{Fixed(time.Value, EntryDecimals)} s";

    /// <summary>A time that was set and not taken, as start intervals and edges of bands are: <c>100 s</c>, <c>97.5 s</c>.</summary>
    internal static string SetTime(Seconds time) => $"{Fixed(time.Value, time.Value == Math.Floor(time.Value) ? 0 : 1)} s";

    /// <summary>A standard deviation or typical error, one decimal more than the data: <c>2.55 s</c>.</summary>
    public string Spread(Seconds spread) => $"{Fixed(spread.Value, EntryDecimals + 1)} s";

    /// <summary>The estimated number with its unit: <c>5.98 s</c>.</summary>
    public string Value(Estimate estimate) => WithUnit(Fixed(estimate.Value, Decimals(estimate)), estimate.Unit);

    /// <summary>The limits with level and unit: <c>90 % interval 5.60 to 6.35 s</c>; null where the estimate has no interval.</summary>
    public string? Interval(Estimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        return estimate.Interval is { } interval ? $"{interval.ConfidenceLevel} interval {Limits(estimate)}" : null;
    }

    /// <summary>The limits with their unit, without the level: <c>5.60 to 6.35 s</c>; empty where the estimate has no interval.</summary>
    public string Limits(Estimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        if (estimate.Interval is not { } interval) return "";
        var decimals = Decimals(estimate);
        return WithUnit($"{Fixed(interval.Lower, decimals)} to {Fixed(interval.Upper, decimals)}", estimate.Unit);
    }

    /// <summary>Value and interval: <c>5.98 s (90 % interval 5.60 to 6.35 s)</c>.</summary>
    public string WithInterval(Estimate estimate) => Interval(estimate) is { } interval ? $"{Value(estimate)} ({interval})" : Value(estimate);

    /// <summary>A change without its sign, its direction in a word: <c>12.9 s faster</c>, <c>3.0 s slower</c>, <c>0.0 s different</c>.</summary>
    public string Change(Estimate change) => Directed(change.Value, Decimals(change), change.Unit);

    /// <summary>A change with its sign and the word, for tables: <c>−12.9 s (faster)</c>.</summary>
    public string SignedChange(Estimate change)
    {
        var decimals = Decimals(change);
        return $"{WithUnit(WithSign(change.Value, decimals), change.Unit)}{Word(change.Value, decimals, " (faster)", " (slower)", "")}";
    }

    /// <summary>The limits of a change in words: <c>6.7 to 19.1 s faster</c>, or <c>9.4 s faster to 3.0 s slower</c>; empty without an interval.</summary>
    public string ChangeLimits(Estimate change)
    {
        ArgumentNullException.ThrowIfNull(change);
        if (change.Interval is not { } interval) return "";
        var decimals = Decimals(change);
        var fast = Word(interval.Lower, decimals, -1, 1, 0);
        var slow = Word(interval.Upper, decimals, -1, 1, 0);
        if (fast <= 0 && slow <= 0 && fast != 0) return $"{Fixed(Math.Abs(interval.Upper), decimals)} to {Directed(interval.Lower, decimals, change.Unit)}";
        if (fast >= 0 && slow > 0) return $"{Fixed(Math.Abs(interval.Lower), decimals)} to {Directed(interval.Upper, decimals, change.Unit)}";
        return $"{Directed(interval.Lower, decimals, change.Unit)} to {Directed(interval.Upper, decimals, change.Unit)}";
    }

    /// <summary>A p-value with three decimals and no leading zero: <c>p = .016</c>, <c>p &lt; .001</c>.</summary>
    /// <param name="p">A probability from 0 to 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 1.</exception>
    public static string PValue(double p)
    {
        if (!(p is >= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(p), p, "A p-value lies between 0 and 1.");
        if (p < 0.001) return "p < .001";
        var text = Fixed(p, 3);
        return text == "1.000" ? "p > .999" : $"p = {text[1..]}";
    }

    /// <summary>A number with fixed decimals, a true minus sign, and never a minus before zero.</summary>
    public static string Fixed(double number, int decimals)
    {
        var text = Math.Abs(number).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return number < 0 && text.AsSpan().IndexOfAnyInRange('1', '9') >= 0 ? "−" + text : text;
    }

    /// <summary>A number with fixed decimals and its sign, plus included, except at zero.</summary>
    public static string WithSign(double number, int decimals)
    {
        var text = Fixed(number, decimals);
        return number > 0 && text.AsSpan().IndexOfAnyInRange('1', '9') >= 0 ? "+" + text : text;
    }

    /// <summary>A number and the symbol of its unit, where it has one.</summary>
    internal static string WithUnit(string number, Unit unit) => unit.Symbol() is { Length: > 0 } symbol ? $"{number} {symbol}" : number;

    private static string Directed(double number, int decimals, Unit unit)
    {
        var magnitude = Fixed(Math.Abs(number), decimals);
        return $"{WithUnit(magnitude, unit)} {Word(number, decimals, "faster", "slower", "different")}";
    }

    private static T Word<T>(double number, int decimals, T faster, T slower, T neither)
    {
        var shown = Math.Round(number, decimals, MidpointRounding.AwayFromZero);
        return shown < 0 ? faster : shown > 0 ? slower : neither;
    }
}

using System.Globalization;

namespace SquadAnalytics.Import;

/// <summary>One written time, read by the grammar that files and the typing grid share.</summary>
/// <remarks>
/// <para>After trimming: <c>62</c>, <c>62.4</c>, <c>62.40</c> are seconds; <c>1:02</c>, <c>1:02.4</c>, <c>0:58</c> are minutes and seconds, the seconds
/// with two digits from 00 to 59; <c>DNF</c> is not finished, <c>DNS</c> not started, a blank or <c>-</c> not recorded. Up to three decimals, up to 99999 s.
/// The timing resolution of the entry is the decimals typed. Anything else, 0 and negative times included, is unreadable and says why: nothing is corrected by guess.</para>
/// <para><c>default</c> is an entry that was not recorded. Source: common practice, no source.</para>
/// </remarks>
public readonly record struct TimeEntry
{
    /// <summary>What is accepted in such a cell, in words.</summary>
    public const string Accepted = "seconds (62, 62.4), minutes and seconds (1:02, 1:02.4), DNF, DNS, a dash or a blank";

    private const string TwoDigits = "the seconds after the colon need two digits from 00 to 59";
    private const int MaxDecimals = 3;

    private TimeEntry(EntryKind kind, Seconds? work, int decimals, string? reason)
    {
        Kind = kind;
        Work = work;
        Decimals = decimals;
        Reason = reason;
    }

    /// <summary>What was written.</summary>
    public EntryKind Kind { get; }

    /// <summary>The time, or null where there is none.</summary>
    public Seconds? Work { get; }

    /// <summary>How many decimals were typed.</summary>
    public int Decimals { get; }

    /// <summary>Why the text cannot be read, or null where it can.</summary>
    public string? Reason { get; }

    /// <summary>The step in which the time was written: 1, 0.1, 0.01 or 0.001 s; null where there is no time.</summary>
    public Seconds? Resolution => Kind == EntryKind.Timed ? ResolutionOf(Decimals) : null;

    /// <summary>Reads one cell.</summary>
    /// <param name="text">The cell as written; null counts as blank.</param>
    /// <param name="mark">Whether a comma may separate decimals, too.</param>
    public static TimeEntry Parse(string? text, DecimalMark mark = DecimalMark.Point)
    {
        var entry = (text ?? "").AsSpan().Trim();
        if (entry.IsEmpty || (entry.Length == 1 && IsDash(entry[0]))) return default;
        if (entry.Equals("DNF", StringComparison.OrdinalIgnoreCase)) return new TimeEntry(EntryKind.NotFinished, null, 0, null);
        if (entry.Equals("DNS", StringComparison.OrdinalIgnoreCase)) return new TimeEntry(EntryKind.NotStarted, null, 0, null);
        if (IsDash(entry[0])) return Unreadable(char.IsAsciiDigit(entry[^1]) ? "a time cannot be negative" : "not a time");

        var colon = entry.IndexOf(':');
        if (colon >= 0 && entry[(colon + 1)..].Contains(':')) return Unreadable("hours, minutes and seconds are too long for one set");
        var minutes = 0;
        if (colon >= 0 && !TryWhole(entry[..colon], 3, out minutes)) return Unreadable("the minutes before the colon are not a whole number");
        return TrySeconds(entry[(colon + 1)..], mark, colon >= 0, out var seconds, out var decimals) is { } reason ? Unreadable(reason) : Timed(minutes, seconds, decimals);
    }

    /// <summary>The step that a number of decimals stands for: 10^-decimals s.</summary>
    internal static Seconds ResolutionOf(int decimals) => new(1 / PowerOfTen(decimals));

    internal static bool IsDash(char sign) => sign is '-' or '\u2010' or '\u2011' or '\u2012' or '\u2013' or '\u2014' or '\u2212';

    /// <summary>The time as the grammar would accept it, or the status, or the reason.</summary>
    public override string ToString() => Kind switch
    {
        EntryKind.Timed => Work!.Value.Value.ToString($"F{Decimals}", CultureInfo.InvariantCulture),
        EntryKind.NotFinished => "DNF",
        EntryKind.NotStarted => "DNS",
        EntryKind.NotRecorded => "-",
        _ => Reason ?? "",
    };

    private static TimeEntry Unreadable(string reason) => new(EntryKind.Unreadable, null, 0, reason);

    // The typed digits are gathered as a whole number first: 62.4 becomes 624 / 10, which is the double nearest to 62.4.
    private static TimeEntry Timed(int minutes, long seconds, int decimals)
    {
        var scaled = (minutes * 60L * (long)PowerOfTen(decimals)) + seconds;
        return scaled == 0 ? Unreadable("a time must be above 0") : new TimeEntry(EntryKind.Timed, new Seconds(scaled / PowerOfTen(decimals)), decimals, null);
    }

    private static string? TrySeconds(ReadOnlySpan<char> text, DecimalMark mark, bool afterColon, out long scaled, out int decimals)
    {
        scaled = 0;
        decimals = 0;
        var point = mark == DecimalMark.Comma ? text.IndexOfAny('.', ',') : text.IndexOf('.');
        if (text.IndexOfAny('.', ',') is var sign and >= 0 && point != sign) return "a decimal comma is read only where the file is said to use it";
        var whole = point < 0 ? text : text[..point];
        if (afterColon && whole.Length != 2) return TwoDigits;
        if (!TryWhole(whole, 5, out var seconds)) return "not a time";
        if (afterColon && seconds > 59) return TwoDigits;
        if (point >= 0)
        {
            decimals = text.Length - point - 1;
            if (decimals > MaxDecimals) return "more than three decimals";
            if (!TryWhole(text[(point + 1)..], MaxDecimals, out var fraction)) return "not a time";
            scaled = fraction;
        }

        scaled += seconds * (long)PowerOfTen(decimals);
        return null;
    }

    private static bool TryWhole(ReadOnlySpan<char> digits, int most, out int number)
    {
        number = 0;
        if (digits.IsEmpty || digits.Length > most) return false;
        foreach (var digit in digits)
        {
            if (!char.IsAsciiDigit(digit)) return false;
            number = (number * 10) + (digit - '0');
        }

        return true;
    }

    private static double PowerOfTen(int exponent) => exponent switch { 0 => 1, 1 => 10, 2 => 100, _ => 1000 };
}

using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Import;

/// <summary>
/// The code of a printed recording sheet, for example <c>4TR-9KW-2MB</c>: it carries the date and a mark of the protocol, so that the file which
/// is filled in from the sheet needs no decision about either.
/// </summary>
/// <remarks>
/// Eight characters and a check character of an alphabet of 29 without letters that are read as digits. With weights 1 to 8 and a prime
/// number of characters, every wrong character and every swap of two is noticed. Source: the same arithmetic as ISBN-10 (ISO 2108), with 29 for 11.
/// </remarks>
public sealed partial record SheetCode
{
    private const string Alphabet = "23456789ABCDEFGHJKMNPQRTVWXYZ";
    private const int PayloadLength = 8;
    private const int MarkBits = 23;
    private static readonly DateOnly Epoch = new(2000, 1, 1);

    private readonly int _mark;

    private SheetCode(DateOnly date, int mark)
    {
        Date = date;
        _mark = mark;
    }

    /// <summary>The last date that a code can carry.</summary>
    public static DateOnly LastDate { get; } = Epoch.AddDays((1 << 15) - 1);

    /// <summary>The test date.</summary>
    public DateOnly Date { get; }

    /// <summary>The code of a sheet.</summary>
    /// <param name="protocol">The protocol.</param>
    /// <param name="date">The test date, from 2000-01-01 to <see cref="LastDate"/>.</param>
    public static SheetCode Of(Protocol protocol, DateOnly date)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        return date >= Epoch && date <= LastDate
            ? new SheetCode(date, MarkOf(protocol))
            : throw new ArgumentOutOfRangeException(nameof(date), date, FormattableString.Invariant($"A sheet's date lies between {Epoch:yyyy-MM-dd} and {LastDate:yyyy-MM-dd}."));
    }

    /// <summary>Whether the sheet was made for this protocol as it is now.</summary>
    public bool IsFor(Protocol protocol)
    {
        ArgumentNullException.ThrowIfNull(protocol);
        return _mark == MarkOf(protocol);
    }

    /// <summary>Reads a code; null where it is none, or was copied wrongly.</summary>
    /// <param name="text">The code: capitals or not, with or without its hyphens.</param>
    public static SheetCode? Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var values = text.Where(static sign => sign is not ('-' or ' ')).Select(static sign => Alphabet.IndexOf(char.ToUpperInvariant(sign), StringComparison.Ordinal)).ToList();
        if (values.Count != PayloadLength + 1 || values.Contains(-1) || values[^1] != Check(values)) return null;
        var payload = values.Take(PayloadLength).Aggregate(0L, static (sum, value) => (sum * Alphabet.Length) + value);
        var days = payload >> MarkBits;
        return days < 1 << 15 ? new SheetCode(Epoch.AddDays((int)days), (int)(payload & ((1 << MarkBits) - 1))) : null;
    }

    /// <summary>The code as printed, in three groups of three.</summary>
    public override string ToString()
    {
        var payload = ((long)(Date.DayNumber - Epoch.DayNumber) << MarkBits) | (long)_mark;
        var values = new int[PayloadLength];
        for (var k = PayloadLength - 1; k >= 0; k--, payload /= Alphabet.Length) values[k] = (int)(payload % Alphabet.Length);
        var signs = string.Concat(values.Append(Check(values)).Select(static value => Alphabet[value]));
        return $"{signs[..3]}-{signs[3..6]}-{signs[6..]}";
    }

    /// <summary>Finds a code in a title line: behind the word "sheet", or standing by itself in three groups.</summary>
    /// <param name="line">The line.</param>
    /// <param name="rest">The line without the code.</param>
    /// <param name="isDamaged">Whether something stands there that was meant as a code and is none.</param>
    internal static SheetCode? Find(string line, out string rest, out bool isDamaged)
    {
        (rest, isDamaged) = (line, false);
        foreach (Match match in Written().Matches(line))
        {
            var code = Parse(match.Groups["code"].Value);
            isDamaged |= code is null && match.Groups["word"].Success;
            if (code is null) continue;
            (rest, isDamaged) = (line.Remove(match.Index, match.Length).Trim(' ', ',', ';'), false);
            return code;
        }

        return null;
    }

    private static int Check(IEnumerable<int> values) => values.Take(PayloadLength).Select(static (value, k) => (k + 1) * value).Sum() % Alphabet.Length;

    private static int MarkOf(Protocol protocol)
    {
        var hash = SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{protocol.Id}\n{protocol.Key}")));
        return ((hash[0] << 16) | (hash[1] << 8) | hash[2]) & ((1 << MarkBits) - 1);
    }

    [GeneratedRegex(@"(?<![\p{L}\d])(?:(?<word>sheet|code|bogen|feuille|hoja|foglio)\s*[:#]?\s*)?(?<code>[0-9A-Z]{3}-[0-9A-Z]{3}-[0-9A-Z]{3})(?![\p{L}\d-])|(?<![\p{L}\d])(?<word>sheet)\s*[:#]?\s*(?<code>[0-9A-Z]{9}|[0-9A-Z]{3} [0-9A-Z]{3} [0-9A-Z]{3})(?![\p{L}\d])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}

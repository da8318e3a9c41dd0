using System.Globalization;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Import;

/// <summary>Understands what is written above a column.</summary>
internal static partial class ColumnHeader
{
    private const int MostSets = 60;

    // Headers met on clipboards, as name keys; a few languages, because a club's sheet is rarely in English only.
    private static readonly Dictionary<string, ColumnRole> Words = Table(
        (ColumnRole.Athlete, "athlete|athlete id|athlete name|name|names|full name|boxer|boxer name|code|who|member|athlet|sportler|boxer in|nom|athlète|boxeur|nombre|atleta|boxeador|nome|pugile|zawodnik|imię|imię i nazwisko|nazwisko|sporcu|ad|ad soyad|isim|jméno|namn|navn|naam|имя|спортсмен|боксер"),
        (ColumnRole.Date, "date|test date|datum|fecha|data|tarih|dato|дата"),
        (ColumnRole.Protocol, "protocol|protokoll|protocolo|protocole|protokół|protokol|circuit|test|zirkel"),
        (ColumnRole.Occasion, "occasion|session|test no|attempt|einheit|sitzung|séance|sesión|seans"),
        (ColumnRole.Place, "place|gym|hall|venue|ort|halle|lieu|lugar"),
        (ColumnRole.Timer, "timer|timed by|timekeeper|zeitnehmer|chronométreur|cronometrador"),
        (ColumnRole.Temperature, "temperature|temp|temperatur|température|temperatura"),
        (ColumnRole.Total, "total|sum|session total|total time|total s|gesamt|summe|gesamtzeit|totale|somme|suma|razem|toplam|итого"),
        (ColumnRole.SetNumber, "set|set no|set number|set nr|satz|serie|série|seria"),
        (ColumnRole.StationName, "station|station no|station number|exercise|übung|exercice|ejercicio|ćwiczenie"),
        (ColumnRole.Time, "seconds|second|sec|secs|s|time|time s|time sec|set time|work|work time|work s|zeit|sekunden|temps|secondes|tiempo|segundos|czas|sekundy|süre|saniye|время"));

    /// <summary>Reads one header.</summary>
    public static Column Read(int index, string text)
    {
        var header = text.Trim();
        var key = NameKey.Of(WithoutUnit().Replace(header, " "));
        if (SetOnly().Match(key) is { Success: true } set && SetNumber(set) is { } number) return new Column(index, header, ColumnRole.SetTime) { Set = number };
        if (StationOfSet().Match(key) is { Success: true } station && SetNumber(station) is { } stationSet)
            return new Column(index, header, ColumnRole.StationTime) { Set = stationSet, Station = StationNumber(station.Groups["station"].Value) ?? AfterSetNumber().Replace(header, "").Trim() };
        return new Column(index, header, Words.GetValueOrDefault(key));
    }

    /// <summary>Whether a header is a number and nothing else.</summary>
    public static bool IsBareNumber(string header) => int.TryParse(header, NumberStyles.None, CultureInfo.InvariantCulture, out _);

    private static int? SetNumber(Match match) =>
        int.Parse(match.Groups["set"].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture) is var number and >= 1 and <= MostSets ? number : null;

    private static string? StationNumber(string text) => NumberedStation().Match(text) is { Success: true } numbered ? numbered.Groups["n"].Value : null;

    private static Dictionary<string, ColumnRole> Table(params (ColumnRole Role, string Words)[] roles) =>
        roles.SelectMany(role => role.Words.Split('|').Select(word => (Key: NameKey.Of(word), role.Role))).DistinctBy(word => word.Key).ToDictionary(word => word.Key, word => word.Role, StringComparer.Ordinal);

    [GeneratedRegex(@"^[^0-9]*[0-9]+[\s\-:/,._–]*", RegexOptions.CultureInvariant)]
    private static partial Regex AfterSetNumber();

    [GeneratedRegex(@"[(\[][^)\]]*[)\]]", RegexOptions.CultureInvariant)]
    private static partial Regex WithoutUnit();

    [GeneratedRegex(@"^(SET|S|SATZ|SERIE|SERIA|ROUND|R)? ?(TIME )?(?<set>[0-9]{1,3})( ?(TIME|TIMES|TOTAL|ZEIT|S|SEC|SECONDS))?$", RegexOptions.CultureInvariant)]
    private static partial Regex SetOnly();

    [GeneratedRegex(@"^(SET|S|SATZ|SERIE|SERIA|ROUND|R) ?(?<set>[0-9]{1,3}) ?(?<station>\D.*)$", RegexOptions.CultureInvariant)]
    private static partial Regex StationOfSet();

    [GeneratedRegex("^(STATION|STN|ST)? ?0*(?<n>[1-9][0-9]?)$", RegexOptions.CultureInvariant)]
    private static partial Regex NumberedStation();
}

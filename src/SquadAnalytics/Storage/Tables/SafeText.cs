namespace SquadAnalytics.Storage.Tables;

/// <summary>Keeps text from being run as a formula by the spreadsheet that opens a table, and gives it back exactly.</summary>
internal static class SafeText
{
    private const char Mark = '\'';

    public static string Protect(string text) => NeedsMark(text) ? Mark + text : text;

    public static string Restore(string text) => text.Length > 1 && text[0] == Mark && NeedsMark(text[1..]) ? text[1..] : text;

    // The characters that OWASP lists for CSV injection; a text that already begins with the mark gets one more, so that reading is unambiguous.
    private static bool NeedsMark(string text) =>
        text.Length > 0 && (text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' || (text[0] == Mark && NeedsMark(text[1..])));
}

namespace SquadAnalytics.Workbench.Commands;

/// <summary>A text as part of a file's name, on every system.</summary>
internal static class PlainName
{
    /// <summary>Letters, digits and hyphens stay; everything else becomes a hyphen.</summary>
    public static string Of(string text) => new([.. text.Select(static sign => char.IsAsciiLetterOrDigit(sign) ? sign : '-')]);
}

using System.Text.RegularExpressions;

namespace SquadAnalytics.Import;

/// <summary>What the title lines above a block say.</summary>
/// <param name="DateText">The date as written, or null.</param>
/// <param name="Protocol">The text that names the protocol, or null.</param>
/// <param name="IsLabelled">Whether the protocol stands behind the word "protocol"; otherwise the whole title may contain its name.</param>
internal sealed partial record BlockTitle(string? DateText, string? Protocol, bool IsLabelled)
{
    /// <summary>The code of the recording sheet that was filled in, or null.</summary>
    public SheetCode? Sheet { get; init; }

    /// <summary>No title.</summary>
    public static BlockTitle None { get; } = new(null, null, false);

    /// <summary>Adds one more title line; what it says replaces what an earlier one said.</summary>
    public BlockTitle With(string line)
    {
        var title = this;
        if (SheetCode.Find(line, out var withoutCode, out _) is { } sheet)
        {
            title = title with { Sheet = sheet };
            line = withoutCode;
        }

        if (DateReading.Find(line, out var rest) is not null)
        {
            title = title with { DateText = line };
            line = rest;
        }

        if (Label().Match(line) is { Success: true } label) return title with { Protocol = label.Groups["name"].Value.Trim(), IsLabelled = true };
        return title.IsLabelled || line.Length == 0 ? title : title with { Protocol = title.Protocol is null ? line : $"{title.Protocol} {line}" };
    }

    [GeneratedRegex(@"^\s*(protocol|circuit|test|protokoll|protocole|protocolo)\s*[:=]\s*(?<name>.+)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Label();
}

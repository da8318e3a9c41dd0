using SquadAnalytics.Notebooks.Parameters;

namespace SquadAnalytics.Notebooks.Running;

/// <summary>A value chosen for a parameter.</summary>
/// <param name="Name">The parameter's name.</param>
/// <param name="Value">The value as typed.</param>
public sealed record ParameterSetting(string Name, string Value)
{
    /// <summary>Reads <c>NAME=VALUE</c>.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="ParameterException">There is no equals sign with a name before it.</exception>
    public static ParameterSetting Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var equals = text.IndexOf('=', StringComparison.Ordinal);
        return equals > 0
            ? new(text[..equals].Trim(), text[(equals + 1)..])
            : throw new ParameterException($"'{text}' does not set a parameter: write NAME=VALUE.");
    }
}

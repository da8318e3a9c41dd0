using System.Globalization;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Notebooks.Parameters;

/// <summary>
/// Reads the parameters of a notebook from the cell tagged <c>parameters</c>, and puts chosen values into it. The cell holds literals
/// only, one per line: <c>string athlete = "B07"; // whom it is about [athlete]</c>. What stands in brackets at the end of the comment
/// says what may be chosen: <c>[athlete]</c>, <c>[block]</c>, <c>[protocol]</c>, <c>[date]</c>, a range <c>[0.5..0.99]</c> or a list <c>[raw|log]</c>.
/// </summary>
public static partial class ParametersCell
{
    private static readonly string[] LogbookChoices = ["athlete", "block", "protocol", "date"];

    /// <summary>Reads the parameters.</summary>
    /// <param name="source">The cell's code.</param>
    /// <exception cref="ParameterException">A line is not such a literal; the message names it.</exception>
    public static IReadOnlyList<NotebookParameter> Read(string source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var parameters = new List<NotebookParameter>();
        var lines = source.Split('\n');
        for (var index = 0; index < lines.Length; index++)
        {
            if (IsSilent(lines[index])) continue;
            var parameter = ReadLine(lines[index], index + 1);
            if (parameters.Any(other => other.Name == parameter.Name)) throw new ParameterException($"Line {index + 1} of the parameters cell names {parameter.Name} a second time.");
            parameters.Add(parameter);
        }
        return parameters;
    }

    /// <summary>The cell's code with chosen values in place of its own; lines and comments stay as they are.</summary>
    /// <param name="source">The cell's code.</param>
    /// <param name="parameters">The parameters with their values.</param>
    public static string Write(string source, IReadOnlyList<NotebookParameter> parameters)
    {
        ArgumentNullException.ThrowIfNull(source);
        ArgumentNullException.ThrowIfNull(parameters);
        var lines = source.Split('\n');
        for (var index = 0; index < lines.Length; index++)
        {
            if (IsSilent(lines[index]) || Line().Match(lines[index]) is not { Success: true } match) continue;
            var chosen = parameters.FirstOrDefault(parameter => parameter.Name == match.Groups["name"].Value);
            if (chosen is null || ReadLine(lines[index], index + 1).Value == chosen.Value) continue;
            var literal = match.Groups["literal"];
            lines[index] = string.Concat(lines[index].AsSpan(0, literal.Index), chosen.Literal(), lines[index].AsSpan(literal.Index + literal.Length));
        }
        return string.Join('\n', lines);
    }

    private static bool IsSilent(string line) => line.Trim() is "" || line.TrimStart().StartsWith("//", StringComparison.Ordinal);

    private static NotebookParameter ReadLine(string line, int number)
    {
        var match = Line().Match(line);
        if (!match.Success) throw new ParameterException($"Line {number} of the parameters cell is not a literal such as: string athlete = \"B07\"; // whom it is about");
        var literal = match.Groups["literal"].Value;
        var (type, optional) = TypeOf(match.Groups["type"].Value, literal, number);
        var text = match.Groups["comment"].Value.Trim();
        var hint = Hint().Match(text);
        var parameter = new NotebookParameter(match.Groups["name"].Value, type, optional, null) { Description = hint.Success ? text[..hint.Index].Trim() : text };
        if (hint.Success) parameter = WithHint(parameter, hint.Groups["hint"].Value);
        if (literal == "null") return optional ? parameter : throw new ParameterException($"Line {number} of the parameters cell: {parameter.Name} may only be null when its type ends in '?'.");
        try
        {
            return parameter.WithValue(ValueOf(literal));
        }
        catch (ParameterException error)
        {
            throw new ParameterException($"Line {number} of the parameters cell: {error.Message}");
        }
    }

    private static (ParameterType Type, bool Optional) TypeOf(string name, string literal, int line)
    {
        var type = name.TrimEnd('?') switch
        {
            "string" => ParameterType.Text,
            "double" => ParameterType.Number,
            "int" => ParameterType.WholeNumber,
            "bool" => ParameterType.YesNo,
            "DateOnly" => ParameterType.Date,
            "var" when literal.StartsWith('"') => ParameterType.Text,
            "var" when literal is "true" or "false" => ParameterType.YesNo,
            "var" when literal.StartsWith("new DateOnly", StringComparison.Ordinal) => ParameterType.Date,
            "var" when literal.AsSpan().ContainsAny('.', 'e') => ParameterType.Number,
            "var" when literal != "null" => ParameterType.WholeNumber,
            _ => throw new ParameterException($"Line {line} of the parameters cell: a parameter is a string, double, int, bool or DateOnly, not '{name}'."),
        };
        return (type, name.EndsWith('?'));
    }

    private static string ValueOf(string literal)
    {
        if (literal.StartsWith('"')) return Escape().Replace(literal[1..^1], static match => Unescaped(match.Value));
        if (Date().Match(literal) is not { Success: true } date) return literal.TrimEnd('d').Replace("_", "", StringComparison.Ordinal);
        return $"{date.Groups["year"].Value.PadLeft(4, '0')}-{date.Groups["month"].Value.PadLeft(2, '0')}-{date.Groups["day"].Value.PadLeft(2, '0')}";
    }

    private static string Unescaped(string escape) => escape[1] switch
    {
        'n' => "\n",
        't' => "\t",
        'u' => ((char)int.Parse(escape.AsSpan(2), NumberStyles.HexNumber, CultureInfo.InvariantCulture)).ToString(),
        var letter => letter.ToString(),
    };

    private static NotebookParameter WithHint(NotebookParameter parameter, string hint)
    {
        if (LogbookChoices.Contains(hint, StringComparer.Ordinal)) return parameter with { ChosenFrom = hint };
        if (hint.Contains('|', StringComparison.Ordinal)) return parameter with { Choices = hint.Split('|', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries) };
        var ends = hint.Split("..");
        if (ends.Length == 2 && Number(ends[0]) is { } minimum && Number(ends[1]) is { } maximum && minimum <= maximum) return parameter with { Minimum = minimum, Maximum = maximum };
        return parameter with { Description = $"{parameter.Description} [{hint}]".Trim() };
    }

    private static double? Number(string text) => double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    [GeneratedRegex("""^\s*(?<type>[A-Za-z]+\??)\s+(?<name>[A-Za-z_]\w*)\s*=\s*(?<literal>"(?:[^"\\]|\\["\\nt]|\\u[0-9a-fA-F]{4})*"|-?[0-9][0-9_]*(?:\.[0-9]+)?(?:[eE][+-]?[0-9]+)?d?|true|false|null|new(?: DateOnly)?\([^()]*\))\s*;\s*(?://(?<comment>.*))?$""", RegexOptions.CultureInvariant)]
    private static partial Regex Line();

    [GeneratedRegex(@"^new(?: DateOnly)?\(\s*(?<year>\d{1,4})\s*,\s*(?<month>\d{1,2})\s*,\s*(?<day>\d{1,2})\s*\)$", RegexOptions.CultureInvariant)]
    private static partial Regex Date();

    [GeneratedRegex(@"\\(?:u[0-9a-fA-F]{4}|.)", RegexOptions.CultureInvariant)]
    private static partial Regex Escape();

    [GeneratedRegex(@"\[(?<hint>[^\[\]]+)\]\s*$", RegexOptions.CultureInvariant)]
    private static partial Regex Hint();
}

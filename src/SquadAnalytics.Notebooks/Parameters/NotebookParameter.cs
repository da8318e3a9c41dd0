using System.Globalization;

namespace SquadAnalytics.Notebooks.Parameters;

/// <summary>A value that a notebook lets its reader choose: one line of its parameters cell.</summary>
/// <param name="Name">Its name in the code.</param>
/// <param name="Type">What its value is.</param>
/// <param name="IsOptional">Whether it may be left empty.</param>
/// <param name="Value">Its value as text, a number with a decimal point, a date as year-month-day; null when it is left empty.</param>
public sealed record NotebookParameter(string Name, ParameterType Type, bool IsOptional, string? Value)
{
    /// <summary>What it means, from the comment behind it; empty where there is none.</summary>
    public string Description { get; init; } = "";

    /// <summary>What it is chosen from in the logbook: <c>athlete</c>, <c>block</c>, <c>protocol</c>, <c>date</c>; or null.</summary>
    public string? ChosenFrom { get; init; }

    /// <summary>The values that it may take, or an empty list where any is allowed.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>Its smallest value, or null.</summary>
    public double? Minimum { get; init; }

    /// <summary>Its largest value, or null.</summary>
    public double? Maximum { get; init; }

    /// <summary>The same parameter with another value.</summary>
    /// <param name="text">The value as a person typed it.</param>
    /// <exception cref="ParameterException">The value does not fit; the message says what would.</exception>
    public NotebookParameter WithValue(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length == 0 && IsOptional) return this with { Value = null };
        var value = Checked(text.Trim(), text);
        if (Choices.Count > 0 && !Choices.Contains(value, StringComparer.Ordinal)) throw Wrong(text, "one of " + string.Join(", ", Choices));
        if (Type is ParameterType.Number or ParameterType.WholeNumber) CheckRange(value, text);
        return this with { Value = value };
    }

    /// <summary>The value as C# writes it.</summary>
    public string Literal()
    {
        if (Value is null) return "null";
        return Type switch
        {
            ParameterType.Text => Quoted(Value),
            ParameterType.Number => Value.AsSpan().ContainsAny(".eE") ? Value : Value + ".0",
            ParameterType.Date => DateLiteral(Value),
            _ => Value,
        };
    }

    /// <summary>Name and value.</summary>
    public override string ToString() => $"{Name} = {Value ?? "(empty)"}";

    private string Checked(string trimmed, string text) => Type switch
    {
        ParameterType.Text => text,
        ParameterType.Number => double.TryParse(trimmed, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number.ToString("R", CultureInfo.InvariantCulture)
            : throw Wrong(text, "a number with a decimal point, for example 1.5"),
        ParameterType.WholeNumber => int.TryParse(trimmed, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole)
            ? whole.ToString(CultureInfo.InvariantCulture)
            : throw Wrong(text, "a whole number, for example 3"),
        ParameterType.YesNo => trimmed.ToLowerInvariant() switch
        {
            "true" or "yes" => "true",
            "false" or "no" => "false",
            _ => throw Wrong(text, "true or false"),
        },
        _ => DateOnly.TryParseExact(trimmed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)
            : throw Wrong(text, "a date as year-month-day, for example 2026-03-01"),
    };

    private void CheckRange(string value, string text)
    {
        var number = double.Parse(value, CultureInfo.InvariantCulture);
        if (number < Minimum || number > Maximum)
            throw Wrong(text, string.Create(CultureInfo.InvariantCulture, $"a number from {Minimum} to {Maximum}"));
    }

    private ParameterException Wrong(string text, string expected) => new($"'{text}' does not fit parameter {Name}: it must be {expected}.");

    private static string DateLiteral(string value)
    {
        var date = DateOnly.ParseExact(value, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        return string.Create(CultureInfo.InvariantCulture, $"new DateOnly({date.Year}, {date.Month}, {date.Day})");
    }

    private static string Quoted(string text)
    {
        var quoted = new System.Text.StringBuilder("\"");
        foreach (var letter in text)
        {
            if (letter is '"' or '\\') quoted.Append('\\').Append(letter);
            else if (char.IsControl(letter) || letter is '\u2028' or '\u2029') quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)letter:x4}");
            else quoted.Append(letter);
        }
        return quoted.Append('"').ToString();
    }
}

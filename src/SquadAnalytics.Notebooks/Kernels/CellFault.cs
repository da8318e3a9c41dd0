namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>What went wrong in a cell.</summary>
/// <param name="Message">What happened, in words.</param>
public sealed record CellFault(string Message)
{
    /// <summary>The name of the exception or the code of the compiler's message, or null.</summary>
    public string? Name { get; init; }

    /// <summary>Line within the cell, from 1, or null where it is not known.</summary>
    public int? Line { get; init; }

    /// <summary>Column within the line, from 1, or null where it is not known.</summary>
    public int? Column { get; init; }

    /// <summary>The line of the cell's source, or null where the line is not known.</summary>
    public string? Excerpt { get; init; }

    /// <summary>The calls that led there, innermost first; empty where there is none.</summary>
    public IReadOnlyList<string> Trace { get; init; } = [];

    /// <summary>The message with its place: <c>line 3: Attempted to divide by zero.</c></summary>
    public override string ToString() => (Line, Column) switch
    {
        ({ } line, { } column) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"line {line}, column {column}: {Message}"),
        ({ } line, null) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"line {line}: {Message}"),
        _ => Message,
    };
}

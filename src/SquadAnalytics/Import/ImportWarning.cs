namespace SquadAnalytics.Import;

/// <summary>Something in a kept row that looks implausible. It is kept as written: leaving it out needs a person's reason.</summary>
/// <param name="Place">Where the row stands.</param>
/// <param name="Column">Header of the column, or null where it concerns the row.</param>
/// <param name="Text">What is odd, in words.</param>
public sealed record ImportWarning(RowPlace Place, string? Column, string Text)
{
    /// <summary>Place and text.</summary>
    public override string ToString() => $"{Place}{(Column is null ? "" : $", column '{Column}'")}: {Text}";
}

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>Text that a cell wrote to the console.</summary>
/// <param name="Text">The text.</param>
/// <param name="IsError">Whether it was written to standard error.</param>
public sealed record WrittenText(string Text, bool IsError) : CellOutput
{
    /// <inheritdoc />
    public override long Size() => Text.Length;
}

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>A value that a cell displayed or ended in, in one or more forms of the same content.</summary>
/// <param name="Forms">The forms, richest first.</param>
/// <param name="IsResult">Whether it is the value that the cell ended in.</param>
public sealed record ShownValue(IReadOnlyList<MimeContent> Forms, bool IsResult) : CellOutput
{
    /// <inheritdoc />
    public override long Size() => Forms.Sum(static form => (long)form.Content.Length);

    /// <summary>The content of one type, or null where the value has no such form.</summary>
    /// <param name="mimeType">The type, for example <c>image/svg+xml</c>.</param>
    public string? Form(string mimeType) => Forms.FirstOrDefault(form => form.MimeType == mimeType)?.Content;
}

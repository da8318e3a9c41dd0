namespace SquadAnalytics.Reporting.Documents;

/// <summary>A file of an export, not written yet.</summary>
/// <param name="Name">Its name, without a folder.</param>
/// <param name="Content">Its bytes.</param>
public sealed record ExportedFile(string Name, ReadOnlyMemory<byte> Content)
{
    /// <summary>Name and size.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Name} ({Content.Length} bytes)");
}

namespace SquadAnalytics.Storage;

/// <summary>A source file to be kept, unaltered, in the logbook's folder of imports.</summary>
/// <param name="Name">Name of the copy: a plain file name.</param>
/// <param name="Content">The file's bytes.</param>
public sealed record ImportCopy(string Name, ReadOnlyMemory<byte> Content)
{
    /// <summary>Name and size.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Name} ({Content.Length} bytes)");
}

using SquadAnalytics.Internals;

namespace SquadAnalytics.Import;

/// <summary>A file to import: its name and its bytes, read when the import asks for them.</summary>
public sealed class ImportSource
{
    private readonly Func<byte[]> _read;

    private ImportSource(string name, Func<byte[]> read)
    {
        Name = Require.Text(name);
        _read = read;
    }

    /// <summary>The name that reports and decisions show.</summary>
    public string Name { get; }

    /// <summary>A file on disk; read when the import runs.</summary>
    /// <param name="path">Its path, absolute or relative; also the name that reports show.</param>
    public static ImportSource FromFile(string path) => new(path, () => File.ReadAllBytes(path));

    /// <summary>Bytes that are at hand already, for example a file dropped on a page.</summary>
    /// <param name="name">The file's name.</param>
    /// <param name="content">Its bytes.</param>
    public static ImportSource FromBytes(string name, ReadOnlyMemory<byte> content)
    {
        var bytes = content.ToArray();
        return new ImportSource(name, () => bytes);
    }

    /// <summary>Text that is at hand already, for example pasted from the clipboard.</summary>
    /// <param name="name">A name for it.</param>
    /// <param name="text">The text.</param>
    public static ImportSource FromText(string name, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return new ImportSource(name, () => System.Text.Encoding.UTF8.GetBytes(text));
    }

    /// <summary>The bytes.</summary>
    internal byte[] Read() => _read();

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}

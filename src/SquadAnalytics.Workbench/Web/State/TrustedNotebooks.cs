using SquadAnalytics.Notebooks.Files;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>
/// Which notebooks may run without asking: those that came with this program, known by what is built into it, and those whose code a
/// person here has agreed to or written. Kept in the user's data folder, outside every notebook's own.
/// </summary>
/// <param name="file">The file of hashes, one a line; null keeps them until the workbench ends.</param>
public sealed class TrustedNotebooks(string? file)
{
    private readonly Lock _lock = new();
    private HashSet<string>? _known;

    /// <summary>The file in the user's data folder; null where a user has none. Never a shared place, where others could write it.</summary>
    public static string? UsualFile()
    {
        var data = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        return data.Length > 0 ? Path.Combine(data, "SquadAnalytics", "trusted-notebooks.txt") : null;
    }

    /// <summary>Whether a notebook's code may run without asking.</summary>
    public bool IsTrusted(Notebook notebook)
    {
        lock (_lock) return Known().Contains(CodeHash.Of(notebook));
    }

    /// <summary>Notes that a person agreed to a notebook's code, or wrote it here. Where it cannot be written down it holds until the workbench ends.</summary>
    public void Trust(Notebook notebook)
    {
        var hash = CodeHash.Of(notebook);
        lock (_lock)
        {
            if (!Known().Add(hash) || file is null) return;
            try
            {
                Directory.CreateDirectory(Path.GetDirectoryName(file)!);
                File.AppendAllText(file, hash + "\n");
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                // A data folder that cannot be written: a person is asked again next time.
            }
        }
    }

    /// <summary>The hashes of the notebooks that came with this program.</summary>
    internal static IEnumerable<string> Shipped()
    {
        var assembly = typeof(TrustedNotebooks).Assembly;
        foreach (var name in assembly.GetManifestResourceNames().Where(name => name.StartsWith("notebooks/", StringComparison.Ordinal)))
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            yield return CodeHash.Of(NotebookFile.Parse(reader.ReadToEnd()));
        }
    }

    private HashSet<string> Known()
    {
        if (_known is not null) return _known;
        _known = [.. Shipped()];
        try
        {
            if (file is not null && File.Exists(file)) _known.UnionWith(File.ReadLines(file).Select(line => line.Trim()));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            // What cannot be read trusts nothing beyond the shipped notebooks.
        }

        return _known;
    }
}

namespace SquadAnalytics.Reporting.Internals;

/// <summary>Files that travel inside the assembly.</summary>
internal static class EmbeddedFile
{
    public static Stream Open(string name) =>
        typeof(EmbeddedFile).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"The assembly lacks its file '{name}'.");

    public static byte[] Read(string name)
    {
        using var stream = Open(name);
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        return bytes.ToArray();
    }

    public static string ReadText(string name)
    {
        using var reader = new StreamReader(Open(name));
        return reader.ReadToEnd();
    }
}

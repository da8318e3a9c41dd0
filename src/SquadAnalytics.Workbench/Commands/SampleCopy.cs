namespace SquadAnalytics.Workbench.Commands;

/// <summary>The user's own copy of the sample squad, to try things on.</summary>
internal static class SampleCopy
{
    /// <summary>Its folder in the user's data folder; made on first use. Where that cannot be written, a folder among the temporary files.</summary>
    public static string Folder()
    {
        var data = Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.DoNotVerify);
        foreach (var root in new[] { data, Path.GetTempPath() }.Where(root => root.Length > 0))
        {
            var folder = Path.Combine(root, "SquadAnalytics", "sample-squad");
            try
            {
                if (Directory.Exists(folder)) return folder;
                Copy(folder);
                return folder;
            }
            catch (Exception error) when (error is IOException or UnauthorizedAccessException)
            {
                // This place cannot be written; the next one is tried, and the last one says why.
                if (root != data) throw;
            }
        }

        throw new UsageException("Name the logbook's folder: there is no place for a copy of the sample.");
    }

    private static void Copy(string folder)
    {
        var beside = $"{folder}.{Guid.NewGuid():N}";
        Directory.CreateDirectory(beside);
        foreach (var file in Directory.EnumerateFiles(Shipped.SampleSquad).Where(file => Path.GetExtension(file) is ".csv" or ".json")) File.Copy(file, Path.Combine(beside, Path.GetFileName(file)));
        Directory.Move(beside, folder);
    }
}

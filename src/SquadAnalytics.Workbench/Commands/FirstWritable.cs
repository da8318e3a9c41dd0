namespace SquadAnalytics.Workbench.Commands;

/// <summary>Where something new can be kept.</summary>
internal static class FirstWritable
{
    /// <summary>The first folder, made where it is missing, in which a file can be made; the second one where it cannot.</summary>
    public static string Of(string preferred, string otherwise) => CanWrite(preferred) ? preferred : otherwise;

    private static bool CanWrite(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
            var trial = Path.Combine(folder, Path.GetRandomFileName());
            File.WriteAllBytes(trial, []);
            File.Delete(trial);
            return true;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }
}

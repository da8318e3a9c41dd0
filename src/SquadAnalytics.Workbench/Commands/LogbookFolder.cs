using SquadAnalytics.Storage;

namespace SquadAnalytics.Workbench.Commands;

/// <summary>Opens the logbook that a command names.</summary>
internal static class LogbookFolder
{
    /// <summary>The logbook; null where its files cannot be read, which is said on <paramref name="progress"/>.</summary>
    /// <exception cref="UsageException">There is no logbook.</exception>
    public static Logbook? Open(string folder, TextWriter progress)
    {
        try
        {
            return Logbook.Open(folder);
        }
        catch (DirectoryNotFoundException error)
        {
            throw new UsageException(error.Message);
        }
        catch (LogbookContentException error)
        {
            progress.WriteLine(error.Message);
            return null;
        }
    }
}

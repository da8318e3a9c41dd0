using System.Globalization;

namespace SquadAnalytics.Storage;

/// <summary>What removing a person erased, and what it could not reach.</summary>
/// <param name="AthleteId">The id that is gone.</param>
/// <param name="Sessions">Number of sessions erased.</param>
/// <param name="HeldRows">Number of held import rows erased.</param>
/// <param name="ErasedFiles">Kept reports, copies of imports and other files erased or rewritten because they mentioned the person; paths within the logbook folder.</param>
/// <param name="UnsearchedFiles">Files that may show the person and cannot be searched, for example pictures, and notebooks whose code or prose names the person: look at them and mend them by hand.</param>
/// <param name="UnreachableExports">What was written to places outside the folder and shows the person: it has to be deleted there.</param>
public sealed record RemovalReport(string AthleteId, int Sessions, int HeldRows, IReadOnlyList<string> ErasedFiles, IReadOnlyList<string> UnsearchedFiles, IReadOnlyList<LogbookExport> UnreachableExports)
{
    /// <summary>The counts in words.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Sessions} sessions, {HeldRows} held rows and {ErasedFiles.Count} files erased; {UnsearchedFiles.Count} files to look at; {UnreachableExports.Count} exports to delete where they are");
}

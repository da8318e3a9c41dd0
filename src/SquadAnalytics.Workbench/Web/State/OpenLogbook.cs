using SquadAnalytics.Reporting;
using SquadAnalytics.Storage;
using SquadAnalytics.Workbench.Commands;

namespace SquadAnalytics.Workbench.Web.State;

/// <summary>The logbook that this workbench has open, shared by its windows: one change at a time, and every window hears of it.</summary>
public sealed class OpenLogbook(WorkbenchOptions options) : IDisposable
{
    private readonly Lock _lock = new();
    private Logbook _logbook = Logbook.Open(options.LogbookFolder);

    /// <summary>Raised after a change, on the thread that made it.</summary>
    public event Action? Changed;

    /// <summary>Everything known of the squad, as last committed.</summary>
    public Squad Squad => _logbook.Squad;

    /// <summary>The logbook, for reading.</summary>
    public Logbook Logbook => _logbook;

    /// <summary>Whether another logbook than the one that the workbench was started with is open.</summary>
    public bool IsVisiting => _logbook.Folder != options.LogbookFolder;

    /// <summary>Opens the sample squad in place of the logbook, which stays as it is. Returns null, or why it cannot be opened.</summary>
    public string? VisitSample() => SwitchTo(SampleCopy.Folder);

    /// <summary>Goes back to the logbook that the workbench was started with.</summary>
    public string? ComeBack() => SwitchTo(() => options.LogbookFolder);

    private string? SwitchTo(Func<string> folder)
    {
        lock (_lock)
        {
            try
            {
                var next = Logbook.Open(folder());
                _logbook.Dispose();
                _logbook = next;
            }
            catch (Exception error) when (error is IOException or LogbookContentException or UnauthorizedAccessException or UsageException)
            {
                return error.Message;
            }
        }

        Changed?.Invoke();
        return null;
    }

    /// <summary>Makes a change and tells every window. Returns null, or the sentence that says why nothing was changed.</summary>
    public string? Try(Action<Logbook> change)
    {
        string? refused = null;
        lock (_lock)
        {
            try
            {
                change(_logbook);
            }
            catch (Exception error) when (error is LogbookReadOnlyException or LogbookNotWrittenException or LogbookChangedOutsideException or LogbookContentException or ProtocolInUseException or ArgumentException or IOException)
            {
                refused = Sentences.Mistake(error);
            }
        }

        if (refused is null) Changed?.Invoke();
        return refused;
    }

    /// <summary>Reads the files again after they were changed from outside.</summary>
    public string? Reload() => Try(logbook => logbook.Reload());

    /// <inheritdoc />
    public void Dispose() => _logbook.Dispose();
}

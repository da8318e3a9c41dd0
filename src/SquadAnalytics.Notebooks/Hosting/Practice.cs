using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Scripting;
using SquadAnalytics.Notebooks.Sql;
using SquadAnalytics.Notebooks.Wire;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>
/// Runs the cells that will probably be asked for in kernels of their own, on a thread that gives way to all others, so that compiler,
/// library and formatters have done each thing once. What the cells put out and declare is thrown away.
/// </summary>
internal sealed class Practice
{
    /// <summary>What was done twice is compiled more often for speed: a second round makes the run about a sixth quicker.</summary>
    private const int Rounds = 2;

    private volatile bool _stopped;

    private Practice()
    {
    }

    /// <summary>Begins, and returns at once.</summary>
    public static Practice Begin(ScriptSetup setup, Practise practise)
    {
        var practice = new Practice();
        new Thread(() => practice.PlayRounds(setup, practise)) { IsBackground = true, Name = nameof(Practice), Priority = ThreadPriority.BelowNormal }.Start();
        return practice;
    }

    /// <summary>Lets it end after the cell that it is at.</summary>
    public void Stop() => _stopped = true;

    private void PlayRounds(ScriptSetup setup, Practise practise)
    {
        for (var round = 0; round < Rounds && !_stopped; round++) Play(setup, practise);
        // What the rounds left behind is cleared away now, while a person reads the form, and not in the middle of the run.
        if (!_stopped) GC.Collect();
    }

    private void Play(ScriptSetup setup, Practise practise)
    {
        var csharp = new ScriptKernel(NotebookFile.DefaultLanguage, setup).UseWho().UseValueSharing();
        using var kernel = new CompositeKernel { csharp, new SqlKernel(csharp) };
        kernel.DefaultKernelName = NotebookFile.DefaultLanguage;
        if (!Succeeds(kernel, new SubmitCode(Prelude.Code()))) return;
        using var logbook = Opened(practise.LogbookFolder);
        if (practise.LogbookFolder is not null && logbook is null) return;
        if (logbook is not null) csharp.SetAsync(Prelude.LogbookName, logbook, typeof(Logbook)).GetAwaiter().GetResult();

        foreach (var cell in practise.Cells)
        {
            if (_stopped || !Succeeds(kernel, new SubmitCode(cell.Source, cell.Language))) return;
        }
    }

    private static Logbook? Opened(string? folder)
    {
        try
        {
            return folder is null ? null : Logbook.Open(folder);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or FormatException or LogbookContentException)
        {
            // Whoever runs the notebook is told.
            return null;
        }
    }

    private static bool Succeeds(Kernel kernel, SubmitCode code) => !kernel.SendAsync(code).GetAwaiter().GetResult().Events.Any(static happened => happened is CommandFailed);
}

using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using SquadAnalytics.Frames;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Scripting;
using SquadAnalytics.Notebooks.Sql;
using SquadAnalytics.Notebooks.Wire;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>The notebook engine in its process: a C# kernel with the library in scope and a SQL kernel beside it, which runs what the workbench sends.</summary>
internal sealed class CSharpSession : IDisposable
{
    private const string Language = "csharp";
    private readonly MessageChannel _channel;
    private readonly KernelInbox _inbox;
    private readonly ScriptKernel _csharp;
    private readonly SqlKernel _sql;
    private readonly CompositeKernel _kernel;
    private readonly CodeAssistant _assistant;
    private readonly ScriptSetup _setup;
    private Practice? _practice;
    private volatile bool _cancelled;

    public CSharpSession(MessageChannel channel, KernelInbox inbox, ScriptSetup setup)
    {
        _channel = channel;
        _setup = setup;
        _inbox = inbox;
        inbox.OnCancel = Cancel;
        Formatters.Register();
        _csharp = new ScriptKernel(Language, setup).UseWho().UseValueSharing();
        _sql = new SqlKernel(_csharp);
        _kernel = new CompositeKernel { _csharp, _sql };
        _kernel.DefaultKernelName = Language;
        _assistant = new CodeAssistant(_kernel);
    }

    /// <summary>Brings the library into scope, which also wakes the compiler, and reports that the kernel is ready.</summary>
    public async Task WarmUpAsync()
    {
        var prelude = await RunAsync(0, 0, Language, Prelude.Code()).ConfigureAwait(false);
        if (prelude.Ending != CellEnding.Completed) throw new InvalidOperationException("The library could not be brought into scope: " + prelude.Fault);
        _channel.Write(Prelude.Identity());
    }

    /// <summary>Does what a message asks for, and answers it.</summary>
    public async Task HandleAsync(WireMessage message)
    {
        if (message is not AskAboutCode) _practice?.Stop();
        switch (message)
        {
            case OpenSession open:
                _channel.Write(await OpenAsync(open).ConfigureAwait(false));
                break;
            case Practise practise:
                Prepare(practise.WorkingFolder, practise.Cells);
                _practice = Practice.Begin(_setup, practise);
                break;
            case RunCell run:
                _channel.Write(await RunAsync(run.Ticket, run.Number, run.Language, run.Code).ConfigureAwait(false));
                break;
            case AskAboutCode ask:
                _channel.Write(await _assistant.AnswerAsync(ask).ConfigureAwait(false));
                break;
            default:
                throw new WireException($"A {message.GetType().Name} was not expected here.");
        }
    }

    /// <summary>Asks the running cell to end; a cell that does not listen is ended with the process.</summary>
    private void Cancel()
    {
        _cancelled = true;
        _ = Task.Run(() => _kernel.SendAsync(new Cancel()));
    }

    public void Dispose() => _kernel.Dispose();

    private void Prepare(string folder, IReadOnlyList<CellCode> coming)
    {
        _csharp.Prepare(folder, [.. coming.Select(AsCSharp).OfType<CellCode>()]);
        _sql.Prepare(coming);
    }

    /// <summary>What the C# kernel runs for a cell: of a query, the declaration of its result; null where that has no name.</summary>
    private static CellCode? AsCSharp(CellCode cell)
    {
        if (cell.Language != SqlKernel.KernelName) return cell;
        return SqlText.ResultName(cell.Source) is { } name ? new CellCode(cell.Number, Language, ScriptKernel.Declaration(name, typeof(Frame))) : null;
    }

    private async Task<SessionOpened> OpenAsync(OpenSession open)
    {
        try
        {
            Directory.SetCurrentDirectory(open.WorkingFolder);
        }
        catch (IOException error)
        {
            return new(new CellFault($"The folder {open.WorkingFolder} cannot be entered: {error.Message}"), null);
        }
        Prepare(Directory.GetCurrentDirectory(), open.Coming);
        if (_inbox.Opening is not { } opening) return new(null, null);
        try
        {
            var logbook = await opening.ConfigureAwait(false);
            await _csharp.SetAsync(Prelude.LogbookName, logbook, typeof(Logbook)).ConfigureAwait(false);
            return new(null, logbook.Fingerprint);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or FormatException or LogbookContentException)
        {
            return new(new CellFault(error.Message), null);
        }
    }

    private async Task<CellEnded> RunAsync(int ticket, int number, string language, string code)
    {
        _cancelled = false;
        if (_kernel.FindKernelByName(language) is null)
            return new(ticket, CellEnding.DidNotCompile, new CellFault($"There is no kernel for the language '{language}'; this workbench runs C# (csharp) and SQL (sql)."));
        _csharp.Cell = number;
        var listener = new CellListener(_channel, ticket, number, code);
        using (_kernel.KernelEvents.Subscribe(listener))
        {
            var result = await _kernel.SendAsync(new SubmitCode(code, language)).ConfigureAwait(false);
            if (_cancelled) await listener.Activity.UntilQuietAsync().ConfigureAwait(false);
            return listener.EndOf(result, _cancelled);
        }
    }
}

using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Wire;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>Turns what the engine reports about one cell into what the workbench is told.</summary>
internal sealed class CellListener(MessageChannel channel, int ticket, int number, string code) : IObserver<KernelEvent>
{
    private CellFault? _reported;
    private CellFault? _diagnostic;

    /// <summary>Whether the cell's code still runs.</summary>
    public CellActivity Activity { get; } = new();

    public void OnNext(KernelEvent value)
    {
        switch (value)
        {
            case StandardOutputValueProduced or StandardErrorValueProduced:
                foreach (var form in ((DisplayEvent)value).FormattedValues) Put(new WrittenText(form.Value, value is StandardErrorValueProduced));
                break;
            case CodeSubmissionReceived:
                Activity.Note();
                break;
            case ErrorProduced error:
                // The engine lets a cell succeed that reported an error, such as a shared value that does not exist.
                _reported ??= new CellFault(error.Message);
                break;
            case DisplayEvent display:
                var forms = display.FormattedValues.Select(static form => new MimeContent(form.MimeType, form.Value));
                Put(new ShownValue([.. forms], display is ReturnValueProduced));
                break;
            case DiagnosticsProduced produced:
                _diagnostic ??= produced.Diagnostics.Where(static one => one.Severity == DiagnosticSeverity.Error).Select(ProblemAt).FirstOrDefault();
                break;
            default:
                break;
        }
    }

    public void OnCompleted()
    {
    }

    public void OnError(Exception error) => _reported ??= new CellFault(error.Message);

    /// <summary>How the cell ended, once the engine is done with it.</summary>
    public CellEnded EndOf(KernelCommandResult result, bool cancelled)
    {
        var failure = result.Events.OfType<CommandFailed>().LastOrDefault();
        if (failure is null) return _reported is null ? new(ticket, CellEnding.Completed, null) : new(ticket, CellEnding.Failed, _reported);
        if (cancelled) return new(ticket, CellEnding.Cancelled, null);
        if (_diagnostic is not null) return new(ticket, CellEnding.DidNotCompile, _diagnostic);
        if (failure.Exception is not { } exception) return new(ticket, CellEnding.Failed, _reported ?? new CellFault(failure.Message));
        return new(ticket, IsOutOfMemory(exception) ? CellEnding.MemoryLimit : CellEnding.Failed, ExceptionReader.Read(exception, number, code));
    }

    private static bool IsOutOfMemory(Exception exception) =>
        exception is OutOfMemoryException || (exception.InnerException is { } inner && IsOutOfMemory(inner));

    private CellFault ProblemAt(Microsoft.DotNet.Interactive.Diagnostic diagnostic)
    {
        var start = diagnostic.LinePositionSpan.Start;
        return new CellFault(diagnostic.Message)
        {
            Name = diagnostic.Code,
            Line = start.Line + 1,
            Column = start.Character + 1,
            Excerpt = ExceptionReader.LineOf(code, start.Line + 1),
        };
    }

    private void Put(CellOutput output) => channel.Write(new CellPutOut(ticket, output));
}

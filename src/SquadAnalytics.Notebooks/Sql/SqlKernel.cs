using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Directives;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using SquadAnalytics.Archive;
using SquadAnalytics.Frames;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Scripting;
using Diagnostic = Microsoft.DotNet.Interactive.Diagnostic;

namespace SquadAnalytics.Notebooks.Sql;

/// <summary>
/// Runs SQL cells: one query about the logbook per cell. Values of the C# cells can be used in it, tables by their names and single values
/// as <c>$name</c>; the result of a cell that begins with <c>#!sql --name evening</c> is the value <c>evening</c> of the C# cells and a
/// table for later queries.
/// </summary>
internal sealed class SqlKernel : Kernel,
    IKernelCommandHandler<SubmitCode>,
    IKernelCommandHandler<RequestDiagnostics>,
    IKernelCommandHandler<RequestCompletions>,
    IKernelCommandHandler<RequestHoverText>
{
    /// <summary>The name by which cells choose this kernel.</summary>
    public const string KernelName = "sql";

    private const string NameParameter = "--name";

    private readonly ICellValues _values;
    private readonly SqlScope _scope;

    public SqlKernel(ICellValues values)
        : base(KernelName)
    {
        _values = values;
        _scope = new SqlScope(values);
        KernelInfo.LanguageName = "SQL";
        KernelInfo.DisplayName = "SQL";
        RegisterForDisposal(_scope);
    }

    public override KernelSpecifierDirective KernelSpecifierDirective
    {
        get
        {
            var directive = base.KernelSpecifierDirective;
            directive.Parameters.Add(new KernelDirectiveParameter(NameParameter, "The name under which C# cells and later queries find the result."));
            return directive;
        }
    }

    /// <summary>Gets ready for cells that are known to come, on another core.</summary>
    public void Prepare(IEnumerable<CellCode> coming)
    {
        if (coming.Any(static cell => cell.Language == KernelName)) _scope.Begin();
    }

    async Task IKernelCommandHandler<SubmitCode>.HandleAsync(SubmitCode command, KernelInvocationContext context)
    {
        try
        {
            var name = command.Parameters.TryGetValue(NameParameter, out var given) && !string.IsNullOrWhiteSpace(given) ? given : null;
            if (name is not null) SqlScope.CheckName(name);
            // A query blocks its thread; whoever wants to stop it must still be heard.
            var result = await Task.Run(() => _scope.Query(command.Code, context.CancellationToken)).ConfigureAwait(false);
            if (SqlText.Title(command.Code) is { } title) result = result.Titled(title);
            else if (name is not null) result = result.Titled(name);
            if (name is not null) await _values.SetAsync(name, result, typeof(Frame)).ConfigureAwait(false);
            context.Publish(new ReturnValueProduced(result, command, FormattedValue.CreateManyFromObject(result)));
        }
        catch (OperationCanceledException)
        {
            context.Fail(command, message: "The query was stopped.");
        }
        catch (Exception error) when (error is QueryException or ArgumentException)
        {
            if ((error as QueryException)?.Place is { } place) context.Publish(new DiagnosticsProduced([Problem(error.Message, place)], [], command));
            context.Fail(command, error, error.Message);
        }
    }

    Task IKernelCommandHandler<RequestDiagnostics>.HandleAsync(RequestDiagnostics command, KernelInvocationContext context)
    {
        try
        {
            if (!string.IsNullOrWhiteSpace(command.Code)) _scope.Check(command.Code);
            context.Publish(new DiagnosticsProduced([], [], command));
        }
        catch (QueryException error)
        {
            context.Publish(new DiagnosticsProduced([Problem(error.Message, error.Place ?? new QueryPlace(1, 1))], [], command));
        }

        return Task.CompletedTask;
    }

    Task IKernelCommandHandler<RequestCompletions>.HandleAsync(RequestCompletions command, KernelInvocationContext context)
    {
        context.Publish(new CompletionsProduced([.. SqlWords.All(_scope.Frames())], command));
        return Task.CompletedTask;
    }

    Task IKernelCommandHandler<RequestHoverText>.HandleAsync(RequestHoverText command, KernelInvocationContext context)
    {
        var word = SqlText.WordAt(command.Code, command.LinePosition);
        if (word.Length > 0 && SqlWords.Describe(word, _scope.Frames()) is { } text)
            context.Publish(new HoverTextProduced(command, [new FormattedValue("text/markdown", text)]));
        return Task.CompletedTask;
    }

    private static Diagnostic Problem(string message, QueryPlace place)
    {
        var at = new LinePosition(place.Line - 1, place.Column - 1);
        return new Diagnostic(new LinePositionSpan(at, at), DiagnosticSeverity.Error, "SQL", message);
    }
}

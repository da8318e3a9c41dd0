using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;
using Microsoft.DotNet.Interactive.ValueSharing;
using SquadAnalytics.Notebooks.Hosting;
using SquadAnalytics.Notebooks.Kernels;

namespace SquadAnalytics.Notebooks.Scripting;

/// <summary>
/// Runs C# cells. The engine brings a C# kernel of its own, which makes ready to complete and explain code before it runs any, and follows
/// every cell with that: about a second and 100 MB that a notebook run for its report never uses. This one makes it ready when it is asked.
/// </summary>
internal sealed class ScriptKernel : Kernel, ICellValues,
    IKernelCommandHandler<SubmitCode>,
    IKernelCommandHandler<RequestValue>,
    IKernelCommandHandler<RequestValueInfos>,
    IKernelCommandHandler<SendValue>,
    IKernelCommandHandler<RequestCompletions>,
    IKernelCommandHandler<RequestHoverText>,
    IKernelCommandHandler<RequestDiagnostics>
{
    private readonly ScriptSetup _setup;
    private readonly ScriptsAhead _ahead;
    private readonly ScriptWorkspace _workspace = new();
    private ScriptState<object>? _state;

    /// <param name="name">The name by which cells choose it.</param>
    /// <param name="setup">How cells are compiled.</param>
    public ScriptKernel(string name, ScriptSetup setup)
        : base(name)
    {
        _setup = setup;
        _ahead = new ScriptsAhead(setup);
        KernelInfo.LanguageName = "C#";
        KernelInfo.DisplayName = "C#";
        RegisterForDisposal(_workspace);
    }

    /// <summary>The number of the cell that is about to be run, by which stack traces name it.</summary>
    public int Cell { get; set; }

    /// <summary>Begins to compile the cells that will probably be run next, and returns at once.</summary>
    /// <param name="folder">The folder in which they will run.</param>
    /// <param name="cells">The cells in their order; those behind one of another language are compiled as they come.</param>
    public void Prepare(string folder, IReadOnlyList<CellCode> cells)
    {
        if (_state?.Script is Script<object> last) _ahead.Prepare(last, folder, [.. cells.TakeWhile(cell => cell.Language == Name)]);
    }

    public IReadOnlyList<KeyValuePair<string, object?>> All() =>
        _state is null ? [] : [.. _state.Variables.GroupBy(static variable => variable.Name).Select(static group => KeyValuePair.Create(group.Key, (object?)group.Last().Value))];

    public bool TryGet<T>(string name, out T? value)
    {
        value = default;
        if (_state?.GetVariable(name) is not { Value: T found }) return false;
        value = found;
        return true;
    }

    public async Task SetAsync(string name, object value, Type type)
    {
        if (_state?.GetVariable(name) is not { IsReadOnly: false } known || known.Type != type)
        {
            await RunAsync(Declaration(name, type), default).ConfigureAwait(false);
            known = _state!.GetVariable(name);
        }

        known.Value = value;
    }

    /// <summary>The code that names a value.</summary>
    public static string Declaration(string name, Type type) => $"{ScriptText.Declared(type)} {name} = default;";

    async Task IKernelCommandHandler<SubmitCode>.HandleAsync(SubmitCode command, KernelInvocationContext context)
    {
        context.Publish(new CodeSubmissionReceived(command));
        try
        {
            if (await RunAsync(command.Code, context.CancellationToken).ConfigureAwait(false) is { } thrown) context.Fail(command, thrown);
            else if (HasResult(_state!)) context.Publish(Result(_state!.ReturnValue, command));
        }
        catch (OperationCanceledException) when (context.CancellationToken.IsCancellationRequested)
        {
            context.Fail(command, message: "The cell was cancelled.");
        }
        catch (CompilationErrorException error)
        {
            context.Publish(new DiagnosticsProduced([.. error.Diagnostics.Select(ScriptText.Problem)], [], command));
            context.Fail(command, new CodeSubmissionCompilationErrorException(error), string.Join(Environment.NewLine, error.Diagnostics));
        }
    }

    Task IKernelCommandHandler<RequestValue>.HandleAsync(RequestValue command, KernelInvocationContext context)
    {
        if (TryGet<object>(command.Name, out var value))
            context.Publish(new ValueProduced(value, command.Name, new FormattedValue(command.MimeType, value.ToDisplayString(command.MimeType)), command));
        else
            context.Fail(command, message: $"Value '{command.Name}' not found in kernel {Name}");
        return Task.CompletedTask;
    }

    Task IKernelCommandHandler<RequestValueInfos>.HandleAsync(RequestValueInfos command, KernelInvocationContext context)
    {
        var variables = _state?.Variables.GroupBy(static variable => variable.Name).Select(static group => group.Last()) ?? [];
        context.Publish(new ValueInfosProduced([.. variables.Select(variable => new KernelValueInfo(variable.Name, FormattedValue.CreateSingleFromObject(variable.Value, command.MimeType), variable.Type))], command));
        return Task.CompletedTask;
    }

    Task IKernelCommandHandler<SendValue>.HandleAsync(SendValue command, KernelInvocationContext context) =>
        SetValueAsync(command, context, (name, value, type) => SetAsync(name, value, type ?? value.GetType()));

    async Task IKernelCommandHandler<RequestCompletions>.HandleAsync(RequestCompletions command, KernelInvocationContext context) =>
        context.Publish(new CompletionsProduced(await (await WorkspaceAsync().ConfigureAwait(false)).CompletionsAsync(command.Code, command.LinePosition, context.CancellationToken).ConfigureAwait(false), command));

    async Task IKernelCommandHandler<RequestHoverText>.HandleAsync(RequestHoverText command, KernelInvocationContext context)
    {
        if (await (await WorkspaceAsync().ConfigureAwait(false)).HoverAsync(command.Code, command.LinePosition, context.CancellationToken).ConfigureAwait(false) is { } text)
            context.Publish(new HoverTextProduced(command, [new FormattedValue("text/markdown", text)]));
    }

    async Task IKernelCommandHandler<RequestDiagnostics>.HandleAsync(RequestDiagnostics command, KernelInvocationContext context) =>
        context.Publish(new DiagnosticsProduced(await (await WorkspaceAsync().ConfigureAwait(false)).ProblemsAsync(command.Code, context.CancellationToken).ConfigureAwait(false), [], command));

    /// <summary>What completes and explains; what all cells can see is known only once something has been compiled.</summary>
    private async Task<ScriptWorkspace> WorkspaceAsync()
    {
        if (_state is null) await RunAsync("", default).ConfigureAwait(false);
        return _workspace;
    }

    /// <summary>Compiles and runs code after all that ran before; what it threw, or null.</summary>
    /// <exception cref="CompilationErrorException">It is not C#; everything is as before.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled; everything is as before.</exception>
    private async Task<Exception?> RunAsync(string code, CancellationToken cancellationToken)
    {
        Exception? thrown = null;
        bool Keep(Exception error)
        {
            thrown = error;
            return true;
        }

        var folder = Directory.GetCurrentDirectory();
        var prepared = _state is null ? null : await _ahead.TakeAsync(_state.Script, folder, new CellCode(Cell, Name, code), cancellationToken).ConfigureAwait(false);
        var running = _state is null ? CSharpScript.Create(code, _setup.For(Cell, folder)).RunAsync(globals: null, Keep, cancellationToken)
            : prepared is not null ? prepared.RunFromAsync(_state, Keep, cancellationToken)
            : _state.ContinueWithAsync(code, _setup.For(Cell, folder), Keep, cancellationToken);
        // Code that waits is left to itself when the cell is cancelled, and the values stay those from before the cell.
        _state = await running.WaitAsync(cancellationToken).ConfigureAwait(false);
        _workspace.Follow(_state.Script);
        return thrown;
    }

    /// <summary>Whether the code ended in an expression without a semicolon that has a value, be it null.</summary>
    private static bool HasResult(ScriptState<object> state)
    {
        if (state.ReturnValue is not null) return true;
        var compilation = state.Script.GetCompilation();
        var tree = compilation.SyntaxTrees.Single();
        return ((CompilationUnitSyntax)tree.GetRoot()).Members.LastOrDefault() is GlobalStatementSyntax { Statement: ExpressionStatementSyntax { SemicolonToken.IsMissing: true } last }
            && compilation.GetSemanticModel(tree).GetTypeInfo(last.Expression).Type is not { SpecialType: SpecialType.System_Void };
    }

    private static ReturnValueProduced Result(object? value, SubmitCode command) => new(value, command, value switch
    {
        FormattedValue one => [one],
        IEnumerable<FormattedValue> several => [.. several],
        _ => FormattedValue.CreateManyFromObject(Answers.Held(value)),
    });
}

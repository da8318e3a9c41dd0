using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Completion;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Host.Mef;
using Microsoft.CodeAnalysis.QuickInfo;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.CodeAnalysis.Text;
using CompletionItem = Microsoft.DotNet.Interactive.Events.CompletionItem;
using Diagnostic = Microsoft.DotNet.Interactive.Diagnostic;
using LinePosition = Microsoft.DotNet.Interactive.LinePosition;

namespace SquadAnalytics.Notebooks.Scripting;

/// <summary>
/// Completes and explains code that is being written, after all cells that ran. It is made when the first question is asked, and catches
/// up with the cells then; nothing of the code is run.
/// </summary>
internal sealed class ScriptWorkspace : IDisposable
{
    private static readonly string[] Kinds =
    [
        "Class", "Constant", "Delegate", "Enum", "EnumMember", "Event", "ExtensionMethod", "Field", "Interface", "Intrinsic", "Keyword", "Label", "Local",
        "Method", "Module", "Namespace", "Operator", "Parameter", "Property", "RangeVariable", "Reference", "Structure", "TypeParameter", "Snippet",
    ];

    private readonly SemaphoreSlim _oneAtATime = new(1, 1);
    private readonly Lock _following = new();
    private readonly Queue<Script> _ran = new();
    private readonly ScriptDocumentation _documentation = new();
    private AdhocWorkspace? _workspace;
    private Solution? _cells;
    private ProjectId? _last;
    private Compilation? _compilation;

    /// <summary>Notes that a cell ran; what it declared is known to the next question.</summary>
    public void Follow(Script script)
    {
        lock (_following) _ran.Enqueue(script);
    }

    /// <summary>What could stand at a place.</summary>
    public Task<IReadOnlyList<CompletionItem>> CompletionsAsync(string code, LinePosition place, CancellationToken cancellationToken) => AskAsync<IReadOnlyList<CompletionItem>>(ScriptText.Ended(code, place), async document =>
    {
        if (CompletionService.GetService(document) is not { } service) return [];
        var found = await service.GetCompletionsAsync(document, await PositionAsync(document, place, cancellationToken).ConfigureAwait(false), cancellationToken: cancellationToken).ConfigureAwait(false);
        return [.. found.ItemsList.Select(static item => new CompletionItem(item.DisplayText, Kinds.FirstOrDefault(kind => item.Tags.Contains(kind)), item.FilterText, item.SortText, item.FilterText))];
    }, cancellationToken);

    /// <summary>What stands at a place, in Markdown; null where there is nothing to say.</summary>
    public Task<string?> HoverAsync(string code, LinePosition place, CancellationToken cancellationToken) => AskAsync(ScriptText.Ended(code, place), async document =>
    {
        if (QuickInfoService.GetService(document) is not { } service) return null;
        var found = await service.GetQuickInfoAsync(document, await PositionAsync(document, place, cancellationToken).ConfigureAwait(false), cancellationToken).ConfigureAwait(false);
        return found is null ? null : ScriptDocumentation.Markdown(found);
    }, cancellationToken);

    /// <summary>What the compiler has to say about the code.</summary>
    public Task<IReadOnlyCollection<Diagnostic>> ProblemsAsync(string code, CancellationToken cancellationToken) => AskAsync<IReadOnlyCollection<Diagnostic>>(code, async document =>
    {
        var model = await document.GetSemanticModelAsync(cancellationToken).ConfigureAwait(false);
        return [.. model!.GetDiagnostics(cancellationToken: cancellationToken).Select(ScriptText.Problem)];
    }, cancellationToken);

    public void Dispose()
    {
        _workspace?.Dispose();
        _oneAtATime.Dispose();
    }

    private static async Task<int> PositionAsync(Document document, LinePosition place, CancellationToken cancellationToken) =>
        (await document.GetTextAsync(cancellationToken).ConfigureAwait(false)).Lines.GetPosition(ScriptText.Place(place));

    private async Task<T> AskAsync<T>(string code, Func<Document, Task<T>> ask, CancellationToken cancellationToken)
    {
        await _oneAtATime.WaitAsync(cancellationToken).ConfigureAwait(false);
        try
        {
            CatchUp();
            var (solution, project) = With(_cells!, "writing", _compilation);
            var document = DocumentId.CreateNewId(project);
            return await ask(solution.AddDocument(document, "writing", SourceText.From(code)).GetDocument(document)!).ConfigureAwait(false);
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    private void CatchUp()
    {
        _workspace ??= new AdhocWorkspace(MefHostServices.DefaultHost, "Notebook");
        _cells ??= _workspace.CurrentSolution;
        while (Next() is { } script)
        {
            _compilation = script.GetCompilation();
            var (solution, project) = With(_cells, _compilation.ScriptClass?.Name ?? "cell", _compilation);
            _cells = solution.AddDocument(DocumentId.CreateNewId(project), "cell", SourceText.From(script.Code));
            _last = project;
        }
    }

    private Script? Next()
    {
        lock (_following) return _ran.TryDequeue(out var script) ? script : null;
    }

    /// <summary>The cells with one more, which sees what those before it declared.</summary>
    private (Solution Solution, ProjectId Project) With(Solution solution, string name, Compilation? compilation)
    {
        var id = ProjectId.CreateNewId(name);
        return (solution.AddProject(ProjectInfo.Create(
            id,
            VersionStamp.Create(),
            name,
            name,
            LanguageNames.CSharp,
            compilationOptions: compilation?.Options.WithScriptClassName(name) ?? new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary),
            parseOptions: ScriptText.Parsing,
            projectReferences: _last is null ? [] : [new ProjectReference(_last)],
            metadataReferences: _documentation.Of(compilation),
            isSubmission: true)), id);
    }
}

using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.Events;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Wire;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>Answers what an editor asks about code that is being written. Nothing of the code is run.</summary>
internal sealed class CodeAssistant(CompositeKernel kernel)
{
    private const int MostCompletions = 300;
    private const int LongestText = 200;

    /// <summary>The answer; empty where the language's kernel has none.</summary>
    public async Task<CodeAnswered> AnswerAsync(AskAboutCode ask)
    {
        try
        {
            return new(ask.Ticket, ask.Question == CodeQuestion.Values ? await ValuesAsync().ConfigureAwait(false) : await AboutCodeAsync(ask).ConfigureAwait(false));
        }
        catch (Exception error) when (error is ArgumentException or InvalidOperationException or NotSupportedException or AggregateException)
        {
            // A place that lies outside the code, or a compiler that stumbles over half-written code: whoever writes goes on writing.
            return new(ask.Ticket, CodeAnswer.Empty);
        }
    }

    private async Task<CodeAnswer> AboutCodeAsync(AskAboutCode ask)
    {
        if (kernel.FindKernelByName(ask.Language) is null) return CodeAnswer.Empty;
        var place = new LinePosition(Math.Max(0, ask.Line - 1), Math.Max(0, ask.Column - 1));
        Microsoft.DotNet.Interactive.Commands.KernelCommand command = ask.Question switch
        {
            CodeQuestion.Completions => new RequestCompletions(ask.Code, place, ask.Language),
            CodeQuestion.Hover => new RequestHoverText(ask.Code, place, ask.Language),
            _ => new RequestDiagnostics(ask.Code, ask.Language),
        };
        var result = await kernel.SendAsync(command).ConfigureAwait(false);
        return ask.Question switch
        {
            CodeQuestion.Completions => Completions(result, BeforePlace(ask)),
            CodeQuestion.Hover => new() { Hover = result.Events.OfType<HoverTextProduced>().SelectMany(static hover => hover.Content).Select(static form => form.Value).FirstOrDefault() },
            _ => new() { Problems = [.. result.Events.OfType<DiagnosticsProduced>().SelectMany(static produced => produced.Diagnostics).Select(Problem).Distinct()] },
        };
    }

    private static CodeAnswer Completions(KernelCommandResult result, string begun)
    {
        var fitting = result.Events.OfType<CompletionsProduced>()
            .SelectMany(static produced => produced.Completions)
            .Select(static item => new CompletionChoice(WithoutCall(item.DisplayText), item.Kind ?? "", WithoutCall(item.InsertText ?? item.DisplayText)))
            .Where(choice => choice.Name.Contains(begun, StringComparison.OrdinalIgnoreCase))
            .DistinctBy(static choice => choice.Name)
            .OrderBy(choice => choice.Name.StartsWith(begun, StringComparison.OrdinalIgnoreCase) ? 0 : 1)
            .ThenBy(static choice => choice.Name, StringComparer.OrdinalIgnoreCase)
            .ToList();
        return new() { HasMore = fitting.Count > MostCompletions, Completions = [.. fitting.Take(MostCompletions)] };
    }

    /// <summary>The engine offers calls with places for type and value arguments; whoever writes wants the name.</summary>
    private static string WithoutCall(string text) => text.IndexOfAny(['(', '<']) is > 0 and var end ? text[..end] : text;

    /// <summary>The letters of the word that has been begun before the place.</summary>
    private static string BeforePlace(AskAboutCode ask)
    {
        var line = ask.Code.Split('\n').ElementAtOrDefault(ask.Line - 1) ?? "";
        var end = Math.Clamp(ask.Column - 1, 0, line.Length);
        var start = end;
        while (start > 0 && (char.IsLetterOrDigit(line[start - 1]) || line[start - 1] == '_')) start--;
        return line[start..end];
    }

    private static CodeProblem Problem(Microsoft.DotNet.Interactive.Diagnostic diagnostic)
    {
        var (start, end) = (diagnostic.LinePositionSpan.Start, diagnostic.LinePositionSpan.End);
        return new(new(start.Line + 1, start.Character + 1), new(end.Line + 1, end.Character + 1), diagnostic.Code, diagnostic.Message, diagnostic.Severity == DiagnosticSeverity.Error);
    }

    private async Task<CodeAnswer> ValuesAsync()
    {
        var values = new List<ScopeValue>();
        foreach (var child in kernel.ChildKernels.Where(static child => child.KernelInfo.SupportedKernelCommands.Any(static command => command.Name == nameof(RequestValueInfos))))
        {
            var result = await kernel.SendAsync(new RequestValueInfos(child.Name)).ConfigureAwait(false);
            values.AddRange(result.Events.OfType<ValueInfosProduced>().SelectMany(static produced => produced.ValueInfos)
                .Select(info => new ScopeValue(info.Name, info.TypeName ?? "", Shortened(info.FormattedValue?.Value), child.Name)));
        }
        return new() { Values = [.. values.OrderBy(static value => value.Name, StringComparer.OrdinalIgnoreCase)] };
    }

    private static string Shortened(string? text)
    {
        var line = string.Join(' ', (text ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= LongestText ? line : line[..LongestText] + "…";
    }
}

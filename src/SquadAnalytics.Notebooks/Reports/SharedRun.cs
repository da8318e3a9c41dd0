using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Reporting;
using SquadAnalytics.Reporting.Documents;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Notebooks.Reports;

/// <summary>A finished run as it may be shared: its prose, its code and whatever its cells put out, with what must not leave the club taken out.</summary>
public static class SharedRun
{
    private const string LeftOut = "An output is left out here: it names somebody who must not be named, or holds a health entry.";

    private const string SmallGroup = "A figure over fewer than five athletes is left out here.";

    /// <summary>The run as it may be shared.</summary>
    /// <param name="run">The run.</param>
    /// <param name="discretion">What must not leave.</param>
    public static NotebookRun Of(NotebookRun run, Discretion discretion)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(discretion);
        var notebook = run.Notebook with { Cells = [.. run.Notebook.Cells.Select(cell => Cell(cell, discretion))] };
        var byId = notebook.Cells.ToDictionary(static cell => cell.Id, StringComparer.Ordinal);
        return run with
        {
            Notebook = notebook,
            Cells = [.. run.Cells.Select(cell => cell with { Cell = byId[cell.Cell.Id], Result = Result(cell.Result, discretion) })],
            Parameters = [.. run.Parameters.Select(parameter => parameter with { Value = parameter.Value is { } value ? discretion.Apply(value) : null })],
            Findings = [.. run.Findings.Select(finding => SharedForms.Of(finding, discretion))],
            Obstacle = run.Obstacle is { } obstacle ? discretion.ApplyToLines(obstacle) : null,
            LogbookFolder = null,
        };
    }

    // What the cell's file said of its outputs goes: the run's own outputs take their place.
    private static NotebookCell Cell(NotebookCell cell, Discretion discretion) =>
        cell with { Source = discretion.ApplyToLines(cell.Source), Original = cell.Original is null ? null : Without(cell.Original, "outputs") };

    private static System.Text.Json.Nodes.JsonObject Without(System.Text.Json.Nodes.JsonObject json, string property)
    {
        var copy = (System.Text.Json.Nodes.JsonObject)json.DeepClone();
        copy.Remove(property);
        return copy;
    }

    private static CellResult Result(CellResult result, Discretion discretion) => result with
    {
        Outputs = [.. result.Outputs.Select(output => Output(output, discretion))],
        Fault = result.Fault is { } fault
            ? fault with { Message = discretion.ApplyToLines(fault.Message), Excerpt = fault.Excerpt is { } excerpt ? discretion.Apply(excerpt) : null, Trace = [.. fault.Trace.Select(discretion.Apply)] }
            : null,
    };

    private static CellOutput Output(CellOutput output, Discretion discretion)
    {
        if (output is WrittenText text) return text with { Text = discretion.ApplyToLines(text.Text) };
        var value = (ShownValue)output;
        if (value.Form(MimeTypes.Table) is { } json && Reporting.Table.FromJson(json) is { } table) return Table(table, value, discretion);
        if (value.Form(MimeTypes.Svg) is { } svg && SharedForms.IsSmallGroup(svg)) return new ShownValue([new(MimeTypes.Text, SmallGroup)], value.IsResult);
        var forms = value.Forms.Select(form => Form(form, value, discretion)).OfType<MimeContent>().ToList();
        return forms.Count > 0 ? value with { Forms = forms } : LeftOutValue(value);
    }

    private static ShownValue Table(Table table, ShownValue value, Discretion discretion) => SharedForms.Of(table, discretion) is { } shared
        ? value with
        {
            Forms = [new(MimeTypes.Html, shared.ToHtml()), new(MimeTypes.Csv, shared.ToCsv()), new(MimeTypes.Table, shared.ToJson()), new(MimeTypes.Text, shared.ToText())],
        }
        : LeftOutValue(value);

    private static ShownValue LeftOutValue(ShownValue value) => value with { Forms = [new(MimeTypes.Text, LeftOut)] };

    private static MimeContent? Form(MimeContent form, ShownValue value, Discretion discretion) => form.MimeType switch
    {
        MimeTypes.Html => Kept(form, SharedForms.OfHtml(form.Content, discretion)),
        MimeTypes.Svg => Kept(form, SharedForms.OfSvg(form.Content, discretion)),
        MimeTypes.Text or MimeTypes.Markdown => form with { Content = discretion.ApplyToLines(form.Content) },
        MimeTypes.Finding => form with { Content = FindingForm.Write(FindingForm.Read(form.Content).Select(finding => SharedForms.Of(finding, discretion))) },

        // Letters that are pixels cannot be changed: the picture stays only where nothing that says the same had to be.
        MimeTypes.Png => value.Forms.Any(other => other.MimeType is MimeTypes.Html or MimeTypes.Svg or MimeTypes.Text) && !value.Forms.Any(other => other != form && discretion.Concerns(Words(other))) ? form : null,
        _ => discretion.Concerns(form.Content) || Discretion.IsHealthHeading(form.Content) ? null : form,
    };

    private static string Words(MimeContent form) => form.MimeType is MimeTypes.Html or MimeTypes.Svg ? SharedForms.Words(form.Content) : form.Content;

    private static MimeContent? Kept(MimeContent form, string? content) => content is null ? null : form with { Content = content };
}

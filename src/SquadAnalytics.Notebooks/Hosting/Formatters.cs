using System.Net;
using System.Text;
using Microsoft.DotNet.Interactive.Formatting;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Reporting;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>In which forms the engine writes values: each as HTML and as text, and the forms from which files are made.</summary>
internal static class Formatters
{
    /// <summary>Registers all of them, once per process.</summary>
    public static void Register()
    {
        // Whatever has no form of its own is handed over both as HTML and as text: a reader of the file may understand only one.
        Formatter.SetPreferredMimeTypesFor(typeof(object), MimeTypes.Html, MimeTypes.Text);
        Add<Table>((MimeTypes.Html, static table => table.ToHtml()), (MimeTypes.Csv, static table => table.ToCsv()), (MimeTypes.Table, static table => table.ToJson()), (MimeTypes.Text, static table => table.ToText()));
        Add<Figure>(
            (MimeTypes.Html, static figure => FigureForms.Of(figure).Html),
            (MimeTypes.Svg, static figure => FigureForms.Of(figure).Svg),
            (MimeTypes.Png, static figure => FigureForms.Of(figure).Png),
            (MimeTypes.Text, static figure => figure.ToString()));
        Add<Findings>(
            (MimeTypes.Finding, static findings => FindingForm.Write(findings.Items)),
            (MimeTypes.Html, static findings => findings.ToHtml()),
            (MimeTypes.Text, static findings => findings.ToText()));
        Add<Finding>(
            (MimeTypes.Finding, static finding => FindingForm.Write([finding])),
            (MimeTypes.Html, static finding => new Findings(finding).ToHtml()),
            (MimeTypes.Text, static finding => finding.ToString()));
        Add<Estimate>((MimeTypes.Html, static estimate => Paragraphs([estimate.ToString(), .. estimate.Notes])), (MimeTypes.Text, static estimate => estimate.ToString()));
        AddAnswers();
        AddWords(except: [typeof(Table), typeof(Figure), typeof(Findings), typeof(Finding), typeof(Estimate), typeof(Exception)]);
    }

    /// <summary>
    /// Everything else of the library shows as it describes itself. The engine would lay out all properties, and with a logbook or a
    /// squad health notes and names that nobody asked for.
    /// </summary>
    private static void AddWords(IReadOnlyList<Type> except)
    {
        var types = Prelude.Assemblies.SelectMany(static assembly => assembly.GetExportedTypes()).Where(type => !type.ContainsGenericParameters && !(type.IsAbstract && type.IsSealed));
        foreach (var type in types.Where(type => !except.Any(known => known.IsAssignableFrom(type))))
        {
            Formatter.Register(type, static (value, writer) => writer.Write(Paragraphs([value.ToString()])), MimeTypes.Html);
            Formatter.Register(type, static (value, writer) => writer.Write(value.ToString()), MimeTypes.Text);
            Formatter.SetPreferredMimeTypesFor(type, MimeTypes.Html, MimeTypes.Text);
        }
    }

    private static void Add<T>(params (string MimeType, Func<T, string> Write)[] forms)
        where T : notnull
    {
        foreach (var (mimeType, write) in forms) Formatter.Register<T>((value, writer) => writer.Write(write(value)), mimeType);
        Formatter.SetPreferredMimeTypesFor(typeof(T), [.. forms.Select(static form => form.MimeType)]);
    }

    /// <summary>An answer shows as the result that it holds, or as the sentence that refuses.</summary>
    private static void AddAnswers()
    {
        foreach (var mimeType in (string[])[MimeTypes.Html, MimeTypes.Text])
            Formatter.Register(typeof(Answer<>), (answer, writer) => writer.Write(Held(answer).ToDisplayString(mimeType)), mimeType);
        Formatter.SetPreferredMimeTypesFor(typeof(Answer<>), MimeTypes.Html, MimeTypes.Text);
    }

    private static object Held(object answer)
    {
        var type = answer.GetType();
        return type.GetProperty(nameof(Answer<>.Refusal))!.GetValue(answer) ?? type.GetMethod(nameof(Answer<>.GetOrThrow))!.Invoke(answer, [])!;
    }

    private static string Paragraphs(IEnumerable<string?> texts)
    {
        var html = new StringBuilder();
        foreach (var text in texts) html.Append("<p>").Append(WebUtility.HtmlEncode(text)).Append("</p>\n");
        return html.ToString();
    }
}

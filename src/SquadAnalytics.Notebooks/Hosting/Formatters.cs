using System.Collections;
using System.Globalization;
using System.Net;
using System.Text;
using Microsoft.Data.Analysis;
using Microsoft.DotNet.Interactive.Formatting;
using SquadAnalytics.Frames;
using SquadAnalytics.Import;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Reporting;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Notebooks.Hosting;

/// <summary>In which forms the engine writes values: each as HTML and as text, and the forms from which files are made.</summary>
internal static class Formatters
{
    /// <summary>Rows of a frame that are written as CSV: what a report exports may be longer than what it shows.</summary>
    private const int RowsWritten = 20_000;

    private static readonly (string MimeType, Func<Table, string> Write)[] TableForms =
    [
        (MimeTypes.Html, static table => table.ToHtml()), (MimeTypes.Csv, static table => table.ToCsv()), (MimeTypes.Table, static table => table.ToJson()), (MimeTypes.Text, static table => table.ToText()),
    ];

    /// <summary>Registers all of them, once per process.</summary>
    public static void Register()
    {
        // Whatever has no form of its own is handed over both as HTML and as text: a reader of the file may understand only one.
        Formatter.SetPreferredMimeTypesFor(typeof(object), MimeTypes.Html, MimeTypes.Text);
        AddTable<Table>(static table => table);
        Add<Figure>(
            (MimeTypes.Html, static figure => ShownFigures.Of(figure).Html),
            (MimeTypes.Svg, static figure => ShownFigures.Of(figure).Svg),
            (MimeTypes.Png, static figure => Convert.ToBase64String(ShownFigures.Of(figure).Png.Span)),
            (MimeTypes.Text, static figure => figure.ToString()));
        Add<Findings>(
            (MimeTypes.Finding, static findings => FindingForm.Write(findings.Items)),
            (MimeTypes.Html, static findings => findings.ToHtml()),
            (MimeTypes.Text, static findings => findings.ToText()));
        Add<Finding>(
            (MimeTypes.Finding, static finding => FindingForm.Write([finding])),
            (MimeTypes.Html, static finding => new Findings(finding).ToHtml()),
            (MimeTypes.Text, static finding => finding.ToString()));
        Add<Prose>((MimeTypes.Html, static prose => prose.ToHtml()), (MimeTypes.Text, static prose => prose.ToString()));
        Add<Listing>((MimeTypes.Html, static listing => listing.ToHtml()), (MimeTypes.Text, static listing => listing.ToString()));
        AddTable<Frame>(static frame => Tables.Of(frame), static frame => Tables.Of(frame, rows: RowsWritten));
        AddTable<ImportReport>(Tables.Import);
        AddTable<ImportResult>(static result => Tables.Import(result.Report));
        Add<Exception>((MimeTypes.Html, static error => Paragraphs([Told(error)])), (MimeTypes.Text, Told));
        Add<Estimate>((MimeTypes.Html, static estimate => Paragraphs([Shown(estimate), Basis(estimate), .. estimate.Notes])), (MimeTypes.Text, static estimate => $"{Shown(estimate)}; {Basis(estimate)}"));
        AddAnswers();
        AddLibrary(except: [typeof(Table), typeof(Prose), typeof(Listing), typeof(Figure), typeof(Findings), typeof(Finding), typeof(Estimate), typeof(Exception), typeof(Frame), typeof(ImportReport), typeof(ImportResult)]);
        DataFrames.WhenLoaded(static () => AddTable<DataFrame>(static frame => Tables.Of(Frame.Of(frame)), static frame => Tables.Of(Frame.Of(frame), rows: RowsWritten)));
    }

    /// <summary>
    /// Results become tables of their estimates; everything else of the library shows as it describes itself. The engine would lay out all
    /// properties, and with a logbook or a squad health notes and names that nobody asked for.
    /// </summary>
    private static void AddLibrary(IReadOnlyList<Type> except)
    {
        var types = Prelude.Assemblies.SelectMany(static assembly => assembly.GetExportedTypes()).Where(static type => !type.ContainsGenericParameters && !(type.IsAbstract && type.IsSealed));
        foreach (var type in types.Where(type => !except.Any(known => known.IsAssignableFrom(type))))
        {
            // Whether a result becomes a table is only looked up when one is shown: looking at every type takes longer than a short notebook.
            Formatter.Register(type, static (value, writer) => writer.Write(ResultTables.Knows(value.GetType()) ? ResultTables.Of(value).ToHtml() : Paragraphs([value.ToString()])), MimeTypes.Html);
            Formatter.Register(type, static (value, writer) => writer.Write(ResultTables.Knows(value.GetType()) ? ResultTables.Of(value).ToText() : value.ToString()), MimeTypes.Text);
            Formatter.SetPreferredMimeTypesFor(type, MimeTypes.Html, MimeTypes.Text);
            AddSequence(type);
        }
    }

    private static void AddSequence(Type element)
    {
        var type = typeof(IEnumerable<>).MakeGenericType(element);
        foreach (var (mimeType, write) in TableForms) Formatter.Register(type, (values, writer) => writer.Write(write(SequenceTable.Of((IEnumerable)values))), mimeType);
        Formatter.SetPreferredMimeTypesFor(type, [.. TableForms.Select(static form => form.MimeType)]);
    }

    /// <summary>A value that shows as a table; what is written as CSV may be longer than what is shown.</summary>
    private static void AddTable<T>(Func<T, Table> shown, Func<T, Table>? written = null)
        where T : notnull =>
        Add<T>([.. TableForms.Select(form => (form.MimeType, (Func<T, string>)(value => form.Write((form.MimeType == MimeTypes.Csv ? written ?? shown : shown)(value)))))]);

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
            Formatter.Register(typeof(Answer<>), (answer, writer) => writer.Write(Answers.Held(answer).ToDisplayString(mimeType)), mimeType);
        Formatter.SetPreferredMimeTypesFor(typeof(Answer<>), MimeTypes.Html, MimeTypes.Text);
    }

    private static string Shown(Estimate estimate) => new NumberFormat().WithInterval(estimate);

    private static string Basis(Estimate estimate) => string.Create(CultureInfo.InvariantCulture, $"{estimate.Method}, n = {estimate.Observations}{(estimate.DegreesOfFreedom is { } df ? $", df = {df:0.#}" : "")}");

    /// <summary>What an exception says, and what led to it; a refusal that was asked to be a result says what was missing.</summary>
    private static string Told(Exception error) => error.InnerException is { } inner ? $"{error.GetType().Name}: {error.Message} ({Told(inner)})" : $"{error.GetType().Name}: {error.Message}";

    private static string Paragraphs(IEnumerable<string?> texts)
    {
        var html = new StringBuilder();
        foreach (var text in texts) html.Append("<p>").Append(WebUtility.HtmlEncode(text)).Append("</p>\n");
        return html.ToString();
    }
}

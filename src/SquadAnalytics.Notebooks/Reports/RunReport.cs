using SquadAnalytics.Notebooks.Files;
using SquadAnalytics.Notebooks.Kernels;
using SquadAnalytics.Notebooks.Running;
using SquadAnalytics.Reporting.Documents;

namespace SquadAnalytics.Notebooks.Reports;

/// <summary>Lays a finished run out as a report: findings first, then the notebook's prose and what its cells showed, the code folded away.</summary>
public static class RunReport
{
    /// <summary>The report of a run.</summary>
    /// <param name="run">The run.</param>
    public static ReportDocument Of(NotebookRun run)
    {
        ArgumentNullException.ThrowIfNull(run);
        var title = run.Notebook.Title ?? run.Name;
        var report = new ReportDocument(title, run.Notebook.Question ?? title)
        {
            DataNote = run.DataNote,
            Findings = run.Findings,
            Parts = [.. Parts(run)],
            Foot = Foot(run),
        };
        return report with { Foot = report.Foot with { References = Literature.CitedIn(report.Words()) } };
    }

    private static IEnumerable<ReportPart> Parts(NotebookRun run)
    {
        if (run.Obstacle is { } obstacle) yield return new FailurePart("the start", obstacle);
        if (run.Failure is { } failure) yield return new FailurePart(failure.Place(), failure.Result.Fault?.Message ?? "");
        var headed = false;
        foreach (var cell in run.Notebook.Cells)
        {
            if (cell.Kind == CellKind.Markdown)
            {
                var prose = headed ? cell.Source : WithoutHead(cell.Source, run.Notebook);
                headed = true;
                if (!string.IsNullOrWhiteSpace(prose)) yield return new FragmentPart(MarkdownProse.ToHtml(prose));
            }
            else if (cell.Kind == CellKind.Code && run.Cells.FirstOrDefault(one => one.Cell.Id == cell.Id) is { } ran)
            {
                foreach (var part in ran.Result.Outputs.Select(PartOf).OfType<ReportPart>()) yield return part;
                if (ran.Failed) yield return Stopped(ran);
                yield return new WorkingPart(Heading(ran), cell.Source);
            }
        }
    }

    // Findings stand at the top of the page already; documents that take no drawing need a figure's pixels.
    private static ReportPart? PartOf(CellOutput output) => output switch
    {
        ShownValue value when value.Form(MimeTypes.Finding) is not null => null,
        ShownValue value when value.Form(MimeTypes.Html) is { } figure && KeptRun.Pixels(value) is { } pixels => new PicturePart(figure, pixels),
        _ => CellPage.PartOf(output),
    };

    private static FailurePart Stopped(CellRun failed)
    {
        var fault = failed.Result.Fault;
        return new FailurePart($"{failed.Place()} ({failed.Cell.Name()})", fault?.Message ?? "")
        {
            Excerpt = fault is { Excerpt: { } excerpt, Column: { } column and > 0 } ? $"{excerpt}\n{new string(' ', column - 1)}^" : fault?.Excerpt,
        };
    }

    private static string Heading(CellRun cell)
    {
        var language = cell.Cell.Language switch
        {
            "csharp" => "C#",
            "sql" => "SQL",
            var other => other,
        };
        var note = cell.Result.Ending switch
        {
            CellEnding.Skipped => ", passed over here: for other programs",
            CellEnding.NotRun => ", not run",
            _ => "",
        };
        return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"cell {cell.Number}, {language}{note}");
    }

    /// <summary>The first prose without the title and the question, which stand at the head of the page.</summary>
    private static string WithoutHead(string source, Notebook notebook)
    {
        var lines = source.Split('\n').ToList();
        Remove(line => line.StartsWith("# ", StringComparison.Ordinal) && line[2..].Trim() == notebook.Title);
        Remove(line => line.Trim('*', '_', ' ') == notebook.Question);
        return string.Join('\n', lines);

        void Remove(Predicate<string> match)
        {
            var at = lines.FindIndex(line => match(line.Trim()));
            if (at >= 0) lines.RemoveAt(at);
        }
    }

    private static ReportFoot Foot(NotebookRun run)
    {
        var foot = new ReportFoot
        {
            Parameters =
            [
                new ReportParameter("notebook", run.Name),
                .. run.Parameters.Select(static parameter => new ReportParameter(parameter.Name, parameter.Value ?? "(empty)")),
            ],
            DataFingerprint = run.DataFingerprint,
            MadeAt = run.Started,
            Took = run.Duration,
        };
        return run.Identity is { } identity ? foot with { Versions = [identity.Library, identity.Engine, identity.Runtime] } : foot;
    }
}

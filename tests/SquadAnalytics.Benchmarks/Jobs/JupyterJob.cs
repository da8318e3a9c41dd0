using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using SquadAnalytics.Benchmarks.Simulations;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Runs the notebooks under Jupyter with the engine's own kernel, the library coming from packages made on the spot.</summary>
internal sealed class JupyterJob : Job
{
    private const string SetupTag = "jupyter-setup";
    private const string PolyglotName = "cells-of-three-languages";
    private const string PackageLine = "#r \"nuget: SquadAnalytics.Notebooks";

    private static readonly string[] Packages = ["SquadAnalytics", "SquadAnalytics.Archive", "SquadAnalytics.Reporting", "SquadAnalytics.Notebooks"];

    public override string Name => "jupyter";

    public override string Summary => "Runs the notebooks under Jupyter's nbconvert with the engine's own kernel; the exit code is 1 where a cell fails.";

    public override string Usage => """
        jupyter [NOTEBOOK ...] [--out FILE]
          NOTEBOOK  names of notebooks without .ipynb (default: all, and cells-of-three-languages, which is made here of C#, SQL and F# cells)
        Run it in the folder of the sources. Needs nbconvert (Debian: jupyter-nbconvert) and the engine's tool on the path
        (dotnet tool install --global Microsoft.dotnet-interactive).
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        if (!Directory.Exists("notebooks"))
        {
            Console.Error.WriteLine("There is no folder 'notebooks' here; run this in the folder of the sources.");
            return 2;
        }

        var names = arguments.Where((argument, k) => argument != "--out" && (k == 0 || arguments[k - 1] != "--out")).ToArray();
        var files = Directory.GetFiles("notebooks", "*.ipynb").Order(StringComparer.Ordinal).Where(file => names.Length == 0 || names.Contains(Path.GetFileNameWithoutExtension(file))).ToList();
        var folder = Directory.CreateTempSubdirectory("squad-jupyter-").FullName;
        try
        {
            // A version of its own, so that no earlier packages of the same version are taken from a cache.
            var version = string.Create(CultureInfo.InvariantCulture, $"0.0.0-check.{Stopwatch.GetTimestamp()}");
            foreach (var package in Packages) Execute(folder, folder, "dotnet", "pack", Path.GetFullPath(Path.Combine("src", package)), "-c", "Release", "--output", Path.Combine(folder, "packages"), $"-p:Version={version}", "--nologo", "-v", "quiet");
            Directory.CreateDirectory(Path.Combine(folder, "jupyter", "kernels"));
            Execute(folder, folder, "dotnet-interactive", "jupyter", "install", "--path", Path.Combine(folder, "jupyter", "kernels"));
            CopyFolder("sample-data", Path.Combine(folder, "sample-data"));
            Directory.CreateDirectory(Path.Combine(folder, "notebooks"));
            if (names.Length == 0 || names.Contains(PolyglotName)) files.Add(Polyglot(folder));
            var rows = files.Select(file => Measure(file, folder, version)).ToList();
            var text = $"# Notebooks under Jupyter\n\nCommand `{string.Join(' ', ["jupyter", .. names])}`, commit {Provenance.Commit()}, {Provenance.Machine()}. nbconvert with the engine's own kernel; the library comes from packages made in the same run. Seconds are of the whole process, packages unpacked for the first notebook.\n\n| notebook | code cells | failed | tables | figures | s |\n| --- | ---: | ---: | ---: | ---: | ---: |\n{string.Join('\n', rows.Select(row => row.Line))}\n";
            Console.Write(text);
            if (Option(arguments, "--out") is { } kept) File.WriteAllText(kept, text);
            return rows.Exists(row => row.Failed > 0) ? 1 : 0;
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static (string Line, int Failed) Measure(string file, string folder, string version)
    {
        var copy = Path.Combine(folder, "notebooks", Path.GetFileName(file));
        File.WriteAllText(copy, WithPackages(File.ReadAllText(file), Path.Combine(folder, "packages"), version));
        var clock = Stopwatch.StartNew();
        Execute(folder, Path.Combine(folder, "notebooks"), "jupyter", "nbconvert", "--to", "notebook", "--execute", "--allow-errors", "--ExecutePreprocessor.timeout=600", "--ExecutePreprocessor.startup_timeout=600", "--inplace", copy);
        var cells = JsonNode.Parse(File.ReadAllText(copy))!["cells"]!.AsArray().Where(cell => (string?)cell!["cell_type"] == "code").Select(cell => cell!["outputs"]!.AsArray()).ToList();
        foreach (var error in cells.SelectMany(outputs => outputs).Where(output => (string?)output!["output_type"] == "error")) Console.Error.WriteLine($"{Path.GetFileName(file)}: {error!["evalue"]}");
        var failed = cells.Count(outputs => outputs.Any(output => (string?)output!["output_type"] == "error"));
        int With(string mimeType) => cells.Sum(outputs => outputs.Count(output => output!["data"]?[mimeType] is not null));
        return (string.Create(CultureInfo.InvariantCulture, $"| {Path.GetFileNameWithoutExtension(file)} | {cells.Count} | {failed} | {With("text/csv")} | {With("image/svg+xml")} | {clock.Elapsed.TotalSeconds:0.0} |"), failed);
    }

    /// <summary>A notebook with cells in every language that the engine's own kernel can run here.</summary>
    private static string Polyglot(string folder)
    {
        var cells = new (string Language, string Tag, string Source)[]
        {
            ("csharp", SetupTag, PackageLine + "\"\nvar logbook = SquadAnalytics.Storage.Logbook.Open(\"../sample-data/squad\");"),
            ("sql", "", "#!sql --name best\nSELECT code, min(total_s) AS best_s FROM session_measures JOIN athletes USING (athlete_id) GROUP BY code"),
            ("csharp", "", "best.Plot(\"code\", \"best_s\")"),
            ("fsharp", SetupTag, "#!fsharp\n" + PackageLine + "\"\nopen SquadAnalytics\nopen SquadAnalytics.Storage\nlet squad = Logbook.Open(\"../sample-data/squad\").Squad"),
            ("fsharp", "", "#!fsharp\nsquad.Sessions |> Seq.filter (fun session -> session.IsComplete) |> Seq.length"),
        };
        var file = Path.Combine(folder, PolyglotName + ".ipynb");
        File.WriteAllText(file, JsonSerializer.Serialize(new
        {
            cells = cells.Select(cell => new { cell_type = "code", metadata = new { tags = new[] { cell.Tag }.Where(tag => tag.Length > 0), polyglot_notebook = new { kernelName = cell.Language } }, source = cell.Source.Split('\n').Select((line, at) => at == 0 ? line : "\n" + line), execution_count = (int?)null, outputs = Array.Empty<object>() }),
            metadata = new { kernelspec = new { display_name = ".NET (C#)", language = "C#", name = ".net-csharp" } },
            nbformat = 4,
            nbformat_minor = 4,
        }));
        return file;
    }

    /// <summary>The notebook, its setup cells taking the packages made here.</summary>
    private static string WithPackages(string json, string packages, string version)
    {
        var notebook = JsonNode.Parse(json)!;
        var setups = notebook["cells"]!.AsArray().Where(cell => cell!["metadata"]?["tags"]?.AsArray().Any(tag => (string?)tag == SetupTag) == true).ToList();
        if (setups.Count == 0) throw new InvalidOperationException($"The notebook has no cell tagged {SetupTag}.");
        foreach (var setup in setups)
        {
            var source = string.Concat(setup!["source"]!.AsArray().Select(line => (string?)line)).Split('\n');
            setup["source"] = string.Join('\n', source.Select(line => line.StartsWith(PackageLine, StringComparison.Ordinal) ? $"#i \"nuget:{packages}\"\n{PackageLine}, {version}\"" : line));
        }

        return notebook.ToJsonString(new JsonSerializerOptions { WriteIndented = true });
    }

    private static void Execute(string home, string folder, string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { WorkingDirectory = folder, RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        start.Environment["JUPYTER_DATA_DIR"] = Path.Combine(home, "jupyter");
        start.Environment["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1";
        using var process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start.");
        var messages = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{program} {arguments[0]} ended with code {process.ExitCode}: {output}{messages.GetAwaiter().GetResult()}");
    }

    private static void CopyFolder(string from, string to)
    {
        foreach (var file in Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(to, Path.GetRelativePath(from, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }
    }
}

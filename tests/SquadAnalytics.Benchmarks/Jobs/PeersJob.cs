using System.Globalization;
using SquadAnalytics.Benchmarks.Simulations;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>Times our work against that of general-purpose software, both in one run, and prints the ratios.</summary>
internal sealed class PeersJob : Job
{
    public override string Name => "peers";

    public override string Summary => "Times ours and general-purpose peers (R) on the same work: lines 'ratio JOB OURS_SECONDS PEER_SECONDS RATIO'; for large data also memory.";

    public override string Usage => $"""
        peers [COMPARISON ...] [--data FOLDER]
          COMPARISON  one or more of {string.Join(", ", PeerComparison.All.Select(comparison => comparison.Name))}; all by default
          --data      folder for the data that the peers write (default: a folder peer-data below the temporary folder)
        Needs Rscript with data.table, lme4 and boot (Debian: r-base-core r-cran-data.table r-cran-lme4 r-cran-boot), for the reports also
        R Markdown, ggplot2 and GNU time (Debian: r-cran-rmarkdown r-cran-ggplot2 pandoc time). Build with -c Release; season-report-warm
        is run from a published build (dotnet publish -c Release -r linux-x64 --self-contained false), where both of its sides are compiled ahead.
        """;

    public override int Run(IReadOnlyList<string> arguments)
    {
        var folder = Option(arguments, "--data") ?? Path.Combine(Path.GetTempPath(), "peer-data");
        Directory.CreateDirectory(folder);
        var names = arguments.Where((argument, k) => argument != "--data" && (k == 0 || arguments[k - 1] != "--data")).ToArray();
        var unknown = names.Except(PeerComparison.All.Select(comparison => comparison.Name)).ToArray();
        if (unknown.Length > 0)
        {
            Console.Error.WriteLine($"There is no comparison '{unknown[0]}'.");
            return 2;
        }

        var lines = new List<string>();
        foreach (var comparison in PeerComparison.All.Where(comparison => names.Length == 0 || names.Contains(comparison.Name)))
        {
            Console.WriteLine($"{comparison.Name}: {comparison.Summary}");
            var peer = comparison.PeerSeconds(folder);
            var ours = comparison.OurSeconds(folder);
            lines.Add(string.Create(CultureInfo.InvariantCulture, $"ratio {comparison.Name} {ours:0.000000} {peer:0.000000} {peer / ours:0.0}"));
            if (comparison.Memory is var (data, allocated))
                lines.Add(string.Create(CultureInfo.InvariantCulture, $"memory {comparison.Name} data {data / 1e6:0.0} MB, data and all that was allocated on them {(data + allocated) / 1e6:0.0} MB, times {(double)(data + allocated) / data:0.00}"));
        }

        foreach (var line in lines) Console.WriteLine(line);
        Console.WriteLine($"commit {Provenance.Commit()}, {Provenance.Machine()}");
        return 0;
    }
}

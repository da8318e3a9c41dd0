using System.Globalization;
using System.Text;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>A kept table of rates with the seed, commit and machine that made it.</summary>
internal static class RateTable
{
    /// <summary>The table as Markdown text.</summary>
    public static string Of(string title, string command, long seed, IReadOnlyList<Rate> rates)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"# {title}\n\n");
        text.Append(CultureInfo.InvariantCulture, $"Command `{command}`, seed {seed}, commit {Provenance.Commit()}, {Provenance.Machine()}.\n");
        text.Append("Rates and Monte Carlo errors (one standard error) in percent. OFF marks a rate more than 2 percentage points and three Monte Carlo errors from what is promised.\n\n");
        text.Append("| setting | question | rate | error | promised | runs | |\n| --- | --- | ---: | ---: | --- | ---: | --- |\n");
        foreach (var rate in rates) text.Append(rate.Row).Append('\n');
        return text.ToString();
    }
}

using System.Globalization;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>Who ranks where? For each athlete the ranks that the data leave possible, never a bare position.</summary>
/// <remarks>Source: Goldstein and Spiegelhalter (1996), J R Stat Soc A 159:385-443; from memory.</remarks>
public sealed record WhoRanksWhere : Figure
{
    private const float RowHeight = 24;

    /// <summary>Makes the figure.</summary>
    /// <param name="ranks">The athletes' ranks; they are sorted here by expected rank.</param>
    /// <param name="level">Level of the rank intervals.</param>
    /// <exception cref="ArgumentException">There is no athlete.</exception>
    public WhoRanksWhere(IReadOnlyList<RankRange> ranks, ConfidenceLevel level)
    {
        ArgumentNullException.ThrowIfNull(ranks);
        if (ranks.Count == 0) throw new ArgumentException("There is no athlete to draw.", nameof(ranks));
        Ranks = [.. ranks.OrderBy(rank => rank.Expected).ThenBy(rank => rank.Label, StringComparer.Ordinal)];
        Level = level;
    }

    /// <summary>The figure of ranked athletes.</summary>
    /// <param name="ranks">The ranks.</param>
    /// <param name="level">Level of the rank intervals.</param>
    /// <param name="label">How an athlete is labelled, by id.</param>
    /// <param name="squad">The squad, for what the ranking mixes.</param>
    public static WhoRanksWhere From(IReadOnlyList<RankedAthlete> ranks, ConfidenceLevel level, Func<string, string> label, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(ranks);
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(squad);
        var sexes = ranks.CountBy(rank => squad.Athlete(rank.AthleteId).Sex).OrderBy(sex => sex.Key).Select(sex => string.Create(CultureInfo.InvariantCulture, $"{sex.Value} {sex.Key.Words()}")).ToList();
        return new WhoRanksWhere([.. ranks.Select(rank => new RankRange(label(rank.AthleteId), rank.ExpectedRank.Value, rank.From, rank.To))], level)
        {
            Mixes = sexes.Count > 1 ? $"all body weights and ages, and {Sentences.List(sexes)}" : "all body weights and ages",
        };
    }

    /// <summary>The athletes by expected rank.</summary>
    public IReadOnlyList<RankRange> Ranks { get; }

    /// <summary>Level of the rank intervals.</summary>
    public ConfidenceLevel Level { get; }

    /// <summary>What the ranking takes together without allowing for it: <c>all body weights and ages</c>; null where it does not.</summary>
    public string? Mixes { get; init; }

    /// <inheritdoc />
    public override string Title => "Who ranks where?";

    /// <inheritdoc />
    public override string Caption =>
        $"Bar: {Level} interval of the rank among {Sentences.Plural(Ranks.Count, "athlete")}, 1 is fastest; dot: expected rank. Athletes whose bars overlap cannot be told apart with certainty by these tests.{(Mixes is null ? "" : $" One ranking of {Mixes}: who is lighter, older or of another sex is not allowed for.")}";

    /// <inheritdoc />
    public override string AlternativeText => string.Join("; ", Ranks.Select(rank => $"{rank.Label}: {Range(rank)}")) + ".";

    internal override Drawing Draw(FigureSize size)
    {
        var names = Math.Min(size == FigureSize.Wide ? 170 : 120, Ranks.Max(rank => Chart.Measure(rank.Label)) + 18);
        var chart = new Chart(size, (int)((Ranks.Count * RowHeight) + 76), new Margins(names, 92, 46, 30));
        chart.Limits(0.4, Ranks.Count + 0.6, -Ranks.Count, 0);
        chart.Heading("rank (1 is fastest)");
        var wished = Ticks.Between(1, Ranks.Count, 8).Where(tick => tick >= 1 && tick == Math.Floor(tick)).ToList();
        // The first rank always has its number, and room for it.
        double[] ticks = [1, .. wished.Where(tick => tick > 1 && (wished.Count < 2 || tick - 1 >= wished[1] - wished[0]))];
        chart.ScaleBottom(ticks, tick => tick.ToString("0", CultureInfo.InvariantCulture), "rank", lines: true);
        chart.EndsBelow();
        for (var k = 0; k < Ranks.Count; k++)
        {
            var rank = Ranks[k];
            var middle = -k - 0.5;
            chart.Label(Chart.Fit(rank.Label, names - 12), 0.4, middle, Ink.Text, TextEdge.Right, right: -10);
            chart.Zone(rank.Best - 0.42, rank.Worst + 0.42, middle - 0.3, middle + 0.3, Ink.Sky.WithAlpha(0.7));
            chart.Dots([new(rank.Expected, middle)], Ink.Blue, Dot.Circle, 8);
            chart.Label(Range(rank), Ranks.Count + 0.6, middle, Ink.Muted, TextEdge.Left, right: 10);
        }

        return new Drawing(chart);
    }

    private static string Range(RankRange rank) => rank.Best == rank.Worst
        ? string.Create(CultureInfo.InvariantCulture, $"rank {rank.Best}")
        : string.Create(CultureInfo.InvariantCulture, $"ranks {rank.Best} to {rank.Worst}");
}

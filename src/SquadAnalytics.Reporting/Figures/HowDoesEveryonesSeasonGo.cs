using System.Globalization;
using ScottPlot;
using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>How does everyone's season go? A small picture for each athlete: session totals about their own level, and the line pulled toward the squad.</summary>
public sealed record HowDoesEveryonesSeasonGo : Figure
{
    private const int CellHeight = 104;
    private const double DaysPerWeek = 7;
    private readonly IReadOnlyList<string> _codes;

    /// <summary>Makes the figure.</summary>
    /// <param name="season">The squad's season.</param>
    /// <param name="squad">The squad, for how its athletes are labelled.</param>
    public HowDoesEveryonesSeasonGo(SquadTrendResult season, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(squad);
        Season = season;
        Labels = [.. season.Athletes.Select(athlete => squad.Athlete(athlete.AthleteId).LabelOn(season.LevelOn))];
        _codes = [.. season.Athletes.Select(athlete => squad.Athlete(athlete.AthleteId).Code)];
    }

    /// <summary>The squad's season.</summary>
    public SquadTrendResult Season { get; }

    /// <summary>The athletes as labelled, in the order of the season's rows.</summary>
    public IReadOnlyList<string> Labels { get; }

    /// <summary>How numbers are written.</summary>
    public NumberFormat Format { get; init; } = new();

    /// <inheritdoc />
    public override string Title => "How does everyone's season go?";

    /// <inheritdoc />
    public override string Caption =>
        $"Session totals of {Sentences.Plural(Labels.Count, "athlete")} as seconds from their level of {Season.LevelOn.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}, all on one scale of seconds and weeks. Line and number: slope in s per week, pulled toward the squad; its interval stands in the table. Where a name has no room, the athlete's code stands. Squad: {Format.WithInterval(Season.Slope)}.";

    /// <inheritdoc />
    public override string AlternativeText => $"Small dots and lines, one for each athlete; slope in s per week: {string.Join("; ", Labels.Zip(Season.Athletes, (label, athlete) => $"{label} {Slope(athlete)}"))}.";

    internal override Drawing Draw(FigureSize size)
    {
        var columns = size == FigureSize.Wide ? 5 : 3;
        var all = Season.Athletes.SelectMany(athlete => Points(athlete, 0)).ToList();
        var (low, high) = Ticks.Around(all.Select(point => point.Y), 0.14);
        var weeks = Math.Max(1, all.Max(point => point.X));
        var rows = Season.Athletes.Select((athlete, k) => (athlete, k)).Chunk(columns).Select((row, index) => RowOf(size, row, columns, weeks, low, high, first: index == 0)).ToList();
        return new Drawing(rows);
    }

    private Chart RowOf(FigureSize size, (AthleteTrend Athlete, int Index)[] row, int columns, double weeks, double low, double high, bool first)
    {
        var top = first ? (int)Chart.RoomAbove(Key, size) + 16 : 22;
        var chart = new Chart(size, CellHeight + top - 22, new Margins(34, 4, 12, top));
        var cell = weeks * 1.12;
        chart.Limits(-0.02 * weeks, columns * cell, low, high);
        if (first) chart.Heading("seconds from their own level, over the season (faster ↓)");
        if (first) chart.NameAbove(Key);
        for (var k = 0; k < row.Length; k++)
        {
            var (athlete, index) = row[k];
            var shift = k * cell;
            chart.Line([new(shift, 0), new(shift + weeks, 0)], Ink.Faint, 1);
            var points = Points(athlete, shift);
            chart.BareDots(points, Ink.Blue, Dot.OpenCircle, 3.5f);
            var slope = athlete.Slope.Match(found => found.Value, _ => Season.Slope.Value);
            var middle = shift + ((Season.LevelOn.DayNumber - Start) / DaysPerWeek);
            chart.Line([new(shift, slope * (shift - middle)), new(shift + weeks, slope * (shift + weeks - middle))], Ink.Text, 1.6f);
            var number = Slope(athlete);
            var room = (float)(chart.InnerWidth / columns * weeks / cell) - Chart.Measure(number, 12) - 8;
            // A name that does not fit gives way to the code, which can be read.
            var name = Chart.Measure(Labels[index], 12, bold: true) <= room ? Labels[index] : Chart.Fit(_codes[index], room, 12, bold: true);
            chart.Label(name, shift, high, Ink.Text, TextEdge.Left, down: -8, bold: true, size: 12);
            chart.Label(number, shift + weeks, high, Ink.Muted, TextEdge.Right, down: -8, size: 12);
        }

        foreach (var tick in Ticks.Between(low, high, 3)) chart.Label(NumberFormat.WithSign(tick, 0), -0.02 * weeks, tick, Ink.Muted, TextEdge.Right, right: -2, size: 12);
        return chart;
    }

    /// <summary>What the marks are, for a picture that is saved without its caption.</summary>
    private static IReadOnlyList<LineName> Key =>
        [new("test", 0, Ink.Blue, Bold: false, Dot.OpenCircle), new("slope, pulled toward the squad; number: s per week", 0, Ink.Text, Bold: false, null)];

    private int Start => Season.Selection.Sessions[0].Date.DayNumber;

    private Coordinates[] Points(AthleteTrend athlete, double shift) =>
        [.. Season.Selection.Sessions.Where(session => session.AthleteId == athlete.AthleteId)
            .Select(session => new Coordinates(shift + ((session.Date.DayNumber - Start) / DaysPerWeek), session.Total.GetOrThrow().Value - athlete.Level.Value))];

    private static string Slope(AthleteTrend athlete) => athlete.Slope.Match(slope => NumberFormat.WithSign(slope.Value, 2), _ => "–");
}

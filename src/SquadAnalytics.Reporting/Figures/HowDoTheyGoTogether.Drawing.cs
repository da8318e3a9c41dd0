using ScottPlot;
using SquadAnalytics.Frames;

namespace SquadAnalytics.Reporting.Figures;

/// <content>The drawing.</content>
public sealed partial record HowDoTheyGoTogether
{
    private const int PlaneHeight = 340;
    private const float RowHeight = 24;
    private const float NameRoom = 126;

    private static readonly (Color Color, Dot Dot, float[] Dashes)[] Signs =
    [
        (Ink.Blue, Dot.Circle, Dashes.Solid), (Ink.Vermilion, Dot.Square, Dashes.Even), (Ink.Green, Dot.Diamond, Dashes.Long),
        (Ink.Purple, Dot.Triangle, Dashes.Fine), (Ink.Text, Dot.OpenCircle, Dashes.Even),
    ];

    private bool IsJoined => Join ?? _groups.All(static group => group.IsLine || group.Points.Count == 1);

    private Drawing DrawPlane(FigureSize size)
    {
        var beside = size == FigureSize.Wide && By is not null && IsJoined;
        var names = Named(beside ? NameRoom - 12 : float.MaxValue);
        var all = _groups.SelectMany(static group => group.Points).ToList();
        var (low, high) = Ticks.Around(all.Select(static point => point.Y));
        var (left, right) = Ticks.Around(all.Select(static point => point.X), 0.04);
        var ticks = Ticks.Between(low, high);
        var room = ticks.Select(tick => Chart.Measure(Ticks.Text(ticks)(tick))).DefaultIfEmpty(20).Max() + 14;
        var chart = new Chart(size, PlaneHeight, new Margins(room, beside ? NameRoom : 14, X.IsNumeric ? 46 : 30, Chart.RoomAbove(beside ? [] : names, size)));
        chart.Limits(left, right, low, high);
        chart.Heading(Axis(Y));
        chart.ScaleLeft(ticks, Ticks.Text(ticks));
        ScaleBottom(chart, size, left, right);
        foreach (var (group, k) in _groups.Index().Reverse().Select(static pair => (pair.Item, pair.Index))) DrawGroup(chart, group, k);
        if (beside) chart.NameAtEnd(names, right);
        else if (names.Count > 0) chart.NameAbove(names);
        return new Drawing(chart);
    }

    private Drawing DrawRows(FigureSize size)
    {
        var names = Named(float.MaxValue);
        var words = Math.Min(size == FigureSize.Wide ? 190 : 130, Words.Max(word => Chart.Measure(word)) + 18);
        var above = Chart.RoomAbove(names, size);
        var values = _groups.SelectMany(static group => group.Points).Select(static point => point.Y).ToList();
        var (left, right) = Ticks.Around(values, 0.06);
        var chart = new Chart(size, (int)((Words.Count * RowHeight) + 46 + above), new Margins(words, 14, 46, above));
        chart.Limits(left, right, -Words.Count, 0);
        chart.Heading(X.Words);
        var ticks = Ticks.Between(left, right, size == FigureSize.Wide ? 6 : 4);
        chart.ScaleBottom(ticks, Ticks.Text(ticks), Axis(Y), lines: true);
        foreach (var (k, word) in Words.Index())
        {
            chart.Line([new(left, -k - 0.5), new(right, -k - 0.5)], Ink.Hairline, 1);
            chart.Label(Chart.Fit(word, words - 12), left, -k - 0.5, Ink.Text, TextEdge.Right, right: -10);
        }

        foreach (var (group, k) in _groups.Index().Reverse().Select(static pair => (pair.Item, pair.Index)))
        {
            var (color, dot, _) = SignOf(k);
            chart.Dots([.. group.Points.Select(static point => new Coordinates(point.Y, -point.X - 0.5))], color, dot, 8);
        }

        if (names.Count > 0) chart.NameAbove(names);
        return new Drawing(chart);
    }

    private void DrawGroup(Chart chart, FrameGroup group, int k)
    {
        var (color, dot, dashes) = SignOf(k);
        if (IsJoined && group.Points.Count > 1) chart.Line([.. group.Points], color, k < NamedGroups ? 2 : 1.2f, dashes);
        chart.Dots([.. group.Points], color, dot, Points > 300 ? 5 : 8);
    }

    private void ScaleBottom(Chart chart, FigureSize size, double left, double right)
    {
        var wide = size == FigureSize.Wide;
        if (X.IsNumeric)
        {
            var ticks = Ticks.Between(left, right, wide ? 8 : 4);
            chart.ScaleBottom(ticks, Ticks.Text(ticks), Axis(X));
            return;
        }

        var days = DateScale.Between(DateOnly.FromDayNumber((int)Math.Ceiling(left)), DateOnly.FromDayNumber((int)right), wide ? 9 : 4);
        chart.ScaleBottom(days, DateScale.Text(days));
    }

    /// <summary>The names of the groups that are told apart; none where there is one group only.</summary>
    private IReadOnlyList<LineName> Named(float room) => By is null ? [] :
    [
        .. _groups.Take(NamedGroups).Select((group, k) => new LineName(Chart.Fit(group.Name, room), group.Points[^1].Y, SignOf(k).Color, Bold: false, SignOf(k).Dot)),
    ];

    private static (Color Color, Dot Dot, float[] Dashes) SignOf(int group) => group < NamedGroups ? Signs[group] : (Ink.Faint, Dot.Circle, Dashes.Solid);
}

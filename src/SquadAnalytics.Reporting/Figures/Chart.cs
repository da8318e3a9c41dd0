using ScottPlot;
using ScottPlot.Rendering;
using ScottPlot.Rendering.RenderActions;
using SkiaSharp;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>
/// One plot of a figure: a heading where others would turn the axis title on its side, ticks at round numbers, marks, and labels that may
/// stand outside the frame. It is drawn by ScottPlot; letters are placed afterwards, where the marks ended up.
/// </summary>
internal sealed partial class Chart : IDisposable
{
    public const float LetterSize = 13;

    /// <summary>
    /// What is asked of the drawing library. Its own rendering would wipe the sheet, which several charts share, and draws a plot a second
    /// time over the first when it has not seen its limits before: SVG would hold every mark twice.
    /// </summary>
    private static readonly IRenderAction[] Actions = [new ReplaceNullAxesWithDefaults(), new CalculateLayout(), new RenderPlottables()];

    private readonly Plot _plot = new();
    private readonly List<ChartLabel> _labels = [];
    private readonly Margins _margins;

    /// <param name="size">For which width.</param>
    /// <param name="height">Height of the whole chart, margins included.</param>
    /// <param name="margins">Room around the marks.</param>
    public Chart(FigureSize size, int height, Margins margins)
    {
        BundledFont.MakeAvailable();
        Width = WidthOf(size);
        Height = height;
        _margins = margins;
        _plot.HideAxesAndGrid();
        _plot.Layout.Fixed(new PixelPadding(margins.Left, margins.Right, margins.Bottom, margins.Top));
    }

    public int Width { get; }

    public int Height { get; }

    /// <summary>Units between the margins, across.</summary>
    public float InnerWidth => Width - _margins.Left - _margins.Right;

    public static int WidthOf(FigureSize size) => size == FigureSize.Wide ? 720 : 360;

    public static float Measure(string text, float size = LetterSize, bool bold = false)
    {
        using var font = new SKFont(BundledFont.Typeface(bold), size);
        return font.MeasureText(text);
    }

    /// <summary>A text shortened with an ellipsis until it fits.</summary>
    public static string Fit(string text, float room, float size = LetterSize, bool bold = false)
    {
        if (Measure(text, size, bold) <= room) return text;
        var letters = new System.Globalization.StringInfo(text);
        for (var kept = letters.LengthInTextElements - 1; kept > 0; kept--)
        {
            var shorter = letters.SubstringByTextElements(0, kept).TrimEnd() + "…";
            if (Measure(shorter, size, bold) <= room) return shorter;
        }

        return "…";
    }

    public void Limits(double left, double right, double bottom, double top) => _plot.Axes.SetLimits(left, right, bottom, top);

    /// <summary>Draws the marks on a canvas, the chart's top edge at a height, and tells where its texts belong.</summary>
    public IReadOnlyList<PlacedText> RenderOn(SKCanvas canvas, float top)
    {
        var pack = new RenderPack(_plot, new PixelRect(0, Width, top + Height, top), canvas);
        foreach (var action in Actions) action.Render(pack);
        return [.. _labels.Select(label => label.PlacedAt(label.IsOnSheet ? new Pixel(label.At.X, top + label.At.Y) : PlaceOf(label.At, pack.DataRect)))];
    }

    private Pixel PlaceOf(Coordinates at, PixelRect marks) => new(_plot.Axes.Bottom.GetPixel(at.X, marks), _plot.Axes.Left.GetPixel(at.Y, marks));

    /// <inheritdoc />
    public void Dispose() => _plot.Dispose();

    /// <summary>The heading above the chart, at its left edge.</summary>
    public void Heading(string text) => OnSheet(text, 1, 15, Ink.Muted);

    /// <summary>A text against the left or right edge of the sheet, at the height of a place in the plot.</summary>
    public void AtEdge(string text, double y, Color color, TextEdge edge, float down = 0, bool bold = false)
    {
        var limits = _plot.Axes.GetLimits();
        if (edge == TextEdge.Left) Label(text, limits.Left, y, color, TextEdge.Left, right: 1 - _margins.Left, down: down, bold: bold);
        else Label(text, limits.Right, y, color, TextEdge.Right, right: _margins.Right - 1, down: down, bold: bold);
    }

    /// <summary>A text at a place of the sheet, in units from its top left corner; the height is that of the baseline.</summary>
    public void OnSheet(string text, double x, double y, Color color, TextEdge edge = TextEdge.Left, bool bold = false, float size = LetterSize) =>
        _labels.Add(new ChartLabel(text, new Coordinates(x, y), color) { Edge = edge, Bold = bold, Size = size, IsOnSheet = true, Drop = 0 });

    /// <summary>A text at a place of the plot, moved by units right and down.</summary>
    public void Label(string text, double x, double y, Color color, TextEdge edge = TextEdge.Left, float right = 0, float down = 0, bool bold = false, float size = LetterSize) =>
        _labels.Add(new ChartLabel(text, new Coordinates(x, y), color) { Edge = edge, Bold = bold, Size = size, Right = right, Down = down });

    /// <summary>Horizontal hairlines at round numbers, the numbers at the left.</summary>
    public void ScaleLeft(IReadOnlyList<double> ticks, Func<double, string> text)
    {
        var limits = _plot.Axes.GetLimits();
        foreach (var tick in ticks)
        {
            Line([new(limits.Left, tick), new(limits.Right, tick)], Ink.Hairline, 1);
            Label(text(tick), limits.Left, tick, Ink.Muted, TextEdge.Right, right: -7);
        }
    }

    /// <summary>The name of a row of texts below the plot, left of it.</summary>
    public void RowBelow(string name, float down, Color color)
    {
        var limits = _plot.Axes.GetLimits();
        Label(name, limits.Left, limits.Bottom, color, TextEdge.Right, right: -7, down: down);
    }

    /// <summary>Numbers or words below the plot, with vertical hairlines where wanted, and a title below them.</summary>
    public void ScaleBottom(IReadOnlyList<double> ticks, Func<double, string> text, string? title = null, bool lines = false)
    {
        var limits = _plot.Axes.GetLimits();
        foreach (var tick in ticks)
        {
            if (lines) Line([new(tick, limits.Bottom), new(tick, limits.Top)], Ink.Hairline, 1);
            Label(text(tick), tick, limits.Bottom, Ink.Muted, TextEdge.Middle, right: Inwards(tick, text(tick)), down: 13);
        }

        if (title is not null) Label(title, (limits.Left + limits.Right) / 2, limits.Bottom, Ink.Muted, TextEdge.Middle, down: 32);
    }

    /// <summary>By how much a text in the middle of a place has to move so that the edge of the sheet does not cut it.</summary>
    private float Inwards(double x, string text)
    {
        var limits = _plot.Axes.GetLimits();
        var middle = _margins.Left + (float)((x - limits.Left) / (limits.Right - limits.Left) * InnerWidth);
        var half = (Measure(text) / 2) + 1;
        return Math.Clamp(middle, half, Width - half) - middle;
    }

    /// <summary>What lies at the two ends of the scale below the plot: faster at the left, slower at the right.</summary>
    public void EndsBelow()
    {
        var limits = _plot.Axes.GetLimits();
        Label("← faster", limits.Left, limits.Bottom, Ink.Muted, TextEdge.Left, down: 32);
        Label("slower →", limits.Right, limits.Bottom, Ink.Muted, TextEdge.Right, down: 32);
    }
}

namespace SquadAnalytics.Reporting.Figures;

/// <summary>A figure in all forms that pages and files are made of.</summary>
/// <param name="Html">The HTML figure with caption, see <see cref="Figure.ToHtml"/>.</param>
/// <param name="Svg">The wide drawing as a file, see <see cref="Figure.ToSvg"/>.</param>
/// <param name="Png">The wide picture, see <see cref="Figure.ToPng"/>.</param>
public sealed record FigureForms(string Html, string Svg, ReadOnlyMemory<byte> Png);

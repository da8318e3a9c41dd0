using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Wordprocessing;
using SkiaSharp;
using A = DocumentFormat.OpenXml.Drawing;
using DW = DocumentFormat.OpenXml.Drawing.Wordprocessing;
using Pic = DocumentFormat.OpenXml.Drawing.Pictures;

namespace SquadAnalytics.Reporting.Documents;

/// <summary>Pictures in the text, as wide as the column, each with its alternative text.</summary>
internal sealed class WordPictures(MainDocumentPart main)
{
    private const long ColumnWidth = 5_940_000; // 165 mm in English Metric Units of 1/36000 mm
    private uint _next = 1;

    public Run Picture(byte[] png, string title, string alternativeText)
    {
        var part = main.AddImagePart(ImagePartType.Png);
        using (var bytes = new MemoryStream(png)) part.FeedData(bytes);
        using var codec = SKCodec.Create(new SKMemoryStream(png)) ?? throw new ArgumentException("The picture is not a PNG.", nameof(png));
        var (width, height) = (ColumnWidth, ColumnWidth * codec.Info.Height / codec.Info.Width);
        alternativeText = WordText.Allowed(alternativeText);
        var id = _next++;
        var name = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Figure {id}");
        var picture = new Pic.Picture(
            new Pic.NonVisualPictureProperties(new Pic.NonVisualDrawingProperties { Id = id, Name = name, Description = alternativeText }, new Pic.NonVisualPictureDrawingProperties()),
            new Pic.BlipFill(new A.Blip { Embed = main.GetIdOfPart(part) }, new A.Stretch(new A.FillRectangle())),
            new Pic.ShapeProperties(
                new A.Transform2D(new A.Offset { X = 0, Y = 0 }, new A.Extents { Cx = width, Cy = height }),
                new A.PresetGeometry(new A.AdjustValueList()) { Preset = A.ShapeTypeValues.Rectangle }));
        var inline = new DW.Inline(
            new DW.Extent { Cx = width, Cy = height },
            new DW.DocProperties { Id = id, Name = name, Description = alternativeText, Title = WordText.Allowed(title) },
            new A.Graphic(new A.GraphicData(picture) { Uri = "http://schemas.openxmlformats.org/drawingml/2006/picture" }))
        { DistanceFromTop = 0U, DistanceFromBottom = 0U, DistanceFromLeft = 0U, DistanceFromRight = 0U };
        return new Run(new Drawing(inline));
    }
}

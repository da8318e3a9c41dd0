using System.Text;
using System.Xml;
using DocumentFormat.OpenXml.Packaging;

namespace SquadAnalytics.Import;

/// <summary>The texts that the cells of a workbook share.</summary>
internal static class SharedTexts
{
    /// <summary>Settings for XML from a stranger: no document type, no outside entity.</summary>
    public static XmlReaderSettings XmlSettings => new() { DtdProcessing = DtdProcessing.Prohibit, XmlResolver = null, IgnoreComments = true, IgnoreProcessingInstructions = true };

    public static IReadOnlyList<string> Read(SharedStringTablePart? part)
    {
        List<string> texts = [];
        if (part is null) return texts;
        using var stream = part.GetStream(FileMode.Open, FileAccess.Read);
        using var xml = XmlReader.Create(stream, XmlSettings);
        while (xml.Read())
        {
            if (xml is { NodeType: XmlNodeType.Element, LocalName: "si" }) texts.Add(ReadRuns(xml));
        }

        return texts;
    }

    /// <summary>The text of the element that the reader stands on: all its runs, without the phonetic guides.</summary>
    public static string ReadRuns(XmlReader xml)
    {
        if (xml.IsEmptyElement) return "";
        var text = new StringBuilder();
        var end = xml.Depth;
        var phonetic = -1;
        var isText = false;
        while (xml.Read() && !(xml.NodeType == XmlNodeType.EndElement && xml.Depth == end))
        {
            switch (xml.NodeType)
            {
                case XmlNodeType.Element:
                    if (xml.LocalName == "rPh" && phonetic < 0 && !xml.IsEmptyElement) phonetic = xml.Depth;
                    isText = xml.LocalName == "t" && !xml.IsEmptyElement;
                    break;
                case XmlNodeType.EndElement:
                    if (xml.Depth == phonetic) phonetic = -1;
                    isText = false;
                    break;
                case XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.Whitespace or XmlNodeType.SignificantWhitespace when isText && phonetic < 0:
                    text.Append(xml.Value);
                    break;
            }
        }

        return text.ToString();
    }
}

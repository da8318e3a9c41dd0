using ScottPlot;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>The colours of the figures: Okabe and Ito's set, which readers with any common colour vision can tell apart, and greys for the frame.</summary>
/// <remarks>Source: Okabe and Ito (2008), Color universal design; from memory. A shape or a line type repeats every colour.</remarks>
internal static class Ink
{
    public static readonly Color Blue = Color.FromHex("#0072B2");
    public static readonly Color Orange = Color.FromHex("#E69F00");
    public static readonly Color Green = Color.FromHex("#009E73");
    public static readonly Color Vermilion = Color.FromHex("#D55E00");
    public static readonly Color Purple = Color.FromHex("#CC79A7");
    public static readonly Color Sky = Color.FromHex("#56B4E9");

    /// <summary>Letters and the main marks; turns light on a dark page.</summary>
    public static readonly Color Text = Color.FromHex("#1C2126");

    /// <summary>Tick labels and notes.</summary>
    public static readonly Color Muted = Color.FromHex("#59626B");

    /// <summary>What stands behind: earlier sessions, others.</summary>
    public static readonly Color Faint = Color.FromHex("#A3ABB3");

    /// <summary>Grid and frame.</summary>
    public static readonly Color Hairline = Color.FromHex("#DDE1E5");

    /// <summary>The ground of the worthwhile zone and other shaded ranges.</summary>
    public static readonly Color Zone = Color.FromHex("#EDF1F4");

    /// <summary>The ground of the page, around marks that overlap.</summary>
    public static readonly Color Paper = Color.FromHex("#FFFFFF");

    /// <summary>Letters on a dark mark, whatever the page.</summary>
    public static readonly Color OnMark = Color.FromHex("#FEFEFE");

    /// <summary>The colour for words that name a mark: dark enough to be read as letters.</summary>
    public static Color Words(Color mark) =>
        mark == Green ? Color.FromHex("#00664A") : mark == Vermilion ? Color.FromHex("#A84300") : mark == Purple ? Color.FromHex("#93426E") : mark;

    /// <summary>Colours by the name under which a page's style may change them.</summary>
    public static readonly IReadOnlyDictionary<string, string> ClassOf = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["#0072B2"] = "blue",
        ["#E69F00"] = "orange",
        ["#009E73"] = "green",
        ["#D55E00"] = "vermilion",
        ["#CC79A7"] = "purple",
        ["#56B4E9"] = "sky",
        ["#00664A"] = "green-words",
        ["#A84300"] = "vermilion-words",
        ["#93426E"] = "purple-words",
        ["#1C2126"] = "text",
        ["#59626B"] = "muted",
        ["#A3ABB3"] = "faint",
        ["#DDE1E5"] = "hairline",
        ["#EDF1F4"] = "zone",
        ["#FFFFFF"] = "paper",
        ["white"] = "paper",
    };
}

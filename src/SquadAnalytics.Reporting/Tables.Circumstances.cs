using SquadAnalytics.Load;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>What came before one test, beside the athlete's usual.</summary>
    public static Table Circumstances(TestContextResult context)
    {
        ArgumentNullException.ThrowIfNull(context);
        static TableCell Cell(double? number, int decimals) => number is { } value ? TableCell.Figure(value, decimals) : "not recorded";
        return new Table(
            "Before the latest test",
            [new("circumstance"), new("unit"), TableColumn.Figures("this test"), TableColumn.Figures("usual"), TableColumn.Figures("other tests with a value")],
            [.. context.Measures.Select(measure => (IReadOnlyList<TableCell>)[measure.Name, measure.Unit, Cell(measure.OnTheDay, Decimals(measure)), Cell(measure.Usual, Decimals(measure)), Count(measure.OtherTests)])])
        {
            Notes = ["Usual: median of the athlete's other tests.", Sentences.LoadUnits, .. context.Notes],
        };
    }

    /// <summary>Decimals of a circumstance: none where both numbers are whole, or load.</summary>
    internal static int Decimals(ContextMeasure measure) =>
        measure.Unit == "AU" || (IsWhole(measure.OnTheDay) && IsWhole(measure.Usual)) ? 0 : 1;

    private static bool IsWhole(double? number) => number is not { } value || value == Math.Floor(value);
}

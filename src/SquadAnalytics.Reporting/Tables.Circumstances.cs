using SquadAnalytics.Load;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>What came before one test, beside the athlete's usual.</summary>
    public static Table Circumstances(TestContextResult context)
    {
        ArgumentNullException.ThrowIfNull(context);
        static TableCell Cell(double? number) => number is { } value ? TableCell.Figure(value, 1) : "not recorded";
        return new Table(
            "Before the latest test",
            [new("circumstance"), new("unit"), TableColumn.Figures("this test"), TableColumn.Figures("usual"), TableColumn.Figures("other tests with a value")],
            [.. context.Measures.Select(measure => (IReadOnlyList<TableCell>)[measure.Name, measure.Unit, Cell(measure.OnTheDay), Cell(measure.Usual), Count(measure.OtherTests)])])
        {
            Notes = ["Usual: median of the athlete's other tests.", Sentences.LoadUnits, .. context.Notes],
        };
    }
}

using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting;

public static partial class Tables
{
    /// <summary>Age group, sex and weight class of the athletes on a test date; body mass itself is not shown.</summary>
    public static Table Categories(IReadOnlyList<AthleteCategory> categories, Squad squad)
    {
        ArgumentNullException.ThrowIfNull(categories);
        ArgumentNullException.ThrowIfNull(squad);
        if (categories.Count == 0) throw new ArgumentException("There is no athlete to list.", nameof(categories));
        return new Table(
            $"Categories on {Date(categories[0].Date)}",
            [new("athlete"), new("age group"), new("sex"), new("weight class"), new("not known")],
            [.. categories.Select(row => (IReadOnlyList<TableCell>)
            [
                squad.Athlete(row.AthleteId).LabelOn(row.Date), row.AgeGroup?.Name ?? TableCell.Nothing, row.Sex switch { Sex.Female => "female", Sex.Male => "male", _ => TableCell.Nothing },
                row.WeightClass?.Name ?? TableCell.Nothing, row.Unknown.Count == 0 ? TableCell.Nothing : string.Join("; ", row.Unknown),
            ])])
        {
            Notes = ["Looked up in the federation's tables that the club entered, for the test date. No norms are carried from one category to another."],
        };
    }
}

using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Figures;

/// <summary>A power curve for one size of change.</summary>
/// <param name="Name">What change it is for: <c>4 s</c>.</param>
/// <param name="Points">The points by number of tests.</param>
public sealed record PowerCurve(string Name, IReadOnlyList<PowerAt> Points)
{
    /// <summary>The curve of a question, by further tests.</summary>
    /// <param name="name">Its short name in the figure: <c>4 s</c>.</param>
    /// <param name="result">The question.</param>
    public static PowerCurve Of(string name, MoreTestsResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return new PowerCurve(name, [.. result.Curve.Select(point => new PowerAt(point.Further, point.Power.Value))]);
    }
}

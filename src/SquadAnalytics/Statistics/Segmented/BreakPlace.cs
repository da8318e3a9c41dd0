using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>A break of the mean and how well its place is known.</summary>
/// <param name="After">The break comes after this observation, counted from 1.</param>
/// <param name="Earliest">Lower limit of the place.</param>
/// <param name="Latest">Upper limit of the place.</param>
/// <param name="ConfidenceLevel">Level of the limits.</param>
public sealed record BreakPlace(int After, int Earliest, int Latest, ConfidenceLevel ConfidenceLevel)
{
    /// <summary>The place in words.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"after observation {After}, {ConfidenceLevel} limits {Earliest} to {Latest}");
}

namespace SquadAnalytics.SampleSquad;

/// <summary>What was drawn for one boxer.</summary>
/// <param name="AthleteId">The athlete's id.</param>
/// <param name="Story">The built-in story, or null.</param>
/// <param name="LevelPercent">Distance from the middling boxer's time; negative is faster.</param>
/// <param name="DriftPercentPerSet">Steady slowing per set.</param>
/// <param name="TrendPercentPerWeek">Change per week.</param>
/// <param name="BlockEffectPercent">The boxer's own full answer to the second block.</param>
public sealed record BoxerTruth(
    string AthleteId, Story? Story, double LevelPercent, double DriftPercentPerSet, double TrendPercentPerWeek, double BlockEffectPercent);

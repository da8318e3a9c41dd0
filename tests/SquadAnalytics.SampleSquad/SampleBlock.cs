namespace SquadAnalytics.SampleSquad;

/// <summary>A training block of the scenario.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Emphasis">What it stresses.</param>
/// <param name="MeanRpe">Mean session rating of perceived exertion.</param>
/// <param name="MeanMinutes">Mean minutes of a training session.</param>
public sealed record SampleBlock(string Name, string Emphasis, double MeanRpe, double MeanMinutes);

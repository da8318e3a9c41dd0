namespace SquadAnalytics.SampleSquad;

/// <summary>What is built into one boxer's times beyond what every boxer has. Percent are of the boxer's own set time.</summary>
public abstract record Story;

namespace SquadAnalytics.Statistics;

/// <summary>Centre and spread of a sample, in its unit.</summary>
/// <param name="Location">Centre.</param>
/// <param name="Scale">Spread; estimates the SD of normal numbers.</param>
public sealed record LocationAndScale(double Location, double Scale);

namespace SquadAnalytics.Reporting.Published;

/// <summary>A number as it was printed.</summary>
/// <param name="Data">The data set.</param>
/// <param name="Quantity">What it is.</param>
/// <param name="Text">The number as printed.</param>
/// <param name="Digits">How many of its significant digits are asked for; fewer than printed where the paper computed from rounded values, or certified more than doubles can hold.</param>
/// <param name="Source">Where it was printed.</param>
public sealed record PublishedNumber(string Data, string Quantity, string Text, int Digits, string Source);

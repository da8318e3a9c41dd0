namespace SquadAnalytics.Change;

/// <summary>One athlete in two blocks.</summary>
/// <param name="AthleteId">The athlete's id.</param>
/// <param name="FirstTests">Eligible tests in the first block.</param>
/// <param name="SecondTests">Eligible tests in the second block.</param>
/// <param name="FirstMeanSeconds">Mean session total of the first block.</param>
/// <param name="SecondMeanSeconds">Mean session total of the second block.</param>
public sealed record AthleteBlocks(string AthleteId, int FirstTests, int SecondTests, double FirstMeanSeconds, double SecondMeanSeconds)
{
    /// <summary>Second minus first: negative = faster.</summary>
    public double ChangeSeconds => SecondMeanSeconds - FirstMeanSeconds;
}

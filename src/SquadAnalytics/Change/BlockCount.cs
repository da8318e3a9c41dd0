namespace SquadAnalytics.Change;

/// <summary>How often something happened in each of two blocks.</summary>
/// <param name="First">In the first block.</param>
/// <param name="Second">In the second block.</param>
public sealed record BlockCount(int First, int Second)
{
    /// <summary>In both together.</summary>
    public int Total => First + Second;

    /// <summary>Both counts.</summary>
    public override string ToString() => FormattableString.Invariant($"{First} + {Second}");
}

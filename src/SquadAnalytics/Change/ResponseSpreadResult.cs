namespace SquadAnalytics.Change;

/// <summary>By how much athletes differ in their response, as a standard deviation between athletes. Nobody is labelled by it.</summary>
public sealed record ResponseSpreadResult
{
    /// <summary>The standard deviation, in seconds. Negative where the comparison group scatters more: then there is no evidence that athletes respond differently.</summary>
    public required Estimate StandardDeviation { get; init; }

    /// <summary>Whether the variance of responses was estimated below zero.</summary>
    public bool IsNegative => StandardDeviation.Value < 0;

    /// <summary>Whether the interval lies above 0: athletes differ by more than the noise of the test.</summary>
    public bool IsClear => StandardDeviation.Lower > 0;

    /// <summary>What a reader has to know.</summary>
    public IReadOnlyList<string> Notes => StandardDeviation.Notes;

    /// <summary>The standard deviation.</summary>
    public override string ToString() => $"SD of individual responses: {StandardDeviation}";
}

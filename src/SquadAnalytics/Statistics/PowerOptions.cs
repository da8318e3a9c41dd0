namespace SquadAnalytics.Statistics;

/// <summary>Settings of a power calculation.</summary>
public sealed record PowerOptions
{
    /// <summary>The kind of test; paired by default.</summary>
    public TTestDesign Design { get; init; } = TTestDesign.Paired;

    /// <summary>Level of the test, strictly between 0 and 1; 0.05 by default.</summary>
    public double Alpha { get; init; } = 0.05;

    /// <summary>Whether the test looks both ways; by default yes.</summary>
    public bool TwoSided { get; init; } = true;

    /// <summary>Whether findings in the wrong direction count as power too; by default no.</summary>
    public bool CountWrongDirection { get; init; }
}

using SquadAnalytics.Internals;

namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="MoreTests"/>.</summary>
public sealed record MoreTestsOptions
{
    private readonly double _wanted = 0.8;
    private readonly int _longest = 30;

    /// <summary>The chance with which a true difference is to be told, strictly between 0 and 1; 0.8 by default.</summary>
    public double Wanted
    {
        get => _wanted;
        init => _wanted = Require.Probability(value, nameof(Wanted));
    }

    /// <summary>How many further tests are looked at; 1 or more. Default 30.</summary>
    public int Longest
    {
        get => _longest;
        init => _longest = Require.AtLeast(1, value, nameof(Longest));
    }

    /// <summary>Level of the interval that has to exclude no difference; 90 % by default, a one-sided 5 % rule. The chance that is wanted must be above its one-sided rate.</summary>
    public ConfidenceLevel Level { get; init; }
}

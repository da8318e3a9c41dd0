namespace SquadAnalytics.Change;

/// <summary>Options of <see cref="SeasonLine"/>.</summary>
public sealed record SeasonLineOptions
{
    private readonly double _lambda = 0.3;

    /// <summary>λ: the weight of a test one week after the last; above 0 and at most 1, 0.3 by default.</summary>
    public double Lambda
    {
        get => _lambda;
        init => _lambda = value is > 0 and <= 1 ? value : throw new ArgumentOutOfRangeException(nameof(Lambda), value, "Lambda lies above 0 and is at most 1.");
    }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}

namespace SquadAnalytics.Sets;

/// <summary>Level measures of one session.</summary>
public sealed record SetProfileResult
{
    /// <summary>The session described.</summary>
    public required Session Session { get; init; }

    /// <summary>Session total W = Σ t, in seconds; refused where a set is missing.</summary>
    public required Answer<Estimate> Total { get; init; }

    /// <summary>Mean set of the completed sets, in seconds.</summary>
    public required Estimate Mean { get; init; }

    /// <summary>Fastest completed set, in seconds.</summary>
    public required Estimate Best { get; init; }

    /// <summary>Slowest completed set, in seconds.</summary>
    public required Estimate Worst { get; init; }

    /// <summary>Worst minus best, in seconds.</summary>
    public required Estimate Range { get; init; }

    /// <summary>Standard deviation (n - 1) across sets, in seconds.</summary>
    public required Answer<Estimate> StandardDeviation { get; init; }

    /// <summary>Coefficient of variation across sets, 100 SD / mean, in percent.</summary>
    public required Answer<Estimate> CoefficientOfVariation { get; init; }

    /// <summary>Total, mean, best and worst in one line.</summary>
    public override string ToString() => $"{Session.Date:yyyy-MM-dd}: total {Total}; mean {Mean}; best {Best}; worst {Worst}; SD {StandardDeviation}; CV {CoefficientOfVariation}";
}

using SquadAnalytics.Statistics;

namespace SquadAnalytics.Change;

/// <summary>One athlete's tests beside the limits of the athlete's own stable run.</summary>
public sealed record OwnChartResult
{
    /// <summary>The athlete's id.</summary>
    public required string AthleteId { get; init; }

    /// <summary>The stretch that the limits rest on.</summary>
    public required ChartBaseline Baseline { get; init; }

    /// <summary>How many tests the limits rest on.</summary>
    public required int BaselineTests { get; init; }

    /// <summary>Centre, limits and σ̂, frozen.</summary>
    public required IndividualsChart Limits { get; init; }

    /// <summary>All eligible tests by date, the baseline's included.</summary>
    public required IReadOnlyList<ChartPoint> Points { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>Whether the limits rest on fewer than 20 tests.</summary>
    public bool IsProvisional => BaselineTests < OwnChart.RoutineNeeds;

    /// <summary>Tests where a rule speaks.</summary>
    public IReadOnlyList<ChartPoint> Signals => [.. Points.Where(point => point.IsSignal)];

    /// <summary>Limits and signals.</summary>
    public override string ToString() => $"{AthleteId}: {Limits}, baseline {Baseline.Name}, {Signals.Count} of {Points.Count} tests out of line";
}

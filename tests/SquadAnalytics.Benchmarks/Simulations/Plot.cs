namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>What makes a virtual boxer slow down.</summary>
internal enum Plot
{
    /// <summary>Nothing: even pacing.</summary>
    Nothing,

    /// <summary>A steady drift of 0.6 % per set.</summary>
    Drift,

    /// <summary>A break of 5 % after set 3, on an otherwise even pace.</summary>
    Break,

    /// <summary>A drift of 0.6 % per set and a break of 5 % at one station after set 3.</summary>
    DriftAndStation,

    /// <summary>First sets that vary by 4 % and cost 0.6 % later for each percent.</summary>
    FastStart,
}

/// <summary>Words of plots.</summary>
internal static class Plots
{
    /// <summary>The plot in words.</summary>
    public static string Words(this Plot plot) => plot switch
    {
        Plot.Drift => "drift 0.6 % per set",
        Plot.Break => "break of 5 % after set 3",
        Plot.DriftAndStation => "drift 0.6 % per set and 5 % break at one station after set 3",
        Plot.FastStart => "starts vary by 4 % and cost",
        _ => "even pace",
    };
}

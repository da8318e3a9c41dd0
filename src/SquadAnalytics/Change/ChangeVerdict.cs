namespace SquadAnalytics.Change;

/// <summary>What an interval [L, U] of a change says against ±S. Lower time is better: a negative change is faster. No probabilities.</summary>
public enum ChangeVerdict
{
    /// <summary>U &lt; -S: faster by a worthwhile amount.</summary>
    FasterWorthwhile,

    /// <summary>L > S: slower by a worthwhile amount.</summary>
    SlowerWorthwhile,

    /// <summary>L > -S and U &lt; S: no worthwhile change.</summary>
    NoWorthwhileChange,

    /// <summary>U &lt; 0: faster, size unclear.</summary>
    FasterSizeUnclear,

    /// <summary>L > 0: slower, size unclear.</summary>
    SlowerSizeUnclear,

    /// <summary>Neither: not clear from these tests.</summary>
    NotClear,
}

/// <summary>Reads a <see cref="ChangeVerdict"/> off an interval, and its words.</summary>
public static class ChangeVerdicts
{
    /// <summary>The verdict of a change with its interval.</summary>
    /// <remarks>At 90 % "no worthwhile change" is two one-sided tests at 5 % and "worthwhile" a minimum-effect test at 5 % (from memory:
    /// Schuirmann 1987, J Pharmacokinet Biopharm 15:657-680; Lakens 2017, Soc Psychol Personal Sci 8:355-362). Percentages are compared on
    /// the scale of logarithms, so that a gain and the loss that undoes it count the same. Assumes what the interval assumes.</remarks>
    /// <param name="change">The change, later minus earlier, with an interval.</param>
    /// <param name="worthwhile">The smallest worthwhile change, in the same unit.</param>
    /// <exception cref="ArgumentException">The change has no interval, or the units differ.</exception>
    public static ChangeVerdict Of(Estimate change, SmallestWorthwhileChange worthwhile)
    {
        ArgumentNullException.ThrowIfNull(change);
        ArgumentNullException.ThrowIfNull(worthwhile);
        worthwhile.RequireUnit(change.Unit, nameof(worthwhile));
        if (change.Interval is not { } interval) throw new ArgumentException("A verdict needs a change with an interval.", nameof(change));
        double Plain(double value) => change.Unit == Unit.Percent ? Math.Log(1 + value / 100) : value;
        double lower = Plain(interval.Lower), upper = Plain(interval.Upper), s = Plain(worthwhile.Estimate.Value);
        return upper < -s ? ChangeVerdict.FasterWorthwhile
            : lower > s ? ChangeVerdict.SlowerWorthwhile
            : lower > -s && upper < s ? ChangeVerdict.NoWorthwhileChange
            : upper < 0 ? ChangeVerdict.FasterSizeUnclear
            : lower > 0 ? ChangeVerdict.SlowerSizeUnclear
            : ChangeVerdict.NotClear;
    }

    /// <summary>The verdict in words.</summary>
    public static string Words(this ChangeVerdict verdict) => verdict switch
    {
        ChangeVerdict.FasterWorthwhile => "faster by a worthwhile amount",
        ChangeVerdict.SlowerWorthwhile => "slower by a worthwhile amount",
        ChangeVerdict.NoWorthwhileChange => "no worthwhile change",
        ChangeVerdict.FasterSizeUnclear => "faster, size unclear",
        ChangeVerdict.SlowerSizeUnclear => "slower, size unclear",
        ChangeVerdict.NotClear => "not clear from these tests",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
    };
}

using SquadAnalytics.Internals;

namespace SquadAnalytics.Load;

/// <summary>A run of days before a test whose load is summed; named before looking.</summary>
public sealed record LoadWindow
{
    /// <summary>Makes a window.</summary>
    /// <param name="nearest">Its last day, counted back from the test; 1 or more, because the test day is never among them.</param>
    /// <param name="farthest">Its first day, counted back from the test; not below the nearest.</param>
    /// <exception cref="ArgumentOutOfRangeException">The days are out of order or reach the test day.</exception>
    public LoadWindow(int nearest, int farthest)
    {
        Nearest = Require.AtLeast(1, nearest);
        Farthest = Require.AtLeast(nearest, farthest);
    }

    /// <summary>The seven days before the test.</summary>
    public static LoadWindow WeekBefore { get; } = new(1, TestContext.LoadDays);

    /// <summary>Its last day, counted back from the test.</summary>
    public int Nearest { get; }

    /// <summary>Its first day, counted back from the test.</summary>
    public int Farthest { get; }

    /// <summary>The window in words.</summary>
    public override string ToString() => Nearest == Farthest ? FormattableString.Invariant($"load {Nearest} days before") : FormattableString.Invariant($"load {Nearest} to {Farthest} days before");
}

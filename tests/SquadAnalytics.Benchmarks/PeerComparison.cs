namespace SquadAnalytics.Benchmarks;

/// <summary>One piece of work that is done by ours and by a peer in the same run, on the same machine. A new class is found by its name.</summary>
internal abstract class PeerComparison
{
    /// <summary>Name of the line, for example <c>sleepstudy</c>.</summary>
    public abstract string Name { get; }

    /// <summary>What both sides do.</summary>
    public abstract string Summary { get; }

    /// <summary>Runs the peer and returns the seconds of its fastest way.</summary>
    public abstract double PeerSeconds(string dataFolder);

    /// <summary>Runs ours and returns its seconds; throws where its result is not the peer's.</summary>
    public abstract double OurSeconds(string dataFolder);

    /// <summary>Bytes of the data as they are handed over, and bytes that ours allocates on them, both known after <see cref="OurSeconds"/>; null where memory is not looked at.</summary>
    public (long Data, long Allocated)? Memory { get; protected set; }

    /// <summary>All comparisons, by name.</summary>
    public static IReadOnlyList<PeerComparison> All { get; } =
    [
        .. typeof(PeerComparison).Assembly.GetTypes()
            .Where(type => type.IsSubclassOf(typeof(PeerComparison)) && !type.IsAbstract)
            .Select(type => (PeerComparison)Activator.CreateInstance(type)!)
            .OrderBy(comparison => comparison.Name, StringComparer.Ordinal),
    ];

    /// <summary>Throws unless our number is the peer's, so that a ratio never compares different work.</summary>
    protected static void RequireClose(string what, double expected, double got, double absolute)
    {
        if (Math.Abs(expected - got) > absolute) throw new InvalidOperationException(FormattableString.Invariant($"{what}: expected {expected:R}, got {got:R}."));
    }
}

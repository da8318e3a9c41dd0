namespace SquadAnalytics;

/// <summary>A configured range of session totals. Half-open: a total exactly on an edge belongs to the slower band.</summary>
public sealed record PerformanceBand
{
    /// <summary>Makes a band.</summary>
    /// <param name="name">Its name, chosen by the club.</param>
    /// <param name="low">The fastest total inside, in seconds.</param>
    /// <param name="high">The first total outside, in seconds; above <paramref name="low"/>.</param>
    /// <param name="validFrom">The first test date it applies to, or null for always.</param>
    /// <exception cref="ArgumentOutOfRangeException">The edges are in the wrong order.</exception>
    public PerformanceBand(string name, Seconds low, Seconds high, DateOnly? validFrom = null)
    {
        Name = Internals.Require.Text(name);
        if (high <= low) throw new ArgumentOutOfRangeException(nameof(high), high, $"The upper edge of band '{name}' must be above its lower edge {low}.");
        Low = low;
        High = high;
        ValidFrom = validFrom;
    }

    /// <summary>The band's name.</summary>
    public string Name { get; }

    /// <summary>The fastest total inside the band.</summary>
    public Seconds Low { get; }

    /// <summary>The first total above the band.</summary>
    public Seconds High { get; }

    /// <summary>The first test date the band applies to, or null for always.</summary>
    public DateOnly? ValidFrom { get; }

    /// <summary>The distance between the edges.</summary>
    public Seconds Width => High - Low;

    /// <summary>Whether a total lies in the band: low &lt;= total &lt; high.</summary>
    public bool Contains(Seconds total) => total >= Low && total < High;
}

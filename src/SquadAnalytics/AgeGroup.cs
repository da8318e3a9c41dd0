using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>One row of a federation's dated table of age groups. Entered by the club with its source; the library brings none.</summary>
public sealed record AgeGroup
{
    /// <summary>Makes a row.</summary>
    /// <param name="federation">Whose table it is.</param>
    /// <param name="name">The group's name, for example <c>youth</c>.</param>
    /// <param name="validFrom">First day on which this version of the table applies.</param>
    /// <param name="fromAge">Youngest age, reached in the calendar year of the test.</param>
    /// <param name="toAge">Oldest age, or null for no limit.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ages are negative or in the wrong order.</exception>
    public AgeGroup(string federation, string name, DateOnly validFrom, int fromAge, int? toAge)
    {
        Federation = Require.Text(federation);
        Name = Require.Text(name);
        ValidFrom = validFrom;
        FromAge = Require.AtLeast(0, fromAge);
        ToAge = toAge is { } oldest ? Require.AtLeast(fromAge, oldest, nameof(toAge)) : null;
    }

    /// <summary>Whose table it is.</summary>
    public string Federation { get; }

    /// <summary>The group's name.</summary>
    public string Name { get; }

    /// <summary>First day on which this version of the table applies.</summary>
    public DateOnly ValidFrom { get; }

    /// <summary>Youngest age, reached in the calendar year of the test.</summary>
    public int FromAge { get; }

    /// <summary>Oldest age, or null for no limit.</summary>
    public int? ToAge { get; }

    /// <summary>Where the row was taken from.</summary>
    public string? Source { get; init; }

    /// <summary>Whether an age lies in the group.</summary>
    public bool Covers(int age) => age >= FromAge && (ToAge is null || age <= ToAge);

    /// <summary>Name and ages.</summary>
    public override string ToString() => FormattableString.Invariant($"{Name}, {FromAge} to {ToAge?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "any age"}");
}

using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>One row of a federation's dated table of weight classes: above the lower and up to the upper limit. Entered by the club with its source; the library brings none.</summary>
public sealed record WeightClass
{
    /// <summary>Makes a row.</summary>
    /// <param name="federation">Whose table it is.</param>
    /// <param name="name">The class's name.</param>
    /// <param name="validFrom">First day on which this version of the table applies.</param>
    /// <param name="aboveKilograms">Limit below, itself not in the class; null for the lightest.</param>
    /// <param name="upToKilograms">Limit above, itself in the class; null for the heaviest.</param>
    /// <exception cref="ArgumentOutOfRangeException">A limit is not above 0, or they are in the wrong order.</exception>
    public WeightClass(string federation, string name, DateOnly validFrom, double? aboveKilograms, double? upToKilograms)
    {
        Federation = Require.Text(federation);
        Name = Require.Text(name);
        ValidFrom = validFrom;
        AboveKilograms = aboveKilograms is { } lower ? Require.Positive(lower, nameof(aboveKilograms)) : null;
        UpToKilograms = upToKilograms is { } upper ? Require.Positive(upper, nameof(upToKilograms)) : null;
        if (UpToKilograms <= AboveKilograms) throw new ArgumentOutOfRangeException(nameof(upToKilograms), upToKilograms, string.Create(CultureInfo.InvariantCulture, $"The upper limit of '{name}' must be above its lower limit {AboveKilograms} kg."));
    }

    /// <summary>Whose table it is.</summary>
    public string Federation { get; }

    /// <summary>The class's name.</summary>
    public string Name { get; }

    /// <summary>First day on which this version of the table applies.</summary>
    public DateOnly ValidFrom { get; }

    /// <summary>Limit below, itself not in the class; null for the lightest.</summary>
    public double? AboveKilograms { get; }

    /// <summary>Limit above, itself in the class; null for the heaviest.</summary>
    public double? UpToKilograms { get; }

    /// <summary>The sex it is for; unknown means for all.</summary>
    public Sex Sex { get; init; }

    /// <summary>The age group it is for, or null for all.</summary>
    public string? AgeGroup { get; init; }

    /// <summary>Where the row was taken from.</summary>
    public string? Source { get; init; }

    /// <summary>Whether a body mass lies in the class.</summary>
    public bool Covers(double kilograms) => (AboveKilograms is null || kilograms > AboveKilograms) && (UpToKilograms is null || kilograms <= UpToKilograms);

    /// <summary>Name and limits.</summary>
    public override string ToString() => (AboveKilograms, UpToKilograms) switch
    {
        (null, { } upper) => string.Create(CultureInfo.InvariantCulture, $"{Name}, up to {upper} kg"),
        ({ } lower, null) => string.Create(CultureInfo.InvariantCulture, $"{Name}, above {lower} kg"),
        ({ } lower, { } upper) => string.Create(CultureInfo.InvariantCulture, $"{Name}, above {lower} up to {upper} kg"),
        _ => Name,
    };
}

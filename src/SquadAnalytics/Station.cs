using SquadAnalytics.Internals;

namespace SquadAnalytics;

/// <summary>One exercise of the circuit and how often it is done in each set.</summary>
public sealed record Station
{
    /// <summary>Makes a station.</summary>
    /// <param name="name">The exercise, for example <c>burpees</c>.</param>
    /// <param name="repetitions">Repetitions in each set; 1 or more.</param>
    public Station(string name, int repetitions)
    {
        Name = Require.Text(name);
        Repetitions = Require.AtLeast(1, repetitions);
    }

    /// <summary>The exercise.</summary>
    public string Name { get; }

    /// <summary>Repetitions in each set.</summary>
    public int Repetitions { get; }

    /// <summary>Repetitions and name, for example <c>10 burpees</c>.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Repetitions} {Name}");
}

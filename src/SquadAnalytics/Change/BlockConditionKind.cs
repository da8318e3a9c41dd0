namespace SquadAnalytics.Change;

/// <summary>A condition of testing that should be the same in two blocks.</summary>
public enum BlockConditionKind
{
    /// <summary>Who or what took the times.</summary>
    Timer,

    /// <summary>Where the test was done.</summary>
    Place,

    /// <summary>Stations with repetitions, and the number of sets.</summary>
    Circuit,

    /// <summary>The start interval and what happens at a missed start.</summary>
    StartInterval,

    /// <summary>The step in which times were written.</summary>
    TimingStep,
}

/// <summary>Words for <see cref="BlockConditionKind"/>.</summary>
public static class BlockConditionKinds
{
    /// <summary>The condition as it stands in a sentence.</summary>
    public static string Words(this BlockConditionKind kind) => kind switch
    {
        BlockConditionKind.Timer => "timer",
        BlockConditionKind.Place => "place",
        BlockConditionKind.Circuit => "circuit",
        BlockConditionKind.StartInterval => "start interval",
        BlockConditionKind.TimingStep => "step of the written times",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a condition of testing."),
    };
}

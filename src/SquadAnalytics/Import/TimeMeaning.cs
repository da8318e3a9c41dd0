namespace SquadAnalytics.Import;

/// <summary>What a written set time stands for.</summary>
public enum TimeMeaning
{
    /// <summary>Work time: from the start signal of the set to its finish.</summary>
    Work,

    /// <summary>The running clock at the finish of the set: 1:02, 3:03, 5:04 on a start interval of two minutes.</summary>
    Clock,
}

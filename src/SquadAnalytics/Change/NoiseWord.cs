namespace SquadAnalytics.Change;

/// <summary>How the noise of one test compares with the smallest worthwhile change.</summary>
public enum NoiseWord
{
    /// <summary>Noise at most S. One test still shows a worthwhile change only roughly: the noise of a change is 1.41 times larger.</summary>
    Good,

    /// <summary>Noise above S and at most 2 S: usable with repeated tests.</summary>
    UsableWithRepeatedTests,

    /// <summary>Noise above 2 S: too noisy for decisions about single athletes.</summary>
    TooNoisyForSingleAthletes,
}

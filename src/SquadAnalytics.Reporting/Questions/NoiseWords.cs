using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>What the noise of a test leaves of a worthwhile change, in words.</summary>
internal static class NoiseWords
{
    /// <summary>The rest of a sentence that names both sizes.</summary>
    public static string Words(this NoiseWord word) => word switch
    {
        NoiseWord.Good => "one test shows a worthwhile change roughly",
        NoiseWord.UsableWithRepeatedTests => "a single test cannot show it, repeated tests may",
        _ => "too noisy for decisions about single athletes from few tests",
    };
}

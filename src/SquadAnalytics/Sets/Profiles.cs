using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Arithmetic on the profiles of several sessions of one protocol: one row of set values per session.</summary>
internal static class Profiles
{
    /// <summary>Each profile minus its own mean.</summary>
    public static double[][] CentredBySession(double[][] profiles) =>
        [.. profiles.Select(profile =>
        {
            var mean = Descriptive.Mean(profile);
            return profile.Select(value => value - mean).ToArray();
        })];

    /// <summary>Mean of each set over the sessions.</summary>
    public static double[] MeanProfile(double[][] profiles) =>
        [.. Enumerable.Range(0, profiles[0].Length).Select(k => Descriptive.Mean([.. profiles.Select(profile => profile[k])]))];

    /// <summary>Residual sum of squares after session effects and a free mean for every set.</summary>
    public static double FreeResidual(double[][] profiles)
    {
        var centred = CentredBySession(profiles);
        var mean = MeanProfile(centred);
        return centred.Sum(profile => profile.Select((value, k) => (value - mean[k]) * (value - mean[k])).Sum());
    }
}

using System.Collections.Concurrent;
using System.Globalization;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Among how many unrelated contrasts a contrast was picked, where the contrasts to pick from are related: by what α has to be divided so that limits hold for all of them together.</summary>
/// <remarks>
/// k contrasts with weights w_j of each of m profiles have one-sample t statistics T_j. The number is α / (2 P(t_(m-1) > q)), q the quantile of the largest |T_j| at the level: 1 where all contrasts are the same but for
/// a factor, k or a little less where they are unrelated. The distribution of the largest |T_j| is simulated (fixed seed, so that the number is always the same) for profiles of independent, equally noisy normal values; a noise that
/// all values of a profile share drops out of contrasts whose weights add up to 0. Where one of six values is twice as noisy as the others, limits for 90 % hold 90 to 91 of 100; where one cause moves most values of a profile together, up to 95 (simulated). From 30 profiles on
/// the number hardly changes, and that of 30 is used. Source: the union of the limits is the max-t method of Hothorn, Bretz and Westfall (2008), Biometrical Journal 50:346-363 (from memory), here with a scatter of each contrast's own.
/// </remarks>
internal static class EffectiveChoices
{
    private const int Draws = 20_000;
    private const int MostProfiles = 30;
    private const int Seed = 1;

    /// <summary>The sorted largest |T| of each family of contrasts and number of profiles that was asked for.</summary>
    private static readonly ConcurrentDictionary<string, double[]> Known = new(StringComparer.Ordinal);

    /// <param name="weights">One row of weights for each contrast to pick from; each row adds up to 0.</param>
    /// <param name="profiles">How many profiles m there are; 2 or more.</param>
    /// <param name="level">Confidence level of the limits.</param>
    public static double Of(double[][] weights, int profiles, ConfidenceLevel level)
    {
        double[][] units = [.. weights.Select(Contrasts.UnitLength)];
        if (units.All(unit => IsSame(unit, units[0]))) return 1;
        var simulated = Math.Min(profiles, MostProfiles);
        var key = FormattableString.Invariant($"{simulated}:{string.Join(';', units.Select(unit => string.Join(',', unit.Select(weight => weight.ToString("R", CultureInfo.InvariantCulture)))))}");
        var largest = Known.GetOrAdd(key, _ => Largest(units, simulated));
        var reach = SampleQuantile.OfSorted(largest, level.Fraction, QuantileRule.ModePosition);
        return Math.Clamp(level.Alpha / 2 / StudentTDistribution.UpperTail(reach, simulated - 1), 1, units.Length);
    }

    private static double[] Largest(double[][] units, int profiles)
    {
        var random = new SeededRandom(Seed, profiles);
        var largest = new double[Draws];
        var (sums, squares) = (new double[units.Length], new double[units.Length]);
        var profile = new double[units[0].Length];
        for (var draw = 0; draw < Draws; draw++)
        {
            Array.Clear(sums);
            Array.Clear(squares);
            for (var m = 0; m < profiles; m++)
            {
                for (var k = 0; k < profile.Length; k++) profile[k] = random.NextNormal();
                for (var j = 0; j < units.Length; j++)
                {
                    var contrast = Contrasts.Apply(units[j], profile);
                    sums[j] += contrast;
                    squares[j] += contrast * contrast;
                }
            }

            double most = 0;
            for (var j = 0; j < units.Length; j++)
            {
                // The contrasts are centred on 0, so that the plain formula of the variance loses no digits.
                var variance = (squares[j] - sums[j] * sums[j] / profiles) / (profiles - 1);
                most = Math.Max(most, sums[j] * sums[j] / (profiles * variance));
            }

            largest[draw] = Math.Sqrt(most);
        }

        Array.Sort(largest);
        return largest;
    }

    /// <summary>Whether two contrasts of unit length are one but for the sign.</summary>
    private static bool IsSame(double[] first, double[] second) => Math.Abs(Math.Abs(Contrasts.Apply(first, second)) - 1) < 1e-9;
}

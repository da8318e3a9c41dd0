using System.Globalization;
using SquadAnalytics.Reliability;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>The findings of one question: where does everyone stand? Bands with their probability, ranks as far as they can be told, bests.</summary>
public static class StandingFindings
{
    /// <summary>Puts the standings in plain words.</summary>
    /// <param name="standings">Where everyone stands.</param>
    /// <param name="ranks">The ranks of those who may be ranked.</param>
    /// <param name="noise">The noise of one session total.</param>
    /// <param name="label">How an athlete is labelled, by id.</param>
    /// <param name="format">How numbers are written.</param>
    public static Findings Of(Answer<Standings> standings, Answer<IReadOnlyList<RankedAthlete>> ranks, Answer<TypicalErrorResult> noise, Func<string, string> label, NumberFormat format)
    {
        ArgumentNullException.ThrowIfNull(standings);
        ArgumentNullException.ThrowIfNull(ranks);
        ArgumentNullException.ThrowIfNull(noise);
        ArgumentNullException.ThrowIfNull(label);
        ArgumentNullException.ThrowIfNull(format);
        IReadOnlyList<Finding> findings =
        [
            .. standings.Match<IEnumerable<Finding>>(found => [.. Bands(found, label)], refused => [Finding.Refused(refused)]),
            .. ranks.Match<IEnumerable<Finding>>(found => [First(found, label)], refused => [Finding.Refused(refused)]),
            .. standings.Match<IEnumerable<Finding>>(found => [.. Bests(found, label, format), .. NotRanked(found, label)], _ => []),
            noise.Match(found => new Finding($"Test noise: the typical error of one session total is {format.WithInterval(found.Estimate)}; the level of an athlete, a mean of a few tests, is known to within that much divided by the root of their number.") { Estimate = found.Estimate, Source = "Hopkins 2000", OverAthletes = found.Athletes }, Finding.Refused),
        ];
        return new Findings([.. findings.DistinctBy(finding => finding.Sentence)]);
    }

    private static IEnumerable<Finding> Bands(Standings standings, Func<string, string> label)
    {
        var known = standings.Athletes.Where(athlete => athlete.Band.IsEstimated).Select(athlete => (athlete.AthleteId, Band: athlete.Band.GetOrThrow())).ToList();
        if (known.Count == 0)
        {
            yield return new Finding("No bands apply on this day.");
            yield break;
        }

        string Probability(ProbableBandResult band) => NumberFormat.Fixed(band.Chances.First(chance => chance.Name == band.Observed).Chance.Value, 2);
        var changed = known.Where(item => item.Band.Standing == BandStanding.Changed).Select(item => $"{label(item.AthleteId)} now {item.Band.Announced} (probability {Probability(item.Band)})").ToList();
        var open = known.Where(item => item.Band.Standing == BandStanding.OnTheLine).Select(item => $"{label(item.AthleteId)} ({item.Band.Observed} this time with probability {Probability(item.Band)}, {item.Band.Announced} so far)").ToList();
        yield return new Finding(changed.Count == 0 ? "No change of band can be announced after the latest tests." : $"Change of band after the latest test: {Sentences.List(changed)}.")
        {
            Method = "t distribution about the latest total; a new band is announced only when probable enough or after two tests in a row",
            Notes = [$"Otherwise in the band they held: {Sentences.Plural(known.Count(item => item.Band.Standing is BandStanding.Unchanged), "athlete")}."],
        };
        if (open.Count > 0) yield return new Finding($"On the line, to be decided by the next test: {Sentences.List(open)}.") { Method = "the total lies in another band than before, but not clearly" };
    }

    private static Finding First(IReadOnlyList<RankedAthlete> ranks, Func<string, string> label)
    {
        var first = ranks.Where(athlete => athlete.From == 1).Select(athlete => label(athlete.AthleteId)).ToList();
        var told = ranks.Count(athlete => athlete.From == athlete.To);
        return new Finding(first.Count == 1
            ? $"{first[0]} is the fastest of those ranked; everyone else's ranks begin at 2 or later."
            : $"Who is fastest cannot be told: {Sentences.List(first)} may each be first.")
        {
            Method = string.Create(CultureInfo.InvariantCulture, $"ranks with intervals among {ranks.Count} athletes, normal errors, seeded draws"),
            Source = "Goldstein and Spiegelhalter 1996; Marshall and Spiegelhalter 1998",
            Notes = [$"{told.ToString(CultureInfo.InvariantCulture)} of {ranks.Count.ToString(CultureInfo.InvariantCulture)} athletes have one rank only; for the others the tests leave several."],
        };
    }

    private static IEnumerable<Finding> Bests(Standings standings, Func<string, string> label, NumberFormat format)
    {
        var best = standings.Athletes.Where(athlete => !athlete.IsJunior).MinBy(athlete => athlete.Best.TotalSeconds);
        if (best is null) yield break;
        yield return new Finding($"The fastest total on record among those here is {format.Time(new Seconds(best.Best.TotalSeconds))} by {label(best.AthleteId)} on {best.Best.Session.Date.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}.")
        {
            Method = "smallest complete session total",
            Notes = [string.Create(CultureInfo.InvariantCulture, $"The best of many tests flatters: the best of {best.Best.Test} tests with one true level lies about {-best.Best.DriftWithoutChange:0.0} typical errors below it.")],
        };
    }

    private static IEnumerable<Finding> NotRanked(Standings standings, Func<string, string> label)
    {
        var juniors = standings.Athletes.Count(athlete => athlete.IsJunior);
        if (juniors > 0) yield return new Finding($"Not ranked: {Sentences.Plural(juniors, "junior")}.") { Method = "growth and learning swamp training effects" };
        if (standings.WithoutRecentTest.Count > 0) yield return new Finding($"Without a recent test, and so without a place: {Sentences.List([.. standings.WithoutRecentTest.Select(label)])}.") { Method = "no eligible test in the weeks looked at, or no longer in the squad" };
    }
}

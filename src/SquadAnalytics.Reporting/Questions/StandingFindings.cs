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
            .. standings.Match<IEnumerable<Finding>>(found => [.. Bands(found, label, format)], refused => [Finding.Refused(refused)]),
            .. ranks.Match<IEnumerable<Finding>>(found => [First(found, label)], refused => [Finding.Refused(refused)]),
            .. standings.Match<IEnumerable<Finding>>(found => [.. Bests(found, label, format), .. NotRanked(found, label)], _ => []),
            noise.Match(found => new Finding($"Test noise: the typical error of one session total is {format.WithInterval(found.Estimate)}; {Known(standings, format)}.") { Estimate = found.Estimate, Source = "Hopkins 2000", OverAthletes = found.Athletes, Notes = [Sentences.NoiseOfAllTests] }, Finding.Refused),
        ];
        return new Findings([.. findings.DistinctBy(finding => finding.Sentence)]);
    }

    private static IEnumerable<Finding> Bands(Standings standings, Func<string, string> label, NumberFormat format)
    {
        var known = standings.Athletes.Where(athlete => athlete.Band.IsEstimated).Select(athlete => (athlete.AthleteId, athlete.Level, Band: athlete.Band.GetOrThrow())).ToList();
        if (known.Count == 0)
        {
            yield return new Finding("No bands apply on this day.");
            yield break;
        }

        string Way(ProbableBandResult band) => band.IsSlower switch { true => $"the slower band {band.Observed}", false => $"the faster band {band.Observed}", _ => $"band {band.Observed}" };
        var changes = known.Where(item => item.Band.Standing == BandStanding.Changed).ToList();
        var changed = changes.Select(item =>
            $"{label(item.AthleteId)}, {(item.Band.InARow == 1 ? "latest test alone" : $"{Sentences.Plural(item.Band.InARow, "test")} in a row, the latest")} {format.Time(new Seconds(item.Band.Total.Value))}, in {Way(item.Band)} (chance {Tables.ChanceOfObserved(item.Band)}), {item.Band.Before} before; {Level(item, format)}").ToList();
        var open = known.Where(item => item.Band.Standing == BandStanding.OnTheLine).Select(item => $"{label(item.AthleteId)} (latest test in {Way(item.Band)} with chance {Tables.ChanceOfObserved(item.Band)}, {item.Band.Announced} so far; {Level(item, format)})").ToList();
        yield return new Finding(changed.Count == 0 ? "No change of band can be announced after the latest tests." : $"Change of band after the latest test: {string.Join(". ", changed)}.")
        {
            Method = "t distribution about the latest total: a new band is announced where the chance of the latest test reaches what was chosen, or after two tests in a row",
            Notes = [.. changes.Exists(item => item.Band.Before is { } before && item.Band.Reached(item.Level).Contains(before)) ? ["Where the level of several tests may still lie in the band before, take the next test before acting on it."] : Array.Empty<string>(), $"Otherwise in the band they held: {Sentences.Plural(known.Count(item => item.Band.Standing is BandStanding.Unchanged), "athlete")}."],
        };
        if (open.Count > 0) yield return new Finding($"On the line, to be decided by the next test: {Sentences.List(open)}.") { Method = "the total lies in another band than before, but not clearly" };
    }

    private static string Level((string AthleteId, Estimate Level, ProbableBandResult Band) item, NumberFormat format)
    {
        var reached = item.Band.Reached(item.Level);
        return $"the level of the last {Sentences.Plural(item.Level.Observations, "test")}, {format.Value(item.Level)}, {(reached.Count == 1 ? $"lies in {reached[0]}" : $"may lie in {string.Join(" or ", reached)}")}";
    }

    private static Finding First(IReadOnlyList<RankedAthlete> ranks, Func<string, string> label)
    {
        var first = ranks.Where(athlete => athlete.From == 1).Select(athlete => label(athlete.AthleteId)).ToList();
        var told = ranks.Where(athlete => athlete.From == athlete.To).Select(athlete => athlete.From.ToString(CultureInfo.InvariantCulture)).ToList();
        return new Finding(first.Count == 1
            ? $"{first[0]} is the fastest of those ranked: nobody else may be first."
            : $"Who is fastest cannot be told: {Sentences.List(first)} may each be first.")
        {
            Method = string.Create(CultureInfo.InvariantCulture, $"ranks with intervals among {ranks.Count} athletes, normal errors, seeded draws"),
            Source = "Goldstein and Spiegelhalter 1996; Marshall and Spiegelhalter 1998",
            Notes = [told.Count == 0 ? "No single rank is clear." : $"Only {(told.Count == 1 ? "rank" : "ranks")} {Sentences.List(told)} {(told.Count == 1 ? "is" : "are")} clear; for the other {Sentences.Plural(ranks.Count - told.Count, "athlete")} the tests leave several.", Confidence(ranks)],
        };
    }

    private static string Confidence(IReadOnlyList<RankedAthlete> ranks)
    {
        var (least, most) = (Percent(ranks.Min(athlete => athlete.Confidence)), Percent(ranks.Max(athlete => athlete.Confidence)));
        return $"Ranks are whole numbers: a range holds the rank with a chance of {(least == most ? least : $"{least} to {most}")} %, not less than what was asked for.";

        // Rounded down, so that no more is promised than holds; a share that is a whole percent but for rounding stays one.
        static string Percent(double share) => NumberFormat.Fixed(Math.Floor((100 * share) + 1e-6), 0);
    }

    /// <summary>How well the levels are known: half the width of their intervals, by how many tests they rest on.</summary>
    private static string Known(Answer<Standings> standings, NumberFormat format) => standings.Match(
        found => found.Athletes.Where(athlete => athlete.Level.Interval is not null).OrderByDescending(athlete => athlete.Level.Observations).FirstOrDefault() is { Level: { Interval: { } interval } level }
            ? $"a level that is the mean of {Sentences.Plural(level.Observations, "test")} is known to ±{format.Time(new Seconds(interval.HalfWidth))} ({interval.ConfidenceLevel})"
            : "no level is known",
        _ => "no level is known");

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

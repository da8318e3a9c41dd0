using System.Globalization;
using SquadAnalytics.Internals;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Sets;

/// <summary>Does a faster-than-usual first set cost later?</summary>
public static class StartingTooFast
{
    private const int Needed = 8;

    /// <summary>Regresses the later sets on how fast the session was started.</summary>
    /// <remarks>
    /// On y = ln t: x_s = y_s1 - median of the athlete's y_1; z_s = mean(y_k, k > b); z on x with the session's date as covariate; slope θ, percent for percent,
    /// with a t interval, m - 3 degrees of freedom. The slow-down (z - y_1) is never regressed on y_1: y_1 is inside it, so that noise
    /// alone would give a negative slope. Day-to-day form shared by all sets pushes θ up, so a clear θ below 0 is conservative.
    /// Assumes a straight relation and independent normal errors given the start. Source: linear regression, textbook; this use is the library's own, no
    /// source.
    /// </remarks>
    /// <returns>The slope, or <see cref="Refusal.TooFewSessions"/> below 8 sessions, <see cref="Refusal.ZeroVariance"/> where the first set
    /// varies by no more than the set noise or all sessions are of one date, <see cref="Refusal.MixedProtocols"/>.</returns>
    /// <exception cref="ArgumentException">The sessions belong to several athletes, or b is not a set before the last.</exception>
    public static Answer<StartingTooFastResult> Fit(IReadOnlyList<Session> sessions, StartingTooFastOptions? options = null)
    {
        options ??= new StartingTooFastOptions();
        return SessionSelection.OfOneAthlete(sessions, options.Selection).Match(selection => Of(selection, options), refusal => refusal);
    }

    private static Answer<StartingTooFastResult> Of(SessionSelection selection, StartingTooFastOptions options)
    {
        var m = selection.Sessions.Count;
        if (m < Needed) return new NotEstimable("the cost of a fast start", Refusal.TooFewSessions, Needed, m, "eligible sessions");
        LateSlowdown.CheckSet(options.AfterSet, selection.Sessions[0].Protocol.Sets, nameof(options));
        if (!SetNoise.Of(selection, options.Level).TryGet(out var noise)) return SetNoise.Of(selection, options.Level).Refusal!;
        double[][] profiles = [.. selection.Sessions.Select(session => LogScale.Of(session.TimesSeconds))];
        double[] first = [.. profiles.Select(profile => profile[0])];
        var usual = Descriptive.Median(first);
        double[] start = [.. first.Select(y => y - usual)];
        double[] later = [.. profiles.Select(profile => Descriptive.Mean(profile[options.AfterSet..]))];
        double[] weeks = [.. selection.Sessions.Select(session => (session.Date.DayNumber - selection.Sessions[0].Date.DayNumber) / 7.0)];
        var spread = Descriptive.StandardDeviation(start);
        if (spread <= noise.LogNoise.Value)
        {
            return new NotEstimable("the cost of a fast start", Refusal.ZeroVariance,
                string.Create(CultureInfo.InvariantCulture, $"first sets that vary by more than the set noise, {noise.Noise.Value:0.00} %"), string.Create(CultureInfo.InvariantCulture, $"{Percent.FromLog(spread).Value:0.00} %"));
        }

        if (weeks.All(week => week == 0)) return new NotEstimable("the cost of a fast start", Refusal.ZeroVariance, "sessions of several dates", "one date");
        return LeastSquares.Fit(later, RegressionDesign.WithIntercept(m).Add("start", start).Add("weeks", weeks)).Select(fit =>
        {
            var slope = fit.Coefficient("start");
            return new StartingTooFastResult
            {
                Slope = TInterval.Of(slope.Value, slope.StandardError, slope.DegreesOfFreedom, Unit.None, options.Level, m, string.Create(CultureInfo.InvariantCulture, $"least squares of mean ln t of sets {options.AfterSet + 1} on, on ln t of set 1, with date"))
                    .WithNotes("Day-to-day form shared by all sets pushes the slope up: a clear slope below 0 is conservative, one above 0 proves nothing.").WithNotes(selection.Notes),
                StartSpread = new Estimate(Percent.FromLog(spread).Value, Unit.Percent, m, "SD of ln t of set 1, back-transformed"),
                AfterSet = options.AfterSet,
                Selection = selection,
            };
        });
    }
}

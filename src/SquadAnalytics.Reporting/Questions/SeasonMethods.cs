using System.Globalization;
using SquadAnalytics.Change;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>How a season review was made: the paragraph for the methods section, and the R code that computes the main table again.</summary>
public static class SeasonMethods
{
    /// <summary>The methods in words, with their references.</summary>
    /// <param name="evidence">The review.</param>
    /// <param name="seed">Seed of everything drawn at random.</param>
    /// <param name="software">Name and version of the software.</param>
    public static Prose Describe(SeasonEvidence evidence, int seed, string software)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        var protocol = evidence.Protocol;
        var circuit = protocol.Stations.Count == 0 ? "a circuit" : $"a circuit of {Sentences.List([.. protocol.Stations.Select(station => station.ToString()!)])}";
        var every = protocol.StartInterval is { } interval ? string.Create(CultureInfo.InvariantCulture, $", one set every {interval.Value:0.#} s") : "";
        var first = evidence.Selection.Sessions[0].Date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
        var last = evidence.Selection.Sessions[^1].Date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
        var timers = evidence.Selection.Sessions.Select(session => session.Timer).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        var timed = timers.Count == 0 ? "How times were taken is not written down." : $"Times were taken with: {Sentences.List(timers)}.";
        var level = evidence.Season.Match(season => season.Slope.ConfidenceLevel?.ToString() ?? "", _ => "");
        var week = evidence.Season.Match(season => $" Week in the model: weeks from {season.LevelOn.ToString("d MMMM yyyy", CultureInfo.InvariantCulture)}, so that the intercept is the total on that day.", _ => "");
        var form = evidence.Season.Match(season => season.Form.Words(), _ => "no model could be fitted");
        return new Prose(
            $"Design. One squad was observed from {first} to {last}; no group was assigned and nothing was randomised. The test was {circuit}, done in {protocol.Sets.ToString(CultureInfo.InvariantCulture)} sets{every}; the score is the session total, the sum of the sets' work times in seconds (lower is faster). {timed} {Dropped(evidence.Selection.Options.Familiarisation)} (McGawley and Bishop 2006); void and incomplete sessions were left out, and no missing value was imputed.",
            $"Reliability. The typical error is the residual standard deviation after athlete and test effects within windows of at most four consecutive tests of one block, nearly equal in length, pooled, with chi-squared limits (Hopkins 2000); intraclass correlations are ICC(A,1) and ICC(C,1) with their limits (McGraw and Wong 1996; Shrout and Fleiss 1979). The smallest worthwhile change is {evidence.Format.Value(evidence.Worthwhile.Estimate)}, a share of the width of a performance band.",
            $"Season. Session totals were modelled by restricted maximum likelihood with week as fixed effect and athletes as random effects (Patterson and Thompson 1971; Bates et al. 2015), by true dates; in the model that was kept, {form}. Degrees of freedom are Satterthwaite's; they are contested, so a t interval over the athletes' own least-squares slopes stands beside them. Athletes' levels and slopes are predictions pulled toward the squad. The standard deviation of individual responses is that of slopes times the weeks of the season, with limits by the Q-profile (Viechtbauer 2007; Atkinson and Batterham 2015; Hopkins 2015).",
            "Load. Session load is the rating of perceived exertion times minutes (Foster et al. 2001), summed over the days before a test and only where every day is known; its association with the session total is a repeated-measures correlation about the athletes' own trends (Bakdash and Marusich 2017). Circumstances entered a mixed model split into athlete mean and deviation.",
            $"All intervals are {level} unless a table says otherwise; intraclass correlations have 95 %. Random numbers were drawn with seed {seed.ToString(CultureInfo.InvariantCulture)}. Computed with {software}. Every comparison made is reported. Data dictionary of sessions.csv: athlete, code; date, day of the test; session total (s), sum of the sets' work times.{week}");
    }

    private static string Dropped(int sessions) => sessions switch
    {
        0 => "No session was dropped as familiarisation",
        1 => "The first session of each athlete with the test was dropped as familiarisation",
        _ => $"The first {sessions.ToString(CultureInfo.InvariantCulture)} sessions of each athlete with the test were dropped as familiarisation",
    };

    /// <summary>R code that computes the season's main table again from the exported session table.</summary>
    /// <param name="season">The season.</param>
    /// <param name="protocolId">Id of the protocol, as it stands in the exported table.</param>
    public static Listing InR(SquadTrendResult season, string protocolId)
    {
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(protocolId);
        var options = season.Selection.Options;
        var random = season.Form switch
        {
            SquadTrendForm.CorrelatedLevelsAndSlopes => "(week | athlete)",
            SquadTrendForm.LevelsAndSlopes => "(week || athlete)",
            _ => "(1 | athlete)",
        };
        string Day(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        string[] lines =
        [
            "# the long table of sessions, one row each, from the export of tables; void sessions are not in it",
            "d <- read.csv(\"sessions.csv\", check.names = FALSE)",
            "names(d) <- sub(\" .*\", \"\", sub(\"session total\", \"total\", sub(\"sets timed\", \"timed\", names(d))))",
            $"d <- d[d$protocol == \"{protocolId}\" & d$timed > 0, ]",
            "d <- d[order(d$athlete, d$date, d$occasion), ]",
            $"d <- d[ave(seq_len(nrow(d)), d$athlete, FUN = seq_along) > {options.Familiarisation.ToString(CultureInfo.InvariantCulture)}, ]  # familiarisation",
            .. options.From is { } from ? [$"d <- d[as.Date(d$date) >= as.Date(\"{Day(from)}\"), ]"] : Array.Empty<string>(),
            .. options.To is { } to ? [$"d <- d[as.Date(d$date) <= as.Date(\"{Day(to)}\"), ]"] : Array.Empty<string>(),
            "d <- d[!is.na(d$total), ]  # complete sessions",
            $"d$week <- as.numeric(as.Date(d$date) - as.Date(\"{Day(season.LevelOn)}\")) / 7",
            $"m <- lme4::lmer(total ~ week + {random}, data = d, REML = TRUE, control = lme4::lmerControl(optimizer = \"bobyqa\"))",
            "print(nrow(d)); print(summary(m)$coefficients); print(lme4::VarCorr(m))",
            "own <- sapply(split(d, d$athlete), function(a) if (nrow(a) >= 3) coef(lm(total ~ week, data = a))[[2]] else NA)",
            "print(t.test(own[!is.na(own)]))  # second opinion: the athletes' own slopes",
        ];
        return new Listing("R", string.Join('\n', lines));
    }
}

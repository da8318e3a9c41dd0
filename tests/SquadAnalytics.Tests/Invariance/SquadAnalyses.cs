using System.Text.RegularExpressions;
using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Tests.Invariance;

/// <summary>Every analysis offered on a squad: its sessions as they are handed over, and what the squad's times were multiplied by, because seconds that a coach enters are multiplied along.</summary>
internal static partial class SquadAnalyses
{
    public static IReadOnlyDictionary<string, Func<Squad, IReadOnlyList<Session>, double, object>> All { get; } = new Dictionary<string, Func<Squad, IReadOnlyList<Session>, double, object>>
    {
        ["typical error"] = (squad, sessions, _) => TypicalError.Fit(sessions),
        ["typical error by a mixed model"] = (squad, sessions, _) => TypicalError.OfMixedModel(sessions),
        ["intraclass correlation"] = (squad, sessions, _) => IntraclassCorrelation.Fit(sessions),
        ["consecutive pairs"] = (squad, sessions, _) => ConsecutivePairs.Fit(sessions),
        ["limits of agreement"] = (squad, sessions, _) => LimitsOfAgreement.Fit(sessions, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll with { To = sessions.Min(session => session.Date).AddDays(7) } }),
        ["familiarisation"] = (squad, sessions, factor) => Familiarisation.Fit(sessions, Worthwhile(factor)),
        ["changes"] = (squad, sessions, factor) => SquadChanges.Fit(sessions, Error(factor), Worthwhile(factor)),
        ["shrunken changes"] = (squad, sessions, factor) => ChangeShrinkage.Fit(SquadChanges.Fit(sessions, Error(factor), Worthwhile(factor)).GetOrThrow(), Worthwhile(factor)),
        ["season"] = (squad, sessions, _) => SquadTrend.Fit(sessions),
        ["spread of responses"] = (squad, sessions, _) => ResponseSpread.OfSeason(SquadTrend.Fit(sessions).GetOrThrow()),
        ["bests"] = (squad, sessions, factor) => PersonalBests.OfSquad(sessions, Error(factor)),
        ["standing"] = (squad, sessions, factor) => Standings.Summarize(squad, Error(factor)),
        ["set profiles"] = (squad, sessions, _) => ProfileModel.Fit(sessions, new ProfileModelOptions(3)),
        ["two blocks"] = (squad, sessions, _) => BlockComparison.Fit(sessions, squad.Blocks[0], squad.Blocks[1]),
        ["two blocks, mixed model"] = (squad, sessions, _) => BlockModel.Fit(sessions, squad.Blocks[0], squad.Blocks[1]),
        ["what else differed"] = (squad, sessions, _) => BlockCircumstances.Summarize(squad, squad.Blocks[0], squad.Blocks[1]),
        ["weekly series"] = (squad, sessions, _) => InterruptedSeries.FitSquad(sessions, squad.Blocks[1].From),
        ["load and totals"] = (squad, sessions, _) => LoadAssociation.Fit(sessions, squad.Contexts, new LoadAssociationOptions { Windows = [new LoadWindow(1, 1)] }),
        ["circumstances and totals"] = (squad, sessions, _) => CovariateModel.Fit(sessions, squad.Contexts),
        ["set noise"] = (squad, sessions, _) => OfEach(squad, sessions, own => SetNoise.Fit(own)),
        ["late slow-down"] = (squad, sessions, _) => OfEach(squad, sessions, own => LateSlowdown.Fit(own, new LateSlowdownOptions { AfterSet = 3 })),
        ["shapes"] = (squad, sessions, _) => OfEach(squad, sessions, own => ShapeComparison.Fit(own)),
        ["starts"] = (squad, sessions, _) => OfEach(squad, sessions, own => StartingTooFast.Fit(own)),
        ["explanations"] = (squad, sessions, _) => OfEach(squad, sessions, own => Explanations.Fit(own, new ExplanationsOptions { AfterSet = 3 })),
        ["own season"] = (squad, sessions, _) => OfEach(squad, sessions, own => SeasonTrend.Fit(own)),
        ["own level"] = (squad, sessions, _) => OfEach(squad, sessions, own => SeasonLevel.Fit(own)),
        ["own line"] = (squad, sessions, _) => OfEach(squad, sessions, own => SeasonLine.Smooth(own)),
    };

    /// <summary>Those whose answer for an athlete rests on that athlete's tests alone.</summary>
    public static IReadOnlyList<string> OfOneAthleteEach { get; } = ["bests", "set noise", "late slow-down", "shapes", "starts", "explanations", "own season", "own level", "own line"];

    /// <summary>Those that compare logarithms, or hold times against the clock: a constant on all sets changes their numbers.</summary>
    public static IReadOnlyList<string> OfLogarithms { get; } = ["set noise", "set profiles", "shapes", "starts", "explanations"];

    /// <summary>Whether a number is a level of session totals or one of its limits, by where it stands; all others are differences, slopes, spreads, counts and chances.</summary>
    public static bool IsLevel(string place) => LevelPlace().IsMatch(place);

    [GeneratedRegex(@"(TotalSeconds|LineSeconds|MeanSeconds|\.Level|InHindsight|Latest|Band\.Total|Band\.Low|Band\.High)(\.Lower|\.Upper)?$")]
    private static partial Regex LevelPlace();

    /// <summary>Every number of an analysis.</summary>
    public static Dictionary<string, (object Value, Unit Unit)> Numbers(string analysis, Squad squad, double factor = 1, IReadOnlyList<Session>? sessions = null) =>
        Invariance.Numbers.Of(All[analysis](squad, sessions ?? squad.Sessions, factor));

    private static List<Own> OfEach(Squad squad, IReadOnlyList<Session> sessions, Func<IReadOnlyList<Session>, object> fit) =>
        [.. squad.Athletes.Select(athlete => new Own(athlete.Id, fit([.. sessions.Where(session => session.AthleteId == athlete.Id)])))];

    /// <summary>What an analysis says of one athlete.</summary>
    private sealed record Own(string AthleteId, object Answer);

    private static TypicalErrorResult Error(double factor) => TypicalError.Entered(new Seconds(3.43 * factor), 200, "entered, between two tenths so that no change equals it");

    private static SmallestWorthwhileChange Worthwhile(double factor) => SmallestWorthwhileChange.Entered(new Seconds(3.6 * factor));
}

using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reliability;
using SquadAnalytics.Sets;
using SquadAnalytics.Standing;

namespace SquadAnalytics.Tests.Invariance;

/// <summary>Every analysis offered on a squad, and what the squad's times were multiplied by: seconds that a coach enters are multiplied along.</summary>
internal static class SquadAnalyses
{
    public static IReadOnlyDictionary<string, Func<Squad, double, object>> All { get; } = new Dictionary<string, Func<Squad, double, object>>
    {
        ["typical error"] = (squad, _) => TypicalError.Fit(squad.Sessions),
        ["typical error by a mixed model"] = (squad, _) => TypicalError.OfMixedModel(squad.Sessions),
        ["intraclass correlation"] = (squad, _) => IntraclassCorrelation.Fit(squad.Sessions),
        ["consecutive pairs"] = (squad, _) => ConsecutivePairs.Fit(squad.Sessions),
        ["limits of agreement"] = (squad, _) => LimitsOfAgreement.Fit(squad.Sessions, new TypicalErrorOptions { Selection = SelectionOptions.KeepAll with { To = squad.Sessions.Min(session => session.Date).AddDays(7) } }),
        ["familiarisation"] = (squad, factor) => Familiarisation.Fit(squad.Sessions, Worthwhile(factor)),
        ["changes"] = (squad, factor) => SquadChanges.Fit(squad.Sessions, Error(factor), Worthwhile(factor)),
        ["shrunken changes"] = (squad, factor) => ChangeShrinkage.Fit(SquadChanges.Fit(squad.Sessions, Error(factor), Worthwhile(factor)).GetOrThrow(), Worthwhile(factor)),
        ["season"] = (squad, _) => SquadTrend.Fit(squad.Sessions),
        ["spread of responses"] = (squad, _) => ResponseSpread.OfSeason(SquadTrend.Fit(squad.Sessions).GetOrThrow()),
        ["bests"] = (squad, factor) => PersonalBests.OfSquad(squad.Sessions, Error(factor)),
        ["standing"] = (squad, factor) => Standings.Summarize(squad, Error(factor)),
        ["set profiles"] = (squad, _) => ProfileModel.Fit(squad.Sessions, new ProfileModelOptions(3)),
        ["two blocks"] = (squad, _) => BlockComparison.Fit(squad.Sessions, squad.Blocks[0], squad.Blocks[1]),
        ["two blocks, mixed model"] = (squad, _) => BlockModel.Fit(squad.Sessions, squad.Blocks[0], squad.Blocks[1]),
        ["what else differed"] = (squad, _) => BlockCircumstances.Summarize(squad, squad.Blocks[0], squad.Blocks[1]),
        ["weekly series"] = (squad, _) => InterruptedSeries.FitSquad(squad.Sessions, squad.Blocks[1].From),
        ["load and totals"] = (squad, _) => LoadAssociation.Fit(squad.Sessions, squad.Contexts, new LoadAssociationOptions { Windows = [new LoadWindow(1, 1)] }),
        ["circumstances and totals"] = (squad, _) => CovariateModel.Fit(squad.Sessions, squad.Contexts),
        ["set noise"] = (squad, _) => OfEach(squad, own => SetNoise.Fit(own)),
        ["late slow-down"] = (squad, _) => OfEach(squad, own => LateSlowdown.Fit(own, new LateSlowdownOptions { AfterSet = 3 })),
        ["shapes"] = (squad, _) => OfEach(squad, own => ShapeComparison.Fit(own)),
        ["starts"] = (squad, _) => OfEach(squad, own => StartingTooFast.Fit(own)),
        ["explanations"] = (squad, _) => OfEach(squad, own => Explanations.Fit(own, new ExplanationsOptions { AfterSet = 3 })),
        ["own season"] = (squad, _) => OfEach(squad, own => SeasonTrend.Fit(own)),
        ["own level"] = (squad, _) => OfEach(squad, own => SeasonLevel.Fit(own)),
        ["own line"] = (squad, _) => OfEach(squad, own => SeasonLine.Smooth(own)),
    };

    /// <summary>Those whose answer for an athlete rests on that athlete's tests alone.</summary>
    public static IReadOnlyList<string> OfOneAthleteEach { get; } = ["bests", "set noise", "late slow-down", "shapes", "starts", "explanations", "own season", "own level", "own line"];

    private static List<Own> OfEach(Squad squad, Func<IReadOnlyList<Session>, object> fit) => [.. squad.Athletes.Select(athlete => new Own(athlete.Id, fit(squad.SessionsOf(athlete.Id))))];

    /// <summary>What an analysis says of one athlete.</summary>
    private sealed record Own(string AthleteId, object Answer);

    private static TypicalErrorResult Error(double factor) => TypicalError.Entered(new Seconds(3.43 * factor), 200, "entered, between two tenths so that no change equals it");

    private static SmallestWorthwhileChange Worthwhile(double factor) => SmallestWorthwhileChange.Entered(new Seconds(3.6 * factor));
}

namespace SquadAnalytics.Import;

/// <summary>What a person answered to a decision.</summary>
/// <param name="Id">Id of the decision.</param>
/// <param name="Choice">One of its choices; where a choice has a place to fill in (<c>yyyy-mm-dd</c>, <c>clock every N s</c>, <c>athlete CODE</c>), the choice with the place filled in.</param>
public sealed record DecisionAnswer(string Id, string Choice);

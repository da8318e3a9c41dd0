namespace SquadAnalytics.SampleSquad;

/// <summary>What a stream of draws is for. Each boxer has one stream per topic, so that a change in one leaves the others as they were.</summary>
internal enum Topic
{
    Ability,
    Attendance,
    Diary,
    Times,
    Events,
    Mishaps,
    Names,
    Weather,
}

namespace SquadAnalytics.Reporting;

/// <summary>The cautions, kept in one place and shown wherever a test is planned, typed or reported.</summary>
public static class Cautions
{
    /// <summary>What the analysis is and is not.</summary>
    public static Caution Judgement { get; } = new(
        "Judgement",
        "The analysis supports, and does not replace, the judgement of coaches and licensed medical staff and the rules of the local federation.");

    /// <summary>When to stop at once.</summary>
    public static Caution Stop { get; } = new(
        "Stop",
        "Stop for chest pain or pressure, fainting or dizziness, palpitations, unusual breathlessness, confusion, loss of coordination, change of vision, severe headache or vomiting, and get medical help.",
        "Riebe et al. 2015");

    /// <summary>After a knock to the head.</summary>
    public static Caution HeadKnock { get; } = new(
        "Head knock",
        "After a head knock or suspected concussion: no conditioning test, that day or later, until cleared by a licensed clinician under the return-to-sport steps and the federation's rules. A slow profile is no sign of concussion, and a usual one no all-clear.",
        "Patricios et al. 2023");

    /// <summary>Who needs clearance first.</summary>
    public static Caution Clearance { get; } = new(
        "Clearance",
        "Maximal repeated efforts need medical clearance for anyone with known cardiovascular, metabolic or renal disease or symptoms, and for newcomers to vigorous exercise.",
        "Riebe et al. 2015");

    /// <summary>Making weight.</summary>
    public static Caution MakingWeight { get; } = new(
        "Making weight",
        "Dehydration and low energy slow an athlete and raise the risk of heat illness; read a slow total beside the body-mass note. No weight target is ever suggested here.",
        "Barley et al. 2019");

    /// <summary>Heat.</summary>
    public static Caution Heat { get; } = new("Heat", "Record the temperature. No maximal test in high heat stress; follow local rules.");

    /// <summary>Juniors.</summary>
    public static Caution Juniors { get; } = new(
        "Juniors",
        "Growth and learning swamp training effects. Juniors are not ranked by default, and their data need a guardian's consent.");

    /// <summary>Illness.</summary>
    public static Caution Illness { get; } = new("Illness", "No test with fever or chest symptoms.");

    /// <summary>All of them, in the order in which they are printed.</summary>
    public static IReadOnlyList<Caution> All { get; } = [Judgement, Stop, HeadKnock, Clearance, MakingWeight, Heat, Juniors, Illness];
}

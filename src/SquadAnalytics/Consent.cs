namespace SquadAnalytics;

/// <summary>A dated consent of the athlete, or of a guardian for a junior.</summary>
/// <param name="Purpose">What it allows, for example <c>record times</c> or <c>named in reports</c>.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day, or null while it lasts.</param>
/// <param name="GivenBy">Who gave it: the athlete or a guardian.</param>
public sealed record Consent(string Purpose, DateOnly From, DateOnly? To = null, string? GivenBy = null)
{
    /// <summary>The purpose that lets an athlete who is no junior be named in what is exported or shared.</summary>
    public const string NamedInReports = "named in reports";

    /// <summary>Whether the consent covers a date.</summary>
    public bool Covers(DateOnly date) => date >= From && (To is null || date <= To);
}

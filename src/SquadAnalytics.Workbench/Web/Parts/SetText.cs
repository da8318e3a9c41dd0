using System.Globalization;

namespace SquadAnalytics.Workbench.Web.Parts;

/// <summary>How sets and totals stand in the logbook's tables.</summary>
internal static class SetText
{
    /// <summary>A set's time, or its status in a word.</summary>
    public static string Of(SetTime set) => set.Status switch
    {
        SetStatus.Timed => set.Work!.Value.Value.ToString("0.0#", CultureInfo.InvariantCulture),
        SetStatus.NotFinished => "DNF",
        SetStatus.NotStarted => "DNS",
        SetStatus.CompletedUntimed => "no time",
        SetStatus.StoppedForHealth => "stopped",
        _ => "–",
    };

    /// <summary>A session's total, or how many of its sets are timed.</summary>
    public static string Total(Session session) =>
        session.Total.Match(total => total.Value.ToString("0.0#", CultureInfo.InvariantCulture), _ => $"{session.TimesSeconds.Count} of {session.Protocol.Sets} sets");
}

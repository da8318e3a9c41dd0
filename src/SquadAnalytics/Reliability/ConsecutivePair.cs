namespace SquadAnalytics.Reliability;

/// <summary>Two consecutive tests of the squad.</summary>
/// <param name="EarlierFrom">First date of the earlier test.</param>
/// <param name="LaterFrom">First date of the later test.</param>
/// <param name="MeanChange">Mean change over athletes who took both, later minus earlier; negative = faster.</param>
/// <param name="TypicalError">Typical error of the pair, s_d / √2.</param>
public sealed record ConsecutivePair(DateOnly EarlierFrom, DateOnly LaterFrom, Answer<Estimate> MeanChange, Answer<Estimate> TypicalError)
{
    /// <summary>Dates, change and error.</summary>
    public override string ToString() => $"{EarlierFrom:yyyy-MM-dd} to {LaterFrom:yyyy-MM-dd}: change {MeanChange}; typical error {TypicalError}";
}

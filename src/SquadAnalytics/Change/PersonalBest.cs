namespace SquadAnalytics.Change;

/// <summary>A session total below all earlier ones.</summary>
/// <param name="Session">The test.</param>
/// <param name="Test">Its number among the athlete's complete tests, m, from 1.</param>
/// <param name="TotalSeconds">Its total.</param>
/// <param name="ChangeSeconds">Total minus the best before (negative), or null for the first test.</param>
/// <param name="ChanceWithoutChange">Chance that test m is a new best although nothing has changed: 1/m.</param>
/// <param name="DriftWithoutChange">Expected best of m tests minus the true level although nothing has changed, in typical errors.</param>
/// <param name="IsWithinTestNoise">Whether it beats the best before by less than the typical error.</param>
public sealed record PersonalBest(Session Session, int Test, double TotalSeconds, double? ChangeSeconds, double ChanceWithoutChange, double DriftWithoutChange, bool IsWithinTestNoise)
{
    /// <summary>Total, date, and whether the step is within test noise.</summary>
    public override string ToString() => FormattableString.Invariant($"test {Test}, {Session.Date:yyyy-MM-dd}: {TotalSeconds:0.0} s{(IsWithinTestNoise ? ", within test noise" : "")}");
}

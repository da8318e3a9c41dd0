namespace SquadAnalytics.Statistics;

/// <summary>Profile likelihood limits of all parameters of a mixed model.</summary>
/// <param name="Design">The model that was profiled; simpler than the one asked for where a singular fit was simplified.</param>
/// <param name="Parameters">Standard deviations and correlations term by term, the residual standard deviation, the fixed effects.</param>
/// <param name="Deviance">Minus twice the log-likelihood at its maximum.</param>
/// <param name="Notes">What a reader has to know.</param>
public sealed record MixedProfile(MixedDesign Design, IReadOnlyList<ProfiledParameter> Parameters, double Deviance, IReadOnlyList<string> Notes)
{
    /// <summary>One parameter per line.</summary>
    public override string ToString() => string.Join(Environment.NewLine, Parameters);
}

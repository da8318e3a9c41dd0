namespace SquadAnalytics.Statistics;

/// <summary>How one observation stands to a linear fit.</summary>
/// <param name="Fitted">Fitted value, in the response's unit.</param>
/// <param name="Residual">Response minus fitted value, in the response's unit.</param>
/// <param name="Leverage">Leverage h, the diagonal of the hat matrix, from 0 to 1.</param>
/// <param name="StandardizedResidual">e / (s √(1 - h)), or null where the observation decides its own fit (h = 1) or s is 0.</param>
/// <param name="StudentizedResidual">The same with s from the fit without this observation, or null where that fit leaves no scatter.</param>
/// <param name="CookDistance">Cook's distance, the shift of all fitted values when the observation is dropped, or null where h is 1 or s is 0.</param>
public sealed record ObservationDiagnostics(
    double Fitted,
    double Residual,
    double Leverage,
    double? StandardizedResidual,
    double? StudentizedResidual,
    double? CookDistance);

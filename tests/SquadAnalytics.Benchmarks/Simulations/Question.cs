namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>A yes-or-no question that every run of an experiment answers, and the rate of yes that is promised.</summary>
/// <param name="Text">The question, for example <c>90 % interval of the late contrast covers the truth</c>.</param>
/// <param name="Promise">What the rate should be.</param>
/// <param name="Nominal">The nominal rate, 0 to 1; not used without a promise.</param>
internal sealed record Question(string Text, Promise Promise = Promise.None, double Nominal = 0);

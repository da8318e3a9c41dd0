using System.Globalization;

namespace SquadAnalytics.Benchmarks.Simulations;

/// <summary>How often the answer was yes.</summary>
/// <param name="Setting">The setting of the experiment.</param>
/// <param name="Question">The question.</param>
/// <param name="Hits">Runs that answered yes.</param>
/// <param name="Runs">Runs that answered at all; a refusal is no answer.</param>
internal sealed record Rate(string Setting, Question Question, int Hits, int Runs)
{
    private const double Tolerance = 0.02;

    /// <summary>The share of yes, or null where every run was refused.</summary>
    public double? Value => Runs == 0 ? null : Hits / (double)Runs;

    /// <summary>Monte Carlo standard error, √(p (1 - p) / R), with one hit and one miss added so that it is never 0 at a share of 0 or 1.</summary>
    public double MonteCarloError
    {
        get
        {
            var share = (Hits + 1) / (Runs + 2.0);
            return Math.Sqrt(share * (1 - share) / Math.Max(1, Runs));
        }
    }

    /// <summary>Whether the rate lies within 2 percentage points of what was promised, beyond three Monte Carlo errors.</summary>
    public bool Keeps => Value is not { } share || Question.Promise switch
    {
        Promise.None => true,
        Promise.AtMost => share <= Question.Nominal + Allowed,
        Promise.AtLeast => share >= Question.Nominal - Allowed,
        _ => Math.Abs(share - Question.Nominal) <= Allowed,
    };

    private double Allowed => Tolerance + (3 * MonteCarloError);

    /// <summary>One row of a table: setting, question, rate, error, promise, runs.</summary>
    public string Row => string.Create(CultureInfo.InvariantCulture,
        $"| {Setting} | {Question.Text} | {(Value is { } share ? (100 * share).ToString("0.0", CultureInfo.InvariantCulture) : "refused")} | {(Runs == 0 ? "" : (100 * MonteCarloError).ToString("0.0", CultureInfo.InvariantCulture))} | {Promised} | {Runs} | {(Keeps ? "" : "OFF")} |");

    private string Promised
    {
        get
        {
            var percent = (100 * Question.Nominal).ToString("0.#", CultureInfo.InvariantCulture);
            return Question.Promise switch
            {
                Promise.None => "",
                Promise.AtMost => "at most " + percent,
                Promise.AtLeast => "at least " + percent,
                Promise.AsStated => Runs == 0 ? "as it says" : "as it says, " + percent,
                _ => percent,
            };
        }
    }
}

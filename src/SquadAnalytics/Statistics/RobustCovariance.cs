using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>Covariances of least-squares coefficients that do without equal variances, or without independence in time.</summary>
public static class RobustCovariance
{
    /// <summary>The sandwich covariance (X'X)⁻¹ X' diag(w) X (X'X)⁻¹, with w from the squared residuals.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="correction">How the squared residuals are inflated; HC3 by default.</param>
    /// <returns>The covariance, or <see cref="Refusal.WeaklyIdentified"/> where HC2 or HC3 meets an observation of leverage 1.</returns>
    /// <remarks>In the product of the coefficients' units. Assumes independent errors. White (1980), Econometrica 48:817-838; MacKinnon &amp; White (1985), J Econometrics 29:305-325 (from memory).</remarks>
    public static Answer<CoefficientCovariance> Sandwich(LinearFit fit, SandwichCorrection correction = SandwichCorrection.HC3)
    {
        ArgumentNullException.ThrowIfNull(fit);
        var leverages = fit.Leverages();
        if (correction is SandwichCorrection.HC2 or SandwichCorrection.HC3 && leverages.Any(leverage => leverage >= 1 - 1e-10))
            return new NotEstimable($"the {correction} standard errors", Refusal.WeaklyIdentified, "observations that all leave a residual", "one that decides its own fitted value");
        var power = correction switch
        {
            SandwichCorrection.HC0 or SandwichCorrection.HC1 => 0,
            SandwichCorrection.HC2 => 0.5,
            SandwichCorrection.HC3 => 1.0,
            _ => throw new ArgumentOutOfRangeException(nameof(correction), correction, "Not one of HC0 to HC3."),
        };
        var factor = correction == SandwichCorrection.HC1 ? Math.Sqrt(fit.Observations / (double)fit.DegreesOfFreedom) : 1;
        var weighted = fit.Residuals.Select((residual, i) => factor * residual / Math.Pow(1 - leverages[i], power)).ToArray();
        return fit.CovarianceFrom($"sandwich {correction}", Scores(fit, weighted));
    }

    /// <summary>The Newey-West covariance, consistent under autocorrelation up to a lag and unequal variances.</summary>
    /// <remarks>
    /// (X'X)⁻¹ S (X'X)⁻¹, S = Σ over pairs s, t up to L apart of (1 - |s - t|/(L + 1)) e_s e_t x_s x_t', e the residuals and x_t the rows of X; in the
    /// product of the coefficients' units. Bartlett weights; no prewhitening; the observations must be in time order. Assumes evenly spaced times and errors without correlation beyond the lag. Newey &amp; West (1987), Econometrica
    /// 55:703-708 (from memory; checked against R's sandwich).
    /// </remarks>
    /// <param name="fit">The fit.</param>
    /// <param name="lag">The longest lag L that is taken in, 0 or more.</param>
    /// <param name="smallSample">Whether to multiply by n/(n - p); by default yes.</param>
    /// <exception cref="ArgumentOutOfRangeException">The lag is below 0 or not below the number of observations.</exception>
    public static CoefficientCovariance NeweyWest(LinearFit fit, int lag, bool smallSample = true)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (Require.AtLeast(0, lag) >= fit.Observations)
            throw new ArgumentOutOfRangeException(nameof(lag), lag, FormattableString.Invariant($"The lag must be below the {fit.Observations} observations."));
        var factor = smallSample ? Math.Sqrt(fit.Observations / (double)fit.DegreesOfFreedom) : 1;
        var scores = Scores(fit, [.. fit.Residuals.Select(residual => factor * residual)]);
        return fit.CovarianceFrom(FormattableString.Invariant($"Newey-West, lag {lag}"), Smoothed(scores, lag));
    }

    /// <summary>What an interval of one coefficient needs beside its Newey-West standard error in a short series.</summary>
    /// <remarks>
    /// The squared standard error is a quadratic form e'Ae in the residuals. Were the errors independent, its expectation would be σ² tr(MA) and
    /// its variance 2σ⁴ tr((MA)²), M the residual maker: the inflation brings the expectation up to the true variance, the degrees of freedom
    /// are Satterthwaite's. Without them limits are far too narrow below some hundred observations. The way of Bell and McCaffrey (2002), Survey
    /// Methodology 28:169-181 (from memory), carried over to the Bartlett weights.
    /// </remarks>
    internal static SerialReach Reach(LinearFit fit, int lag, string coefficient)
    {
        var row = fit.InverseRow(coefficient);
        var factor = fit.Observations / (double)fit.DegreesOfFreedom;
        double[] Banded(double[] vector) => [.. row.Select((weight, s) =>
        {
            double sum = 0;
            for (var t = Math.Max(0, s - lag); t <= Math.Min(row.Length - 1, s + lag); t++) sum += (1 - Math.Abs(s - t) / (lag + 1.0)) * row[t] * vector[t];
            return factor * weight * sum;
        })];
        double[][] turned = [.. fit.ThinQ.Select(Banded)];
        double squares = 0, first = 0, second = 0;
        for (var s = 0; s < row.Length; s++)
        {
            squares += row[s] * row[s];
            for (var t = Math.Max(0, s - lag); t <= Math.Min(row.Length - 1, s + lag); t++)
            {
                var element = factor * (1 - Math.Abs(s - t) / (lag + 1.0)) * row[s] * row[t];
                second += element * element;
            }
        }

        first = factor * squares;
        for (var j = 0; j < turned.Length; j++)
        {
            first -= CompensatedSum.OfProducts(fit.ThinQ[j], turned[j]);
            second -= 2 * CompensatedSum.OfProducts(turned[j], turned[j]);
            for (var k = 0; k < turned.Length; k++) second += Math.Pow(CompensatedSum.OfProducts(fit.ThinQ[j], turned[k]), 2);
        }

        return new SerialReach(Math.Sqrt(squares / first), first * first / second);
    }

    // One column of the square root of the meat for each observation: its row of Q times its weighted residual.
    private static double[][] Scores(LinearFit fit, double[] weighted) =>
        [.. weighted.Select((weight, i) => Array.ConvertAll(fit.ThinQ, column => column[i] * weight))];

    // The Bartlett-weighted sum equals the sum of outer products of all running sums over L + 1 neighbours, divided by L + 1.
    private static double[][] Smoothed(double[][] scores, int lag)
    {
        var smoothed = new List<double[]>();
        for (var last = 0; last < scores.Length + lag; last++)
        {
            var sum = new double[scores[0].Length];
            for (var i = Math.Max(0, last - lag); i <= Math.Min(last, scores.Length - 1); i++)
            {
                for (var j = 0; j < sum.Length; j++) sum[j] += scores[i][j] / Math.Sqrt(lag + 1);
            }

            smoothed.Add(sum);
        }

        return [.. smoothed];
    }
}

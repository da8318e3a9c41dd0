namespace SquadAnalytics.Statistics;

/// <summary>Local level model: an unseen level that drifts, μ_(t+1) = μ_t + η, seen with noise, y_t = μ_t + ε.</summary>
/// <remarks>
/// Variances by maximum likelihood with a diffuse start, from the Kalman filter; a missing time adds drift and no observation. Variances
/// are in the square of the unit of y. Assumes independent normal ε and η. Harvey (1989), Forecasting, structural time series models and the Kalman filter; Durbin &amp; Koopman (2012), Time series
/// analysis by state space methods (from memory; checked against R's StructTS).
/// </remarks>
public sealed record LocalLevel
{
    private const int Fewest = 4;

    private LocalLevel(LocalLevelFilter best, int observations)
    {
        (ObservationVariance, LevelVariance) = ((1 - best.DriftShare) * best.Scale, best.DriftShare * best.Scale);
        (LogLikelihood, Observations) = (best.LogLikelihood, observations);
    }

    /// <summary>Variance of ε, the noise of one observation.</summary>
    public double ObservationVariance { get; }

    /// <summary>Variance of η, the drift from one time to the next.</summary>
    public double LevelVariance { get; }

    /// <summary>Whether one of the variances is estimated at 0: the series is then a constant with noise, or a random walk.</summary>
    public bool IsBoundary => ObservationVariance == 0 || LevelVariance == 0;

    /// <summary>Log-likelihood of all observations after the first.</summary>
    public double LogLikelihood { get; }

    /// <summary>How many times were observed.</summary>
    public int Observations { get; }

    /// <summary>Weight of a new observation once the filter has settled, (-q + √(q² + 4 q))/2 with q the ratio of the variances; 1 for a random walk.</summary>
    public double SteadyGain
    {
        get
        {
            if (ObservationVariance == 0) return 1;
            var q = LevelVariance / ObservationVariance;
            return (-q + Math.Sqrt(q * q + 4 * q)) / 2;
        }
    }

    /// <summary>Fits the model to equally spaced times.</summary>
    /// <remarks>Assumes normal noise and independent normal steps.</remarks>
    /// <param name="values">One value for each time, null where there is none; the first is observed.</param>
    /// <returns>The fit, or <see cref="Refusal.TooFewObservations"/> below four observations, or <see cref="Refusal.ZeroVariance"/> where the series is constant.</returns>
    /// <exception cref="ArgumentException">The first value is missing, or one is not finite.</exception>
    public static Answer<LocalLevel> Fit(IReadOnlyList<double?> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        var observed = Numbers.Of([.. values.OfType<double>()], 0, nameof(values));
        if (observed.Length < Fewest) return new NotEstimable("the local level", Refusal.TooFewObservations, Fewest, observed.Length, "observations");
        if (values[0] is null) throw new ArgumentException("The first of the values must be observed.", nameof(values));
        if (Descriptive.SumOfSquares(observed) == 0) return new NotEstimable("the local level", Refusal.ZeroVariance, "observations that vary", "all the same");
        return new LocalLevel(LocalLevelFilter.MostLikely(values), observed.Length);
    }

    /// <summary>Both standard deviations.</summary>
    public override string ToString() =>
        FormattableString.Invariant($"local level: noise SD {Math.Sqrt(ObservationVariance):G4}, drift SD {Math.Sqrt(LevelVariance):G4}, {Observations} observations");
}

using SquadAnalytics.Internals;

namespace SquadAnalytics.Sets;

/// <summary>Parameters of the recovery recursion: carried fatigue F with F_1 = 0, t_k = β + a F_k, F_(k+1) = (F_k + 1) exp(-r_k / τ).</summary>
/// <remarks>t_k is the time of set k and r_k the rest after it, in seconds. Predictions assume that the recursion and its parameters hold. Sources: those of <see cref="Recovery.Fit"/>; what the clock costs and the gain are algebra.</remarks>
public sealed record RecoveryParameters
{
    /// <summary>Makes a set of parameters.</summary>
    /// <param name="fresh">Time of a fresh set, β; above 0.</param>
    /// <param name="perFatigue">Seconds per unit of carried fatigue, a; 0 or more. One set adds one unit.</param>
    /// <param name="timeConstant">Recovery time constant, τ; above 0.</param>
    public RecoveryParameters(Seconds fresh, Seconds perFatigue, Seconds timeConstant)
    {
        Require.Positive(fresh.Value, nameof(fresh));
        Require.Positive(timeConstant.Value, nameof(timeConstant));
        if (perFatigue.Value < 0) throw new ArgumentOutOfRangeException(nameof(perFatigue), perFatigue.Value, "Seconds per unit of fatigue must be 0 or more.");
        Fresh = fresh;
        PerFatigue = perFatigue;
        TimeConstant = timeConstant;
    }

    /// <summary>Time of a fresh set, β.</summary>
    public Seconds Fresh { get; }

    /// <summary>Seconds per unit of carried fatigue, a.</summary>
    public Seconds PerFatigue { get; }

    /// <summary>Recovery time constant, τ.</summary>
    public Seconds TimeConstant { get; }

    /// <summary>Predicted work times on a rolling clock, where a slower set leaves less rest.</summary>
    /// <param name="sets">Number of sets; 1 or more.</param>
    /// <param name="startInterval">Start interval T; above 0. A set that runs over leaves no rest.</param>
    public IReadOnlyList<Seconds> OnTheClock(int sets, Seconds startInterval)
    {
        Require.Positive(startInterval.Value, nameof(startInterval));
        return Predict(sets, (time, late) => startInterval.Value - time - late, startInterval.Value);
    }

    /// <summary>Predicted work times with the same rest after every set.</summary>
    /// <param name="sets">Number of sets; 1 or more.</param>
    /// <param name="rest">The rest; 0 or more.</param>
    public IReadOnlyList<Seconds> AtFixedRest(int sets, Seconds rest)
    {
        if (rest.Value < 0) throw new ArgumentOutOfRangeException(nameof(rest), rest.Value, "Rest must be 0 or more.");
        return Predict(sets, (_, _) => rest.Value, null);
    }

    /// <summary>What the clock itself costs over the session: predicted total on the clock minus predicted total at fixed rest. Both are model predictions.</summary>
    /// <param name="sets">Number of sets; 1 or more.</param>
    /// <param name="startInterval">Start interval T.</param>
    /// <param name="rest">The fixed rest; null for what a fresh set would leave, T - β.</param>
    public Seconds ClockPenalty(int sets, Seconds startInterval, Seconds? rest = null) =>
        new(OnTheClock(sets, startInterval).Sum(time => time.Value) - AtFixedRest(sets, rest ?? new Seconds(Math.Max(0, startInterval.Value - Fresh.Value))).Sum(time => time.Value));

    /// <summary>Feedback gain of each set but the last: seconds that one extra second in it costs in the next, a F_(k+1) / τ; 0 where no rest is left.</summary>
    /// <param name="sets">Number of sets; 1 or more.</param>
    /// <param name="startInterval">Start interval T.</param>
    public IReadOnlyList<Estimate> FeedbackGains(int sets, Seconds startInterval)
    {
        var times = OnTheClock(sets, startInterval);
        var clock = RollingClock.Run([.. times.Select(time => time.Value)], sets, startInterval.Value);
        return [.. Enumerable.Range(0, sets - 1).Select(k => new Estimate(
            clock[k].Rest!.Value.Value > 0 ? (times[k + 1].Value - Fresh.Value) / TimeConstant.Value : 0, Unit.None, sets, "a F / τ"))];
    }

    /// <summary>The three parameters.</summary>
    public override string ToString() => $"fresh set {Fresh}, {PerFatigue} per unit of fatigue, time constant {TimeConstant}";

    private Seconds[] Predict(int sets, Func<double, double, double> rest, double? interval)
    {
        var times = new Seconds[Require.AtLeast(1, sets)];
        double fatigue = 0, late = 0;
        for (var k = 0; k < sets; k++)
        {
            var time = Fresh.Value + PerFatigue.Value * fatigue;
            times[k] = new Seconds(time);
            fatigue = (fatigue + 1) * Math.Exp(-Math.Max(0, rest(time, late)) / TimeConstant.Value);
            if (interval is { } signal) late = Math.Max(0, late + time - signal);
        }

        return times;
    }
}

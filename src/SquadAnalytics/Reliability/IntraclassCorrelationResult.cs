namespace SquadAnalytics.Reliability;

/// <summary>Intraclass correlations of a complete table of athletes and tests; each names its form.</summary>
public sealed record IntraclassCorrelationResult
{
    /// <summary>ICC(1,1): one-way, every change of a test's mean counts as error.</summary>
    public required Estimate OneWay { get; init; }

    /// <summary>ICC(A,1): absolute agreement of single tests.</summary>
    public required Estimate Agreement { get; init; }

    /// <summary>ICC(C,1): consistency of single tests, changes of the mean left out.</summary>
    public required Estimate Consistency { get; init; }

    /// <summary>ICC(1,k): one-way, mean of all k tests.</summary>
    public required Estimate OneWayOfMean { get; init; }

    /// <summary>ICC(A,k): absolute agreement of the mean of all k tests.</summary>
    public required Estimate AgreementOfMean { get; init; }

    /// <summary>ICC(C,k): consistency of the mean of all k tests.</summary>
    public required Estimate ConsistencyOfMean { get; init; }

    /// <summary>Standard deviation between athletes with noise removed, √((MSB - MSE) / k), in the measure's unit; refused where it is not above 0.</summary>
    public required Answer<Estimate> BetweenAthletes { get; init; }

    /// <summary>Number of athletes with every test, I.</summary>
    public required int Athletes { get; init; }

    /// <summary>Number of tests, k.</summary>
    public required int Tests { get; init; }

    /// <summary>The word for the lower limit of ICC(A,1).</summary>
    public ReliabilityWord Word => Agreement.Lower switch
    {
        > 0.9 => ReliabilityWord.Excellent,
        >= 0.75 => ReliabilityWord.Good,
        >= 0.5 => ReliabilityWord.Moderate,
        _ => ReliabilityWord.Poor,
    };

    /// <summary>Agreement and consistency.</summary>
    public override string ToString() => $"ICC(A,1) {Agreement}; ICC(C,1) {Consistency} ({Athletes} athletes, {Tests} tests)";
}

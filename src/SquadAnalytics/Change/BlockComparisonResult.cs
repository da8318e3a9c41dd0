namespace SquadAnalytics.Change;

/// <summary>By how much the same athletes' totals differed between two blocks, second minus first: negative = faster.</summary>
public sealed record BlockComparisonResult
{
    /// <summary>Mean change in seconds with its t interval over athletes.</summary>
    public required Estimate Change { get; init; }

    /// <summary>Mean change of the logarithms, in percent.</summary>
    public required Estimate RelativeChange { get; init; }

    /// <summary>Mean change in seconds weighted by tests and by how much athletes differ (random effects, REML, Knapp-Hartung interval), or a refusal where no athlete's tests vary within a block.</summary>
    public required Answer<Estimate> WeightedChange { get; init; }

    /// <summary>Standard deviation between athletes of their true changes ω, the noise of the tests taken out (random effects, REML), in seconds; or the refusal of the weighted change. Nobody is labelled by it.</summary>
    public required Answer<Estimate> SpreadOfTrueChanges { get; init; }

    /// <summary>Hodges-Lehmann change in seconds with the exact signed-rank interval and p-value, or a refusal below 5 athletes or where nothing changed.</summary>
    public required Answer<Estimate> RankChange { get; init; }

    /// <summary>p-value of the mean change when signs are flipped, or a refusal where nothing changed.</summary>
    public required Answer<Estimate> SignFlipPValue { get; init; }

    /// <summary>Standard deviation of the athletes' changes, in seconds.</summary>
    public required Estimate StandardDeviationOfChanges { get; init; }

    /// <summary>Standard deviation of the tests of an athlete within a block, in seconds; pooled over athletes and blocks. A refusal where all have one test.</summary>
    public required Answer<Estimate> WithinBlock { get; init; }

    /// <summary>The mean change on named standard deviations: of the first block's athlete means, of both blocks' averaged, of the changes (not comparable with the others). Empty where they are 0.</summary>
    public required IReadOnlyList<StandardizedChange> Standardized { get; init; }

    /// <summary>The athletes who are in it.</summary>
    public required IReadOnlyList<AthleteBlocks> Athletes { get; init; }

    /// <summary>The athletes who are not, and why.</summary>
    public required IReadOnlyList<LeftOutAthlete> LeftOut { get; init; }

    /// <summary>Attendance in the first block, athletes left out included.</summary>
    public required BlockAttendance First { get; init; }

    /// <summary>Attendance in the second block, athletes left out included.</summary>
    public required BlockAttendance Second { get; init; }

    /// <summary>What was used and left out.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>What a reader has to know.</summary>
    public IReadOnlyList<string> Notes => Change.Notes;

    /// <summary>The difference and its athletes.</summary>
    public override string ToString() => $"{Second.Block} differed from {First.Block} by {Change} ({Athletes.Count} athletes, {LeftOut.Count} left out)";
}

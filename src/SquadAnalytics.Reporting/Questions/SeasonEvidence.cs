using SquadAnalytics.Change;
using SquadAnalytics.Load;
using SquadAnalytics.Reliability;

namespace SquadAnalytics.Reporting.Questions;

/// <summary>What was computed to review a season. Every answer may be a refusal; the findings then say so.</summary>
public sealed record SeasonEvidence
{
    /// <summary>The eligible sessions.</summary>
    public required SessionSelection Selection { get; init; }

    /// <summary>Athletes with an eligible session.</summary>
    public int Athletes => Selection.Sessions.Select(session => session.AthleteId).Distinct(StringComparer.Ordinal).Count();

    /// <summary>The protocol.</summary>
    public required Protocol Protocol { get; init; }

    /// <summary>The noise of one session total.</summary>
    public required Answer<TypicalErrorResult> Noise { get; init; }

    /// <summary>Intraclass correlations.</summary>
    public required Answer<IntraclassCorrelationResult> Correlation { get; init; }

    /// <summary>How many first tests a learning effect would cost.</summary>
    public required Answer<FamiliarisationResult> Learning { get; init; }

    /// <summary>The squad's season.</summary>
    public required Answer<SquadTrendResult> Season { get; init; }

    /// <summary>By how much athletes differ in their response.</summary>
    public required Answer<ResponseSpreadResult> Responses { get; init; }

    /// <summary>Load before a test and the total.</summary>
    public required Answer<LoadAssociationResult> Load { get; init; }

    /// <summary>Circumstances of a test and the total.</summary>
    public required Answer<CovariateModelResult> Circumstances { get; init; }

    /// <summary>The smallest worthwhile change.</summary>
    public required SmallestWorthwhileChange Worthwhile { get; init; }

    /// <summary>How numbers are written.</summary>
    public required NumberFormat Format { get; init; }
}

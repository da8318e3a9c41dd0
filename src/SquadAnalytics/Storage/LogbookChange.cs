using SquadAnalytics.Internals;

namespace SquadAnalytics.Storage;

/// <summary>What one accept changes: each list holds items to add, or to put in the place of the one with the same id. Everything else stays.</summary>
public sealed record LogbookChange
{
    /// <summary>Makes a change.</summary>
    /// <param name="description">What it is, in words that a person sees when offered to undo it, for example <c>import of week-12.csv</c>.</param>
    public LogbookChange(string description) => Description = Require.Text(description);

    /// <summary>What the change is, in words.</summary>
    public string Description { get; }

    /// <summary>A new name of the squad, or null.</summary>
    public string? SquadName { get; init; }

    /// <summary>Athletes to add or replace.</summary>
    public IReadOnlyList<Athlete> Athletes { get; init; } = [];

    /// <summary>Protocol versions to add, or to replace as long as no session used them; a used one only takes further dated bands.</summary>
    public IReadOnlyList<Protocol> Protocols { get; init; } = [];

    /// <summary>Sessions to add or replace.</summary>
    public IReadOnlyList<Session> Sessions { get; init; } = [];

    /// <summary>Contexts to add, or to replace for the same athlete and date.</summary>
    public IReadOnlyList<DayContext> Contexts { get; init; } = [];

    /// <summary>Events to add or replace.</summary>
    public IReadOnlyList<AthleteEvent> Events { get; init; } = [];

    /// <summary>Training blocks to add or replace.</summary>
    public IReadOnlyList<TrainingBlock> Blocks { get; init; } = [];

    /// <summary>The whole table of age groups in the place of the one there is, or null to leave it.</summary>
    public IReadOnlyList<AgeGroup>? AgeGroups { get; init; }

    /// <summary>The whole table of weight classes in the place of the one there is, or null to leave it.</summary>
    public IReadOnlyList<WeightClass>? WeightClasses { get; init; }

    /// <summary>Health notes to add or replace.</summary>
    public IReadOnlyList<HealthNote> HealthNotes { get; init; } = [];

    /// <summary>Import rows to hold, or to replace.</summary>
    public IReadOnlyList<HeldRow> HeldRows { get; init; } = [];

    /// <summary>Ids of protocol versions to take out; only those that no session used.</summary>
    public IReadOnlyList<string> RemovedProtocolIds { get; init; } = [];

    /// <summary>Ids of events to take out.</summary>
    public IReadOnlyList<string> RemovedEventIds { get; init; } = [];

    /// <summary>Ids of training blocks to take out.</summary>
    public IReadOnlyList<string> RemovedBlockIds { get; init; } = [];

    /// <summary>Ids of health notes to take out.</summary>
    public IReadOnlyList<string> RemovedHealthNoteIds { get; init; } = [];

    /// <summary>Ids of held rows that were corrected, decided or dismissed.</summary>
    public IReadOnlyList<string> RemovedHeldRowIds { get; init; } = [];

    /// <summary>Source files whose copies are kept in the logbook's folder of imports; a name that another file has already gets a number, in the held rows too.</summary>
    public IReadOnlyList<ImportCopy> ImportCopies { get; init; } = [];

    /// <summary>The draft that this change accepts; it is gone once the change is in.</summary>
    public string? AcceptedDraftId { get; init; }
}

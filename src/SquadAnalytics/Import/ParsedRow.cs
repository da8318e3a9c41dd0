namespace SquadAnalytics.Import;

/// <summary>One data row: where it stands, its entries, and what is in its way.</summary>
internal sealed class ParsedRow(Block block, int line)
{
    private RowTroubles? _troubles;

    public Block Block { get; } = block;

    public int Line { get; } = line;

    public RowPlace Place => new(Block.Sheet.File, Block.Sheet.Name, Line);

    public int FirstEntry { get; set; }

    public int EntryCount { get; set; }

    public IReadOnlyList<RowFault> Faults => _troubles?.Faults ?? [];

    public IReadOnlyList<PendingDecision> Awaits => _troubles?.Awaits ?? [];

    /// <summary>Whether a cell of it is bad: it stays refused whatever is decided.</summary>
    public bool IsRefused => _troubles is { Faults.Count: > 0 };

    /// <summary>Whether it waits for a person, and for nothing else.</summary>
    public bool IsHeld => _troubles is { Faults.Count: 0, Awaits.Count: > 0 };

    public bool IsKept => _troubles is null;

    public void Refuse(RowFault fault) => (_troubles ??= new RowTroubles()).Faults.Add(fault);

    public void Await(PendingDecision decision)
    {
        var troubles = _troubles ??= new RowTroubles();
        if (!troubles.Awaits.Contains(decision)) troubles.Awaits.Add(decision);
    }

    private sealed class RowTroubles
    {
        public List<RowFault> Faults { get; } = [];

        public List<PendingDecision> Awaits { get; } = [];
    }
}

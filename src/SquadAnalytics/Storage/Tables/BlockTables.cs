namespace SquadAnalytics.Storage.Tables;

/// <summary>The training blocks and their members.</summary>
internal static class BlockTables
{
    private static readonly Column Id = Column.Text("block_id", "Id, unique in the logbook").Required();
    private static readonly Column Name = Column.Text("block_name", "Name of the block").Required();
    private static readonly Column From = Column.Date("from_date", "First day").Required();
    private static readonly Column To = Column.Date("to_date", "Last day").Required();
    private static readonly Column Emphasis = Column.Text("emphasis", "What the block stressed");
    private static readonly Column AfterData = Column.Flag("defined_after_data", "Whether the dates were chosen after the results were seen").Required();

    private static readonly Column Which = Column.Text("block_id", "The block").Required();
    private static readonly Column Who = Column.Text("athlete_id", "A member").Required();

    public static Table Blocks { get; } = new("blocks", "Dated stretches of training with one stated emphasis", [Id, Name, From, To, Emphasis, AfterData]) { Key = [Id] };

    public static Table Members { get; } = new("block-members", "Members of the blocks; a block without rows here takes in the whole squad", [Which, Who])
    {
        Key = [Which, Who],
        References = [new ForeignKey(Which, "blocks", "block_id"), AthleteTables.Reference(Who)],
    };

    public static IReadOnlyList<TrainingBlock> Read(TableSource source, IReadOnlyDictionary<string, Athlete> athletes)
    {
        var seen = new Dictionary<string, TrainingBlock>(StringComparer.Ordinal);
        var blocks = source.ReadFirst(Blocks, row =>
        {
            var (from, to) = (row.Date(From), row.Date(To));
            if (to < from) throw row.Bad(To, "lies before from_date");
            var block = new TrainingBlock(row.Text(Id), row.Text(Name), from, to) { Emphasis = row.TextOrNull(Emphasis), DefinedAfterData = row.Flag(AfterData) };
            row.Once(Id, seen, block.Id, block);
            return block;
        });
        var pairs = new Dictionary<(string, string), bool>();
        var members = source.Read(Members, row =>
        {
            var pair = (row.Referred(Which, seen, Blocks).Id, Member: row.Referred(Who, athletes, AthleteTables.Athletes).Id);
            row.Once(Who, pairs, pair, true);
            return pair;
        }).ToLookup(row => row.Id, row => row.Member);
        return [.. blocks.Select(block => block with { Members = [.. members[block.Id]] })];
    }

    public static void Write(IReadOnlyList<TrainingBlock> blocks, TableSink sink)
    {
        sink.Write(Blocks, blocks, (row, block) => row
            .Text(block.Id).Text(block.Name).Date(block.From).Date(block.To).Text(block.Emphasis).Flag(block.DefinedAfterData));
        sink.Write(Members, blocks.SelectMany(block => block.Members, (block, member) => (block.Id, member)), (row, item) => row.Text(item.Id).Text(item.member));
    }
}

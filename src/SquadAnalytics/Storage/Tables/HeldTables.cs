namespace SquadAnalytics.Storage.Tables;

/// <summary>Imported rows that are refused or await a decision, cell by cell as written.</summary>
internal static class HeldTables
{
    private static readonly Column Id = Column.Text("held_row_id", "Id, unique in the logbook").Required();
    private static readonly Column State = Column.Choice<HeldRowState>("state", "Why the row is held");
    private static readonly Column File = Column.Text("source_file", "Name of the source file").Required();
    private static readonly Column Sheet = Column.Text("sheet", "Sheet of a workbook");
    private static readonly Column Line = Column.Integer("line", "Line or row number in the source, from 1", 1).Required();
    private static readonly Column Reason = Column.Text("reason", "The reason that concerns the whole row");
    private static readonly Column Decision = Column.Text("decision_id", "The decision that the row awaits");
    private static readonly Column Copy = Column.Text("import_copy", "Name of the source's copy in the folder of imports");

    private static readonly Column Which = Column.Text("held_row_id", "The held row").Required();
    private static readonly Column Number = Column.Integer("column_number", "Number of the column in the source, from 1", 1).Required();
    private static readonly Column Header = Column.Text("column_header", "Header of the column as written");
    private static readonly Column Text = Column.Text("text", "The cell as written");
    private static readonly Column CellReason = Column.Text("reason", "Why the cell cannot be kept as it stands");
    private static readonly Column Accepts = Column.Text("accepts", "What would be accepted instead");

    private static readonly IReadOnlyDictionary<string, HeldRowState> States = Word.All<HeldRowState>();

    public static Table Rows { get; } = new("held-rows", "Imported rows that are refused or await a decision", [Id, State, File, Sheet, Line, Reason, Decision, Copy]) { Key = [Id], IsData = false };

    public static Table Cells { get; } = new("held-cells", "Cells of the held rows exactly as written", [Which, Number, Header, Text, CellReason, Accepts])
    {
        Key = [Which, Number],
        References = [new ForeignKey(Which, "held-rows", "held_row_id")],
        IsData = false,
    };

    public static IReadOnlyList<HeldRow> Read(TableSource source)
    {
        var seen = new Dictionary<string, HeldRow>(StringComparer.Ordinal);
        var rows = source.Read(Rows, row =>
        {
            var held = new HeldRow(row.Text(Id), row.Choice(State, States), row.Text(File), row.TextOrNull(Sheet), row.Integer(Line), [])
            {
                Reason = row.TextOrNull(Reason),
                DecisionId = row.TextOrNull(Decision),
                ImportCopy = row.TextOrNull(Copy),
            };
            row.Once(Id, seen, held.Id, held);
            return held;
        });
        var cells = source.Read(Cells, row => (row.Referred(Which, seen, Rows).Id, Cell: new HeldCell(row.Integer(Number), row.Text(Header), row.Text(Text))
        {
            Reason = row.TextOrNull(CellReason),
            Accepts = row.TextOrNull(Accepts),
        })).ToLookup(row => row.Id, row => row.Cell);
        return [.. rows.Select(row => row with { Cells = [.. cells[row.Id]] })];
    }

    public static void Write(IReadOnlyList<HeldRow> rows, TableSink sink)
    {
        sink.Write(Rows, rows, (row, held) => row
            .Text(held.Id).Text(Word.Of(held.State)).Text(held.File).Text(held.Sheet).Integer(held.Line).Text(held.Reason).Text(held.DecisionId).Text(held.ImportCopy));
        sink.Write(Cells, rows.SelectMany(held => held.Cells, (held, cell) => (held.Id, cell)), (row, item) => row
            .Text(item.Id).Integer(item.cell.ColumnNumber).Text(item.cell.Column).Text(item.cell.Text).Text(item.cell.Reason).Text(item.cell.Accepts));
    }
}

namespace SquadAnalytics.Storage.Tables;

/// <summary>Imported rows that are refused or await a decision, cell by cell as written.</summary>
internal static class HeldTables
{
    private static readonly Column Id = Column.Text("held_row_id", "Id, unique in the logbook").Required();
    private static readonly Column State = Column.Choice<HeldRowState>("state", "Why the row is held");
    private static readonly Column File = Column.Text("source_file", "Name of the source file").Required();
    private static readonly Column Sheet = Column.Text("sheet", "Sheet of a workbook");
    private static readonly Column Line = Column.Integer("line", "Line or row number in the source, from 1", 1).Required();
    private static readonly Column Copy = Column.Text("import_copy", "Name of the source's copy in the folder of imports");

    private static readonly Column Which = Column.Text("held_row_id", "The held row").Required();
    private static readonly Column Number = Column.Integer("column_number", "Number of the column in the source, from 1", 1).Required();
    private static readonly Column Header = Column.Text("column_header", "Header of the column as written");
    private static readonly Column Text = Column.Text("text", "The cell as written");

    private static readonly Column ProblemNumber = Column.Integer("column_number", "Number of the column, empty where the whole row is at fault", 1);
    private static readonly Column Reason = Column.Text("reason", "Why it cannot be kept as it stands").Required();
    private static readonly Column Accepts = Column.Text("accepts", "What would be accepted instead").Required();
    private static readonly Column Decision = Column.Text("decision_id", "A decision that the row awaits").Required();

    private static readonly IReadOnlyDictionary<string, HeldRowState> States = Word.All<HeldRowState>();

    public static Table Rows { get; } = new("held-rows", "Imported rows that are refused or await a decision", [Id, State, File, Sheet, Line, Copy]) { Key = [Id], IsData = false };

    public static Table Cells { get; } = new("held-cells", "Cells of the held rows exactly as written", [Which, Number, Header, Text])
    {
        Key = [Which, Number],
        References = [Reference],
        IsData = false,
    };

    public static Table Problems { get; } = new("held-problems", "What is wrong with the held rows", [Which, ProblemNumber, Header, Text, Reason, Accepts]) { References = [Reference], IsData = false };

    public static Table Decisions { get; } = new("held-decisions", "Decisions that the held rows await", [Which, Decision]) { Key = [Which, Decision], References = [Reference], IsData = false };

    private static ForeignKey Reference => new(Which, "held-rows", "held_row_id");

    public static IReadOnlyList<HeldRow> Read(TableSource source)
    {
        var seen = new Dictionary<string, HeldRow>(StringComparer.Ordinal);
        var rows = source.ReadFirst(Rows, row =>
        {
            var held = new HeldRow(row.Text(Id), row.Choice(State, States), row.Text(File), row.TextOrNull(Sheet), row.Integer(Line), [])
            {
                ImportCopy = row.TextOrNull(Copy),
            };
            row.Once(Id, seen, held.Id, held);
            return held;
        });
        var cells = source.Read(Cells, row => (row.Referred(Which, seen, Rows).Id, Cell: new HeldCell(row.Integer(Number), row.Text(Header), row.Text(Text)))).ToLookup(row => row.Id, row => row.Cell);
        var problems = source.Read(Problems, row => (Held: row.Referred(Which, seen, Rows), Row: row.IntegerOrNull(ProblemNumber), Header: row.TextOrNull(Header), Text: row.TextOrNull(Text), Reason: row.Text(Reason), Accepts: row.Text(Accepts)))
            .ToLookup(row => row.Held.Id, row => new CellProblem(row.Held.File, row.Held.Line, row.Reason, row.Accepts) { Sheet = row.Held.Sheet, Column = row.Row is null ? row.Header : row.Header ?? "", ColumnNumber = row.Row, Text = row.Row is null ? row.Text : row.Text ?? "" });
        var decisions = source.Read(Decisions, row => (row.Referred(Which, seen, Rows).Id, Decision: row.Text(Decision))).ToLookup(row => row.Id, row => row.Decision);
        return [.. rows.Select(row => row with { Cells = [.. cells[row.Id]], Problems = [.. problems[row.Id]], DecisionIds = [.. decisions[row.Id]] })];
    }

    public static void Write(IReadOnlyList<HeldRow> rows, TableSink sink)
    {
        sink.Write(Rows, rows, (row, held) => row
            .Text(held.Id).Text(Word.Of(held.State)).Text(held.File).Text(held.Sheet).Integer(held.Line).Text(held.ImportCopy));
        sink.Write(Cells, rows.SelectMany(held => held.Cells, (held, cell) => (held.Id, cell)), (row, item) => row
            .Text(item.Id).Integer(item.cell.ColumnNumber).Text(item.cell.Column).Text(item.cell.Text));
        sink.Write(Problems, rows.SelectMany(held => held.Problems, (held, problem) => (held.Id, problem)), (row, item) => row
            .Text(item.Id).Integer(item.problem.ColumnNumber).Text(item.problem.Column).Text(item.problem.Text).Text(item.problem.Reason).Text(item.problem.Accepts));
        sink.Write(Decisions, rows.SelectMany(held => held.DecisionIds, (held, decision) => (held.Id, decision)), (row, item) => row.Text(item.Id).Text(item.decision));
    }
}

namespace SquadAnalytics.Import;

/// <summary>Settles whether assumed columns are right and whether a comma is a decimal mark.</summary>
internal static class MarkSettling
{
    private const string AsAssumed = "athlete, then sets";
    private const string Comma = "comma";
    private const string NoMark = "not a decimal mark";

    public static void Apply(RawImport raw, ImportOptions options, Decisions decisions)
    {
        foreach (var rows in raw.Rows.Where(row => row.Block.Header.IsAssumed && !row.IsRefused).GroupBy(row => row.Block))
        {
            var block = rows.Key;
            decisions.Ask(
                $"columns:{block.Key}",
                DecisionKind.Columns,
                FormattableString.Invariant($"{block.InWords}: no line names the columns. Is the first column the athlete and are the others sets 1 to {block.Header.SetTimes.Count}?"),
                [AsAssumed],
                rows);
        }

        foreach (var rows in raw.Rows.Where(row => !row.IsRefused && HasComma(raw, row)).GroupBy(row => row.Block.Sheet.File))
        {
            var answer = options.DecimalMark is not null ? NoMark : decisions.Ask(
                $"decimal:{Path.GetFileName(rows.Key)}",
                DecisionKind.DecimalMark,
                $"{rows.Key}: times are written with a comma. Is it a decimal mark, as in 62,4 for 62.4 s?",
                [Comma, NoMark],
                rows);
            if (answer == Comma) Accept(raw, rows);
            else if (answer == NoMark) Refuse(raw, rows);
        }
    }

    private static bool HasComma(RawImport raw, ParsedRow row)
    {
        foreach (var entry in raw.EntriesOf(row))
        {
            if (entry.Doubt == EntryDoubt.DecimalComma) return true;
        }

        return false;
    }

    private static void Accept(RawImport raw, IEnumerable<ParsedRow> rows)
    {
        foreach (var row in rows)
        {
            for (var k = row.FirstEntry; k < row.FirstEntry + row.EntryCount; k++)
            {
                if (raw.Entries[k].Doubt == EntryDoubt.DecimalComma) raw.Entries[k] = raw.Entries[k] with { Doubt = EntryDoubt.None };
            }
        }
    }

    private static void Refuse(RawImport raw, IEnumerable<ParsedRow> rows)
    {
        foreach (var row in rows)
        {
            foreach (var entry in raw.EntriesOf(row).ToArray().Where(entry => entry.Doubt == EntryDoubt.DecimalComma))
                row.Refuse(new RowFault(row.Block.Header.Columns[entry.Column], "a comma is not the decimal mark here", TimeEntry.Accepted));
        }
    }
}

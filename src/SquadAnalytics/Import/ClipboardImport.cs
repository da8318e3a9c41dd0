namespace SquadAnalytics.Import;

/// <summary>Reads clipboard files into candidate sessions and an account of every row. Nothing is stored and nothing is guessed.</summary>
public static class ClipboardImport
{
    /// <summary>Reads one file.</summary>
    /// <inheritdoc cref="Read(IReadOnlyList{ImportSource}, ImportOptions)"/>
    public static ImportResult Read(ImportSource source, ImportOptions? options = null) => Read([source], options);

    /// <summary>Reads several files as one import: decisions and repeated tests are seen across all of them.</summary>
    /// <param name="sources">Text files with commas, semicolons, tabs or bars in any common encoding, and .xlsx workbooks; one row per set, or one row per session.</param>
    /// <param name="options">What is known beforehand, and the answers to the decisions of an earlier reading.</param>
    /// <exception cref="ArgumentException">An answer is none of its decision's choices, the stated protocol is not in the squad, or two files have the same name.</exception>
    public static ImportResult Read(IReadOnlyList<ImportSource> sources, ImportOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(sources);
        options ??= new ImportOptions();
        if (sources.GroupBy(source => Path.GetFileName(source.Name), StringComparer.OrdinalIgnoreCase).FirstOrDefault(group => group.Count() > 1) is { } twice)
            throw new ArgumentException($"Two files are called '{twice.Key}'. Reports and decisions could not tell them apart: rename one, or import them one after the other.", nameof(sources));
        var decisions = new Decisions(options.Answers);
        var raw = ReadRows(sources, options);
        MarkSettling.Apply(raw, options, decisions);
        DateSettling.Apply(raw, options, decisions);
        var names = NameSettling.Apply(raw, options, decisions);
        var protocols = ProtocolSettling.Apply(raw, options, decisions);
        DayFractionSettling.Apply(raw, decisions);
        ClockSettling.Apply(raw, options, decisions);
        StationSettling.Apply(raw, decisions);
        HoldWholeTests(raw);

        var builder = new SessionBuilder(raw, decisions, options.Squad);
        List<BuiltSession> built = [];
        var empty = 0;
        foreach (var draft in raw.Drafts.Where(draft => draft.IsOpen))
        {
            if (builder.Build(draft) is { } session) built.Add(new BuiltSession(draft, session));
            else if (draft.IsOpen) empty++;
        }

        if (empty > 0) raw.Notes.Add(FormattableString.Invariant($"Rows with a name but no time or status, for which nothing was added: {empty}."));
        var duplicates = new DuplicateSettling(raw, options, decisions);
        duplicates.Apply(built);
        raw.Notes.AddRange(builder.Plausibility.ColumnNotes());
        raw.Notes.AddRange(decisions.Unused.Select(id => $"The answer to '{id}' was not needed."));

        var used = duplicates.Added.Concat(duplicates.Changed).ToList();
        var athleteIds = used.Select(session => session.AthleteId).ToHashSet(StringComparer.Ordinal);
        var protocolIds = used.Select(session => session.Protocol.Id).ToHashSet(StringComparer.Ordinal);
        return new ImportResult
        {
            NewSessions = duplicates.Added,
            ChangedSessions = duplicates.Changed,
            NewAthletes = [.. names.New.Where(athlete => athleteIds.Contains(athlete.Id))],
            ChangedAthletes = [.. names.Confirmed],
            NewProtocols = [.. protocols.Where(protocol => protocolIds.Contains(protocol.Id))],
            Decisions = [.. decisions.Pending.Select(Shown).Where(decision => decision.Rows.Count > 0)],
            Report = ReportOf(raw, builder.Plausibility),
        };
    }

    private static RawImport ReadRows(IReadOnlyList<ImportSource> sources, ImportOptions options)
    {
        var raw = new RawImport();
        var athletes = options.Squad?.Athletes ?? [];
        var known = new NameMatcher(athletes);
        List<string> names = [.. athletes.Select(athlete => athlete.DisplayName)];
        foreach (var source in sources)
        {
            try
            {
                var opened = OpenedSource.Open(source, names);
                raw.Notes.AddRange(opened.Notes);
                var rowsBefore = raw.Rows.Count;
                foreach (var sheet in opened.Sheets) new BlockReader(raw, sheet, options.DecimalMark ?? DecimalMark.Point, name => known.Exact(name).Count > 0).Read();
                if (raw.Rows.Count == rowsBefore) raw.Notes.Add($"{source.Name}: there is no row of times in it.");
            }
            catch (UnreadableSourceException error)
            {
                raw.Unreadable.Add(new CellProblem(source.Name, 1, error.Message, error.Accepts));
            }
        }

        return raw;
    }

    // Rows of one test belong together: if one of them waits, all wait with it.
    private static void HoldWholeTests(RawImport raw)
    {
        foreach (var draft in raw.Drafts.Where(draft => draft.Rows.Count > 1 && draft.Rows.Exists(row => row.IsHeld)))
        {
            var awaited = draft.Rows.Where(row => row.IsHeld).SelectMany(row => row.Awaits).Distinct().ToList();
            foreach (var row in draft.Rows.Where(row => !row.IsRefused))
            {
                foreach (var decision in awaited.Where(decision => !row.Awaits.Contains(decision)))
                {
                    row.Await(decision);
                    decision.Rows.Add(row);
                }
            }
        }
    }

    private static ImportDecision Shown(PendingDecision decision) =>
        new(decision.Id, decision.Kind, decision.Text, decision.Choices, [.. decision.Rows.Where(row => row.IsHeld).Distinct().Select(row => row.Place)]) { Template = decision.Template };

    private static ImportReport ReportOf(RawImport raw, Plausibility plausibility)
    {
        var texts = RowTexts.Fetch(raw);
        return new ImportReport
        {
            Rows = raw.Rows.Count + raw.Unreadable.Count,
            Kept = raw.Rows.Count(row => row.IsKept),
            TitleAndHeaderLines = raw.TitleAndHeaderLines,
            Refused =
            [
                .. raw.Unreadable.Select(problem => new RefusedRow(new RowPlace(problem.File, null, 1), [], [problem])),
                .. raw.Rows.Where(row => row.IsRefused).Select(row => new RefusedRow(row.Place, RowTexts.Cells(row, texts[row]), [.. row.Faults.Select(fault => Problem(row, fault, texts[row]))])),
            ],
            Held = [.. raw.Rows.Where(row => row.IsHeld).Select(row => new AwaitingRow(row.Place, RowTexts.Cells(row, texts[row]), [.. row.Awaits.Select(decision => decision.Id)]))],
            Warnings = [.. plausibility.Warnings],
            Notes = [.. raw.Notes],
        };
    }

    private static CellProblem Problem(ParsedRow row, RowFault fault, SourceLine line) => new(row.Block.Sheet.File, row.Line, fault.Reason, fault.Accepts)
    {
        Sheet = row.Block.Sheet.Name,
        Column = fault.Column?.Header,
        ColumnNumber = fault.Column?.Index + 1,
        Text = fault.Column is { } column ? line[column.Index].Text : null,
    };
}

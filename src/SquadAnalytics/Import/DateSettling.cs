namespace SquadAnalytics.Import;

/// <summary>Settles the date of every draft: its own, the title's, the one stated for all, or a person's.</summary>
internal static class DateSettling
{
    public const string AnyDate = "yyyy-mm-dd";

    private static readonly (DateOrder Order, string Name, string InWords)[] Orders =
    [
        (DateOrder.DayMonthYear, "dmy", "day, month, year"),
        (DateOrder.MonthDayYear, "mdy", "month, day, year"),
        (DateOrder.YearMonthDay, "ymd", "year, month, day"),
    ];

    public static void Apply(RawImport raw, ImportOptions options, Decisions decisions)
    {
        var cells = new DateReading?[raw.Dates.Count];
        for (var k = 0; k < cells.Length; k++) cells[k] = DateReading.Parse(raw.Dates[k]);
        var titles = raw.Drafts.Select(draft => draft.Block.Title.DateText).OfType<string>().Distinct().ToDictionary(text => text, text => DateReading.Find(text, out _));
        var missing = new List<SessionDraft>();
        var contradicting = new List<SessionDraft>();
        var ambiguous = new List<Written>();
        foreach (var draft in raw.Drafts)
        {
            var column = draft.Texts.Date == TextTable.None ? null : draft.Block.Header[ColumnRole.Date];
            var text = column is null ? draft.Block.Title.DateText : raw.Dates[draft.Texts.Date];
            var sheet = draft.Block.Title.Sheet?.Date;
            if (text is null)
            {
                draft.Date = sheet ?? options.Date;
                if (draft.Date is null) missing.Add(draft);
                continue;
            }

            var reading = column is null ? titles[text] : cells[draft.Texts.Date];
            if (reading is null) draft.Refuse(new RowFault(column, "not a date", DateReading.Accepted));
            else if (sheet is { } printed && reading.Value.MayBe(printed)) draft.Date = printed;
            else if (sheet is not null && column is null) contradicting.Add(draft);
            else if (options.DateOrder is { } order) InOrder(new Written(draft, column, text, reading.Value), order);
            else if (reading.Value.Certain is { } certain) draft.Date = certain;
            else ambiguous.Add(new Written(draft, column, text, reading.Value));
        }

        AskOrder(ambiguous, decisions);
        AskDate(missing, decisions, static _ => "No date is written.");
        AskDate(contradicting, decisions, static title => FormattableString.Invariant($"The title says '{title.DateText}', the sheet's code {title.Sheet!.Date:yyyy-MM-dd}."));
    }

    private static void AskOrder(List<Written> ambiguous, Decisions decisions)
    {
        foreach (var file in ambiguous.GroupBy(date => date.Draft.Block.Sheet.File))
        {
            var example = file.First();
            var possible = Orders.Where(order => file.Any(date => date.Reading.In(order.Order) is not null)).ToList();
            var readings = possible.Where(order => example.Reading.In(order.Order) is not null)
                .Select(order => FormattableString.Invariant($"{order.Name} ({order.InWords}) makes it {example.Reading.In(order.Order):yyyy-MM-dd}"));
            var answer = decisions.Ask(
                $"date-order:{Path.GetFileName(file.Key)}",
                DecisionKind.DateOrder,
                $"{file.Key}: in which order is '{example.Text}' written? {string.Join("; ", readings)}.",
                possible.Select(order => order.Name),
                file.SelectMany(date => date.Draft.Rows));
            if (answer is null) continue;
            foreach (var date in file) InOrder(date, possible.Find(order => order.Name == answer).Order);
        }
    }

    private static void AskDate(List<SessionDraft> missing, Decisions decisions, Func<BlockTitle, string> reason)
    {
        foreach (var drafts in missing.GroupBy(draft => draft.Block))
        {
            var answer = decisions.Ask(
                $"date:{drafts.Key.Key}",
                DecisionKind.Date,
                $"{drafts.Key.InWords}: on which date was this done? {reason(drafts.Key.Title)}",
                [AnyDate],
                drafts.SelectMany(draft => draft.Rows),
                AnyDate,
                text => DateReading.Parse(text)?.Certain is not null);
            if (answer is null) continue;
            foreach (var draft in drafts) draft.Date = DateReading.Parse(answer)!.Value.Certain;
        }
    }

    private static void InOrder(Written date, DateOrder order)
    {
        date.Draft.Date = date.Reading.In(order);
        if (date.Draft.Date is null)
            date.Draft.Refuse(new RowFault(date.Column, $"'{date.Text}' is no date in the order {Array.Find(Orders, known => known.Order == order).InWords}", DateReading.Accepted));
    }

    private readonly record struct Written(SessionDraft Draft, Column? Column, string Text, DateReading Reading);
}

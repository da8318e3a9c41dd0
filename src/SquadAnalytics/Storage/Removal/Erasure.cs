using SquadAnalytics.Storage.Safekeeping;

namespace SquadAnalytics.Storage.Removal;

/// <summary>Finds what is to be erased with an athlete, in the tables and in the files beside them.</summary>
internal static class Erasure
{
    /// <summary>The content without the athlete and without mentions of them in the texts of others.</summary>
    public static LogbookContent Content(LogbookContent content, Athlete athlete)
    {
        var mention = new Mention(athlete);
        var rest = content.Without(athlete.Id);
        return rest with
        {
            Squad = new Squad(rest.Squad.Name, Texts(rest.Squad.Athletes, mention), rest.Squad.Protocols, [.. rest.Squad.Sessions.Select(session => Texts(session, mention))])
            {
                Contexts = rest.Squad.Contexts,
                Events = rest.Squad.Events,
                Blocks = [.. rest.Squad.Blocks.Select(block => mention.In(block.Emphasis) ? block with { Emphasis = mention.Erase(block.Emphasis) } : block)],
                AgeGroups = rest.Squad.AgeGroups,
                WeightClasses = rest.Squad.WeightClasses,
            },
            HealthNotes = [.. rest.HealthNotes.Select(note => mention.In(note.Text) ? note with { Text = mention.Erase(note.Text)! } : note)],
            HeldRows = [.. rest.HeldRows.Where(row => !row.Cells.Any(cell => mention.In(cell.Text)) && !mention.In(row.File) && !mention.In(row.Sheet))],
        };
    }

    /// <summary>Entries of a folder that mention the athlete; a folder within it, such as a report with its figures, goes as one.</summary>
    public static FoundFiles Files(Layout layout, string name, Mention mention)
    {
        var (mentioning, unsearched) = (new List<string>(), new List<string>());
        var folder = layout.At(name);
        if (!Directory.Exists(folder)) return new FoundFiles([], []);
        foreach (var entry in Directory.EnumerateFileSystemEntries(folder).Order(StringComparer.Ordinal))
        {
            var path = $"{name}/{Path.GetFileName(entry)}";
            IEnumerable<string> files = Directory.Exists(entry) ? Directory.EnumerateFiles(entry, "*", SearchOption.AllDirectories) : [entry];
            var searched = mention.In(Path.GetFileName(entry)) ? [true] : files.Select(mention.InFile).ToList();
            if (searched.Contains(true)) mentioning.Add(path);
            else if (searched.Count > 0 && !searched.Contains(false)) unsearched.Add(path);
        }

        return new FoundFiles(mentioning, unsearched);
    }

    /// <summary>The cells of a draft that stay: a row that mentions the athlete goes as a whole, of what concerns the whole session only the cell itself.</summary>
    public static IReadOnlyList<DraftCell> Cells(SessionDraft draft, Mention mention)
    {
        var rows = draft.Cells.Where(cell => cell.Row.Length > 0 && (mention.In(cell.Row) || mention.In(cell.Text))).Select(cell => cell.Row).ToHashSet(StringComparer.Ordinal);
        return [.. draft.Cells.Where(cell => !rows.Contains(cell.Row) && !mention.In(cell.Text))];
    }

    private static IReadOnlyList<Athlete> Texts(IReadOnlyList<Athlete> athletes, Mention mention) =>
        [.. athletes.Select(athlete => athlete.Consents.Any(consent => mention.In(consent.GivenBy)) ? athlete with { Consents = [.. athlete.Consents.Select(consent => consent with { GivenBy = mention.Erase(consent.GivenBy) })] } : athlete)];

    private static Session Texts(Session session, Mention mention) => !mention.In(session.Timer) && !mention.In(session.Place) && !mention.In(session.VoidReason)
        ? session
        : session with { Timer = mention.Erase(session.Timer), Place = mention.Erase(session.Place), VoidReason = mention.Erase(session.VoidReason) };
}

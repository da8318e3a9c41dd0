namespace SquadAnalytics.Sets;

/// <summary>Where the sessions of a table of sets begin and end.</summary>
internal sealed class SetTableRuns
{
    private readonly int[] _sources;

    private SetTableRuns(int[] athlete, int[] session, int[] starts, int[] sources, int leftOut)
    {
        Athlete = athlete;
        Session = session;
        Starts = starts;
        _sources = sources;
        LeftOut = leftOut;
    }

    /// <summary>Athlete of each session.</summary>
    public int[] Athlete { get; }

    /// <summary>Number of each session.</summary>
    public int[] Session { get; }

    /// <summary>First row of each session and, last, the row after all.</summary>
    public int[] Starts { get; }

    /// <summary>Number of sessions with two or more sets.</summary>
    public int Count => Athlete.Length;

    /// <summary>Number of sessions with one set.</summary>
    public int LeftOut { get; }

    /// <summary>Whether the rows already stand as the starts say; otherwise they are gathered first.</summary>
    public bool IsOrdered => _sources.Length == 0;

    public static SetTableRuns Find(ReadOnlySpan<int> athlete, ReadOnlySpan<int> session)
    {
        var (runs, isOrdered, isFull) = Survey(athlete, session);
        if (!isOrdered || !isFull) return FindScattered(athlete, session, runs);
        int[] athletes = GC.AllocateUninitializedArray<int>(runs), sessions = GC.AllocateUninitializedArray<int>(runs), starts = GC.AllocateUninitializedArray<int>(runs + 1);
        var run = 0;
        for (var row = 0; row < athlete.Length; row++)
        {
            if (row > 0 && athlete[row] == athlete[row - 1] && session[row] == session[row - 1]) continue;
            athletes[run] = athlete[row];
            sessions[run] = session[row];
            starts[run++] = row;
        }

        starts[runs] = athlete.Length;
        return new SetTableRuns(athletes, sessions, starts, [], 0);
    }

    /// <summary>The times in the order of sessions.</summary>
    public double[] Gather(ReadOnlySpan<double> times)
    {
        var gathered = GC.AllocateUninitializedArray<double>(_sources.Length);
        for (var row = 0; row < gathered.Length; row++) gathered[row] = times[_sources[row]];
        return gathered;
    }

    /// <summary>How many runs of equal keys there are, whether their keys only grow, and whether each has two rows or more.</summary>
    private static (int Runs, bool IsOrdered, bool IsFull) Survey(ReadOnlySpan<int> athlete, ReadOnlySpan<int> session)
    {
        if (athlete.IsEmpty) return (0, true, true);
        int runs = 1, length = 1;
        bool isOrdered = true, isFull = true;
        for (var row = 1; row < athlete.Length; row++)
        {
            if (athlete[row] == athlete[row - 1] && session[row] == session[row - 1])
            {
                length++;
                continue;
            }

            isOrdered &= athlete[row] > athlete[row - 1] || (athlete[row] == athlete[row - 1] && session[row] > session[row - 1]);
            isFull &= length > 1;
            length = 1;
            runs++;
        }

        return (runs, isOrdered, isFull && length > 1);
    }

    /// <summary>Sessions whose rows are scattered, out of order or too few: run beginnings are sorted by key and row, then joined.</summary>
    private static SetTableRuns FindScattered(ReadOnlySpan<int> athlete, ReadOnlySpan<int> session, int runs)
    {
        var keys = new (int Athlete, int Session, int Row)[runs];
        var run = 0;
        for (var row = 0; row < athlete.Length; row++)
        {
            if (row == 0 || athlete[row] != athlete[row - 1] || session[row] != session[row - 1]) keys[run++] = (athlete[row], session[row], row);
        }

        Array.Sort(keys);
        List<int> athletes = new(runs), sessions = new(runs), starts = new(runs + 1), sources = new(athlete.Length);
        var leftOut = 0;
        for (var first = 0; first < runs;)
        {
            var start = sources.Count;
            var next = first;
            for (; next < runs && keys[next].Athlete == keys[first].Athlete && keys[next].Session == keys[first].Session; next++)
            {
                for (var row = keys[next].Row; row < athlete.Length && athlete[row] == keys[first].Athlete && session[row] == keys[first].Session; row++) sources.Add(row);
            }

            if (sources.Count - start < 2)
            {
                leftOut++;
                sources.RemoveRange(start, sources.Count - start);
            }
            else
            {
                athletes.Add(keys[first].Athlete);
                sessions.Add(keys[first].Session);
                starts.Add(start);
            }

            first = next;
        }

        starts.Add(sources.Count);
        return new SetTableRuns([.. athletes], [.. sessions], [.. starts], [.. sources], leftOut);
    }
}

namespace SquadAnalytics.Statistics;

public static partial class MixedModel
{
    /// <summary>Terms with a relative SD (per root mean square of the column), or a conditional one given the columns before, below the tolerance.</summary>
    private static List<int> SingularTerms(MixedBlocks data, double[] theta)
    {
        var singular = new List<int>();
        for (var t = 0; t < data.Terms.Length; t++)
        {
            var term = data.Terms[t];
            for (var r = 0; r < term.Width; r++)
            {
                var total = RelativeSd(term, theta, r);
                var own = Math.Abs(theta[term.ThetaIndex(r, r)]);

                // 1 - |ρ| of a column on those before it, from the share of its row that is its own.
                var unexplained = total > 0 ? own / total : 0;
                if (total >= SingularTolerance && 1 - Math.Sqrt(Math.Max(0, 1 - unexplained * unexplained)) >= SingularTolerance) continue;
                singular.Add(t);
                break;
            }
        }

        return singular;
    }

    /// <summary>The next simpler model, or null where none is simpler: without correlation first, then without the slopes that have no variance.</summary>
    private static MixedDesign? Simplified(MixedDesign design, MixedBlocks data, double[] theta, IReadOnlyList<int> singular, List<string> notes)
    {
        foreach (var t in singular)
        {
            var term = design.RandomTerms[t];
            if (term.Correlated)
            {
                notes.Add($"Singular fit: refitted without the correlation of {string.Join(" and ", term.Columns.Select(column => column.Name))} between {term.Name}.");
                return Replaced(design, t, term.Uncorrelated());
            }

            var kept = term.Columns.Where((_, r) => r == 0 || RelativeSd(data.Terms[t], theta, r) >= SingularTolerance).ToArray();
            if (kept.Length == term.Columns.Count) continue;
            var dropped = term.Columns.Except(kept).Select(column => column.Name);
            notes.Add($"Singular fit: refitted without a random {string.Join(" and ", dropped)} between {term.Name}, which showed no variance.");
            return Replaced(design, t, term.WithColumns(kept));
        }

        return null;
    }

    private static MixedDesign Replaced(MixedDesign design, int position, RandomTerm term) =>
        design.With([.. design.RandomTerms.Select((old, t) => t == position ? term : old)]);
}

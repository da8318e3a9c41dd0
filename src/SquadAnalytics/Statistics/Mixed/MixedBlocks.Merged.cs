namespace SquadAnalytics.Statistics;

internal sealed partial class MixedBlocks
{
    private MixedBlocks(MixedBlocks source, Block[] blocks)
    {
        Observations = source.Observations;
        FixedCount = source.FixedCount;
        ThetaCount = source.ThetaCount;
        Terms = source.Terms;
        BaseTriangle = source.BaseTriangle;
        Blocks = blocks;
    }

    /// <summary>
    /// The same likelihood from fewer blocks: N blocks with the same [Z X] become one that holds √N X and √N times their mean response, and as many
    /// without X as it takes to hold their scatter about it.
    /// </summary>
    /// <remarks>
    /// An orthogonal rotation across the N blocks leaves Z as it is, because the random effects of the groups are independent and alike. Athletes who
    /// attended the same sessions therefore cost no more than a few. Predictions need the blocks as they were.
    /// </remarks>
    public MixedBlocks Merged()
    {
        var alike = Blocks.GroupBy(block => block, SameDesign.Of(FixedCount)).ToArray();
        return alike.Length == Blocks.Length ? this : new MixedBlocks(this, [.. alike.SelectMany(Merge)]);
    }

    private IEnumerable<Block> Merge(IGrouping<Block, Block> blocks)
    {
        Block[] members = [.. blocks];
        var first = members[0];
        int n = members.Length, k = first.Rows, q = first.Effects, p = FixedCount;
        if (n <= k + 1) return members;
        var mean = new double[k];
        foreach (var member in members)
        {
            for (var i = 0; i < k; i++) mean[i] += member.Data[(q + p) * k + i] / n;
        }

        var scatter = new double[n * k];
        for (var m = 0; m < n; m++)
        {
            for (var i = 0; i < k; i++) scatter[i * n + m] = members[m].Data[(q + p) * k + i] - mean[i];
        }

        var triangle = new double[k * k];
        TriangularUpdate.Append(triangle, k, scatter, n, n, k, k);
        var merged = new List<Block> { Stand(first, n, j => j < q ? 1 : Math.Sqrt(n), i => Math.Sqrt(n) * mean[i]) };
        for (var row = 0; row < k; row++)
        {
            var held = row;
            merged.Add(Stand(first, 0, j => j < q ? 1 : 0, i => i < held ? 0 : triangle[i * k + held]));
        }

        return merged;
    }

    /// <summary>A block that stands for others: its columns scaled, its response replaced.</summary>
    private Block Stand(Block source, int weight, Func<int, double> columnScale, Func<int, double> response)
    {
        int k = source.Rows, width = source.Effects + FixedCount;
        var data = new double[source.Data.Length];
        for (var j = 0; j < width; j++)
        {
            for (var i = 0; i < k; i++) data[j * k + i] = source.Data[j * k + i] * columnScale(j);
        }

        for (var i = 0; i < k; i++) data[width * k + i] = response(i);
        return new Block(source.Slots, source.Effects) { LogDetWeight = weight, Rows = k, Data = data };
    }

    /// <summary>Whether two blocks have the same terms in the same places and the same [Z X], to the bit.</summary>
    private sealed class SameDesign(int fixedCount) : IEqualityComparer<Block>
    {
        public static SameDesign Of(int fixedCount) => new(fixedCount);

        public bool Equals(Block? x, Block? y) =>
            ReferenceEquals(x, y)
            || (x is not null && y is not null && x.Rows == y.Rows && x.Effects == y.Effects && Design(x).SequenceEqual(Design(y)) && SamePlaces(x.Slots, y.Slots));

        public int GetHashCode(Block obj)
        {
            var hash = default(HashCode);
            foreach (var entry in Design(obj)) hash.Add(entry);
            return hash.ToHashCode();
        }

        private static bool SamePlaces(Slot[] first, Slot[] second)
        {
            if (first.Length != second.Length) return false;
            for (var s = 0; s < first.Length; s++)
            {
                if (first[s].Term != second[s].Term || first[s].Offset != second[s].Offset) return false;
            }

            return true;
        }

        private ReadOnlySpan<double> Design(Block block) => block.Data.AsSpan(0, block.Rows * (block.Effects + fixedCount));
    }
}

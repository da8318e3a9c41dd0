namespace SquadAnalytics.Statistics;

/// <summary>
/// The observations of a mixed model reduced to sufficient statistics. Groups that share observations form one block (a single grouping
/// factor: one block per group); a block of n rows [Z X y] is rotated to its first q rows, q the number of its random effects, and the rest,
/// which no variance parameter touches, goes into one common triangle.
/// </summary>
/// <remarks>
/// X stands for the orthonormal columns of <see cref="OrthonormalColumns"/>, y for the residuals about them, and each column of Z is divided
/// by its root mean square, so that nothing here depends on units. Source: Bates and Pinheiro (1998), Computational methods for multilevel
/// modelling, on the orthogonal-triangular form; Bates et al. (2015), J Stat Softw 67(1) (both from memory).
/// </remarks>
internal sealed partial class MixedBlocks
{
    // The factor of one block is dense; beyond this it would take more than 100 MB and minutes.
    private const int LargestBlock = 2_500;

    private MixedBlocks(MixedDesign design, int fixedCount, out int[][] levelBlock)
    {
        Observations = design.Observations;
        FixedCount = fixedCount;
        Terms = Term.Number(design.RandomTerms);
        ThetaCount = Terms.Sum(term => term.ThetaCount);
        levelBlock = Components(out var blockCount);
        Blocks = new Block[blockCount];
        Arrange(levelBlock);
        BaseTriangle = new double[(FixedCount + 1) * (FixedCount + 1)];
    }

    /// <summary>Reduces a design, or refuses where its terms connect more random effects than the factor of one block takes.</summary>
    public static Answer<MixedBlocks> Of(MixedDesign design, OrthonormalColumns fixedColumns)
    {
        var blocks = new MixedBlocks(design, fixedColumns.Columns.Length, out var levelBlock);
        var connected = blocks.Blocks.Max(block => block.Effects);
        if (connected > LargestBlock) return NotEstimable.TooMany(MixedModel.Measure, LargestBlock, connected, "random effects that share observations");
        blocks.Reduce(fixedColumns, levelBlock);
        return blocks;
    }

    public int Observations { get; }

    public int FixedCount { get; }

    public int ThetaCount { get; }

    public Term[] Terms { get; }

    public Block[] Blocks { get; }

    /// <summary>Triangle of the rows of [X y] that carry no random effect, (p+1) × (p+1), column by column.</summary>
    public double[] BaseTriangle { get; }

    /// <summary>Levels that are connected by an observation belong to one block.</summary>
    private int[][] Components(out int count)
    {
        if (Terms.Length == 1)
        {
            count = Terms[0].Levels.Length;
            return [Enumerable.Range(0, count).ToArray()];
        }

        var start = new int[Terms.Length];
        var total = 0;
        for (var t = 0; t < Terms.Length; t++)
        {
            start[t] = total;
            total += Terms[t].Levels.Length;
        }

        var parent = Enumerable.Range(0, total).ToArray();
        for (var i = 0; i < Observations; i++)
        {
            var root = Root(start[0] + Terms[0].LevelOf[i]);
            for (var t = 1; t < Terms.Length; t++) parent[Root(start[t] + Terms[t].LevelOf[i])] = root;
        }

        var number = new Dictionary<int, int>();
        var blocks = new int[Terms.Length][];
        for (var t = 0; t < Terms.Length; t++)
        {
            blocks[t] = new int[Terms[t].Levels.Length];
            for (var level = 0; level < blocks[t].Length; level++)
            {
                var root = Root(start[t] + level);
                if (!number.TryGetValue(root, out var block)) number[root] = block = number.Count;
                blocks[t][level] = block;
            }
        }

        count = number.Count;
        return blocks;

        int Root(int node)
        {
            while (parent[node] != node) node = parent[node] = parent[parent[node]];
            return node;
        }
    }

    private void Arrange(int[][] levelBlock)
    {
        var slots = new Slot[Blocks.Length][];
        var counts = new int[Blocks.Length];
        foreach (var block in levelBlock.SelectMany(blocks => blocks)) counts[block]++;
        for (var b = 0; b < slots.Length; b++) slots[b] = new Slot[counts[b]];
        Array.Clear(counts);
        var effects = new int[Blocks.Length];
        for (var t = 0; t < Terms.Length; t++)
        {
            for (var level = 0; level < levelBlock[t].Length; level++)
            {
                var block = levelBlock[t][level];
                slots[block][counts[block]++] = new Slot(t, level, effects[block]);
                Terms[t].OffsetInBlock[level] = effects[block];
                effects[block] += Terms[t].Width;
            }
        }

        for (var b = 0; b < Blocks.Length; b++) Blocks[b] = new Block(slots[b], effects[b]);
    }

    private void Reduce(OrthonormalColumns fixedColumns, int[][] levelBlock)
    {
        foreach (var level in Terms[0].LevelOf) Blocks[levelBlock[0][level]].Observations++;
        var order = new int[Observations];
        var next = new int[Blocks.Length];
        for (var b = 1; b < Blocks.Length; b++) next[b] = next[b - 1] + Blocks[b - 1].Observations;
        for (var i = 0; i < Observations; i++) order[next[levelBlock[0][Terms[0].LevelOf[i]]]++] = i;

        var p = FixedCount;
        double[] rows = [];
        double[] triangle = [];
        var first = 0;
        foreach (var block in Blocks)
        {
            var n = block.Observations;
            var q = block.Effects;
            var width = q + p + 1;
            if (rows.Length < n * width) rows = new double[n * width];
            Array.Clear(rows, 0, n * width);
            var members = order.AsSpan(first, n);
            Gather(block, members, rows, fixedColumns);
            first += n;

            // The triangle of the q random columns; what is left of the rows is free of them.
            block.Rows = Math.Min(n, q);
            block.Data = new double[block.Rows * width];
            if (n > q)
            {
                if (triangle.Length < q * width) triangle = new double[q * width];
                Array.Clear(triangle, 0, q * width);
                TriangularUpdate.Append(triangle, q, rows, n, n, width, q);
                triangle.AsSpan(0, q * width).CopyTo(block.Data);
                TriangularUpdate.Append(BaseTriangle, p + 1, rows.AsSpan(q * n), n, n, p + 1, p + 1);
            }
            else
            {
                rows.AsSpan(0, n * width).CopyTo(block.Data);
            }
        }
    }

    private void Gather(Block block, ReadOnlySpan<int> members, double[] rows, OrthonormalColumns fixedColumns)
    {
        var n = members.Length;
        foreach (var term in Terms)
        {
            for (var c = 0; c < term.Width; c++)
            {
                var column = term.Columns[c];
                var scale = 1 / term.ColumnScale[c];
                for (var k = 0; k < n; k++)
                {
                    var i = members[k];
                    rows[(term.OffsetInBlock[term.LevelOf[i]] + c) * n + k] = column[i] * scale;
                }
            }
        }

        for (var c = 0; c <= FixedCount; c++)
        {
            var column = c < FixedCount ? fixedColumns.Columns[c] : fixedColumns.Residuals;
            var target = rows.AsSpan((block.Effects + c) * n, n);
            for (var k = 0; k < n; k++) target[k] = column[members[k]];
        }
    }

    /// <summary>One group of one term within a block: where its random effects stand.</summary>
    internal readonly record struct Slot(int Term, int Level, int Offset);

    /// <summary>The reduced rows of one block.</summary>
    internal sealed class Block(Slot[] slots, int effects)
    {
        public Slot[] Slots { get; } = slots;

        /// <summary>Random effects in the block, q.</summary>
        public int Effects { get; } = effects;

        public int Observations { get; set; }

        /// <summary>How often the block counts in the log determinant: 1, or the number of groups it stands for, or 0 beside such a one.</summary>
        public int LogDetWeight { get; init; } = 1;

        /// <summary>Rows kept, the smaller of q and the number of observations.</summary>
        public int Rows { get; set; }

        /// <summary>[Z X y] of the kept rows, column by column with stride <see cref="Rows"/>.</summary>
        public double[] Data { get; set; } = [];
    }

    /// <summary>A random term with its levels numbered in order of first appearance.</summary>
    internal sealed class Term
    {
        private Term(RandomTerm source, int thetaStart)
        {
            Width = source.Columns.Count;
            Correlated = source.Correlated;
            ThetaStart = thetaStart;
            Columns = source.Columns.Select(column => column.Array).ToArray();
            ColumnScale = Columns.Select(RootMeanSquare).ToArray();
            LevelOf = new int[source.Groups.Count];
            var levels = new List<string>();
            var number = new Dictionary<string, int>(StringComparer.Ordinal);
            string? previous = null;
            var current = 0;
            for (var i = 0; i < LevelOf.Length; i++)
            {
                var label = source.Groups[i];
                if (!ReferenceEquals(label, previous) && !string.Equals(label, previous, StringComparison.Ordinal))
                {
                    if (!number.TryGetValue(label, out current))
                    {
                        current = levels.Count;
                        number[label] = current;
                        levels.Add(label);
                    }

                    previous = label;
                }

                LevelOf[i] = current;
            }

            Levels = [.. levels];
            OffsetInBlock = new int[Levels.Length];
        }

        public int Width { get; }

        public bool Correlated { get; }

        /// <summary>Where this term's parameters start in θ.</summary>
        public int ThetaStart { get; }

        public int ThetaCount => Correlated ? Width * (Width + 1) / 2 : Width;

        public double[][] Columns { get; }

        /// <summary>Root mean square of each column.</summary>
        public double[] ColumnScale { get; }

        public int[] LevelOf { get; }

        public string[] Levels { get; }

        public int[] OffsetInBlock { get; }

        public static Term[] Number(IReadOnlyList<RandomTerm> terms)
        {
            var numbered = new Term[terms.Count];
            var start = 0;
            for (var t = 0; t < numbered.Length; t++)
            {
                numbered[t] = new Term(terms[t], start);
                start += numbered[t].ThetaCount;
            }

            return numbered;
        }

        /// <summary>Position in θ of row r, column c (r not below c) of the term's triangle, column by column; -1 where it is fixed at 0.</summary>
        public int ThetaIndex(int row, int column) =>
            Correlated ? ThetaStart + column * Width - column * (column - 1) / 2 + (row - column) : row == column ? ThetaStart + row : -1;

        private static double RootMeanSquare(double[] column)
        {
            var sum = 0.0;
            foreach (var entry in column) sum += entry * entry;
            return sum > 0 ? Math.Sqrt(sum / column.Length) : 1;
        }
    }
}

namespace SquadAnalytics.Statistics;

/// <summary>Householder factorisation X = Q R of a tall matrix given by columns; a column that the earlier ones explain is set aside.</summary>
/// <remarks>
/// Columns keep their order unless the length left over after the earlier ones falls below tolerance times the column's own length; then
/// the column goes to the end and counts as aliased, as in the modified LINPACK routine that R's <c>lm</c> uses. Golub &amp; Van Loan (2013),
/// Matrix computations, chapter 5 (from memory).
/// </remarks>
internal sealed class QrFactorization
{
    private readonly int _rows;

    // Columns in factored order: above the diagonal R, on and below it the rest that is being factored.
    private readonly double[][] _columns;
    private readonly List<double[]> _reflectors = [];

    public QrFactorization(double[][] columns, int rows, double tolerance)
    {
        _rows = rows;
        _columns = Array.ConvertAll(columns, column => (double[])column.Clone());
        Order = [.. Enumerable.Range(0, columns.Length)];
        var independent = columns.Length;
        while (Rank < Math.Min(independent, rows))
        {
            if (TailLength(_columns[Rank], Rank) <= tolerance * TailLength(columns[Order[Rank]], 0))
            {
                MoveToEnd(_columns, Rank);
                MoveToEnd(Order, Rank);
                independent--;
            }
            else
            {
                AddReflector();
            }
        }
    }

    /// <summary>How many columns are independent.</summary>
    public int Rank => _reflectors.Count;

    /// <summary>Original index of each factored column; the first <see cref="Rank"/> are independent, the others aliased.</summary>
    public int[] Order { get; }

    /// <summary>Element of R, both indices in factored order and row not behind column.</summary>
    public double R(int row, int column) => _columns[column][row];

    /// <summary>Q'v: the first <see cref="Rank"/> entries are the effects of the columns, the others residual.</summary>
    public double[] Rotate(double[] vector)
    {
        var rotated = (double[])vector.Clone();
        for (var j = 0; j < Rank; j++) Reflect(j, rotated);
        return rotated;
    }

    /// <summary>Q v, the inverse of <see cref="Rotate"/>.</summary>
    public double[] Unrotate(double[] vector)
    {
        var turned = (double[])vector.Clone();
        for (var j = Rank - 1; j >= 0; j--) Reflect(j, turned);
        return turned;
    }

    /// <summary>The first <see cref="Rank"/> columns of Q.</summary>
    public double[][] ThinQ()
    {
        var q = new double[Rank][];
        for (var j = 0; j < Rank; j++)
        {
            var unit = new double[_rows];
            unit[j] = 1;
            q[j] = Unrotate(unit);
        }

        return q;
    }

    /// <summary>Solves R b = effects for the independent columns, in factored order.</summary>
    public double[] SolveUpper(ReadOnlySpan<double> effects)
    {
        var solution = new double[Rank];
        for (var row = Rank - 1; row >= 0; row--)
        {
            var rest = new CompensatedSum();
            rest.Add(effects[row]);
            for (var column = row + 1; column < Rank; column++) rest.AddProduct(-R(row, column), solution[column]);
            solution[row] = rest.Value / R(row, row);
        }

        return solution;
    }

    /// <summary>Solves R' z = weights for the independent columns, in factored order.</summary>
    public double[] SolveTransposed(ReadOnlySpan<double> weights)
    {
        var solution = new double[Rank];
        for (var row = 0; row < Rank; row++)
        {
            var rest = new CompensatedSum();
            rest.Add(weights[row]);
            for (var column = 0; column < row; column++) rest.AddProduct(-R(column, row), solution[column]);
            solution[row] = rest.Value / R(row, row);
        }

        return solution;
    }

    /// <summary>How the independent columns make up an aliased one: its column of R, solved; in factored order.</summary>
    public double[] Composition(int aliased) => SolveUpper(_columns[aliased].AsSpan(0, Rank));

    private void AddReflector()
    {
        var pivot = Rank;
        var column = _columns[pivot];
        var length = TailLength(column, pivot);
        var reflector = new double[_rows];
        Array.Copy(column, pivot, reflector, pivot, _rows - pivot);
        reflector[pivot] += Math.CopySign(length, column[pivot]);
        var half = TailLength(reflector, pivot);
        for (var i = pivot; i < _rows; i++) reflector[i] /= half;
        _reflectors.Add(reflector);
        for (var j = pivot; j < _columns.Length; j++) Reflect(pivot, _columns[j]);
    }

    // v - 2 (u'v) u, where u has length 1 and zeros before its pivot.
    private void Reflect(int pivot, double[] vector)
    {
        var reflector = _reflectors[pivot];
        var twice = 2 * CompensatedSum.OfProducts(reflector.AsSpan(pivot), vector.AsSpan(pivot));
        for (var i = pivot; i < _rows; i++) vector[i] = Math.FusedMultiplyAdd(-twice, reflector[i], vector[i]);
    }

    private static double TailLength(double[] vector, int from)
    {
        double largest = 0;
        for (var i = from; i < vector.Length; i++) largest = Math.Max(largest, Math.Abs(vector[i]));
        if (largest == 0) return 0;
        var squares = new CompensatedSum();
        for (var i = from; i < vector.Length; i++) squares.AddProduct(vector[i] / largest, vector[i] / largest);
        return largest * Math.Sqrt(squares.Value);
    }

    private static void MoveToEnd<T>(T[] items, int index)
    {
        var moved = items[index];
        Array.Copy(items, index + 1, items, index, items.Length - index - 1);
        items[^1] = moved;
    }
}

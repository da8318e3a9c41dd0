namespace SquadAnalytics.Statistics;

/// <summary>A running sum that carries its rounding error along, so that a long or badly scaled sum keeps its digits.</summary>
/// <remarks>Neumaier (1974), Z Angew Math Mech 54:39-51 (from memory), a variant of Kahan's sum that also serves terms larger than the sum.</remarks>
internal struct CompensatedSum
{
    private double _sum;
    private double _lost;

    /// <summary>The sum so far.</summary>
    public readonly double Value => _sum + _lost;

    /// <summary>Adds a term.</summary>
    public void Add(double term)
    {
        var total = _sum + term;
        _lost += Math.Abs(_sum) >= Math.Abs(term) ? _sum - total + term : term - total + _sum;
        _sum = total;
    }

    /// <summary>Adds a product without losing the digits that its rounding would drop.</summary>
    public void AddProduct(double left, double right)
    {
        var product = left * right;
        Add(product);
        _lost += Math.FusedMultiplyAdd(left, right, -product);
    }

    /// <summary>The sum of some numbers.</summary>
    public static double Of(ReadOnlySpan<double> values)
    {
        var sum = new CompensatedSum();
        foreach (var value in values) sum.Add(value);
        return sum.Value;
    }

    /// <summary>The sum of products of two lists of numbers.</summary>
    public static double OfProducts(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
    {
        var sum = new CompensatedSum();
        for (var i = 0; i < left.Length; i++) sum.AddProduct(left[i], right[i]);
        return sum.Value;
    }
}

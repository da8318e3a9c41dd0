namespace SquadAnalytics.Statistics;

/// <summary>The knot of a bent line by exhaustive search: exact, without starting values.</summary>
/// <remarks>
/// Between two neighbouring x the lines left and right of the knot can be fitted apart; held together at k they cost
/// (gap at k)²/(variance of the gap) more. That is 0 where the two lines meet, and where they do not meet between the two x the
/// smallest cost lies at one of them. So the smallest sum of squares is among as many candidates as there are x.
/// Source: Hudson (1966), J Am Stat Assoc 61:1097-1129 (from memory).
/// </remarks>
internal sealed class BrokenLineSearch
{
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _distinct;
    private readonly BrokenLineShape _shape;

    /// <param name="x">Ascending.</param>
    /// <param name="y">In the order of x.</param>
    /// <param name="shape">Which bent line.</param>
    public BrokenLineSearch(double[] x, double[] y, BrokenLineShape shape)
    {
        _x = x;
        _y = y;
        _shape = shape;
        _distinct = [.. x.Distinct()];
    }

    /// <summary>The first x at which a knot is determined: the second of a hinge, whose first part is a line.</summary>
    private int First => _shape == BrokenLineShape.Hinge ? 1 : 0;

    /// <summary>The best knot and its residual sum of squares.</summary>
    public (double Knot, double Rss, bool Interior) Best()
    {
        var (best, bestRss, interior) = (double.NaN, double.PositiveInfinity, false);
        for (var j = First; j < _distinct.Length - 1; j++)
        {
            var at = Rss(_distinct[j]);
            if (at < bestRss) (best, bestRss, interior) = (_distinct[j], at, false);
            if (j == _distinct.Length - 2) break;
            var (left, right) = Parts(_distinct[j]);
            var meeting = left.Meeting(right);
            if (meeting > _distinct[j] && meeting < _distinct[j + 1] && left.Rss + right.Rss < bestRss) (best, bestRss, interior) = (meeting, left.Rss + right.Rss, true);
        }

        return (best, bestRss, interior);
    }

    /// <summary>
    /// The outermost knots whose residual sum of squares is not above a bound; at the edge of the search where even that is not above it.
    /// </summary>
    public (double Lower, double Upper, bool Open) Within(double bound)
    {
        // Between two neighbouring candidates the sum of squares rises or falls, so that a limit lies beyond the outermost one inside.
        var candidates = new List<double>();
        for (var j = First; j < _distinct.Length - 1; j++)
        {
            candidates.Add(_distinct[j]);
            if (j == _distinct.Length - 2) break;
            var (left, right) = Parts(_distinct[j]);
            if (left.Meeting(right) is var meeting && meeting > _distinct[j] && meeting < _distinct[j + 1]) candidates.Add(meeting);
        }

        var first = candidates.FindIndex(knot => Rss(knot) <= bound);
        if (first < 0)
        {
            // A line that fits to within rounding leaves nothing to either side of its knot.
            var nearest = candidates.MinBy(Rss);
            return (nearest, nearest, false);
        }

        var last = candidates.FindLastIndex(knot => Rss(knot) <= bound);
        var lower = first == 0 ? candidates[0] : BracketedRoot.Find(knot => Rss(knot) - bound, candidates[first - 1], candidates[first]);
        var upper = last == candidates.Count - 1 ? candidates[^1] : BracketedRoot.Find(knot => Rss(knot) - bound, candidates[last], candidates[last + 1]);
        return (lower, upper, first == 0 || last == candidates.Count - 1);
    }

    /// <summary>Residual sum of squares of the bent line with its knot at k.</summary>
    public double Rss(double knot)
    {
        var (left, right) = Parts(knot);
        var gap = right.At(knot) - left.At(knot);
        var variance = left.VarianceAt(knot) + right.VarianceAt(knot);
        return left.Rss + right.Rss + gap * gap / variance;
    }

    private (Part Left, Part Right) Parts(double knot)
    {
        var split = 0;
        while (split < _x.Length && _x[split] <= knot) split++;
        return (Part.Of(_x.AsSpan(0, split), _y.AsSpan(0, split), _shape == BrokenLineShape.Hinge), Part.Of(_x.AsSpan(split), _y.AsSpan(split), sloped: true));
    }

    /// <summary>A least-squares line (or level) through one part.</summary>
    private readonly record struct Part(int Count, double MeanX, double MeanY, double Slope, double Squares, double Rss)
    {
        public static Part Of(ReadOnlySpan<double> x, ReadOnlySpan<double> y, bool sloped)
        {
            double meanX = 0, meanY = 0;
            for (var i = 0; i < x.Length; i++)
            {
                meanX += x[i] / x.Length;
                meanY += y[i] / x.Length;
            }

            double squares = 0, products = 0;
            for (var i = 0; i < x.Length; i++)
            {
                squares += (x[i] - meanX) * (x[i] - meanX);
                products += (x[i] - meanX) * (y[i] - meanY);
            }

            var slope = sloped && squares > 0 ? products / squares : 0;
            var rss = 0.0;
            for (var i = 0; i < x.Length; i++)
            {
                var residual = y[i] - meanY - slope * (x[i] - meanX);
                rss += residual * residual;
            }

            return new Part(x.Length, meanX, meanY, slope, sloped ? squares : double.PositiveInfinity, rss);
        }

        public double At(double x) => MeanY + Slope * (x - MeanX);

        /// <summary>Variance of the height at x, over σ²; with a single x a slope is free, and so is the height anywhere else.</summary>
        public double VarianceAt(double x) =>
            1.0 / Count + (Squares > 0 ? (x - MeanX) * (x - MeanX) / Squares : x == MeanX ? 0 : double.PositiveInfinity);

        /// <summary>Where two lines meet; not finite where they are parallel.</summary>
        public double Meeting(Part other) => MeanX + (other.At(MeanX) - MeanY) / (Slope - other.Slope);
    }
}

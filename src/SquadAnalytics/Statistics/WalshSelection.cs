namespace SquadAnalytics.Statistics;

/// <summary>Order statistics of the Walsh averages of many numbers without forming them all.</summary>
internal static class WalshSelection
{
    /// <summary>The k-th lowest of the averages (d_i + d_j)/2, i &lt;= j.</summary>
    /// <remarks>Bisection over the doubles in their order: the smallest that k averages do not exceed. Each step counts averages with two pointers, so that time grows linearly, 64 steps at most.</remarks>
    /// <param name="sorted">The numbers in rising order.</param>
    /// <param name="rank">k, from 1.</param>
    public static double AtRank(double[] sorted, long rank)
    {
        var (low, high) = (Place(sorted[0]), Place(sorted[^1]));
        while (low < high)
        {
            var middle = low + (high - low) / 2;
            if (CountUpTo(sorted, Number(middle)) >= rank) high = middle;
            else low = middle + 1;
        }

        return Number(low);
    }

    private static long CountUpTo(double[] sorted, double value)
    {
        long count = 0;
        var last = sorted.Length - 1;
        for (var i = 0; i < sorted.Length; i++)
        {
            while (last >= i && sorted[i] / 2 + sorted[last] / 2 > value) last--;
            if (last < i) break;
            count += last - i + 1;
        }

        return count;
    }

    // Doubles as whole numbers in the same order; half the range at most is used, because the difference of two may not overflow.
    private static Int128 Place(double number)
    {
        var bits = BitConverter.DoubleToInt64Bits(number);
        return bits >= 0 ? bits : long.MinValue - (Int128)bits;
    }

    private static double Number(Int128 place) => BitConverter.Int64BitsToDouble(place >= 0 ? (long)place : (long)(long.MinValue - place));
}

namespace SquadAnalytics.Reliability;

/// <summary>Athletes skip tests when tired, hurt or making weight, so that the tests which exist flatter. How much would it take to undo a result?</summary>
public static class MissingTests
{
    /// <summary>The tipping point: how much slower the missed tests would have to have been to erase a block difference.</summary>
    /// <remarks>Pattern mixture: missed tests of one block δ slower shift its mean by f δ, f the missing share; δ* = |estimate| / f. Assumes that only that block has missed tests. Source: Little 1993, J Am Stat Assoc 88:125-134, for pattern mixtures; Yan, Lee and Li 2009, J Biopharm Stat 19:1085-1098, for the tipping point (both from memory).</remarks>
    /// <param name="difference">The difference of block means, in seconds.</param>
    /// <param name="missingShare">The share of tests missed in the block, f; above 0 and at most 100 %.</param>
    /// <exception cref="ArgumentException">The difference is not in seconds, or the share is not above 0 and at most 100 %.</exception>
    public static TippingPoint Tipping(Estimate difference, Percent missingShare)
    {
        ArgumentNullException.ThrowIfNull(difference);
        if (difference.Unit != Unit.Seconds) throw new ArgumentException($"The difference must be in seconds, not in {difference.Unit.Symbol()}.", nameof(difference));
        if (missingShare.Value is <= 0 or > 100) throw new ArgumentOutOfRangeException(nameof(missingShare), missingShare.Value, "The missing share is above 0 and at most 100 %.");
        var share = missingShare.Value / 100;
        var nearer = difference.Interval is { } interval && !interval.Contains(0) ? Math.Min(Math.Abs(interval.Lower), Math.Abs(interval.Upper)) : 0;
        Estimate In(double seconds, string method) => new(seconds, Unit.Seconds, difference.Observations, method);
        return new TippingPoint(In(Math.Abs(difference.Value) / share, "|difference| / missing share"), In(nearer / share, "nearer limit / missing share; 0 where the interval already holds 0"));
    }
}

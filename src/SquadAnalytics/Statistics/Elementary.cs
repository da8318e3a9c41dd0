namespace SquadAnalytics.Statistics;

/// <summary>Elementary functions that keep their relative accuracy where the obvious expression cancels.</summary>
/// <remarks>
/// <c>double.ExpM1</c> and <c>double.LogP1</c> are plain <c>exp(x) - 1</c> and <c>log(1 + x)</c> in .NET, so small arguments lose
/// digits there. The two corrections are Kahan's, as in Higham (2002), Accuracy and stability of numerical algorithms (from memory).
/// </remarks>
internal static class Elementary
{
    /// <summary>ln(1 + x).</summary>
    public static double LogOnePlus(double x)
    {
        var sum = 1 + x;
        return sum == 1 || double.IsInfinity(sum) ? x : Math.Log(sum) * (x / (sum - 1));
    }

    /// <summary>exp(x) - 1.</summary>
    public static double ExpMinusOne(double x)
    {
        var power = Math.Exp(x);
        if (power == 1) return x;
        var difference = power - 1;
        return difference == -1 || double.IsInfinity(power) ? difference : difference * (x / Math.Log(power));
    }

    /// <summary>ln(1 - exp(x)) for x below 0: the log of the other tail.</summary>
    public static double LogOneMinusExp(double x) => x > -0.6931471805599453 ? Math.Log(-ExpMinusOne(x)) : LogOnePlus(-Math.Exp(x));
}

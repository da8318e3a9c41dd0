using System.Globalization;

namespace SquadAnalytics.Reporting.Published;

/// <summary>A number found here beside the printed one.</summary>
/// <param name="Published">The printed number.</param>
/// <param name="Here">The number found here.</param>
public sealed record PublishedCheck(PublishedNumber Published, double Here)
{
    /// <summary>Whether both are the same number to the digits asked for: they differ by at most half a unit of the last one.</summary>
    public bool Agrees => Math.Abs(Here - Printed) <= 0.5 * Unit(Published.Digits) * (1 + 1e-9);

    /// <summary>The number found here with as many digits as were printed.</summary>
    public string Shown
    {
        get
        {
            var point = Published.Text.IndexOf('.', StringComparison.Ordinal);
            return NumberFormat.Fixed(Here, point < 0 ? 0 : Published.Text.Length - point - 1);
        }
    }

    private double Printed => double.Parse(Published.Text, CultureInfo.InvariantCulture);

    /// <summary>Both numbers and the verdict.</summary>
    public override string ToString() => $"{Published.Quantity}: {Shown} here, {Published.Text} published: {(Agrees ? "agree" : "differ")}";

    private double Unit(int digits) => Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(Printed))) - digits + 1);
}

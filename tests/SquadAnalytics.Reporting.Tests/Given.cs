using System.Globalization;

namespace SquadAnalytics.Reporting.Tests;

/// <summary>What many tests start from.</summary>
internal static class Given
{
    /// <summary>Cultures in which careless formatting breaks: comma decimals, the dotless i, right-to-left digits.</summary>
    public static readonly string[] Cultures = ["en-US", "de-DE", "tr-TR", "ar-SA", "fa-IR"];

    public static Estimate Seconds(double value, double lower, double upper, int observations = 6, double? df = 5) =>
        new(value, Unit.Seconds, observations, "t over sessions") { Interval = new Interval(lower, upper, default), DegreesOfFreedom = df };

    /// <summary>Sets the culture of this thread until it is disposed.</summary>
    public static IDisposable Culture(string name)
    {
        var before = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(name);
        return new Undo(() => (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = before);
    }

    private sealed class Undo(Action action) : IDisposable
    {
        public void Dispose() => action();
    }
}

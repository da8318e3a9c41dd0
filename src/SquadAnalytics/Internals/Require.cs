using System.Runtime.CompilerServices;

namespace SquadAnalytics.Internals;

/// <summary>Argument checks whose messages name the parameter, the value found and the values allowed.</summary>
internal static class Require
{
    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} must be a finite number, but was {Text(value)}.");

    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value > 0
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} must be a finite number above 0, but was {Text(value)}.");

    public static double Probability(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value > 0 && value < 1
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} must lie strictly between 0 and 1, but was {Text(value)}.");

    public static int AtLeast(int minimum, int value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= minimum
            ? value
            : throw new ArgumentOutOfRangeException(name, value, $"{name} must be {minimum} or more, but was {value}.");

    public static string Text(string value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        !string.IsNullOrWhiteSpace(value)
            ? value
            : throw new ArgumentException($"{name} must not be empty.", name);

    private static string Text(double value) => value.ToString("R", System.Globalization.CultureInfo.InvariantCulture);
}

namespace SquadAnalytics.Load;

/// <summary>One circumstance of a test, beside what is usual for the same athlete.</summary>
/// <param name="Name">What was written down, for example <c>sleep the night before</c>.</param>
/// <param name="Unit">Its unit, for example <c>h</c>.</param>
/// <param name="OnTheDay">The value of this test, or null where nothing was written down.</param>
/// <param name="Usual">Median of the athlete's other tests, or null where none has a value.</param>
/// <param name="OtherTests">How many other tests have a value.</param>
public sealed record ContextMeasure(string Name, string Unit, double? OnTheDay, double? Usual, int OtherTests)
{
    /// <summary>This test minus the usual, or null where either is unknown.</summary>
    public double? Difference => OnTheDay - Usual;
}

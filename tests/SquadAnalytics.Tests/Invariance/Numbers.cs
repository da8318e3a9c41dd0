using System.Collections;
using System.Reflection;

namespace SquadAnalytics.Tests.Invariance;

/// <summary>Every number in a result with its unit, by where it stands: rows of athletes by the athlete, other rows by their place.</summary>
internal static class Numbers
{
    /// <summary>What is passed over: which sessions were used, settings, what lies behind a mixed model, and intervals that stand alone, without a unit.</summary>
    private static readonly HashSet<string> PassedOver = ["Selection", "Notes", "Model", "Fit", "Options", "ConfidenceLevel", "Observations", "EqualityContract"];

    /// <summary>How plain numbers are named that are in seconds.</summary>
    private const string InSeconds = "Seconds";

    /// <summary>The numbers of a result; a refusal is its reason, as text.</summary>
    public static Dictionary<string, (object Value, Unit Unit)> Of(object result)
    {
        var found = new Dictionary<string, (object, Unit)>();
        Collect("", result, found);
        return found;
    }

    /// <summary>Asserts that numbers are the same, or differ by their unit's factor. Iterative fits agree to 1e-5 of the number, or of 1 s or 1 %, whichever is larger.</summary>
    public static void AssertSame(Dictionary<string, (object Value, Unit Unit)> expected, Dictionary<string, (object Value, Unit Unit)> got, Func<Unit, double>? factor = null)
    {
        Assert.NotEmpty(expected);
        Assert.Equal(expected.Keys.Order(StringComparer.Ordinal), got.Keys.Order(StringComparer.Ordinal));
        foreach (var (place, (value, unit)) in expected)
        {
            if (value is double number) ReferenceData.AssertClose((factor?.Invoke(unit) ?? 1) * number, (double)got[place].Value, 1e-5, 1e-5, place);
            else Assert.True(value.Equals(got[place].Value), $"{place}: {value}, then {got[place].Value}");
        }
    }

    private static void Collect(string place, object? item, Dictionary<string, (object, Unit)> found)
    {
        switch (item)
        {
            case null or string or Session or Protocol or Interval or Delegate:
                return;
            case NotEstimable refusal:
                found[place] = (refusal.Reason, Unit.None);
                return;
            case Estimate estimate:
                found[place] = (estimate.Value, estimate.Unit);
                if (estimate.StandardError is { } error) found[place + ".SE"] = (error, estimate.Unit);
                if (estimate.Lower is { } lower) found[place + ".Lower"] = (lower, estimate.Unit);
                if (estimate.Upper is { } upper) found[place + ".Upper"] = (upper, estimate.Unit);
                if (estimate.DegreesOfFreedom is { } df) found[place + ".df"] = (df, Unit.None);
                if (estimate.PValue is { } p) found[place + ".p"] = (p, Unit.None);
                return;
            case Seconds seconds:
                found[place] = (seconds.Value, Unit.Seconds);
                return;
            case Percent percent:
                found[place] = (percent.Value, Unit.Percent);
                return;
            case double or int:
                found[place] = (Convert.ToDouble(item, System.Globalization.CultureInfo.InvariantCulture), place.EndsWith(InSeconds, StringComparison.Ordinal) ? Unit.Seconds : Unit.None);
                return;
            case bool or Enum or DateOnly:
                found[place] = (item, Unit.None);
                return;
            case IEnumerable rows:
                foreach (var (index, row) in rows.Cast<object?>().Index()) Collect($"{place}[{(row is null ? null : AthleteOf(row)) ?? index.ToString(System.Globalization.CultureInfo.InvariantCulture)}]", row, found);
                return;
        }

        var type = item.GetType();
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Answer<>))
        {
            Collect(place, type.GetProperty(nameof(Answer<object>.Refusal))!.GetValue(item) ?? type.GetMethod(nameof(Answer<object>.GetOrThrow))!.Invoke(item, null), found);
            return;
        }

        foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0 && !PassedOver.Contains(property.Name)))
            Collect($"{place}.{property.Name}", property.GetValue(item), found);
    }

    private static string? AthleteOf(object row) => (row.GetType().GetProperty("AthleteId") ?? row.GetType().GetProperty("Athlete"))?.GetValue(row) switch
    {
        string id => id,
        Athlete athlete => athlete.Id,
        _ => null,
    };
}

using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>One numeric column of a model: its name, one value per observation, and the unit of the coefficient that belongs to it.</summary>
public sealed record DesignColumn
{
    /// <summary>Makes a column.</summary>
    /// <param name="name">Name, for example <c>week</c>.</param>
    /// <param name="values">One finite value per observation.</param>
    /// <param name="coefficientUnit">Unit of the coefficient, for example <see cref="Unit.SecondsPerWeek"/>.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A value is not finite.</exception>
    public DesignColumn(string name, IReadOnlyList<double> values, Unit coefficientUnit = Unit.None)
    {
        Name = Require.Text(name);
        ArgumentNullException.ThrowIfNull(values);
        var copy = values.ToArray();
        for (var i = 0; i < copy.Length; i++)
        {
            if (!double.IsFinite(copy[i]))
            {
                throw new ArgumentOutOfRangeException(
                    nameof(values), copy[i], string.Create(CultureInfo.InvariantCulture, $"Column '{name}' must hold finite numbers, but observation {i + 1} is {copy[i]}."));
            }
        }

        Array = copy;
        CoefficientUnit = coefficientUnit;
    }

    /// <summary>Name of the column and of its coefficient.</summary>
    public string Name { get; }

    /// <summary>One value per observation.</summary>
    public IReadOnlyList<double> Values => Array;

    /// <summary>Unit of the coefficient.</summary>
    public Unit CoefficientUnit { get; }

    internal double[] Array { get; }

    /// <summary>The column of ones, named <c>intercept</c>.</summary>
    /// <param name="observations">How many observations; 1 or more.</param>
    /// <param name="coefficientUnit">Unit of the intercept: that of the response.</param>
    public static DesignColumn Intercept(int observations, Unit coefficientUnit = Unit.None)
    {
        var ones = new double[Require.AtLeast(1, observations)];
        System.Array.Fill(ones, 1.0);
        return new DesignColumn("intercept", ones, coefficientUnit);
    }

    /// <summary>
    /// Columns of a factor: one 0/1 column for each level but the first (treatment contrasts), so that each coefficient is that
    /// level minus the first level.
    /// </summary>
    /// <param name="name">Name of the factor; the columns are called <c>name = level</c>.</param>
    /// <param name="labels">The level of each observation.</param>
    /// <param name="levels">The levels in order, the reference first; by default in order of first appearance.</param>
    /// <param name="coefficientUnit">Unit of the coefficients: that of the response.</param>
    /// <exception cref="ArgumentException">A label is not among the levels.</exception>
    public static IReadOnlyList<DesignColumn> Factor(
        string name, IReadOnlyList<string> labels, IReadOnlyList<string>? levels = null, Unit coefficientUnit = Unit.None)
    {
        Require.Text(name);
        ArgumentNullException.ThrowIfNull(labels);
        levels ??= labels.Distinct(StringComparer.Ordinal).ToArray();
        var stranger = labels.FirstOrDefault(label => !levels.Contains(label, StringComparer.Ordinal));
        if (stranger is not null)
            throw new ArgumentException($"'{stranger}' is not among the levels of '{name}': {string.Join(", ", levels)}.", nameof(labels));
        return
        [
            .. levels.Skip(1).Select(level => new DesignColumn(
                $"{name} = {level}", labels.Select(label => string.Equals(label, level, StringComparison.Ordinal) ? 1.0 : 0.0).ToArray(), coefficientUnit)),
        ];
    }

    /// <summary>The product of two columns: their interaction.</summary>
    /// <param name="other">The other column, of the same length.</param>
    /// <param name="coefficientUnit">Unit of the coefficient.</param>
    /// <exception cref="ArgumentException">The columns differ in length.</exception>
    public DesignColumn Times(DesignColumn other, Unit coefficientUnit = Unit.None)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.Array.Length != Array.Length)
            throw new ArgumentException($"'{Name}' has {Array.Length} values, '{other.Name}' has {other.Array.Length}: they must be equally long.", nameof(other));
        return new DesignColumn($"{Name} × {other.Name}", Array.Zip(other.Array, (a, b) => a * b).ToArray(), coefficientUnit);
    }

    /// <summary>Name and length, for example <c>week (180 values)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} ({Array.Length} values)");
}

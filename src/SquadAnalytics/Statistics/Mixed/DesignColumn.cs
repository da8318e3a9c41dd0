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

    private DesignColumn(string name, Unit coefficientUnit, double[] values) => (Name, CoefficientUnit, Array) = (name, coefficientUnit, values);

    /// <summary>Name of the column and of its coefficient.</summary>
    public string Name { get; }

    /// <summary>One value per observation.</summary>
    public IReadOnlyList<double> Values => Array;

    /// <summary>Unit of the coefficient.</summary>
    public Unit CoefficientUnit { get; }

    internal double[] Array { get; }

    /// <summary>The column of ones.</summary>
    /// <param name="observations">How many observations; 1 or more.</param>
    /// <param name="coefficientUnit">Unit of the intercept: that of the response.</param>
    public static DesignColumn Intercept(int observations, Unit coefficientUnit = Unit.None)
    {
        var ones = new double[Require.AtLeast(1, observations)];
        System.Array.Fill(ones, 1.0);
        return new DesignColumn(RegressionDesign.Intercept, coefficientUnit, ones);
    }

    /// <summary>The columns of a design, for example one with factors and interactions.</summary>
    /// <param name="design">The design; its intercept is a column like any other.</param>
    /// <param name="coefficientUnit">Unit of all its coefficients.</param>
    public static IReadOnlyList<DesignColumn> Of(RegressionDesign design, Unit coefficientUnit = Unit.None)
    {
        ArgumentNullException.ThrowIfNull(design);
        return [.. design.ColumnNames.Zip(design.Columns(), (name, values) => new DesignColumn(name, values, coefficientUnit))];
    }

    /// <summary>Name and length, for example <c>week (180 values)</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} ({Array.Length} values)");
}

using System.Globalization;
using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>The explanatory side of a linear model: named columns, grouped into terms, in the order in which an analysis of variance adds them.</summary>
/// <remarks>Immutable: every <c>Add</c> gives a new design. Example: <c>RegressionDesign.WithIntercept(n).Add("weeks", weeks).AddFactor("athlete", names)</c>.
/// A fit's time grows linearly with the observations and with the square of the columns: at most 300.</remarks>
public sealed class RegressionDesign
{
    /// <summary>Name of the intercept's column.</summary>
    public const string Intercept = "intercept";

    /// <summary>How many columns a design takes: the time of a fit grows with their square.</summary>
    internal const int MostColumns = 300;

    private readonly DesignTerm[] _terms;

    private RegressionDesign(int observations, DesignTerm[] terms)
    {
        Observations = observations;
        _terms = terms;
        ColumnNames = [.. terms.SelectMany(term => term.ColumnNames)];
    }

    /// <summary>How many observations (rows) the design has.</summary>
    public int Observations { get; }

    /// <summary>The columns by name, in order.</summary>
    public IReadOnlyList<string> ColumnNames { get; }

    /// <summary>Whether the design has an intercept.</summary>
    public bool HasIntercept => _terms.Length > 0 && _terms[0].Name == Intercept;

    internal IReadOnlyList<DesignTerm> Terms => _terms;

    /// <summary>A design that has only an intercept so far.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no observation.</exception>
    public static RegressionDesign WithIntercept(int observations)
    {
        var ones = new double[Require.AtLeast(1, observations)];
        Array.Fill(ones, 1);
        return new RegressionDesign(observations, [new DesignTerm(Intercept, [Intercept], [ones])]);
    }

    /// <summary>A design that has no column yet and no intercept.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no observation.</exception>
    public static RegressionDesign WithoutIntercept(int observations) => new(Require.AtLeast(1, observations), []);

    /// <summary>The design with one more numeric column.</summary>
    /// <exception cref="ArgumentException">The name is taken, the column has another length, a number is not finite, or there would be more than 300 columns.</exception>
    public RegressionDesign Add(string name, IReadOnlyList<double> values) => With(new DesignTerm(Require.Text(name), [name], [Numbers.Of(values)]));

    /// <summary>The design with one 0/1 column for each level of a factor except its reference level (treatment contrasts).</summary>
    /// <param name="name">Name of the factor; its columns are called <c>name: level</c>.</param>
    /// <param name="levels">The level of every observation.</param>
    /// <param name="reference">The level that the others are compared with; by default the first in ordinal order.</param>
    /// <exception cref="ArgumentException">The name is taken, the list has another length, the reference does not occur, or there would be more than 300 columns.</exception>
    public RegressionDesign AddFactor(string name, IReadOnlyList<string> levels, string? reference = null)
    {
        Require.Text(name);
        ArgumentNullException.ThrowIfNull(levels);
        var distinct = levels.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToArray();
        if (reference is not null && !distinct.Contains(reference, StringComparer.Ordinal))
            throw new ArgumentException($"The reference level {reference} does not occur among the levels of {name}.", nameof(reference));
        var compared = distinct.Where(level => level != (reference ?? distinct[0])).ToArray();
        WithRoom(compared.Length);
        double[] Indicator(string level) => [.. levels.Select(found => found == level ? 1.0 : 0.0)];
        return With(new DesignTerm(name, [.. compared.Select(level => $"{name}: {level}")], [.. compared.Select(Indicator)]), levels.Count);
    }

    /// <summary>The design with the products of the columns of two terms that it already has: their interaction.</summary>
    /// <exception cref="ArgumentException">A term does not exist, or there would be more than 300 columns.</exception>
    public RegressionDesign AddInteraction(string first, string second)
    {
        var (one, other) = (Term(first), Term(second));
        WithRoom(one.Columns.Length * other.Columns.Length);
        var names = from left in one.ColumnNames from right in other.ColumnNames select $"{left} x {right}";
        var columns = from left in one.Columns from right in other.Columns select left.Zip(right, (a, b) => a * b).ToArray();
        return With(new DesignTerm($"{first} x {second}", [.. names], [.. columns]));
    }

    /// <summary>The columns as arrays, in order.</summary>
    internal double[][] Columns() => [.. _terms.SelectMany(term => term.Columns)];

    private RegressionDesign With(DesignTerm term, int? length = null)
    {
        var rows = length ?? term.Columns.FirstOrDefault()?.Length ?? Observations;
        if (rows != Observations)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{term.Name} must have {Observations} rows, but has {rows}."), nameof(term));
        WithRoom(term.Columns.Length);
        if (_terms.Any(existing => existing.Name == term.Name)) throw new ArgumentException($"The design already has a term called {term.Name}.", nameof(term));
        return new RegressionDesign(Observations, [.. _terms, term]);
    }

    private void WithRoom(int more)
    {
        if (ColumnNames.Count + more > MostColumns)
            throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"A design takes up to {MostColumns} columns, not {ColumnNames.Count + more}."), nameof(more));
    }

    private DesignTerm Term(string name) =>
        _terms.FirstOrDefault(term => term.Name == name) ?? throw new ArgumentException($"The design has no term called {name}.", nameof(name));
}

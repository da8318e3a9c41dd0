using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>
/// Random effects of one grouping factor: each group (an athlete, a session) has its own coefficient for each column, drawn from a
/// normal distribution with mean 0.
/// </summary>
public sealed record RandomTerm
{
    /// <summary>Makes a term.</summary>
    /// <param name="name">Name of the grouping factor, for example <c>athlete</c>.</param>
    /// <param name="groups">The group of each observation.</param>
    /// <param name="columns">Columns that have a random coefficient; usually the intercept first.</param>
    /// <param name="correlated">Whether the coefficients of one group may be correlated.</param>
    /// <exception cref="ArgumentException">No column, or lengths that differ.</exception>
    public RandomTerm(string name, IReadOnlyList<string> groups, IReadOnlyList<DesignColumn> columns, bool correlated = true)
    {
        Name = Require.Text(name);
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentNullException.ThrowIfNull(columns);
        if (columns.Count == 0) throw new ArgumentException($"Random term '{name}' needs at least one column.", nameof(columns));
        foreach (var column in columns)
        {
            if (column.Array.Length != groups.Count)
                throw new ArgumentException($"Random term '{name}': column '{column.Name}' has {column.Array.Length} values for {groups.Count} group labels.", nameof(columns));
        }

        Groups = groups;
        Columns = [.. columns];
        Correlated = correlated && columns.Count > 1;
    }

    /// <summary>Name of the grouping factor.</summary>
    public string Name { get; }

    /// <summary>The group of each observation.</summary>
    public IReadOnlyList<string> Groups { get; }

    /// <summary>Columns with a random coefficient.</summary>
    public IReadOnlyList<DesignColumn> Columns { get; }

    /// <summary>Whether the coefficients of one group may be correlated; false with one column.</summary>
    public bool Correlated { get; }

    /// <summary>A random intercept: each group has its own level.</summary>
    /// <param name="name">Name of the grouping factor.</param>
    /// <param name="groups">The group of each observation.</param>
    public static RandomTerm Intercept(string name, IReadOnlyList<string> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        return new RandomTerm(name, groups, [DesignColumn.Intercept(groups.Count)]);
    }

    /// <summary>A random intercept and slope: each group has its own level and its own coefficient of a column.</summary>
    /// <param name="name">Name of the grouping factor.</param>
    /// <param name="groups">The group of each observation.</param>
    /// <param name="slope">The column, best centred near its middle, which keeps intercept and slope apart.</param>
    /// <param name="correlated">Whether level and slope may be correlated.</param>
    public static RandomTerm InterceptAndSlope(string name, IReadOnlyList<string> groups, DesignColumn slope, bool correlated = true)
    {
        ArgumentNullException.ThrowIfNull(groups);
        return new RandomTerm(name, groups, [DesignColumn.Intercept(groups.Count), slope], correlated);
    }

    /// <summary>A random intercept for each combination of two factors, for example session within athlete; labels read <c>outer:inner</c>.</summary>
    /// <param name="name">Name of the combined factor.</param>
    /// <param name="outer">The outer group of each observation.</param>
    /// <param name="inner">The inner group of each observation; equal labels in different outer groups are different groups.</param>
    /// <exception cref="ArgumentException">The lists differ in length.</exception>
    public static RandomTerm Nested(string name, IReadOnlyList<string> outer, IReadOnlyList<string> inner)
    {
        ArgumentNullException.ThrowIfNull(outer);
        ArgumentNullException.ThrowIfNull(inner);
        if (outer.Count != inner.Count)
            throw new ArgumentException($"There are {outer.Count} outer and {inner.Count} inner labels: they must be equally many.", nameof(inner));
        return Intercept(name, outer.Zip(inner, (a, b) => $"{a}:{b}").ToArray());
    }

    /// <summary>The term, for example <c>intercept + week by athlete</c>.</summary>
    public override string ToString() => $"{string.Join(Correlated ? " + " : " | ", Columns.Select(column => column.Name))} by {Name}";

    internal RandomTerm Uncorrelated() => new(Name, Groups, Columns, correlated: false);

    internal RandomTerm WithColumns(IReadOnlyList<DesignColumn> columns) => new(Name, Groups, columns, Correlated);
}

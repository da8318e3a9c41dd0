using System.Globalization;

namespace SquadAnalytics.Statistics;

/// <summary>The description of a linear mixed model: a response, the columns of the fixed effects, and the random terms.</summary>
public sealed record MixedDesign
{
    /// <summary>Describes a model.</summary>
    /// <param name="response">The response and its name; the column's unit is the unit of the response and of all standard deviations of random intercepts.</param>
    /// <param name="fixedEffects">Columns with one coefficient for everyone, the intercept included where one is wanted.</param>
    /// <param name="randomTerms">Random terms; several may be nested or crossed.</param>
    /// <exception cref="ArgumentException">An empty list, lengths that differ, or two fixed effects or terms of one name.</exception>
    public MixedDesign(DesignColumn response, IReadOnlyList<DesignColumn> fixedEffects, IReadOnlyList<RandomTerm> randomTerms)
    {
        ArgumentNullException.ThrowIfNull(response);
        ArgumentNullException.ThrowIfNull(fixedEffects);
        ArgumentNullException.ThrowIfNull(randomTerms);
        if (fixedEffects.Count == 0) throw new ArgumentException("A model needs at least one fixed effect, usually the intercept.", nameof(fixedEffects));
        if (randomTerms.Count == 0) throw new ArgumentException("A mixed model needs at least one random term.", nameof(randomTerms));
        foreach (var column in fixedEffects)
        {
            if (column.Array.Length != response.Array.Length)
                throw new ArgumentException($"Fixed effect '{column.Name}' has {column.Array.Length} values for {response.Array.Length} responses.", nameof(fixedEffects));
        }

        foreach (var term in randomTerms)
        {
            if (term.Groups.Count != response.Array.Length)
                throw new ArgumentException($"Random term '{term.Name}' has {term.Groups.Count} labels for {response.Array.Length} responses.", nameof(randomTerms));
        }

        RequireDistinct(fixedEffects.Select(column => column.Name), nameof(fixedEffects));
        RequireDistinct(randomTerms.Select(term => term.Name), nameof(randomTerms));
        Response = response;
        FixedEffects = [.. fixedEffects];
        RandomTerms = [.. randomTerms];
    }

    /// <summary>The response.</summary>
    public DesignColumn Response { get; }

    /// <summary>Columns of the fixed effects.</summary>
    public IReadOnlyList<DesignColumn> FixedEffects { get; }

    /// <summary>Random terms.</summary>
    public IReadOnlyList<RandomTerm> RandomTerms { get; }

    /// <summary>How many observations there are.</summary>
    public int Observations => Response.Array.Length;

    /// <summary>The model in one line, for example <c>seconds ~ intercept + week + (intercept + week by athlete)</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Response.Name} ~ {string.Join(" + ", FixedEffects.Select(column => column.Name))} + {string.Join(" + ", RandomTerms.Select(term => $"({term})"))}");

    internal MixedDesign With(IReadOnlyList<RandomTerm> randomTerms) => new(Response, FixedEffects, randomTerms);

    private static void RequireDistinct(IEnumerable<string> names, string parameter)
    {
        var twice = names.GroupBy(name => name, StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1);
        if (twice is not null) throw new ArgumentException($"'{twice.Key}' is named twice.", parameter);
    }
}

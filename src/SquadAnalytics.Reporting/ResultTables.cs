using System.Collections.Concurrent;
using System.Globalization;
using System.Reflection;

namespace SquadAnalytics.Reporting;

/// <summary>
/// Any result as a table, for a cell that ends in one: in the form that <see cref="Tables"/> has for it or, where it has none, one row for
/// each of its estimates with interval, number of observations and method.
/// </summary>
public static class ResultTables
{
    private static readonly Lazy<IReadOnlyList<MethodInfo>> Forms = new(static () => [.. typeof(Tables).GetMethods(BindingFlags.Public | BindingFlags.Static).Where(IsForm)]);
    private static readonly ConcurrentDictionary<Type, IReadOnlyList<PropertyInfo>> Estimates = new();

    /// <summary>Whether results of a type become a table.</summary>
    /// <param name="result">The type.</param>
    public static bool Knows(Type result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return FormOf(result) is not null || EstimatesOf(result).Count > 0;
    }

    /// <summary>The table of a result.</summary>
    /// <param name="result">A result of a type that is known.</param>
    /// <exception cref="ArgumentException">Its type is not known.</exception>
    public static Table Of(object result)
    {
        ArgumentNullException.ThrowIfNull(result);
        if (FormOf(result.GetType()) is { } form) return (Table)form.Invoke(null, form.GetParameters().Length == 1 ? [result] : [result, FormatOf(result)])!;
        var properties = EstimatesOf(result.GetType());
        if (properties.Count == 0) throw new ArgumentException($"{result.GetType().Name} has no estimate to show.", nameof(result));
        var format = FormatOf(result);
        var answers = properties.Select(property => (Words(property.Name), Answer: AnswerOf(property.GetValue(result)))).Where(static row => row.Answer is not null).ToList();
        return new Table(
            Words(result.GetType().Name is var name && name.EndsWith("Result", StringComparison.Ordinal) ? name[..^"Result".Length] : name),
            [new("measure"), TableColumn.Figures("estimate"), TableColumn.Figures("interval"), TableColumn.Figures("observations"), new("method")],
            [.. answers.Select(row => Row(row.Item1, row.Answer!, format))])
        {
            Notes = [.. answers.SelectMany(static row => row.Answer!.Match(static estimate => estimate.Notes, static refusal => [refusal.ToString()])).Distinct(StringComparer.Ordinal)],
        };
    }

    private static IReadOnlyList<TableCell> Row(string measure, Answer<Estimate> answer, NumberFormat format) => answer.Match<IReadOnlyList<TableCell>>(
        estimate =>
        [
            measure, TableCell.Shown(format.Value(estimate), estimate.Value), estimate.Interval is null ? TableCell.Nothing : TableCell.Words(format.Interval(estimate)!),
            TableCell.Count(estimate.Observations), estimate.Method,
        ],
        refusal => [measure, TableCell.Refused(refusal), TableCell.Nothing, TableCell.Nothing, TableCell.Nothing]);

    private static MethodInfo? FormOf(Type result) => Forms.Value.FirstOrDefault(form => form.GetParameters()[0].ParameterType == result);

    private static IReadOnlyList<PropertyInfo> EstimatesOf(Type result) => Estimates.GetOrAdd(result, static type => type == typeof(Estimate) ? [] :
    [
        .. type.GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(static property => property.GetIndexParameters().Length == 0 && (property.PropertyType == typeof(Estimate) || property.PropertyType == typeof(Answer<Estimate>))),
    ]);

    private static bool IsForm(MethodInfo method)
    {
        var parameters = method.GetParameters();
        return method.ReturnType == typeof(Table) && parameters.Length is 1 or 2 && parameters[0].ParameterType.Name.EndsWith("Result", StringComparison.Ordinal)
            && (parameters.Length == 1 || parameters[1].ParameterType == typeof(NumberFormat));
    }

    private static Answer<Estimate>? AnswerOf(object? value) => value switch
    {
        Estimate estimate => estimate,
        Answer<Estimate> answer => answer,
        _ => null,
    };

    /// <summary>As many decimals as the times of the sessions have that the result rests on; one where it does not say which.</summary>
    private static NumberFormat FormatOf(object result)
    {
        var type = result.GetType();
        if (type.GetProperty("Session")?.GetValue(result) is Session session) return NumberFormat.For([session]);
        var selection = type.GetProperty("Selection")?.GetValue(result) ?? result;
        return selection.GetType().GetProperty("Sessions")?.GetValue(selection) is IEnumerable<Session> sessions ? NumberFormat.For(sessions) : new NumberFormat();
    }

    /// <summary>A name as words: <c>FirstToLast</c> is <c>First to last</c>.</summary>
    private static string Words(string name) =>
        string.Concat(name.Select(static (letter, at) => at > 0 && char.IsUpper(letter) ? " " + char.ToLower(letter, CultureInfo.InvariantCulture) : letter.ToString()));
}

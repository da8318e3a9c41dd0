namespace SquadAnalytics.Notebooks.Scripting;

/// <summary>What the C# cells have named, for the kernels beside them.</summary>
internal interface ICellValues
{
    /// <summary>All named values.</summary>
    public IReadOnlyList<KeyValuePair<string, object?>> All();

    /// <summary>The value of a name; false where there is none or it is of another type.</summary>
    public bool TryGet<T>(string name, out T? value);

    /// <summary>Names a value, as a C# cell would that declares it.</summary>
    public Task SetAsync(string name, object value, Type type);
}

using System.Text.Json;

namespace SquadAnalytics.Tests;

/// <summary>A part of the reference pack. It reads like JSON, and remembers which values were read.</summary>
internal readonly struct ReferenceValue(JsonElement json, string path)
{
    /// <summary>What it is; that a value is absent counts as read.</summary>
    public JsonValueKind ValueKind => json.ValueKind == JsonValueKind.Null ? Read().ValueKind : json.ValueKind;

    public ReferenceValue this[int index] => new(json[index], $"{path}/{index}");

    public ReferenceValue GetProperty(string name) => new(json.GetProperty(name), $"{path}/{name}");

    public bool TryGetProperty(string name, out ReferenceValue value)
    {
        var isThere = json.TryGetProperty(name, out var found);
        value = new ReferenceValue(found, $"{path}/{name}");
        return isThere;
    }

    public IReadOnlyList<ReferenceValue> EnumerateArray() => [.. Enumerable.Range(0, json.GetArrayLength()).Select(At)];

    public IReadOnlyList<(string Name, ReferenceValue Value)> EnumerateObject() => [.. Properties(json, path)];

    public int GetArrayLength() => json.GetArrayLength();

    public double GetDouble() => Read().GetDouble();

    public int GetInt32() => Read().GetInt32();

    public string? GetString() => Read().GetString();

    public bool GetBoolean() => Read().GetBoolean();

    /// <summary>A number of an object.</summary>
    public double Number(string name) => GetProperty(name).GetDouble();

    /// <summary>A list of numbers of an object.</summary>
    public double[] Numbers(string name) => [.. GetProperty(name).EnumerateArray().Select(number => number.GetDouble())];

    /// <summary>The paths of all single values below.</summary>
    public IEnumerable<string> Leaves() => json.ValueKind switch
    {
        JsonValueKind.Object => EnumerateObject().SelectMany(property => property.Value.Leaves()),
        JsonValueKind.Array => EnumerateArray().SelectMany(entry => entry.Leaves()),
        _ => [path],
    };

    public override string ToString() => json.ToString();

    private static IEnumerable<(string Name, ReferenceValue Value)> Properties(JsonElement json, string path) =>
        json.EnumerateObject().Select(property => (property.Name, new ReferenceValue(property.Value, $"{path}/{property.Name}")));

    private ReferenceValue At(int index) => this[index];

    private JsonElement Read()
    {
        ReferenceReadings.Add(path);
        return json;
    }
}

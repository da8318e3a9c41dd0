using System.Text.Json.Serialization;

namespace SquadAnalytics.Notebooks.Kernels;

/// <summary>Something that a cell put out: text it wrote, or a value it displayed.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(WrittenText), "text")]
[JsonDerivedType(typeof(ShownValue), "value")]
public abstract record CellOutput
{
    /// <summary>The size that counts towards the output limit, in characters.</summary>
    public abstract long Size();
}

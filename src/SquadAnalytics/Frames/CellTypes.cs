using SquadAnalytics.Storage.Tables;

namespace SquadAnalytics.Frames;

/// <summary>Which types of values a frame can hold, and how they are put into its cells.</summary>
internal static class CellTypes
{
    /// <summary>The type of cell for values of a type, or null where a frame does not hold such values.</summary>
    public static FrameType? Of(Type type)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        if (plain == typeof(string) || plain == typeof(char) || plain == typeof(Guid) || plain.IsEnum) return FrameType.Text;
        if (plain == typeof(bool)) return FrameType.Flag;
        if (plain == typeof(DateOnly)) return FrameType.Date;
        if (plain == typeof(DateTime) || plain == typeof(DateTimeOffset)) return FrameType.Moment;
        if (plain == typeof(double) || plain == typeof(float) || plain == typeof(decimal) || plain == typeof(Seconds) || plain == typeof(Percent)) return FrameType.Number;
        return plain.IsPrimitive && plain != typeof(nint) && plain != typeof(nuint) ? FrameType.WholeNumber : null;
    }

    /// <summary>The ending that a column of such values gets, so that its name tells the unit.</summary>
    public static string Ending(Type type)
    {
        var plain = Nullable.GetUnderlyingType(type) ?? type;
        return plain == typeof(Seconds) ? "_s" : plain == typeof(Percent) ? "_percent" : "";
    }

    /// <summary>A value as it stands in a cell.</summary>
    public static object? Plain(object? value) => value switch
    {
        Seconds seconds => seconds.Value,
        Percent percent => percent.Value,
        DateTimeOffset moment => moment.UtcDateTime,
        Enum word => Word.Of(word),
        _ => value,
    };
}

namespace SquadAnalytics.Storage.Tables;

/// <summary>One column of a table: its name (unit included), type and what may stand in it.</summary>
internal sealed record Column(string Name, ColumnType Type, string Description)
{
    /// <summary>Unit symbol, also part of the name.</summary>
    public string? Unit { get; init; }

    public bool IsRequired { get; init; }

    /// <summary>The words allowed, or null for any text.</summary>
    public IReadOnlyList<string>? Choices { get; init; }

    /// <summary>The least value allowed, or null.</summary>
    public double? Minimum { get; init; }

    /// <summary>What a cell of this column accepts, for error messages.</summary>
    public string Accepts
    {
        get
        {
            var minimum = Minimum is { } least ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $" of {least} or more") : "";
            var unit = Unit is null ? "" : $", in {Unit}";
            var kind = Type switch
            {
                ColumnType.Date => "a date written yyyy-mm-dd",
                ColumnType.DateTime => "a time written yyyy-mm-ddThh:mm:ssZ",
                ColumnType.Number => $"a number{minimum} with a decimal point{unit}",
                ColumnType.Integer => $"a whole number{minimum}{unit}",
                ColumnType.Boolean => "true or false",
                _ => Choices is null ? "text" : "one of " + string.Join(", ", Choices),
            };
            return IsRequired ? kind : kind + ", or nothing";
        }
    }

    public static Column Text(string name, string description) => new(name, ColumnType.String, description);

    public static Column Date(string name, string description) => new(name, ColumnType.Date, description);

    public static Column Number(string name, string unit, string description, double? minimum = null) =>
        new(name, ColumnType.Number, description) { Unit = unit, Minimum = minimum };

    public static Column Integer(string name, string description, double minimum) => new(name, ColumnType.Integer, description) { Minimum = minimum };

    public static Column Flag(string name, string description) => new(name, ColumnType.Boolean, description);

    public static Column Choice<T>(string name, string description)
        where T : struct, Enum => new(name, ColumnType.String, description) { Choices = [.. Enum.GetValues<T>().Select(Word.Of)], IsRequired = true };

    public Column Required() => this with { IsRequired = true };
}

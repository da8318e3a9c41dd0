namespace SquadAnalytics.Notebooks.Parameters;

/// <summary>What a parameter's value is.</summary>
public enum ParameterType
{
    /// <summary>Any text: <c>string</c>.</summary>
    Text,

    /// <summary>A number: <c>double</c>.</summary>
    Number,

    /// <summary>A whole number: <c>int</c>.</summary>
    WholeNumber,

    /// <summary>Yes or no: <c>bool</c>.</summary>
    YesNo,

    /// <summary>A calendar date: <c>DateOnly</c>.</summary>
    Date,
}

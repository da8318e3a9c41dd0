namespace SquadAnalytics.Change;

/// <summary>How athletes may differ in the model of a squad's season that was fitted in the end.</summary>
public enum SquadTrendForm
{
    /// <summary>Each athlete has a level and a slope, which may go together.</summary>
    CorrelatedLevelsAndSlopes,

    /// <summary>Each athlete has a level and a slope, taken as unrelated.</summary>
    LevelsAndSlopes,

    /// <summary>Each athlete has a level; the slope is the squad's for all.</summary>
    LevelsOnly,
}

/// <summary>Words for <see cref="SquadTrendForm"/>.</summary>
public static class SquadTrendForms
{
    /// <summary>The form as it stands in a sentence.</summary>
    public static string Words(this SquadTrendForm form) => form switch
    {
        SquadTrendForm.CorrelatedLevelsAndSlopes => "athletes differ in level and slope, which may go together",
        SquadTrendForm.LevelsAndSlopes => "athletes differ in level and slope, taken as unrelated",
        SquadTrendForm.LevelsOnly => "athletes differ in level, with one slope for all",
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "Not a form of the squad's season model."),
    };
}

namespace SquadAnalytics.Load;

/// <summary>What of load and session total is held together. Both drift over a season, so that their levels go together for reasons of the calendar alone.</summary>
public enum LoadAssociationForm
{
    /// <summary>What is left about each athlete's own straight trend of both; the default.</summary>
    AboutTrends,

    /// <summary>Changes from one test of the athlete to the next, of both.</summary>
    Changes,

    /// <summary>Both as they stand, about each athlete's mean.</summary>
    AsTheyStand,
}

/// <summary>Words for <see cref="LoadAssociationForm"/>.</summary>
public static class LoadAssociationForms
{
    /// <summary>The form as it stands in a sentence.</summary>
    public static string Words(this LoadAssociationForm form) => form switch
    {
        LoadAssociationForm.AboutTrends => "about each athlete's own trend",
        LoadAssociationForm.Changes => "changes from test to test",
        LoadAssociationForm.AsTheyStand => "as they stand",
        _ => throw new ArgumentOutOfRangeException(nameof(form), form, "Not a form of the association."),
    };
}

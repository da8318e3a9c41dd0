namespace SquadAnalytics.Load;

/// <summary>Options of <see cref="LoadAssociation"/>.</summary>
public sealed record LoadAssociationOptions
{
    private readonly IReadOnlyList<LoadWindow> _windows = [LoadWindow.WeekBefore];

    /// <summary>The windows that are tried, named in advance; one by default, the seven days before. With several the p-values are adjusted.</summary>
    public IReadOnlyList<LoadWindow> Windows
    {
        get => _windows;
        init => _windows = value is { Count: > 0 } && value.Distinct().Count() == value.Count ? value : throw new ArgumentException("There must be one window or more, each once.", nameof(Windows));
    }

    /// <summary>What is held together; what is left about own trends by default.</summary>
    public LoadAssociationForm Form { get; init; }

    /// <summary>Level of the intervals; 90 % by default.</summary>
    public ConfidenceLevel Level { get; init; }

    /// <summary>Which sessions to use.</summary>
    public SelectionOptions Selection { get; init; } = new();
}

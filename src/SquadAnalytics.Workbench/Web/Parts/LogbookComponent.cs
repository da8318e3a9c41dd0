using Microsoft.AspNetCore.Components;
using SquadAnalytics.Workbench.Web.State;

namespace SquadAnalytics.Workbench.Web.Parts;

/// <summary>A part of a page that shows the logbook and draws itself anew when any window changes it.</summary>
public abstract class LogbookComponent : ComponentBase, IDisposable
{
    [Inject]
    private protected OpenLogbook Opened { get; set; } = null!;

    private protected Squad Squad => Opened.Squad;

    /// <summary>What went wrong with the last change made here, as a sentence; null where nothing did.</summary>
    private protected string? Problem { get; set; }

    /// <inheritdoc />
    protected override void OnInitialized() => Opened.Changed += Redraw;

    /// <summary>Stops listening.</summary>
    public void Dispose()
    {
        Opened.Changed -= Redraw;
        GC.SuppressFinalize(this);
    }

    private protected bool Change(Action<Storage.Logbook> change)
    {
        Problem = Opened.Try(change);
        return Problem is null;
    }

    /// <summary>Whoever belongs to the squad on a day, by name.</summary>
    private protected IEnumerable<Athlete> AthletesOn(DateOnly day) => Squad.Athletes
        .Where(athlete => (athlete.Joined is null || athlete.Joined <= day) && (athlete.Left is null || athlete.Left >= day))
        .OrderBy(athlete => athlete.DisplayName, StringComparer.OrdinalIgnoreCase);

    /// <summary>The day that a page begins with: today, or the last test where everybody has left or joins later.</summary>
    private protected DateOnly StartingDay(TimeProvider time) =>
        DateOnly.FromDateTime(time.GetLocalNow().Date) is var today && (Squad.Sessions.Count == 0 || AthletesOn(today).Any()) ? today : Squad.Sessions[^1].Date;

    /// <summary>Takes over what has changed, before it is drawn.</summary>
    private protected virtual void Follow()
    {
    }

    private void Redraw() => _ = InvokeAsync(() =>
    {
        Follow();
        StateHasChanged();
    });
}

namespace SquadAnalytics.Workbench.Commands;

/// <summary>Turns Ctrl+C into a request to stop, as long as it lives.</summary>
internal sealed class Interrupt : IDisposable
{
    private readonly CancellationTokenSource _stop = new();

    public Interrupt() => Console.CancelKeyPress += OnPressed;

    /// <summary>Cancelled when Ctrl+C was pressed.</summary>
    public CancellationToken Token => _stop.Token;

    public void Dispose()
    {
        Console.CancelKeyPress -= OnPressed;
        _stop.Dispose();
    }

    private void OnPressed(object? sender, ConsoleCancelEventArgs pressed)
    {
        pressed.Cancel = true;
        _stop.Cancel();
    }
}

using System.Diagnostics;
using System.Text.RegularExpressions;

namespace SquadAnalytics.Benchmarks.Browser;

/// <summary>A workbench process that serves a logbook.</summary>
internal sealed partial class ServedLogbook : IAsyncDisposable
{
    private readonly Queue<string> _addresses = new();
    private readonly SemaphoreSlim _announced = new(0);
    private readonly Process _process;

    private ServedLogbook(Process process)
    {
        _process = process;
        process.OutputDataReceived += (_, line) => Announce(line.Data);
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>Id of its process.</summary>
    public int ProcessId => _process.Id;

    /// <summary>Starts it.</summary>
    /// <param name="workbench">The executable, or its assembly.</param>
    /// <param name="logbook">The logbook's folder.</param>
    /// <param name="more">Further arguments of the command.</param>
    public static ServedLogbook Start(string workbench, string logbook, params string[] more)
    {
        var isAssembly = workbench.EndsWith(".dll", StringComparison.OrdinalIgnoreCase);
        var start = new ProcessStartInfo(isAssembly ? "dotnet" : workbench) { RedirectStandardOutput = true, RedirectStandardError = true };
        if (isAssembly) start.ArgumentList.Add(workbench);
        foreach (var argument in (string[])["open", logbook, "--no-browser", .. more]) start.ArgumentList.Add(argument);
        start.Environment["XDG_DATA_HOME"] = logbook + ".data";
        return new(Process.Start(start) ?? throw new InvalidOperationException($"{workbench} did not start."));
    }

    /// <summary>The next address that opens once.</summary>
    public async Task<Uri> NextAddressAsync()
    {
        if (!await _announced.WaitAsync(TimeSpan.FromSeconds(120))) throw new TimeoutException("The workbench printed no address within two minutes.");
        lock (_addresses) return new Uri(_addresses.Dequeue());
    }

    /// <summary>Ends it at once, as <c>kill -9</c> does; its children end because their pipe does.</summary>
    public async Task KillAsync()
    {
        _process.Kill();
        await _process.WaitForExitAsync();
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited) _process.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        _process.Dispose();
        _announced.Dispose();
    }

    private void Announce(string? line)
    {
        if (line is null || Address().Match(line) is not { Success: true } match) return;
        lock (_addresses) _addresses.Enqueue(match.Value);
        _announced.Release();
    }

    [GeneratedRegex("http://[^ ]+/enter/[^ ]+")]
    private static partial Regex Address();
}

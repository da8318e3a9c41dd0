using System.Diagnostics;
using System.Text.RegularExpressions;
using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>A workbench that serves its pages for the tests of one class, on a logbook folder of its own.</summary>
public sealed partial class ServedWorkbench : IAsyncLifetime, IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("workbench").FullName;
    private readonly Queue<string> _addresses = new();
    private readonly SemaphoreSlim _announced = new(0);
    private readonly System.Collections.Concurrent.ConcurrentQueue<string> _errors = new();
    private Process? _process;

    /// <summary>Scheme, host and port.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>A folder that goes with the tests.</summary>
    public string Folder => _folder;

    /// <summary>The next first address that was printed; each opens once.</summary>
    public async Task<Uri> NextFirstAddress()
    {
        Assert.True(await _announced.WaitAsync(TimeSpan.FromSeconds(60)), $"The workbench printed no address within 60 s. It said: {string.Join('\n', _errors)}");
        lock (_addresses) return new Uri(_addresses.Dequeue());
    }

    /// <inheritdoc />
    public async Task InitializeAsync()
    {
        // A squad with a season behind it: pages are tested with something on them.
        SampleFolder.Save(SquadGenerator.Generate(Scenarios.Brackenholt), Path.Combine(_folder, "logbook"));
        _process = WorkbenchProcess.Start(_folder, new Dictionary<string, string> { ["XDG_DATA_HOME"] = Path.Combine(_folder, "data") }, "open", Path.Combine(_folder, "logbook"), "--no-browser");
        _process.OutputDataReceived += (_, line) => Announce(line.Data);
        _process.ErrorDataReceived += (_, line) => _errors.Enqueue(line.Data ?? "");
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        var first = await NextFirstAddress();
        Address = new Uri(first.GetLeftPart(UriPartial.Authority));
        lock (_addresses) _addresses.Enqueue(first.AbsoluteUri);
        _announced.Release();
    }

    /// <inheritdoc />
    public async Task DisposeAsync()
    {
        _process!.Kill(entireProcessTree: true);
        await _process.WaitForExitAsync();
        Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    /// <inheritdoc />
    public void Dispose()
    {
        _process?.Dispose();
        _announced.Dispose();
    }

    private void Announce(string? line)
    {
        if (line is null || FirstAddressPattern().Match(line) is not { Success: true } match) return;
        lock (_addresses) _addresses.Enqueue(match.Value);
        _announced.Release();
    }

    [GeneratedRegex("http://[^ ]+/enter/[^ ]+")]
    private static partial Regex FirstAddressPattern();
}

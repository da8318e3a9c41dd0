using System.Globalization;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>What was found after kills of the server.</summary>
internal sealed record WorkbenchKills(int Seed)
{
    /// <summary>Kills while somebody typed.</summary>
    public int Typings { get; init; }

    /// <summary>Cells that had been left with the Enter key.</summary>
    public int TypedCells { get; init; }

    /// <summary>Kills after which the last cell left was missing.</summary>
    public int LastMissing { get; init; }

    /// <summary>Kills during an import.</summary>
    public int Imports { get; init; }

    /// <summary>Imports that were kept as a whole.</summary>
    public int ImportsKept { get; init; }

    /// <summary>Kills done again because the browser or the server did not come up in time.</summary>
    public int Repeated { get; init; }

    /// <summary>Browsers and servers at the same time.</summary>
    public int Lanes { get; init; } = 1;

    public double Seconds { get; init; }

    /// <summary>What was wrong.</summary>
    public IReadOnlyList<string> Faults { get; init; } = [];

    public WorkbenchKills WithTyping(KilledTyping typing)
    {
        var missing = typing.Typed - typing.Kept;
        return this with
        {
            Typings = Typings + 1,
            TypedCells = TypedCells + typing.Typed,
            LastMissing = LastMissing + (missing == 1 ? 1 : 0),
            Faults = typing.Fault is { } fault ? [.. Faults, fault] : missing > 1 ? [.. Faults, $"{missing} cells missing"] : Faults,
        };
    }

    public WorkbenchKills WithImport(KilledImport import) => this with
    {
        Imports = Imports + 1,
        ImportsKept = ImportsKept + (import.IsKept ? 1 : 0),
        Faults = import.Fault is { } fault ? [.. Faults, fault] : Faults,
    };

    /// <summary>These counts and others together.</summary>
    public WorkbenchKills With(WorkbenchKills other) => this with
    {
        Typings = Typings + other.Typings,
        TypedCells = TypedCells + other.TypedCells,
        LastMissing = LastMissing + other.LastMissing,
        Imports = Imports + other.Imports,
        ImportsKept = ImportsKept + other.ImportsKept,
        Repeated = Repeated + other.Repeated,
        Faults = [.. Faults, .. other.Faults],
    };

    /// <summary>The counts as a Markdown table to be kept.</summary>
    public string Table(string commit, string machine) => string.Create(CultureInfo.InvariantCulture, $"""
        # The server killed while somebody types or imports

        Job `workbench-kills --kills {Typings + Imports} --seed {Seed} --lanes {Lanes}`, commit {commit}, {machine}, {Seconds:0} s.
        Each kill is a SIGKILL of the server at a random moment, with keys pressed in a real browser; then the logbook is opened.
        {Repeated} kills were done again because the browser or the server did not come up in time.

        | kills while typing | cells left | last cell missing | more missing or not opened | kills while importing | kept whole | nothing kept | kept in part |
        | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |
        | {Typings} | {TypedCells} | {LastMissing} | {Faults.Count(fault => !fault.Contains("sessions were kept", StringComparison.Ordinal))} | {Imports} | {ImportsKept} | {Imports - ImportsKept} | {Faults.Count(fault => fault.Contains("sessions were kept", StringComparison.Ordinal))} |

        """);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Typings} kills while typing {TypedCells} cells (last cell missing {LastMissing} times), {Imports} while importing ({ImportsKept} kept), {Faults.Count} faults ({Seconds:0} s)")
        + string.Concat(Faults.Select(fault => Environment.NewLine + "  " + fault));
}

using System.Globalization;
using SquadAnalytics.Benchmarks.Simulations;
using SquadAnalytics.Storage;

namespace SquadAnalytics.Benchmarks.Jobs;

/// <summary>What was found after kills.</summary>
internal sealed record LogbookKills(int Kills, int Seed)
{
    /// <summary>Opening finished an accepted change.</summary>
    public int Finished { get; init; }

    /// <summary>Opening took back a change that was not accepted yet.</summary>
    public int RolledBack { get; init; }

    /// <summary>Nothing had been cut short.</summary>
    public int Whole { get; init; }

    /// <summary>The logbook was between two states, lost an acknowledged change, or could not be opened.</summary>
    public int Between { get; init; }

    /// <summary>What was wrong, first found first.</summary>
    public IReadOnlyList<string> Faults { get; init; } = [];

    public double Seconds { get; init; }

    /// <summary>The counts as a Markdown table to be kept.</summary>
    public string Table(string command) => string.Create(CultureInfo.InvariantCulture, $"""
        # A program killed while it accepts changes

        Command `{command}`, seed {Seed}, commit {Provenance.Commit()}, {Provenance.Machine()}, {Seconds:0} s.
        Each kill is a SIGKILL at a random moment; then the logbook is opened, every file compared, and the last change undone and done again.

        | kills | accepted change finished on opening | change taken back on opening | nothing cut short | between two states |
        | ---: | ---: | ---: | ---: | ---: |
        | {Kills} | {Finished} | {RolledBack} | {Whole} | {Between} |

        """);

    public LogbookKills With(KilledState state) => this with
    {
        Between = Between + (state.Fault is null ? 0 : 1),
        Faults = state.Fault is null ? Faults : [.. Faults, state.Fault],
        Finished = Finished + (state.Recovery == RecoveryKind.Finished ? 1 : 0),
        RolledBack = RolledBack + (state.Recovery == RecoveryKind.RolledBack ? 1 : 0),
        Whole = Whole + (state.Recovery is null && state.Fault is null ? 1 : 0),
    };

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Kills} kills, seed {Seed}: {Finished} finished, {RolledBack} taken back, {Whole} found whole, {Between} between ({Seconds:0} s)")
        + string.Concat(Faults.Select(fault => Environment.NewLine + "  " + fault));
}

using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>A second, different squad whose truth is known, as a logbook folder for the tests of one class.</summary>
public sealed class GeneratedLogbook : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("squad-notebook-").FullName;

    /// <summary>Generates the squad and keeps it.</summary>
    public GeneratedLogbook()
    {
        var generated = SquadGenerator.Generate(Scenarios.Brackenholt);
        Squad = generated.Squad;
        Truth = generated.Truth;
        SampleFolder.Save(generated, Folder);
    }

    /// <summary>The logbook's folder.</summary>
    public string Folder => Path.Combine(_root, "logbook");

    /// <summary>A folder for what the tests write.</summary>
    public string Work => _root;

    /// <summary>The squad.</summary>
    internal Squad Squad { get; }

    /// <summary>What was built into it.</summary>
    internal SampleTruth Truth { get; }

    /// <inheritdoc />
    public void Dispose() => Directory.Delete(_root, recursive: true);
}

using SquadAnalytics.SampleSquad;

namespace SquadAnalytics.Workbench.Tests.Notebooks;

/// <summary>
/// The second generated squad with one more week, whose truth is planted: everybody repeats the means of the own last three tests, but one
/// boxer is 12 % slower, and another had a knock to the head two days before and did not test.
/// </summary>
public sealed class PlantedWeek : IDisposable
{
    private readonly string _root = Directory.CreateTempSubdirectory("squad-planted-").FullName;

    /// <summary>Generates the squad, plants the week and keeps it.</summary>
    public PlantedWeek()
    {
        var generated = SquadGenerator.Generate(Scenarios.Brackenholt);
        Protocol = generated.Truth.Scenario.MainTest.Protocol;
        var squad = generated.Squad;
        var own = squad.Sessions.Where(session => session.Protocol.Key == Protocol.Key && session is { IsComplete: true, IsVoid: false })
            .GroupBy(session => session.AthleteId, StringComparer.Ordinal).Where(sessions => sessions.Count() > 4).ToList();
        Date = squad.Sessions[^1].Date.AddDays(7);
        var stories = generated.Truth.Boxers.Where(boxer => boxer.Story is not null).Select(boxer => boxer.AthleteId).ToList();
        var plain = own.Select(sessions => sessions.Key).Where(id => !stories.Contains(id)).ToList();
        (Slower, Knocked) = (squad.Athlete(plain[0]), squad.Athlete(plain[1]));
        var planted = own.Where(sessions => sessions.Key != Knocked.Id).Select(sessions => Repeated([.. sessions.TakeLast(3)], sessions.Key == Slower.Id ? 1.12 : 1));
        Squad = new Squad(squad.Name, squad.Athletes, squad.Protocols, [.. squad.Sessions, .. planted])
        {
            Contexts = squad.Contexts,
            Events = [.. squad.Events, new AthleteEvent("knock", Knocked.Id, Date.AddDays(-2), EventKind.HeadKnock)],
            Blocks = squad.Blocks,
        };
        SampleFolder.Save(generated with { Squad = Squad }, Folder);
    }

    /// <summary>The logbook's folder.</summary>
    public string Folder => Path.Combine(_root, "logbook");

    /// <summary>A folder for what the tests write.</summary>
    public string Work => _root;

    internal Squad Squad { get; }

    internal Protocol Protocol { get; }

    internal DateOnly Date { get; }

    internal Athlete Slower { get; }

    internal Athlete Knocked { get; }

    /// <inheritdoc />
    public void Dispose() => Directory.Delete(_root, recursive: true);

    private Session Repeated(IReadOnlyList<Session> last, double factor) => Session.FromTimes(
        $"planted-{last[0].AthleteId}", last[0].AthleteId, Date, Protocol,
        [.. Enumerable.Range(0, Protocol.Sets).Select(set => Math.Round(factor * last.Sum(session => session.TimesSeconds[set]) / last.Count, 1))]);
}

namespace SquadAnalytics.Tests;

public sealed class SessionSelectionTests
{
    [Fact]
    public void What_was_left_out_is_counted_and_said()
    {
        var sessions = WorkedData.SixSessions.ToList();
        sessions[2] = sessions[2] with { VoidReason = "wrong number of repetitions" };
        sessions[4] = new Session("w4", "a1", sessions[4].Date, WorkedData.Circuit, [new SetTime(1, new Seconds(61.5)), new SetTime(2, SetStatus.NotFinished)]);
        sessions.Add(new Session("w6", "a1", sessions[5].Date.AddDays(7), WorkedData.Circuit, [new SetTime(1, SetStatus.NotStarted)]));
        var selection = SessionSelection.Of(sessions).GetOrThrow();
        Assert.Equal(["a1-w1", "a1-w3", "a1-w5"], selection.Sessions.Select(session => session.Id));
        Assert.Equal("3 sessions used. Tests left out: 1 void, 1 not started, 1 as familiarisation (the first of each athlete), 1 incomplete.", selection.ToString());
    }

    [Fact]
    public void Different_protocols_are_refused_unless_one_is_asked_for()
    {
        IReadOnlyList<Session> mixed = [.. WorkedData.SixSessions, WorkedData.One([60, 61, 62, 63], 7)];
        Assert.Equal(Refusal.MixedProtocols, SessionSelection.Of(mixed).Refusal!.Reason);
        var selection = SessionSelection.Of(mixed, new SelectionOptions { Protocol = WorkedData.Circuit }).GetOrThrow();
        Assert.Equal(5, selection.Sessions.Count);
        Assert.Equal(1, selection.OtherProtocolsLeftOut);
    }

    [Fact]
    public void Familiarisation_is_counted_from_the_first_session_ever_and_not_from_the_first_in_the_dates()
    {
        var block = new TrainingBlock("b", "Block", WorkedData.SixSessions[2].Date, WorkedData.SixSessions[4].Date);
        var selection = SessionSelection.Of(WorkedData.SixSessions, new SelectionOptions().Within(block)).GetOrThrow();
        Assert.Equal(["a1-w2", "a1-w3", "a1-w4"], selection.Sessions.Select(session => session.Id));
    }

    [Fact]
    public void Where_nothing_is_left_the_refusal_says_what_was_left_out()
    {
        var only = new SelectionOptions { Protocol = WorkedData.Circuit };
        Assert.Equal($"Not enough data for this question: needs a complete test of {WorkedData.Circuit.Name}, has none. Tests left out: 1 as familiarisation (the first of each athlete).", SessionSelection.NotEmpty([WorkedData.FirstSession], only).ToString());
        Assert.Equal(Refusal.TooFewSessions, SessionSelection.NotEmpty([]).Refusal!.Reason);
        Assert.Equal(5, SessionSelection.NotEmpty(WorkedData.SixSessions, only).GetOrThrow().Sessions.Count);
    }

    [Fact]
    public void Sessions_of_two_athletes_are_a_mistake_where_one_is_asked_for() =>
        Assert.Throws<ArgumentException>(() => SessionSelection.OfOneAthlete([WorkedData.FirstSession, WorkedData.One([60, 61, 62, 63, 64], 1, "a2")]));

    [Fact]
    public void A_first_day_after_the_last_is_a_mistake()
    {
        var error = Assert.Throws<ArgumentException>(() => SessionSelection.Of(WorkedData.SixSessions, new SelectionOptions { From = new DateOnly(2031, 3, 27), To = new DateOnly(2031, 3, 20) }));
        Assert.StartsWith("The first day, 2031-03-27, comes after the last, 2031-03-20.", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Sessions_written_to_different_steps_say_what_rounding_adds()
    {
        // Hand arithmetic: √(5/12) = 0.65 s for whole seconds, 0.065 s for tenths.
        var sessions = WorkedData.SixSessions.Select((session, week) => session with { TimingResolution = new Seconds(week < 3 ? 1 : 0.1) }).ToList();
        Assert.Contains("0.06 to 0.65 s", SessionSelection.Of(sessions).GetOrThrow().ToString(), StringComparison.Ordinal);
    }
}

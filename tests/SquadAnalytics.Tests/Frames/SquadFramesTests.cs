using SquadAnalytics.Frames;
using SquadAnalytics.SampleSquad;
using SquadAnalytics.Sets;
using SquadAnalytics.Tests.Storage;

namespace SquadAnalytics.Tests.Frames;

public sealed class SquadFramesTests
{
    private static readonly Squad Worked = new("Quay", [new Athlete("a1", "Ada Invented", "AI")], [WorkedData.Circuit], [WorkedData.FirstSession]);

    [Fact]
    public void Session_measures_match_the_hand_worked_session()
    {
        // By hand from 62.4 63.1 64.0 69.2 70.3 on a 120-second clock; the SD also as R 4.2.2: sd(c(62.4, 63.1, 64, 69.2, 70.3)). Only rounding may differ.
        var measures = SquadFrames.Of(Worked, "session_measures");
        double Cell(string column) => measures[column].Numbers[0]!.Value;
        Assert.Equal(1, measures.Count);
        Assert.Equal(329.0, Cell("total_s"), 1e-9);
        Assert.Equal(65.8, Cell("mean_set_s"), 1e-9);
        Assert.Equal(62.4, Cell("best_set_s"), 1e-9);
        Assert.Equal(70.3, Cell("worst_set_s"), 1e-9);
        Assert.Equal(3.6708309686, Cell("sd_s"), 1e-9);
        Assert.Equal(5.5787704690, Cell("cv_percent"), 1e-9);
        Assert.Equal(5.4487179487, Cell("decrement_percent"), 1e-9);
        Assert.Equal(12.6602564103, Cell("first_to_last_percent"), 1e-9);
        Assert.Equal(2.19, Cell("slope_s_per_set"), 1e-9);
        Assert.Equal(5.0833333333, Cell("late_contrast_s"), 1e-9);
        Assert.Equal(221.3, Cell("rest_left_s"), 1e-9);
        Assert.Equal(50.8, Cell("least_rest_s"), 1e-9);
        Assert.Equal(258.7 / 221.3, Cell("work_to_rest_ratio"), 1e-12);
        Assert.Equal(329.0 / 550.3, Cell("density_ratio"), 1e-12);
    }

    [Fact]
    public void Session_measures_are_those_of_the_analyses_and_empty_where_they_refuse()
    {
        var squad = SquadGenerator.Generate(Scenarios.Quillmere).Squad;
        var measures = SquadFrames.Of(squad, "session_measures");
        Assert.Equal(squad.Sessions.Count, measures.Count);
        foreach (var (row, session) in squad.Sessions.Index())
        {
            var profile = SetProfile.Summarize(session).Match<SetProfileResult?>(result => result, _ => null);
            var indices = FatigueIndices.Summarize(session).Match<FatigueIndicesResult?>(result => result, _ => null);
            Same(profile?.Total, "total_s");
            Same(profile?.StandardDeviation, "sd_s");
            Same(profile?.CoefficientOfVariation, "cv_percent");
            Same(indices is null ? null : new Answer<Estimate>(indices.Decrement), "decrement_percent");
            Same(indices is null ? null : new Answer<Estimate>(indices.FirstToLast), "first_to_last_percent");
            Same(WorkAndRest.Summarize(session).Match<Answer<Estimate>?>(clock => clock.WorkToRest, _ => null), "work_to_rest_ratio");
            if (session.IsComplete) Same(SetSlope.Fit(session).GetOrThrow().Linear, "slope_s_per_set");

            void Same(Answer<Estimate>? expected, string column)
            {
                var found = measures[column].Numbers[row];
                if (expected is not null && expected.TryGet(out var estimate)) Assert.Equal(estimate.Value, found!.Value, 1e-9);
                else Assert.Null(found);
            }
        }
    }

    [Fact]
    public void Tables_have_the_columns_of_the_logbooks_files_and_health_notes_are_not_among_them()
    {
        var squad = new Squad("Quay", [Invented.Ada, Invented.Bo], [Invented.Quay], [Invented.AdaFirst, Invented.BoFirst]);
        Assert.DoesNotContain(SquadFrames.Names, name => name.Contains("health", StringComparison.Ordinal) || name.Contains("held", StringComparison.Ordinal) || name.Contains("consent", StringComparison.Ordinal));
        Assert.Equal(["session_id", "set_number", "status", "work_s"], SquadFrames.Of(squad, "set_times").Columns.Select(column => column.Name));
        var sets = SquadFrames.Of(squad, "SET_TIMES");
        Assert.Equal(8, sets.Count);
        Assert.Equal(["timed", "completed_untimed", "stopped_for_health", "not_recorded"], sets["status"].Texts.Take(4));
        Assert.Equal([50.1, null, null, null], sets["work_s"].Numbers.Take(4));
        Assert.Equal(Invented.Day, SquadFrames.Of(squad, "sessions")["test_date"].Dates[0]);
        Assert.All(SquadFrames.Names, name => Assert.All(SquadFrames.Of(squad, name).Columns, column => Assert.False(string.IsNullOrEmpty(column.Description))));
        Assert.Contains("there are athletes", Assert.Throws<ArgumentException>(() => SquadFrames.Of(squad, "health_notes")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_junior_stands_in_the_measures_by_code()
    {
        var junior = new Athlete("a1", "Ada Invented", "AI") { Groups = [new GroupMembership("juniors", new DateOnly(2030, 1, 1))] };
        var measures = SquadFrames.Of(new Squad("Quay", [junior], [WorkedData.Circuit], [WorkedData.FirstSession]), "session_measures");
        Assert.Equal("AI", measures["athlete"].Texts[0]);
    }

    [Fact]
    public void The_set_clock_has_one_row_per_set_and_no_rest_after_the_last()
    {
        var clock = SquadFrames.Of(Worked, "set_clock");
        Assert.Equal([57.6, 56.9, 56.0, 50.8, null], clock["rest_left_s"].Numbers.Select(rest => rest is { } seconds ? Math.Round(seconds, 9) : (double?)null));
        Assert.Equal(550.3, clock["finish_s"].Numbers[4]!.Value, 1e-9);
    }
}

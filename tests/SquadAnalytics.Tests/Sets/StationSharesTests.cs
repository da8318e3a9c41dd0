using CsCheck;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class StationSharesTests
{
    private static readonly StationSharesOptions AfterOne = new() { AfterSet = 1, Selection = SelectionOptions.KeepAll };

    // Mean of the early and of the late sets: four stations and the whole set, four sessions.
    private static readonly double[][] Early = [[18.2, 14.6, 16.0, 12.4, 62.4], [18.0, 14.9, 15.8, 12.6, 62.7], [17.6, 14.3, 15.9, 12.5, 61.5], [17.9, 14.5, 15.5, 12.3, 61.4]];
    private static readonly double[][] Late = [[21.6, 15.2, 17.0, 13.1, 68.6], [20.9, 15.6, 16.9, 13.0, 67.9], [21.2, 14.9, 16.6, 13.3, 67.5], [20.8, 15.4, 16.8, 12.8, 67.2]];

    private static IReadOnlyList<Session> Sessions(int count = 4) => [.. Enumerable.Range(0, count).Select(week => Session(Early[week], Late[week], week))];

    private static Session Session(double[] early, double[] late, int week) =>
        WorkedData.One([early[4], late[4]], week) with { Stations = [.. Splits(1, early), .. Splits(2, late)] };

    private static IEnumerable<StationTime> Splits(int set, double[] row) => row.SkipLast(1).Select((time, station) => new StationTime(set, station + 1, new Seconds(time)));

    [Fact]
    public void The_slowdown_splits_into_stations_as_in_R()
    {
        // R 4.2.2: t.test(late - early, conf.level = .9) per station; Fieller by arithmetic.
        var shares = StationShares.Fit(Sessions(), AfterOne).GetOrThrow();
        Assert.Equal(5.8, shares.Slowdown.Value, 1e-9);
        double[] slowdown = [3.2, 0.7, 1.025, 0.6, 0.275], excess = [1.523145, -0.663468, -0.453065, -0.564677, 0.158065], relative = [17.852, 4.803, 6.487, 4.819];
        for (var row = 0; row < 5; row++)
        {
            Assert.Equal(slowdown[row], shares.Rows[row].Slowdown.Value, 1e-9);
            Assert.Equal(excess[row], shares.Rows[row].Excess.Value, 5e-7);
            if (row < 4) Assert.Equal(relative[row], shares.Rows[row].RelativeSlowing.GetOrThrow().Value, 5e-4);
        }

        var first = shares.Rows[0];
        Assert.Equal(2.781216, first.Slowdown.Lower!.Value, 5e-7);
        Assert.Equal(3.618784, first.Slowdown.Upper!.Value, 5e-7);
        var share = first.Share.GetOrThrow();
        Assert.Equal(0.551724, share.Value, 5e-7);
        Assert.Equal(0.502064, share.Lower!.Value, 5e-7);
        Assert.Equal(0.600526, share.Upper!.Value, 5e-7);
        Assert.Equal("transitions", shares.Rows[4].Name);
        Assert.Null(shares.Rows[4].Station);
    }

    [Fact]
    public void One_station_that_takes_more_than_its_share_is_named()
    {
        var shares = StationShares.Fit(Sessions(), AfterOne).GetOrThrow();
        Assert.Equal(["burpees"], shares.Concentrated.Select(row => row.Name));
    }

    [Fact]
    public void An_even_slowdown_names_no_station()
    {
        double[] Slower(double[] row, double factor) => [.. row.Select(time => time * factor)];
        IReadOnlyList<Session> even = [.. Enumerable.Range(0, 4).Select(week => Session(Early[week], Slower(Early[(week + 1) % 4], 1.08 + 0.005 * week), week))];
        Assert.Empty(StationShares.Fit(even, AfterOne).GetOrThrow().Concentrated);
    }

    [Fact]
    public void Fewer_than_four_sessions_give_seconds_without_intervals()
    {
        var shares = StationShares.Fit(Sessions(1), AfterOne).GetOrThrow();
        Assert.Equal(3.4, shares.Rows[0].Slowdown.Value, 1e-9);
        Assert.Null(shares.Rows[0].Slowdown.Interval);
        Assert.Null(shares.Rows[0].ExcessPValue);
        Assert.Equal(Refusal.TooFewSessions, shares.Rows[0].Share.Refusal!.Reason);
    }

    [Fact]
    public void A_slowdown_that_may_be_zero_has_no_shares()
    {
        IReadOnlyList<Session> unsure = [.. Enumerable.Range(0, 4).Select(week => Session(week % 2 == 0 ? Early[week] : Late[week], week % 2 == 0 ? Late[week] : Early[week], week))];
        Assert.Equal(Refusal.RatioUnstable, StationShares.Fit(unsure, AfterOne).GetOrThrow().Rows[0].Share.Refusal!.Reason);
    }

    [Fact]
    public void Missing_and_contradictory_station_times_are_left_out_and_counted()
    {
        var sessions = Sessions().ToList();
        sessions[0] = sessions[0] with { Stations = [.. sessions[0].Stations.Skip(1)] };
        sessions[1] = sessions[1] with { Stations = [new StationTime(1, 1, new Seconds(25)), .. sessions[1].Stations.Skip(1)] };
        var shares = StationShares.Fit(sessions, AfterOne).GetOrThrow();
        Assert.Equal(1, shares.WithoutStationsLeftOut);
        Assert.Equal(1, shares.ContradictoryLeftOut);
        Assert.Equal(["a1-w2", "a1-w3"], shares.SessionIds);
        Assert.Equal(Refusal.StationsMissing, StationShares.Fit(WorkedData.SixSessions, AfterOne).Refusal!.Reason);
    }

    [Fact]
    public void Seconds_add_up_exactly_and_the_excess_to_zero() =>
        Gen.Select(Gen.Double[8, 25].Array[20].Array[1, 7], Gen.Double[0, 3].Array[7, 7], Gen.Int[1, 4]).Sample((splits, transitions, after) =>
        {
            IReadOnlyList<Session> sessions = [.. splits.Select((times, week) =>
                WorkedData.One([.. Enumerable.Range(0, 5).Select(set => times.Skip(4 * set).Take(4).Sum() + transitions[week])], week) with
                {
                    Stations = [.. times.Select((time, index) => new StationTime(index / 4 + 1, index % 4 + 1, new Seconds(time)))],
                })];
            var shares = StationShares.Fit(sessions, AfterOne with { AfterSet = after }).GetOrThrow();
            Assert.Equal(shares.Slowdown.Value, shares.Rows.Sum(row => row.Slowdown.Value), 1e-10);
            Assert.Equal(0, shares.Rows.Sum(row => row.Excess.Value), 1e-10);
        });
}

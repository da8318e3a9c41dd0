using CsCheck;
using SquadAnalytics.Change;

namespace SquadAnalytics.Tests.Change;

/// <summary>What must not change, and what must change along, when a squad's two blocks are written differently. Identities by algebra.</summary>
public sealed class BlockPropertyTests
{
    private const int PerBlock = 3;
    private static readonly DateOnly Start = new(2031, 1, 7);
    private static readonly TrainingBlock First = new("b1", "first", Start, Start.AddDays(7 * PerBlock - 1));
    private static readonly TrainingBlock Second = new("b2", "second", Start.AddDays(7 * PerBlock), Start.AddDays(14 * PerBlock - 1));
    private static readonly BlockComparisonOptions All = new() { Selection = SelectionOptions.KeepAll };

    // Totals of 5 to 9 athletes in six weeks, to a tenth of a second.
    private static readonly Gen<double[][]> Squads = Gen.Int[2800, 3800].Select(tenths => tenths / 10.0).Array[2 * PerBlock].Array[5, 9];

    [Fact]
    public void A_shift_of_all_times_leaves_every_difference() => Gen.Select(Squads, Gen.Int[1, 400]).Sample((totals, tenths) =>
    {
        BlockComparisonResult before = Fit(totals), after = Fit(Each(totals, total => total + tenths / 10.0));
        Same(before.Change, after.Change, 1);
        Same(before.WeightedChange.GetOrThrow(), after.WeightedChange.GetOrThrow(), 1, 1e-6);
        Same(before.RankChange.GetOrThrow(), after.RankChange.GetOrThrow(), 1);
        Assert.Equal(before.SignFlipPValue.GetOrThrow().Value, after.SignFlipPValue.GetOrThrow().Value, 1e-12);
        Assert.Equal(before.Standardized[0].D, after.Standardized[0].D, 1e-9);
    }, iter: 40);

    [Fact]
    public void A_scale_of_all_times_scales_seconds_and_leaves_percent() => Gen.Select(Squads, Gen.Double[0.2, 5]).Sample((totals, factor) =>
    {
        BlockComparisonResult before = Fit(totals), after = Fit(Each(totals, total => factor * total));
        Same(before.Change, after.Change, factor);
        Same(before.WeightedChange.GetOrThrow(), after.WeightedChange.GetOrThrow(), factor, 1e-6);
        Same(before.RelativeChange, after.RelativeChange, 1);
        for (var standard = 0; standard < before.Standardized.Count; standard++) Assert.Equal(before.Standardized[standard].D, after.Standardized[standard].D, 1e-9);
    }, iter: 40);

    [Fact]
    public void The_order_of_athletes_and_tests_does_not_matter() => Gen.Select(Squads, Gen.Int[1, 1000]).Sample((totals, seed) =>
    {
        var sessions = WorkedData.Weekly(totals);
        BlockComparisonResult before = Of(sessions), after = Of(new SquadAnalytics.Statistics.SeededRandom(seed).Shuffle(sessions));
        Same(before.Change, after.Change, 1);
        Same(before.WeightedChange.GetOrThrow(), after.WeightedChange.GetOrThrow(), 1, 1e-6);
        Assert.Equal(before.Athletes.Select(row => row.AthleteId), after.Athletes.Select(row => row.AthleteId));
    }, iter: 40);

    [Fact]
    public void A_squad_written_twice_keeps_its_change_and_halves_its_variance() => Squads.Sample(totals =>
    {
        // Twice the athletes with the same changes: SE² = SS / (I - 1) / I becomes 2 SS / (2 I - 1) / 2 I.
        BlockComparisonResult once = Fit(totals), twice = Fit([.. totals, .. totals]);
        var athletes = totals.Length;
        Assert.Equal(once.Change.Value, twice.Change.Value, 1e-9);
        Assert.Equal(once.Change.StandardError!.Value * Math.Sqrt((athletes - 1.0) / (2 * athletes - 1.0)), twice.Change.StandardError!.Value, 1e-9);
    }, iter: 40);

    [Fact]
    public void An_athlete_with_missing_sessions_in_a_block_is_named_and_changes_nothing_else() => Gen.Select(Squads, Gen.Int[0, PerBlock - 2]).Sample((totals, left) =>
    {
        // One athlete more, with fewer than two tests in the second block.
        double[] absent = [.. Enumerable.Range(0, 2 * PerBlock).Select(week => week < PerBlock + left ? 300.0 + week : double.NaN)];
        BlockComparisonResult before = Fit(totals), after = Fit([.. totals, absent]);
        Same(before.Change, after.Change, 1);
        Assert.Equal(before.Athletes, after.Athletes);
        Assert.Equal($"B{totals.Length + 1}", Assert.Single(after.LeftOut).AthleteId);
    }, iter: 40);

    [Fact]
    public void Two_squads_merged_have_the_mean_of_both_weighted_by_athletes() => Gen.Select(Squads, Squads).Sample((one, other) =>
    {
        var merged = Fit([.. one, .. other]).Change.Value;
        Assert.Equal(((one.Length * Fit(one).Change.Value) + (other.Length * Fit(other).Change.Value)) / (one.Length + other.Length), merged, 1e-9);
    }, iter: 40);

    [Fact]
    public void Blocks_that_change_places_change_the_sign() => Squads.Sample(totals =>
    {
        // The same tests in the other order of weeks.
        BlockComparisonResult before = Fit(totals), after = Fit([.. totals.Select(row => row[PerBlock..].Concat(row[..PerBlock]).ToArray())]);
        Assert.Equal(-before.Change.Value, after.Change.Value, 1e-9);
        Assert.Equal(-before.Change.Lower!.Value, after.Change.Upper!.Value, 1e-9);
        Assert.Equal(before.Change.PValue!.Value, after.Change.PValue!.Value, 1e-9);
    }, iter: 40);

    [Fact]
    public void The_jump_of_a_series_follows_shift_and_scale() => Gen.Select(Gen.Int[2800, 3800].Select(tenths => tenths / 10.0).Array[16], Gen.Double[-40, 40], Gen.Double[0.2, 5]).Sample((totals, shift, factor) =>
    {
        var options = new InterruptedSeriesOptions { Selection = SelectionOptions.KeepAll };
        InterruptedSeriesResult Series(Func<double, double> change) => InterruptedSeries.Fit(WorkedData.Weekly([.. totals.Select(change)]), Start.AddDays(7 * 8), options).GetOrThrow();
        InterruptedSeriesResult before = Series(total => total), after = Series(total => (factor * total) + shift + 50);
        Same(before.LevelChange, after.LevelChange, factor, 1e-7);
        Same(before.SlopeChange, after.SlopeChange, factor, 1e-7);
        Same(before.SerialLevelChange, after.SerialLevelChange, factor, 1e-7);
    }, iter: 40);

    [Fact]
    public void The_difference_between_groups_follows_shift_and_scale_and_turns_with_the_groups() => Gen.Select(Gen.Int[2800, 3800].Select(tenths => tenths / 10.0).Array[2].Array[14], Gen.Double[-40, 40], Gen.Double[0.2, 5]).Sample((pairs, shift, factor) =>
    {
        // The first two athletes of the groups enclose the others, so that the times before overlap.
        double[][] rows = [[270, pairs[0][1]], [390, pairs[1][1]], [271, pairs[2][1]], [389, pairs[3][1]], .. pairs.Skip(4)];
        GroupDifferenceResult Groups(Func<double, double> change, string reference) => GroupDifference.Fit(
            [.. rows.Select((row, i) => new BeforeAndAfter($"a{i}", i % 4 < 2 ? "one" : "two", new Seconds(change(row[0])), new Seconds(change(row[1]))))], reference).GetOrThrow();
        GroupDifferenceResult before = Groups(time => time, "one"), after = Groups(time => (factor * time) + shift, "one"), turned = Groups(time => time, "two");
        Same(before.Difference, after.Difference, factor, 1e-7);
        Same(before.DifferenceOfChanges, after.DifferenceOfChanges, factor, 1e-7);
        Assert.Equal(-before.Difference.Value, turned.Difference.Value, 1e-8);
    }, iter: 40);

    private static BlockComparisonResult Fit(double[][] totals) => Of(WorkedData.Weekly(totals));

    private static BlockComparisonResult Of(IReadOnlyList<Session> sessions) => BlockComparison.Fit(sessions, First, Second, All).GetOrThrow();

    private static double[][] Each(double[][] totals, Func<double, double> change) => [.. totals.Select(row => row.Select(change).ToArray())];

    private static void Same(Estimate before, Estimate after, double factor, double tolerance = 1e-9)
    {
        Near(factor * before.Value, after.Value);
        if (before.StandardError is { } error) Near(factor * error, after.StandardError!.Value);
        if (before.Interval is not null)
        {
            Near(factor * before.Lower!.Value, after.Lower!.Value);
            Near(factor * before.Upper!.Value, after.Upper!.Value);
        }

        void Near(double expected, double got) => ReferenceData.AssertClose(expected, got, tolerance, tolerance * 100 * Math.Max(1, factor));
    }
}

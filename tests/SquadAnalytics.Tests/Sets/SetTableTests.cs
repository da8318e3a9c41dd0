using CsCheck;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Tests.Sets;

public sealed class SetTableTests
{
    [Fact]
    public void Columns_give_the_measures_of_the_generated_sessions()
    {
        // R 4.2.2: per athlete and session mean, sd, 100 sd/mean, min, last/first, 100 (sum/(n min) - 1), coef(lm(seconds ~ set))[2]; tests/Reference/monitoring/generated_sets.
        var data = ReferenceData.Text("monitoring", "generated_sets.csv");
        int[] athlete = [.. data["athlete"].Select(code => int.Parse(code.AsSpan(1), System.Globalization.CultureInfo.InvariantCulture))];
        int[] session = [.. data["session"].Select(number => int.Parse(number, System.Globalization.CultureInfo.InvariantCulture))];
        var table = SetTable.Summarize(athlete, session, ReferenceData.Column("monitoring", "generated_sets.csv", "seconds"));
        var row = 0;
        foreach (var expected in ReferenceData.Values("monitoring", "generated_sets", "measures").EnumerateArray())
        {
            void Same(string name, double got) => ReferenceData.AssertClose(expected.GetProperty(name).GetDouble(), got, 1e-10, 1e-12, name);
            Same("session", table.Session[row]);
            Same("n", table.SetsOf(row));
            Same("mean", table.MeanSeconds[row]);
            Same("sd", table.StandardDeviationSeconds[row]);
            Same("cv_percent", table.VariationPercent[row]);
            Same("best", table.BestSeconds[row]);
            Same("last_first_ratio", table.LastToFirstRatio[row]);
            Same("percent_decrement", table.DecrementPercent[row]);
            Same("slope", table.SlopeSecondsPerSet[row]);
            row++;
        }

        Assert.Equal(row, table.Count);
    }

    [Fact]
    public void The_order_of_the_rows_of_different_sessions_does_not_matter() =>
        Gen.Select(Gen.Int[1, 4], Gen.Int[1, 3], Gen.Double[40, 90]).Array[1, 60].Sample(rows =>
        {
            var mixed = Table(rows);
            var sorted = Table([.. rows.OrderBy(row => row.Item1).ThenBy(row => row.Item2)]);
            Assert.Equal(sorted.Athlete, mixed.Athlete);
            Assert.Equal(sorted.Session, mixed.Session);
            Assert.Equal(sorted.MeanSeconds, mixed.MeanSeconds);
            Assert.Equal(sorted.LastToFirstRatio, mixed.LastToFirstRatio);
            Assert.Equal(sorted.LeftOut, mixed.LeftOut);
            Assert.Equal(rows.Select(row => (row.Item1, row.Item2)).Distinct().Count(), mixed.Count + mixed.LeftOut);
        });

    [Fact]
    public void Sessions_with_one_set_are_left_out_and_counted()
    {
        var table = SetTable.Summarize(new[] { 1, 1, 2, 3, 3 }, new[] { 1, 1, 1, 1, 1 }, new double[] { 60, 62, 55, 70, 71 });
        Assert.Equal([1, 3], table.Athlete);
        Assert.Equal(1, table.LeftOut);
        Assert.Equal(0, SetTable.Summarize(Array.Empty<int>(), Array.Empty<int>(), Array.Empty<double>()).Count);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-60)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_time_that_is_not_a_number_above_zero_is_named(double bad)
    {
        var error = Assert.Throws<ArgumentException>(() => SetTable.Summarize(new[] { 1, 1, 7, 7 }, new[] { 1, 1, 3, 3 }, new[] { 60, 62, 60, bad }));
        Assert.Contains("session 3 of athlete 7", error.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => SetTable.Summarize(new[] { 1 }, new[] { 1, 2 }, new[] { 60.0 }));
    }

    private static SetTableMeasures Table((int Athlete, int Session, double Seconds)[] rows) =>
        SetTable.Summarize(rows.Select(row => row.Athlete).ToArray(), rows.Select(row => row.Session).ToArray(), rows.Select(row => row.Seconds).ToArray());
}

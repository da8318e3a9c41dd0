using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class SeededRandomTests
{
    // Outputs of the authors' reference xoshiro256starstar.c for the state 1, 2, 3, 4, as rand_xoshiro (Rust) prints them in its test.
    [Fact]
    public void The_generator_gives_the_published_outputs()
    {
        ulong[] state = [1, 2, 3, 4];
        ulong[] published =
        [
            11520, 0, 1509978240, 1215971899390074240, 1216172134540287360, 607988272756665600, 16172922978634559625, 8476171486693032832,
            10595114339597558777, 2904607092377533576,
        ];
        Assert.Equal(published, Enumerable.Range(0, 10).Select(_ => SeededRandom.Advance(state)));
    }

    // Outputs of the authors' reference splitmix64.c for the seed 1477776061723855037, as rand_xoshiro prints them.
    [Fact]
    public void The_seeding_gives_the_published_outputs()
    {
        var counter = 1477776061723855037UL;
        ulong[] published = [1985237415132408290, 2979275885539914483, 13511426838097143398, 8488337342461049707, 15141737807933549159];
        Assert.Equal(published, published.Select(_ => SeededRandom.Mix(ref counter)).ToArray());
    }

    [Fact]
    public void The_same_seed_gives_the_same_numbers_and_another_stream_others()
    {
        double[] Draw(SeededRandom random) => [.. Enumerable.Range(0, 50).Select(_ => random.NextNormal())];
        Assert.Equal(Draw(new SeededRandom(42)), Draw(new SeededRandom(42)));
        Assert.NotEqual(Draw(new SeededRandom(42)), Draw(new SeededRandom(43)));
        Assert.NotEqual(Draw(new SeededRandom(42)), Draw(new SeededRandom(42, stream: 1)));
    }

    // Four standard errors of each mean: 200,000 draws of variance 1/12, 1 and 2.
    [Fact]
    public void Uniform_and_normal_numbers_have_the_right_moments()
    {
        const int n = 200_000;
        var random = new SeededRandom(7);
        var uniform = Enumerable.Range(0, n).Select(_ => random.NextUniform()).ToArray();
        var normal = Enumerable.Range(0, n).Select(_ => random.NextNormal()).ToArray();
        Assert.Equal(0.5, uniform.Average(), 4 * Math.Sqrt(1.0 / 12 / n));
        Assert.InRange(uniform.Min(), 0, 1e-4);
        Assert.InRange(uniform.Max(), 1 - 1e-4, 1 - 1e-17);
        Assert.Equal(0, normal.Average(), 4 / Math.Sqrt(n));
        Assert.Equal(1, normal.Average(z => z * z), 4 * Math.Sqrt(2.0 / n));
        Assert.Equal(NormalDistribution.Cdf(-1.5), normal.Count(z => z < -1.5) / (double)n, 4 * Math.Sqrt(0.067 * 0.933 / n));
    }

    // Chi-squared with 5, 2 and 23 degrees of freedom; a fixed seed, so the test is certain; 0.999 quantiles from R 4.2.2: qchisq.
    [Fact]
    public void Whole_numbers_signs_and_orders_are_all_equally_likely()
    {
        var random = new SeededRandom(11);
        double Distance(IEnumerable<string> draws, int kinds)
        {
            var counts = draws.CountBy(draw => draw).Select(pair => pair.Value).ToArray();
            Assert.Equal(kinds, counts.Length);
            var expected = counts.Sum() / (double)kinds;
            return counts.Sum(count => (count - expected) * (count - expected) / expected);
        }

        var draws = Enumerable.Range(0, 24_000).ToArray();
        Assert.InRange(Distance(draws.Select(_ => $"{random.NextIndex(6)}"), 6), 0, 20.515);
        Assert.InRange(Distance(draws.Select(_ => $"{random.NextSign()}"), 2), 0, 10.828);
        Assert.InRange(Distance(draws.Select(_ => string.Concat(random.Shuffle("abcd".ToCharArray()))), 24), 0, 49.728);
    }

    [Fact]
    public void A_shuffle_keeps_every_item() => Assert.Equal(Enumerable.Range(0, 100), new SeededRandom(3).Shuffle([.. Enumerable.Range(0, 100)]).Order());

    [Fact]
    public void A_whole_number_needs_at_least_one_choice() => Assert.Throws<ArgumentOutOfRangeException>(() => new SeededRandom(1).NextIndex(0));
}

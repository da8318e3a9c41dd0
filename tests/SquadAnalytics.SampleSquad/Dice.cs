using SquadAnalytics.Statistics;

namespace SquadAnalytics.SampleSquad;

/// <summary>One stream of draws.</summary>
internal sealed class Dice
{
    private ulong _state;

    public Dice(int seed, int boxer, Topic topic)
    {
        _state = unchecked(((ulong)(uint)seed << 32) ^ ((ulong)(uint)boxer << 8) ^ (ulong)topic);
        Next();
        _state ^= Next();
    }

    public double Uniform() => ((Next() >> 11) + 0.5) / (1UL << 53);

    public double Normal(double mean, double sd) => mean + (sd * NormalDistribution.Quantile(Uniform()));

    public bool Chance(double share) => Uniform() < share;

    public double Between(double low, double high) => low + ((high - low) * Uniform());

    public int Whole(int lowest, int highest) => lowest + (int)(Uniform() * (highest - lowest + 1));

    private ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15UL;
            var z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }
}

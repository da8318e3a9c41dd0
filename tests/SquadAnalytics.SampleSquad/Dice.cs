using SquadAnalytics.Statistics;

namespace SquadAnalytics.SampleSquad;

/// <summary>One stream of draws: each boxer has one per topic.</summary>
internal sealed class Dice(int seed, int boxer, Topic topic)
{
    private const int Topics = 16;
    private readonly SeededRandom _random = new(seed, (boxer * Topics) + (int)topic + 1);

    public double Normal(double mean, double sd) => mean + (sd * _random.NextNormal());

    public bool Chance(double share) => _random.NextUniform() < share;

    public double Between(double low, double high) => low + ((high - low) * _random.NextUniform());

    public int Whole(int lowest, int highest) => lowest + _random.NextIndex(highest - lowest + 1);
}

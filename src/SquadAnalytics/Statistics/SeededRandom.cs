using SquadAnalytics.Internals;

namespace SquadAnalytics.Statistics;

/// <summary>A seeded generator whose numbers do not depend on the runtime's version: xoshiro256** started from SplitMix64.</summary>
/// <remarks>
/// The same seed gives the same bits everywhere; normal numbers also pass through <c>Math.Log</c> and <c>Math.Sqrt</c> and may differ in
/// their last bit between processors. Not for secrets, not safe for use from several threads at once: give each its own
/// <paramref name="stream"/>. Source: Blackman &amp; Vigna (2021), ACM Trans Math Softw 47(4):36 (from memory; checked against the authors'
/// published outputs).
/// </remarks>
/// <param name="seed">Any whole number.</param>
/// <param name="stream">A second number for independent sequences under one seed, for example the number of a replicate; 0 is the plain seed.</param>
public sealed class SeededRandom(long seed, int stream = 0)
{
    private readonly ulong[] _state = StateFor(seed, stream);
    private double? _spareNormal;

    /// <summary>The next 64 random bits.</summary>
    public ulong NextBits() => Advance(_state);

    /// <summary>A number from 0 (included) to 1 (excluded), uniform over multiples of 2⁻⁵³.</summary>
    public double NextUniform() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A whole number from 0 to <paramref name="count"/> - 1, all equally likely.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The count is below 1.</exception>
    public int NextIndex(int count)
    {
        var choices = (ulong)Require.AtLeast(1, count);
        // Bits below 2^64 mod choices are drawn again, so that every remainder has the same number of bit patterns.
        var unfair = unchecked(0UL - choices) % choices;
        ulong bits;
        do bits = NextBits();
        while (bits < unfair);
        return (int)(bits % choices);
    }

    /// <summary>A standard normal number (Marsaglia's polar method).</summary>
    public double NextNormal()
    {
        if (_spareNormal is { } spare)
        {
            _spareNormal = null;
            return spare;
        }

        double x, y, square;
        do
        {
            x = 2 * NextUniform() - 1;
            y = 2 * NextUniform() - 1;
            square = x * x + y * y;
        }
        while (square is 0 or >= 1);
        var factor = Math.Sqrt(-2 * Math.Log(square) / square);
        _spareNormal = y * factor;
        return x * factor;
    }

    /// <summary>+1 or -1, each with probability one half.</summary>
    public int NextSign() => NextBits() >> 63 == 0 ? 1 : -1;

    /// <summary>A copy of some items in random order, every order equally likely.</summary>
    public IReadOnlyList<T> Shuffle<T>(IReadOnlyList<T> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        T[] shuffled = [.. items];
        for (var last = shuffled.Length - 1; last > 0; last--)
        {
            var other = NextIndex(last + 1);
            (shuffled[last], shuffled[other]) = (shuffled[other], shuffled[last]);
        }

        return shuffled;
    }

    /// <summary>Moves a state on and gives its 64 bits.</summary>
    internal static ulong Advance(ulong[] state)
    {
        unchecked
        {
            var bits = ulong.RotateLeft(state[1] * 5, 7) * 9;
            var shifted = state[1] << 17;
            state[2] ^= state[0];
            state[3] ^= state[1];
            state[1] ^= state[2];
            state[0] ^= state[3];
            state[2] ^= shifted;
            state[3] = ulong.RotateLeft(state[3], 45);
            return bits;
        }
    }

    /// <summary>SplitMix64: moves a counter on and gives 64 well mixed bits.</summary>
    internal static ulong Mix(ref ulong counter)
    {
        unchecked
        {
            counter += 0x9E3779B97F4A7C15;
            var bits = counter;
            bits = (bits ^ (bits >> 30)) * 0xBF58476D1CE4E5B9;
            bits = (bits ^ (bits >> 27)) * 0x94D049BB133111EB;
            return bits ^ (bits >> 31);
        }
    }

    private static ulong[] StateFor(long seed, int stream)
    {
        var counter = unchecked((ulong)seed);
        if (stream != 0)
        {
            var other = unchecked((ulong)stream);
            counter = unchecked(counter ^ Mix(ref other));
        }

        return [Mix(ref counter), Mix(ref counter), Mix(ref counter), Mix(ref counter)];
    }
}

namespace SquadAnalytics.Change;

/// <summary>Two blocks as they can be compared: one after the other for the same athletes, or side by side for two groups.</summary>
public sealed record BlockPair
{
    private BlockPair(TrainingBlock first, TrainingBlock second, bool areTwoGroups, bool wasSwapped) =>
        (First, Second, AreTwoGroups, WasSwapped) = (first, second, areTwoGroups, wasSwapped);

    /// <summary>The earlier block; of two groups the one that was named first.</summary>
    public TrainingBlock First { get; }

    /// <summary>The later block, or that of the second group.</summary>
    public TrainingBlock Second { get; }

    /// <summary>Whether the blocks run side by side for different members.</summary>
    public bool AreTwoGroups { get; }

    /// <summary>Whether the later block was named first and the order was turned round.</summary>
    public bool WasSwapped { get; }

    /// <summary>Puts two blocks in the order of their dates.</summary>
    /// <param name="one">A block.</param>
    /// <param name="other">Another block.</param>
    /// <exception cref="ArgumentException">It is the same block twice, or the blocks share days and members, so that a test would belong to both.</exception>
    public static BlockPair Of(TrainingBlock one, TrainingBlock other)
    {
        ArgumentNullException.ThrowIfNull(one);
        ArgumentNullException.ThrowIfNull(other);
        if (one.Id == other.Id) throw new ArgumentException($"'{one}' was named twice: name two different blocks.", nameof(other));
        if (other.From > one.To) return new BlockPair(one, other, areTwoGroups: false, wasSwapped: false);
        if (one.From > other.To) return new BlockPair(other, one, areTwoGroups: false, wasSwapped: true);
        if (one.Members.Count > 0 && other.Members.Count > 0 && !one.Members.Intersect(other.Members, StringComparer.Ordinal).Any()) return new BlockPair(one, other, areTwoGroups: true, wasSwapped: false);
        throw new ArgumentException($"Blocks '{one}' and '{other}' share days and members: a test would belong to both. Blocks of the same athletes follow each other; blocks of two groups have different members.", nameof(other));
    }

    /// <summary>A comparison of the same athletes.</summary>
    /// <param name="compare">What to do with the earlier and the later block.</param>
    /// <returns>What the comparison answers, or <see cref="Refusal.NotComparable"/> where the blocks are of two groups.</returns>
    public Answer<T> ForSameAthletes<T>(Func<TrainingBlock, TrainingBlock, Answer<T>> compare)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(compare);
        return AreTwoGroups ? new NotEstimable("the difference within athletes", Refusal.NotComparable, "the same athletes in blocks one after the other", "two groups side by side") : compare(First, Second);
    }

    /// <summary>A comparison of two groups.</summary>
    /// <param name="compare">What to do with the two groups' blocks.</param>
    /// <returns>What the comparison answers, or <see cref="Refusal.NotComparable"/> where the blocks follow each other.</returns>
    public Answer<T> ForTwoGroups<T>(Func<TrainingBlock, TrainingBlock, Answer<T>> compare)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(compare);
        return AreTwoGroups ? compare(First, Second) : new NotEstimable("the difference between groups", Refusal.NotComparable, "two groups side by side", "blocks one after the other");
    }

    /// <summary>Both names.</summary>
    public override string ToString() => AreTwoGroups ? $"{First} beside {Second}" : $"{First}, then {Second}";
}

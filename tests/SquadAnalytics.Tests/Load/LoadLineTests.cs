using SquadAnalytics.Load;

namespace SquadAnalytics.Tests.Load;

public sealed class LoadLineTests
{
    [Fact]
    public void Seven_days_give_a_weight_of_a_quarter()
    {
        // Hand arithmetic: 420; 0.75 * 420; 0.75 * 315 + 0.25 * 540; and so on.
        double[] expected = [420, 315, 371.25, 368.4375, 276.328, 357.246, 267.935];
        var line = LoadLine.Smooth([420, 0, 540, 360, 0, 600, 0], 7);
        for (var day = 0; day < expected.Length; day++) Assert.Equal(expected[day], line[day], 6e-4);
        Assert.Throws<ArgumentOutOfRangeException>(() => LoadLine.Smooth([420], 0));
    }
}

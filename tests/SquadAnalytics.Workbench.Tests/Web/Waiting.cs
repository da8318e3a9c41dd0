namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Waiting for something outside the browser.</summary>
internal static class Waiting
{
    /// <summary>Waits until a condition holds.</summary>
    public static async Task Until(Func<bool> condition)
    {
        for (var left = 600; left > 0 && !condition(); left--) await Task.Delay(200);
        Assert.True(condition(), "It did not come true within two minutes.");
    }
}

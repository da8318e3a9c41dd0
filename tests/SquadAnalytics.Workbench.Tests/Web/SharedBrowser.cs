namespace SquadAnalytics.Workbench.Tests.Web;

/// <summary>Tests that share one browser; they run one after the other.</summary>
[CollectionDefinition(Name)]
public sealed class SharedBrowser : ICollectionFixture<TestBrowser>
{
    /// <summary>Name of the collection.</summary>
    public const string Name = "browser";
}

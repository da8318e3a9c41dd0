using SquadAnalytics.Notebooks.Sql;

namespace SquadAnalytics.Notebooks.Tests.Sql;

/// <summary>What the text of a query says, as the README tells it.</summary>
public sealed class SqlTextTests
{
    [Theory]
    [InlineData("#!sql --name evening\nSELECT 1", "evening")]
    [InlineData("\n#!sql  --name evening", "evening")]
    [InlineData("#!sql\nSELECT 1 -- --name evening", null)]
    [InlineData("SELECT 1", null)]
    public void The_first_line_names_the_result(string code, string? name) => Assert.Equal(name, SqlText.ResultName(code));
}

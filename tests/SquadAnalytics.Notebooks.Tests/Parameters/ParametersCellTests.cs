using System.Globalization;
using SquadAnalytics.Notebooks.Parameters;

namespace SquadAnalytics.Notebooks.Tests.Parameters;

public sealed class ParametersCellTests
{
    private const string Cell = """
        // What the reader may choose.
        string athlete = "B07"; // whom it is about [athlete]
        string? block = null; // one block only [block]
        double level = 0.90; // confidence level [0.5..0.99]
        int fromSet = 3; // from which set
        bool logScale = false;
        DateOnly from = new DateOnly(2026, 3, 1); // first day [date]
        string scale = "raw"; // [raw|log]
        var seed = 17;
        """;

    [Fact]
    public void Each_line_is_a_parameter_with_type_value_and_meaning()
    {
        var parameters = ParametersCell.Read(Cell);
        Assert.Equal(
            ["athlete Text B07", "block Text ", "level Number 0.9", "fromSet WholeNumber 3", "logScale YesNo false", "from Date 2026-03-01", "scale Text raw", "seed WholeNumber 17"],
            parameters.Select(parameter => $"{parameter.Name} {parameter.Type} {parameter.Value}"));
        Assert.Equal(("whom it is about", "athlete"), (parameters[0].Description, parameters[0].ChosenFrom));
        Assert.True(parameters[1].IsOptional);
        Assert.Equal((0.5, 0.99), (parameters[2].Minimum, parameters[2].Maximum));
        Assert.Equal(["raw", "log"], parameters[6].Choices);
    }

    [Fact]
    public void Chosen_values_stand_in_the_lines_and_nothing_else_changes()
    {
        var chosen = ParametersCell.Read(Cell).Select(parameter => parameter.Name switch
        {
            "athlete" => parameter.WithValue("O\"Neil\\\n"),
            "level" => parameter.WithValue("0.95"),
            "from" => parameter.WithValue("2025-12-31"),
            "block" => parameter.WithValue("Base"),
            _ => parameter,
        });
        var written = ParametersCell.Write(Cell, [.. chosen]);
        Assert.Equal(
            Cell.Replace("\"B07\"", "\"O\\\"Neil\\\\\\u000a\"", StringComparison.Ordinal)
                .Replace("0.90", "0.95", StringComparison.Ordinal)
                .Replace("2026, 3, 1", "2025, 12, 31", StringComparison.Ordinal)
                .Replace("null", "\"Base\"", StringComparison.Ordinal),
            written);
        Assert.Equal("O\"Neil\\\n", ParametersCell.Read(written)[0].Value);
    }

    [Theory]
    [InlineData("level", "0,95", "must be a number with a decimal point")]
    [InlineData("level", "1", "from 0.5 to 0.99")]
    [InlineData("level", "NaN", "must be a number")]
    [InlineData("fromSet", "2.5", "must be a whole number")]
    [InlineData("logScale", "perhaps", "must be true or false")]
    [InlineData("from", "1.3.2026", "must be a date as year-month-day")]
    [InlineData("from", "2026-02-30", "must be a date as year-month-day")]
    [InlineData("scale", "cubic", "must be one of raw, log")]
    public void A_value_that_does_not_fit_is_refused_with_what_would(string name, string value, string reason)
    {
        var parameter = ParametersCell.Read(Cell).Single(one => one.Name == name);
        var error = Assert.Throws<ParameterException>(() => parameter.WithValue(value));
        Assert.StartsWith($"'{value}' does not fit parameter {name}", error.Message, StringComparison.Ordinal);
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("int sets = 1 + 2;", "Line 1")]
    [InlineData("\nint sets = Count();", "Line 2")]
    [InlineData("decimal sets = 3;", "not 'decimal'")]
    [InlineData("int sets = null;", "ends in '?'")]
    [InlineData("DateOnly from = new DateOnly(2026, 13, 1);", "year-month-day")]
    [InlineData("int sets = 3; int more = 4;", "Line 1")]
    [InlineData("int sets = 3;\nint sets = 4;", "a second time")]
    public void A_cell_that_holds_more_than_literals_is_refused_with_its_line(string source, string reason)
    {
        var error = Assert.Throws<ParameterException>(() => ParametersCell.Read(source));
        Assert.Contains(reason, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void The_machine_s_language_changes_nothing(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = new CultureInfo(culture);
            Assert.Equal("0.95", ParametersCell.Read(Cell)[2].WithValue("0.95").Literal());
            Assert.Equal("true", ParametersCell.Read(Cell)[4].WithValue("TRUE").Value);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}

using System.Globalization;
using System.Text;
using SquadAnalytics.Import;

namespace SquadAnalytics.Tests.Import;

public class ReadAheadTests
{
    private static IEnumerable<SourceLine> Numbered(int count) => Enumerable.Range(1, count).Select(number => new SourceLine(number, [new SourceCell(number.ToString(CultureInfo.InvariantCulture))]));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(4096)]
    [InlineData(50_000)]
    public void The_same_lines_come_in_the_same_order(int count) =>
        Assert.Equal(Enumerable.Range(1, count), ReadAhead.Of(() => Numbered(count)).Select(line => line.Number));

    [Fact]
    public void Who_stops_early_stops_the_reading()
    {
        var read = 0;
        IEnumerable<SourceLine> Counted()
        {
            foreach (var line in Numbered(int.MaxValue - 1))
            {
                read++;
                yield return line;
            }
        }

        Assert.Equal(3, ReadAhead.Of(Counted).Take(3).Count());
        var after = read;
        Assert.InRange(after, 3, 100_000);
        Thread.Sleep(20);
        Assert.Equal(after, read);
    }

    [Fact]
    public void An_error_while_reading_reaches_the_reader()
    {
        static IEnumerable<SourceLine> Broken() => Numbered(10_000).Select(line => line.Number < 9_000 ? line : throw new UnreadableSourceException("torn", "a whole file"));
        var seen = 0;
        var error = Assert.Throws<UnreadableSourceException>(() =>
        {
            foreach (var _ in ReadAhead.Of(Broken)) seen++;
        });
        Assert.Equal("torn", error.Message);
        Assert.InRange(seen, 0, 8_999);
    }

    [Fact]
    public void A_file_that_is_read_ahead_gives_the_sessions_that_were_written_and_accounts_for_every_row()
    {
        // 40,000 sessions of four sets each: beyond the size from which files are read ahead. One row in 10,000 cannot be read.
        var text = new StringBuilder("athlete,date,set,seconds\n");
        const int Rows = 160_000;
        for (var row = 0; row < Rows; row++)
            text.Append(CultureInfo.InvariantCulture, $"boxer {row / 400},{new DateOnly(2030, 1, 7).AddDays(row / 4 % 100 * 7):yyyy-MM-dd},{(row % 4) + 1},{(row % 10_000 == 9_999 ? "x" : $"6{row % 4}.{row % 10}")}\n");
        Assert.True(text.Length > ReadAhead.SmallestFile);
        var result = ClipboardImport.Read(ImportSource.FromText("long.csv", text.ToString()));
        Assert.Equal((Rows, 16), (result.Report.Rows, result.Report.RefusedRows));
        Assert.Equal(Enumerable.Range(1, 16).Select(k => (10_000 * k) + 1), result.Report.Refused.Select(row => (int)row.Place.Line));
        Assert.Equal(40_000, result.NewSessions.Count);
        foreach (var session in result.NewSessions.Where((_, k) => k % 997 == 0 && k > 0))
        {
            Assert.Equal(4, session.Sets.Count);
            Assert.Equal([60, 61, 62, 63], session.TimesSeconds.Select(Math.Floor));
        }
    }
}

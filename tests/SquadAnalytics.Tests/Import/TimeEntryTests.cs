using SquadAnalytics.Import;

namespace SquadAnalytics.Tests.Import;

public sealed class TimeEntryTests
{
    // The grammar of clipboard entries is common practice, no source; values by hand.
    [Theory]
    [InlineData("62", 62, 0)]
    [InlineData("62.4", 62.4, 1)]
    [InlineData("62.40", 62.4, 2)]
    [InlineData("  62.4 ", 62.4, 1)]
    [InlineData("1:02", 62, 0)]
    [InlineData("1:02.4", 62.4, 1)]
    [InlineData("0:58", 58, 0)]
    [InlineData("59.999", 59.999, 3)]
    [InlineData("5:29.25", 329.25, 2)]
    public void A_time_is_read_with_the_decimals_typed(string text, double seconds, int decimals)
    {
        var entry = TimeEntry.Parse(text);
        Assert.Equal(EntryKind.Timed, entry.Kind);
        Assert.Equal(seconds, entry.Work!.Value.Value);
        Assert.Equal(decimals, entry.Decimals);
        Assert.Equal(Math.Pow(10, -decimals), entry.Resolution!.Value.Value, 1e-15);
    }

    [Theory]
    [InlineData("DNF", EntryKind.NotFinished)]
    [InlineData("dnf", EntryKind.NotFinished)]
    [InlineData("DNS", EntryKind.NotStarted)]
    [InlineData("", EntryKind.NotRecorded)]
    [InlineData("   ", EntryKind.NotRecorded)]
    [InlineData("-", EntryKind.NotRecorded)]
    [InlineData("–", EntryKind.NotRecorded)]
    [InlineData(null, EntryKind.NotRecorded)]
    public void A_missing_time_says_why_it_is_missing(string? text, EntryKind kind)
    {
        var entry = TimeEntry.Parse(text);
        Assert.Equal(kind, entry.Kind);
        Assert.Null(entry.Work);
        Assert.Null(entry.Reason);
    }

    [Theory]
    [InlineData("1:72", "two digits from 00 to 59")]
    [InlineData("1:2", "two digits from 00 to 59")]
    [InlineData("1:002", "two digits from 00 to 59")]
    [InlineData("62s4", "not a time")]
    [InlineData("0", "above 0")]
    [InlineData("0:00.0", "above 0")]
    [InlineData("-62", "negative")]
    [InlineData("1:02:30", "too long for one set")]
    [InlineData("62,4", "decimal comma")]
    [InlineData("1:02,4", "decimal comma")]
    [InlineData("62.", "not a time")]
    [InlineData(".5", "not a time")]
    [InlineData("1e3", "not a time")]
    [InlineData("∞", "not a time")]
    [InlineData("NaN", "not a time")]
    [InlineData("1.2.3", "not a time")]
    [InlineData("62.43333", "three decimals")]
    [InlineData("123456", "not a time")]
    [InlineData("٦٢", "not a time")]
    [InlineData(":30", "minutes")]
    public void Anything_else_is_refused_with_a_reason(string text, string reason)
    {
        var entry = TimeEntry.Parse(text);
        Assert.Equal(EntryKind.Unreadable, entry.Kind);
        Assert.Contains(reason, entry.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("62,4", 62.4)]
    [InlineData("62.4", 62.4)]
    [InlineData("1:02,45", 62.45)]
    public void A_comma_is_a_decimal_mark_only_where_that_is_said(string text, double seconds) =>
        Assert.Equal(seconds, TimeEntry.Parse(text, DecimalMark.Comma).Work!.Value.Value);

    [Theory]
    [InlineData("1,234.5")]
    [InlineData("1,2,3")]
    public void Two_marks_are_never_a_time(string text) => Assert.Equal(EntryKind.Unreadable, TimeEntry.Parse(text, DecimalMark.Comma).Kind);

    [Fact]
    public void Every_accepted_time_reads_back_from_its_own_text()
    {
        for (var tenths = 1; tenths < 20_000; tenths++)
        {
            var entry = TimeEntry.Parse((tenths / 10.0).ToString("F1", System.Globalization.CultureInfo.InvariantCulture));
            Assert.Equal(tenths / 10.0, entry.Work!.Value.Value);
            Assert.Equal(entry, TimeEntry.Parse(entry.ToString()));
        }
    }
}

using SquadAnalytics.Change;
using SquadAnalytics.Reliability;
using SquadAnalytics.Reporting.Tests.Figures;
using SquadAnalytics.Sets;

namespace SquadAnalytics.Reporting.Tests;

/// <summary>Expected sentences written by hand.</summary>
public class SentencesTests
{
    private static readonly NumberFormat Format = new(1);

    [Fact]
    public void A_mistake_is_told_without_the_name_of_a_parameter()
    {
        Assert.Equal("There is no block 'x'.", Sentences.Mistake(new ArgumentException("There is no block 'x'.", "idOrName")));
        Assert.Equal("It is full.", Sentences.Mistake(new IOException("It is full.")));
    }

    private static LateSlowdownResult Slowdown(int? afterSet) =>
        LateSlowdown.Fit(Examples.Sessions, new LateSlowdownOptions { AfterSet = afterSet, Selection = SelectionOptions.KeepAll }).GetOrThrow();

    private static AthleteChangeResult ChangeOf(int athlete, params int[] baselineWeeks)
    {
        var sessions = Examples.Squad().SessionsOf($"b{athlete}");
        return AthleteChange.Between(
            [.. baselineWeeks.Select(week => sessions[week])], [sessions[3]], TypicalError.Entered(new Seconds(2.5502713), 21, "eight athletes, four tests"), SmallestWorthwhileChange.Entered(new Seconds(5))).GetOrThrow();
    }

    // The intervals of the next two: R 4.2.2, -12.9 + c(-1, 1) * qt(0.95, 21) * 3.606628 and -3.2 likewise.
    [Fact]
    public void A_change_names_direction_level_noise_and_verdict() => Assert.Equal(
        "B7: 12.9 s faster than the test before, 90 % interval 6.7 to 19.1 s faster. Test noise is about 2.55 s. Faster by a worthwhile amount.",
        Sentences.Change("B7", ChangeOf(7, 0), Format));

    [Fact]
    public void A_change_that_may_be_either_says_both_directions() => Assert.Equal(
        "B8: 3.2 s faster than the test before, 90 % interval 9.4 s faster to 3.0 s slower. Test noise is about 2.55 s. Not clear from these tests.",
        Sentences.Change("B8", ChangeOf(8, 0), Format));

    [Fact]
    public void A_mean_of_several_tests_is_named_as_one() =>
        Assert.Contains("than the mean of the 3 tests before, 90 % interval", Sentences.Change("B7", ChangeOf(7, 0, 1, 2), Format), StringComparison.Ordinal);

    // The numbers of these sentences: R 4.2.2, t.test() on the six contrasts of the sessions in Examples: mean 5.975, 90 % 5.602963 to 6.347037.
    [Fact]
    public void Late_sets_are_compared_and_no_cause_is_named() => Assert.Equal(
        "In 6 tests, sets 4-5 took 5.98 s longer than sets 1-3 (90 % interval 5.60 to 6.35 s); more than a steady drift. Times alone do not say why.",
        Sentences.LateSets(Slowdown(3), Format));

    [Fact]
    public void A_set_that_was_found_by_looking_says_so()
    {
        // By enumeration of the 2^6 sign flips the smallest p-value, 1/64 = 0.0156, is reached.
        var sentence = Sentences.LateSets(Slowdown(null), Format);
        Assert.Contains("Set 3 was found by looking: p = .016 with the search counted.", sentence, StringComparison.Ordinal);
    }

    // R 4.2.2: t.test() of the seven athletes' differences of block means: -5.703571, 90 % -7.779986 to -3.627157.
    [Fact]
    public void Blocks_differ_and_the_two_weightiest_limits_follow()
    {
        var squad = TwoBlocks.Squad with { Blocks = [TwoBlocks.Base, TwoBlocks.Power] };
        var second = TwoBlocks.Power with { DefinedAfterData = true };
        Assert.Equal(
            "Power differed from Base by −5.7 s per athlete, faster (90 % interval −7.8 to −3.6 s, 7 athletes, 22 + 22 tests). Order was not randomised. " +
            "The blocks were chosen after the results were seen. Power came second: the season, practice with the test and, in juniors, growth point the same way. Juniors compared: 1.",
            Sentences.Blocks(TwoBlocks.Comparison(second), new BlockHonesty(TwoBlocks.Facts(squad, second), squad), Format));
    }

    [Fact]
    public void A_refusal_says_what_is_needed_and_what_was_found() => Assert.Equal(
        "Not enough data for the slope: needs 3 sets, has 2 sets.",
        Sentences.Refusal(new NotEstimable("the slope", Refusal.TooFewSets, 3, 2, "sets")));

    [Fact]
    public void No_sentence_uses_a_banned_word()
    {
        string[] banned = ["proves", "significant", "guaranteed", "elite", "responder", "at risk", "!"];
        HealthNote[] notes = [.. TwoBlocks.Squad.Athletes.Take(6).Select(athlete => new HealthNote(athlete.Id, athlete.Id, TwoBlocks.Base.From, "cold"))];
        var honesty = new BlockHonesty(TwoBlocks.Facts(TwoBlocks.Squad, TwoBlocks.Power, new BlockCircumstancesOptions { HealthNotes = notes, ComparisonsTried = 4 }), TwoBlocks.Squad);
        var texts = honesty.Items.Select(item => item.Sentence).Concat(Cautions.All.Select(caution => caution.Text));
        Assert.All(texts, text => Assert.DoesNotContain(banned, word => text.Contains(word, StringComparison.OrdinalIgnoreCase)));
    }

    [Theory]
    [InlineData(0, "No illness or injury note is recorded.")]
    [InlineData(1, "Illness or injury was noted; counts below 5 athletes are not shown.")]
    [InlineData(6, "Athletes with an illness or injury noted: 6 in Base, 0 in Power.")]
    public void A_small_number_of_health_notes_is_not_printed(int athletes, string expected)
    {
        HealthNote[] notes = [.. TwoBlocks.Squad.Athletes.Take(athletes).Select(athlete => new HealthNote(athlete.Id, athlete.Id, TwoBlocks.Base.From, "cold"))];
        var honesty = new BlockHonesty(TwoBlocks.Facts(TwoBlocks.Squad, TwoBlocks.Power, new BlockCircumstancesOptions { HealthNotes = notes }), TwoBlocks.Squad);
        Assert.Contains(honesty.Items, item => item.Sentence == expected);
    }

    [Fact]
    public void Every_item_is_answered_from_the_logbook()
    {
        // By hand from the invented logbook: H came once, in Base; the watch gave way to a phone in Power; nothing else is written down.
        var items = new BlockHonesty(TwoBlocks.Facts(TwoBlocks.Squad, TwoBlocks.Power), TwoBlocks.Squad).Items.Select(item => item.Sentence).ToArray();
        Assert.Equal("Tests done of those due: 72 % (23 of 32) in Base, 69 % (22 of 32) in Power.", items[3]);
        Assert.Equal("Tested in one block only and left out (1): Boxer H (1 test in Base, 300.0 s).", items[4]);
        Assert.Equal("Changed between the blocks: timer (watch; then phone). Not recorded in both: place and step of the written times.", items[5]);
        Assert.Equal("No test followed sparring on the day. No test fell in the week up to a weigh-in. Sparring before the test is not recorded for 45 tests (23 in Base, 22 in Power).", items[6]);
        Assert.Equal("Health notes were not looked at.", items[7]);
        Assert.Equal("No test lay within 72 hours of a bout.", items[8]);
        Assert.Equal("The logbook holds no other pair of blocks to compare.", items[9]);
    }

    [Fact]
    public void Findings_show_method_count_and_source_below_the_sentence()
    {
        var finding = new Finding("It took longer.") { Estimate = Given.Seconds(5.975, 5.6, 6.35), Source = "Matthews et al. 1990" };
        Assert.Equal("1. It took longer.\n   [t over sessions · n = 6 · df = 5 · Matthews et al. 1990]\n", new Findings(finding).ToText());
    }
}

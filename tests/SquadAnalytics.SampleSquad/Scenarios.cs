namespace SquadAnalytics.SampleSquad;

/// <summary>The scenarios in use. Clubs, people and tests are invented.</summary>
public static class Scenarios
{
    /// <summary>
    /// The seed of the committed sample. It was picked among the first hundred so that the boxer whose times are only noise looks 5 to 6 s
    /// slower in the last test than in the three before it; the simulations use other seeds.
    /// </summary>
    public const int QuillmereSeed = 56;

    /// <summary>The sample squad: 24 boxers over 30 weeks, six sets of five stations every 1:40.</summary>
    public static SampleScenario Quillmere { get; } = MakeQuillmere(QuillmereSeed);

    /// <summary>
    /// A second, smaller squad that shares nothing with the first: 14 boxers over 18 weeks, seven sets of four stations every 1:25,
    /// another late break (after set 4, 6 %) at another station.
    /// </summary>
    public static SampleScenario Brackenholt { get; } = MakeBrackenholt(seed: 4711);

    /// <summary>The sample's scenario with several times as many boxers and its stories told once.</summary>
    /// <param name="factor">How many times as many boxers; 1 or more.</param>
    /// <param name="seed">Seed of all draws, names included.</param>
    public static SampleScenario Larger(int factor, int seed)
    {
        if (factor < 1) throw new ArgumentOutOfRangeException(nameof(factor), factor, "A squad cannot be enlarged less than once.");
        var boxers = Enumerable.Range(0, factor).SelectMany(_ => QuillmereRoster.Boxers)
            .Select((boxer, index) => index < QuillmereRoster.Boxers.Count ? boxer : boxer with { Story = null })
            .ToList();
        return MakeQuillmere(seed) with { Boxers = InventedNames.Rename(boxers, seed) };
    }

    private static SampleScenario MakeQuillmere(int seed)
    {
        Station[] stations = [new("squat jumps", 14), new("press-ups", 12), new("mountain climbers", 24), new("burpees", 8), new("sit-throughs", 10)];
        Station[] scaled = [new("squat jumps", 10), new("press-ups", 8), new("mountain climbers", 20), new("burpees", 6), new("sit-throughs", 8)];
        Station[] six = [.. stations, new("skipping turns", 30)];
        var every = new Seconds(100);
        var main = new Protocol("six-five", "Six Fives", stations, 6, every) { Bands = Bands(lowest: 288, width: 36) };
        var junior = new Protocol("six-five-junior", "Six Fives, junior", scaled, 6, every) { Bands = Bands(lowest: 252, width: 36), VariantOf = main.Id };
        var four = new Protocol("long-four", "Long Four", six, 4, new Seconds(150)) { Bands = Bands(lowest: 240, width: 24), StartRule = StartRule.StopAtMissedStart };
        return new SampleScenario(
            "Quillmere Amateur Boxing Club (invented)",
            seed,
            QuillmereRoster.Boxers,
            new SampleProtocol(main, [13.8, 11.0, 10.8, 15.0, 7.9], 1.6),
            new SampleProtocol(junior, [12.0, 9.6, 10.4, 13.2, 7.4], 1.8),
            new SampleProtocol(four, [13.8, 11.0, 10.8, 15.0, 7.9, 8.6], 2.0));
    }

    private static SampleScenario MakeBrackenholt(int seed)
    {
        Station[] stations = [new("step-ups", 20), new("dips", 12), new("sprawls", 8), new("shuttle steps", 16)];
        Station[] scaled = [new("step-ups", 16), new("dips", 8), new("sprawls", 6), new("shuttle steps", 12)];
        Station[] tall = [.. stations, new("plank jacks", 20)];
        var every = new Seconds(85);
        var main = new Protocol("seven-four", "Seven Fours", stations, 7, every) { Bands = Bands(lowest: 322, width: 35) };
        var junior = new Protocol("seven-four-junior", "Seven Fours, junior", scaled, 7, every) { Bands = Bands(lowest: 294, width: 35), VariantOf = main.Id };
        var three = new Protocol("tall-three", "Tall Three", tall, 3, new Seconds(140)) { Bands = Bands(lowest: 168, width: 18) };
        var boxers = QuillmereRoster.Boxers.Take(14).Select((boxer, index) => boxer with
        {
            Junior = index >= 10,
            BirthYear = index >= 10 ? 2015 : boxer.BirthYear,
            FromWeek = 1,
            ToWeek = null,
            HeadKnockWeek = index == 8 ? 7 : null,
            Story = index switch
            {
                1 => new LateBreak(AfterSet: 4, Percent: 6, Station: "dips", StationShare: 0.75, SpreadPercent: 1),
                3 => new FastStart(MeanPercent: 5, SpreadPercent: 3, Payback: 0.6),
                5 => new OnlyNoise(),
                6 => new Improvement(PercentPerWeek: -0.35),
                _ => null,
            },
        }).ToList();
        return new SampleScenario(
            "Brackenholt Boxing Gym (invented)",
            seed,
            InventedNames.Rename(boxers, seed),
            new SampleProtocol(main, [15.8, 12.4, 13.6, 11.2], 1.4),
            new SampleProtocol(junior, [14.0, 10.6, 12.2, 10.0], 1.6),
            new SampleProtocol(three, [16.2, 12.7, 13.9, 11.5, 9.4], 1.8))
        {
            Start = new DateOnly(2032, 1, 5),
            Weeks = 18,
            LongEvery = 8,
            StationsEvery = 1,
            SecondBlockFromWeek = 10,
            BoutWeeks = [6, 14],
            FirstBlock = new SampleBlock("Base", "volume at an even pace", 5.5, 80),
            SecondBlock = new SampleBlock("Sharpening", "fewer, harder repeats", 7.5, 60),
        };
    }

    /// <summary>Five bands of equal width, named after a smithy.</summary>
    private static IReadOnlyList<PerformanceBand> Bands(double lowest, double width) =>
    [
        .. new[] { "Flame", "Hammer", "Anvil", "Bellows", "Ember" }
            .Select((name, index) => new PerformanceBand(name, new Seconds(lowest + (index * width)), new Seconds(lowest + ((index + 1) * width)))),
    ];
}

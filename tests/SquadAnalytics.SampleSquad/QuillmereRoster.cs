namespace SquadAnalytics.SampleSquad;

/// <summary>The roster of the sample squad. Names are invented and belong to nobody we know of.</summary>
internal static class QuillmereRoster
{
    public static IReadOnlyList<SampleBoxer> Boxers { get; } =
    [
        Adult("Dragan Ollivarne", "DOL", Sex.Male, 2006) with { Story = new LateBreak(AfterSet: 3, Percent: 5, Station: "press-ups", StationShare: 0.8, SpreadPercent: 0.8) },
        Adult("Nkechi Varnhalm", "NVA", Sex.Female, 2004) with { Story = new FastStart(MeanPercent: 4, SpreadPercent: 3, Payback: 0.6) },
        Adult("Søren Mbalakwe", "SMB", Sex.Male, 2007) with { Story = new OnlyNoise() },
        Adult("Anahí Wexcombe", "AWE", Sex.Female, 2009) with { Story = new Improvement(PercentPerWeek: -0.25) },
        Adult("Teodor Quaysley", "TQU", Sex.Male, 2003),
        Adult("Łucja Overdene", "LOV", Sex.Female, 2005),
        Adult("Amaru Fensgate", "AFE", Sex.Male, 2008),
        Adult("Yusra Halbekker", "YHA", Sex.Female, 2006),
        Adult("Piers Tamanoah", "PTA", Sex.Male, 2001) with { HeadKnockWeek = 11 },
        Adult("İlkay Stormhaugh", "IST", Sex.Male, 2010),
        Adult("Zoë Tarrakainen", "ZTA", Sex.Female, 2002),
        Adult("Kofi Lundmarsh", "KLU", Sex.Male, 2005),
        Adult("Nguyệt Harrowmont", "NHA", Sex.Female, 2007) with { FromWeek = 5 },
        Adult("Matiu Gravelock", "MGR", Sex.Male, 2000),
        Adult("Sorcha Dimakopa", "SDI", Sex.Female, 2008),
        Adult("Hiroto Vellacorte", "HVE", Sex.Male, 2009) with { ToWeek = 23 },
        Adult("Bashir Kettlesby", "BKE", Sex.Male, 2004),
        Junior("Tindra Moxwell-Uwem", "J1", Sex.Female, 2015),
        Junior("Idris Palomarsh", "J2", Sex.Male, 2014),
        Junior("Maëlle Strandobi", "J3", Sex.Female, 2015),
        Junior("Ravi Thornelund", "J4", Sex.Male, 2016),
        Junior("Eluned Carrasquin", "J5", Sex.Female, 2014),
        Junior("Oskar Bellweather-Diop", "J6", Sex.Male, 2015),
        Junior("Paulo Grimshandl", "J7", Sex.Male, 2016) with { FromWeek = 4 },
    ];

    private static SampleBoxer Adult(string name, string code, Sex sex, int birthYear) => new(name, code, sex, birthYear);

    private static SampleBoxer Junior(string name, string code, Sex sex, int birthYear) => new(name, code, sex, birthYear) { Junior = true };
}

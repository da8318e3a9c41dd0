using CsCheck;
using SquadAnalytics.Statistics;

namespace SquadAnalytics.Tests.Statistics;

public sealed class MultipleComparisonTests
{
    // R 4.2.2: p.adjust(raw, "bonferroni"), "holm", "BH" on the pairwise p-values of datasets::InsectSprays.
    [Fact]
    public void Adjusted_p_values_match_R()
    {
        var values = ReferenceData.Values("comparison", "insectsprays", "bonferroni");
        var raw = values.Numbers("raw");
        void Check(string name, IReadOnlyList<double> got)
        {
            foreach (var (expected, found) in values.Numbers(name).Zip(got)) ReferenceData.AssertClose(expected, found, 1e-9, what: name);
        }

        Check("bonferroni", MultipleTesting.Bonferroni(raw));
        Check("holm", MultipleTesting.Holm(raw));
        Check("bh", MultipleTesting.BenjaminiHochberg(raw));
        Check("raw", [.. OfSprays(PairwiseAdjustment.None).Select(pair => pair.AdjustedPValue)]);
        Check("bh", [.. OfSprays(PairwiseAdjustment.BenjaminiHochberg).Select(pair => pair.AdjustedPValue)]);
        Check("bonferroni", [.. OfSprays(PairwiseAdjustment.Bonferroni).Select(pair => pair.AdjustedPValue)]);
    }

    // R 4.2.2: TukeyHSD(aov(value ~ group)) on datasets::InsectSprays.
    [Fact]
    public void Tukeys_comparisons_match_R()
    {
        var rows = ReferenceData.Values("comparison", "insectsprays", "tukey").EnumerateArray().ToArray();
        var got = OfSprays(PairwiseAdjustment.Tukey);
        Assert.Equal(rows.Length, got.Count);
        foreach (var (row, pair) in rows.Zip(got))
        {
            Assert.Equal(row.GetProperty("pair").GetString(), $"{pair.Second}-{pair.First}");
            ReferenceData.AssertClose(row.Number("diff"), pair.Difference.Value, 1e-5);
            ReferenceData.AssertClose(row.Number("lwr"), pair.Interval.Lower, 1e-5);
            ReferenceData.AssertClose(row.Number("upr"), pair.Interval.Upper, 1e-5);
            ReferenceData.AssertClose(row.Number("p adj"), pair.AdjustedPValue, 1e-5, 1e-9);
        }
    }

    // The fifteen p-values of Benjamini & Hochberg (1995), of which their method rejects four at 5 % and Bonferroni's three; R 4.2.2: p.adjust.
    [Fact]
    public void The_published_example_rejects_four_of_fifteen()
    {
        double[] p = [.0001, .0004, .0019, .0095, .0201, .0278, .0298, .0344, .0459, .3240, .4262, .5719, .6528, .7590, 1];
        Assert.Equal(4, MultipleTesting.BenjaminiHochberg(p).Count(value => value <= 0.05));
        Assert.Equal(3, MultipleTesting.Bonferroni(p).Count(value => value <= 0.05));
        Assert.Equal(0.0638571428571429, MultipleTesting.BenjaminiHochberg(p)[5], 1e-15);
        Assert.Equal(0.278, MultipleTesting.Holm(p)[5], 1e-15);
    }

    [Fact]
    public void Adjustment_never_lowers_a_p_value_and_keeps_the_order_of_the_input() =>
        Gen.Double[0, 1].Array[1, 20].Sample(p =>
        {
            var (bonferroni, holm, bh) = (MultipleTesting.Bonferroni(p), MultipleTesting.Holm(p), MultipleTesting.BenjaminiHochberg(p));
            for (var i = 0; i < p.Length; i++)
            {
                Assert.InRange(bh[i], p[i], holm[i] + 1e-15);
                Assert.InRange(holm[i], p[i], bonferroni[i]);
                for (var j = 0; j < p.Length; j++)
                {
                    if (p[i] < p[j]) Assert.True(holm[i] <= holm[j] && bh[i] <= bh[j]);
                }
            }
        }, iter: 200);

    [Fact]
    public void A_p_value_above_1_is_the_callers_mistake() => Assert.Throws<ArgumentException>(() => MultipleTesting.Holm([0.5, 1.2]));

    private static IReadOnlyList<PairwiseComparison> OfSprays(PairwiseAdjustment adjustment) => PairwiseComparisons.OfGroups(
        ReferenceData.Column("comparison", "insectsprays.csv", "value"), ReferenceData.Text("comparison", "insectsprays.csv")["group"], adjustment, ConfidenceLevel.NinetyFive).GetOrThrow();
}

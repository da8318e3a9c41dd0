using System.Diagnostics;
using System.Security.Cryptography;
using SquadAnalytics.Reporting.Figures;

namespace SquadAnalytics.Reporting.Tests.Figures;

public class BundledFontTests
{
    [Fact]
    public async Task Figures_are_pixel_for_pixel_the_same_where_no_font_is_installed()
    {
        var empty = Directory.CreateTempSubdirectory("no-fonts-");
        var start = new ProcessStartInfo("dotnet", [typeof(BundledFontTests).Assembly.Location]) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["FONTCONFIG_PATH"] = empty.FullName;
        start.Environment["FONTCONFIG_FILE"] = Path.Combine(empty.FullName, "none.conf");
        start.Environment["HOME"] = empty.FullName;
        using var process = Process.Start(start)!;
        var complaints = process.StandardError.ReadToEndAsync();
        var drawn = (await process.StandardOutput.ReadToEndAsync()).Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        await process.WaitForExitAsync();
        empty.Delete(recursive: true);

        Assert.True(process.ExitCode == 0, await complaints);
        Assert.Equal(Examples.All().Select(figure => $"{figure.GetType().Name} {Convert.ToHexString(SHA256.HashData(figure.ToPng(dotsPerUnit: 1)))}"), drawn);
    }

    [Fact]
    public void Every_letter_that_a_figure_needs_is_in_the_typeface()
    {
        foreach (var bold in (bool[])[false, true])
        {
            Assert.All(
                "0123456789−–+±.,:;·%()?←→↓●◆■▲○□—…σκλ√≤≥ÄÖÜäöüßéèçñøåŁłżğışŞİĞčřž ΑΒΓαβγ АБВабв",
                letter => Assert.True(letter == ' ' || BundledFont.Typeface(bold).GetGlyph(letter) != 0, $"'{letter}' (U+{(int)letter:X4}) is missing."));
        }
    }

    [Fact]
    public void Figures_of_the_typeface_are_of_one_width() =>
        Assert.Single("0123456789".Select(digit => Chart.Measure(digit.ToString())).Distinct());

    [Fact]
    public void The_license_of_the_typeface_travels_with_it() =>
        Assert.Contains("SIL OPEN FONT LICENSE Version 1.1", BundledFont.License, StringComparison.OrdinalIgnoreCase);
}

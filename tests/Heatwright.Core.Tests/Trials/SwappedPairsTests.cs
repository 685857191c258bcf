using System.Globalization;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Volts and amps changed over in one reading. Readings by hand: a heater of 0.84 Ω or 3.2 Ω, meters that scatter by a step or two.</summary>
public sealed class SwappedPairsTests
{
    [Theory]
    // 3.3 V through 0.86 Ω: volts and amps differ by a sixth only, and the rows around hold to a thousandth
    [InlineData("warm-up", "3.314 3.312 3.313 3.856 3.313 3.313 3.314", "3.859 3.857 3.855 3.313 3.854 3.853 3.852", "4")]
    // turned up step by step: the ohms tell, 3.2 Ω everywhere and 0.942/3.012 = 0.313 = 1/3.2 in the third
    [InlineData("volts-amps", "1.004 2.008 0.942 4.017 5.021 6.024 8.032", "0.316 0.631 3.012 1.262 1.577 1.889 2.510", "3")]
    [InlineData("volts-amps", "1.004 2.008 3.012 4.017 5.021 6.024 2.510", "0.316 0.631 0.942 1.262 1.577 1.889 8.032", "7")]
    [InlineData("volts-amps", "0.942 3.1 3.2", "3.012 0.97 1.0", "1")]
    [InlineData("capacity", "3.90 3.88 1.50 3.85 3.83", "1.50 1.51 3.87 1.50 1.50", "3")]
    [InlineData("warm-up", "60 60.1 0.4 60.2 60.1", "0.401 0.4 60.1 0.402 0.4", "3")] // a hundred times apart
    public void A_reading_that_is_like_the_others_when_changed_round_is_told(string card, string volts, string amps, string told) => Assert.Equal(told, Told(card, volts, amps));

    [Theory]
    [InlineData("warm-up", "3.31 3.38 3.25 3.36 3.29", "3.35 3.28 3.40 3.30 3.37")] // 1 Ω: both orders fit
    [InlineData("warm-up", "3.00 3.10 2.90 3.05 2.95", "3.10 3.00 3.20 2.95 3.15")] // noise
    [InlineData("warm-up", "3.7 3.7 3.7 0.03 0.04 0.03 0.02 0.03", "0.7 0.7 0.7 0.04 0.03 0.04 0.04 0.05")] // switched off behind the third
    [InlineData("volts-amps", "1.0 2.0 3.0 4.0 5.0", "1.0 2.0 3.0 4.0 5.0")] // 1 Ω, turned up
    [InlineData("volts-amps", "1.0 2.0 3.0 2.72 5.0", "0.31 0.63 0.94 1.25 1.56")] // a clip loose in the fourth: 2.18 Ω is not 1/3.2
    [InlineData("pulse", "3.98 3.97 3.60 3.59 3.58 3.57", "3.0 3.0 4.5 3.0 3.0 3.0")] // a cell at another load: 3.60/4.5 = 0.80 is nearly 3.0/3.6, and no swap
    [InlineData("warm-up", "3.31 3.31 3.86", "3.86 - 3.31")] // one beside it is too few
    [InlineData("volts-amps", "5.2 1.29", "1.29 5.2")]
    [InlineData("pulse", "1.1 1.1 1.0 1.1", "1.0 1.0 1.1 1.0")] // one step of a coarse display
    [InlineData("warm-up", "3.31 0 3.31 3.31", "3.86 0 3.86 3.86")] // once off
    public void Noise_a_load_that_is_off_and_what_fits_both_ways_are_no_swap(string card, string volts, string amps) => Assert.Equal("", Told(card, volts, amps));

    private static string Told(string card, string volts, string amps)
    {
        static double[] Read(string texts) => [.. texts.Split(' ').Select(text => text == "-" ? double.NaN : double.Parse(text, CultureInfo.InvariantCulture))];
        double[] v = Read(volts), a = Read(amps);
        return string.Join(' ', Enumerable.Range(0, v.Length).Where(new SwappedPairs(card, v, a).Is).Select(row => row + 1));
    }
}

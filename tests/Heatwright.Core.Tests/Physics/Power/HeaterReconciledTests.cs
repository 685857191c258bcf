using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Label, display and ohmmeter of one heater brought together, by hand. Half-widths are multiples of √3, so that the standard doubts are round.</summary>
public class HeaterReconciledTests
{
    private static readonly double Root3 = Math.Sqrt(3);

    /// <summary>Label 10 Ω ± 1; 20 V ± 0.1 over 1.6 A ± 0.01 are 12.5 Ω ± 12.5·√(0.005² + 0.00625²) = 0.1000488.</summary>
    private static ReconciledHeater Bring(double ohmmeter = double.NaN, double leads = 0, bool swapped = false) => swapped
        ? HeaterReconciled.Bring(10, 20, 1.6, 10, 1, 0.1 * Root3, 0.2 * Root3, 0.02 * Root3, 0, 0, ohmmeter, leads, 0, 0.1 * Root3)
        : HeaterReconciled.Bring(10, 10, 1, 20, 1.6, 0.1 * Root3, 0.2 * Root3, 0.02 * Root3, 0, 0, ohmmeter, leads, 0, 0.1 * Root3);

    [Fact]
    public void Label_and_display()
    {
        ReconciledHeater heater = Bring();
        Assert.Equal((10, 12.5), (heater.LowOhm, heater.HighOhm));
        Assert.Equal(2.4875809, heater.Distance, 1e-6);        // 2.5/√(1 + 0.01000977)
        Assert.Equal(12.4752235, heater.MeanOhm, 1e-6);        // weights 1 and 99.90244
        Assert.Equal(0.0995518, heater.DoubtOhm, 1e-6);        // 1/√100.90244
        Assert.Equal(2.4875809, heater.Birge, 1e-6);           // of two pieces their distance
        Assert.Equal(0.2476437, heater.WidenedOhm, 1e-6);
        Assert.StartsWith("read the heater with an ohmmeter", heater.Decides, StringComparison.Ordinal);
        Assert.Equal(heater, Bring(swapped: true));            // whichever was read first
    }

    /// <summary>The ohmmeter's digit is 0.1 Ω; leads that were taken off add half a tenth: √(0.1² + 0.05²/3).</summary>
    [Theory]
    [InlineData(12.5, 0, 0.0705519)]       // weights 1 + 99.90244 + 100
    [InlineData(12.7, 0.2, 0.0719426)]     // 1 + 99.90244 + 92.30769
    public void An_ohmmeter_besides(double reading, double leads, double doubt)
    {
        ReconciledHeater heater = Bring(reading, leads);
        Assert.Equal(doubt, heater.DoubtOhm, 1e-6);
        Assert.Equal("a shunt in series", heater.Decides);
    }

    /// <summary>The case of LabelHypothesesTests: 10 Ω read twice on labels of 8 Ω and 10.6 Ω.</summary>
    [Fact]
    public void Explanations_are_told_by_how_they_stand()
    {
        ReconciledHeater eight = Ten(8);
        Assert.Equal(("none", "the metal is hot and its resistance has grown", "none"), (eight.Survive, eight.Doubtful, eight.WrongWay));
        Assert.Equal(6, eight.TooLarge.Split("; ").Length);
        Assert.Equal("leads or contacts stand in series; the metal is hot and its resistance has grown", Ten(10.6).WrongWay);
        Assert.Contains("the heater lies off its label, within the label's tolerance", Ten(10.6).Survive, StringComparison.Ordinal);

        static ReconciledHeater Ten(double label) => HeaterReconciled.Bring(label, 10, 1, 20, 2, 0.1, 1e-9, 0.02 * Root3, 0.01 * Root3, 0.02 * Root3);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("secondV", () => HeaterReconciled.Bring(10, 10, 1, 10, 1.1));
        Printed.Refuses("firstA", () => HeaterReconciled.Bring(10, 10, 0, 20, 2));
        Printed.Refuses("voltDigit", () => HeaterReconciled.Bring(10, 10, 1, 20, 2, voltDigit: 0));
        Printed.Refuses("ohmmeterOhm", () => HeaterReconciled.Bring(10, 10, 1, 20, 2, ohmmeterOhm: 0));
    }
}

using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>A made-up type of two straight pieces, by hand: 40 µV/K from 0 to 100 °C, 60 µV/K from there to 200 °C. The published types stand in the handbook's tests.</summary>
public class ThermocoupleCurveTests
{
    private static readonly EmfPiece Lower = new(0, 100, [0, 0.04]);
    private static readonly EmfPiece Upper = new(100, 200, [-2, 0.06]);
    private static readonly ThermocoupleCurve Curve = new("X", [Upper, Lower], []);

    [Theory]
    [InlineData(0, 0, 40e-6)]
    [InlineData(50, 2e-3, 40e-6)]
    [InlineData(100, 4e-3, 40e-6)]   // the joint still belongs to the lower piece
    [InlineData(100.5, 4.03e-3, 60e-6)]
    [InlineData(200, 10e-3, 60e-6)]
    public void Each_piece_holds_on_its_own_stretch(double tC, double volts, double slope)
    {
        Assert.Equal(volts, Curve.EmfV(tC), 1e-15);
        Assert.Equal(slope, Curve.SlopeVPerK(tC), 1e-15);
        Assert.Equal(tC, Curve.TemperatureC(volts), 1e-9);
    }

    [Fact]
    public void Its_range_is_that_of_its_pieces()
    {
        Assert.Equal(("X", 0, 200, 0), (Curve.Type, Curve.MinC, Curve.MaxC, Curve.InvertFromC));
        Assert.Empty(Curve.ApproximateInverses);
        foreach (double outside in (double[])[-1e-9, 200.000001, double.NaN])
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Curve.EmfV(outside));
            Assert.Throws<ArgumentOutOfRangeException>(() => Curve.SlopeVPerK(outside));
        }

        foreach (double outside in (double[])[-1e-9, 10.000001e-3, double.NaN])
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Curve.TemperatureC(outside));
        }

        // A rounding above the top is still the top.
        Assert.Equal(200, Curve.TemperatureC(10e-3 + 5e-16), 1e-9);
        Assert.Equal(0, Curve.TemperatureC(-5e-16), 1e-9);
        Assert.Contains("0 to 200 °C", Assert.Throws<ArgumentOutOfRangeException>(() => Curve.EmfV(201)).Message, StringComparison.Ordinal);
        Assert.Contains("0 to 10 mV between 0 and 200 °C; 11 mV", Assert.Throws<ArgumentOutOfRangeException>(() => Curve.TemperatureC(11e-3)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pieces_with_a_gap_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new ThermocoupleCurve("X", [Lower, Upper with { FromC = 101 }], []));
        Assert.Throws<ArgumentException>(() => new ThermocoupleCurve("X", [Lower, Upper with { FromC = 99 }], []));
        Assert.Throws<ArgumentException>(() => new ThermocoupleCurve("X", [Lower, Upper, new(201, 300, [0, 0.05])], []));
    }

    /// <summary>E = (t − 50)²/1000 mV: falling to 50 °C, rising from there; only the rising half can be read backwards.</summary>
    [Fact]
    public void Below_its_turning_point_it_is_not_inverted()
    {
        EmfPiece bowl = new(0, 200, [2.5, -0.1, 0.001]);
        ThermocoupleCurve curve = new("Y", [bowl], [new(0, 30, [60, 5], -1, 1)], 50);
        Assert.Equal(50, curve.InvertFromC);
        Assert.Single(curve.ApproximateInverses);
        Assert.Equal(0.9e-3, curve.EmfV(20), 1e-15);
        Assert.Equal(-60e-6, curve.SlopeVPerK(20), 1e-15);
        Assert.Equal(80, curve.TemperatureC(0.9e-3), 1e-9);           // not 20 °C
        Assert.Equal(200, curve.TemperatureC(22.5e-3), 1e-9);
        Assert.Equal(50, curve.TemperatureC(0), 1e-5);                // the flat bottom itself
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.TemperatureC(-1e-6));
    }

    /// <summary>e^(−((t − 100)/100)²): 1 mV at its top, 1/e a hundred degrees aside, where its slope is 2/e/100 mV/K.</summary>
    [Fact]
    public void A_bump_is_added_to_its_piece()
    {
        ThermocoupleCurve curve = new("Z", [new(0, 200, [0, 0.05], new EmfBump(1, -1e-4, 100))], []);
        Assert.Equal(6e-3, curve.EmfV(100), 1e-15);
        Assert.Equal(50e-6, curve.SlopeVPerK(100), 1e-15);
        Assert.Equal(Math.Exp(-1) * 1e-3, curve.EmfV(0), 1e-15);
        Assert.Equal((0.05 + (0.02 / Math.E)) * 1e-3, curve.SlopeVPerK(0), 1e-15);
        Assert.Equal((0.05 - (0.02 / Math.E)) * 1e-3, curve.SlopeVPerK(200), 1e-15);
        Assert.Equal(100, curve.TemperatureC(6e-3), 1e-9);
        // Approximate inverse by hand at 2 mV: 1 + 10·2 + 3·4.
        Assert.Equal(33, new EmfInversePiece(0, 5, [1, 10, 3], 0, 0).ApproximateC(2e-3), 1e-12);
    }
}

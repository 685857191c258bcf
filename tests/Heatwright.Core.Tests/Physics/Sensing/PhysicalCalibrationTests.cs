using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>The same invented run fitted by the chain itself; results by a second program (Python).</summary>
public class PhysicalCalibrationTests
{
    private static readonly PhysicalCalibration Fit =
        PhysicalCalibration.Fit(Thermocouples.TypeK, 28, PolynomialCalibrationTests.Counts, PolynomialCalibrationTests.ProbeC);

    [Fact]
    public void Offset_gain_and_scatter_agree()
    {
        Assert.Equal(9.2020724, Fit.OffsetCounts, 5.1e-7);
        Assert.Equal(52.190117, Fit.CountsPerV / 1e3, 5.1e-7);
        Assert.Equal(2.54, Fit.ScatterCounts, 0.005);
    }

    [Fact]
    public void It_reaches_safely_beyond_the_last_reading()
    {
        Assert.Equal(351.5507, Fit.AtC(700), 5.1e-5);
        Assert.Equal(442.3360, Fit.AtC(900), 5.1e-5);
        Assert.Equal(163.83368, Fit.AtC(300), 5.1e-6);
        // The run was made with a chain that gives 443.417 °C at 900 counts.
        Assert.True(Math.Abs(Fit.AtC(900) - 443.417) < 1.1);
        Assert.True(Math.Abs(PolynomialCalibration.Fit(PolynomialCalibrationTests.Counts, PolynomialCalibrationTests.ProbeC, 3, 400, 400).AtC(900) - 443.417) > 4);
    }

    [Fact]
    public void A_chain_comes_back_from_its_own_counts() => Gen.Select(Gen.Double[-20, 40], Gen.Double[20e3, 90e3], Gen.Double[0, 45]).Sample((offset, perV, coldC) =>
    {
        PhysicalCalibration chain = new(Thermocouples.TypeK, coldC, offset, perV, 0);
        double[] tC = [60, 150, 240, 330, 420];
        var fit = PhysicalCalibration.Fit(Thermocouples.TypeK, coldC, [.. tC.Select(chain.CountAt)], tC);
        return Math.Abs(fit.OffsetCounts - offset) < 1e-6 && Math.Abs((fit.CountsPerV / perV) - 1) < 1e-9 && Math.Abs(fit.AtC(chain.CountAt(400)) - 400) < 1e-6;
    });
}

using Heatwright.BuildSheets;
using Heatwright.Quantities;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Amps and volts of a pack's two ends stay apart. By hand.</summary>
public sealed class PowerPointTests
{
    private static PowerPoint Point(double fullV, double emptyV, double fullA, double emptyA, double loopOhm)
    {
        static Estimate Exact(double value, Unit unit) => Estimate.Exact(value, unit, new Origin.Assumed("by hand"));
        return new(Exact(fullV, Units.Volt), Exact(emptyV, Units.Volt), Exact(fullA, Units.Ampere), Exact(emptyA, Units.Ampere), Exact(loopOhm, Units.Ohm), Exact(0.05, Units.Ohm), Exact(1, Units.One), Exact(3.1, Units.Volt));
    }

    /// <summary>2.3 A · 0.12 Ω of 4.07 V are 6.78 of 100, 1.7 A of 3 V 6.8; through a module 3 A of 3 V are 12, and 2 A of 4 V 6.</summary>
    [Theory, InlineData(4.07, 3, 2.3, 1.7, 0.068, "at the cut-off"), InlineData(4, 3, 2, 3, 0.12, "at the cut-off"), InlineData(4, 3, 2.4, 1.7, 0.072, "full")]
    public void What_the_loop_takes_is_of_the_volts_of_the_same_moment(double fullV, double emptyV, double fullA, double emptyA, double share, string when)
    {
        var (worst, then) = Point(fullV, emptyV, fullA, emptyA, 0.12).WorstDrop();
        Assert.Equal(share, worst, 1e-9);
        Assert.Equal(when, then);
    }

    /// <summary>1.6967 A are asked at the cut-off, whatever the full pack gives.</summary>
    [Theory, InlineData(1.6967, false), InlineData(1.7, false), InlineData(1.69, true)]
    public void A_reset_is_weighed_by_the_amps_of_the_emptiest_pack(double brinkA, bool resets) => Assert.Equal(resets, Point(4.07, 3, 2.3, 1.6967, 0.12).Resets(brinkA));
}

using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Rules of thumb and refusals exactly at their limits, just beneath and just above, by hand. Most rules are common practice, no source.</summary>
public class LimitTests
{
    [Theory]
    [InlineData(9.5, 10, 1, 1, PathSign.Holds)]         // 0.95 of the set volts
    [InlineData(9.49, 10, 1, 1, PathSign.NearFold)]
    [InlineData(8, 10, 0.7, 1, PathSign.ModuleLimit)]   // 0.7 of the fold current
    [InlineData(8, 10, 0.71, 1, PathSign.NearFold)]
    [InlineData(8, 10, 1.39, 2, PathSign.ModuleLimit)]
    public void A_step_up_read_at_the_bench(double outV, double setV, double inputA, double foldA, PathSign sign) => Assert.Equal(sign, PathDiagnosis.Of(outV, setV, inputA, foldA));

    [Theory]
    [InlineData(100, 97, true)]
    [InlineData(97, 100, true)]
    [InlineData(100, 96.9, false)]
    [InlineData(1, 2, false)]
    [InlineData(2, 1, false)]
    public void The_same_limit_twice_lies_within_three_percent(double first, double second, bool same) => Assert.Equal(same, PathDiagnosis.SameLimit(first, second));

    [Theory]
    [InlineData(9, 10, StepMode.Between)]
    [InlineData(8.99, 10, StepMode.Up)]
    [InlineData(11, 10, StepMode.Between)]
    [InlineData(11.01, 10, StepMode.Down)]
    public void A_four_switch_module_lies_between_within_a_tenth(double inV, double outV, StepMode mode) => Assert.Equal(mode, PathDiagnosis.ModeOf(inV, outV));

    [Fact]
    public void Protection_and_cells_at_their_limits()
    {
        Assert.False(Protection.MayTrip(7, 10));
        Assert.True(Protection.MayTrip(7.01, 10));
        Assert.Equal([CellLoad.Fine, CellLoad.NearLimit, CellLoad.NearLimit, CellLoad.TooMuch], ((double[])[8, 8.01, 10, 10.01]).Select(amps => Protection.LoadOf(amps, 3600, 10)));
        Assert.Equal([CellLoad.Fine, CellLoad.NearLimit, CellLoad.TooMuch], ((double[])[1.6, 1.7, 2.1]).Select(amps => Protection.LoadOf(amps, 7200))); // one capacity per hour: 2 A
        // 0.15 V over two switches of 25 mΩ, 1.5 times as much when warm.
        Assert.Equal((3, 2), (Math.Round(Protection.TripA(0.15, 0.025), 12), Math.Round(Protection.TripA(0.15, 0.025, 1.5), 12)));
        Printed.Refuses("hotFactor", () => Protection.TripA(0.15, 0.025, 0.99));
        Printed.Refuses("hotFactor", () => Protection.TripA(0.15, 0.025, 3.01));
    }

    /// <summary>800 Wh/L are 2.88e9 J/m³, 300 Wh/kg are 1.08e6 J/kg.</summary>
    [Theory]
    [InlineData(2.88e9, 1, 0, true)]
    [InlineData(2.881e9, 1, 0, false)]
    [InlineData(1.08e6, 1, 1, true)]
    [InlineData(1.081e6, 1, 1, false)]
    [InlineData(1.08e6, 1, 2, true)]
    [InlineData(2.881e9, 1, 1e6, false)]
    [InlineData(1.08e5, 1, 0.5, true)]
    [InlineData(6e5, 1, 0.5, false)]
    public void A_label_is_credible_up_to_its_limits(double joule, double volume, double mass, bool credible) => Assert.Equal(credible, Protection.LabelIsCredible(joule, volume, mass));

    [Fact]
    public void A_labels_density_by_hand()
    {
        // 3600 C at 4 V: 4 Wh in 10 cm³ and 20 g.
        Assert.Equal(new LabelDensity(400, 200, true), Protection.Density(3600, 4, 1e-5, 0.02));
        Assert.Null(Protection.Density(3600, 4, 1e-5).WhPerKg);
        Assert.False(Protection.Density(3600, 4, 4e-6).Credible);                                // 1000 Wh/L
        Assert.Equal(Math.PI * 1e-6, Protection.CylinderM3(0.02, 0.01), 1e-18);
        Assert.Equal(2, Protection.PerHour(4, 7200), 1e-12);
    }

    [Fact]
    public void Energy_checks_at_their_limits()
    {
        Assert.Equal(ReadingFault.None, EnergyChecks.Judge(new(1.5, 0, -2, 1), 1));
        Assert.Equal(ReadingFault.OutputExceedsInput, EnergyChecks.Judge(new(1.5, 0, -2.01, 1), 1));
        Assert.Equal(ReadingFault.None, EnergyChecks.Judge(new(0.5, 0, 5, 1), 1));
        Assert.Equal(ReadingFault.HalfIsLost, EnergyChecks.Judge(new(0.499, 0, 5, 1), 0.21));
        Assert.Equal(ReadingFault.None, EnergyChecks.Judge(new(0.499, 0, 5, 1), 0.2));
        Assert.Equal([false, true, true, false], ((double[])[5.99, 6, 10, 10.01]).Select(joule => EnergyChecks.RunAgrees(joule, 2, 5)));
        Assert.False(EnergyChecks.BelowStored(2, 3, 4, 12, 2));   // 24 J in, 24 J stored
        Assert.True(EnergyChecks.BelowStored(2, 3, 3.99, 12, 2));
        Assert.Equal([false, true, false, true], (((double, double)[])[(100, 99), (100, 98.9), (99, 100), (98.9, 100)]).Select(pair => EnergyChecks.MetersDiffer(pair.Item1, pair.Item2)));
        Assert.False(EnergyChecks.MetersDiffer(-100, -99));
        Assert.True(EnergyChecks.MetersDiffer(0.5, -0.5));
    }

    [Fact]
    public void Meters_and_supplies_at_their_limits()
    {
        Printed.Refuses("readOhm", () => OhmReading.LessLeadsOhm(0.2, 0.2));
        Printed.Refuses("burdenOhm", () => OhmReading.FromVoltAmpOhm(4, 2, 2));
        Assert.Equal(0.5, OhmReading.FromVoltAmpOhm(4, 2, 1.5), 1e-12);
        Assert.False(OhmReading.InLimit(98, 100, 10, 10));        // 2 % below is not more than 2 % below
        Assert.True(OhmReading.InLimit(97.9, 100, 9.9, 10));
        Assert.True(OhmReading.InLimit(97.9, 100, 10.1, 10));
        Assert.True(OhmReading.InLimit(97.9, 100, 99, 100) && OhmReading.InLimit(97.9, 100, 101, 100));
        Assert.False(OhmReading.InLimit(97.9, 100, 9.89, 10));
        Assert.False(OhmReading.InLimit(97.9, 100, 10.11, 10));
        Assert.Equal(new LimitedSupply(6, 2, 12, false), OhmReading.Limited(6, 2, 3));   // just what it draws
        Assert.Equal(new LimitedSupply(6, 2, 12, true), OhmReading.Limited(6.6, 2, 3));
        Assert.Equal(new LimitedSupply(6, 2, 12, false), OhmReading.Limited(6, 9, 3));
    }

    /// <summary>What is refused is named as the maker typed it.</summary>
    [Fact]
    public void A_share_of_nothing_is_refused_by_its_name()
    {
        Printed.Refuses("duty", () => RunTime.AtCurrentS(7200, 1, 1, 0));
        Printed.Refuses("efficiency", () => ChargePower.SocketA(8.4, 1, 0, 5));
        Printed.Refuses("efficiency", () => SwitchCurrentLimit.StepUp(4, 5, 10, 0, 1e-5, 4e5));
    }

    [Fact]
    public void Switch_currents_at_their_limits()
    {
        // Stiff 10 V to 10 V: no duty, no ripple, the limit comes through; below that it would step down.
        Assert.Equal(new StepUpLimit(0, 0, 4, 40), SwitchCurrentLimit.StepUp(4, 10, 10, 1, 1e-5, 4e5));
        Printed.Refuses("outV", () => SwitchCurrentLimit.StepUp(4, 10, 9.99, 1, 1e-5, 4e5));
        // 5 V to 10 V: duty ½; 5·½/(1e-5·1e5) = 2.5 A of ripple; (4 − 1.25)·½.
        Assert.Equal(new StepUpLimit(0.5, 2.5, 1.375, 13.75), SwitchCurrentLimit.StepUp(4, 5, 10, 1, 1e-5, 1e5));
        Assert.Equal((0.0, 0.0), (SwitchCurrentLimit.StepUp(1.2, 5, 10, 1, 1e-5, 1e5).MostOutA, SwitchCurrentLimit.StepUp(1.2, 5, 10, 1, 1e-5, 1e5).MostOutW)); // all of it is ripple
        Assert.Equal(0.025, SwitchCurrentLimit.StepUp(1.3, 5, 10, 1, 1e-5, 1e5).MostOutA, 1e-12);
        Assert.Equal(1, SwitchCurrentLimit.InvertingMostA(4, 2, 5, 10, 1), 1e-12);       // 3·5/15
        Assert.Equal(0, SwitchCurrentLimit.InvertingMostA(1, 2, 5, 10, 1));
    }

    [Fact]
    public void Wires_and_fuses_at_their_limits()
    {
        Assert.Equal([DropVerdict.Fine, DropVerdict.Much, DropVerdict.Much, DropVerdict.TooMuch], ((double[])[0.5, 0.51, 1, 1.01]).Select(drop => Wire.JudgeDrop(drop, 10)));
        Assert.Equal(0.3, Wire.DropV(2, 0.1, 0.05), 1e-12);
        Assert.Equal(0, Wire.DropV(2));
        Assert.Equal([4, 4, 4.2105, 4.4444, 4.4444], ((double[])[0, 25, 42.5, 60, 90]).Select(around => Math.Round(Fuse.LeastRatingA(3, around), 4)));   // 4/0.95, 4/0.9
        Assert.Equal(10, Fuse.InrushA2S(4, 2, 1), 1e-12);          // 2·2·2 + 2²/2
        Assert.Equal(0, Fuse.InrushA2S(2, 2, 1));
        Assert.False(Fuse.Wears(3, 10));
        Assert.True(Fuse.Wears(3.01, 10));
        Assert.Equal([3, 3, 2.055, 0.003, 0], ((double[])[-20, 25, 60, 136, 140]).Select(at => Math.Round(Fuse.PolymerHoldA(3, at), 12)));   // 1 − 0.009·35, 1 − 0.009·111
        Assert.Equal(80.03 * 8, Fuse.PreeceA(0.004), 1e-9);        // 4 mm: 4^1.5 = 8
        Printed.Refuses("aroundC", () => Fuse.OnderdonkA(1e-7, 1, -51));
        Printed.Refuses("aroundC", () => Fuse.OnderdonkA(1e-7, 1, 1001));
        // One circular mil from −50 °C: log₁₀(1133/184 + 1) = 0.854768, √(0.854768/33).
        Assert.Equal(0.160941, Fuse.OnderdonkA(Math.PI / 4 * 25.4e-6 * 25.4e-6, 1, -50), 1e-5);
        Assert.True(Fuse.OnderdonkA(1e-7, 1, 1000) > 0);
    }

    [Fact]
    public void Copper_by_hand()
    {
        Assert.Equal(1 / 58.0, Wire.Ohm(1, 1e-6), 1e-12);
        Assert.Equal(1.393 / 58, Wire.Ohm(1, 1e-6, 120), 1e-12);   // 1 + 0.00393·100
        Assert.Equal(0.607 / 58, Wire.Ohm(1, 1e-6, -80), 1e-12);
        Printed.Refuses("atC", () => Wire.Ohm(1, 1e-6, -234.5));   // 20 − 1/0.00393 = −234.45 °C
        Assert.Equal((0.127e-3, 11.684e-3), (Wire.DiameterM(36), Math.Round(Wire.DiameterM(-3), 12)));
        Printed.Refuses("gauge", () => Wire.DiameterM(-3.1));
        Printed.Refuses("gauge", () => Wire.DiameterM(56.1));
        Assert.True(Wire.DiameterM(56) > 0);
        Assert.Equal(new GaugeSize(0.127e-3, Math.PI / 4 * 0.127e-3 * 0.127e-3), Wire.Gauge(36));
        // 4 mm of diameter melts at 640.24 A.
        double area = Math.PI * 4e-6;
        Assert.Equal(640 * Wire.CopperOhmM / area, Wire.AlongV(640, 1, area), 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => Wire.AlongV(640.3, 1, area));
        Assert.Equal(2 * Trace.SheetOhm(35e-6), Trace.Ohm(0.02, 0.01, 35e-6), 1e-15);
        Assert.Equal(Wire.Ohm(1.6e-3, Math.PI * 325e-6 * 25e-6), Trace.ViaOhm(0.3e-3, 25e-6, 1.6e-3), 1e-15);
        Assert.True(Trace.WidthM(3, 10, inner: 0.5) > Trace.WidthM(3, 10, inner: 0.49));
        Assert.True(Trace.CurrentOfWidthA(1e-3, 10, inner: 0.5) < Trace.CurrentOfWidthA(1e-3, 10, inner: 0.49));
    }

    [Fact]
    public void Duties_and_capacitors_at_their_limits()
    {
        Assert.Equal((0, 1, 0.75), (Pwm.DutyCeiling(2, 2), Pwm.DutyCeiling(0, 2), Pwm.DutyCeiling(0.5, 2)));
        // 4 V, 1 Ω and 1 Ω of source: 2 A and 4 W at full duty; a millionth more cannot be had.
        Assert.Equal(1, Pwm.SmoothedDutyFor(4, 1, 1, 4)!.Value, 1e-6);
        Assert.Null(Pwm.SmoothedDutyFor(4, 1, 1, 4.00001));
        Assert.Null(Pwm.SmoothedDutyFor(4, 0.5, 1, 7.2));          // 16/2.25 = 7.11 W at full duty
        Assert.Equal(1, Pwm.SmoothedDutyFor(4, 0, 1, 16)!.Value, 1e-12);
        Assert.Null(Pwm.SmoothedDutyFor(4, 0, 1, 16.1));
        Assert.Null(Pwm.SmoothedDutyFor(4, 1, 1, 8));
        Assert.Equal((0, 0.25), (Pwm.SmoothedDutyFor(4, 1, 1, 0)!.Value, Pwm.PulsedDutyFor(4, 1, 1, 1)));
        Assert.Equal(0, new PwmState(0, 0, 0, 0, 0).Efficiency);
        Assert.Equal(0.25, new PwmState(1, 1, 1, 0.1, 0.3).Efficiency, 1e-12);
        Assert.Equal((0, 0, 0), (Pwm.CapacitorA(1, 1), Pwm.RippleV(1, 1, 1e3, 1e-3), Pwm.RippleK(1, 1, 1, 1)));
        Assert.Equal(0.1 + 0.2, Pwm.RippleV(2, 0.5, 1000, 5e-3, 0.1), 1e-12);           // 2·¼/5 V and 2 A through 0.1 Ω
    }

    [Fact]
    public void Switches_at_their_limits()
    {
        Assert.Null(MosfetLaw.Junction(10, 1, 0.02, 100, 25, 0.005));                     // 100·100·0.02·0.005 = 1
        Assert.Equal(10, MosfetLaw.RunawayA(0.02, 100, 0.005), 1e-12);
        Assert.NotNull(MosfetLaw.Junction(9.99, 1, 0.02, 100, 25, 0.005));
        // x = 50 K: from 25 °C, (25 + 50·(1 − 0.125))/(1 − 0.25) = 91.667 °C, 0.66667 W; half the duty half of x.
        Assert.Equal((91.667, 0.66667), (Math.Round(MosfetLaw.Junction(5, 1, 0.02, 100, 25, 0.005)!.JunctionC, 3), Math.Round(MosfetLaw.Junction(5, 1, 0.02, 100, 25, 0.005)!.LossW, 5)));
        Assert.Equal((25 + (25 * 0.875)) / 0.875, MosfetLaw.Junction(5, 0.5, 0.02, 100, 25, 0.005)!.JunctionC, 1e-9);
        Assert.Equal(20, MosfetLaw.RunawayA(0.02, 100, 0.005, 0.25), 1e-12);
        Assert.Equal(0.02, MosfetLaw.OnOhmBetween(4.5, 0.02, 2.5, 0.034, 1, 4.5), 1e-12);
        Assert.Equal(0.034, MosfetLaw.OnOhmBetween(4.5, 0.02, 2.5, 0.034, 1, 2.5), 1e-12);
        Printed.Refuses("secondGateV", () => MosfetLaw.FromTwoPoints(4, 0.02, 4, 0.03, 1));
        // R = −0.01 + 0.1/(V − 1): nothing is left at 11 V, less than nothing above.
        Printed.Refuses("gateV", () => MosfetLaw.OnOhmBetween(2, 0.09, 3, 0.04, 1, 12));
        Assert.Equal(0.01, MosfetLaw.OnOhmBetween(2, 0.09, 3, 0.04, 1, 6), 1e-12);
        // Three times the resistive edge, and half of C·V²·f: 3·2·10·(1 + 2)e-6·1e3/6 + 1e-9·100·1e3/2.
        Assert.Equal(0.03 + 5e-5, SwitchingLoss.InductiveW(10, 2, 1e-6, 2e-6, 1e3, 1e-9), 1e-12);
        GateEdge edge = SwitchingLoss.Gate(5, 3, 60, 40, 2e-9);
        Assert.Equal((0.02, 1e-7), (edge.GateA, Math.Round(edge.EdgeS, 15)));
        Printed.Refuses("gateOhm", () => SwitchingLoss.GateA(5, 3, 0, 0));
        Assert.Equal(2.08, SwitchingLoss.ReversePolarityW(4, 0.4, 0.03), 1e-12);           // 1.6 + 0.48
    }

    [Fact]
    public void Supply_of_the_controller_at_its_limits()
    {
        Assert.Equal(0, ControllerSupply.MostHeaterA(2.9, 0.15, 2.7, 0.25));               // below the margin
        Assert.Equal(0.2, ControllerSupply.MostHeaterA(3, 0.15, 2.7, 0.25), 1e-12);
        Assert.Equal(3.5 + 0.5, ControllerSupply.NeededOpenV(3.3, 0.2, 2, 0.25), 1e-12);
        // 2 % a month of 3600 C and 0.1 mA: 3600·½/(1e-4 + 72/2629800).
        Assert.Equal(1800 / (1e-4 + (72 / 2629800.0)), ControllerSupply.ShelfLifeS(0.5, 3600, 1e-4), 1e-3);
        Printed.Refuses("standbyA", () => ControllerSupply.ShelfLifeS(0.5, 3600, 0, 0));
    }
}

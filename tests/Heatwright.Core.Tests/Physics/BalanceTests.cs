using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Random inputs that a bench can give: what goes in comes out or stays, directions hold, and without losses each law is the ideal one.
/// Sums are formed here from the parts, never taken from the law.</summary>
public class BalanceTests
{
    private static readonly Gen<double> OpenV = Gen.Double[3, 26], SourceOhm = Gen.Double[0, 0.4], HeaterOhm = Gen.Double[1, 30];

    private static void Close(double a, double b) => Assert.Equal(a, b, 1e-9 * (1 + Math.Abs(a)));

    [Fact]
    public void What_a_step_up_draws_is_what_it_gives_and_loses() => Gen.Select(OpenV, SourceOhm, HeaterOhm, Gen.Double[4, 40], Gen.Double[0, 0.3], Gen.Double[0, 0.4], Gen.Double[0, 0.2]).Sample((open, source, heater, set, a0, a1, a2) =>
    {
        var point = StepUpPoint.At(open, source, set, heater, a0, a1, a2);
        if (point.Region is PathRegion.Regulated or PathRegion.CurrentLimited or PathRegion.DutyLimited)
        {
            double i = point.InputA!.Value;
            Close(open * i, (i * i * source) + a0 + (a1 * i) + (a2 * i * i) + point.OutW!.Value);
            Close(point.OutV!.Value * point.OutV.Value / heater, point.OutW.Value);
        }
    });

    [Fact]
    public void Without_losses_a_step_up_passes_its_power_through() => Gen.Select(Gen.Double[3, 8], Gen.Double[2, 30], Gen.Double[9, 20]).Sample((open, heater, set) =>
    {
        var point = StepUpPoint.At(open, 0, set, heater, 0, 0, 0, maxDuty: 0.99);
        Close(set * set / heater / open, point.InputA!.Value);
        Close(1 - (open / set), point.Duty!.Value);
    });

    [Fact]
    public void Pulses_divide_a_packs_power_between_heater_and_pack() => Gen.Select(OpenV, Gen.Double[0.001, 0.5], HeaterOhm, Gen.Double[0.01, 1]).Sample((open, source, heater, duty) =>
    {
        foreach (var state in (PwmState[])[Pwm.Pulsed(open, source, heater, duty), Pwm.Smoothed(open, source, heater, duty)])
        {
            Close(open * state.MeanA, state.HeaterW + state.PackW);
        }
    });

    [Fact]
    public void Cells_in_parallel_share_the_whole_current() => Gen.Select(Gen.Double[3, 4.2], Gen.Double[0.01, 0.2], Gen.Double[3, 4.2], Gen.Double[0.01, 0.2], Gen.Double[0, 20]).Sample((v1, r1, v2, r2, i) =>
    {
        var shared = Pack.Shared(v1, r1, v2, r2, i);
        Assert.Equal(i, shared.FirstA + shared.SecondA, 1e-9 * (100 + i));
        Close(v1 - (shared.FirstA * r1), shared.NodeV);
        Close(v2 - (shared.SecondA * r2), shared.NodeV);
    });

    [Fact]
    public void A_discharge_gives_its_chemical_energy_to_load_and_source() => Gen.Select(Gen.OneOf(Gen.Const("energy-18650"), Gen.Const("power-21700"), Gen.Const("lifepo4-18650"), Gen.Const("nimh")), Gen.Int[1, 4], Gen.Double[0.2, 4], Gen.Double[0, 0.3], HeaterOhm).Sample((cell, series, ah, source, load) =>
    {
        var run = RestedVolts.ThroughHeater(cell, series, 3600 * ah, source, load, 0.8 * series);
        Close(run.ChemicalJ * load / (load + source), run.LoadJ);
        Assert.InRange(run.LoadJ, 0, run.ChemicalJ * (1 + 1e-12));
        Close(3600 * ah * (1 - run.StopCharge), run.GivenAs);
    });

    [Fact]
    public void A_shank_loses_on_the_way_what_does_not_arrive() => Gen.Select(Gen.Double[1e-3, 2e-2], Gen.Double[0.01, 0.2], Gen.Double[0.2, 400], Gen.Double[1, 60]).Sample((d, length, k, h) =>
    {
        var rod = Fin.Between(d, length, k, h);
        Assert.True(rod.OwnWPerK >= rod.AcrossWPerK);

        // By hand: the same rod with a free end carries own − across²/own.
        Close(1 / Fin.RoundRod(d, length, k, h).ResistanceKPerW, rod.OwnWPerK - (rod.AcrossWPerK * rod.AcrossWPerK / rod.OwnWPerK));

        // Without loss it is a bar.
        var bar = Fin.Between(d, length, k, 1e-9);
        double plain = k * Math.PI / 4 * d * d / length;
        Assert.Equal(plain, bar.AcrossWPerK, 1e-5 * plain);
    });

    [Fact]
    public void A_tool_held_together_tightly_is_one_body() => Gen.Select(Gen.Double[0.5, 5], Gen.Double[1, 20], Gen.Double[0.005, 0.1]).Sample((core, tip, loss) =>
    {
        var times = TwoNodeTool.Times(core, tip, 1e6, 0, loss);
        Assert.Equal((core + tip) / loss, times.SlowS, 1e-4 * times.SlowS);
        Assert.True(times.FastS < 1e-3);
    });

    [Fact]
    public void More_of_a_cause_is_more_of_its_effect() => Gen.Select(Gen.Double[1, 24], Gen.Double[1, 20], Gen.Double[1.001, 2]).Sample((volts, ohms, more) =>
    {
        Assert.True(Joined(volts * more, ohms).Watts > Joined(volts, ohms).Watts);
        Assert.True(Joined(volts, ohms * more).Amps < Joined(volts, ohms).Amps);
        Assert.True(Trace.WidthM(volts * more, 20) > Trace.WidthM(volts, 20));
        Assert.True(Trace.WidthM(volts, 20 * more) < Trace.WidthM(volts, 20));
        Assert.True(WarmUp.RiseK(volts * more, 8, 0.03, 60) > WarmUp.RiseK(volts, 8, 0.03, 60));
        Assert.True(Radiation.RadiatedW(0.8, 1e-3, 300 * more, 25) > Radiation.RadiatedW(0.8, 1e-3, 300, 25));
        Assert.True(Ageing.StorageFadeAtC(3.7, 25 * more, 3e7) > Ageing.StorageFadeAtC(3.7, 25, 3e7));

        static FourOfOhm Joined(double volts, double ohms) => OhmsLaw.From(volts: volts, ohms: ohms);
    });

    [Fact]
    public void Any_two_of_volts_amperes_ohms_and_watts_say_the_others() => Gen.Select(Gen.Double[0.1, 100], Gen.Double[0.01, 50]).Sample((volts, amps) =>
    {
        double ohms = volts / amps, watts = volts * amps;
        foreach (var four in (FourOfOhm[])[OhmsLaw.From(volts: volts, amps: amps), OhmsLaw.From(volts: volts, ohms: ohms), OhmsLaw.From(volts: volts, watts: watts),
            OhmsLaw.From(amps: amps, ohms: ohms), OhmsLaw.From(amps: amps, watts: watts), OhmsLaw.From(ohms: ohms, watts: watts)])
        {
            Close(volts, four.Volts);
            Close(amps, four.Amps);
            Close(ohms, four.Ohms);
            Close(watts, four.Watts);
        }
    });

    [Fact]
    public void One_or_three_of_them_are_refused()
    {
        Assert.Throws<ArgumentException>(() => OhmsLaw.From(volts: 12));
        Assert.Throws<ArgumentException>(() => OhmsLaw.From(12, 1, 12));
        Assert.Throws<ArgumentOutOfRangeException>(() => OhmsLaw.From(volts: -12, amps: 1));
    }
}

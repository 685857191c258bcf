using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Run times. Values computed by an independent script (RT-1 to RT-9, EE-1 to EE-5). The closed forms are also held against a fine
/// numerical sum written differently. Tolerance: half of the last printed digit; where the check was a stepped solution, its stated 2e-3.</summary>
public class DischargeTests
{
    private const double Hour = 3600;

    [Fact]
    public void Capacity_over_current()
    {
        Printed.Agrees("RT-1", Printed.Computed, "28.6154", RunTime.AtCurrentS(0.62 * Hour, 1.3) / 60);
        Printed.Agrees("RT-2", Printed.Computed, "25.7538", RunTime.AtCurrentS(0.62 * Hour, 1.3, 0.9) / 60);
        Assert.Equal(4 * 7200, RunTime.AtCurrentS(7200, 1, 1, 0.25), 1e-9);        // on a quarter of the time
        Assert.Equal(25200, RunTime.GivenJ(7200, 3.7, 2, 0.1), 1e-9);              // 7200·(3.7 − 0.2)
        Assert.Equal(0.95, RunTime.FirstOrderShare(2, 0.1, 4), 1e-12);
    }

    [Fact]
    public void A_plain_heater_fades_over_the_charge()
    {
        DischargeResult run = RunTime.Direct(2 * Hour, 4.1, 3.3, 0.10, 2.2, 3.2);
        Printed.Agree("RT-3", Printed.Computed, "3.3455, 4210.06, 70.168, 1.8864, 6.7171, 1.78261, 1.45455",
            run.StopOpenV, run.DurationS, run.DurationS / 60, run.GivenAs / Hour, run.LoadJ / Hour, run.StartA, run.StopA);
        Assert.Equal(DischargeEnd.Cutoff, run.End);
        // By hand: 2.2/2.3 · 2 Ah · (4.1² − 3.3454545²)/(2·0.8) = 6.717095 Wh; the sixth digit printed beside RT-3 (6.71710) is one too many.
        Assert.Equal(6.717095, run.LoadJ / Hour, 5e-7);
    }

    [Fact]
    public void A_regulated_load_holds_and_stops()
    {
        DischargeResult run = RunTime.Regulated(2 * Hour, 4.1, 3.3, 0.10, 6.0, 3.0);
        Printed.Agree("RT-4", Printed.Computed, "3.3000, 4235.01, 70.584, 1.51975, 1.93120, 7.05835",
            run.StopOpenV, run.DurationS, run.DurationS / 60, run.StartA, run.StopA, run.LoadJ / Hour);
        Assert.Equal(DischargeEnd.Empty, run.End);
        // The naive sum leaves the source resistance out.
        Printed.Agree("RT-5", Printed.Computed, "74.000, 4.84", 2 * 3.7 / 6 * 60, ((2 * 3.7 / 6 * Hour / run.DurationS) - 1) * 100);
    }

    [Fact]
    public void With_tired_leads_most_of_the_charge_stays_behind()
    {
        DischargeResult run = RunTime.Regulated(2 * Hour, 4.1, 3.3, 0.30, 8.0, 3.0);
        Printed.Agree("RT-6", Printed.Computed, "3.8000, 1079.58, 17.993, 37.50", run.StopOpenV, run.DurationS, run.DurationS / 60, (1 - run.StopCharge) * 100);
        Assert.Equal(DischargeEnd.Cutoff, run.End); // V_cut 3.0 V is above √(R_s·P) = 1.55 V: 3.0 + 0.3·8/3 = 3.8 V
        Assert.Equal(DischargeEnd.Fold, RunTime.Regulated(2 * Hour, 4.1, 3.0, 0.30, 8.0, 1.5).End);
        Assert.Equal(2 * Math.Sqrt(0.3 * 11), RunTime.Regulated(2 * Hour, 4.1, 3.3, 0.30, 11, 1.5).StopOpenV, 1e-12);
    }

    [Fact]
    public void A_published_curve_is_walked_piece_by_piece()
    {
        DischargeResult direct = Discharge.ThroughHeater(OcvTables.B, 2 * Hour, 0.10, 2.2, 2.8);
        Printed.Agree("RT-7", Printed.Computed, "72.8869, 7.01820, 98.136", direct.DurationS / 60, direct.LoadJ / Hour, (1 - direct.StopCharge) * 100);
        DischargeResult held = Discharge.AtPower(OcvTables.B, 2 * Hour, 0.10, default, 6, 2.8);
        Printed.Agree("RT-8", Printed.Computed, "69.467, 97.080", held.DurationS / 60, (1 - held.StopCharge) * 100);
        Printed.Agrees("RT-9", Printed.Computed, "95.699", RunTime.FirstOrderShare(2, 0.080, OcvTables.B.MeanV(0, 1)) * 100);
    }

    [Theory]
    [InlineData("EE-1", 0.62, 0.25, 2.2, 1, 3.0, "21.5805, 1.88845, 5.25043, 2.10304, 0.10548, 1.71151, 1.36364, 0.89796")]
    [InlineData("EE-4", 0.62, 0.45, 9.0, 2, 6.0, "44.8180, 4.23308, 5.66703, 4.44474, 0.04631, 0.88745, 0.66667, 0.95238")]
    public void Straight_on_the_pack_from_full_to_stop(string id, double ah, double source, double heater, int series, double cutoff, string printed) =>
        Whole(id, printed, Discharge.ThroughHeater(Stacked(series), ah * Hour, source, heater, cutoff));

    [Theory]
    [InlineData("EE-2", 0.62, 0.25, 3.0, "12.4410, 1.24410, 6.00000, 1.65199, 0.31442, 1.81224, 2.36559, 0.75309")]
    [InlineData("EE-3", 0.62, 0.25, 2.5, "15.8960, 1.58960, 6.00000, 2.16354, 0.07594, 1.81224, 3.01706, 0.73472")]
    [InlineData("EE-5", 2.0, 0.12, 2.8, "59.0883, 5.90883, 6.00000, 7.20315, 0.04085, 1.68126, 2.58519, 0.82031")]
    public void Through_a_step_up_from_full_to_stop(string id, double ah, double source, double cutoff, string printed) =>
        Whole(id, printed, Discharge.AtPower(OcvTables.B, ah * Hour, source, new LossCoefficients(0.12, 0.20, 0.09), 6.0, cutoff));

    private static void Whole(string id, string printed, DischargeResult run)
    {
        // The checks are stepped solutions with a stated relative tolerance of 2e-3; the closed form here has no step error.
        double[] worked = [run.DurationS / 60, run.LoadJ / Hour, run.MeanW, run.ChemicalJ / Hour, run.StopCharge, run.StartA, run.StopA, run.Share];
        string[] fields = printed.Split(", ");
        for (int i = 0; i < worked.Length; i++)
        {
            Printed.Agrees($"{id}, value {i + 1}", Printed.Computed, fields[i], worked[i], Math.Max(Printed.Number(fields[i]) * 1e-4, Printed.HalfLastDigit(fields[i])));
        }
    }

    private static OcvTable Stacked(int series) => new(OcvTables.B.Charges, [.. OcvTables.B.Volts.ToArray().Select(v => v * series)]);

    [Fact]
    public void The_closed_forms_are_the_fine_sum() => Gen.Select(Gen.Double[0.01, 0.3], Gen.Double[1.5, 8], Gen.Double[2.0, 3.2], Gen.Double[0, 0.1], Gen.Double[0, 0.3]).Sample((source, size, cutoff, fixedW, drop) =>
    {
        var loss = new LossCoefficients(fixedW, drop, 0.05);
        Same(Discharge.ThroughHeater(OcvTables.B, 7200, source, size, cutoff), openV => openV / (size + source));
        DischargeResult held = Discharge.AtPower(OcvTables.B, 7200, source, loss, size, cutoff);
        if (held.End != DischargeEnd.NeverRan)
        {
            Same(held, openV => Bisected(openV, source, loss, size));
        }
    }, iter: 30);

    /// <summary>Second method: midpoint sum over the charge of Q/I. Near the fold 1/I has a root singularity: 3e-4 of the time is allowed.</summary>
    private static void Same(DischargeResult run, Func<double, double> currentA)
    {
        const int steps = 4000;
        double width = (1 - run.StopCharge) / steps;
        double seconds = 0;
        for (int i = 0; i < steps; i++)
        {
            seconds += 7200 * width / currentA(OcvTables.B.VoltsAt(run.StopCharge + ((i + 0.5) * width)));
        }

        Assert.Equal(seconds, run.DurationS, 3e-4 * seconds);
        Assert.InRange(run.LoadJ, 0, run.ChemicalJ);
    }

    /// <summary>The low-current operating point by halving, not by the closed form.</summary>
    private static double Bisected(double openV, double sourceOhm, LossCoefficients loss, double loadW)
    {
        double low = 0;
        double high = (openV - loss.DropV) / (2 * (loss.SlopeOhm + sourceOhm));
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            double given = (middle * (openV - (middle * sourceOhm))) - loss.FixedW - (loss.DropV * middle) - (loss.SlopeOhm * middle * middle);
            (low, high) = given < loadW ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    [Fact]
    public void Chemical_energy_is_load_plus_source_loss_for_a_plain_heater() => Gen.Select(Gen.Double[0.01, 0.5], Gen.Double[1, 10]).Sample((source, load) =>
    {
        DischargeResult run = Discharge.ThroughHeater(OcvTables.A, 3600, source, load, 3.0);
        Assert.Equal(run.ChemicalJ, run.LoadJ * (1 + (source / load)), 1e-9 * run.ChemicalJ);
    });

    [Fact]
    public void More_resistance_or_a_higher_cutoff_never_runs_a_held_power_longer() => Gen.Select(Gen.Double[0.02, 0.2], Gen.Double[1, 6], Gen.Double[2.5, 3.3]).Sample((source, watts, cutoff) =>
    {
        double here = Discharge.AtPower(OcvTables.B, 7200, source, default, watts, cutoff).DurationS;
        Assert.True(Discharge.AtPower(OcvTables.B, 7200, source + 0.01, default, watts, cutoff).DurationS <= here);
        Assert.True(Discharge.AtPower(OcvTables.B, 7200, source, default, watts, cutoff + 0.05).DurationS <= here);
        Assert.True(Discharge.AtPower(OcvTables.B, 7200, source, default, watts + 0.1, cutoff).DurationS < here);
    });

    [Fact]
    public void A_stiff_source_and_no_loss_gives_all_the_energy() => Gen.Double[0.5, 10].Sample(watts =>
    {
        DischargeResult run = Discharge.AtPower(OcvTables.D, 7200, 0, default, watts, 0.5);
        Assert.Equal(OcvTables.D.MeanV(0, 1) * 7200, run.LoadJ, 1e-9 * run.LoadJ);
    });

    [Fact]
    public void A_load_that_cannot_start_never_ran()
    {
        DischargeResult run = Discharge.AtPower(OcvTables.A, 3600, 0.3, default, 20, 2.8); // 4.162²/1.2 = 14.4 W at most
        Assert.Equal(DischargeEnd.NeverRan, run.End);
        Assert.Equal(0, run.DurationS);
    }

    /// <summary>3 V at a fifth of the charge, 4 V at full, 3 V held below: 4 Ω, no source resistance, 1 Ah.</summary>
    [Fact]
    public void A_table_that_ends_above_empty_holds_its_last_volts()
    {
        OcvTable cell = new([0.2, 1], [3, 4]);
        DischargeResult run = Discharge.ThroughHeater(cell, 3600, 0, 4, 1);
        // 0.8·3600·4·ln(4/3)/(4 − 3) s down to 3 V, then 0.2·3600 C at 0.75 A; energy 2880 C·3.5 V + 720 C·3 V.
        Assert.Equal((11520 * Math.Log(4 / 3.0)) + 960, run.DurationS, 1e-9);
        Assert.Equal((12240, 3600, 0, 3), (Math.Round(run.ChemicalJ, 9), run.GivenAs, run.StopCharge, run.StopOpenV));
        Assert.Equal(12240, run.LoadJ, 1e-9);
        Assert.Equal((1, 0.75, DischargeEnd.Empty), (run.StartA, run.StopA, run.End));
        // 2.5 W held at the terminals: the charge lasts as long as its energy.
        Assert.Equal(12240 / 2.5, Discharge.AtPower(cell, 3600, 0, default, 2.5, 1).DurationS, 1e-8);
        // From a tenth of the charge only the held end is left: 360 C at 0.75 A.
        DischargeResult rest = Discharge.ThroughHeater(cell, 3600, 0, 4, 1, 0.1);
        Assert.Equal((480, 1080, 360), (Math.Round(rest.DurationS, 9), Math.Round(rest.ChemicalJ, 9), Math.Round(rest.GivenAs, 9)));
    }

    [Fact]
    public void From_half_charge_over_two_pieces_to_a_cutoff_within_one()
    {
        // 3 V empty, 3.5 V at half, 4.5 V full; from 0.75 (4 V) to 3.25 V (0.25). 1 Ω and 1 Ω of source: the terminals show half.
        OcvTable cell = new([0, 0.5, 1], [3, 3.5, 4.5]);
        DischargeResult run = Discharge.ThroughHeater(cell, 3600, 1, 1, 1.625, 0.75);
        Assert.Equal(2 * 900 * ((Math.Log(4 / 3.5) / 0.5) + (Math.Log(3.5 / 3.25) / 0.25)), run.DurationS, 1e-9);
        Assert.Equal((900 * 3.75) + (900 * 3.375), run.ChemicalJ, 1e-9);
        Assert.Equal(run.ChemicalJ / 2, run.LoadJ, 1e-9);
        Assert.Equal((1800, 0.25, 3.25), (Math.Round(run.GivenAs, 9), Math.Round(run.StopCharge, 12), Math.Round(run.StopOpenV, 12)));
        Assert.Equal((2, 1.625, DischargeEnd.Cutoff), (run.StartA, Math.Round(run.StopA, 12), run.End));
        Assert.Equal(run.LoadJ / run.DurationS, run.MeanW, 1e-12);
        Assert.Equal(0.5, run.Share, 1e-12);
    }

    [Fact]
    public void A_cutoff_at_the_start_lets_nothing_run()
    {
        OcvTable cell = OcvTable.Line(3, 4);
        DischargeResult run = Discharge.ThroughHeater(cell, 3600, 0, 4, 3.5, 0.5);
        Assert.Equal(new DischargeResult(0, 0, 0, 0, 0.5, 3.5, 0, 0, DischargeEnd.NeverRan), run);
        Assert.Equal((0, 0), (run.MeanW, run.Share));
        Assert.Equal(DischargeEnd.Cutoff, Discharge.ThroughHeater(cell, 3600, 0, 4, 3.49, 0.5).End);
        Assert.Equal(DischargeEnd.Empty, Discharge.ThroughHeater(cell, 3600, 0, 4, 3).End);   // empty and cut off at once
        Assert.Equal(DischargeEnd.Cutoff, Discharge.ThroughHeater(cell, 3600, 0, 4, 3.01).End);
        Assert.Equal((4, 0.5), (new DischargeResult(0.5, 2, 4, 1, 0, 3, 1, 1, DischargeEnd.Empty).MeanW, new DischargeResult(1, 0.25, 0.5, 1, 0, 3, 1, 1, DischargeEnd.Empty).Share));
    }

    /// <summary>a1 = 0.2 V, a2 = 0.1 Ω, source 0.3 Ω, 5 W: the fold lies at 0.2 + 2·√(0.4·5) = 3.0284271 V rested, 3.5355339 A, 1.9677670 V at the terminals.</summary>
    [Theory]
    [InlineData(0, DischargeEnd.Fold, 3.0284271)]
    [InlineData(0.2, DischargeEnd.Fold, 3.0284271)]   // at the drop itself nothing is left to drive a current
    [InlineData(1.5, DischargeEnd.Fold, 3.0284271)]   // 1.3² < 4·0.1·5
    [InlineData(1.7, DischargeEnd.Fold, 3.0284271)]   // it would be the unstable current
    [InlineData(1.96, DischargeEnd.Fold, 3.0284271)]
    [InlineData(1.98, DischargeEnd.Cutoff, 3.0286117)] // 10/(1.78 + √(3.1684 − 2)) = 3.4953724 A
    [InlineData(2.2, DischargeEnd.Cutoff, 3.0786797)]  // 10/(2 + √2) = 2.9289322 A: 2.2 + 0.3·2.9289322
    public void A_held_power_ends_at_the_fold_or_at_the_cutoff_whichever_comes_first(double cutoff, DischargeEnd end, double openV)
    {
        DischargeResult run = Discharge.AtPower(OcvTable.Line(3, 4), 3600, 0.3, new LossCoefficients(0, 0.2, 0.1), 5, cutoff);
        Assert.Equal(end, run.End);
        Assert.Equal(openV, run.StopOpenV, 1e-7);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("capacityAs", () => RunTime.AtCurrentS(-1, 1));
        Printed.Refuses("usable", () => RunTime.AtCurrentS(1, 1, 1.2));
        Printed.Refuses("loadOhm", () => Discharge.ThroughHeater(OcvTables.A, 3600, 0.1, 0, 3));
        Printed.Refuses("sourceOhm", () => Discharge.AtPower(OcvTables.A, 3600, -0.1, default, 3, 3));
        Printed.Refuses("powerW", () => Discharge.AtPower(OcvTables.A, 3600, 0.1, default, 0, 3));
        Printed.Refuses("capacityAs", () => Discharge.ThroughHeater(OcvTables.A, 0, 0.1, 2, 3));
        Printed.Refuses("capacityAs", () => Discharge.AtPower(OcvTables.A, -1, 0.1, default, 3, 3));
        Printed.Refuses("cutoffV", () => Discharge.ThroughHeater(OcvTables.A, 3600, 0.1, 2, -3));
        Printed.Refuses("cutoffV", () => Discharge.AtPower(OcvTables.A, 3600, 0.1, default, 3, -3));
        Printed.Refuses("sourceOhm", () => Discharge.ThroughHeater(OcvTables.A, 3600, -0.1, 2, 3));
        Printed.Refuses("fromCharge", () => Discharge.AtPower(OcvTables.A, 3600, 0.1, default, 1, 3, 1.2));
    }
}

using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Cells, stages and fits with figures so round that each factor shows, and at the limits of what they take; by hand.</summary>
public class CellByHandTests
{
    /// <summary>3 V at a fifth, 3.5 V at 0.6, 4.5 V at full; 3 V held below.</summary>
    private static readonly OcvTable Late = new([0.2, 0.6, 1], [3, 3.5, 4.5]);

    [Theory]
    [InlineData(0, 1, 3.5)]            // 0.2·3 + 0.4·3.25 + 0.4·4
    [InlineData(0, 0.1, 3)]
    [InlineData(0.1, 0.2, 3)]
    [InlineData(0.1, 0.4, 3.0833333)]  // (0.1·3 + 0.2·3.125)/0.3
    [InlineData(0.4, 0.8, 3.5625)]     // (0.2·3.375 + 0.2·3.75)/0.4
    [InlineData(0.6, 0.6, 3.5)]
    public void Mean_volts_over_a_stretch(double from, double to, double mean) => Assert.Equal(mean, Late.MeanV(from, to), 1e-6);

    [Fact]
    public void A_table_that_ends_early_holds_its_last_volts()
    {
        OcvTable early = new([0.2, 0.8], [3, 4]);
        Assert.Equal(4, early.MeanV(0.8, 1), 1e-12);
        Assert.Equal(3.85, early.MeanV(0.5, 1), 1e-12);     // (0.3·3.75 + 0.2·4)/0.5
        Assert.Equal((3, 4, 3.5), (early.VoltsAt(0.1), early.VoltsAt(0.9), Math.Round(early.VoltsAt(0.5), 12)));
        Assert.Equal((0.2, 0.8, 0.5), (early.ChargeAt(2), early.ChargeAt(5), Math.Round(early.ChargeAt(3.5), 12)));
        Assert.Equal([1.25, 1.25, 2.5, 2.5, 1.25], ((double[])[0, 0.3, 0.6, 1, 0.59]).Select(charge => Math.Round(Late.SlopeVAt(charge), 9)));
        Assert.Equal(0.04, Late.ChargeDoubt(0.8, 0.1), 1e-12);
    }

    [Fact]
    public void A_table_that_does_not_rise_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new OcvTable([0, 0], [3, 4]));
        Assert.Throws<ArgumentException>(() => new OcvTable([0, 1], [3, 3]));
        Assert.Throws<ArgumentException>(() => new OcvTable([0, 1], [3]));
        Printed.Refuses("charges", () => new OcvTable([0], [3]));
        Printed.Refuses("charges", () => new OcvTable([0, 1.1], [3, 4]));
        Printed.Refuses("volts", () => new OcvTable([0, 1], [0, 4]));
        Printed.Refuses("fromCharge", () => Late.MeanV(-0.1, 1));
        Printed.Refuses("toCharge", () => Late.MeanV(0, 1.1));
        Printed.Refuses("voltsDoubtV", () => Late.ChargeDoubt(0.5, -1));
    }

    [Fact]
    public void Slow_pairs_of_a_cell()
    {
        Assert.Equal([Math.Exp(-2) - 1, -1, 0, -1, 0], (((double, double)[])[(1, 0.5), (1, 0), (0, 0), (0.5, 0), (0, 2)]).Select(pair => TwoRcCell.Grown(pair.Item1, pair.Item2)));
        // Half an ohm at 2 A towards 1 V from 3 V, one time constant: 1 + 2/e.
        Assert.Equal(1 + (2 / Math.E), TwoRcCell.PairV(3, 0.5, 10, 2, 10), 1e-12);
        Printed.Refuses("pairOhm", () => TwoRcCell.PairV(3, -0.5, 10, 2, 10));
        Printed.Refuses("stepS", () => TwoRcCell.PairV(3, 0.5, 10, 2, -10));
        Printed.Refuses("tauS", () => TwoRcCell.PairV(3, 0.5, 0, 2, 10));
        TwoRcCircuit circuit = new(0.1, 0.2, 5, 0.3, 100);
        Assert.Equal((1, 30, 0.6), (circuit.ShortS, Math.Round(circuit.LongS, 12), Math.Round(circuit.SettledOhm, 12)));
        Assert.Equal(0.1 + (0.2 * (1 - Math.Exp(-3))) + (0.3 * (1 - Math.Exp(-0.1))), circuit.OhmAfter(3), 1e-12);
        Assert.Equal(0.1, circuit.OhmAfter(0), 1e-12);
        TwoRcCircuit twice = circuit.Scaled(2);
        Assert.Equal((0.2, 0.4, 0.6, 1, 30), (twice.SeriesOhm, twice.ShortOhm, twice.LongOhm, twice.ShortS, Math.Round(twice.LongS, 12)));
        Printed.Refuses("factor", () => circuit.Scaled(0));
        TwoRcState state = TwoRcCell.Advance(new(1, 0, 0), circuit, 2, 100, 5);
        Assert.Equal((0.9, 0.4 * (1 - Math.Exp(-5)), 0.6 * (1 - Math.Exp(-1 / 6.0))), (state.Charge, state.ShortV, state.LongV), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) < 1e-12);
        Assert.Equal(3.5, TwoRcCell.TerminalV(4, new(1, 0.1, 0.2), 0.1, 2), 1e-12);
        Assert.Equal(2, TwoRcCell.CurrentThroughA(4, 0.5, 1.5), 1e-12);
        // 4 V behind 1 Ω: 3 W at 1 A, 4 W at 2 A just so, no more; nothing drives a current backwards.
        Assert.Equal((1, 2), (TwoRcCell.CurrentAtPowerA(4, 1, 3)!.Value, TwoRcCell.CurrentAtPowerA(4, 1, 4)!.Value));
        Assert.Null(TwoRcCell.CurrentAtPowerA(4, 1, 4.01));
        Assert.Null(TwoRcCell.CurrentAtPowerA(-4, 1, 3));
        Assert.Null(TwoRcCell.CurrentAtPowerA(0, 0, 3));
        Assert.Equal((3, 2), (SourceFold.UnstableA(4, 1, 3)!.Value, SourceFold.UnstableA(4, 1, 4)!.Value));
        Assert.Equal((4, 0, 3), (SourceFold.MostW(4, 1, 2), SourceFold.MostW(3, 0.1, 3.5), SourceFold.MostW(4, 1, 3)));
        Assert.Equal(1.5, SourceFold.StableBelowOhm(3, 6), 1e-12);
    }

    [Fact]
    public void Cold_and_hard_worked_cells()
    {
        Assert.Equal(1, Arrhenius.FactorAtC(25), 1e-12);
        // Ratio e between 250 K and 300 K: R/(1/250 − 1/300) = 8.314462618·1500.
        Assert.Equal(8.314462618 * 1500, Arrhenius.ActivationFromC(Math.E, 250 - 273.15, 1, 300 - 273.15), 1e-4);
        Assert.Equal(Math.Exp(1), Arrhenius.Factor(8.314462618 * 1500, 250, 300), 1e-8);
        Printed.Refuses("warmK", () => Arrhenius.ActivationFromC(2, 20, 1, 20));
        Assert.Equal([1, 1, 0.9, 0.8, 0.65, 0.5, 0.5], ((double[])[50, 25, 12.5, 0, -5, -10, -20]).Select(at => Math.Round(RateCapacity.ColdShare(at, 0.8, 0.5), 12)));
        Printed.Refuses("shareAtZero", () => RateCapacity.ColdShare(0, 1.1, 0.5));
        Printed.Refuses("shareAtMinusTen", () => RateCapacity.ColdShare(0, 0.8, -0.1));
        Assert.Equal((1800, 900), (RateCapacity.PeukertS(7200, 3600, 4, 1), RateCapacity.PeukertS(7200, 3600, 4, 2)));
        Printed.Refuses("exponent", () => RateCapacity.PeukertS(7200, 3600, 4, 0.99));
        Printed.Refuses("exponent", () => RateCapacity.PeukertS(7200, 3600, 4, 2.01));
        Assert.Equal(2, RateCapacity.PeukertExponent(1, 100, 2, 25), 1e-12);
        Printed.Refuses("secondA", () => RateCapacity.PeukertExponent(1, 100, 1, 25));
        Assert.Equal(1800, RateCapacity.GivenAs(OcvTable.Line(3, 4), 3600, 0.5, 1, 3), 1e-9);   // down to 3.5 V rested
        // In storage at so low a voltage the published lines would give back what they cannot: 3.15 V and 3.10 V are their zeros.
        Assert.Equal((0, 0), (Ageing.StorageCapacityFactor(3.1, 300), Ageing.StorageOhmsGain(3.0, 300, 86400)));
        Assert.True(Ageing.StorageOhmsGain(3.2, 300, 86400) > 0);
        Assert.Equal(0, Ageing.CycleOhmsGain(3.725, 0, 3600));                                 // −1.521e-5 an ampere hour is no gain
        Assert.Equal(2.798e-4 - 1.521e-5, Ageing.CycleOhmsGain(3.725, 1, 3600), 1e-12);
        Assert.Equal(7.6e-4 + (4.081e-3 * 0.5) + (7.348e-3 * 0.01), Ageing.CycleFade(3.767, 0.5, 3600), 1e-12);
        Assert.Equal(2 * 10 * 0.5 * 7740, Ageing.PublishedThroughputAs(10, 0.5), 1e-9);
    }

    [Fact]
    public void Stages_by_hand()
    {
        // Half duty, 8 Ω, ½ Ω, 1 Ω, 1 Ω, 1 V: 3.5 V over 2 + 1.5 Ω.
        StagePoint up = Boost.At(4, 0.5, 8, 0.5, 1, 1, 1);
        Assert.Equal((4, 1, 0.5), (up.OutV, up.InductorA, up.Efficiency));
        StagePoint matched = Boost.At(4, 0.5, 4, 1);                     // the load seen is as large as the inductor's ohms
        Assert.Equal((4, 2), (matched.OutV, matched.InductorA));
        Assert.Equal(0, Boost.At(1, 0.2, 8, 0.5, 0, 0, 2).InductorA);     // the drop holds everything back
        Assert.Equal(0.5, Boost.DutyFor(1, 2, 0.5, default)!.Value, 1e-12);
        Assert.Equal(0, Boost.DutyFor(4, 4, 8, default)!.Value, 1e-12);   // straight through
        Assert.Null(Boost.DutyFor(4, 3.99, 8, default));
        Assert.Null(Boost.DutyFor(1, 2, 1, new(0, 0, 0.5)));              // 1·1 − 0.5·2 = 0: only at full duty, where nothing comes out
        Assert.Equal(0.5, Boost.PeakDuty(4, 0.5, 0.5), 1e-12);
        Assert.Equal(0, Boost.PeakDuty(1, 2));                            // a source above its load is best left alone
        Assert.Equal(1, Boost.PeakGain(4, 1), 1e-12);                     // 4/(2·√4)
        // 10 V at half duty, 1 V of diode: 4.5 V over 4 + 0.5 + 0.5 + 0.5 Ω.
        StagePoint down = Buck.At(10, 0.5, 4, 0.5, 1, 1, 1);
        Assert.Equal((18 / 5.5, 4.5 / 11, 18 / 5.5 / 5), (down.OutV, down.InA, down.Efficiency), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) < 1e-12);
        Assert.Equal((0, 0, 0), (Buck.At(10, 0.05, 4, 0.5, 1, 1, 1).OutV, Buck.At(10, 0.05, 4, 0.5, 1, 1, 1).InA, Buck.At(10, 0.05, 4, 0.5, 1, 1, 1).Efficiency));
        Assert.Equal((1, 0), (Buck.DutyFor(5, 5, 10, default)!.Value, Buck.DutyFor(5, 0, 10, default)!.Value));
        Assert.Equal(0.5, Buck.DutyFor(10, 18 / 5.5, 4, new(0.5, 1, 1, 1))!.Value, 1e-12);
    }

    [Fact]
    public void Three_readings_give_three_coefficients_and_an_ideal_module_is_best_anywhere()
    {
        LossFit fit = ConverterLossFit.Fit([1, 2, 4], [0.35, 0.7, 1.7]);   // 0.1 + 0.2·I + 0.05·I²
        Assert.Equal((0.1, 0.2, 0.05), (Math.Round(fit.Loss.FixedW, 9), Math.Round(fit.Loss.DropV, 9), Math.Round(fit.Loss.SlopeOhm, 9)));
        Assert.Equal(double.PositiveInfinity, ConverterLoss.BestA(new(0, 0.1, 0)));
        Assert.Equal((2, 0.8), (ConverterLoss.BestA(new(0.4, 0.2, 0.1)), Math.Round(ConverterLoss.BestEfficiency(new(0.4, 0.2, 0.1), 3), 12)));   // √4; 1 − (0.2 + 0.4)/3
        Assert.Equal(double.PositiveInfinity, ConverterLoss.MostW(4, 0, default));
        Assert.Equal(0, ConverterLoss.MostW(0.1, 1, new(0, 0.2, 0)));
        Assert.Equal(0, ConverterLoss.MostW(4, 1, new(5, 0, 0)));
        Assert.Equal(0.5, ConverterLoss.MostW(2, 1, new(0.5, 0, 0)), 1e-12);
        Assert.Null(ConverterLoss.InputA(0.2, 0, new(0, 0.2, 0), 0.01));
        Assert.Equal(2, ConverterLoss.InputA(4, 1, default, 4)!.Value, 1e-12);
        Assert.Equal(0.1 * Math.Sqrt(36 + 16), ConverterLoss.ReadLossDoubtW(2, 3, 4, 1, 0.1), 1e-12);
        Assert.Equal(2, ConverterLoss.ReadLossW(2, 3, 4, 1), 1e-12);
    }

    [Fact]
    public void Below_one_volt_a_step_down_still_meets_its_load()
    {
        // One ohm as a table, 1 V behind ½ Ω at full duty: 2/3 V.
        var point = StepDownPoint.Solve(1, 0.5, LoadLaw.Of(new VoltsAmpsTable([10], [10])), new StepDownModule(5, default)).Boxed;
        Assert.Equal((PathRegion.DutyLimited, 0.6666667), (point.Region, Math.Round(point.OutV!.Value, 7)));
        Assert.Equal(0.6666667, point.InputA!.Value, 1e-7);
    }

    [Fact]
    public void Plain_heaters_by_hand()
    {
        Assert.Equal((2, 6), (DirectDrive.CurrentA(6, 2, 1), DirectDrive.HeaterW(6, 2, 1, 0.75)));
        Assert.Equal(0.75, DirectDrive.Efficiency(3, 1), 1e-12);
        Assert.Equal(1, DirectDrive.HeaterOhmFor(4, 1, 4)!.Value, 1e-12);     // the source's own ohms, just so
        Assert.Null(DirectDrive.HeaterOhmFor(4, 1, 4.01));
        Assert.Null(DirectDrive.HeaterOhmFor(4, 1, 8));
        Assert.Equal((1, 0), (DirectDrive.LinearEfficiency(3, 3), DirectDrive.LinearEfficiency(3, 0)));
        Assert.Equal(1.8, DirectDrive.LinearHeatW(4.2, 3.3, 2), 1e-12);
    }
}

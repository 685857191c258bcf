using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>What readings say in closed form: marks, plateaus, changing power, probes. Computed by an independent script unless a line says otherwise.</summary>
public class IdentificationTests
{
    /// <summary>Marks at 200 and 280 °C over 25 °C.</summary>
    [Theory]
    [InlineData(2.0, "322.3684")]
    [InlineData(2.2, "296.8678")]
    [InlineData(2.4, "283.0698")]
    [InlineData(3.0, "265.5208")]
    public void Two_times_give_the_plateau(double ratio, string printed)
    {
        var guess = TwoMarks.From(175, 40, 255, 40 * ratio);
        Printed.Agrees("D", Printed.Computed, printed, guess.PlateauRiseK);
        Assert.Equal(175, guess.PlateauRiseK * (1 - Math.Exp(-40 / guess.TimeConstantS)), 1e-9 * 175);
        Assert.Equal(255, guess.PlateauRiseK * (1 - Math.Exp(-40 * ratio / guess.TimeConstantS)), 1e-9 * 255);
    }

    [Fact]
    public void Two_marks_find_back_the_tool_they_came_from() => Gen.Select(Gen.Double[260, 2000], Gen.Double[20, 600]).Sample((plateau, tau) =>
    {
        double first = -tau * Math.Log(1 - (175 / plateau)), second = -tau * Math.Log(1 - (255 / plateau));
        var guess = TwoMarks.From(175, first, 255, second);
        Assert.Equal(plateau, guess.PlateauRiseK, 1e-7 * plateau);
        Assert.Equal(tau, guess.TimeConstantS, 1e-7 * tau);
    });

    /// <summary>By hand: with a straight line, 255/175 = 1.457, nothing is lost; faster than that cannot be.</summary>
    [Fact]
    public void A_second_stretch_faster_than_the_first_is_refused() => Printed.Refuses("time ratio", () => TwoMarks.From(175, 40, 255, 40 * 1.457));

    /// <summary>Weights of the worked stopwatch fit: u_T 4 °C, u_stop 1.5 s at the solution D 275.2175 K, τ 42.11459 s.</summary>
    [Fact]
    public void A_time_near_the_plateau_carries_almost_nothing() => Printed.Agree("u(t200), u(t280)", Printed.Computed, "2.253, 8.466",
        TwoMarks.TimeDoubtS(1.5, 4, 275.2175, 175, 42.11459), TwoMarks.TimeDoubtS(1.5, 4, 275.2175, 255, 42.11459));

    [Fact]
    public void Linear_ratios_of_the_two_plateau_example()
    {
        Printed.Agrees("plateau 298", Printed.Computed, "2.654064", TwoMarks.TimeRatio(273, 175, 255));
        Printed.Agree("plateau 293, 303, 308", Printed.Computed, "2.859, 2.510, 2.401",
            TwoMarks.TimeRatio(268, 175, 255), TwoMarks.TimeRatio(278, 175, 255), TwoMarks.TimeRatio(283, 175, 255));
        Printed.Agree("t/tau", Printed.Computed, "1.024504, 2.719100", WarmUp.TimeToRiseS(175, 273, 1, 1), WarmUp.TimeToRiseS(255, 273, 1, 1));
        Printed.Agrees("ratio 1.875", Printed.Computed, "351.95", TwoMarks.From(175, 40, 255, 75).PlateauRiseK);

        // 'at 75 s a linear tool of plateau 298 °C that took 40 s to 200 °C is at 258 °C': by hand 273(1 − e^(−1.024504·75/40)) + 25.
        Printed.Agrees("T(75)", Printed.Computed, "258", 25 + (273 * (1 - Math.Exp(-1.024504 * 75 / 40))));
    }

    /// <summary>Invented example of the handbook: 5.00 W rests at 298 °C, 8.45 W at 391 °C, air 25 °C.</summary>
    [Fact]
    public void Two_plateaus_reject_a_linear_loss_and_split_it()
    {
        Printed.Agrees("linear", Printed.Computed, "486.37", Plateau.LinearC(8.45, 5.00 / 273, 25));
        Printed.Agrees("n", Printed.Computed, "1.789896", PlateauPair.Exponent(5.00, 273, 8.45, 366));
        var split = PlateauPair.Split(5.00, 298, 8.45, 391, 25);
        Printed.Agree("G, B", Printed.Computed, "0.006769223, 3.199598e-11", split.LinearWPerK, split.RadiatingWPerK4);
        Printed.Agrees("eA", Printed.Computed, "5.642658", split.EmissivityTimesAreaM2 * 1e4);
        Printed.Agree("share", Printed.Computed, "63.0, 70.7", 100 * split.RadiatingShare(298, 25), 100 * split.RadiatingShare(391, 25));
        Printed.Agree("secant, tangent", Printed.Computed, "0.01831502, 0.03061470", split.LossW(298, 25) / 273, split.TangentWPerK(298));
        Assert.Equal(298, split.PlateauC(5.00, 25), 1e-9);
        Assert.Equal(391, split.PlateauC(8.45, 25), 1e-9);
        Printed.Agree("power for 350", Printed.Computed, "6.831, 6.772, 5.952", PlateauPair.PowerForRiseW(5, 273, 325, 1.789896), split.LossW(350, 25), 5.00 / 273 * 325);
    }

    [Fact]
    public void The_split_changes_the_times_and_bounds_the_heat_capacity()
    {
        var split = PlateauPair.Split(5.00, 298, 8.45, 391, 25);
        double Time(double watts, double toC, double capacity) => WarmUp.TimeToRiseS(capacity, rise => watts - split.LossW(25 + rise, 25), 0, toC - 25);
        Printed.Agree("per unit C", Printed.Computed, "46.89219, 107.8585", Time(5, 200, 1), Time(5, 280, 1));
        Printed.Agrees("ratio", Printed.Computed, "2.300138", Time(5, 280, 1) / Time(5, 200, 1));
        Printed.Agree("C from 40 and 75 s", Printed.Computed, "0.8530206, 0.6954", 40 / Time(5, 200, 1), 75 / Time(5, 280, 1));
        Printed.Agrees("t280 with it", Printed.Computed, "92.01", Time(5, 280, 40 / Time(5, 200, 1)));
        Printed.Agrees("C from 44 s", Printed.Computed, "0.9383226", 44 / Time(5, 200, 1));
        Printed.Agree("at 8.45 W", Printed.Computed, "22.63, 37.83, 61.99", Time(8.45, 200, 0.9383226), Time(8.45, 280, 0.9383226), Time(8.45, 350, 0.9383226));
    }

    [Fact]
    public void Resistance_alone_cannot_explain_the_two_plateaus()
    {
        double Ratio(double alpha) => PlateauPair.RiseRatioFromResistance(1.69, alpha, 278, 371);
        Printed.Agrees("alpha 0", Printed.Computed, "1.69", Ratio(0));
        Printed.Agrees("alpha large", Printed.Computed, "1.266", Ratio(1e9));
        Printed.Agrees("alpha needed", Printed.Computed, "0.01267", Solve(alpha => Ratio(alpha) - (366.0 / 273), 0, 1));
    }

    /// <summary>n with u(T) 7 °C and u(P) 3 %: 200 000 draws with a fixed seed against the script's 4e5; sd of the mean 0.0006, printed to 0.01.</summary>
    [Fact]
    public void The_exponent_of_two_plateaus_carries_a_quarter_of_doubt()
    {
        var random = new Random(7);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        double[] drawn = [.. Enumerable.Range(0, 200_000).Select(_ =>
            PlateauPair.Exponent(5.00 * (1 + (0.03 * Normal())), 273 + (7 * Normal()), 8.45 * (1 + (0.03 * Normal())), 366 + (7 * Normal()))).Order()];
        Assert.Equal(1.81, drawn.Average(), 0.01);
        Assert.Equal(0.25, Math.Sqrt(drawn.Average(x => x * x) - Math.Pow(drawn.Average(), 2)), 0.01);
        Assert.Equal(1.38, drawn[(int)(0.025 * drawn.Length)], 0.015);
        Assert.Equal(2.37, drawn[(int)(0.975 * drawn.Length)], 0.015);
    }

    [Fact]
    public void A_split_finds_back_the_loss_it_came_from() => Gen.Select(Gen.Double[0.001, 0.05], Gen.Double[1e-12, 1e-10]).Sample((g, b) =>
    {
        var truth = new LossSplit(g, b);
        var found = PlateauPair.Split(truth.LossW(250, 25), 250, truth.LossW(400, 25), 400, 25);
        Assert.Equal(g, found.LinearWPerK, 1e-9 * (g + (b * 1e9)));
        Assert.Equal(b, found.RadiatingWPerK4, 1e-9 * (b + (g * 1e-9)));
    });

    [Fact]
    public void A_loss_with_a_falling_part_may_never_meet_the_power() =>
        Assert.Equal(double.PositiveInfinity, new LossSplit(0.02, -3e-11).PlateauC(20, 25)); // by hand: 0.02Δ − 3e-11T⁴ stays below 5 W

    [Fact]
    public void A_sagging_pack_heats_less_than_its_mean_power_says()
    {
        Printed.Agrees("ramp", Printed.Computed, "276.5151", PowerHistory.RampK(29.4, 190, 12.6, 11.4, 300));
        Printed.Agrees("mean power", Printed.Computed, "280.0555", PowerHistory.RampK(29.4, 190, 12.0, 12.0, 300));
        Printed.Agrees("starting power", Printed.Computed, "294.0582", PowerHistory.RampK(29.4, 190, 12.6, 12.6, 300));
    }

    [Fact]
    public void Superposition_and_ramp_agree_with_many_small_steps() => Gen.Select(Gen.Double[5, 20], Gen.Double[5, 20], Gen.Double[50, 300], Gen.Double[10, 600]).Sample((start, end, tau, time) =>
    {
        const int steps = 4000;
        var levels = Enumerable.Range(0, steps).Select(i => (FromS: time * i / steps, PowerW: start + ((end - start) * (i + 0.5) / steps))).ToArray();
        double Unit(double t) => 30 * (1 - Math.Exp(-t / tau));
        double exact = PowerHistory.RampK(30, tau, start, end, time);
        Assert.Equal(exact, PowerHistory.RiseK(Unit, levels, time), 1e-6 * exact);
        double off = 0.4 * time;
        Assert.Equal(PowerHistory.RiseK(Unit, [(0, start), (off, 0)], time), PowerHistory.HeatThenCoolK(30, tau, start, off, time), 1e-9 * 30 * start);
    }, iter: 50);

    [Fact]
    public void A_metal_heater_at_constant_voltage_rests_lower_and_settles_faster()
    {
        var plateau = VoltageDriven.At(14, 1.5e-3, 0.034);
        Printed.Agree("plateau, power, settling", Printed.Computed, "287.6505, 9.780117, 0.7683913", plateau.RiseK, plateau.HotPowerW, plateau.SettlingShare);
        Printed.Agrees("no alpha", Printed.Computed, "411.7647", VoltageDriven.At(14, 0, 0.034).RiseK);
        Printed.Agrees("t(250)", Printed.Computed, "310.5855", VoltageDriven.TimeToRiseS(250, 14, 1.5e-3, 7, 0.034));
        Printed.Agrees("t(250), no alpha", Printed.Computed, "192.3578", VoltageDriven.TimeToRiseS(250, 14, 0, 7, 0.034));

        // R and α referred to 20 °C, air at 25 °C: both are re-referred, α_b = α/(1 + α·5).
        double shift = 1 + (1.5e-3 * 5);
        Printed.Agrees("air 25 °C", Printed.Computed, "286.4960", VoltageDriven.At(14 / shift, 1.5e-3 / shift, 0.034).RiseK);
    }

    [Fact]
    public void The_voltage_plateau_balances_and_its_time_is_the_integral() => Gen.Select(Gen.Double[2, 60], Gen.Double[0, 6e-3], Gen.Double[0.01, 0.1], Gen.Double[0.05, 0.99]).Sample((cold, alpha, g, share) =>
    {
        var plateau = VoltageDriven.At(cold, alpha, g);
        Assert.Equal(cold / (1 + (alpha * plateau.RiseK)), g * plateau.RiseK, 1e-9 * cold);
        double rise = share * plateau.RiseK;
        double integral = WarmUp.TimeToRiseS(5, x => (cold / (1 + (alpha * x))) - (g * x), 0, rise);
        Assert.Equal(integral, VoltageDriven.TimeToRiseS(rise, cold, alpha, 5, g), 1e-8 * integral);
    });

    [Fact]
    public void A_probe_lags_on_a_ramp_and_reads_low_on_a_surface()
    {
        Assert.Equal(6, Probe.LagK(3, 2)); // by hand: 3 K/s × 2 s
        Printed.Agrees("contact", Printed.Computed, "331.6038", Probe.ReadsC(0.01, 0.0006, 350, 25));
        Printed.Agree("wires", Printed.Computed, "4.712389e-4, 1.154295e-3", 2 * Fin.EndlessWPerK(0.25e-3, 24, 60), 2 * Fin.EndlessWPerK(0.50e-3, 24, 45));
        Assert.Equal(350, Probe.PartC(0.01, 0.0006, Probe.ReadsC(0.01, 0.0006, 350, 25), 25), 1e-9);
    }

    [Fact]
    public void Impossible_inputs_are_refused_with_their_range()
    {
        Printed.Refuses("lateRiseK", () => TwoMarks.From(255, 40, 175, 80));
        Printed.Refuses("highW", () => PlateauPair.Exponent(8, 273, 5, 366));
        Printed.Refuses("contactWPerK", () => Probe.ReadsC(0, 1, 300, 25));
        Printed.Refuses("alphaPerK", () => VoltageDriven.At(10, -1e-3, 0.03));
        Printed.Refuses("fromS", () => PowerHistory.RiseK(t => t, [(0, 1), (0, 2)], 5));
    }

    private static double Solve(Func<double, double> f, double low, double high)
    {
        for (int i = 0; i < 100; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Math.Sign(f(middle)) == Math.Sign(f(low)) ? (middle, high) : (low, middle);
        }

        return low;
    }
}

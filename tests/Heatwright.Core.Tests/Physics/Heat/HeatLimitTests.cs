using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Heat laws at the limits of what they take, and with figures so round that each factor shows; by hand.</summary>
public class HeatLimitTests
{
    [Fact]
    public void Two_marks_by_hand()
    {
        // Plateau 300 K, τ = 50 s: a third is reached at 50·ln 1.5, two thirds at 50·ln 3.
        PlateauGuess guess = TwoMarks.From(100, 50 * Math.Log(1.5), 200, 50 * Math.Log(3));
        Assert.Equal((300, 50), (Math.Round(guess.PlateauRiseK, 6), Math.Round(guess.TimeConstantS, 6)));
        Assert.Equal(Math.Log(3) / Math.Log(1.5), TwoMarks.TimeRatio(300, 100, 200), 1e-12);
        // A plateau of 40 times the second mark is found too: rest 0.9875 and 0.975.
        guess = TwoMarks.From(100, -50 * Math.Log(1 - (1 / 80.0)), 200, -50 * Math.Log(1 - (1 / 40.0)));
        Assert.Equal(8000, guess.PlateauRiseK, 1e-5);
        // √(1.5² + (4·42/100)²)
        Assert.Equal(Math.Sqrt(2.25 + 2.8224), TwoMarks.TimeDoubtS(1.5, 4, 275, 175, 42), 1e-12);
        Printed.Refuses("plateauRiseK", () => TwoMarks.TimeRatio(200, 100, 200));
        Printed.Refuses("lateRiseK", () => TwoMarks.TimeRatio(300, 200, 200));
        Printed.Refuses("earlyRiseK", () => TwoMarks.TimeRatio(300, 0, 200));
        Printed.Refuses("time ratio", () => TwoMarks.From(100, 10, 200, 20));            // a straight line: no plateau at all
        Printed.Refuses("time ratio", () => TwoMarks.From(100, 10, 200, 20 + 1e-12));    // so nearly straight that none below any sense bends it
        Printed.Refuses("plateauRiseK", () => TwoMarks.TimeDoubtS(1, 1, 175, 175, 42));
    }

    [Fact]
    public void One_body_by_hand()
    {
        Assert.Equal(double.PositiveInfinity, WarmUp.TimeToRiseS(100, 10, 5, 0.1));      // exactly its plateau
        Assert.Equal(50 * Math.Log(2), WarmUp.TimeToRiseS(50, 10, 5, 0.1), 1e-9);
        Assert.Equal(0, WarmUp.TimeToRiseS(0, 10, 5, 0.1));
        WarmUpNeeds needs = WarmUp.To(75, 25, 10, 5, 0.1);
        Assert.Equal((50 * Math.Log(2), 500 * Math.Log(2), 250, 5), (needs.TimeS, needs.EnergyJ, needs.StoredJ, needs.HoldW), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) + Math.Abs(a.Item3 - b.Item3) + Math.Abs(a.Item4 - b.Item4) < 1e-9);
        Assert.Equal(0.5 / Math.Log(2), needs.Efficiency, 1e-12);
        Assert.Equal(Math.Log(2), WarmUp.TimeConstantsForMargin(2), 1e-12);
        Assert.Equal(-100 / 3.0, WarmUp.TimeSlopeSPerW(200, 12, 1.5), 1e-9);             // 200/12/0.5
        Printed.Refuses("marginRatio", () => WarmUp.TimeSlopeSPerW(200, 12, 1));
        // Any net power: 2 W all the way over 30 K at 4 J/K; 100 − Δ W at 1 J/K up to 50 K: ln 2.
        Assert.Equal(60, WarmUp.TimeToRiseS(4, _ => 2, 10, 40), 1e-9);
        Assert.Equal(Math.Log(2), WarmUp.TimeToRiseS(1, rise => 100 - rise, 0, 50), 1e-9);
        Assert.Equal(0, WarmUp.TimeToRiseS(4, _ => 2, 10, 10));
        Assert.Equal(double.PositiveInfinity, WarmUp.TimeToRiseS(4, rise => 40 - rise, 0, 40));
        Assert.Equal(double.PositiveInfinity, WarmUp.TimeToRiseS(4, rise => rise - 5, 0, 10));
        Assert.Equal(double.PositiveInfinity, WarmUp.TimeToRiseS(4, rise => rise, 0, 10));              // nothing sets it going
        Assert.Equal(double.PositiveInfinity, WarmUp.TimeToRiseS(4, rise => Math.Abs(rise - 5) - 1, 0, 10));
        Printed.Refuses("toRiseK", () => WarmUp.TimeToRiseS(4, _ => 2, 10, 9));
        Printed.Refuses("fromRiseK", () => WarmUp.TimeToRiseS(4, _ => 2, double.NaN, 9));
        Printed.Refuses("capacityJPerK", () => WarmUp.TimeToRiseS(0, _ => 2, 1, 9));
    }

    /// <summary>ln(1 − x) = −x − x²/2 − x³/3 − x⁴/4: for small x every digit of the series counts; for others the plain logarithm.</summary>
    [Theory]
    [InlineData(5e-5, -5.000125004166822916922929e-5)]
    [InlineData(-5e-5, 4.999875004166510422916406e-5)]
    [InlineData(1e-8, -1.0000000050000000333e-8)]
    [InlineData(0.5, -0.6931471805599453)]
    [InlineData(-0.5, 0.4054651081081644)]
    public void The_logarithm_of_the_rest(double x, double log) => Assert.Equal(log, WarmUp.LogOfRest(x), 1e-15 * Math.Abs(log));

    [Fact]
    public void Heat_to_melt_by_hand()
    {
        // 1000·100 + 50 000 + 2000·10 J/kg.
        Assert.Equal(new MeltNeeds(170000, 170e6), MeltEnergy.Needs(1000, 125, 5e4, 2000, 1000, 25, 135));
        Assert.Equal(5e4, MeltEnergy.Needs(1000, 25, 5e4, 2000, 1000, 25, 25).JPerKg, 1e-9); // already at its melting point
        Printed.Refuses("fromC", () => MeltEnergy.Needs(1000, 125, 5e4, 2000, 1000, -273.15, 135));
        Printed.Refuses("meltsC", () => MeltEnergy.Needs(1000, 20, 5e4, 2000, 1000, 25, 135));
        Printed.Refuses("toC", () => MeltEnergy.Needs(1000, 125, 5e4, 2000, 1000, 25, 124));
        Assert.Equal(Math.PI * 0.5, MeltEnergy.CutJ(0.02, 0.005, 1, 1e6), 1e-9);             // π/4·4e-4·5e-3·1e6
        Assert.Equal(0, MeltEnergy.CutJ(0.02, 0.005, 0, 1e6));
        Assert.Equal(2, MeltEnergy.CutPowerW(1e-4, 1e-3, 0.02, 5e8, 0.5), 1e-9);             // 1e-7·0.02·5e8/0.5
        Assert.Equal(30, MeltEnergy.JobPowerW(0.5, 60, 1), 1e-12);
        Printed.Refuses("share", () => MeltEnergy.JobPowerW(0.5, 60, 1.01));
        Assert.Equal(5e-6, MeltEnergy.RateKgPerS(10, 0.5, 1e6), 1e-15);
        Printed.Refuses("share", () => MeltEnergy.RateKgPerS(10, 1.01, 1e6));
    }

    [Fact]
    public void Convection_at_the_ends_of_its_ranges()
    {
        // Without any buoyancy or wind only the first numbers are left.
        Assert.Equal((0.36, 0.680625), (Math.Round(Nusselt.Cylinder(0, 0.7), 12), Math.Round(Nusselt.Plate(0, 0.7), 12)));
        Assert.Equal((0.36, 0.68, 0.3), (Nusselt.CylinderLaminar(0, 0.7), Nusselt.PlateLaminar(0, 0.7), Nusselt.CylinderInWind(0, 0.7)));
        foreach (Func<double, double, double> law in (Func<double, double, double>[])[Nusselt.Cylinder, Nusselt.Plate])
        {
            Assert.True(law(1e12, 0.7) > 1000);
            Printed.Refuses("rayleigh", () => law(1e12 + 0.5, 0.7));
            Printed.Refuses("rayleigh", () => law(-1, 0.7));
            Printed.Refuses("prandtl", () => law(1, 0));
        }

        foreach (Func<double, double, double> law in (Func<double, double, double>[])[Nusselt.CylinderLaminar, Nusselt.PlateLaminar])
        {
            Assert.True(law(1e9, 0.7) > 50);
            Printed.Refuses("rayleigh", () => law(1e9 + 0.5, 0.7));
            Printed.Refuses("rayleigh", () => law(-1, 0.7));
            Printed.Refuses("prandtl", () => law(1, 0));
        }

        Printed.Refuses("reynolds", () => Nusselt.CylinderInWind(-1, 0.7));
        Printed.Refuses("prandtl", () => Nusselt.CylinderInWind(1, 0));
        Printed.Refuses("lengthM", () => Nusselt.RayleighInAir(0, 100, 20));
        Assert.Equal(Nusselt.RayleighInAir(0.01, 20, 100), Nusselt.RayleighInAir(0.01, 100, 20), 1e-9);  // a cold body in warm air
        Assert.Equal(8 * Nusselt.RayleighInAir(0.01, 100, 20), Nusselt.RayleighInAir(0.02, 100, 20), 1e-6);
        Assert.Equal(Math.Cbrt(1001), Nusselt.Mixed(1, 10), 1e-12);
        Assert.Equal((5, 7), (Math.Round(Nusselt.Mixed(5, 0), 12), Math.Round(Nusselt.Mixed(0, 7), 12)));
        // A wind of nothing adds nothing.
        Assert.Equal(Convection.CylinderWPerM2K(0.005, 300, 20), Convection.MixedWPerM2K(0.005, 300, 20, 0), 1e-9);
        Assert.True(Convection.MixedWPerM2K(0.005, 300, 20, 0.5) > Convection.CylinderWPerM2K(0.005, 300, 20) + 1);
    }

    [Fact]
    public void Where_power_and_loss_meet()
    {
        Assert.Equal(10, Plateau.RiseK(_ => 10, rise => rise, 10), 1e-9);                     // at the very end of what is looked at
        Assert.Equal(double.NaN, Plateau.RiseK(_ => 10, rise => rise, 9.99));
        Assert.Equal(0, Plateau.RiseK(_ => 0, rise => rise, 100));
        Assert.Equal(0, Plateau.RiseK(_ => 1, rise => 2 + rise, 100));
        // 16 + Δ² in, 10·Δ out: Δ² − 10·Δ + 16 = 0 at 2 and 8; from cold the first one counts, and it holds; the second does not.
        Assert.Equal(2, Plateau.RiseK(rise => (rise * rise) + 16, rise => 10 * rise, 100), 1e-9);
        Assert.True(Plateau.Holds(rise => (rise * rise) + 16, rise => 10 * rise, 2));
        Assert.False(Plateau.Holds(rise => (rise * rise) + 16, rise => 10 * rise, 8));
        Assert.True(Plateau.Holds(_ => 0, rise => rise, 0));
        Assert.False(Plateau.Holds(_ => 1, _ => 1, 5));                                       // as steep as each other
        Printed.Refuses("mostK", () => Plateau.RiseK(_ => 1, rise => rise, 0));
        Printed.Refuses("riseK", () => Plateau.Holds(_ => 1, rise => rise, -1));
        Assert.Equal(75, Plateau.LinearC(5, 0.1, 25), 1e-12);
        // 8 W against 2·Δ^1.5 W: 4^(2/3) K; to no rise no time, 2·1 W hold one kelvin.
        PowerLawWarmUp law = Plateau.PowerLaw(8, 2, 1.5, 3, 1);
        Assert.Equal((Math.Pow(4, 2 / 3.0), 2), (law.PlateauRiseK, law.HoldW), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-12);
        Assert.InRange(law.TimeS, 3 / 8.0, 3 / 6.0);                                          // between 8 and 6 W of net power
        Assert.Equal(double.PositiveInfinity, Plateau.PowerLaw(8, 2, 1.5, 3, 2.53).TimeS);
        Printed.Refuses("exponent", () => Plateau.PowerLaw(8, 2, 0.49, 3, 1));
        Printed.Refuses("exponent", () => Plateau.PowerLaw(8, 2, 4.01, 3, 1));
    }

    [Fact]
    public void Two_plateaus_by_hand()
    {
        Assert.Equal(1.5, PlateauPair.Exponent(1, 100, 8, 400), 1e-12);                       // ln 8/ln 4
        Assert.Equal(16, PlateauPair.PowerForRiseW(4, 100, 200, 2), 1e-12);
        Assert.Equal(2.2, PlateauPair.RiseRatioFromResistance(2, 1e-3, 200, 1000 / 11.0), 1e-9); // 2·1.2/(12/11)
        // 0.1 W/K and 1e-10 W/K⁴ between 300 K of air and 400 K, 500 K: fourth powers 1.75e10 and 5.44e10.
        LossSplit split = PlateauPair.Split(11.75, 126.85, 25.44, 226.85, 26.85);
        Assert.Equal(0.1, split.LinearWPerK, 1e-9);
        Assert.Equal(1e-10, split.RadiatingWPerK4, 1e-16);
        Assert.Equal((25.44, 5.44 / 25.44), (Math.Round(split.LossW(226.85, 26.85), 9), split.RadiatingShare(226.85, 26.85)), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9);
        Assert.Equal(0.1 + (4e-10 * 1.25e8), split.TangentWPerK(226.85), 1e-9);
        Assert.Equal(226.85, split.PlateauC(25.44, 26.85), 1e-6);
        Assert.Equal(26.85, split.PlateauC(0, 26.85), 1e-9);
        Assert.Equal(1e-10 / 5.670374419e-8, split.EmissivityTimesAreaM2, 1e-12);
        Assert.Equal(double.PositiveInfinity, new LossSplit(-0.1, 0).PlateauC(1, 25));
        Assert.Equal(50025, new LossSplit(1e-3, 0).PlateauC(50, 25), 1e-6);                    // far, but it comes to rest
        Printed.Refuses("powerW", () => split.PlateauC(-1, 25));
        Printed.Refuses("highC", () => PlateauPair.Split(1, 100, 2, 100, 25));
        Printed.Refuses("lowC", () => PlateauPair.Split(1, 25, 2, 100, 25));
    }

    [Fact]
    public void A_network_that_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new HeatNetwork([], []));
        Assert.Throws<ArgumentException>(() => new HeatNetwork([1, 1], [1]));
        foreach ((int from, int to) in ((int, int)[])[(0, 0), (-1, 0), (0, -1), (2, 0), (0, 2)])
        {
            Assert.Throws<ArgumentException>(() => new HeatNetwork([1, 1], [1, 1], [new HeatLink(from, to, 1)]));
        }

        Printed.Refuses("links", () => new HeatNetwork([1, 1], [1, 1], [new HeatLink(0, 1, -1)]));
        Printed.Refuses("capacityJPerK", () => new HeatNetwork([1, 0], [1, 1]));
        Printed.Refuses("toAirWPerK", () => new HeatNetwork([1, 1], [1, -1]));
        HeatNetwork one = new([2], [0.5]);
        Assert.Throws<ArgumentException>(() => one.SteadyRiseK(1, 1));
        Assert.Throws<ArgumentException>(() => one.ExactStep(1).After([1, 1], [1]));
        Assert.Throws<ArgumentException>(() => one.ExactStep(1).After([1], [1, 1]));
        Printed.Refuses("targetRiseK", () => one.TimeToRiseS(0, -1, 1));
        Printed.Refuses("seconds", () => one.ExactStep(-1));
    }

    [Fact]
    public void A_network_by_hand()
    {
        HeatNetwork one = new([2], [0.5]);                                                     // τ = 4 s
        Assert.Equal(4, one.TimeConstantsS()[0], 1e-12);
        Assert.Equal(double.PositiveInfinity, one.TimeToRiseS(0, 20, 10));                     // its plateau itself
        Assert.Equal(4 * Math.Log(2), one.TimeToRiseS(0, 10, 10), 1e-9);
        Assert.Equal(20 * (1 - Math.Exp(-1)), one.RiseAfterK([0], [10], 4)[0], 1e-9);
        Assert.Equal(10 * Math.Exp(-1), one.RiseAfterK([10], [0], 4)[0], 1e-9);
        Assert.Equal((5, 20), (one.LossW([10]), one.StoredJ([10])));
        // Two bodies in a row: all of 3 W leaves by the second: 3/0.5 = 6 K, and 3/1 = 3 K more at the first.
        HeatNetwork row = new([2, 4], [0, 0.5], [new HeatLink(0, 1, 1)]);
        Assert.Equal([9.0, 6], row.SteadyRiseK(3, 0).Select(rise => Math.Round(rise, 9)));
        Assert.Equal([[-0.5, 0.5], [0.25, -0.375]], Rows(row.RatePerS()));
        // No way to air at all, or none for one body, or one of no conductance: no plateau.
        HeatNetwork shut = new([2, 4], [0, 0], [new HeatLink(0, 1, 1)]);
        Assert.Equal(double.PositiveInfinity, shut.TimeConstantsS()[0]);
        Assert.Equal(4 / 3.0, shut.TimeConstantsS()[1], 1e-9);                                 // 1/(1/2 + 1/4)
        Assert.Throws<InvalidOperationException>(() => shut.SteadyRiseK(1, 0));
        Assert.Throws<InvalidOperationException>(() => new HeatNetwork([1, 1], [1, 0]).SteadyRiseK(1, 0));
        Assert.Throws<InvalidOperationException>(() => new HeatNetwork([1, 1], [1, 0], [new HeatLink(0, 1, 0)]).SteadyRiseK(1, 0));
        // Air is reached over two others, listed from the far end.
        HeatNetwork chain = new([1, 1, 1], [0, 0, 1], [new HeatLink(0, 1, 1), new HeatLink(1, 2, 1)]);
        Assert.Equal([3.0, 2, 1], chain.SteadyRiseK(1, 0, 0).Select(rise => Math.Round(rise, 9)));
    }

    private static double[][] Rows(double[,] square) => [.. Enumerable.Range(0, square.GetLength(0)).Select(i => Enumerable.Range(0, square.GetLength(1)).Select(j => Math.Round(square[i, j], 12)).ToArray())];

    /// <summary>Five-point rule: powers up to the ninth are exact at once; others by halving.</summary>
    [Fact]
    public void Integrals_by_hand()
    {
        Assert.Equal(0.1, Quadrature.Integral(x => Math.Pow(x, 9), 0, 1), 1e-14);
        Assert.Equal(9, Quadrature.Integral(x => x * x, 0, 3), 1e-12);
        Assert.Equal(Math.E - 1, Quadrature.Integral(Math.Exp, 0, 1), 1e-13);
        Assert.Equal(2, Quadrature.Integral(x => 1 / Math.Sqrt(x), 0, 1), 1e-5);
        Assert.Equal(0, Quadrature.Integral(x => x, 2, 2));
        Assert.Equal(double.PositiveInfinity, Quadrature.Integral(_ => double.PositiveInfinity, 0, 1));
        int looks = 0;
        Quadrature.Integral(x => { looks++; return x * x * x; }, 0, 1);
        Assert.Equal(15, looks);     // once over the whole, once over each half, and they agree
    }

    /// <summary>A rim so far out that its scaled functions are nothing: the plate without end.</summary>
    [Fact]
    public void A_far_rim_is_no_rim() => Assert.Equal(ThinPlate.EndlessKPerW(1e-3, 0.01, 1e4), ThinPlate.DiscKPerW(1e-3, 0.8, 0.01, 1e4), 1e-9 * ThinPlate.EndlessKPerW(1e-3, 0.01, 1e4));
}

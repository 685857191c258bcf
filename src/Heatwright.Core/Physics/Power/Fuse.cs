namespace Heatwright.Physics;

/// <summary>Choosing a fuse and knowing when copper itself melts.</summary>
/// <remarks>Rating and pulse rules are common practice, no source. Onderdonk: I = A_cmil·√(log10((T_m − T_a)/(234 + T_a) + 1)/(33·t)), short times; Preece:
/// I = 80.03·d^1.5, d in mm, long times in free air. Source: [brooks-adam], excerpts read; 234 + T_a because copper's resistivity goes with it (a version with a
/// minus sign circulates and is wrong), 33 as the articles use it (a rounded version in square millimetres gives 2.4 % less).</remarks>
public static class Fuse
{
    private const double CopperMeltsC = 1083;

    /// <summary>Least rating for a steady current: I/0.75, divided by a further 0.9 at 60 °C (straight in between, no further down above). Common practice, no source.</summary>
    [Law("fuse-rating", "wires and traces", "I/0.75/derating, derating 1 at 25 °C and 0.9 at 60 °C", Says = "least fuse rating for a steady current", Unit = "A", Source = "common practice", Where = "usual derating of fuses", Valid = "25 to 60 °C; voltage rating at least the full pack, interrupting at least V/Rs",
        Example = "current=3A around=60degC")]
    public static double LeastRatingA(
        [In("I", "A", "largest steady current", Name = "current", Min = 0)] double currentA,
        [In("Ta", "°C", "surroundings of the fuse", Name = "around", Min = -40, Max = 125, SoftMax = 60, Default = 25)] double aroundC = 25) =>
        Impossible.UnlessPositive(currentA, "A") / 0.75 / (1 - (0.1 * Math.Clamp((aroundC - 25) / 35, 0, 1)));

    /// <summary>I²t above the steady part of a current that falls from cold to hot exponentially: 2·I_ss(I_0 − I_ss)τ + (I_0 − I_ss)²τ/2.</summary>
    [Law("inrush-i2t", "wires and traces", "2·Iss·(I0 − Iss)·τ + (I0 − Iss)²·τ/2", Says = "what a fuse takes at each cold start", Unit = "A²·s", Source = "definition", Where = "integral of an exponential", Valid = "keep below 20 to 30 % of the fuse's melting value for 100 000 starts (common practice)",
        Example = "cold=4A hot=1.75A time-constant=1.5s")]
    public static double InrushA2S(
        [In("I0", "A", "cold current", Name = "cold", Min = 0)] double coldA,
        [In("Iss", "A", "hot current", Name = "hot", Min = 0)] double hotA,
        [In("τ", "s", "time constant of the warm-up", Name = "time-constant", Min = 0)] double tauS)
    {
        double over = Impossible.IfNegative(coldA - Impossible.IfNegative(hotA, "A"), "A", nameof(coldA));
        return over * Impossible.UnlessPositive(tauS, "s") * ((2 * hotA) + (over / 2));
    }

    /// <summary>Whether starts wear a fuse: above 0.3 of its melting I²t. Common practice, no source.</summary>
    public static bool Wears(double inrushA2S, double meltingA2S) => Impossible.IfNegative(inrushA2S, "A²s") > 0.3 * Impossible.UnlessPositive(meltingA2S, "A²s");

    /// <summary>Current that the fuse must be able to break: rested voltage over source resistance.</summary>
    [Law("short-circuit-current", "wires and traces", "I = V/Rs", Says = "current of a dead short", Unit = "A", Source = "definition", Where = "Ohm's law",
        Valid = "a fuse must be able to break it", Example = "open=4.2V source=30mohm")]
    public static double MustBreakA(
        [In("V", "V", "rested voltage", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "everything in the loop", Name = "source", Min = 0)] double sourceOhm) => Impossible.UnlessPositive(openV, "V") / Impossible.UnlessPositive(sourceOhm, "Ω");

    /// <summary>Hold current of a resettable polymer fuse where it is warm: 0.9 % a kelvin less above 25 °C, the cautious edge of 0.7 to 0.9 % (from memory).</summary>
    [Law("polymer-fuse-hold", "wires and traces", "I·(1 − 0.009·(T − 25))", Says = "hold current of a resettable fuse where it is warm", Unit = "A", Source = "common practice", Where = "0.7 to 0.9 % a kelvin, from memory; the cautious edge",
        Valid = "the data sheet rules", Example = "label=3A around=60degC")]
    public static double PolymerHoldA(
        [In("I", "A", "hold current on the label", Name = "label", Min = 0)] double labelA,
        [In("T", "°C", "at the fuse", Name = "around", Min = -40, Max = 150)] double aroundC) =>
        Impossible.UnlessPositive(labelA, "A") * Math.Clamp(1 - (0.009 * (Impossible.UnlessFinite(aroundC, "°C") - 25)), 0, 1);

    /// <summary>Current that melts a copper conductor within a short time.</summary>
    [Law("melting-current", "wires and traces", "A_cmil·√(log10((1083 − Ta)/(234 + Ta) + 1)/(33 t))", Says = "current that melts a copper conductor within seconds", Unit = "A", Source = "brooks-adam", Where = "Onderdonk's equation, excerpts read", Valid = "up to about 5 s, no heat lost",
        Example = "area=0.2mm2 time=1s around=25degC")]
    public static double OnderdonkA(
        [In("A", "m²", "copper cross-section", Name = "area", Min = 0)] double areaM2,
        [In("t", "s", "time", Name = "time", Min = 0, SoftMax = 5)] double seconds,
        [In("Ta", "°C", "start temperature", Name = "around", Min = -50, Max = 1000, Default = 25)] double aroundC = 25)
    {
        // One circular mil is the area of a circle of one mil diameter.
        double circularMils = Impossible.UnlessPositive(areaM2, "m²") / (Math.PI / 4 * 25.4e-6 * 25.4e-6);
        double start = Impossible.Unless(aroundC, -50, 1000, "°C");
        return circularMils * Math.Sqrt(Math.Log10(((CopperMeltsC - start) / (234 + start)) + 1) / (33 * Impossible.UnlessPositive(seconds, "s")));
    }

    /// <summary>Current that melts a copper wire in free air in the long run: 80.03·d^1.5, d in mm.</summary>
    [Law("wire-melts", "wires and traces", "I = 80.03·d^1.5, d in mm", Says = "current that melts a copper wire in free air in the long run", Unit = "A", Source = "brooks-adam", Where = "Preece's constant, excerpts read",
        Valid = "bare, free air; in a bundle or a handle far less", Example = "diameter=0.321mm")]
    public static double PreeceA(
        [In("d", "m", "diameter of the copper", Name = "diameter", Min = 0)] double diameterM) => 80.03 * Math.Pow(Impossible.UnlessPositive(diameterM, "m") * 1000, 1.5);
}

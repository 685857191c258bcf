namespace Heatwright.Physics;

/// <summary>Step-up stage in continuous conduction, averaged, with its parts' losses.</summary>
/// <remarks>V = (1/D')(V_g − D'·V_D)·D'²R/(D'²R + R_L + D·R_on + D'·R_D). Source: [erickson-fpe] chapter 3, from memory; the case of inductor resistance alone
/// was read in a worked textbook problem. The closed inverses are derived here. Light loads on small inductors run discontinuous: the voltage is then higher.</remarks>
public static class Boost
{
    /// <summary>Steady state at a duty.</summary>
    [Law("step-up-stage", "power paths", "(Vg − D'·VD)/D' · D'²·R/(D'²·R + RL + D·Ron + D'·RD), D' = 1 − D", Says = "output and efficiency of a step-up stage at a duty", Source = "erickson-fpe", Where = "chapter 3, from memory",
        Valid = "continuous conduction, small ripple, switching loss left out; beyond the duty of peak gain more duty gives less", Example = "input-voltage=3.7V duty=70% load=12ohm inductor=0.11ohm switch=20mohm diode-slope=20mohm")]
    public static StagePoint At(
        [In("Vg", "V", "input; with the source resistance counted in the inductor's: rested voltage", Name = "input-voltage", Min = 0)] double inV,
        [In("D", "", "duty of the main switch, below 1", Name = "duty", Min = 0, Max = 1)] double duty,
        [In("R", "Ω", "load", Name = "load", Min = 0)] double loadOhm,
        [In("RL", "Ω", "inductor and source", Name = "inductor", Min = 0, Default = 0)] double inductorOhm = 0,
        [In("Ron", "Ω", "main switch", Name = "switch", Min = 0, Default = 0)] double switchOhm = 0,
        [In("RD", "Ω", "rectifier, slope", Name = "diode-slope", Min = 0, Default = 0)] double diodeOhm = 0,
        [In("VD", "V", "rectifier, drop", Name = "diode", Min = 0, Default = 0)] double diodeV = 0) =>
        At(inV, duty, loadOhm, new StageOhms(inductorOhm, switchOhm, diodeOhm, diodeV));

    /// <summary>Steady state at a duty.</summary>
    public static StagePoint At(double inV, double duty, double loadOhm, in StageOhms stage)
    {
        double rest = 1 - Impossible.UnlessFraction(duty);
        double series = stage.InductorOhm + (duty * stage.SwitchOhm) + (rest * stage.DiodeOhm);
        double seen = rest * rest * Impossible.UnlessPositive(loadOhm, "Ω");
        double drive = Impossible.UnlessPositive(inV, "V") - (rest * stage.DiodeV);
        if (seen + series == 0)
        {
            throw Impossible.Outside(nameof(duty), duty, "", "below 1: a lossless stage at full duty has no steady state");
        }

        double inductorA = Math.Max(0, drive) / (seen + series);
        double outV = inductorA * rest * loadOhm;
        return new(outV, inductorA, inductorA, outV * rest / inV);
    }

    /// <summary>Duty for a wanted output, in plain numbers.</summary>
    [Law("step-up-duty", "power paths", "D' = [B + √(B² − 4R(V+VD)·a·V)]/(2R(V+VD)), a = RL + Ron, b = RD − Ron, B = Vg·R − b·V", Says = "duty that a step-up needs for an output", Source = "erickson-fpe", Where = "from the chapter 3 formula, the low-loss root",
        Valid = "continuous conduction; none: the output cannot be reached", Example = "input-voltage=3.7V output-voltage=12V load=12ohm inductor=110mohm switch=20mohm diode-slope=20mohm")]
    public static double? DutyForV(
        [In("Vg", "V", "input", Name = "input-voltage", Min = 0)] double inV,
        [In("V", "V", "wanted output", Name = "output-voltage", Min = 0)] double outV,
        [In("R", "Ω", "load", Name = "load", Min = 0)] double loadOhm,
        [In("RL", "Ω", "inductor and source", Name = "inductor", Min = 0, Default = 0)] double inductorOhm = 0,
        [In("Ron", "Ω", "switch", Name = "switch", Min = 0, Default = 0)] double switchOhm = 0,
        [In("RD", "Ω", "rectifier, slope", Name = "diode-slope", Min = 0, Default = 0)] double diodeOhm = 0,
        [In("VD", "V", "rectifier, drop", Name = "diode", Min = 0, Default = 0)] double diodeV = 0) =>
        DutyFor(inV, outV, loadOhm, new StageOhms(inductorOhm, switchOhm, diodeOhm, diodeV));

    /// <summary>Duty for a wanted output, on the low-loss side; none when it is above the peak gain or below what passes straight through.</summary>
    /// <remarks>With a = R_L + R_on, b = R_D − R_on, B = V_g·R − b·V: D' = [B + √(B² − 4R(V + V_D)·a·V)]/(2R(V + V_D)).</remarks>
    public static double? DutyFor(double inV, double outV, double loadOhm, in StageOhms stage)
    {
        double asked = Impossible.UnlessPositive(loadOhm, "Ω") * (Impossible.UnlessPositive(outV, "V") + stage.DiodeV);
        double lead = (Impossible.UnlessPositive(inV, "V") * loadOhm) - ((stage.DiodeOhm - stage.SwitchOhm) * outV);
        double radicand = (lead * lead) - (4 * asked * (stage.InductorOhm + stage.SwitchOhm) * outV);
        if (lead <= 0 || radicand < 0)
        {
            return null;
        }

        double rest = (lead + Math.Sqrt(radicand)) / (2 * asked);
        return rest <= 1 ? 1 - rest : null;
    }

    /// <summary>Highest output over input that any duty gives, without diode drop: R/(2√(aR) + b).</summary>
    [Law("step-up-peak-gain", "power paths", "R/(2·√(a·R) + b), a = RL + Ron, b = RD − Ron", Says = "highest output over input that a step-up reaches at any duty", Unit = "", Source = "erickson-fpe", Where = "from the chapter 3 formula, derivative set to zero",
        Valid = "no diode drop; at this point half of the power is lost when b = 0", Example = "load=12ohm inductor=0.11ohm switch=20mohm diode-slope=20mohm")]
    public static double PeakGain(
        [In("R", "Ω", "load", Name = "load", Min = 0)] double loadOhm,
        [In("RL", "Ω", "inductor and source", Name = "inductor", Min = 0)] double inductorOhm,
        [In("Ron", "Ω", "main switch", Name = "switch", Min = 0, Default = 0)] double switchOhm = 0,
        [In("RD", "Ω", "rectifier, slope", Name = "diode-slope", Min = 0, Default = 0)] double diodeOhm = 0)
    {
        double rest = 1 - PeakDuty(loadOhm, inductorOhm, switchOhm);
        double series = Impossible.IfNegative(inductorOhm, "Ω") + ((1 - rest) * switchOhm) + (rest * Impossible.IfNegative(diodeOhm, "Ω"));
        return rest * loadOhm / ((rest * rest * loadOhm) + series);
    }

    /// <summary>Duty of the peak gain: D' = √(a/R), at most 1.</summary>
    [Law("step-up-peak-duty", "power paths", "D = 1 − √((RL + Ron)/R)", Says = "duty beyond which a step-up gives less", Source = "erickson-fpe", Where = "from the chapter 3 formula, derivative set to zero",
        Valid = "rectifier as good as the switch", Example = "load=12ohm inductor=110mohm switch=20mohm")]
    public static double PeakDuty(
        [In("R", "Ω", "load", Name = "load", Min = 0)] double loadOhm,
        [In("RL", "Ω", "inductor and source", Name = "inductor", Min = 0)] double inductorOhm,
        [In("Ron", "Ω", "switch", Name = "switch", Min = 0, Default = 0)] double switchOhm = 0)
    {
        double series = Impossible.UnlessPositive(Impossible.IfNegative(inductorOhm, "Ω") + Impossible.IfNegative(switchOhm, "Ω"), "Ω", nameof(inductorOhm));
        return 1 - Math.Min(1, Math.Sqrt(series / Impossible.UnlessPositive(loadOhm, "Ω")));
    }
}

namespace Heatwright.Physics;

/// <summary>Step-down stage in continuous conduction, averaged, with its parts' losses.</summary>
/// <remarks>V = (D·V_g − D'·V_D)·R/(R + R_L + D·R_on + D'·R_D); I_in = D·I_out. Source: [erickson-fpe] chapter 3, from memory; switching loss left out.</remarks>
public static class Buck
{
    /// <summary>A duty above this counts as drop-out near: flag it. Common practice, no source.</summary>
    public const double DropOutDuty = 0.95;

    /// <summary>Steady state at a duty.</summary>
    [Law("step-down-stage", "power paths", "(D·Vg − D'·VD)·R/(R + RL + D·Ron + D'·RD), D' = 1 − D", Says = "output and efficiency of a step-down stage at a duty", Source = "erickson-fpe", Where = "chapter 3, from memory",
        Valid = "continuous conduction, small ripple, switching loss left out", Example = "input-voltage=7.4V duty=50% load=2.2ohm inductor=30mohm switch=30mohm diode-slope=30mohm")]
    public static StagePoint At(
        [In("Vg", "V", "input", Name = "input-voltage", Min = 0)] double inV,
        [In("D", "", "duty of the main switch", Name = "duty", Min = 0, Max = 1)] double duty,
        [In("R", "Ω", "load", Name = "load", Min = 0)] double loadOhm,
        [In("RL", "Ω", "inductor", Name = "inductor", Min = 0, Default = 0)] double inductorOhm = 0,
        [In("Ron", "Ω", "main switch", Name = "switch", Min = 0, Default = 0)] double switchOhm = 0,
        [In("RD", "Ω", "rectifier, slope", Name = "diode-slope", Min = 0, Default = 0)] double diodeOhm = 0,
        [In("VD", "V", "rectifier, drop", Name = "diode", Min = 0, Default = 0)] double diodeV = 0) =>
        At(inV, duty, loadOhm, new StageOhms(inductorOhm, switchOhm, diodeOhm, diodeV));

    /// <summary>Steady state at a duty.</summary>
    public static StagePoint At(double inV, double duty, double loadOhm, in StageOhms stage)
    {
        double rest = 1 - Impossible.UnlessFraction(duty);
        double drive = (duty * Impossible.UnlessPositive(inV, "V")) - (rest * stage.DiodeV);
        double ohms = Impossible.UnlessPositive(loadOhm, "Ω") + stage.InductorOhm + (duty * stage.SwitchOhm) + (rest * stage.DiodeOhm);

        // Below this duty the averaged current would be negative: a diode does not let that be, the stage has left continuous conduction.
        double outA = drive > 0 ? drive / ohms : 0;
        return new(outA * loadOhm, duty * outA, outA, outA > 0 ? outA * loadOhm / (inV * duty) : 0);
    }

    /// <summary>Duty for a wanted output, in plain numbers.</summary>
    [Law("step-down-duty", "power paths", "D from Vout = (D·Vg − D'·VD)·R/(R + RL + D·Ron + D'·RD)", Says = "duty that a step-down needs for an output", Source = "erickson-fpe", Where = "chapter 3, from memory, solved for the duty",
        Valid = "continuous conduction; above 0.95 it drops out; none: not reached", Example = "input-voltage=7.4V output-voltage=3.6V load=2.2ohm inductor=30mohm switch=30mohm diode-slope=30mohm")]
    public static double? DutyForV(
        [In("Vg", "V", "input", Name = "input-voltage", Min = 0)] double inV,
        [In("Vout", "V", "wanted output", Name = "output-voltage", Min = 0)] double outV,
        [In("R", "Ω", "load", Name = "load", Min = 0)] double loadOhm,
        [In("RL", "Ω", "inductor", Name = "inductor", Min = 0, Default = 0)] double inductorOhm = 0,
        [In("Ron", "Ω", "switch", Name = "switch", Min = 0, Default = 0)] double switchOhm = 0,
        [In("RD", "Ω", "rectifier, slope", Name = "diode-slope", Min = 0, Default = 0)] double diodeOhm = 0,
        [In("VD", "V", "rectifier, drop", Name = "diode", Min = 0, Default = 0)] double diodeV = 0) =>
        DutyFor(inV, outV, loadOhm, new StageOhms(inductorOhm, switchOhm, diodeOhm, diodeV));

    /// <summary>Duty for a wanted output; none when even a full duty does not reach it.</summary>
    public static double? DutyFor(double inV, double outV, double loadOhm, in StageOhms stage)
    {
        double lossy = Impossible.UnlessPositive(loadOhm, "Ω") + stage.InductorOhm + stage.DiodeOhm;
        double top = (Impossible.IfNegative(outV, "V") * lossy) + (loadOhm * stage.DiodeV);
        double bottom = (loadOhm * (Impossible.UnlessPositive(inV, "V") + stage.DiodeV)) - (outV * (stage.SwitchOhm - stage.DiodeOhm));
        return bottom > 0 && top <= bottom ? top / bottom : null;
    }

    /// <summary>Most a stage can put out: D = 1.</summary>
    public static double MostV(double inV, double loadOhm, in StageOhms stage) => At(inV, 1, loadOhm, stage).OutV;
}

namespace Heatwright.Physics;

/// <summary>A source with resistance feeding a load that takes a constant power: two currents, one, or none.</summary>
/// <remarks>I = (OCV ∓ √(OCV² − 4·R_s·P))/(2·R_s). Circuit algebra. Only the lower current is an operating point of a regulated load; the higher one is
/// unstable and explains why a module stays latched after a dip. Stability needs |source impedance| &lt; V²/P at all frequencies: [middlebrook-1976], from memory.</remarks>
public static class SourceFold
{
    /// <summary>Most power a source can give to a regulated load.</summary>
    [Law("source-limit", "power paths", "V²/(4 Rs), or Vuv·(V − Vuv)/Rs when Vuv > V/2", Says = "most power a source can give to a regulated load", Unit = "W", Source = "definition", Where = "maximum power into a load",
        Valid = "power at the terminals; rested voltage and resistance of this moment", Example = "open=3.7V source=0.15ohm lockout=2.8V")]
    public static double MostW(
        [In("V", "V", "rested voltage", Name = "open", Min = 0)] double openV,
        [In("Rs", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("Vuv", "V", "under-voltage lock-out", Name = "lockout", Min = 0, Default = 0)] double lockoutV = 0)
    {
        double ohm = Impossible.UnlessPositive(sourceOhm, "Ω");
        return Impossible.IfNegative(lockoutV, "V") > Impossible.UnlessPositive(openV, "V") / 2
            ? Math.Max(0, lockoutV * (openV - lockoutV) / ohm)
            : openV * openV / (4 * ohm);
    }

    /// <summary>The operating current; none above the fold. The same point as <see cref="TwoRcCell.CurrentAtPowerA"/>.</summary>
    [Law("power-current", "power paths", "I = 2P/(V + √(V² − 4·R·P))", Says = "current of a load that takes constant power", Unit = "A", Source = "definition", Where = "power balance, the low-current branch",
        Valid = "none: above V²/(4R) the source folds", Example = "open=3.7V source=150mohm power=12W")]
    public static double? CurrentA(
        [In("V", "V", "rested voltage", Name = "open", Min = 0)] double openV,
        [In("R", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("P", "W", "power at the terminals", Name = "power", Min = 0)] double powerW) => TwoRcCell.CurrentAtPowerA(openV, sourceOhm, powerW);

    /// <summary>The second, unstable current; to explain latch-up, never to answer with. None above the fold.</summary>
    [Law("power-current-latched", "power paths", "I = (V + √(V² − 4·R·P))/(2·R)", Says = "current a constant-power load latches to after a dip", Unit = "A", Source = "definition", Where = "power balance, the high-current branch",
        Valid = "never a working point; it explains a latch-up", Example = "open=3.7V source=150mohm power=12W")]
    public static double? UnstableA(
        [In("V", "V", "rested voltage", Name = "open", Min = 0)] double openV,
        [In("R", "Ω", "source resistance", Name = "source", Min = 0)] double sourceOhm,
        [In("P", "W", "power at the terminals", Name = "power", Min = 0)] double powerW)
    {
        double radicand = (openV * openV) - (4 * Impossible.UnlessPositive(sourceOhm, "Ω") * Impossible.IfNegative(powerW, "W"));
        return radicand >= 0 ? (Impossible.UnlessPositive(openV, "V") + Math.Sqrt(radicand)) / (2 * sourceOhm) : null;
    }

    /// <summary>Source impedance that a regulated load of this power must stay well above: V²/P.</summary>
    [Law("input-resistance", "power paths", "|R| = Vin²/P", Says = "source impedance above which a regulated module rings", Unit = "Ω", Source = "middlebrook-1976", Where = "from memory",
        Valid = "at all frequencies: long thin leads count too", Example = "input-voltage=3.1V power=12W")]
    public static double StableBelowOhm(
        [In("Vin", "V", "input of the module", Name = "input-voltage", Min = 0)] double inV,
        [In("P", "W", "input power", Name = "power", Min = 0)] double powerW) => Impossible.UnlessPositive(inV, "V") * inV / Impossible.UnlessPositive(powerW, "W");
}

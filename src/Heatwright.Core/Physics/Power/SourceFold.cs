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
    public static double? CurrentA(double openV, double sourceOhm, double powerW) => TwoRcCell.CurrentAtPowerA(openV, sourceOhm, powerW);

    /// <summary>The second, unstable current; to explain latch-up, never to answer with. None above the fold.</summary>
    public static double? UnstableA(double openV, double sourceOhm, double powerW)
    {
        double radicand = (openV * openV) - (4 * Impossible.UnlessPositive(sourceOhm, "Ω") * Impossible.IfNegative(powerW, "W"));
        return radicand >= 0 ? (Impossible.UnlessPositive(openV, "V") + Math.Sqrt(radicand)) / (2 * sourceOhm) : null;
    }

    /// <summary>Source impedance that a regulated load of this power must stay well above: V²/P.</summary>
    public static double StableBelowOhm(double inV, double powerW) => Impossible.UnlessPositive(inV, "V") * inV / Impossible.UnlessPositive(powerW, "W");
}

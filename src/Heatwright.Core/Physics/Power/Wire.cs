namespace Heatwright.Physics;

/// <summary>Copper wires by gauge.</summary>
/// <remarks>R = ρ20·L/A·[1 + α(T − 20)], ρ20 = 1/58 Ω·mm²/m exactly: [iec-60028], read in a summary; α = 0.00393 from memory. Commercial copper 0 to 4 % more.
/// d = 0.127 mm·92^((36 − n)/39): [astm-b258], exact by definition, from memory.</remarks>
public static class Wire
{
    /// <summary>Resistivity of standard copper at 20 °C: 1/58 Ω·mm²/m.</summary>
    public const double CopperOhmM = 1e-6 / 58;

    /// <summary>Its temperature coefficient at 20 °C.</summary>
    public const double CopperPerK = 0.00393;

    /// <summary>Resistance of a length of copper.</summary>
    public static double Ohm(double lengthM, double areaM2, double atC = 20)
    {
        double factor = 1 + (CopperPerK * (Impossible.UnlessFinite(atC, "°C") - 20));
        return CopperOhmM * Impossible.IfNegative(lengthM, "m") / Impossible.UnlessPositive(areaM2, "m²") * Impossible.UnlessPositive(factor, "", nameof(atC));
    }

    /// <summary>Resistance of a lead pair or of one length, by cross-section.</summary>
    [Law("wire-resistance", "wires and traces", "ρ₂₀·L/A·(1 + 0.00393·(T − 20))", Says = "resistance of a copper wire by cross-section or gauge", Unit = "Ω", Source = "iec-60028", Where = "standard copper, 1/58 ohm mm2/m, read in a summary; 0.00393 from memory",
        Valid = "copper, -50 to 150 °C; length is out and return together", Example = "length=0.3m area=0.5mm2 at=60degC")]
    public static double OhmByArea(
        [In("L", "m", "length of copper, out and return", Name = "length", Min = 0)] double lengthM,
        [In("A", "m²", "cross-section", Name = "area", Min = 0)] double areaM2,
        [In("T", "°C", "copper temperature", Name = "at", Min = -230, Max = 1083, SoftMin = -50, SoftMax = 150, Default = 20)] double atC = 20) => Ohm(lengthM, areaM2, atC);

    /// <summary>Resistance of a lead by gauge number.</summary>
    [Law("wire-resistance-gauge", "wires and traces", "ρ₂₀·L/(π/4·d²)·(1 + 0.00393·(T − 20)), d = 0.127 mm·92^((36 − n)/39)", Says = "resistance of a copper wire by gauge number", Unit = "Ω", Source = "astm-b258", Where = "definition of the gauge, from memory",
        Valid = "solid or the copper of a strand; 1/0 is 0, 2/0 is -1, 3/0 is -2", Example = "gauge=24 length=0.3m at=20degC")]
    public static double OhmByGauge(
        [In("n", "", "gauge number", Name = "gauge", Min = -3, Max = 56)] double gauge,
        [In("L", "m", "length of copper, out and return", Name = "length", Min = 0)] double lengthM,
        [In("T", "°C", "copper temperature", Name = "at", Min = -230, Max = 1083, SoftMin = -50, SoftMax = 150, Default = 20)] double atC = 20) => Ohm(lengthM, AreaM2(gauge), atC);

    /// <summary>Volts lost along a wire; a current that melts the wire in free air in the long run is refused.</summary>
    [Law("wire-drop", "wires and traces", "I·ρ₂₀·L/A·(1 + 0.00393·(T − 20))", Says = "volts lost along a copper wire", Unit = "V", Source = "iec-60028", Where = "standard copper; melting current after [brooks-adam], excerpts read",
        Valid = "below the current that melts the wire in free air, 80.03*d^1.5 with d in mm", Example = "current=3A length=0.3m area=AWG24 at=20degC")]
    public static double AlongV(
        [In("I", "A", "current", Name = "current", Min = 0)] double currentA,
        [In("L", "m", "length of copper, out and return", Name = "length", Min = 0)] double lengthM,
        [In("A", "m²", "cross-section, as mm2 or as a gauge", Name = "area", Min = 1e-12)] double areaM2,
        [In("T", "°C", "copper temperature", Name = "at", Min = -230, Max = 1083, SoftMin = -50, SoftMax = 150, Default = 20)] double atC = 20)
    {
        double meltsA = Fuse.PreeceA(Math.Sqrt(4 * areaM2 / Math.PI));
        return currentA < meltsA
            ? currentA * Ohm(lengthM, areaM2, atC)
            : throw new ArgumentOutOfRangeException(nameof(currentA), currentA, FormattableString.Invariant($"This wire melts in free air at about {meltsA:0.00} A; take a thicker one."));
    }

    /// <summary>Diameter of a gauge number.</summary>
    public static double DiameterM(double gauge) => 0.127e-3 * Math.Pow(92, (36 - Impossible.Unless(gauge, -3, 56, "")) / 39);

    /// <summary>Diameter and cross-section of a wire gauge.</summary>
    [Law("wire-gauge", "wires and traces", "d = 0.127 mm·92^((36 − n)/39), A = π/4·d²", Says = "diameter and cross-section of a wire gauge", Source = "astm-b258", Where = "definition of the gauge, from memory",
        Valid = "solid wire; 0000 is −3", Example = "gauge=24")]
    public static GaugeSize Gauge(
        [In("n", "", "gauge", Name = "gauge", Min = -3, Max = 56)] double gauge) =>
        new(DiameterM(gauge), Math.PI / 4 * DiameterM(gauge) * DiameterM(gauge));

    /// <summary>Cross-section of a gauge number.</summary>
    public static double AreaM2(double gauge) => Math.PI / 4 * DiameterM(gauge) * DiameterM(gauge);

    /// <summary>Voltage lost in everything between cell tab and heater tab.</summary>
    public static double DropV(double currentA, params ReadOnlySpan<double> seriesOhm)
    {
        double sum = 0;
        foreach (double ohm in seriesOhm)
        {
            sum += Impossible.IfNegative(ohm, "Ω", nameof(seriesOhm));
        }

        return Impossible.IfNegative(currentA, "A") * sum;
    }

    /// <summary>What a drop means against the lowest battery voltage: above 5 % a warning, above 10 % an error. Common practice, no source.</summary>
    public static DropVerdict JudgeDrop(double dropV, double lowestV) => (Impossible.IfNegative(dropV, "V") / Impossible.UnlessPositive(lowestV, "V")) switch
    {
        > 0.10 => DropVerdict.TooMuch,
        > 0.05 => DropVerdict.Much,
        _ => DropVerdict.Fine,
    };
}

/// <summary>How a voltage drop stands.</summary>
public enum DropVerdict
{
    /// <summary>Up to 5 %.</summary>
    Fine,

    /// <summary>Up to 10 %.</summary>
    Much,

    /// <summary>Above 10 %.</summary>
    TooMuch,
}

/// <summary>Size of a wire gauge.</summary>
/// <param name="DiameterM">Diameter.</param>
/// <param name="AreaM2">Cross-section.</param>
public readonly record struct GaugeSize(
    [property: Out("m", "diameter", Name = "diameter")] double DiameterM,
    [property: Out("m²", "cross-section", Name = "area")] double AreaM2);

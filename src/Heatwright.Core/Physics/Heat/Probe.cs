namespace Heatwright.Physics;

/// <summary>What a probe on a hot part reads, against what the part has.</summary>
/// <remarks>Checked: IdentificationTests.</remarks>
public static class Probe
{
    /// <summary>How far a first-order probe is behind on a steady ramp, K: r·τ_p.</summary>
    [Law("probe-lag", "sensors", "lag = r·τ_p", Says = "how far a probe is behind on a steady ramp", Unit = "K", Source = "definition", Where = "first-order lag on a ramp", Valid = "after a few time constants of a steady ramp",
        Example = "ramp=3K/s time-constant=2s")]
    public static double LagK(
        [In("r", "K/s", "ramp", Name = "ramp")] double rampKPerS,
        [In("τ_p", "s", "time constant of the probe", Name = "time-constant", Min = 0)] double probeS) =>
        Impossible.UnlessFinite(rampKPerS, "K/s") * Impossible.IfNegative(probeS, "s");

    /// <summary>What a pressed-on probe reads, °C: (G_c·T + G_w·T_a)/(G_c + G_w).</summary>
    [Law("probe-contact", "sensors", "T_read = (G_c·T + G_w·T_a)/(G_c + G_w)", Says = "what a pressed-on probe reads on a hotter part", Unit = "°C", Source = "definition", Where = "divider of two conductances",
        Valid = "steady state; the part is hotter than the wires", Example = "contact=0.01W/K wires=0.0006W/K part=350°C around=25°C")]
    public static double ReadsC(
        [In("G_c", "W/K", "conductance of the contact", Name = "contact", Min = 0)] double contactWPerK,
        [In("G_w", "W/K", "loss of wires and sheath", Name = "wires", Min = 0)] double wiresWPerK,
        [In("T", "°C", "temperature of the part", Name = "part", Min = -273.15)] double partC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -273.15, Default = 25)] double aroundC)
    {
        ImpossibleHeat.Kelvin(partC);
        ImpossibleHeat.Kelvin(aroundC);
        return aroundC + (partC - aroundC) * ReadShare(contactWPerK, wiresWPerK);
    }

    /// <summary>What the part has when a pressed-on probe reads so much, °C: the inverse of <see cref="ReadsC"/>.</summary>
    [Law("probe-true", "sensors", "T = T_a + (T_read − T_a)·(1 + G_w/G_c)", Says = "true temperature of a part under a pressed-on probe", Unit = "°C", Source = "definition", Where = "divider of two conductances",
        Valid = "steady state", Example = "contact=0.01W/K wires=0.0006W/K reads=331.6°C around=25°C")]
    public static double PartC(
        [In("G_c", "W/K", "conductance of the contact", Name = "contact", Min = 0)] double contactWPerK,
        [In("G_w", "W/K", "loss of wires and sheath", Name = "wires", Min = 0)] double wiresWPerK,
        [In("T_read", "°C", "what the probe reads", Name = "reads", Min = -273.15)] double readsC,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -273.15, Default = 25)] double aroundC) =>
        aroundC + (Impossible.UnlessFinite(readsC, "°C") - Impossible.UnlessFinite(aroundC, "°C")) / ReadShare(contactWPerK, wiresWPerK);

    private static double ReadShare(double contactWPerK, double wiresWPerK) =>
        Impossible.UnlessPositive(contactWPerK, "W/K") / (contactWPerK + Impossible.IfNegative(wiresWPerK, "W/K"));
}

namespace Heatwright.Physics;

/// <summary>What skin meets at a warm part: sudden contact temperature and the damage integral. The table of thresholds stays the judge.</summary>
/// <remarks>For a design aid only: a burn threshold is judged by the touch table (data/heat/touch-thresholds.json) and by a bought copy of the
/// standard. The damage integral never relaxes that table: at long contacts it answers later than the table. Checked: TouchTests.</remarks>
public static class Touch
{
    /// <summary>Effusivity of skin in W·s^½/(m²·K), from k 0.37, ρ 1100, c 3500. From memory.</summary>
    public static readonly double SkinEffusivity = Math.Sqrt(0.37 * 1100 * 3500);

    /// <summary>Effusivity √(kρc), W·s^½/(m²·K): how strongly a body holds its temperature when touched.</summary>
    [Law("effusivity", "heat flow", "e = √(k·ρ·c)", Says = "how strongly a material draws heat when touched", Unit = "W·s^½/(m²·K)", Source = "carslaw-jaeger-1959", Where = "sec. 2.14, from memory",
        Valid = "bodies thick against √(αt)", Example = "conductivity=0.25W/(m·K) density=1140kg/m³ heat=1700J/(kg·K)")]
    public static double Effusivity(
        [In("k", "W/(m·K)", "conductivity", Name = "conductivity", Min = 0)] double conductivityWPerMK,
        [In("ρ", "kg/m³", "density", Name = "density", Min = 0)] double densityKgPerM3,
        [In("c", "J/(kg·K)", "specific heat", Name = "heat", Min = 0)] double heatJPerKgK) =>
        Math.Sqrt(Impossible.UnlessPositive(conductivityWPerMK, "W/(m·K)") * Impossible.UnlessPositive(densityKgPerM3, "kg/m³") * Impossible.UnlessPositive(heatJPerKgK, "J/(kg·K)"));

    /// <summary>Temperature at the joint of two thick bodies suddenly in contact, °C: (e₁T₁ + e₂T₂)/(e₁ + e₂).</summary>
    [Law("contact-temperature", "heat flow", "T_c = (e₁·T₁ + e₂·T₂)/(e₁ + e₂)", Says = "temperature where two thick bodies touch", Unit = "°C", Source = "carslaw-jaeger-1959", Where = "sec. 2.14/2.15, from memory",
        Valid = "both bodies thick against √(αt), no gap", Example = "first=7493 first-at=60°C second=1193.5 second-at=33°C")]
    public static double ContactC(
        [In("e₁", "W·s^½/(m²·K)", "effusivity of one body", Name = "first", Min = 0)] double oneEffusivity,
        [In("T₁", "°C", "its temperature", Name = "first-at", Min = -273.15)] double oneC,
        [In("e₂", "W·s^½/(m²·K)", "effusivity of the other", Name = "second", Min = 0)] double otherEffusivity,
        [In("T₂", "°C", "its temperature", Name = "second-at", Min = -273.15)] double otherC)
    {
        ImpossibleHeat.Kelvin(oneC);
        ImpossibleHeat.Kelvin(otherC);
        double share = Impossible.UnlessPositive(oneEffusivity, "") / (oneEffusivity + Impossible.UnlessPositive(otherEffusivity, ""));
        return otherC + share * (oneC - otherC);
    }

    /// <summary>Rate of skin damage at the basal layer, 1/s: 3.1e98·e^(−75000/T).</summary>
    /// <remarks>Source: [henriques-1947] with that paper's rounded gas constant, from memory. An exponent of 75 531/T also goes round and gives
    /// times about five times longer: it does not fit the recorded burns and is not used.</remarks>
    [Law("skin-damage-rate", "heat flow", "dΩ/dt = 3.1e98·e^(−75000/T)", Says = "how fast skin is damaged at a temperature", Unit = "1/s", Source = "henriques-1947", Where = "from memory",
        Valid = "T of the basal layer, 44 to 70 °C; Ω = 1 is a deep burn; never a reason to go above the touch table", Example = "basal=51°C")]
    public static double DamageRatePerS([In("T", "°C", "temperature of the basal layer", Name = "basal", Min = 0, Max = 150, SoftMin = 44, SoftMax = 70)] double basalC) =>
        Math.Exp(Math.Log(3.1) + 98 * Math.Log(10) - 75000 / ImpossibleHeat.Kelvin(Impossible.Unless(basalC, 0, 150, "°C")));

    /// <summary>Time at one basal temperature until Ω = 1, s.</summary>
    [Law("burn-time", "heat flow", "t = 1/(3.1e98·e^(−75000/T))", Says = "time to a deep burn at a skin temperature", Unit = "s", Source = "henriques-1947", Where = "from memory",
        Valid = "T of the basal layer, 44 to 70 °C; never a reason to go above the touch table", Example = "basal=51°C")]
    public static double TimeToDeepBurnS(
        [In("T", "°C", "temperature of the basal layer", Name = "basal", Min = 0, Max = 150, SoftMin = 44, SoftMax = 70)] double basalC) => 1 / DamageRatePerS(basalC);

    /// <summary>Damage integral Ω over stretches of constant basal temperature.</summary>
    public static double Damage(IEnumerable<(double Seconds, double BasalC)> stretches) =>
        stretches.Sum(stretch => Impossible.IfNegative(stretch.Seconds, "s") * DamageRatePerS(stretch.BasalC));

    /// <summary>Threshold from rows of (contact time, lower bound) for a contact of some time: the row of the next longer contact, so always the cautious side.</summary>
    public static double ThresholdC(IReadOnlyList<(double ContactS, double ThresholdC)> rows, double contactS)
    {
        Impossible.UnlessPositive(contactS, "s");
        if (rows.Count == 0)
        {
            throw new ArgumentException("A touch table without rows answers nothing: give at least one row.", nameof(rows));
        }

        var longer = rows.Where(row => row.ContactS >= contactS).ToArray();
        return longer.Length > 0 ? longer.MinBy(row => row.ContactS).ThresholdC : rows.Min(row => row.ThresholdC);
    }
}

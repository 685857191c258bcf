namespace Heatwright.Physics;

/// <summary>How a heater's resistance goes with its temperature.</summary>
/// <remarks>Metals over a few hundred kelvin: a straight line. Platinum and nickel: a parabola. Heating alloys: a factor table.
/// A coefficient means nothing without its reference temperature: re-refer resistance and coefficient together before comparing.</remarks>
public static class HeaterOhms
{
    /// <summary>Straight line: R_ref·(1 + α(T − T_ref)).</summary>
    [Law("heater-ohms", "heaters", "R0·(1 + α·(T − T0))", Says = "resistance of a heater at a temperature", Unit = "Ω", Source = "definition", Where = "temperature coefficient", Valid = "metals over at most 300 K; alpha and R0 at the same reference",
        Example = "cold=2.2ohm slope=4e-3/K at=350degC cold-at=25degC")]
    public static double LinearOhm(
        [In("R0", "Ω", "resistance at the reference temperature", Name = "cold", Min = 0)] double referenceOhm,
        [In("α", "1/K", "temperature coefficient at the reference temperature", Name = "slope", Min = -0.02, Max = 0.02)] double slopePerK,
        [In("T", "°C", "temperature", Name = "at", Min = -273.15)] double atC,
        [In("T0", "°C", "reference temperature", Name = "cold-at", Min = -273.15, Default = 20)] double fromC = 20)
    {
        double factor = 1 + (Impossible.UnlessFinite(slopePerK, "1/K") * (Above(atC) - Above(fromC, nameof(fromC))));
        return factor > 0
            ? Impossible.UnlessPositive(referenceOhm, "Ω") * factor
            : throw Impossible.Outside(nameof(atC), atC, "°C", "where the straight line still gives a resistance above 0");
    }

    /// <summary>Coefficient from two readings, referred to the first temperature: (R2/R1 − 1)/(T2 − T1).</summary>
    [Law("heater-slope", "heaters", "(R2/R1 − 1)/(T2 − T1)", Says = "temperature coefficient of a heater from a cold and a hot reading", Unit = "1/K", Source = "definition", Where = "temperature coefficient", Valid = "referred to the first temperature", Example = "cold=2.2ohm cold-at=25degC hot=3.6ohm hot-at=184degC")]
    public static double SlopePerK(
        [In("R1", "Ω", "cold reading", Name = "cold", Min = 0)] double coldOhm,
        [In("T1", "°C", "its temperature", Name = "cold-at")] double coldC,
        [In("R2", "Ω", "hot reading", Name = "hot", Min = 0)] double hotOhm,
        [In("T2", "°C", "its temperature", Name = "hot-at")] double hotC) => hotC == coldC
            ? throw Impossible.Outside(nameof(hotC), hotC, "°C", "another temperature than the first")
            : ((Impossible.UnlessPositive(hotOhm, "Ω") / Impossible.UnlessPositive(coldOhm, "Ω")) - 1) / (hotC - coldC);

    /// <summary>Resistance and slope at another reference temperature.</summary>
    [Law("slope-moved", "heaters", "α₂ = α₁/(1 + α₁·(T₂ − T₁)), R₂ = R₁·(1 + α₁·(T₂ − T₁))", Says = "temperature coefficient referred to another temperature", Source = "definition", Where = "temperature coefficient",
        Valid = "straight R(T)", Example = "cold=2.2ohm slope=4e-3/K from=25degC to=20degC")]
    public static SlopeMoved Moved(
        [In("R₁", "Ω", "resistance at the first temperature", Name = "cold", Min = 0, Default = 1)] double referenceOhm,
        [In("α₁", "1/K", "its coefficient", Name = "slope", Min = -0.05, Max = 0.05)] double slopePerK,
        [In("T₁", "°C", "where it holds", Name = "from", Min = -273.15)] double fromC,
        [In("T₂", "°C", "where it is wanted", Name = "to", Min = -273.15)] double toC)
    {
        (double ohm, double slope) = Rereferred(referenceOhm, slopePerK, fromC, toC);
        return new(ohm, slope);
    }

    /// <summary>Resistance and coefficient carried together to another reference: R·(1 + αΔ) and α/(1 + αΔ).</summary>
    public static (double Ohm, double SlopePerK) Rereferred(double referenceOhm, double slopePerK, double fromC, double toC)
    {
        double ohm = LinearOhm(referenceOhm, slopePerK, toC, fromC);
        return (ohm, slopePerK * referenceOhm / ohm);
    }

    /// <summary>Parabola over degrees Celsius: R_0·(1 + A·t + B·t²).</summary>
    public static double ParabolaOhm(double zeroOhm, double linearPerK, double squarePerK2, double atC) =>
        Impossible.UnlessPositive(zeroOhm, "Ω") * (1 + (atC * (linearPerK + (squarePerK2 * atC))));

    /// <summary>Temperature on the rising branch of the parabola; none when the resistance is never reached.</summary>
    /// <remarks>t = 2(r − 1)/(A + √(A² + 4B(r − 1))), r = R/R_0: the form without cancellation, good for B = 0 too.</remarks>
    public static double? ParabolaC(double zeroOhm, double linearPerK, double squarePerK2, double ohm)
    {
        double over = (Impossible.UnlessPositive(ohm, "Ω") / Impossible.UnlessPositive(zeroOhm, "Ω")) - 1;
        double radicand = (linearPerK * linearPerK) + (4 * squarePerK2 * over);
        return radicand >= 0 ? 2 * over / (Impossible.UnlessPositive(linearPerK, "1/K") + Math.Sqrt(radicand)) : null;
    }

    /// <summary>Factor over the resistance at 20 °C from a published table, straight between its points; refused outside it.</summary>
    public static double Factor(ReadOnlySpan<double> tableC, ReadOnlySpan<double> factors, double atC)
    {
        Impossible.Unless(atC, tableC[0], tableC[^1], "°C");
        int i = 0;
        while (i < tableC.Length - 2 && atC > tableC[i + 1])
        {
            i++;
        }

        return factors[i] + ((factors[i + 1] - factors[i]) * (atC - tableC[i]) / (tableC[i + 1] - tableC[i]));
    }

    /// <summary>How many times its hot current a heater draws when cold, at the same voltage: 1 + α(T_hot − T_cold), α at the cold temperature.</summary>
    [Law("inrush", "heaters", "1 + α·(Thot − Tcold)", Says = "how many times its hot current a cold heater draws", Unit = "", Source = "definition", Where = "temperature coefficient", Valid = "constant voltage; 2 to 2.5 for tungsten types at 350 °C, 1.02 for nickel-chromium", Example = "slope=4e-3/K hot=350degC cold=25degC")]
    public static double InrushFactor(
        [In("α", "1/K", "temperature coefficient at the cold temperature", Name = "slope", Min = -0.02, Max = 0.02)] double slopePerK,
        [In("Thot", "°C", "working temperature", Name = "hot")] double hotC,
        [In("Tcold", "°C", "temperature at the start", Name = "cold", Default = 20)] double coldC = 20) => LinearOhm(1, slopePerK, hotC, coldC);

    private static double Above(double celsius, [System.Runtime.CompilerServices.CallerArgumentExpression(nameof(celsius))] string name = "") =>
        celsius >= -Constants.ZeroCelsiusK && double.IsFinite(celsius) ? celsius : throw Impossible.Outside(name, celsius, "°C", "-273.15 or more");
}

/// <summary>A resistance and its slope at another reference temperature.</summary>
/// <param name="Ohm">Resistance there.</param>
/// <param name="SlopePerK">Coefficient there.</param>
public readonly record struct SlopeMoved(
    [property: Out("Ω", "resistance there", Name = "resistance")] double Ohm,
    [property: Out("1/K", "coefficient there", Name = "slope")] double SlopePerK);

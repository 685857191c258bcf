using System.Globalization;

namespace Heatwright.DemoTruth;

/// <summary>What is really so, which no reading shows directly. All of it is invented.</summary>
public sealed class Hidden
{
    private static readonly (string Name, double Value, string What)[] Invented =
    [
        ("seed", 2026, "draws all instrument errors and noise"),
        ("air", 20, "°C around bench and tool"),
        ("round.capacity", 2.19, "Ah from full to empty"),
        ("round.r0", 0.040, "Ω at once, 25 °C, middle of the charge"),
        ("round.r1", 0.015, "Ω of the short pair"),
        ("round.tau1", 5, "s"),
        ("round.r2", 0.020, "Ω of the long pair"),
        ("round.tau2", 60, "s"),
        ("round.activation", 9, "kJ/mol of all ohms"),
        ("round.heatCapacity", 42, "J/K of one cell"),
        ("iron.capacity", 1.72, "Ah from full to empty"),
        ("iron.r0", 0.013, "Ω"),
        ("iron.r1", 0.004, "Ω"),
        ("iron.tau1", 4, "s"),
        ("iron.r2", 0.005, "Ω"),
        ("iron.tau2", 45, "s"),
        ("iron.activation", 20, "kJ/mol"),
        ("iron.heatCapacity", 40, "J/K"),
        ("cell.toGrip", 0.06, "W/K from one cell to the handle; on the bench to the air"),
        ("stick.ohms", 3.36, "Ω at 20 °C"),
        ("stick.alpha", 7.0e-4, "1/K"),
        ("stick.core", 0.14, "J/K of the heated core"),
        ("stick.blade", 0.52, "J/K of the working end"),
        ("stick.shank", 0.50, "J/K of the shank"),
        ("stick.coreLink", 0.50, "W/K core to working end"),
        ("stick.shankLink", 0.0065, "W/K working end to shank"),
        ("stick.gripLink", 0.012, "W/K shank to grip"),
        ("stick.convection", 0.0085, "W/K to the air at 200 K above it"),
        ("stick.radiating", 2.3e-4, "m², emissivity times area"),
        ("cartridge.ohms", 8.9, "Ω at 20 °C"),
        ("cartridge.alpha", 2.0e-4, "1/K"),
        ("cartridge.core", 0.20, "J/K"),
        ("cartridge.blade", 0.66, "J/K"),
        ("cartridge.shank", 0.60, "J/K"),
        ("cartridge.coreLink", 0.60, "W/K"),
        ("cartridge.shankLink", 0.0080, "W/K"),
        ("cartridge.gripLink", 0.013, "W/K"),
        ("cartridge.convection", 0.0180, "W/K"),
        ("cartridge.radiating", 4.0e-4, "m²"),
        ("ribbon.ohms", 0.60, "Ω at 20 °C"),
        ("ribbon.alpha", 1.0e-4, "1/K"),
        ("ribbon.core", 0.52, "J/K"),
        ("ribbon.blade", 0.62, "J/K"),
        ("ribbon.shank", 0.40, "J/K"),
        ("ribbon.coreLink", 1.50, "W/K"),
        ("ribbon.shankLink", 0.0055, "W/K"),
        ("ribbon.gripLink", 0.012, "W/K"),
        ("ribbon.convection", 0.0090, "W/K"),
        ("ribbon.radiating", 2.2e-4, "m²"),
        ("shank.loss", 0.0030, "W/K of any shank to the air"),
        ("grip.heatCapacity", 90, "J/K"),
        ("grip.loss", 0.20, "W/K to the air"),
        ("module.set", 14.4, "V"),
        ("module.fixed", 0.12, "W"),
        ("module.perAmp", 0.18, "V"),
        ("module.perAmpSquared", 0.050, "Ω"),
        ("module.limit", 10.0, "A mean input"),
        ("module.lockOut", 2.95, "V"),
        ("switch.ohms", 0.006, "Ω"),
        ("leads.ohms", 0.016, "Ω out and back"),
        ("tabs.ohms", 0.0020, "Ω of one touch"),
        ("holder.ohms", 0.020, "Ω of one touch; never measured"),
        ("contacts.drift", 0.05, "share by which touches worsen within about ten minutes"),
        ("supervision.ohms", 0.025, "Ω"),
        ("supervision.trip", 12.5, "A"),
        ("controller.drain", 0.012, "A"),
        ("probe.lag", 1.4, "s"),
        ("probe.contact", 0.992, "share of the rise above the air that the probe feels"),
        ("work.contact", 0.225, "W/K into the rope"),
        ("work.need", 40, "J a cut"),
    ];

    private readonly SortedDictionary<string, double> values = new(StringComparer.Ordinal);

    public Hidden()
    {
        foreach (var (name, value, _) in Invented)
        {
            values[name] = value;
        }
    }

    public double this[string name]
    {
        get => values[name];
        set
        {
            if (!values.ContainsKey(name))
            {
                throw new ArgumentException($"There is no hidden value '{name}'; --truth lists them all.", nameof(name));
            }

            values[name] = value;
        }
    }

    public IEnumerable<string> Lines() => Invented.Select(line =>
        string.Create(CultureInfo.InvariantCulture, $"{line.Name} = {values[line.Name]}   ({line.What})"));
}

using System.Globalization;

namespace Heatwright.DemoTruth;

/// <summary>The hidden values, and what each arrangement does with them.</summary>
public static class Truth
{
    internal static IReadOnlyList<Wiring> Wirings { get; } =
    [
        new("A", "round", 2, "stick", StepUp: false, "tabs", 4, Supervision: false, 0.95),
        new("B", "round", 1, "cartridge", StepUp: true, "tabs", 2, Supervision: true, 0.95),
        new("C", "round", 1, "ribbon", StepUp: false, "holder", 2, Supervision: true, 0.95),
        new("D", "iron", 2, "ribbon", StepUp: false, "tabs", 4, Supervision: false, 0.45),
    ];

    public static void Print(Hidden hidden, string letters, TextWriter to)
    {
        foreach (string line in hidden.Lines())
        {
            to.WriteLine(line);
        }

        foreach (var wiring in Wirings.Where(wiring => letters.Contains(wiring.Letter, StringComparison.Ordinal)))
        {
            foreach (double charge in (double[])[1, 0.5])
            {
                to.WriteLine(Line(wiring, $"from charge {charge.ToString(CultureInfo.InvariantCulture)}, 40 cuts at most", new TrueTool(hidden, wiring).Run(charge, 40)));
            }

            to.WriteLine(Line(wiring, "from full to the end", new TrueTool(hidden, wiring).Run(1, 500)));
        }
    }

    private static string Line(Wiring wiring, string what, Outcome o) => string.Create(CultureInfo.InvariantCulture,
        $"{wiring.Letter} {what}: ready in {o.ReadyS:0.0} s, {o.Cuts} cuts, ended at {o.EndS:0} s ({o.Ended}), charge left {o.ChargeLeft:0.000}, grip {o.GripC:0.0} °C, cell {o.CellC:0.0} °C, most {o.MostA:0.00} A");
}

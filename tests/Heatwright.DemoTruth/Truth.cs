using System.Globalization;

namespace Heatwright.DemoTruth;

/// <summary>The hidden values, and what each arrangement does with them.</summary>
public static class Truth
{
    public static void Print(Hidden hidden, string letters, TextWriter to)
    {
        foreach (string line in hidden.Lines())
        {
            to.WriteLine(line);
        }

        foreach (var wiring in hidden.Scene.Wirings.Where(wiring => letters.Contains(wiring.Letter, StringComparison.Ordinal)))
        {
            if (wiring.IsLamp)
            {
                to.WriteLine(Line(wiring, new TrueLampTool(hidden, wiring).Run()));
                continue;
            }

            int asked = hidden.Scene.Job.Asked;
            foreach (double charge in (double[])[1, 0.5])
            {
                to.WriteLine(Line(wiring, $"from charge {charge.ToString(CultureInfo.InvariantCulture)}, {asked} pieces at most", new TrueTool(hidden, wiring).Run(charge, asked)));
            }

            to.WriteLine(Line(wiring, "from full to the end", new TrueTool(hidden, wiring).Run(1, 500)));
        }
    }

    /// <summary>What an arrangement does from full to the end; a warm-up that is never done is infinite.</summary>
    /// <param name="hidden">The true values.</param>
    /// <param name="letter">Which.</param>
    /// <param name="aimAboveK">How far above the target its controller holds; null: as the maker of the scene tuned it.</param>
    public static (double ReadyS, double Pieces, double GripC, double CellC) Does(Hidden hidden, string letter, double? aimAboveK = null)
    {
        var did = new TrueTool(hidden, hidden.Scene.Wirings.First(wiring => wiring.Letter == letter), aimAboveK).Run(1, 400, toTheEnd: aimAboveK is not null);
        return (double.IsNaN(did.ReadyS) ? double.PositiveInfinity : did.ReadyS, did.Cuts, did.GripC, did.CellC);
    }

    private static string Line(Wiring wiring, LampOutcome o) => string.Create(CultureInfo.InvariantCulture,
        $"{wiring.Letter} from full to the end: full light for {o.FullS:0} s, ended at {o.EndS:0} s ({o.Ended}), charge left {o.ChargeLeft:0.000}, head {o.HeadC:0.0} °C, grip {o.GripC:0.0} °C, cell {o.CellC:0.0} °C, most {o.MostA:0.00} A");

    private static string Line(Wiring wiring, string what, Outcome o) => string.Create(CultureInfo.InvariantCulture,
        $"{wiring.Letter} {what}: ready in {o.ReadyS:0.0} s, {o.Cuts} pieces, ended at {o.EndS:0} s ({o.Ended}), charge left {o.ChargeLeft:0.000}, grip {o.GripC:0.0} °C, cell {o.CellC:0.0} °C, most {o.MostA:0.00} A");
}

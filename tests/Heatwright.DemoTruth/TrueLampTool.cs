namespace Heatwright.DemoTruth;

/// <summary>What an arrangement with a lamp truly does from full on.</summary>
internal sealed record LampOutcome(double FullS, double EndS, string Ended, double ChargeLeft, double HeadC, double GripC, double CellC, double MostA);

/// <summary>A lamp that is switched on and left on, run with the true values at steps of a second.</summary>
internal sealed class TrueLampTool(Hidden hidden, Wiring wiring)
{
    private const double StepS = 1;
    private const int AtHead = TrueCell.Slots;
    private const int AtGrip = AtHead + TrueHead.Slots - 1;

    private readonly TrueCell cell = new(hidden, wiring.Cell);
    private readonly TrueLamp lamp = new(hidden);
    private readonly TrueHead head = new(hidden);
    private readonly double air = hidden["air"];

    public LampOutcome Run()
    {
        double[] x = [1, 0, 0, air, air, air];
        double full = double.NaN, headC = 0, gripC = 0, cellC = 0, mostA = 0;
        string ended = "";
        double now = 0;
        for (int step = 0; ended.Length == 0; step++)
        {
            now = step * StepS;
            var on = On(x);
            mostA = Math.Max(mostA, on.PackA);
            full = double.IsNaN(full) && on.LampA < 0.95 * lamp.SetA ? now : full;
            ended = on.Ended.Length > 0 ? on.Ended : now > 172_800 ? "time over" : "";
            RungeKutta.Step(x, StepS, Slope);
            headC = Math.Max(headC, x[AtHead]);
            gripC = Math.Max(gripC, x[AtGrip]);
            cellC = Math.Max(cellC, x[3]);
        }

        return new(double.IsNaN(full) ? now : full, now, ended, x[0], headC, gripC, cellC, mostA);
    }

    private double LoopOhm => (hidden[wiring.Contacts + ".ohms"] * wiring.ContactCount) + hidden["switch.ohms"] + hidden["leads.ohms"] + (wiring.Supervision ? hidden["supervision.ohms"] : 0);

    private (double PackA, double LampA, double LampV, double OtherW, string Ended) On(double[] x)
    {
        double behindV = wiring.Series * cell.BehindV(x, 0);
        double cellOhm = wiring.Series * cell.AtOnceOhm(x, 0) / wiring.Parallel;
        double packA, lampA, lampV, moduleW = 0;
        string ended = "";
        if (wiring.StepUp)
        {
            var module = new TrueModule(hidden);
            lampV = module.SetV;
            lampA = lamp.Amps(lampV);
            (packA, double loadW, string state) = module.On(behindV, cellOhm + LoopOhm, lampV / lampA);
            lampA = loadW / lampV;
            moduleW = module.LossW(packA);
            ended = state == "locked out" ? "the module locked out" : "";
        }
        else
        {
            // Halving: what the pack gives at a current against what the lamp takes there.
            double low = 0, high = lamp.SetA;
            for (int i = 0; i < 60; i++)
            {
                double half = (low + high) / 2;
                (low, high) = lamp.Amps(behindV - (half * (cellOhm + LoopOhm))) > half ? (half, high) : (low, half);
            }

            packA = lampA = (low + high) / 2;
            lampV = behindV - (packA * (cellOhm + LoopOhm));
        }

        ended = behindV - (packA * cellOhm) <= wiring.Series * cell.CutoffV ? "cut-off volts" : lampA < 0.1 * lamp.SetA ? "the light was gone" : ended;
        return (packA, lampA, lampV, moduleW + (packA * packA * LoopOhm), ended);
    }

    private void Slope(double[] x, double[] dx)
    {
        var on = On(x);
        double each = on.PackA / wiring.Parallel;
        cell.Slope(x, dx, 0, each, each * each, x[AtGrip]);
        double fromCellsW = wiring.Series * wiring.Parallel * cell.ToGrip * (x[3] - x[AtGrip]);
        head.Slope(x, dx, AtHead, (on.LampA * on.LampV) - lamp.LightW(on.LampA), fromCellsW + on.OtherW);
    }
}

namespace Heatwright.DemoTruth;

/// <summary>How an arrangement is wired, in names of the hidden truth.</summary>
internal sealed record Wiring(string Letter, string Name, string Cell, int Series, string Heater, bool StepUp, string Contacts, int ContactCount, bool Supervision, double DutyCeiling, string? Charger, string? CutOut)
{
    /// <summary>Cells side by side.</summary>
    public int Parallel { get; init; } = 1;

    /// <summary>What is named as heater is a lamp: no sensor, no controller.</summary>
    public bool IsLamp { get; init; }

    public string SupervisionPart { get; init; } = "supervision";
}

/// <summary>What an arrangement truly does from a charge on.</summary>
internal sealed record Outcome(double ReadyS, int Cuts, double EndS, string Ended, double ChargeLeft, double GripC, double CellC, double MostA);

/// <summary>An arrangement run through its work with the true values at steps of 20 ms.</summary>
/// <param name="hidden">The true values.</param>
/// <param name="wiring">How it is wired.</param>
/// <param name="aimAboveK">How far above the target the controller holds; null: as the maker of the scene tuned it.</param>
internal sealed class TrueTool(Hidden hidden, Wiring wiring, double? aimAboveK = null)
{
    private const double StepS = 0.02;
    private const int AtCell = TrueEnd.Slots;

    private readonly Job job = hidden.Scene.Job;
    private readonly TrueCell cell = new(hidden, wiring.Cell);
    private readonly TrueEnd end = new(hidden, wiring.Heater);
    private readonly TrueModule module = new(hidden);
    private double duty;
    private double integral;

    /// <param name="charge">Charge it begins with.</param>
    /// <param name="mostCuts">It stops after so many pieces.</param>
    /// <param name="toTheEnd">It goes on when a piece was not done in its time, and counts those in a row before.</param>
    public Outcome Run(double charge, int mostCuts, bool toTheEnd = false)
    {
        double[] x = new double[TrueEnd.Slots + TrueCell.Slots];
        Array.Fill(x, hidden["air"], 0, TrueEnd.Slots);
        x[AtCell] = charge;
        x[AtCell + 3] = hidden["air"];
        double ready = double.NaN, gripC = 0, cellC = 0, mostA = 0, taken = 0;
        int cuts = 0, begun = 0;
        bool missed = false;
        string ended = "";
        double now = 0;
        for (int step = 0; ended.Length == 0; step++)
        {
            now = step * StepS;
            if (step % 5 == 0)
            {
                Control(x[TrueEnd.Probe]);
            }

            if (double.IsNaN(ready) && x[TrueEnd.Blade] >= job.TargetC)
            {
                ready = now;
            }

            double into = now - ready - job.FirstAfterS;
            bool touching = into >= begun * job.EveryS && into < (begun * job.EveryS) + job.ForS && taken < hidden["work.need"];
            double workW = touching ? hidden["work.contact"] * Math.Max(0, x[TrueEnd.Blade] - job.AboveC) : 0;
            taken += workW * StepS;
            if (into >= (begun * job.EveryS) + job.ForS)
            {
                missed |= taken < hidden["work.need"];
                ended = missed && !toTheEnd ? "a piece was not done in its time" : "";
                cuts += missed ? 0 : 1;
                begun++;
                taken = 0;
            }

            var on = On(x, now);
            mostA = Math.Max(mostA, on.Amps);
            ended = on.Ended.Length > 0 ? on.Ended : begun >= mostCuts ? "work done" : now > 14_400 ? "time over" : ended;
            RungeKutta.Step(x, StepS, (at, slope) => Slope(at, slope, now, workW));
            gripC = Math.Max(gripC, x[TrueEnd.Grip]);
            cellC = Math.Max(cellC, x[AtCell + 3]);
        }

        return new(ready, cuts, now, ended, x[AtCell], gripC, cellC, mostA);
    }

    private void Control(double feltC)
    {
        double missing = job.TargetC + (aimAboveK ?? job.AimAboveK) - feltC;
        double asked = (job.Gain * missing) + integral;
        duty = Math.Clamp(asked, 0, wiring.DutyCeiling);
        integral = Math.Clamp(asked == duty ? integral + (job.Sum * missing) : integral, 0, 1);
    }

    private double LoopOhm(double now)
    {
        double drift = 1 + (hidden["contacts.drift"] * (1 - Math.Exp(-now / 300)));
        return (hidden[wiring.Contacts + ".ohms"] * wiring.ContactCount * drift) + hidden["switch.ohms"] + hidden["leads.ohms"]
            + (wiring.Supervision ? hidden["supervision.ohms"] : 0);
    }

    private (double Amps, double LoadW, double OtherW, string Ended) On(double[] x, double now)
    {
        double behindV = wiring.Series * cell.BehindV(x, AtCell);
        double cellOhm = wiring.Series * cell.AtOnceOhm(x, AtCell);
        double loopOhm = LoopOhm(now);
        double loadOhm = end.Ohm(x[TrueEnd.Core]);
        double amps, loadW, moduleW = 0;
        string ended = "";
        if (wiring.StepUp)
        {
            (amps, loadW, string state) = module.On(behindV, cellOhm + loopOhm, loadOhm);
            moduleW = module.LossW(amps);
            ended = state == "locked out" ? "the module locked out" : "";
        }
        else
        {
            amps = behindV / (cellOhm + loopOhm + loadOhm);
            loadW = amps * amps * loadOhm;
        }

        ended = behindV - (amps * cellOhm) <= wiring.Series * cell.CutoffV ? "cut-off volts"
            : wiring.Supervision && amps > hidden["supervision.trip"] ? "supervision tripped" : ended;
        return (amps, loadW, moduleW + (amps * amps * loopOhm), ended);
    }

    private void Slope(double[] x, double[] dx, double now, double workW)
    {
        var on = On(x, now);
        double meanA = (duty * on.Amps) + hidden["controller.drain"];
        cell.Slope(x, dx, AtCell, meanA, duty * on.Amps * on.Amps, x[TrueEnd.Grip]);
        double fromCellsW = wiring.Series * cell.ToGrip * (x[AtCell + 3] - x[TrueEnd.Grip]);
        end.Slope(x, dx, duty * on.LoadW, workW, fromCellsW + (duty * on.OtherW));
    }
}

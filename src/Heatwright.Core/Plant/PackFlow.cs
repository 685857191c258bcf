using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>Charge left and what the pairs of the distinct cells hold.</summary>
internal sealed class CellState(int members)
{
    public readonly double[] Charge = new double[members];
    public readonly double[] ShortV = new double[members];

    /// <summary>Volts, or amps where the cell's long pair holds those.</summary>
    public readonly double[] Long = new double[members];

    public double Least
    {
        get
        {
            double least = Charge[0];
            for (int j = 1; j < Charge.Length; j++)
            {
                least = Math.Min(least, Charge[j]);
            }

            return least;
        }
    }

    public void CopyFrom(CellState other)
    {
        for (int j = 0; j < Charge.Length; j++)
        {
            Charge[j] = other.Charge[j];
            ShortV[j] = other.ShortV[j];
            Long[j] = other.Long[j];
        }
    }
}

/// <summary>The electrics of the pack: one source of all its cells, what the path makes of it, and how the cells move.</summary>
/// <remarks>Cells side by side share their current by V = (Σ E_j/R_j − I)/Σ(1/R_j), I_j = (E_j − V)/R_j; that is linear in I, so the mean over
/// the pulses of the switch is the share of the mean current.</remarks>
internal sealed class PackFlow
{
    private readonly AssembledTool tool;
    private readonly PackModel pack;
    private readonly double ambientK;
    private readonly int cellNode;
    private readonly int heaterNode;
    private readonly double[] shortS;
    private readonly double[] longS;
    private readonly double[] shortDrive;
    private readonly double[] longDrive;
    private readonly double[] amps;
    private readonly double[] shortFade;
    private readonly double[] longFade;
    private readonly bool oneFactor;

    /// <summary>Step that the fades stand for.</summary>
    private double fadeS = double.NaN;

    public PackFlow(AssembledTool tool)
    {
        this.tool = tool;
        pack = tool.Pack!;
        Cells = new PackCells(pack);
        ambientK = tool.Network.AmbientK;
        cellNode = tool.Network.CellNode;
        heaterNode = tool.Network.HeaterNode;
        int members = Cells.Members.Length;
        shortS = new double[members];
        longS = new double[members];
        shortDrive = new double[members];
        longDrive = new double[members];
        amps = new double[members];
        shortFade = new double[members];
        longFade = new double[members];
        oneFactor = Array.TrueForAll(Cells.Members, cell => cell.ActivationJPerMol == Cells.Members[0].ActivationJPerMol && cell.ReferenceK == Cells.Members[0].ReferenceK);
    }

    public PackCells Cells { get; }

    public void Begin(CellState state)
    {
        for (int j = 0; j < state.Charge.Length; j++)
        {
            state.Charge[j] = Cells.Members[j].StartCharge ?? pack.StartCharge;
        }
    }

    /// <summary>Solves everything from the cells to the load.</summary>
    public void Solve(CellState state, double[] rises, double drive, Electrics into)
    {
        double cellK = cellNode >= 0 ? ambientK + rises[cellNode] : ambientK;
        double factor = Cells.Members[0].OhmsFactor(cellK);
        double openV = 0;
        double ohm = 0;
        for (int g = 0; g < Cells.Groups; g++)
        {
            double conductance = 0;
            double driven = 0;
            for (int j = Cells.First[g]; j < Cells.First[g + 1]; j++)
            {
                var cell = Cells.Members[j];
                double charge = state.Charge[j];
                into.Factor[j] = oneFactor ? factor : cell.OhmsFactor(cellK);
                into.LongOhm[j] = cell.R2Ohm.At(charge) * into.Factor[j];
                into.LongV[j] = cell.LongHoldsAmps ? into.LongOhm[j] * state.Long[j] : state.Long[j];
                into.MemberV[j] = cell.OpenV.At(charge) - state.ShortV[j] - into.LongV[j];
                into.MemberOhm[j] = cell.R0Ohm.At(charge) * into.Factor[j];
                conductance += 1 / into.MemberOhm[j];
                driven += into.MemberV[j] / into.MemberOhm[j];
            }

            // One cell alone is its own source, also without ohms; several share by their conductances.
            bool alone = Cells.First[g + 1] - Cells.First[g] == 1;
            into.GroupV[g] = alone ? into.MemberV[Cells.First[g]] : driven / conductance;
            into.GroupOhm[g] = (alone ? into.MemberOhm[Cells.First[g]] : 1 / conductance) / Cells.Strings;
            openV += Cells.Times * into.GroupV[g];
            ohm += Cells.Times * into.GroupOhm[g];
        }

        into.CellK = cellK;
        into.OpenV = openV;
        into.CellOhm = ohm;

        // The drain is taken at the cells and sags them; the path sees what is left.
        double pathV = openV - (tool.DrainOnA * ohm);
        into.On = tool.Charger is { } charger ? charger.On(pathV, ohm, pack.LoopOhm)
            : tool.Load is LoadModel.RecordedCurrent ? PowerPath.Drawing(pathV, ohm, pack.LoopOhm, drive)
            : PowerPath.Solve(pathV, ohm, pack.LoopOhm, tool.Path, LoadAt(rises));
    }

    /// <summary>What flows in pack, loop, path and load; comes before <see cref="Predict"/> and <see cref="Correct"/>, which take the short pairs' ohms from it.</summary>
    public void Flow(Electrics at, CellState state, double duty, ref Stepper.Flow flow)
    {
        double onA = at.On.PackA;
        double outA = onA + tool.DrainOnA;
        double offA = tool.DrainOffA;
        flow.MeanA = (duty * outA) + ((1 - duty) * offA);
        flow.LoadW = duty * at.On.LoadW * (tool.TakesMeanVoltsForPower ? duty : 1);
        flow.LightW = tool.Load is LoadModel.Lamp lamp ? duty * lamp.LightW(at.On) : 0;
        flow.BehindOhmsW = flow.MeanA * at.OpenV;
        flow.TerminalW = (duty * outA * (at.OpenV - (outA * at.CellOhm))) + ((1 - duty) * offA * (at.OpenV - (offA * at.CellOhm)));
        flow.LoopW = duty * onA * onA * pack.LoopOhm;
        flow.PathW = duty * at.On.PathLossW;
        flow.DrainW = (duty * tool.DrainOnA * (at.OpenV - (outA * at.CellOhm))) + ((1 - duty) * offA * (at.OpenV - (offA * at.CellOhm)));
        double heat = 0;
        for (int g = 0; g < Cells.Groups; g++)
        {
            for (int j = Cells.First[g]; j < Cells.First[g + 1]; j++)
            {
                double ofOn = MemberA(at, g, j, outA);
                double ofOff = MemberA(at, g, j, offA);
                heat += ((duty * ofOn * ofOn) + ((1 - duty) * ofOff * ofOff)) * at.MemberOhm[j];
                double shortV = state.ShortV[j];
                double longV = at.LongV[j];
                at.ShortOhm[j] = ShortOhm(at, state, j, (duty * ofOn) + ((1 - duty) * ofOff));
                heat += shortV == 0 ? 0 : shortV * shortV / Math.Max(at.ShortOhm[j], 1e-12);
                heat += longV == 0 ? 0 : longV * longV / Math.Max(at.LongOhm[j], 1e-12);
            }
        }

        flow.CellW = heat * Cells.Times * Cells.Strings;
    }

    /// <summary>Charge and pair volts after h seconds with what flows now.</summary>
    public void Predict(Electrics at, CellState from, double meanA, double h, CellState to)
    {
        for (int g = 0; g < Cells.Groups; g++)
        {
            for (int j = Cells.First[g]; j < Cells.First[g + 1]; j++)
            {
                var cell = Cells.Members[j];
                double charge = from.Charge[j];
                amps[j] = MemberA(at, g, j, meanA);
                shortS[j] = cell.ShortTau?.At(charge) ?? cell.Tau1S;
                longS[j] = cell.LongTau?.At(charge) ?? cell.Tau2S;
                shortDrive[j] = at.ShortOhm[j] * amps[j];
                longDrive[j] = LongDrive(cell, at.LongOhm[j], amps[j]);
                to.Charge[j] = charge - (amps[j] * h / cell.CapacityC);
                if (!(Math.Abs(h - fadeS) < StepMatrices.SameS) || cell.ShortTau is not null || cell.LongTau is not null)
                {
                    shortFade[j] = 1 - Math.Exp(-h / shortS[j]);
                    longFade[j] = 1 - Math.Exp(-h / longS[j]);
                }

                to.ShortV[j] = from.ShortV[j] + ((shortDrive[j] - from.ShortV[j]) * shortFade[j]);
                to.Long[j] = from.Long[j] + ((longDrive[j] - from.Long[j]) * longFade[j]);
            }
        }

        fadeS = Math.Abs(h - fadeS) < StepMatrices.SameS ? fadeS : h;
    }

    /// <summary>The same with what flows at the end of the step, guessed from the start.</summary>
    public void Correct(Electrics atEnd, CellState guessed, double meanA, double h, CellState to)
    {
        for (int g = 0; g < Cells.Groups; g++)
        {
            for (int j = Cells.First[g]; j < Cells.First[g + 1]; j++)
            {
                var cell = Cells.Members[j];
                double charge = guessed.Charge[j];
                double endA = MemberA(atEnd, g, j, meanA);
                double shortEnd = Drive(cell.ShortTau, shortS[j], charge, guessed.ShortV[j], atEnd.ShortOhm[j] * endA);
                double longEnd = Drive(cell.LongTau, longS[j], charge, guessed.Long[j], LongDrive(cell, atEnd.LongOhm[j], endA));
                to.Charge[j] -= (amps[j] + endA) / 2 * h / cell.CapacityC;
                to.ShortV[j] = guessed.ShortV[j] + ((shortEnd - shortDrive[j]) * SecondPhi(h / shortS[j], shortFade[j]));
                to.Long[j] = guessed.Long[j] + ((longEnd - longDrive[j]) * SecondPhi(h / longS[j], longFade[j]));
            }
        }
    }

    /// <summary>What the long pair is driven towards: volts, or amps where it holds those.</summary>
    private static double LongDrive(CellModel cell, double longOhm, double amps) => cell.LongHoldsAmps ? amps : longOhm * amps;

    private double ShortOhm(Electrics at, CellState state, int member, double memberA)
    {
        var cell = Cells.Members[member];
        return cell.ShortOhm(cell.R1Ohm.At(state.Charge[member]) * at.Factor[member], memberA, at.CellK);
    }

    private double MemberA(Electrics at, int group, int member, double packA) => Cells.First[group + 1] - Cells.First[group] == 1
        ? packA / Cells.Strings
        : (at.MemberV[member] - at.GroupV[group] + (packA * at.GroupOhm[group])) / at.MemberOhm[member];

    /// <summary>What a pair is driven towards at the end of a step that was taken with the time constant of its start.</summary>
    private static double Drive(ChargeCurve? tau, double startS, double charge, double held, double driven)
    {
        double share = tau is null ? 1 : startS / tau.At(charge);
        return (share * driven) + ((1 - share) * held);
    }

    /// <summary>φ₂(−z)·z for a scalar decay: how much of a rising drive has arrived after the step.</summary>
    private static double SecondPhi(double z, double fade) => z < 1e-4 ? (z / 2) - (z * z / 6) : 1 - (fade / z);

    private LoadLaw LoadAt(double[] rises)
    {
        double kelvin = ambientK + (heaterNode >= 0 ? rises[heaterNode] : 0);
        return tool.Load switch
        {
            LoadModel.Heater heater => LoadLaw.Ohms(heater.OhmAt(kelvin)),
            LoadModel.SelfLimiting limiting => LoadLaw.Ohms(Ptc.Ohm(limiting.LeastOhm, limiting.SwitchK, limiting.SteepnessPerK, kelvin)),
            LoadModel.ConstantCurrent constant => LoadLaw.Amps(constant.Amps),
            LoadModel.ConstantPower constant => LoadLaw.Watts(constant.Watts),
            LoadModel.VoltsAmps table => LoadLaw.Of(table.Table),
            LoadModel.Lamp lamp => lamp.Law,
            _ => throw new InvalidOperationException($"A pack cannot drive a load of kind {tool.Load.GetType().Name}."),
        };
    }
}

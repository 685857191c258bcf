using System.Globalization;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Arrangements;

/// <summary>Collects the numbers of a loop and solves it at three moments. What is not known is taken as its class, wide and marked assumed.</summary>
/// <remarks>Direct: one division. Through a step-up: <see cref="StepUpPoint"/>. Doubts by linear propagation of the same functions.
/// The empty moment needs no curve of the cells: the cut-off looks at the volts under load, so there the cells stand exactly at it.</remarks>
internal sealed class LoopBench
{
    // What the predictions take too, see PlantBuilder: common practice, no source.
    private const double MaxDuty = 0.92;
    private const double DiodeV = 0.35;

    private static readonly Unit Amp = Units.Ampere;

    private readonly Arrangement arrangement;
    private readonly Shelf shelf;
    private readonly double hotC;
    private readonly List<Input> inputs = [];
    private readonly List<(string Name, PartId Part, int At, double Times)> steps = [];
    private readonly int full;
    private readonly int cutOff;
    private readonly int freshCell;
    private readonly int heater = -1;
    private readonly int lamp = -1;
    private readonly int alpha = -1;
    private readonly int module = -1;
    private readonly int change = -1;
    private readonly int series;

    public LoopBench(Arrangement arrangement, Shelf shelf, double hotC)
    {
        (this.arrangement, this.shelf, this.hotC, series) = (arrangement, shelf, hotC, arrangement.Series);
        var cell = arrangement.Cell;
        var chemistry = Chemistry.Of(shelf[cell]);
        Step(arrangement.Series == 1 && arrangement.Parallel == 1 ? "cell" : $"{arrangement.Series}S{arrangement.Parallel}P of cells", cell, (double)arrangement.Series / arrangement.Parallel,
            0.02, 0.08, "small round cells 20 to 80 mΩ, common practice, no source");
        Step($"{Count(arrangement.ContactCount)} touches", arrangement.Contacts, arrangement.ContactCount, 0.010, 0.050, "spring holder contact 10 to 50 mΩ, common practice, no source");
        if (arrangement.Supervision is { } supervision)
        {
            Step("supervision", supervision, 1, 0.008, 0.080, "supervision boards 8 to 80 mΩ, common practice, no source");
        }

        Step("switch", arrangement.Switch, 1, 0.005, 0.040, "small transistor switch, common practice, no source");
        Step("leads", arrangement.Leads, 1, 0.010, 0.050, "short leads, common practice, no source");
        var tried = shelf.FoundOfCell(cell);
        var found = tried?.Cell?.Cell;
        full = Add("open volts of a full cell", found is not null && shelf.Value(cell, Trials.CellQuantities.OpenVolts) is { } half
            ? new(found.OpenV.At(1) + half.Si - (tried!.Find(Trials.CellQuantities.OpenVolts)?.Si ?? half.Si), Units.Volt, half.In(Units.Volt).Doubts, half.Origin) // the curve is lifted as a whole: its doubt at half charge is its doubt
            : shelf.Value(cell, PartQuantities.FullVolts) ?? Estimate.Within(chemistry.FullV, chemistry.FullPlusMinus, Units.Volt, $"{cell}: full volts, assumed", CauseGroup.Assumption, new Origin.Assumed(chemistry.Why)));
        cutOff = Add("cut-off volts of a cell", shelf.Value(cell, PartQuantities.CutoffVolts)
            ?? Estimate.Exact(chemistry.CutOffV, Units.Volt, new Origin.Assumed(chemistry.Why)));
        // In its first seconds a cell shows its instant ohms and the short pair; the slow one comes with the minutes.
        freshCell = found is not null && inputs[steps[0].At].Value is { Si: > 0 } settled && (tried!.Find(PartQuantities.Ohms)?.Si ?? settled.Si) is > 0 and var foundOhm
            ? Add($"{shelf[cell].Name}, ohms in the first seconds", new((found.R0Ohm.At(1) + found.R1Ohm.At(1)) * found.OhmsFactor(298.15) * (settled.Si / foundOhm), Units.Ohm,
                First(settled, (found.R0Ohm.At(1) + found.R1Ohm.At(1)) / foundOhm, tried.Cell!.LogFirstOhmsDoubt), settled.Origin))
            : found is null && shelf.Value(cell, Trials.CellQuantities.FirstOhms) is { } first ? Add($"{shelf[cell].Name}, ohms in the first seconds", first)
            : steps[0].At;
        if (arrangement.Lamp is { } light)
        {
            lamp = Add($"current of {shelf[light].Name}", shelf.Value(light, PartQuantities.LoadCurrent) ?? throw new InvalidOperationException("A loop is looked at after its load is known."));
            var least = shelf.Value(light, PartQuantities.LeastInputVolts) ?? throw new InvalidOperationException("A loop is looked at after its load is known.");
            Add($"least volts of {shelf[light].Name}", least);
            Add($"dark volts of {shelf[light].Name}", shelf.ValueOr(light, PartQuantities.DarkVolts, 0.75 * least.Si, 0.95 * least.Si, Units.Volt, "5 to 25 % under the least volts, common practice, no source"));
        }
        else
        {
            heater = Add($"ohms, {shelf[arrangement.Load].Name}", shelf.Value(arrangement.Load, PartQuantities.Ohms) ?? Labelled()
                ?? throw new InvalidOperationException("A loop is looked at after its load is known."));
        }

        if (hotC != 20 && arrangement.Lamp is null)
        {
            alpha = Add("temperature coefficient", shelf.ValueOr(arrangement.Load, PartQuantities.Alpha, 0, 0.0045, Units.PerKelvin, "unknown alloy, 0 to 4.5e-3 per kelvin, from memory"));
        }

        if (arrangement.StepUp is { } stepUp)
        {
            module = Add("set volts", shelf.Value(stepUp, PartQuantities.SetVolts) ?? throw new InvalidOperationException("A loop is looked at after the set volts of its module are known."));
            Add("fixed loss of the module", shelf.ValueOr(stepUp, PartQuantities.LossFixed, 0.02, 0.3, Units.Watt, "small modules, common practice, no source"));
            Add("loss per ampere", shelf.ValueOr(stepUp, PartQuantities.LossPerAmp, 0.05, 0.5, Units.Volt, "small modules, common practice, no source"));
            Add("loss per ampere squared", shelf.ValueOr(stepUp, PartQuantities.LossPerAmpSquared, 0.03, 0.2, Units.Ohm, "small modules, common practice, no source"));
            Add("current limit of the module", shelf.ModuleLimit(stepUp));
            Add("lock-out of the module", shelf.ValueOr(stepUp, PartQuantities.LockOutVolts, 2.2, 3.0, Units.Volt, "one-cell modules, common practice, no source"));
            if (shelf.Value(stepUp, PartQuantities.ChangeCurrent) is { } from && shelf.Value(stepUp, PartQuantities.LossAbove) is { } above)
            {
                change = Add("current of the change", from);
                Add("loss above the change", above);
            }
        }
    }

    /// <summary>Ohms of a heater known by its label only: volts squared over watts; null: not even that.</summary>
    public static Estimate? Label(Shelf shelf, PartId heater) => shelf.Value(heater, PartQuantities.RatedVolts) is { Si: > 0 } volts && shelf.Value(heater, PartQuantities.RatedPower) is { Si: > 0 } watts
        ? Propagate.Through((v, w) => v * v / w, Units.Ohm, "label volts squared over label watts", new("label volts", volts), new("label watts", watts))
        : null;

    public LoopLook Look()
    {
        LoopStep[] loop = [.. steps.Select(step => new LoopStep(step.Name == "cell" || step.Name.EndsWith("cells", StringComparison.Ordinal) || step.Name.EndsWith("touches", StringComparison.Ordinal)
            ? $"{step.Name}, {shelf[step.Part].Name}" : shelf[step.Part].Name, step.Part, Through(at => at[step.At] * step.Times, Units.Ohm, step.Times == 1 ? "" : "ohms of one times their count in series over those side by side", step.At)))];
        var total = Through(at => steps.Sum(step => at[step.At] * step.Times), Units.Ohm, "sum of the ohms in series", [.. steps.Select(step => step.At)]);
        var start = Moment(lamp < 0 ? "full pack, cold load" : "full pack, switched on", fullPack: true, 20);
        var hot = Moment("full pack, first seconds", fullPack: true, hotC);
        var empty = Moment("pack at its cut-off", fullPack: false, hotC);
        return new(arrangement, loop, total, hotC, start, hot, empty, LoopLimits.Of(arrangement, shelf, start, hot, empty))
        {
            Guessed = alpha >= 0 && inputs[alpha].Value.Origin is Origin.Assumed guess
                ? [$"the temperature coefficient of {shelf[arrangement.Load].Name}, {Display.Rounded(inputs[alpha].Value)} ({guess.Why}): its ohms held hot tell it"] : [],
        };
    }

    private LoopMoment Moment(string when, bool fullPack, double loadC)
    {
        double[] middle = [.. inputs.Select(input => input.Value.Si)];
        var solved = Solve(middle, fullPack, loadC);
        Estimate Worked(Func<Solved, double> what, Unit unit, string law) => Propagate.Through(at => what(Solve(at, fullPack, loadC)), unit, law, [.. inputs]);
        if (solved.Region is PathRegion.LockedOut or PathRegion.Hiccup or PathRegion.SourceLimited)
        {
            var rest = fullPack ? Through(at => at[full] * series, Units.Volt, "open volts times cells in series", full) : Through(at => at[cutOff] * series, Units.Volt, "cut-off volts times cells in series", cutOff);
            return new(when, solved.Region, rest, null, null, [], [], [], null, null, null, null, null, null);
        }

        return new(when, solved.Region, Worked(one => one.OpenV, Units.Volt, "pack volts without load"), Worked(one => one.PackV, Units.Volt, "open volts less what the cells lose"),
            Worked(one => one.PackA, Amp, "the loop solved for its current"),
            [.. steps.Select((step, i) => Through(at => at[At(i, fullPack)] * step.Times, Units.Ohm, step.Times == 1 ? "" : "ohms of one times their count in series over those side by side", At(i, fullPack)))],
            [.. steps.Select((step, i) => Propagate.Through(at => Solve(at, fullPack, loadC).PackA * at[At(i, fullPack)] * step.Times, Units.Volt, "amps times ohms", [.. inputs]))],
            [.. steps.Select((step, i) => Propagate.Through(at => Math.Pow(Solve(at, fullPack, loadC).PackA, 2) * at[At(i, fullPack)] * step.Times, Units.Watt, "amps squared times ohms", [.. inputs]))],
            lamp < 0 ? Worked(one => one.LoadV / one.LoadA, Units.Ohm, "ohms of the load at its temperature") : null,
            Worked(one => one.LoadV, Units.Volt, lamp < 0 ? "amps times ohms of the load" : "where what the pack gives meets what the lamp takes"),
            Worked(one => one.LoadA, Amp, lamp < 0 ? "volts over ohms of the load" : "what the lamp takes at its volts"), Worked(one => one.LoadV * one.LoadA, Units.Watt, lamp < 0 ? "volts squared over ohms of the load" : "volts times amps of the lamp"),
            module < 0 ? null : Worked(one => one.ModuleV, Units.Volt, "pack volts less what is lost before the module"), module < 0 ? null : Worked(one => one.ModuleW, Units.Watt, "input watts less output watts"));
    }

    private readonly record struct Solved(PathRegion? Region, double OpenV, double PackV, double PackA, double LoadV, double LoadA, double ModuleV, double ModuleW);

    private Solved Solve(double[] at, bool fullPack, double loadC)
    {
        double cells = at[At(0, fullPack)] * steps[0].Times;
        double others = steps.Skip(1).Sum(step => at[step.At] * step.Times);
        double source = fullPack ? at[full] * series : at[cutOff] * series;
        double sourceOhm = fullPack ? cells + others : others;
        var load = lamp < 0 ? LoadLaw.Ohms(at[heater] * (alpha < 0 ? 1 : 1 + (at[alpha] * (loadC - 20))))
            : LoadLaw.Of(new VoltsAmpsTable([Math.Clamp(at[lamp + 2], 1e-3, 0.99 * at[lamp + 1]), at[lamp + 1]], [0, Math.Max(0, at[lamp])]));
        if (module < 0)
        {
            double volts = load.VoltsBehind(source, sourceOhm);
            double amps = load.AmpsAt(volts);
            return new(null, fullPack ? source : source + (amps * cells), fullPack ? source - (amps * cells) : source, amps, volts, amps, 0, 0);
        }

        var point = StepUpPoint.Solve(source, sourceOhm, load, new StepUpModule(at[module], new(Math.Max(0, at[module + 1]), Math.Max(0, at[module + 2]), Math.Max(0, at[module + 3])))
        { PeakLimitA = at[module + 4], LockoutV = at[module + 5], MaxDuty = MaxDuty, DiodeV = DiodeV, ChangeA = change < 0 ? double.PositiveInfinity : Math.Max(0, at[change]), SteeperV = change < 0 ? 0 : Math.Max(0, at[change + 1]) }, out _);
        if (!point.Exists)
        {
            return new(point.Region, source, source, 0, 0, 0, source, 0);
        }

        return new(point.Region, fullPack ? source : source + (point.InputA * cells), fullPack ? source - (point.InputA * cells) : source, point.InputA, point.OutV, point.OutV > 0 ? point.OutW / point.OutV : 0, point.InputV, point.LossW);
    }

    private int At(int step, bool fullPack) => step == 0 && fullPack ? freshCell : steps[step].At;

    private Estimate? Labelled() => Label(shelf, arrangement.Load);

    private void Step(string name, PartId part, double times, double low, double high, string why) => steps.Add((name, part,
        Add($"{(times == 1 ? "" : "one of ")}{shelf[part].Name}, ohms", shelf.ValueOr(part, PartQuantities.Ohms, low, high, Units.Ohm, why)), times));

    private int Add(string name, Estimate value)
    {
        inputs.Add(new(name, value));
        return inputs.Count - 1;
    }

    private Estimate Through(Func<double[], double> law, Unit unit, string name, params int[] from)
    {
        if (name.Length == 0)
        {
            return inputs[from[0]].Value.In(unit);
        }

        return Propagate.Through(some =>
        {
            double[] all = new double[inputs.Count];
            for (int i = 0; i < from.Length; i++)
            {
                all[from[i]] = some[i];
            }

            return law(all);
        }, unit, name, [.. from.Select(place => inputs[place])]);
    }

    /// <summary>Doubts of the ohms in the first seconds: what the fit scatters is their own, the rest they share with those after minutes.</summary>
    private static Doubts First(Estimate settled, double share, double logDoubt)
    {
        var scaled = settled.In(Units.Ohm).Doubts.Times(share);
        return settled.Origin is not Origin.Fitted from ? scaled
            : scaled.Pushes.Where(push => push.Cause.Group != CauseGroup.Trial).Aggregate(Doubts.From(Cause.Normal($"{from.Trial} ohms in the first seconds, scatter", CauseGroup.Trial), logDoubt * share * settled.Si), (sum, push) => sum.With(push.Cause, push.By));
    }

    private static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);
}

using Heatwright.Arrangements;
using Heatwright.Handbook;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>What the sensor's part of the sheet found, for the parts that follow.</summary>
/// <param name="Sections">Sensor, calibration.</param>
/// <param name="Chain">The chain; null: none is possible.</param>
/// <param name="Window">Reading window; null without a chain.</param>
/// <param name="Code">Calibration code; null: none could be made.</param>
internal sealed record SensorPart(IReadOnlyList<SheetSection> Sections, SensorChain? Chain, ReadWindow? Window, CalibrationCode? Code)
{
    private static readonly string[] BothSeries = ["E24", "E96"];

    private const double LeftV = 15e-6;
    private const double DriftShare = 0.001;

    public static SensorPart Of(SheetAsk ask, CodeNotes notes)
    {
        if (ask.Curve is not { } curve)
        {
            var part = ask.Shelf[ask.Arrangement.Sensor!.Value];
            string said = part.Word("type", "no type");
            Problem problem = new($"The type of '{part.Name}' is not known, so no chain can be laid out.", "sensor", said, string.Join(", ", Thermocouples.All.Select(one => one.Type)),
                "Take four readings of millivolts and degrees over 150 K and let them tell the type, then state it with the part.");
            return new([new SheetSection("sensor", "Sensor and amplifier", []) { Problems = [problem] }], null, null, null);
        }

        var wanted = Wanted(ask, curve);
        var chosen = ask.Drawer is { } drawer ? ChainSearch.FromDrawer(wanted, drawer) : ChainSearch.FromSeries(wanted, ask.Series);
        if (!chosen.IsFine)
        {
            return new([new SheetSection("sensor", "Sensor and amplifier", []) { Problems = chosen.Problems }], null, null, null);
        }

        var chain = chosen.Value;
        var c = ask.Choices;
        var window = ReadWindow.Of(chain, c.Si("input-resistor"), c.Si("input-capacitor"), c.Si("clamp-step"), c.Si("amplifier-recovery"), c.Si("sample-reads") * c.Si("read-time"), c.Si("frame"));
        var (calibration, code) = Calibrated(ask, chain, notes);
        return new([Chained(ask, chain, window), calibration], chain, window, code);
    }

    private static ChainWanted Wanted(SheetAsk ask, ThermocoupleCurve curve)
    {
        var c = ask.Choices;
        double referenceShare = c["reference"].PlusMinus / c["reference"].Value;
        return new(curve, Math.Min(curve.MaxC, ask.SetC + c.Si("read-above")), c.Si("cold-end-least"), c.Si("cold-end-most"), c.Si("reference"), referenceShare, (int)c.Si("converter-bits"))
        {
            Form = ask.Form,
            SupplyLeastV = c.Si("supply") - c["supply"].PlusMinus,
            FloorV = c.Si("amplifier-floor"),
            HeadroomV = c.Si("amplifier-headroom"),
            OffsetV = c.Si("amplifier-offset"),
            DriftVPerK = c.Si("amplifier-drift"),
            BiasA = c.Si("amplifier-bias"),
            BandwidthHz = c.Si("amplifier-bandwidth"),
            OutputBiasV = c.Si("output-bias"),
            Tolerance = c.Si("resistor-tolerance"),
            Share = c.Si("gain-share"),
            MostParallelOhm = c.Si("most-parallel"),
            SettleMostS = 0.25 * c.Si("frame"),
        };
    }

    private static SheetSection Chained(SheetAsk ask, SensorChain chain, ReadWindow window)
    {
        var c = ask.Choices;
        var lines = new Lines(ask);
        Input[] from = [c["reference"].Input, c["supply"].Input, c["amplifier-offset"].Input, c["resistor-tolerance"].Input, c["gain-share"].Input];
        var sensor = ask.Shelf[ask.Arrangement.Sensor!.Value];
        lines.Say("Sensor", $"{sensor.Name}, type {chain.Wanted.Curve.Type}; warm it: the reading must rise, else swap its two wires");
        lines.Say("Amplifier", chain.Wanted.Form == AmplifierForm.NonInverting ? "non-inverting: gain 1 + feedback over ground; sensor minus on the converter's ground" : "difference of four equal pairs: gain feedback over input; needs resistors matched as well as their tolerance");
        string law = $"largest gain of {chain.FeasiblePairs} pairs of {chain.Series} that never clips";
        lines.Made("Feedback resistor", chain.Pair.FeedbackOhm, Units.Ohm, law, from, ChainSearch.Ohms(chain.Pair.FeedbackOhm));
        lines.Made("Ground resistor", chain.Pair.GroundOhm, Units.Ohm, law, from, ChainSearch.Ohms(chain.Pair.GroundOhm));
        lines.Made("Gain", chain.Pair.Gain, Units.One, law, from, $"fills {Lines.N(100 * chain.Pair.Use, "0")} of 100 of what is allowed at the worst corner");
        foreach (string series in BothSeries.Where(series => series != chain.Series))
        {
            if (ChainSearch.FromSeries(chain.Wanted, series) is { IsFine: true, Value: var other })
            {
                lines.Made($"Instead, {series}", other.Pair.Gain, Units.One, $"largest gain of {series}", from, $"{ChainSearch.Ohms(other.Pair.FeedbackOhm)} over {ChainSearch.Ohms(other.Pair.GroundOhm)}");
            }
        }

        lines.Made("Reads up to", chain.SaturatesC(chain.Wanted.ColdLeastC), Units.Celsius, "where the nominal chain reaches its ceiling", from);
        double floorC = chain.ReadsFromC(chain.Wanted.ColdMostC);
        bool beneath = floorC > ask.SetC;
        lines.Made("Surely reads from", floorC, Units.Celsius, "where the chain lies on its floor, warmest cold end, offset against it", from,
            beneath ? $"the set point of {Lines.N(ask.SetC, "0.#")} °C lies beneath: with a warm grip the chain shows nothing there; lift its output with output-bias, or choose a thermistor" : $"with the grip at {Lines.N(chain.Wanted.ColdMostC, "0")} °C and the offset against it; with a cooler board it reads from colder on", beneath);
        IReadOnlyList<double> tips = [25, Math.Round(ask.SetC / 20) * 10, ask.SetC];
        foreach (double tip in tips)
        {
            lines.Made($"Counts at {Lines.N(tip, "0")} °C", chain.CountAt(tip, 25), Units.One, "chain with the cold end at 25 °C", from);
        }

        lines.Made("One count near the set point", chain.KelvinPerCount(ask.SetC), Units.Kelvin, "step over gain and slope of the sensor", from);
        lines.Choice("Lift at the output", "output-bias", "two resistors from the supply, or a pin; a cold tip then lies off the floor");
        lines.Choice("Input resistor, one a wire", "input-resistor");
        lines.Choice("Input capacitor", "input-capacitor");
        double clamp = Amplifier.ClampOffsetV(c.Si("clamp-leakage"), c.Si("input-resistor")) / chain.Wanted.Curve.SlopeVPerK(ask.SetC);
        lines.Made("Leakage of the clamp", clamp, Units.Kelvin, "leakage times input resistor over slope", [c["clamp-leakage"].Input, c["input-resistor"].Input], "", clamp > 2);
        lines.Choice("Pull-up that finds a broken sensor", "pull-up", "to the supply, or switched on only for the test");
        lines.Say("Cold end", "a thermistor or the controller's own sensor, glued beside the sensor's connector in the grip; add millivolts, never degrees");
        lines.Made("Wait after heater off", window.WaitS * 1e6, Units.Microsecond, "twice recovery, filter and settling of the amplifier", [c["amplifier-recovery"].Input, c["input-resistor"].Input, c["input-capacitor"].Input, c["amplifier-bandwidth"].Input],
            "check: the reading must not move when the wait is doubled");
        lines.Made("Duty that the reading leaves", window.MostDuty, Units.One, "1 − (wait + reading)/frame, where the sensor hears the heater or shares its leads", [c["frame"].Input, c["sample-reads"].Input, c["read-time"].Input],
            window.MostDuty <= 0 ? "the window does not fit into the frame: lengthen it with frame" : "the largest duty of the controller is the smaller of this and the arrangement's ceiling", window.MostDuty < 0.5);
        return new("sensor", "Sensor and amplifier", lines.All) { Table = Budget(ask, chain) };
    }

    private static SheetTable Budget(SheetAsk ask, SensorChain chain)
    {
        var c = ask.Choices;
        var (curve, hot, cold) = (chain.Wanted.Curve, ask.SetC, 25.0);
        var limits = Limits(chain, c);
        double slope = curve.SlopeVPerK(hot), signal = ColdJunction.VoltageV(curve, hot, cold);
        var raw = ChainBudget.Raw(chain, hot, cold, limits, ask.Seed);
        var one = ChainBudget.OnePoint(raw, LeftV, slope, ask.Seed);
        var two = ChainBudget.TwoPoint(raw, LeftV, slope, DriftShare, signal, 1, ask.Seed);
        List<IReadOnlyList<string>> rows = [.. raw.Lines.Select((line, i) => new[] { line.Cause, Lines.N(line.HalfWidthK), Lines.N(one.Lines[i].HalfWidthK), Lines.N(two.Lines[i].HalfWidthK) })];
        rows.Add(["all at their limits", Lines.N(raw.WorstK), Lines.N(one.WorstK), Lines.N(two.WorstK)]);
        rows.Add(["root sum of squares", Lines.N(raw.RootSumK), Lines.N(one.RootSumK), Lines.N(two.RootSumK)]);
        rows.Add(["95 of 100 draws within", Lines.N(raw.DrawnK), Lines.N(one.DrawnK), Lines.N(two.DrawnK)]);
        return new($"What can be wrong at {Lines.N(hot, "0")} °C, ± K", ["cause", "as built", "after a cold point", "after two points"], rows);
    }

    /// <summary>What each link of the chain may be off by.</summary>
    private static ChainLimits Limits(SensorChain chain, SheetChoices c)
    {
        var (wanted, type) = (chain.Wanted, Tolerance(chain.Wanted.Curve.Type));
        return new(wanted.OffsetV, wanted.DriftVPerK, c.Si("board-swing"), wanted.BiasA, c.Si("input-resistor"), wanted.Tolerance, wanted.ReferenceShare,
            c.Si("converter-error"), c.Si("cold-end-error"), type.Share, type.FixedK, c.Si("stray-volts"));
    }

    private static CoupleTolerance Tolerance(string type)
    {
        try
        {
            return CoupleTolerances.Find(type, 2);
        }
        catch (ArgumentOutOfRangeException)
        {
            return new CoupleTolerance(2.5, 0.0075, -200, 2000); // no class of its own: that of type K
        }
    }

    /// <summary>The pair that lies farthest from the curve, as it was read, where that is more than a loop may stay open; null: none does.</summary>
    private static (CalibrationPoint Point, double OffK)? Worst(SensorCalibration calibration, IReadOnlyList<CalibrationPoint> read, IReadOnlyList<CalibrationPoint> cleared)
    {
        var (point, offK) = read.Zip(cleared, (one, clear) => (one, Off: clear.ProbeC - calibration.AtC(Math.Clamp(clear.Count, calibration.FromCount, calibration.ToCount)))).MaxBy(one => Math.Abs(one.Off));
        return Math.Abs(offK) > CalibrationReadings.OpenLoopK ? (point, offK) : null;
    }

    private static (SheetSection Section, CalibrationCode? Code) Calibrated(SheetAsk ask, SensorChain chain, CodeNotes notes)
    {
        var c = ask.Choices;
        var board = new CalibrationConditions(chain.Wanted.ReferenceV, chain.Wanted.Bits, chain.Wanted.SupplyLeastV - chain.Wanted.HeadroomV, 25, chain.Wanted.ReferenceShare, c.Si("cold-end-error"));
        var lines = new Lines(ask);
        Checked<SensorCalibration> found;
        Checked<CalibrationReadings>? cleared = null;
        if (ask.Readings is { } points)
        {
            cleared = CalibrationReadings.Clear(points, ask.ProbeLagS);
            found = cleared.Then(readings => SensorCalibration.Fit(readings, chain.Wanted.Curve, ask.ReadUnder ?? board)).Then(one => ask.ReadUnder is null ? new(one) : one.MovedTo(board, ask.SetC));
            if (cleared.IsFine)
            {
                lines.Say("Readings", $"{Lines.N(points.Count)} pairs; lag of {Lines.N(cleared.Value.LagS)} s between probe and sensor taken out"
                    + (double.IsFinite(cleared.Value.GapK) ? $", heating and cooling then agree within {Lines.N(cleared.Value.GapK)} K" : ", one direction only: take a warm-up too to find a lag"));
            }
        }
        else
        {
            found = new(SensorCalibration.OfChain(chain, board, ErrorBudget.CombinedK(ErrorBudget.Lines(chain.Wanted.Curve, ask.SetC, 25, chain.Pair.Gain, chain.StepV, Limits(chain, c)))));
            lines.Say("Not calibrated", "the degrees are those of the chain as designed: heat, switch off, note count and probe while it cools, and make the sheet again with that calibration", warns: true);
        }

        var tabled = found.Then(one => CountTable.Fewest(one.AtC, (int)one.FromCount, (int)one.ToCount, c.Si("table-error")));
        if (!tabled.IsFine)
        {
            return (new SheetSection("calibration", "Calibration", lines.All) { Problems = tabled.Problems }, null);
        }

        var calibration = found.Value;
        var code = new CalibrationCode(calibration, tabled.Value, notes, c.Si("cold-end-least"), c.Si("cold-end-most"));
        lines.Say("Curve", calibration.Words);
        lines.Say("Range of the table", $"{Lines.N(tabled.Value.At[0])} to {Lines.N(tabled.Value.Last)} counts, {Lines.N(calibration.AtC(tabled.Value.At[0]), "0")} to {Lines.N(calibration.AtC(tabled.Value.Last), "0")} °C with the board at 25 °C; beyond it the code says so and guesses nothing");
        lines.Made("Band near the set point, ±", calibration.BandK(Math.Clamp(chain.Calibration(25).CountAt(ask.SetC), calibration.FromCount, calibration.ToCount)), Units.Kelvin, "holds 95 of 100 new readings", [c["reference"].Input, c["cold-end-error"].Input]);
        if (cleared is not null && ask.ReadUnder is null && Worst(calibration, ask.Readings!, cleared.Value.Points) is { } worst)
        {
            lines.Say("Pair that lies off", $"{Lines.N(worst.Point.Count)} counts, {Lines.N(worst.Point.ProbeC)} °C is {Lines.N(Math.Abs(worst.OffK), "0.#")} K {(worst.OffK > 0 ? "above" : "below")} the curve of all: read it again or leave it out, it widens the band of every degree", warns: true);
        }

        lines.Made("Table", tabled.Value.At.Count, Units.One, "fewest pieces that keep the bound at every count", [c["table-error"].Input], $"pieces; misses its law by at most {Lines.N(tabled.Value.WorstK, "0.000")} K at every count");
        lines.Made("Cold-end correction misses at most", code.ColdWorstK, Units.Kelvin, "straight correction against the law, over the range of cold ends", [c["cold-end-least"].Input, c["cold-end-most"].Input]);
        double fullV = Chemistry.IsIron(ask.Shelf[ask.Arrangement.Cell]) ? 3.6 : 4.2, emptyV = ask.Shelf.Value(ask.Arrangement.Cell, PartQuantities.CutoffVolts)?.Si ?? 3.0;
        double drift = calibration.DriftK(ask.SetC, board.ReferenceV, board.ReferenceV * emptyV / fullV);
        string follows = $"the same signal against a reference that fell from {Lines.N(fullV)} to {Lines.N(emptyV)} V a cell: never let the reference follow the cells";
        bool pinned = calibration.Physical is { } known && known.CountAt(ask.SetC) * fullV / emptyV >= (1 << board.Bits) - 1;
        if (pinned)
        {
            lines.Say("If the reference followed the cells, full to empty", "the reading would stand at the converter's end, " + follows);
        }
        else if (double.IsFinite(drift))
        {
            lines.Made("If the reference followed the cells, full to empty", drift, Units.Kelvin, "the same signal against the lower reference", [c["reference"].Input], "too hot shown, " + follows);
        }

        lines.Say("Holds under", $"reference {Lines.N(board.ReferenceV, "0.###")} V, {Lines.N(board.Bits)} bits, amplifier up to {Lines.N(board.CeilingV, "0.###")} V, cold end 25 °C");
        var at = calibration.Physical ?? chain.Calibration(25);
        lines.Say("Check on the real board", $"cold tip: {(at.CountAt(25) > chain.FloorCount ? $"{Lines.N(at.CountAt(25), "0")} counts" : $"at the floor of the chain, {Lines.N(chain.FloorCount, "0")} counts or so")} at 25 °C; hot: {(at.CountAt(ask.SetC) > 0 ? $"{Lines.N(at.CountAt(ask.SetC), "0")} counts" : "none, the converter stands at its floor,")} at {Lines.N(ask.SetC, "0")} °C");
        var rows = tabled.Value.At.Select((count, i) => (IReadOnlyList<string>)[Lines.N(count), Lines.N(tabled.Value.Starts[i] / 16.0), Lines.N(tabled.Value.Slopes[i])]).ToArray();
        return (new SheetSection("calibration", "Calibration", lines.All) { Table = new("Table of the code", ["from count", "°C", "slope, 1/16 °C a count × 4096"], rows) }, code);
    }
}

using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>Makes the whole build sheet of an arrangement.</summary>
public static class SheetMaker
{
    private const int BenchMs = 100;

    /// <summary>The sheet. What cannot be worked out stands in its section as a problem; the rest is there all the same.</summary>
    public static BuildSheet Make(SheetAsk ask)
    {
        if (ask.Arrangement.Lamp is not null)
        {
            return LampSheet.Make(ask);
        }

        var tool = ask.Builder.Build(ask.Builder.Middle);
        var notes = new CodeNotes($"{ask.StudyName}, arrangement {ask.Arrangement.Letter}", ask.State.Fingerprint[..Math.Min(12, ask.State.Fingerprint.Length)], ask.Date.Length > 0 ? ask.Date : "on no stated day",
            [$"Rests on {string.Join(", ", Runs(ask))}."]);
        var sensor = SensorPart.Of(ask, notes);
        var point = PowerSection.Point(ask, tool);
        var run = PlantRunner.Run(tool, new RunSettings { StepS = 0.5 });
        double heaterOhm = ask.Plant(Arrangements.PlantKey.HeaterOhms)!.Value.Si;
        double loadOhm = ask.Arrangement.StepUp is null ? heaterOhm + point.LoopOhm.Si : heaterOhm;
        double fullOnW = ask.Arrangement.StepUp is null ? point.FullA.Si * point.FullA.Si * heaterOhm : Math.Pow(ask.Plant(Arrangements.PlantKey.ModuleSet)?.Value.Si ?? 12, 2) / heaterOhm;
        var control = ControlSection.Of(ask, tool, sensor, loadOhm, fullOnW);
        var handle = HandleSection.Of(ask, tool, run);
        var safety = SafetySection.Of(ask, control.Numbers, point, run);
        double fuse = PowerDesign.RatingA(Physics.Fuse.LeastRatingA(point.MostA.Si, ask.Choices.Si("handle-air")));
        var parts = PartsSection.Of(ask, sensor.Chain, fuse);
        List<SheetFile> code = [.. sensor.Code?.Files ?? [], .. new ControlCode(control.Numbers, notes).Files, .. BenchCode.Files(Ceiling(control.Numbers, sensor), BenchMs, (int)Math.Ceiling((sensor.Window?.WaitS ?? 0.003) * 1e6), notes)];
        return new($"{ask.StudyName}: build sheet of {ask.Arrangement.Letter}, {ask.Arrangement.Name}", safety.Breaks, Untested(ask),
            [.. sensor.Sections, control.Section, PowerSection.Of(ask, tool, point), HandleSection.Board(ask, point), ChargeSection.Of(ask, tool), handle.Section, PartsSection.Section(ask, parts), safety.Section],
            code, parts, handle.Packed, handle.Drawing);
    }

    private static int Ceiling(ControlNumbers numbers, SensorPart sensor) =>
        sensor.Chain is { } chain ? Math.Min(chain.FullCount - 1, (int)chain.Calibration(25).CountAt(Math.Min(numbers.StopC, chain.Wanted.Curve.MaxC))) : numbers.HighCount;

    private static IEnumerable<string> Runs(SheetAsk ask) => ask.Builder.Inputs.SelectMany(input => input.Value.Origin.Leaves()).OfType<Origin.Fitted>().SelectMany(fitted => fitted.Runs.Select(run => run.Name))
        .Distinct().Order(StringComparer.Ordinal).DefaultIfEmpty("no run");

    /// <summary>Numbers of the plant that rest on a guess or a seller's word, and choices of the sheet that nobody set.</summary>
    internal static List<SheetLine> Untested(SheetAsk ask)
    {
        List<SheetLine> lines = [.. ask.Builder.Inputs.Where(input => input.Value.Origin.Weakest() is Origin.Assumed or Origin.Claimed)
            .OrderBy(input => input.Value.Origin.Weakest() is Origin.Claimed ? 1 : 0).Select(input => new SheetLine(input.Name, input.Value, input.Value.Origin.Word))];
        if (ask.Readings is null && ask.Arrangement.Lamp is null)
        {
            lines.Insert(0, new("Degrees of the sensor", null, "no calibration was taken: the chain as designed") { Warns = true });
        }

        lines.Add(new(ask.Arrangement.Lamp is null ? "Board, amplifier, charger, fuse" : "Charger, fuse, leads", null, $"{ask.Choices.All.Count(choice => !choice.Set)} of {ask.Choices.All.Count()} numbers of the board to be drawn are defaults of the trade; say those that your data sheets tell"));
        return lines;
    }
}

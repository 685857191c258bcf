using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>The build sheet of a lamp: no sensor, no calibration and no control, for there is nothing to hold at a temperature.</summary>
internal static class LampSheet
{
    private const string WhyNone = "the load is a lamp: its own driver holds the current, and nothing is held at a temperature. So there is no sensor to read, no chain to calibrate, no control to set and no code to write";

    public static BuildSheet Make(SheetAsk ask)
    {
        var tool = ask.Builder.Build(ask.Builder.Middle);
        var point = PowerSection.Point(ask, tool);
        var run = PlantRunner.Run(tool, new RunSettings { StepS = ask.Builder.StepS });
        var handle = HandleSection.Of(ask, tool, run);
        var safety = SafetySection.Of(ask, null, point, run);
        double fuse = PowerDesign.RatingA(Physics.Fuse.LeastRatingA(point.MostA.Si, ask.Choices.Si("handle-air")));
        var parts = PartsSection.Of(ask, null, fuse);
        return new($"{ask.StudyName}: build sheet of {ask.Arrangement.Letter}, {ask.Arrangement.Name}", safety.Breaks, SheetMaker.Untested(ask),
            [Lamp(ask, tool, run), Left(), PowerSection.Of(ask, tool, point), ChargeSection.Of(ask, tool), handle.Section, PartsSection.Section(ask, parts), safety.Section],
            [], parts, handle.Packed, handle.Drawing);
    }

    private static SheetSection Left()
    {
        return new("control", "Sensor, calibration and control", [new SheetLine("Left out", null, WhyNone)]);
    }

    private static SheetSection Lamp(SheetAsk ask, AssembledTool tool, PlantRun run)
    {
        var lines = new Lines(ask);
        var lamp = (LoadModel.Lamp)tool.Load;
        var look = LoopLook.Of(ask.Arrangement, ask.Shelf, 20);
        Origin predicted = new Origin.Predicted(ask.Arrangement.Id, ask.State, [.. ask.Builder.Inputs.Select(input => new Input(input.Name, input.Value))]);
        lines.Say("Lamp", ask.Shelf[ask.Arrangement.Load].Name);
        Number(PlantKey.LampAmps, "Its driver holds");
        Number(PlantKey.LampLeastVolts, "At no less than");
        if (ask.Shelf.Value(ask.Arrangement.Load, PartQuantities.MostInputVolts) is { } most)
        {
            lines.Add("And stands at most", most, look.Full.LoadV is { } full && full.Si > most.Si ? "less than a full pack puts on it" : "", look.Full.LoadV is { } put && put.Si > most.Si);
        }

        if (look.Full.LoadV is { } fullV && look.Empty.LoadV is { } emptyV)
        {
            lines.Add("Volts at the lamp, full pack", fullV);
            lines.Add("Volts at the lamp, pack at its cut-off", emptyV, emptyV.Si < lamp.LeastV ? "less than its driver needs: it grows weaker before the pack is empty" : "its driver holds the current to the end", emptyV.Si < lamp.LeastV);
            double driverW = Math.Max(0, fullV.Si - lamp.ForwardV) * lamp.SetA;
            Input[] from = [new("volts at the lamp", fullV), new("current", look.Full.LoadA!), ask.Plant(PlantKey.LampForwardVolts)!];
            lines.Made("Heat of its driver, full pack", driverW, Units.Watt, "(volts at the lamp less those of the light)·current, where the driver is linear", from, "let it lie on the head's metal, away from the cells");
        }

        lines.Add("Full light from full cells", Estimate.Exact(run.FullLightS / 3600, Units.Hour, predicted), run.FullLightS < run.RunTimeS ? $"then weaker until {Lines.N(run.RunTimeS / 3600)} h" : "until it ends");
        double head = run.HighestK[0] - Units.ZeroCelsiusK;
        var stands = ask.Shelf.Value(ask.Arrangement.Load, PartQuantities.HighestTemperature);
        bool over = stands is not null && run.HighestK[0] > stands.Si;
        lines.Add("Its head, highest", Estimate.Exact(head, Units.Celsius, predicted), stands is null ? "what it stands is not stated: look into its sheet" : $"it stands {Lines.N(stands.In(Units.Celsius).Value, "0")} °C, {stands.Origin.Word}", over);
        return new("lamp", "Lamp", lines.All);

        void Number(PlantKey key, string name)
        {
            if (ask.Plant(key) is { } input)
            {
                lines.Add(name, input.Value, input.Value.Origin.Word);
            }
        }
    }
}

using Heatwright.Physics;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>Control constants with their checks, and the firmware's numbers.</summary>
internal static class ControlSection
{
    /// <summary>After this long at full power the reading must have risen: a quarter of the predicted rise, our choice.</summary>
    private const double RiseSamples = 20;

    public static (SheetSection Section, ControlDesign Design, ControlNumbers Numbers) Of(SheetAsk ask, AssembledTool tool, SensorPart sensor, double loadOhm, double fullOnW)
    {
        var c = ask.Choices;
        double mostDuty = Math.Min(ask.Arrangement.DutyCeiling, sensor.Window is { MostDuty: > 0 } window ? window.MostDuty : 1);
        var design = ControlDesign.Of(tool, ask.SetC, c.Si("frame"), mostDuty, c.Si("band"), fullOnW,
            rules => rules with { GainWPerK = ask.Arrangement.GainWPerK ?? rules.GainWPerK, IntegralS = ask.Arrangement.ResetS ?? rules.IntegralS });
        var numbers = Numbers(ask, tool, sensor, design, mostDuty, loadOhm, fullOnW);
        var lines = new Lines(ask);

        // What is a part of another number is no number of its own in a sum.
        bool within = ask.Builder.LinkIsInLoss;
        var link = ask.Plant(Arrangements.PlantKey.GripLink);
        string told = within && link is not null ? $"what goes into the grip, {Display.Rounded(link.Value)} as assumed, is within its loss: the warm-up read all that leaves the end" : "";
        Input[] from = [.. new[] { ask.Plant(Arrangements.PlantKey.EndHeat), ask.Plant(Arrangements.PlantKey.EndLoss), ask.Plant(Arrangements.PlantKey.EndRadiating), within ? null : link, ask.Plant(Arrangements.PlantKey.SensorLag) }.OfType<Input>(), c["frame"].Input];
        lines.Made("Set point", ask.SetC, Units.Celsius, "target of the brief and 10 K above it, as the prediction aims", []);
        lines.Made("Tool near it: resistance to air", design.Model.KelvinPerWatt, Units.KelvinPerWatt, "slope of all losses at the set point", from, told);
        lines.Made("time constant", design.Model.Lags.SlowS, Units.Second, "heat capacity times resistance, half of the sensor's lag added", from);
        lines.Made("dead time", design.Model.Lags.DelayS, Units.Second, "half of the sensor's lag, half a sample, half a frame", from);
        lines.Made("Sample period", design.SampleS, Units.Second, "a fifth of the dead time, on a round figure, at least a frame", from);
        lines.Made("Gain", design.Settings.GainWPerK, Units.WattPerKelvin, ask.Arrangement.GainWPerK is null ? "τ/(k(τ_c + θ)) with τ_c = θ [skogestad-2003]" : "as the arrangement states it", from);
        lines.Made("Integral time", design.Settings.IntegralS, Units.Second, ask.Arrangement.ResetS is null ? "min(τ, 4(τ_c + θ)) [skogestad-2003]" : "as the arrangement states it", from);
        lines.Made("Integral starts with", design.Model.HoldW, Units.Watt, "power that holds the set point", from);
        lines.Made("Gain may grow by", design.Margins.GainMargin, Units.One, "gain margin of the loop", from, $"phase margin {Lines.N(design.Margins.PhaseMarginDeg, "0")}°", design.Margins.GainMargin < 2);
        lines.Made("Largest duty", mostDuty, Units.One, "the smaller of the arrangement's ceiling and what the reading window leaves", [c["frame"].Input], $"of the controller: {Lines.N(ask.Arrangement.DutyCeiling)} is the arrangement's ceiling{(sensor.Window is { MostDuty: > 0 } leaves ? $", {Lines.N(leaves.MostDuty)} what the reading leaves" : "")}");
        WarmUps(ask, tool, design, mostDuty, from, lines);
        lines.Say("On-off instead", design.Swing is not { } swing ? "the pack cannot hold the set point with room to spare: on-off would be on all the time"
            : $"swings {Lines.N(swing.HighC - swing.LowC, "0.#")} K in {Lines.N(swing.PeriodS, "0.#")} s; {(design.OnOffIsEnough ? "good enough" : "not good enough")} for the {Lines.N(design.AllowedK)} K allowed; the swing is dead time, not the band");
        lines.Made("Relay test should show: swing", 2 * design.Relay.AmplitudeK, Units.Kelvin, "answer of the tool to half the holding power up and down, peak to peak", from, $"period {Lines.N(design.Relay.PeriodS, "0.#")} s; another one means another dead time: tune again");
        var rows = design.Cases.Select(one => (IReadOnlyList<string>)[one.Name, Or(one.TargetS), Or(one.ReadyS), one.OvershootK > -1 ? Lines.N(Math.Max(0, one.OvershootK)) : "not reached", Or(one.SettledS), Or(one.RippleK), Or(one.DroopK), Or(one.RecoveredS)]).ToArray();
        return (new SheetSection("control", "Control", lines.All) { Table = new("The loop in the coupled simulation", ["case", $"end at {Lines.N(ask.Work.TargetC)} °C after, s", $"reading at {Lines.N(ask.SetC - 5)} °C after, s", "overshoot, K", "settled ±2 K after, s", "ripple, K", "deepest droop of the end, K", "back within ±2 K after the work began, s"], rows) }, design, numbers);
    }

    /// <summary>The warm-up that counts for the promise, with this controller, beside the one that was predicted; and why the table's readings come later.</summary>
    private static void WarmUps(SheetAsk ask, AssembledTool tool, ControlDesign design, double mostDuty, Input[] from, Lines lines)
    {
        const double foreseen = 600;
        string target = $"{Lines.N(ask.Work.TargetC)} °C", set = $"{Lines.N(ask.SetC - 5)} °C";
        double predicted = PlantRunner.Run(tool with { Work = null, Duty = null, MaxS = foreseen }, new RunSettings { StepS = ask.Builder.StepS }).TargetS;
        foreach (var one in design.Cases.Where(one => one.Name.EndsWith("no work", StringComparison.Ordinal)))
        {
            string pack = one.Name[..one.Name.IndexOf(',', StringComparison.Ordinal)];
            bool full = pack.StartsWith("full", StringComparison.Ordinal), late = ask.WarmUp is { } promise && !(one.TargetS <= promise.WithinS);
            string counts = ask.WarmUp is not { } asked ? "the brief promises no warm-up" : full ? $"this counts for the promise '{asked.Words}'" : $"the promise '{asked.Words}' is reckoned on a full pack";
            string beside = full && double.IsFinite(predicted) ? $"; predicted was {Lines.N(predicted)} s with a gain of {Lines.N(Gain(tool), "0.###")} W/K and a duty of up to {Lines.N(MostDuty(tool))}, here {Lines.N(design.Settings.GainWPerK, "0.###")} W/K and {Lines.N(mostDuty)}" : "";
            string caution = !late ? "" : full ? $". It misses the promise: try a higher gain, a sensor that lags less or a higher duty, or promise {Lines.N(Math.Ceiling(double.IsFinite(one.TargetS) ? one.TargetS : foreseen))} s or more"
                : ". So empty it takes longer than that: say so to whoever uses it, or promise it for a full pack only";
            lines.Made($"{target} at the end, {pack}, this controller", one.TargetS, Units.Second, "coupled simulation with the controller of this sheet, from air", from, $"{(double.IsFinite(one.TargetS) ? "" : "not reached in 4 min; ")}{counts}{beside}{caution}", late);
        }

        if (design.Cases is [var first, ..] && double.IsFinite(first.ReadyS))
        {
            double lagS = tool.Network.SensorLagS, above = ask.SetC - 5 - ask.Work.TargetC;
            string[] why = [.. new[] { lagS > 0 ? $"the reading is {Lines.N(lagS)} s behind the end" : "", above != 0 ? $"{set} is {Lines.N(Math.Abs(above))} K {(above > 0 ? "above" : "below")} the target" : "" }.Where(words => words.Length > 0)];
            lines.Say($"Reading at {set}, {first.Name[..first.Name.IndexOf(',', StringComparison.Ordinal)]}", $"after {Lines.N(first.ReadyS)} s, as the table has it{(why.Length > 0 ? ": " : "")}{string.Join(", and ", why)}; it tells how the loop settles, and is no promise");
        }
    }

    private static double Gain(AssembledTool tool) => tool.Controller is ControllerModel.Pi pi ? pi.GainWPerK : double.NaN;

    private static double MostDuty(AssembledTool tool) => tool.Controller is ControllerModel.Pi pi ? pi.MaxDuty : double.NaN;

    private static string Or(double value) => double.IsFinite(value) ? Lines.N(value) : "—";

    private static ControlNumbers Numbers(SheetAsk ask, AssembledTool tool, SensorPart sensor, ControlDesign design, double mostDuty, double loadOhm, double fullOnW)
    {
        var c = ask.Choices;
        double rate = fullOnW * mostDuty / tool.Network.Nodes[tool.Network.HeaterNode].CapacityJPerK;
        double riseS = Math.Max(RiseSamples * design.SampleS, 4 * design.Model.Lags.DelayS);
        double stopC = Math.Min(ask.SetC + c.Si("over-temperature"), sensor.Chain is { } known ? known.SaturatesC(25) - 5 : double.PositiveInfinity);
        return new()
        {
            SetC = ask.SetC,
            SampleS = design.SampleS,
            GainWPerK = design.Settings.GainWPerK,
            IntegralS = design.Settings.IntegralS,
            HoldW = design.Model.HoldW,
            LoadOhm = loadOhm,
            MostW = Math.Max(1, Math.Ceiling(fullOnW * mostDuty)),
            MostDuty = mostDuty,
            CutoffV = tool.CutoffV,
            StopC = stopC,
            IdleS = c.Si("idle-off"),
            WaitS = sensor.Window?.WaitS ?? 0,
            ReadS = sensor.Window?.ReadS ?? 0,
            LowCount = sensor.Chain is { } chain ? (int)Math.Max(1, Math.Floor(chain.FloorCount * 0.5)) : 1,
            HighCount = sensor.Chain is { } full ? full.FullCount - Math.Max(2, full.FullCount / 256) : 4000,
            RiseS = riseS,
            RiseK = Math.Clamp(0.25 * rate * riseS / 4, 1, 20),
        };
    }
}

using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>Says what the numbers say: every number in a sentence comes from the prediction, every noun from the study.</summary>
internal sealed class Sentences(Brief brief, Prediction prediction)
{
    private string End => brief.WorkingEnd;

    private Trace Trace => prediction.Middle.Trace;

    /// <summary>Time in the unit a maker says it in.</summary>
    public static string Time(double seconds) => !double.IsFinite(seconds) ? "never"
        : seconds < 90 ? Say(seconds, "0.#") + " s" : seconds < 5400 ? Say(seconds / 60, "0.#") + " min" : Say(seconds / 3600, "0.0") + " h";

    /// <summary>A number in invariant text.</summary>
    public static string Say(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    /// <summary>An input value at a flip, in its own unit.</summary>
    public static string Input(PlantInput input, double si)
    {
        var unit = input.Value.Unit == Units.Ohm && si < 1 ? Units.Milliohm : input.Value.Unit;
        return $"{Display.Significant(unit.FromSi(si), 3)} {unit.Symbol}".TrimEnd();
    }

    /// <summary>How the warm-up went.</summary>
    public string WarmUp(Outcome middle)
    {
        double target = brief.Work.TargetC;
        int early = Index(Math.Min(0.6 * (double.IsFinite(middle.WarmUpS) ? middle.WarmUpS : 20), prediction.Middle.RunTimeS)); // while it still heats with all it has
        double watts = Trace.LoadW[early];
        string power = $"the heater gets {Say(watts, "0.0")} W ({Say(Trace.PackA[early], "0.0")} A from the pack at {Say(Trace.TerminalV[early], "0.00")} V)";
        return double.IsFinite(middle.WarmUpS)
            ? $"the {End} is at {Say(target, "0")} °C after {Time(middle.WarmUpS)}: {power}"
            : middle.Stop is StopReason.Tripped or StopReason.LockedOut or StopReason.Collapsed ? $"the {End} never gets to {Say(target, "0")} °C: {(middle.RunTimeS > 0 ? $"after {Time(middle.RunTimeS)}" : "at once")} {Ended(middle)}"
            : $"the {End} never gets to {Say(target, "0")} °C and stays at {Say(Trace.NodesK[0].Where(double.IsFinite).Max() - 273.15, "0")} °C: {power}";
    }

    /// <summary>How many pieces, and what ended them.</summary>
    public string Pieces(Outcome middle)
    {
        string piece = Plural(middle.Pieces);
        var missed = prediction.Middle.Events.FirstOrDefault(happened => happened.What == Happening.WorkMissed);

        // A piece that the end of the run broke off was not too slow: what ended the run is the reason.
        return missed.What == Happening.WorkMissed && missed.AtS < prediction.Middle.RunTimeS
            ? $"{piece}, then at {Time(missed.AtS)} with {Left(missed.AtS)} % of the charge left one takes longer than {Say(brief.Work.ForS, "0.#")} s: {Why(missed.AtS)}"
            : $"{piece} until {Time(middle.RunTimeS)}, then {Ended(middle)}";
    }

    /// <summary>How long a lamp gives its full light, and what ends that.</summary>
    public string FullLight(Outcome middle)
    {
        double setA = prediction.Builder.Inputs[prediction.Builder.Place(PlantKey.LampAmps)].Value.Si;
        string full = $"the driver holds {Say(setA, "0.00")} A for {Time(middle.FullLightS)}";
        if (middle.FullLightS >= middle.RunTimeS)
        {
            return $"{full}, then {Ended(middle)}";
        }

        int at = Index(middle.FullLightS);
        string volts = $"the pack stands at {Say(Trace.TerminalV[at], "0.00")} V with {Left(middle.FullLightS)} % of the charge left";
        return middle.FullLightS <= 0 ? $"the driver never holds {Say(setA, "0.00")} A: from the start {volts}" : $"{full}, until {volts}; it goes on weaker until {Time(middle.RunTimeS)}, when {Ended(middle)}";
    }

    /// <summary>How long the working end takes to come back after a piece, at its worst.</summary>
    public string Recovery(Outcome middle) => double.IsNaN(middle.RecoveryS) ? $"the {End} never comes to work"
        : double.IsInfinity(middle.RecoveryS) ? $"after a {brief.Piece} the {End} is not back at {Say(brief.Work.TargetC, "0")} °C when the next comes"
        : middle.RecoveryS <= 0 ? $"no {brief.Piece} takes the {End} below {Say(brief.Work.TargetC, "0")} °C"
        : $"at its worst the {End} is back at {Say(brief.Work.TargetC, "0")} °C {Time(middle.RecoveryS)} after a {brief.Piece}";

    /// <summary>How far the working end falls at work.</summary>
    public string Droop(Outcome middle) => double.IsNaN(middle.LowestAtWorkC) ? $"the {End} never comes to work"
        : $"at work the {End} falls to {Say(middle.LowestAtWorkC, "0")} °C, {Say(brief.Work.TargetC - middle.LowestAtWorkC, "0")} K under its target";

    /// <summary>Current of a cell beside what it stands.</summary>
    public string CellCurrent(Outcome middle, Shelf shelf)
    {
        string most = $"{Say(middle.HighestA / prediction.Arrangement.Parallel, "0.0")} A at most through one cell";
        return shelf.Value(prediction.Arrangement.Cell, Parts.PartQuantities.RatedCurrent) is { } rated ? $"{most}; {Display.Rounded(rated)} is {rated.Origin.Word}" : most;
    }

    /// <summary>What the protection lets through.</summary>
    public string Trip(Shelf shelf) => prediction.Arrangement.Supervision is { } board && shelf.Value(board, Parts.PartQuantities.TripCurrent) is { } trip
        ? $"the protection opens at {Display.Rounded(trip)} ({trip.Origin.Word})" : "no trip current is known";

    /// <summary>Why the run ended.</summary>
    public string Ended(Outcome middle) => middle.Stop switch
    {
        StopReason.CutOff => $"the pack is at its cut-off of {Say(prediction.Builder.Build(prediction.Builder.Middle).CutoffV, "0.0#")} V with {Say(100 * middle.ChargeLeft, "0")} % of the charge left",
        StopReason.Empty => "the charge is used up",
        StopReason.Tripped => $"the protection opens at {Say(prediction.Middle.HighestA, "0.0")} A",
        StopReason.LockedOut => $"the module's input falls to its lock-out with {Say(100 * middle.ChargeLeft, "0")} % of the charge left; it hiccups, and what it gives then is not known",
        StopReason.Collapsed => $"the pack cannot carry the load any more with {Say(100 * middle.ChargeLeft, "0")} % of the charge left; the volts collapse",
        StopReason.CellCutOff => $"one cell is at its cut-off with {Say(100 * middle.ChargeLeft, "0")} % of the charge left",
        StopReason.BrownOut => $"the pack sags so far that the controller resets, with {Say(100 * middle.ChargeLeft, "0")} % of the charge left",
        StopReason.WorkDone => "all the work is done",
        StopReason.LightGone => $"the light is under a tenth, with {Say(100 * middle.ChargeLeft, "0")} % of the charge left",
        _ => "the time is over",
    };

    /// <summary>What limits the power at a time.</summary>
    public string Why(double atS)
    {
        int i = Index(atS);
        double volts = Trace.TerminalV[i];
        string state = $"{Say(Trace.LoadW[i], "0.0")} W reach the {(prediction.Arrangement.Lamp is null ? "heater" : "lamp")}, the pack stands at {Say(volts, "0.00")} V and {Say(Trace.PackA[i], "0.0")} A";
        string region = Trace.Regions[i] switch
        {
            Region.SourceLimited => "the step-up asks more than cell and leads can pass, its output collapses while its input current climbs",
            Region.CurrentLimited => "the step-up is at its current limit",
            Region.DutyLimited => "the step-up is at the end of its duty",
            Region.LockedOut => "the step-up's input is at its lock-out",
            Region.Collapsed => "the pack cannot carry the load, the volts collapse",
            Region.PassThrough => "the step-up only passes its input through",
            _ when prediction.Arrangement.Lamp is not null => "the lamp takes what its driver lets through",
            _ => Trace.Duty[i] > 0.9 * prediction.Arrangement.DutyCeiling ? "the heater is on all it may" : "the controller holds back",
        };
        return $"{region}; {state}";
    }

    /// <summary>First time the path left its regulated region for good, or NaN.</summary>
    public string RegionStory()
    {
        foreach (var happened in prediction.Middle.Events)
        {
            if (happened.What == Happening.RegionChanged && happened.Region is Region.SourceLimited or Region.CurrentLimited or Region.DutyLimited or Region.PassThrough)
            {
                return $"from {Time(happened.AtS)} on, with {Left(happened.AtS)} % of the charge left, {Why(happened.AtS + 1)}";
            }
        }

        return "";
    }

    /// <summary>A count with the brief's own word for a piece.</summary>
    public string Plural(int count) => $"{count.ToString(CultureInfo.InvariantCulture)} {brief.Piece}{(count == 1 ? "" : "s")}";

    private string Left(double atS) => Say(100 * Trace.ChargeLeft[Index(atS)], "0");

    private int Index(double atS)
    {
        int last = Math.Max(0, Trace.Count - 1);
        for (int i = 0; i <= last; i++)
        {
            if (Trace.TimesS[i] >= atS)
            {
                return i;
            }
        }

        return last;
    }
}

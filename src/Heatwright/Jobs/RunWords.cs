using System.Globalization;
using Heatwright.Plant;

namespace Heatwright.Jobs;

/// <summary>Regions, events and ends of a run in words.</summary>
public static class RunWords
{
    /// <summary>A number in one spelling everywhere.</summary>
    public static string Number(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    /// <summary>A time as a maker reads it: seconds up to two minutes, then minutes, from two hours on hours.</summary>
    /// <param name="seconds">s; 0 or more.</param>
    public static string Time(double seconds)
    {
        var (factor, unit) = TimeScale(seconds);
        return $"{Number(seconds / factor, factor == 1 ? "0.0" : factor == 60 ? "0.0" : "0.00")} {unit}";
    }

    /// <summary>Seconds of one of its unit, and the unit in which a time of that size is read.</summary>
    /// <param name="seconds">s.</param>
    public static (double Factor, string Unit) TimeScale(double seconds) => Math.Abs(seconds) < 120 ? (1, "s") : Math.Abs(seconds) < 7200 ? (60, "min") : (3600, "h");

    /// <summary>An instant of a run as a clock shows it: 12.30 s, 5 min 07 s, 2 h 03 min.</summary>
    /// <param name="seconds">s; 0 or more.</param>
    public static string Instant(double seconds)
    {
        double whole = Math.Round(seconds);
        return seconds < 120 ? $"{Number(seconds, "0.00")} s"
            : whole < 7200 ? $"{Number(Math.Floor(whole / 60), "0")} min {Number(whole % 60, "00")} s"
            : $"{Number(Math.Floor(whole / 3600), "0")} h {Number(Math.Floor(whole % 3600 / 60), "00")} min";
    }

    /// <summary>Why a run ended, as files write it.</summary>
    public static string Of(StopReason stop) => stop switch
    {
        StopReason.CutOff => "cut-off",
        StopReason.Empty => "empty",
        StopReason.Tripped => "tripped",
        StopReason.LockedOut => "locked-out",
        StopReason.WorkDone => "work-done",
        StopReason.RecordOver => "record-over",
        StopReason.Collapsed => "collapsed",
        StopReason.CellCutOff => "cell-cut-off",
        StopReason.BrownOut => "brown-out",
        StopReason.Charged => "charged",
        StopReason.CellFull => "cell-full",
        StopReason.LightGone => "light-gone",
        _ => "time-over",
    };

    /// <summary>A region, as files write it.</summary>
    public static string Of(Region region) => region switch
    {
        Region.Regulated => "regulated",
        Region.Direct => "direct",
        Region.DutyLimited => "duty-limited",
        Region.CurrentLimited => "current-limited",
        Region.SourceLimited => "source-limited",
        Region.PassThrough => "pass-through",
        Region.LockedOut => "locked-out",
        Region.Collapsed => "collapsed",
        Region.ChargeCurrent => "charging at set current",
        Region.ChargeFoldedBack => "charging held back by heat",
        Region.ChargeVolts => "charging at set volts",
        _ => "tripped",
    };

    /// <summary>What a region means, in a maker's words.</summary>
    public static string Means(Region region) => region switch
    {
        Region.Regulated => "the module holds its set volts",
        Region.Direct => "the pack stands straight on the load",
        Region.DutyLimited => "the module is at the end of its duty",
        Region.CurrentLimited => "the module is at its current limit",
        Region.SourceLimited => "the module asks more than cells and leads can pass; its output collapses",
        Region.PassThrough => "the module only passes its input through",
        Region.LockedOut => "the module's input is at its lock-out",
        Region.Collapsed => "the pack cannot carry the load; the volts collapse",
        _ => "the protection has opened",
    };

    /// <summary>An event, as files write it.</summary>
    public static string Of(PlantEvent happened, StopReason stop) => happened.What switch
    {
        Happening.TargetReached => "target reached",
        Happening.RegionChanged => $"region {Of(happened.Region)}",
        Happening.Saturated => "controller asks for more than there is",
        Happening.Unsaturated => "controller has what it asks for",
        Happening.SwitchedOn => "switched on",
        Happening.SwitchedOff => "switched off",
        Happening.BlockBegins => "next block of the duty",
        Happening.WorkStarts => "work starts",
        Happening.WorkEnds => "work ends",
        Happening.WorkMissed => "work not done in its time",
        Happening.Crossed => happened.Name,
        Happening.LightFalls => "light falls",
        _ => Of(stop),
    };

    /// <summary>An event for people: a region in a maker's words.</summary>
    /// <param name="name">As files write it.</param>
    public static string Spoken(string name) => Enum.GetValues<Region>().FirstOrDefault(region => name == $"region {Of(region)}", (Region)(-1)) is >= 0 and var found ? Means(found) : name;

    /// <summary>Why the run ended, in a sentence.</summary>
    public static string Because(ToolPrediction of)
    {
        var (run, tool) = (of.Run, of.Tool);
        return run.Stop switch
        {
            StopReason.CutOff => $"the pack falls to its cut-off of {Number(tool.CutoffV, "0.###")} V{(tool.CutoffOnlyWhileOn ? " under load" : "")}.",
            StopReason.Empty => "the charge is used up.",
            StopReason.Tripped => $"{Number(run.HighestA, "0.##")} A pass what the protection lets through, {Number(tool.Pack!.TripA, "0.##")} A.",
            StopReason.LockedOut => "the module's input falls to its lock-out.",
            StopReason.WorkDone => "all the work is done.",
            StopReason.RecordOver => "the record is over.",
            StopReason.Collapsed => "the pack cannot carry the load any more: the volts collapse, and there is no steady point.",
            StopReason.CellCutOff => $"one cell falls to its cut-off of {Number(tool.Pack!.CellCutoffV, "0.###")} V.",
            StopReason.BrownOut => $"the pack sags to {Number(tool.BrownOutV, "0.###")} V, where the controller resets.",
            StopReason.Charged => $"the charge current has fallen to its end of {Number(tool.Charger!.EndA, "0.###")} A.",
            StopReason.CellFull => $"one cell reaches the most it may have, {Number(tool.Pack!.CellMostV, "0.###")} V.",
            StopReason.LightGone => "the lamp gives less than a tenth of its light, or its driver has switched itself off.",
            _ => $"{Number(tool.MaxS, "0.#")} s are over, the longest time that was asked for.",
        };
    }
}

using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>How a maker says what a requirement limits: the words that are written, other words that are understood, the unit a bare number has.</summary>
/// <param name="Quantity">What is limited.</param>
/// <param name="Phrase">As it is written.</param>
/// <param name="AlsoSaid">Pattern of the other spellings that are understood.</param>
/// <param name="Unit">Unit of a bare number.</param>
/// <param name="AtMost">True where a limit without 'at least' means 'at most'.</param>
internal sealed record PromiseWords(RequirementQuantity Quantity, string Phrase, string AlsoSaid, Unit Unit, bool AtMost)
{
    /// <summary>Every quantity that is said as 'PHRASE at most VALUE'. Longer phrases stand before those they contain.</summary>
    public static readonly IReadOnlyList<PromiseWords> All =
    [
        new(RequirementQuantity.StuckSwitchTemperature, "stuck-on temperature", "with the switch stuck on(?: it)?|stuck switch(?: temperature)?", Units.Celsius, true),
        new(RequirementQuantity.CellCurrent, "cell current", "current (?:of|through) (?:one|a) cell", Units.Ampere, true),
        new(RequirementQuantity.CellTemperature, "cells", "(?:no cell|the cells?|cell temperature|a cell)(?: gets?)?(?: hotter than)?", Units.Celsius, true),
        new(RequirementQuantity.GripTemperature, "grip", "(?:the )?(?:grip|handle)(?: temperature)?(?: stays)?(?: gets)?", Units.Celsius, true),
        new(RequirementQuantity.CaseTemperature, "case", "(?:the )?case(?: temperature)?(?: stays)?", Units.Celsius, true),
        new(RequirementQuantity.Steadiness, "droop at work", "(?:holds|steady|stays)(?: its temperature)? within|steadiness", Units.Kelvin, true),
        new(RequirementQuantity.RecoveryTime, "recovery time", "recovery|recovers(?: (?:with)?in)?|back to temperature(?: (?:with)?in)?", Units.Second, true),
        new(RequirementQuantity.WorkRate, "work rate", "pieces an hour", Units.PerHour, false),
        new(RequirementQuantity.CostAtHundred, "cost at 100", "price at 100|costs? for 100", Units.Money, true),
        new(RequirementQuantity.CostAtTen, "cost at 10", "price at 10|costs? for 10", Units.Money, true),
        new(RequirementQuantity.PartsCost, "parts cost", "all parts costs?|(?:it )?costs?(?: in parts)?|price", Units.Money, true),
        new(RequirementQuantity.ChargeTime, "charge time", "(?:it )?charges(?: (?:with)?in)?|(?:a usb source )?charges it(?: (?:with)?in)?", Units.Hour, true),
        new(RequirementQuantity.ChargerHeat, "charger heat", "heat of the charger", Units.Watt, true),
        new(RequirementQuantity.FullLightTime, "full light time", "(?:it )?(?:(?:gives|keeps|holds)(?: its)? )?full light(?: for| lasts)?|(?:time at )?full current(?: for)?", Units.Hour, false),
        new(RequirementQuantity.RunTime, "run time", "(?:it )?(?:runs|lasts)(?: for)?|runtime", Units.Minute, false),
        new(RequirementQuantity.StandByTime, "stand-by time", "stand-?by(?: life)?|(?:it )?stands by(?: for)?|standby", Units.Day, false),
        new(RequirementQuantity.InsideDiameter, "inside diameter", "(?:all )?fits (?:into |in )?a (?:handle|tube|grip)(?: of)?|bore", Units.Millimetre, true),
        new(RequirementQuantity.ToolLength, "length", "(?:it is )?long|tool length", Units.Millimetre, true),
        new(RequirementQuantity.Mass, "mass", "(?:it )?weighs|weight", Units.Gram, true),
        new(RequirementQuantity.ProtectionTrips, "protection trips", "trips(?: of the protection)?", Units.One, true),
        new(RequirementQuantity.ControllerVolts, "controller volts", "pack volts(?: under load)?|volts at the controller", Units.Volt, false),
        new(RequirementQuantity.EndTemperature, "working end", "(?:the )?working end(?: temperature)?(?: stays)?", Units.Celsius, true),
    ];
}

using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>One word that tells what a value near it is.</summary>
/// <param name="Near">The words.</param>
/// <param name="Quantity">What it then is; null: no claim of the part.</param>
internal sealed record NearWord(Regex Near, string? Quantity)
{
    public static NearWord Of(string near, string? quantity) => new(new Regex(near, RegexOptions.CultureInvariant | RegexOptions.Compiled), quantity);
}

/// <summary>What a value of one kind of unit is in the text of one kind of part: by the words near it, and where there are none.</summary>
/// <param name="Words">Tried in order, on the words before the value first, then on those behind it.</param>
/// <param name="Otherwise">What it is without such words; several: the maker is asked; none: it is left.</param>
internal sealed record NearWords(IReadOnlyList<NearWord> Words, IReadOnlyList<string> Otherwise);

/// <summary>The vocabulary of sellers: common practice, no source, in the words of the trade.</summary>
internal static class ListingWords
{
    private const string Discharge = "dis-?charg";
    private const string Charge = "(?<!dis)(?<!dis-)(?<!over-)(?<!over)charg";
    private const string Input = @"\bin(put)?\b|\bvin\b|supply";
    private const string Output = @"\bout(put)?\b|\bvout\b";
    private const string Most = @"up to|\bmax|at most|\blimit";
    private const string Least = @"\bmin(imum|\.|\b)|at least|\bfrom\b";
    private const string Nothing = "self.discharge|accuracy|tolerance|balanc|±$|±\\s*$|ripple|\\bover\\s*$";

    private static readonly NearWord Leave = NearWord.Of(Nothing, null);

    private static readonly Dictionary<(PartKind, string), NearWords> Table = new()
    {
        [(PartKind.Cell, "V")] = new(
            [
                Leave, NearWord.Of($"cut-?off|{Discharge}\\w* (to|below|end|cut)|not .*below|over-?discharg|empty|end of discharge", PartQuantities.CutoffVolts),
                NearWord.Of($"\\bfull|fully|{Charge}\\w* (to|end|volt)|limit|{Charge}e volt|over-?charg|max", PartQuantities.FullVolts),
            ],
            [PartQuantities.RatedVolts]),
        [(PartKind.Cell, "A")] = new(
            [Leave, NearWord.Of("peak|pulse|burst|surge", PartQuantities.PeakCurrent), NearWord.Of(Charge, PartQuantities.ChargeCurrent)],
            [PartQuantities.RatedCurrent]),
        [(PartKind.Cell, "Ah")] = new([Leave], [PartQuantities.Capacity]),
        [(PartKind.Cell, "Wh")] = new([Leave], [PartQuantities.CellEnergy]),
        [(PartKind.Cell, "1/h")] = new([Leave, NearWord.Of(Charge, null), NearWord.Of("burst|peak", null)], [PartQuantities.DischargeRate]),
        [(PartKind.Cell, "Ω")] = new([Leave], [PartQuantities.Ohms]),
        [(PartKind.StepUp, "V")] = new(
            [
                Leave, NearWord.Of("lock-?out|under-?volt|cuts? off", PartQuantities.LockOutVolts),

                // 'Up to 12 V' is how far it can be turned, not what it is turned to.
                NearWord.Of(Both(Most, Output), PartQuantities.MostOutputVolts), NearWord.Of(Both(Most, Input), PartQuantities.MostInputVolts), NearWord.Of(Both(Least, Output), PartQuantities.LeastOutputVolts),
                NearWord.Of("up to", PartQuantities.MostOutputVolts), NearWord.Of(Output, PartQuantities.SetVolts), NearWord.Of(Input, PartQuantities.LeastInputVolts), NearWord.Of(Most, PartQuantities.MostOutputVolts),
            ],
            [PartQuantities.SetVolts]),
        [(PartKind.StepUp, "A")] = new(
            [
                Leave, NearWord.Of("quiescent|no.?load|stand-?by|\\bidle", PartQuantities.Drain), NearWord.Of("switch", PartQuantities.SwitchCurrent),
                NearWord.Of(Input, PartQuantities.LimitCurrent), NearWord.Of(Output, PartQuantities.OutputCurrent),
            ],
            [PartQuantities.SwitchCurrent, PartQuantities.LimitCurrent, PartQuantities.OutputCurrent]),
        [(PartKind.StepUp, "W")] = new([Leave], [PartQuantities.RatedPower]),
        [(PartKind.StepUp, "%")] = new([Leave, NearWord.Of("efficien", PartQuantities.Efficiency)], []),
        [(PartKind.Heater, "V")] = new([Leave], [PartQuantities.RatedVolts]),
        [(PartKind.Heater, "A")] = new([Leave], [PartQuantities.RatedCurrent]),
        [(PartKind.Heater, "W")] = new([Leave], [PartQuantities.RatedPower]),
        [(PartKind.Heater, "Ω")] = new([Leave], [PartQuantities.Ohms]),
        [(PartKind.Heater, "Ω/m")] = new([Leave], [PartQuantities.OhmsPerLength]),
        [(PartKind.Heater, "°C")] = new([Leave], [PartQuantities.HighestTemperature]),
        [(PartKind.Heater, "mm²")] = new([Leave, NearWord.Of("lead|cable", null)], [PartQuantities.Section]),
        [(PartKind.Switch, "V")] = new(
            [
                Leave, NearWord.Of("\\(th\\)|threshold|vth", PartQuantities.ThresholdVolts), NearWord.Of("gate|vgs|trigger|drive|control|signal", PartQuantities.GateVolts),
            ],
            [PartQuantities.RatedVolts]),
        [(PartKind.Switch, "A")] = new([Leave, NearWord.Of("peak|pulse", PartQuantities.PeakCurrent)], [PartQuantities.RatedCurrent]),
        [(PartKind.Switch, "Ω")] = new([Leave], [PartQuantities.Ohms]),
        [(PartKind.Switch, "W")] = new([Leave], [PartQuantities.RatedPower]),
        [(PartKind.Supervision, "V")] = new(
            [
                Leave, NearWord.Of($"over-?discharg|{Discharge}\\w* (cut|volt|prot|below)|under-?volt|cut-?off", PartQuantities.CutoffVolts),
                NearWord.Of($"over-?charg|{Charge}|full", PartQuantities.FullVolts),
            ],
            [PartQuantities.RatedVolts]),
        [(PartKind.Supervision, "A")] = new(
            [
                Leave, NearWord.Of("trip|over-?current|cuts?\\b|cut-?off|short", PartQuantities.TripCurrent), NearWord.Of($"continuous|{Discharge}|rated|working|load", PartQuantities.RatedCurrent),
                NearWord.Of(Charge, PartQuantities.ChargeCurrent), NearWord.Of("quiescent|stand-?by|consum", PartQuantities.Drain),
            ],
            [PartQuantities.TripCurrent, PartQuantities.RatedCurrent]),
        [(PartKind.Supervision, "Ω")] = new([Leave], [PartQuantities.Ohms]),
        [(PartKind.Charger, "V")] = new(
            [Leave, NearWord.Of($"\\bend\\b|full|float|terminat|{Output}|charged? to", PartQuantities.FullVolts), NearWord.Of($"{Input}|usb|source", PartQuantities.RatedVolts)],
            [PartQuantities.RatedVolts, PartQuantities.FullVolts]),
        [(PartKind.Charger, "A")] = new([Leave, NearWord.Of("terminat|\\bend\\b|cut-?off|trickle", null)], [PartQuantities.ChargeCurrent]),
        [(PartKind.Leads, "V")] = new([Leave], [PartQuantities.RatedVolts]),
        [(PartKind.Leads, "A")] = new([Leave], [PartQuantities.RatedCurrent]),
        [(PartKind.Leads, "mm²")] = new([Leave], [PartQuantities.Section]),
        [(PartKind.Leads, "Ω")] = new([Leave], [PartQuantities.Ohms]),
        [(PartKind.Leads, "Ω/m")] = new([Leave], [PartQuantities.OhmsPerLength]),
        [(PartKind.Leads, "°C")] = new([Leave], [PartQuantities.HighestTemperature]),
        [(PartKind.Contacts, "A")] = new([Leave], [PartQuantities.RatedCurrent]),
        [(PartKind.Contacts, "Ω")] = new([Leave], [PartQuantities.Ohms]),
        [(PartKind.CutOut, "V")] = new([Leave], [PartQuantities.RatedVolts]),
        [(PartKind.CutOut, "A")] = new([Leave], [PartQuantities.RatedCurrent]),
        [(PartKind.CutOut, "°C")] = new([Leave, NearWord.Of("hold|max|limit", PartQuantities.HighestTemperature)], [PartQuantities.OpeningTemperature]),
        [(PartKind.Sensor, "Ω")] = new([Leave], [PartQuantities.Ohms]),
        [(PartKind.Sensor, "°C")] = new([Leave, NearWord.Of("\\bat\\b|@", null)], [PartQuantities.HighestTemperature]),
        [(PartKind.Sensor, "s")] = new([Leave, NearWord.Of("response|lag|time constant", PartQuantities.Lag)], []),
        [(PartKind.Controller, "V")] = new([Leave, NearWord.Of("logic|i/?o\\b|signal|level|\\bpins?\\b", null)], [PartQuantities.RatedVolts]),
        [(PartKind.Controller, "A")] = new([Leave, NearWord.Of("\\bpins?\\b|output|source|sink", null)], [PartQuantities.Drain]),
        [(PartKind.Lamp, "V")] = new(
            [Leave, NearWord.Of("forward|\\bvf\\b", PartQuantities.ForwardVolts), NearWord.Of("lock-?out|under-?volt|(cuts?|switch(es)?) off", PartQuantities.LockOutVolts), NearWord.Of("max|up to|limit", PartQuantities.MostInputVolts), NearWord.Of("min|least|from", PartQuantities.LeastInputVolts)],
            [PartQuantities.LeastInputVolts, PartQuantities.ForwardVolts]),
        [(PartKind.Lamp, "A")] = new([Leave, NearWord.Of("quiescent|stand-?by|\\bidle|when off|switched off", PartQuantities.Drain), NearWord.Of("peak|pulse", PartQuantities.PeakCurrent)], [PartQuantities.LoadCurrent]),
        [(PartKind.Lamp, "W")] = new([Leave], [PartQuantities.RatedPower]),
        [(PartKind.Lamp, "lm")] = new([Leave], [PartQuantities.LuminousFlux]),
        [(PartKind.Lamp, "°C")] = new([Leave], [PartQuantities.HighestTemperature]),
    };

    /// <summary>Two words that stand near one value, in either order.</summary>
    private static string Both(string one, string other) => $"^(?=.*({one}))(?=.*({other}))";

    /// <summary>Lengths: the same words for every part.</summary>
    private static readonly NearWord[] Lengths =
    [
        Leave, NearWord.Of("\\bwalls?\\b|pitch|\\bholes?\\b|thread|strip(ped)? length", null), NearWord.Of("\\b(leads?|wires?|cables?|tails?|pins?)\\b", null),
        NearWord.Of("ø|\\bdia|\\bouter\\b|\\bbore\\b|\\bbead\\b|\\bround\\b", PartQuantities.Diameter), NearWord.Of("thick", PartQuantities.Height),
        NearWord.Of("width|\\bwide\\b", PartQuantities.Width), NearWord.Of("height|\\bhigh\\b|\\btall\\b", PartQuantities.Height), NearWord.Of("length|\\blong\\b|\\broll\\b|spool", PartQuantities.Length),
    ];

    /// <summary>Lengths of leads: their own wire is no lead of something else.</summary>
    private static readonly NearWord[] LeadLengths = [.. Lengths.Where(word => word.Quantity is not null || word == Leave)];

    /// <summary>What a value of this unit may be in the text of this part; null: no such value belongs to it.</summary>
    public static NearWords? Of(PartKind kind, Unit unit)
    {
        if (unit.Dimension == Units.Kilogram.Dimension)
        {
            return new([Leave], [PartQuantities.Mass]);
        }

        if (unit.Measures(Units.Metre))
        {
            return kind == PartKind.Leads ? new(LeadLengths, [PartQuantities.Length]) : new(Lengths, []);
        }

        return Group(unit) is { } group ? Table.GetValueOrDefault((kind, group)) : null;
    }

    private static string? Group(Unit unit) => unit switch
    {
        { Symbol: "%" } => "%",
        _ when unit == Units.PerHour => "1/h",
        _ when unit.Measures(Units.Volt) => "V",
        _ when unit.Measures(Units.Ampere) => "A",
        _ when unit.Measures(Units.Watt) => "W",
        _ when unit.Measures(Units.Ohm) => "Ω",
        _ when unit.Measures(Units.OhmPerMetre) => "Ω/m",
        _ when unit.Measures(Units.AmpereHour) => "Ah",
        _ when unit.Measures(Units.WattHour) => "Wh",
        _ when unit.Measures(Units.Celsius) => "°C",
        _ when unit.Measures(Units.SquareMillimetre) => "mm²",
        _ when unit.Measures(Units.Second) => "s",
        _ when unit.Measures(Units.Lumen) => "lm",
        _ => null,
    };
}

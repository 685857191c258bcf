using System.Globalization;
using Heatwright.DemoTruth.Campaign;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>What a bench test finds is found under the name by which loops and predictions ask for it.</summary>
public sealed class AskedNamesTests
{
    private static readonly InstrumentCauses NoMeter = new([]);

    /// <summary>What else a card calls a quantity that a part should be known by.</summary>
    private static readonly (string Asked, string Found)[] OtherNames =
    [
        (PartQuantities.LinearLoss, "resistance to air"), (PartQuantities.GripLoss, "resistance to air"), (PartQuantities.GripHeatCapacity, "heat capacity"), (PartQuantities.Ohms, "ohms cold"),
        (PartQuantities.Ohms, "ohms at 4.0 V gate"), (PartQuantities.Ohms, "ohms after 10 s"), (PartQuantities.Drain, "standby amps"), (PartQuantities.LossFixed, "idle watts"),
    ];

    /// <summary>Kinds of part that a card's test is done on, by what it says.</summary>
    private static PartKind[] On(TrialCard card) => card.About switch
    {
        "a heater" or "a working end" => [PartKind.Heater],
        "a heater or a low-ohm part" => [PartKind.Heater, PartKind.Leads],
        "a contact, a holder, a switch or a lead" => [PartKind.Contacts, PartKind.Switch, PartKind.Leads, PartKind.Supervision],
        "a handle or case" => [PartKind.Handle],
        "a cell or pack" or "a cell" or "a cell, pack or supply" => [PartKind.Cell],
        "a tool that is off" => [PartKind.Controller],
        "a charger with its cell" => [PartKind.Charger],
        "a converter" or "a converter with its source" => [PartKind.StepUp],
        "a transistor switch" => [PartKind.Switch],
        "a lamp with its driver" => [PartKind.Lamp],
        "a two- or three-wire part without a paper" => [PartKind.Heater],
        _ => [],
    };

    public static TheoryData<PartKind, string, string> Claimed() =>
    [
        .. from card in TrialCard.All
           from kind in On(card)
           from need in PartNeeds.Of(kind)
           where need.Quantity != PartQuantities.LimitCurrent // told where an output gave way, which none of these benches lets happen
           where card.Finds.Any(found => found == need.Quantity || OtherNames.Contains((need.Quantity, found)))
           select (kind, card.Name, need.Quantity),
    ];

    [Theory, MemberData(nameof(Claimed))]
    public void What_a_part_needs_and_a_card_tells_is_found_under_its_name(PartKind kind, string card, string asked)
    {
        // A step of few rows tells no ohms after ten seconds on every bench: one of some does.
        var found = Enumerable.Range(0, 4).Select(number => PartBench.One(new(new("p"), kind, "p", kind == PartKind.Switch ? [new(PartQuantities.GateVolts, 4, "V", 0, "sheet", "")] : []), [Trial(BenchLaws.Quiet(card, 20261125, number))], NoMeter)).ToArray();
        Assert.True(found.Any(one => one.Find(asked) is { Si: > 0 }), string.Join("; ", found.Select(one => string.Join(", ", one.Findings.Select(finding => finding.Quantity).Concat(one.Problems.Select(problem => problem.ToString()))))));
    }

    [Fact]
    public void The_walk_meets_every_kind_of_part_that_a_trial_tells_something_needed_of() =>
        Assert.Superset(new HashSet<PartKind> { PartKind.Cell, PartKind.Heater, PartKind.Handle, PartKind.Switch, PartKind.Leads, PartKind.Contacts, PartKind.Supervision, PartKind.StepUp, PartKind.Controller, PartKind.Charger, PartKind.Lamp },
            Claimed().Select(row => row.Data.Item1).ToHashSet());

    private static Trial Trial(MadeUpTrial made)
    {
        var card = TrialCard.Find(made.Kind)!;
        int rows = made.Columns.Max(column => Math.Max(column.Values.Length, column.Words.Length));
        var run = new Run(new("r"), [.. made.Columns.Select(column => new Column(column.Name, card.Column(column.Name)!.IsWord ? "" : card.Column(column.Name)!.Unit, ""))],
            [.. Enumerable.Range(0, rows).Select(i => new Reading(i + 1, [.. made.Columns.Select(column => column.Words.Length > 0 ? column.Words[i] : double.IsNaN(column.Values[i]) ? "-" : column.Values[i].ToString(CultureInfo.InvariantCulture))]))])
        {
            Settings = made.Settings.Where(setting => setting.Name.Length > 0).ToDictionary(setting => setting.Name, setting => Units.Find(card.Settings.Single(one => one.Name == setting.Name).Unit) is var unit && unit!.IsLevel ? setting.Value : unit.ToSi(setting.Value), StringComparer.Ordinal),
        };
        return made.Kind == "pulse" ? new(new("t"), TrialKind.Pulse, new("p"), [run]) : new(new("t"), TrialKind.Bench, new("p"), [run]) { Card = made.Kind };
    }

    /// <summary>Marks of a stopwatch by hand: 22 W lift it by 91.5 K, which is 4.159 K/W; one over it is 0.2404 W/K. What is shared with its heat capacity stays shared: both follow the time constant and the rise.</summary>
    [Fact]
    public void A_loss_is_one_over_its_resistance_with_the_doubt_of_it()
    {
        double Mark(double s) => 22 + (91.5 * (1 - Math.Exp(-s / 341)));
        var run = new Run(new("m-1"), [new("degrees", "°C", ""), new("time", "s", ""), new("mark", "", "")],
            [.. new[] { 100.0, 250, 400 }.Select((s, i) => new Reading(i + 1, [Mark(s).ToString("0.0000", CultureInfo.InvariantCulture), s.ToString(CultureInfo.InvariantCulture), "at"])), new(4, ["113.5", "3000", "stuck"])])
        { Settings = new Dictionary<string, double> { ["air"] = 22, ["watts"] = 22 } };
        var rod = new Part(new("rod"), PartKind.Heater, "rod", []);
        var found = PartBench.One(rod, [new(new("m"), TrialKind.Bench, rod.Id, [run]) { Card = "warm-up-marks" }], NoMeter);
        var (resistance, loss, capacity) = (found.Find("resistance to air")!, found.Find(PartQuantities.LinearLoss)!, found.Find(PartQuantities.HeatCapacity)!);
        Assert.Equal(22 / 91.5, loss.Si, 1e-4);
        Assert.Equal(resistance.SiDoubt / resistance.Si, loss.SiDoubt / loss.Si, 1e-9);
        Assert.Equal(-Doubts.Correlation(resistance.Doubts, capacity.Doubts), Doubts.Correlation(loss.Doubts, capacity.Doubts), 1e-9);
        Assert.Equal(-1, Doubts.Correlation(resistance.Doubts, loss.Doubts), 1e-9);
        Assert.DoesNotContain(PartNeeds.Missing(rod, quantity => found.Find(quantity) is not null), need => need.Quantity is PartQuantities.LinearLoss or PartQuantities.HeatCapacity);
    }

    /// <summary>27 mV at 3 A and 9 mΩ at 4.5 V; with a second gate of 10 V and 5 mΩ the one that counts is that nearest to the stated gate volts, and where none are stated, the lowest.</summary>
    [Theory, InlineData(null, false, 0.009), InlineData(null, true, 0.009), InlineData(5.0, true, 0.009), InlineData(9.0, true, 0.005)]
    public void A_switch_has_the_ohms_of_its_gate(double? statedV, bool second, double? ohms)
    {
        (double Gate, double Ohm)[] gates = second ? [(4.5, 0.009), (10, 0.005)] : [(4.5, 0.009)];
        var rows = gates.SelectMany(gate => new[] { 3.0, 5 }.Select(amps => new[] { gate.Gate, amps, gate.Ohm * amps })).Select((row, i) => new Reading(i + 1, [.. row.Select(value => value.ToString("0.0000", CultureInfo.InvariantCulture))]));
        var mos = new Part(new("mos"), PartKind.Switch, "mos", statedV is { } volts ? [new(PartQuantities.GateVolts, volts, "V", 0, "sheet", "")] : []);
        var found = PartBench.One(mos, [new(new("s"), TrialKind.Bench, mos.Id, [new(new("s-1"), [new("gate volts", "V", ""), new("amps", "A", ""), new("drop", "V", "")], [.. rows])]) { Card = "switch-drop" }], NoMeter);
        Assert.Equal(second && statedV is null ? 1 : 0, found.Remarks.Count(remark => remark.Words.StartsWith("Its ohms are those at 4.5 V gate, the lowest that were read", StringComparison.Ordinal)));
        Assert.Equal(ohms, found.Find(PartQuantities.Ohms) is { } told ? Math.Round(told.Si, 6) : null);
    }
}

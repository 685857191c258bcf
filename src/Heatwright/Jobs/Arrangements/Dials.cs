using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>Everything about an arrangement that can be tried otherwise, in the order of the work.</summary>
public static class Dials
{
    /// <summary>Heading of the counts.</summary>
    public const string Pack = "Pack and duty";

    /// <summary>Heading of the places.</summary>
    public const string PartsOfIt = "Parts";

    /// <summary>Heading of ohms, volts, amps.</summary>
    public const string Current = "Along the current";

    /// <summary>Heading of the thermal numbers.</summary>
    public const string Heat = "Heat";

    /// <summary>Heading of the controller's constants.</summary>
    public const string Controller = "Controller";

    /// <summary>Heading of the values of the brief.</summary>
    public const string Work = "Work, for all arrangements";

    /// <summary>Heading of the limits of the brief.</summary>
    public const string Limits = "Limits of the brief, for all arrangements";

    /// <summary>Heading of what else is known of the parts.</summary>
    public const string Others = "Other values of the parts";

    /// <summary>The touches follow the cells in series where nobody says how many.</summary>
    internal const string Touches = "touches";

    private const int Steps = 200, MostCells = 8;

    private static readonly HashSet<PlantKey> Thermal =
    [
        PlantKey.CellHeat, PlantKey.CellToGrip, PlantKey.EndHeat, PlantKey.EndLoss, PlantKey.EndRadiating, PlantKey.SensorLag, PlantKey.GripLink, PlantKey.GripHeat, PlantKey.GripLoss, PlantKey.HeadHeat, PlantKey.HeadLoss,
    ];

    /// <summary>Values that nothing works without: nought is none.</summary>
    private static readonly HashSet<string> Above =
    [
        PartQuantities.Capacity, PartQuantities.HeatCapacity, PartQuantities.GripHeatCapacity, PartQuantities.SetVolts, PartQuantities.LimitCurrent, PartQuantities.TripCurrent, PartQuantities.LoadCurrent, PartQuantities.LeastInputVolts,
        PartQuantities.CutoffVolts, PartQuantities.ForwardVolts, PartQuantities.RatedCurrent, PartQuantities.RatedPower, PartQuantities.RatedVolts,
    ];

    /// <summary>The dials of an arrangement as it stands.</summary>
    public static IReadOnlyList<Dial> Of(Study study, Shelf shelf, Arrangement one)
    {
        List<Dial> dials =
        [
            Count("series", "cells in series", one.Series, 1, MostCells),
            Count("parallel", "cells side by side", one.Parallel, 1, MostCells),
            Count(Touches, "touches in the loop", one.ContactCount, 0, Math.Max(16, 2 * one.ContactCount)),
            new("duty", one.Lamp is null ? "duty at most" : "duty", Pack, DialOwner.Wiring, Dial.Digits(one.DutyCeiling)) { Value = one.DutyCeiling, Low = 0.02, High = 1, Step = 0.01, AboveNought = true },
            .. Places.All.Where(place => place.Kind != (one.Lamp is null ? PartKind.Lamp : PartKind.Heater)).Select(place => Choice(study, one, place)),
        ];
        var built = study.Brief is { } brief ? PlantBuilder.For(one, shelf, RunStudy.Plan(brief)) : null;
        HashSet<string> named = [];
        foreach (var input in built is { IsFine: true } ? built.Value.Inputs : [])
        {
            if (input.Part is { } part && PartUnits.Expected.ContainsKey(input.Quantity) && Holder(one, part) is { } place)
            {
                Add(place, input.Quantity, input.Value, Thermal.Contains(input.Key) ? Heat : Current);
            }
        }

        foreach (var place in Places.All.Where(place => place.Of(one) is not null))
        {
            foreach (string quantity in PartUnits.Expected.Keys.Order(StringComparer.Ordinal))
            {
                if (shelf.Value(place.Of(one)!.Value, quantity) is { } known)
                {
                    Add(place, quantity, known, quantity is PartQuantities.CutoffVolts or PartQuantities.TripCurrent ? Current : Others);
                }
            }
        }

        if (built is { IsFine: true } && built.Value.Regulation is { } loop)
        {
            dials.Add(Slid(new("gain", "gain", Controller, DialOwner.Controller, Dial.Spelled(loop.GainWPerK, Units.WattPerKelvin)) { Unit = Units.WattPerKelvin, Value = loop.GainWPerK, AboveNought = true }));
            dials.Add(Slid(new("reset", "reset time", Controller, DialOwner.Controller, Dial.Spelled(loop.ResetS, Units.Second)) { Unit = Units.Second, Value = loop.ResetS, AboveNought = true }));
        }

        dials.AddRange(OfBrief(study.Brief));
        string[] order = [Pack, PartsOfIt, Current, Heat, Controller, Work, Limits, Others];
        return [.. dials.OrderBy(dial => Array.IndexOf(order, dial.Group))];

        void Add(Place place, string quantity, Estimate value, string group)
        {
            string name = $"{place.Name} {quantity}";
            if (!named.Add(name) || !double.IsFinite(value.Si))
            {
                return;
            }

            var unit = Shown(value.Si, PartUnits.Expected[quantity].Bare);
            double shown = unit.FromSi(value.Si);
            dials.Add(Slid(new(name, $"{quantity}, {shelf[place.Of(one)!.Value].Name}", group, DialOwner.Part, Dial.Spelled(shown, unit))
            {
                Place = place.Name,
                Quantity = quantity,
                Unit = unit,
                Value = shown,
                Share = value.Si == 0 ? 0 : Math.Abs(value.SiDoubt / value.Si),
                Origin = value.Origin,
                AboveNought = Above.Contains(quantity) || (quantity == PartQuantities.Ohms && place.Name is "heater" or "cell"),
            }));
        }
    }

    private static IEnumerable<Dial> OfBrief(Brief? brief)
    {
        if (brief is null)
        {
            yield break;
        }

        foreach (var (name, says, unit, value) in EditBrief.Numbers(brief))
        {
            // The aim is said with the work, and is a constant of the controller all the same.
            yield return Slid(new(name, says, name == "aim" ? Controller : Work, DialOwner.Brief, Dial.Spelled(value, unit)) { Unit = unit, Value = value });
        }

        foreach (var line in brief.Requirements)
        {
            var unit = Units.Find(line.Unit) ?? Units.One;
            yield return Slid(new($"limit {line.Id}", line.Text, Limits, DialOwner.Limit, Dial.Spelled(line.Limit, unit)) { Quantity = line.Id, Unit = unit, Value = line.Limit });
        }
    }

    private static Dial Count(string name, string words, int value, int low, int high) => new(name, words, Pack, DialOwner.Wiring, value.ToString(CultureInfo.InvariantCulture))
    {
        Kind = DialKind.Count,
        Value = value,
        Low = low,
        High = Math.Max(high, value),
        Step = 1,
        AboveNought = low > 0,
    };

    private static Dial Choice(Study study, Arrangement one, Place place)
    {
        string was = place.Of(one)?.Name ?? Places.None;
        List<(string Typed, string Words)> choices = [.. study.Parts.Where(part => part.Kind == place.Kind && (part.From != "destroyed" || part.Id.Name == was)).Select(part => (part.Id.Name, part.Name))];
        if (place.Class == "")
        {
            choices.Insert(0, (Places.None, "none"));
        }

        return new(place.Name, place.Words, PartsOfIt, DialOwner.Wiring, was) { Kind = DialKind.Choice, Place = place.Name, Choices = choices };
    }

    private static Place? Holder(Arrangement one, PartId part) => Places.All.FirstOrDefault(place => place.Of(one) == part);

    /// <summary>Small ohms, amps and volts as thousandths, as a maker says them.</summary>
    private static Unit Shown(double si, Unit unit) => Math.Abs(si) >= 0.3 || si == 0 ? unit : unit == Units.Ohm ? Units.Milliohm : unit == Units.Ampere ? Units.Milliampere : unit == Units.Volt ? Units.Millivolt : unit;

    /// <summary>A slider from near nought to three times what is there; a temperature moves by a quarter of the way to freezing, at least 40 K.</summary>
    private static Dial Slid(Dial dial)
    {
        if (dial.Unit.IsLevel)
        {
            double reach = Math.Max(40, Math.Ceiling(Math.Abs(dial.Value) / 40) * 10);
            return dial with { Low = Math.Floor((dial.Value - reach) / 10) * 10, High = Math.Ceiling((dial.Value + reach) / 10) * 10, Step = 1 };
        }

        double high = dial.Value == 0 ? 1 : 3 * Math.Abs(dial.Value);
        double step = Math.Pow(10, Math.Floor(Math.Log10(high / Steps)));
        step *= (high / Steps / step) switch { > 5 => 10, > 2 => 5, > 1 => 2, _ => 1 };
        return dial with { Low = dial.AboveNought ? step : 0, High = Math.Ceiling(high / step) * step, Step = step };
    }
}

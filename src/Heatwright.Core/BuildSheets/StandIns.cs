using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>Other parts of the shelf that may take the place of one in an arrangement: only those whose stated cells, volts and amps suit it.</summary>
/// <remarks>What decides over safety must be stated: a board or charger that does not say for how many cells and which chemistry it is made is left out. Missing amps are told behind the name.</remarks>
internal sealed class StandIns(SheetAsk ask)
{
    /// <summary>Two settings of a module that count as the same: usual trim of its own screw, common practice, no source.</summary>
    private const double SameVolts = 0.02;

    /// <summary>A charger's end volts may lie so far from the chemistry's, volts a cell: common practice, no source.</summary>
    private const double EndVolts = 0.05;

    private readonly LoopLook look = LoopLook.Of(ask.Arrangement, ask.Shelf, ask.SetC);

    /// <summary>Their names, each with what it leaves open.</summary>
    public IEnumerable<string> Of(Part used) => used.Kind is PartKind.Cell or PartKind.Heater or PartKind.Lamp ? []
        : ask.Alternates.Where(other => other.Kind == used.Kind && other.Id != used.Id && other.From != "destroyed" && Suits(used, other)).Select(other => other.Name + Open(other));

    private bool Suits(Part used, Part other) => StandsVolts(other) && SaysNoOtherPack(used, other) && used.Kind switch
    {
        PartKind.Supervision => MadeForThePack(other) && SuitsLoop(other, ask.Arrangement with { Supervision = other.Id }),
        PartKind.Charger => MadeForThePack(other) && EndsRight(other) && ChargesGently(used, other),
        PartKind.StepUp => Volts(other, PartQuantities.SetVolts) is { } set && Math.Abs(set - (Volts(used, PartQuantities.SetVolts) ?? double.NaN)) <= SameVolts * set
            && GivesAmps(other) && SuitsLoop(other, ask.Arrangement with { StepUp = other.Id }),
        PartKind.Switch => HandSwitch.Kind(used) is null == HandSwitch.Kind(other) is null && HandSwitch.IsMovedByHand(used) == HandSwitch.IsMovedByHand(other) && SuitsLoop(other, ask.Arrangement with { Switch = other.Id }),
        PartKind.Leads => SuitsLoop(other, ask.Arrangement with { Leads = other.Id }),
        PartKind.Contacts => SuitsLoop(other, ask.Arrangement with { Contacts = other.Id }),
        PartKind.CutOut => Value(other, PartQuantities.OpeningTemperature) is { } opens && Value(used, PartQuantities.OpeningTemperature) is { } now && opens.Si <= now.Si && SuitsLoop(other, ask.Arrangement with { CutOut = other.Id }),
        PartKind.Sensor => other.Word("type").Length > 0 && string.Equals(other.Word("type"), used.Word("type"), StringComparison.OrdinalIgnoreCase),
        _ => true,
    };

    /// <summary>Boards and chargers: a wrong count or chemistry over-charges the cells.</summary>
    private bool MadeForThePack(Part other)
    {
        string chemistry = ask.Shelf[ask.Arrangement.Cell].Word("chemistry");
        return other.Word("cells") == ask.Arrangement.Series.ToString(CultureInfo.InvariantCulture) && chemistry.Length > 0 && string.Equals(other.Word("chemistry"), chemistry, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Whatever it is: where it names a count or a chemistry, as a holder for two cells does, they are those of the part in use or of the pack.</summary>
    private bool SaysNoOtherPack(Part used, Part other)
    {
        string cells = used.Word("cells", ask.Arrangement.Series.ToString(CultureInfo.InvariantCulture)), chemistry = ask.Shelf[ask.Arrangement.Cell].Word("chemistry");
        return other.Word("cells", cells) == cells && string.Equals(other.Word("chemistry", chemistry), chemistry, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>End volts, where stated: of one cell or of the string.</summary>
    private bool EndsRight(Part other)
    {
        double cell = Chemistry.IsIron(ask.Shelf[ask.Arrangement.Cell]) ? 3.625 : 4.20;
        return Volts(other, PartQuantities.FullVolts) is not { } end || Math.Abs(end - cell) <= EndVolts || Math.Abs(end - (ask.Arrangement.Series * cell)) <= ask.Arrangement.Series * EndVolts;
    }

    /// <summary>No more amps than the charger in use, or than the rate that the sheet charges with.</summary>
    private bool ChargesGently(Part used, Part other)
    {
        double most = ask.Choices.Si("charge-rate") * (ask.Plant(PlantKey.Capacity)?.Value.Si ?? 0) * ask.Arrangement.Parallel;
        return ask.Shelf.ChargeCurrent(other.Id) is not { } amps || amps.Si <= Math.Max(most, ask.Shelf.ChargeCurrent(used.Id)?.Si ?? 0) * 1.001;
    }

    private bool GivesAmps(Part module) => Value(module, PartQuantities.OutputCurrent) is not { } amps || Moments.All(moment => (moment.LoadA?.Si ?? 0) <= amps.Si);

    /// <summary>Input volts of a charger are its source's; all others see the pack, or what a module makes of it.</summary>
    private bool StandsVolts(Part other)
    {
        if (other.Kind == PartKind.Charger)
        {
            return true;
        }

        double most = Moments.Max(moment => Math.Max(moment.OpenV.Si, other.Kind == PartKind.StepUp ? 0 : moment.LoadV?.Si ?? 0)), least = look.Empty.PackV?.Si ?? look.Empty.OpenV.Si;
        return new[] { PartQuantities.MostInputVolts, PartQuantities.RatedVolts }.All(quantity => Volts(other, quantity) is not { } stands || stands >= most)
            && (Volts(other, PartQuantities.LeastInputVolts) is not { } needs || needs <= least)
            && (Volts(other, PartQuantities.LockOutVolts) is not { } stops || stops <= least);
    }

    /// <summary>With it in the loop nothing of it is passed, refused or to be minded.</summary>
    private bool SuitsLoop(Part other, Arrangement with)
    {
        var tried = LoopLook.Of(with, ask.Shelf, ask.SetC);
        return (look.Empty.PackA is null || tried.Empty.PackA is not null) && (look.Full.PackA is null || tried.Full.PackA is not null)
            && tried.Limits.All(limit => limit.Part != other.Id || limit.Share <= 1)
            && PairCheck.Of(with, ask.Shelf, tried).All(pair => !pair.Problem.What.Contains($"'{other.Name}'", StringComparison.Ordinal));
    }

    /// <summary>What a stand-in does not say of itself and must be looked up before it is used.</summary>
    private string Open(Part other)
    {
        bool open = other.Kind == PartKind.Charger ? ask.Shelf.ChargeCurrent(other.Id) is null : Deciding(other.Kind) is { } quantity && Value(other, quantity) is null;
        return open ? $" ({Deciding(other.Kind)} not stated)" : "";
    }

    private static string? Deciding(PartKind kind) => kind switch
    {
        PartKind.Supervision => PartQuantities.TripCurrent,
        PartKind.StepUp => PartQuantities.LimitCurrent,
        PartKind.Charger => PartQuantities.ChargeCurrent,
        PartKind.Switch or PartKind.Leads or PartKind.Contacts or PartKind.CutOut => PartQuantities.RatedCurrent,
        _ => null,
    };

    private IEnumerable<LoopMoment> Moments => [look.Start, look.Full, look.Empty];

    private Estimate? Value(Part part, string quantity) => ask.Shelf.Value(part.Id, quantity);

    private double? Volts(Part part, string quantity) => Value(part, quantity)?.Si;
}

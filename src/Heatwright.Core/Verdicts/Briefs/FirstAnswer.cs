using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>What the brief alone asks of any tool, before a reading is taken.</summary>
/// <param name="Heater">The working end it is reckoned for.</param>
/// <param name="LeastW">Power at the working end that no luck undercuts.</param>
/// <param name="SurelyW">Power that is enough whatever is not known.</param>
/// <param name="LeastWh">Energy at the working end that no luck undercuts.</param>
/// <param name="SurelyWh">Energy that is enough whatever is not known.</param>
/// <param name="Rests">What it was reckoned from.</param>
/// <param name="Cells">What each cell of the shelf could do about it.</param>
public sealed record FirstAnswer(string Heater, double LeastW, double SurelyW, double LeastWh, double SurelyWh, IReadOnlyList<string> Rests, IReadOnlyList<CellAnswer> Cells)
{
    /// <summary>Specific heat of what working ends are made of: copper and brass 380, steel 460 to 500, ceramics up to 900 J/(kg·K); from memory.</summary>
    private const double LeastJPerKgK = 380, MostJPerKgK = 900;

    /// <summary>Free convection formulas are good to about a fifth.</summary>
    private const double ConvectionLow = 0.8, ConvectionHigh = 1.3;

    /// <summary>Share of a label's energy that comes out of the cell to the working end at heavy load: common practice, no source.</summary>
    private const double UsableShare = 0.7;

    /// <summary>A full cell of layered oxide, V, from memory.</summary>
    private const double FullCellV = 4.2;

    /// <summary>The answer for every working end of the shelf, least demanding first; one without a name where the shelf has none.</summary>
    public static IReadOnlyList<FirstAnswer> Of(Brief brief, IReadOnlyList<Part> parts, Shelf shelf)
    {
        Part[] heaters = [.. parts.Where(part => part.Kind == PartKind.Heater && brief.Duty is not null)];
        FirstAnswer[] lamps = [.. parts.Where(part => part.Kind == PartKind.Lamp).Select(lamp => ForLamp(brief, lamp, parts, shelf)).OfType<FirstAnswer>().OrderBy(answer => answer.LeastW)];
        return heaters.Length == 0 ? lamps.Length > 0 || brief.Duty is null ? lamps : [For(brief, null, parts, shelf)]
            : [.. heaters.Select(heater => For(brief, heater, parts, shelf)).Concat(lamps).OrderBy(answer => answer.LeastW).ThenBy(answer => answer.LeastWh)];
    }

    /// <summary>The answer as a maker says it.</summary>
    public string Sentence(Brief brief)
    {
        string cells = string.Join("; ", Cells.Select(cell => cell.Words));
        if (double.IsNaN(SurelyW))
        {
            string at = $"at the {brief.WorkingEnd}{(Heater.Length > 0 ? $" ({Heater})" : "")}";
            return LeastW <= 0 ? $"What it needs {at} is not known yet." : $"Needs at least {Say(LeastW)} W {at} and {Say(LeastWh)} Wh there on one charge; how much is surely enough is not known yet{(cells.Length > 0 ? ": " + cells : "")}.";
        }

        return $"Needs at least {Say(LeastW)} W at the {brief.WorkingEnd}{(Heater.Length > 0 ? $" ({Heater})" : "")}, {Say(SurelyW)} W is surely enough, and {Say(LeastWh)} to {Say(SurelyWh)} Wh there on one charge{(cells.Length > 0 ? ": " + cells : "")}.";
    }

    private static FirstAnswer For(Brief brief, Part? heater, IReadOnlyList<Part> parts, Shelf shelf)
    {
        var duty = brief.Work;
        List<string> rests = [];
        double rise = duty.TargetC - brief.AirC;
        var (heatLow, heatHigh) = HeatCapacity(heater, shelf, rests);
        var (lossLow, lossHigh) = Loss(brief, heater, shelf, rests);
        double workLow = Math.Max(0, duty.NeedJ - duty.NeedPlusMinusJ) / duty.EveryS;
        double workHigh = (duty.NeedJ + duty.NeedPlusMinusJ) / duty.EveryS;
        double within = Limit(brief, RequirementQuantity.WarmUpTime, atMost: true);
        // Warming up at steady power: the loss grows from nothing to the loss at the target, about half of it counts on the way.
        double upLow = double.IsNaN(within) ? 0 : (heatLow * rise / within) + (0.5 * lossLow);
        double upHigh = double.IsNaN(within) ? 0 : (heatHigh * rise / within) + lossHigh;
        double seconds = double.IsNaN(Limit(brief, RequirementQuantity.PiecesPerCharge, atMost: false))
            ? Limit(brief, RequirementQuantity.RunTime, atMost: false)
            : Limit(brief, RequirementQuantity.PiecesPerCharge, atMost: false) * BriefPlan.PieceS(duty);
        if (double.IsNaN(seconds))
        {
            rests.Add("no run time and no count of pieces is promised: energy for one warm-up only");
            seconds = 0;
        }

        var day = BlockShares.Of(duty, brief.AirC);
        double leastJ = (heatLow * rise) + (seconds * ((day.Hot * lossLow) + (day.Working * workLow)));
        double surelyJ = (heatHigh * rise * (1 + (seconds * day.WarmUpsPerS))) + (seconds * ((day.Hot * lossHigh) + (day.Working * workHigh)));
        if (duty.Blocks is not null)
        {
            rests.Add($"blocks of the duty: hot for {Say(100 * day.Hot)} in 100 of the time, at work for {Say(100 * day.Working)}");
        }

        var answer = new FirstAnswer(heater?.Name ?? "", Math.Max(upLow, lossLow + workLow), Math.Max(upHigh, lossHigh + workHigh), leastJ / 3600, surelyJ / 3600, rests, []);
        return answer with { Cells = [.. parts.Where(part => part.Kind == PartKind.Cell).Select(cell => CellAnswer.Of(cell, shelf, answer.LeastWh, answer.SurelyWh / UsableShare))] };
    }

    /// <summary>A lamp takes at least its current at the least volts of its driver, and surely no more than at the full volts of the fewest cells in series that reach them.</summary>
    private static FirstAnswer? ForLamp(Brief brief, Part lamp, IReadOnlyList<Part> parts, Shelf shelf)
    {
        if (shelf.Value(lamp.Id, PartQuantities.LoadCurrent) is not { } amps || shelf.Value(lamp.Id, PartQuantities.LeastInputVolts) is not { Si: > 0 } least)
        {
            return null;
        }

        List<string> rests = [$"current {Display.Rounded(amps)} ({amps.Origin.Word})", $"least volts {Display.Rounded(least)} ({least.Origin.Word})"];
        double seconds = double.IsNaN(Limit(brief, RequirementQuantity.FullLightTime, atMost: false)) ? Limit(brief, RequirementQuantity.RunTime, atMost: false) : Limit(brief, RequirementQuantity.FullLightTime, atMost: false);
        if (double.IsNaN(seconds))
        {
            rests.Add("no time of light is promised: no energy is reckoned");
            seconds = 0;
        }

        double leastW = Math.Max(0, amps.Si - (2 * amps.SiDoubt)) * Math.Max(0, least.Si - (2 * least.SiDoubt));
        double surelyW = (amps.Si + (2 * amps.SiDoubt)) * FullCellV * Math.Ceiling(least.Si / FullCellV);
        var answer = new FirstAnswer(lamp.Name, leastW, surelyW, seconds * leastW / 3600, seconds * surelyW / 3600, rests, []);
        return answer with { Cells = [.. parts.Where(part => part.Kind == PartKind.Cell).Select(cell => CellAnswer.Of(cell, shelf, answer.LeastWh, answer.SurelyWh / UsableShare))] };
    }

    private static (double Low, double High) HeatCapacity(Part? heater, Shelf shelf, List<string> rests)
    {
        if (heater is not null && shelf.Value(heater.Id, PartQuantities.HeatCapacity) is { } known)
        {
            rests.Add($"heat capacity {Display.Rounded(known)} ({known.Origin.Word})");
            return (Math.Max(0, known.Si - (2 * known.SiDoubt)), known.Si + (2 * known.SiDoubt));
        }

        if (heater is not null && shelf.Value(heater.Id, PartQuantities.Mass) is { } mass)
        {
            rests.Add($"mass {Display.Rounded(mass)} ({mass.Origin.Word}) times {LeastJPerKgK} to {MostJPerKgK} J/(kg·K)");
            return (LeastJPerKgK * mass.Si, MostJPerKgK * mass.Si);
        }

        rests.Add("heat capacity of the working end not known: weigh it, or take a warm-up");
        return (0, double.NaN);
    }

    private static (double Low, double High) Loss(Brief brief, Part? heater, Shelf shelf, List<string> rests)
    {
        double hotK = brief.Work.TargetC + Units.ZeroCelsiusK, airK = brief.AirC + Units.ZeroCelsiusK;
        double fourth = Constants.StefanBoltzmann * (Math.Pow(hotK, 4) - Math.Pow(airK, 4));
        if (heater is not null && shelf.Value(heater.Id, PartQuantities.LinearLoss) is { } loss)
        {
            double watts = (loss.Si * (hotK - airK)) + ((shelf.Value(heater.Id, PartQuantities.Radiating)?.Si ?? 0) * fourth);
            double doubt = 2 * loss.SiDoubt * (hotK - airK);
            rests.Add($"loss {Display.Rounded(loss)} ({loss.Origin.Word})");
            return (Math.Max(0, watts - doubt), watts + doubt);
        }

        if (heater is not null && shelf.Value(heater.Id, PartQuantities.Diameter) is { } across && shelf.Value(heater.Id, PartQuantities.Length) is { } along)
        {
            double area = Math.PI * across.Si * along.Si;
            double film = Convection.CylinderWPerM2K(across.Si, brief.Work.TargetC, brief.AirC);
            rests.Add($"loss of a cylinder of {Display.Rounded(across)} by {Display.Rounded(along)} in still air, emissivity 0.1 to 0.95");
            return (area * ((ConvectionLow * film * (hotK - airK)) + (0.1 * fourth)), area * ((ConvectionHigh * film * (hotK - airK)) + (0.95 * fourth)));
        }

        rests.Add("loss of the working end not known: measure its length and diameter, or take a warm-up");
        return (0, double.NaN);
    }

    private static double Limit(Brief brief, RequirementQuantity quantity, bool atMost)
    {
        double[] limits = [.. brief.Requirements.Where(line => line.Quantity == quantity && line.AtMost == atMost).Select(line => (Units.Find(line.Unit) ?? Units.One).ToSi(line.Limit))];
        return limits.Length == 0 ? double.NaN : atMost ? limits.Min() : limits.Max();
    }

    internal static string Say(double value) => value < 0.1 ? value.ToString("0.###", CultureInfo.InvariantCulture) : value < 10 ? value.ToString("0.0", CultureInfo.InvariantCulture) : value.ToString("0", CultureInfo.InvariantCulture);
}

/// <summary>What one kind of cell could do about the energy that is needed.</summary>
/// <param name="Cell">Its name.</param>
/// <param name="EnergyWh">Energy of one cell from full to empty at no load; NaN: not known.</param>
/// <param name="Least">Fewer than these cannot; 0: not known.</param>
/// <param name="Surely">These are surely enough; 0: not known.</param>
/// <param name="Words">In a maker's words.</param>
public sealed record CellAnswer(string Cell, double EnergyWh, int Least, int Surely, string Words)
{
    private const int Slices = 200;

    internal static CellAnswer Of(Part cell, Shelf shelf, double leastWh, double surelyWh)
    {
        if (shelf.Value(cell.Id, PartQuantities.Capacity) is not { } capacity)
        {
            return new(cell.Name, double.NaN, 0, 0, $"the capacity of the {cell.Name} is not known");
        }

        // Mean open volts over a discharge: its own where its curve was found; else 3.7 V for layered oxides, 3.25 V for iron phosphate; from memory, at their generous side.
        var curve = shelf.FoundOfCell(cell.Id)?.Cell?.Cell.OpenV;
        double volts = curve is not null ? Enumerable.Range(0, Slices).Average(i => curve.At((i + 0.5) / Slices)) : Chemistry.IsIron(cell) ? 3.25 : 3.7;
        double energyWh = capacity.Si / 3600 * volts;
        int least = Math.Max(1, (int)Math.Ceiling(leastWh / energyWh)), surely = double.IsNaN(surelyWh) ? 0 : Math.Max(1, (int)Math.Ceiling(surelyWh / energyWh));
        string how = curve is not null ? "its fitted volts without a load" : string.Create(CultureInfo.InvariantCulture, $"{volts:0.##} V");
        string one = $"one {cell.Name} holds {FirstAnswer.Say(energyWh)} Wh ({capacity.Origin.Word} amp-hours at {how})";
        string words = surely == 0 ? least > 1 ? $"{one} and cannot, {least.ToString(CultureInfo.InvariantCulture)} are the fewest" : $"{one}; whether that is enough is open"
            : least > 1 ? $"{one} and cannot, {least.ToString(CultureInfo.InvariantCulture)} are the fewest, {surely.ToString(CultureInfo.InvariantCulture)} surely enough"
            : surely > 1 ? $"{one} and may do, {surely.ToString(CultureInfo.InvariantCulture)} are surely enough" : $"{one} and is enough of energy";
        return new(cell.Name, energyWh, least, surely, words);
    }
}

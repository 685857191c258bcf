using Heatwright.Arrangements;

namespace Heatwright.StudyFile;

/// <summary>What a stated plant must be: numbers that can be, exactly one of each choice, names that lead somewhere.</summary>
internal static class PlantCheck
{
    public static void Check(Study study, CheckDesk desk)
    {
        desk.Ids("arrangements and plants", study.Arrangements.Select((one, i) => (one.Id.Name ?? "", $"{CheckDesk.At("arrangements", i)}.id"))
            .Concat(study.Plants.Select((one, i) => (one.Id.Name ?? "", $"{CheckDesk.At("plants", i)}.id"))));
        for (int i = 0; i < study.Plants.Count; i++)
        {
            var plant = study.Plants[i];
            string at = CheckDesk.At("plants", i);
            Pack(plant.Pack, $"{at}.pack", desk);
            Path(plant.Path, $"{at}.path", desk);
            Load(plant.Load, $"{at}.load", desk);
            HeatCheck.Heat(plant.Heat, $"{at}.heat", desk);
            HeatCheck.Control(plant.Control, $"{at}.control", desk);
            HeatCheck.Work(plant.Work, $"{at}.work", desk);
            desk.Range($"{at}.end.cutoffV", "A cut-off", plant.End.CutoffV, plant.End.CutoffV >= 0, "0 V or more");
            desk.Range($"{at}.end.atMostS", "A longest time", plant.End.AtMostS, plant.End.AtMostS is > 0 and <= 1e7, "above 0 s, at most 10 000 000 s");
            for (int j = 0; j < plant.Marks.Count; j++)
            {
                string mark = CheckDesk.At($"{at}.marks", j);
                desk.Word($"{mark}.at", "A place of a mark", plant.Marks[j].At, plant.Heat.Nodes.Select(node => node.Name).Append(StatedPlantBuild.SensorWord));
                desk.Range($"{mark}.c", "A temperature", plant.Marks[j].C, plant.Marks[j].C > -273.15, "above -273.15 °C");
            }
        }
    }

    private static void Pack(StatedPack pack, string at, CheckDesk desk)
    {
        var cell = pack.Cell;
        desk.Range($"{at}.cell.capacityAh", "A capacity", cell.CapacityAh, cell.CapacityAh > 0, "above 0 Ah");
        Curve($"{at}.cell.openV", cell.OpenV, desk);
        Curve($"{at}.cell.instantOhm", cell.InstantOhm, desk);
        Pair($"{at}.cell.short", cell.ShortOhm, cell.ShortS, cell.ShortF, desk);
        Pair($"{at}.cell.long", cell.LongOhm, cell.LongS, cell.LongF, desk);
        desk.Range($"{at}.cell.activationJPerMol", "An activation energy", cell.ActivationJPerMol, cell.ActivationJPerMol >= 0, "0 J/mol or more");
        desk.Range($"{at}.cell.ohmsAtC", "A temperature", cell.OhmsAtC, cell.OhmsAtC > -273.15, "above -273.15 °C");
        desk.Range($"{at}.series", "A count of cells in series", pack.Series, pack.Series >= 1, "1 or more");
        desk.Range($"{at}.parallel", "A count of strings side by side", pack.Parallel, pack.Parallel >= 1, "1 or more");
        desk.Range($"{at}.startCharge", "A charge at the start", pack.StartCharge, pack.StartCharge is >= 0 and <= 1, "0 to 1");
        desk.Range($"{at}.tripA", "A trip current", pack.TripA ?? 1, pack.TripA is null or > 0, "above 0 A");
        NotNegative($"{at}.loopOhm", pack.LoopOhm, "Ω", desk);
        NotNegative($"{at}.drainOnA", pack.DrainOnA, "A", desk);
        NotNegative($"{at}.drainOffA", pack.DrainOffA, "A", desk);
    }

    private static void Pair(string at, StatedCurve? ohm, double? seconds, StatedCurve? farad, CheckDesk desk)
    {
        if (ohm is not null)
        {
            Curve($"{at}Ohm", ohm, desk);
            OneOf(at + "S", "The time constant of an RC pair", ["S, its seconds", "F, its farads"], [seconds is not null, farad is not null], desk);
        }
        if (farad is not null)
        {
            Curve($"{at}F", farad, desk);
        }
        desk.Range($"{at}S", "A time constant", seconds ?? 1, seconds is null or > 0, "above 0 s");
    }

    private static void Curve(string at, StatedCurve curve, CheckDesk desk)
    {
        OneOf(at, "A curve", ["flat", "points", "formula"], [curve.Flat is not null, curve.Points is not null, curve.Formula is not null], desk);
        desk.Range($"{at}.flat", "A value", curve.Flat ?? 0, curve.Flat is null or >= 0, "0 or more");
        if (curve.Formula is { } formula)
        {
            desk.Range($"{at}.formula.heldBelow", "A charge", formula.HeldBelow, formula.HeldBelow is >= 0 and < 1, "0 to 1");
        }
        if (curve.Points is { } points && (points.Count < 2 || points.Any(point => point.Count != 2) || points.Zip(points.Skip(1)).Any(pair => !(pair.Second[0] > pair.First[0]))))
        {
            desk.Say($"{at}.points", "Points of a curve do not rise.", $"{CheckDesk.Number(points.Count)} points", "two or more pairs [charge left, value], charge rising", "Correct the points.");
        }
    }

    private static void Path(StatedPath? path, string at, CheckDesk desk)
    {
        if (path is null)
        {
            return;
        }
        OneOf(at, "A path", ["stepUp"], [path.StepUp is not null], desk);
        if (path.StepUp is { } module)
        {
            at += ".stepUp";
            desk.Range($"{at}.setV", "Set volts", module.SetV, module.SetV > 0, "above 0 V");
            NotNegative($"{at}.fixedW", module.FixedW, "W", desk);
            NotNegative($"{at}.dropV", module.DropV, "V", desk);
            NotNegative($"{at}.slopeOhm", module.SlopeOhm, "Ω", desk);
            NotNegative($"{at}.lockOutV", module.LockOutV, "V", desk);
            NotNegative($"{at}.diodeV", module.DiodeV, "V", desk);
            desk.Range($"{at}.maxDuty", "A duty", module.MaxDuty, module.MaxDuty is > 0 and <= 1, "above 0, at most 1");
            desk.Range($"{at}.limitA", "A limit", module.LimitA ?? 1, module.LimitA is null or > 0, "above 0 A");
        }
    }

    private static void Load(StatedLoad load, string at, CheckDesk desk)
    {
        OneOf(at, "A load", ["heater", "currentA"], [load.Heater is not null, load.CurrentA is not null], desk);
        if (load.Heater is { } heater)
        {
            desk.Range($"{at}.heater.ohm", "Ohms of a heater", heater.Ohm, heater.Ohm > 0, "above 0 Ω; an open heater cannot be run");
            desk.Range($"{at}.heater.atC", "A temperature", heater.AtC, heater.AtC > -273.15, "above -273.15 °C");
            desk.Range($"{at}.heater.alphaPerK", "A temperature coefficient", heater.AlphaPerK, heater.AlphaPerK is > -0.05 and < 0.05, "-0.05 to 0.05 1/K");
        }
        NotNegative($"{at}.currentA", load.CurrentA ?? 0, "A", desk);
    }

    internal static void OneOf(string at, string what, string[] names, bool[] there, CheckDesk desk)
    {
        if (there.Count(one => one) != 1)
        {
            string have = string.Join(", ", names.Where((_, i) => there[i]));
            desk.Say(at, $"{what} is not told, or told twice.", have.Length > 0 ? have : "none", $"exactly one of {string.Join(", ", names)}", "Keep one of them.");
        }
    }

    internal static void NotNegative(string at, double value, string unit, CheckDesk desk) => desk.Range(at, "A value", value, value >= 0, $"0 {unit} or more");
}

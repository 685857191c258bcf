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
            PathCheck.Path(plant.Path, $"{at}.path", desk);
            HeatCheck.Heat(plant.Heat, $"{at}.heat", desk);
            if (plant.Charger is { } charger)
            {
                Charging(plant, charger, at, desk);
            }
            else
            {
                PathCheck.Load(plant.Load ?? new(), $"{at}.load", desk);
                ControlCheck.Control(plant.Control ?? new(), $"{at}.control", desk);
            }
            HeatCheck.Work(plant.Work, $"{at}.work", desk);
            desk.Range($"{at}.end.cutoffV", "A cut-off", plant.End.CutoffV, plant.End.CutoffV >= 0, "0 V or more");
            desk.Range($"{at}.end.cellCutoffV", "A cut-off", plant.End.CellCutoffV, plant.End.CellCutoffV >= 0, "0 V or more");
            desk.Range($"{at}.end.cellMostV", "Most volts of a cell", plant.End.CellMostV ?? 1, plant.End.CellMostV is null or > 0, "above 0 V");
            desk.Range($"{at}.end.brownOutV", "A brown-out", plant.End.BrownOutV, plant.End.BrownOutV >= 0, "0 V or more");
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
        Groups(pack, at, desk);
    }

    private static void Groups(StatedPack pack, string at, CheckDesk desk)
    {
        if (pack.Groups.Count > 0 && (pack.Series != 1 || pack.Parallel != 1))
        {
            desk.Say($"{at}.series", "A pack of cells that differ is told by its groups alone.", $"series {CheckDesk.Number(pack.Series)}, parallel {CheckDesk.Number(pack.Parallel)}", "neither beside groups", "Leave series and parallel out.");
        }
        for (int i = 0; i < pack.Groups.Count; i++)
        {
            string path = CheckDesk.At($"{at}.groups", i);
            desk.Range(path, "A count of cells side by side", pack.Groups[i].Count, pack.Groups[i].Count >= 1, "1 or more");
            foreach (var member in pack.Groups[i])
            {
                desk.Range($"{path}.capacityFactor", "A factor", member.CapacityFactor, member.CapacityFactor > 0, "above 0");
                desk.Range($"{path}.ohmFactor", "A factor", member.OhmFactor, member.OhmFactor > 0, "above 0");
                desk.Range($"{path}.startCharge", "A charge at the start", member.StartCharge ?? 0, member.StartCharge is null or (>= 0 and <= 1), "0 to 1");
            }
            if (pack.Groups[i].Count > 1 && pack.Cell.InstantOhm.Flat is 0)
            {
                desk.Say(path, "Cells side by side that differ need ohms to share by.", "0 Ω", "above 0 Ω", "Give the cell its ohms.");
            }
        }
    }

    private static void Charging(StatedPlant plant, StatedCharger charger, string at, CheckDesk desk)
    {
        foreach (var (field, there) in new[] { ("path", plant.Path is not null), ("load", plant.Load is not null), ("control", plant.Control is not null), ("work", plant.Work is not null) })
        {
            if (there)
            {
                desk.Say($"{at}.{field}", "A plant that charges has no use for this.", field, "absent beside a charger", "Leave it out, or leave the charger out.");
            }
        }
        at += ".charger";
        desk.Range($"{at}.setA", "A set current", charger.SetA, charger.SetA > 0, "above 0 A");
        desk.Range($"{at}.holdV", "Set volts", charger.HoldV, charger.HoldV > 0, "above 0 V");
        desk.Range($"{at}.endA", "An end current", charger.EndA, charger.EndA > 0 && charger.EndA < charger.SetA, $"above 0 A, under the set {CheckDesk.Number(charger.SetA)} A");
        NotNegative($"{at}.gentleBelowV", charger.GentleBelowV, "V", desk);
        desk.Range($"{at}.gentleA", "A gentle current", charger.GentleA, charger.GentleA >= 0 && (charger.GentleBelowV == 0 || charger.GentleA > 0), "above 0 A where there is a gentle range");
        if (charger.Heat is { } heat)
        {
            desk.Range($"{at}.heat.inV", "Input volts", heat.InV, heat.InV > 0, "above 0 V");
            desk.Range($"{at}.heat.holdsC", "A temperature", heat.HoldsC, heat.HoldsC > heat.AirC, "above that of the air");
            desk.Range($"{at}.heat.kPerW", "Kelvin per watt", heat.KPerW, heat.KPerW > 0, "above 0 K/W");
        }
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

        // Volts, ohms and farads of a cell: none of them can be under zero.
        if ((curve.Points ?? []).FirstOrDefault(point => point.Count == 2 && point[1] < 0) is { } below)
        {
            desk.Say($"{at}.points", "A value of a curve is below zero.", CheckDesk.Number(below[1]), "0 or more", "Correct the number.");
        }
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

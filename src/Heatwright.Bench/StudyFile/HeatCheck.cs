using Heatwright.Arrangements;

namespace Heatwright.StudyFile;

/// <summary>What lumps and work of a stated plant must be.</summary>
internal static class HeatCheck
{
    private const int MostNodes = 8;

    public static void Heat(StatedHeat heat, string at, CheckDesk desk)
    {
        string[] names = [.. heat.Nodes.Select(node => node.Name)];
        Kelvin($"{at}.airC", heat.AirC, desk);
        desk.Range($"{at}.nodes", "A count of nodes", names.Length, names.Length is >= 1 and <= MostNodes, $"1 to {CheckDesk.Number(MostNodes)}");
        for (int i = 0; i < names.Length; i++)
        {
            var node = heat.Nodes[i];
            string path = CheckDesk.At($"{at}.nodes", i);
            if (names.Take(i).Contains(node.Name) || node.Name.Length == 0 || node.Name == StatedPlantBuild.SensorWord)
            {
                desk.Say($"{path}.name", "A name of a node cannot be.", node.Name, $"a name that no other node has, not '{StatedPlantBuild.SensorWord}'", "Choose another name.");
            }
            desk.Range($"{path}.jPerK", "A heat capacity", node.JPerK, node.JPerK > 0, "above 0 J/K");
            PlantCheck.NotNegative($"{path}.airWPerK", node.AirWPerK, "W/K", desk);
            PlantCheck.NotNegative($"{path}.airWPerK125", node.AirWPerK125, "W/K^1.25", desk);
            PlantCheck.NotNegative($"{path}.radiatingM2", node.RadiatingM2, "m²", desk);
            if (node.StartC is { } startC)
            {
                Kelvin($"{path}.startC", startC, desk);
            }

        }
        for (int i = 0; i < heat.Links.Count; i++)
        {
            var link = heat.Links[i];
            string path = CheckDesk.At($"{at}.links", i);
            desk.Word($"{path}.from", "A node", link.From, names);
            desk.Word($"{path}.to", "A node", link.To, names.Where(name => name != link.From));
            PlantCheck.NotNegative($"{path}.wPerK", link.WPerK, "W/K", desk);
        }
        desk.Word($"{at}.heaterNode", "A node", heat.HeaterNode, names);
        desk.Word($"{at}.workingNode", "A node", heat.WorkingNode, names);
        desk.Word($"{at}.sensorNode", "A node", heat.SensorNode, names);
        desk.Word($"{at}.cellNode", "A node", heat.CellNode ?? heat.HeaterNode, names);
        desk.Word($"{at}.electronicsNode", "A node", heat.ElectronicsNode ?? heat.HeaterNode, names);
        PlantCheck.NotNegative($"{at}.sensorLagS", heat.SensorLagS, "s", desk);
    }

    public static void Work(StatedWork? work, string at, CheckDesk desk)
    {
        if (work is null)
        {
            return;
        }
        PlantCheck.NotNegative($"{at}.contactWPerK", work.ContactWPerK, "W/K", desk);
        desk.Range($"{at}.forS", "A time a piece lasts", work.ForS, work.ForS > 0, "above 0 s");
        desk.Range($"{at}.everyS", "A time from piece to piece", work.EveryS, work.EveryS > work.ForS, $"longer than a piece, {CheckDesk.Number(work.ForS)} s");
        Kelvin($"{at}.aboveC", work.AboveC ?? 0, desk);
        PlantCheck.NotNegative($"{at}.firstS", work.FirstS, "s", desk);
        PlantCheck.NotNegative($"{at}.afterReadyS", work.AfterReadyS ?? 0, "s", desk);
        PlantCheck.NotNegative($"{at}.needJ", work.NeedJ, "J", desk);
        desk.Range($"{at}.count", "A count of pieces", work.Count ?? 1, work.Count is null or >= 1, "1 or more");
    }

    internal static void Kelvin(string at, double celsius, CheckDesk desk) => desk.Range(at, "A temperature", celsius, celsius > -273.15, "above -273.15 °C");
}

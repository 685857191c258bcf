using Heatwright.Arrangements;

namespace Heatwright.StudyFile;

/// <summary>What path and load of a stated plant must be.</summary>
internal static class PathCheck
{
    public static void Path(StatedPath? path, string at, CheckDesk desk)
    {
        if (path is null)
        {
            return;
        }
        PlantCheck.OneOf(at, "A path", ["stepUp", "stepDown", "stepUpDown", "linear"],
            [path.StepUp is not null, path.StepDown is not null, path.StepUpDown is not null, path.Linear is not null], desk);
        if (path.StepUp is { } up)
        {
            Module($"{at}.stepUp", up.SetV, up.FixedW, up.DropV, up.SlopeOhm, up.LimitA, up.LockOutV, desk);
            PlantCheck.NotNegative($"{at}.stepUp.diodeV", up.DiodeV, "V", desk);
            PlantCheck.NotNegative($"{at}.stepUp.throughOhm", up.ThroughOhm, "Ω", desk);
            Duty($"{at}.stepUp.maxDuty", up.MaxDuty, desk);
        }
        if (path.StepDown is { } down)
        {
            Module($"{at}.stepDown", down.SetV, down.FixedW, down.DropV, down.SlopeOhm, down.LimitA, down.LockOutV, desk);
            Duty($"{at}.stepDown.maxDuty", down.MaxDuty, desk);
        }
        if (path.StepUpDown is { } both)
        {
            Module($"{at}.stepUpDown", both.SetV, both.FixedW, both.DropV, both.SlopeOhm, both.LimitA, both.LockOutV, desk);
        }
        if (path.Linear is { } linear)
        {
            Module($"{at}.linear", linear.SetV, 0, 0, 0, linear.LimitA, 0, desk);
            PlantCheck.NotNegative($"{at}.linear.dropoutV", linear.DropoutV, "V", desk);
            PlantCheck.NotNegative($"{at}.linear.quiescentA", linear.QuiescentA, "A", desk);
        }
    }

    public static void Load(StatedLoad load, string at, CheckDesk desk)
    {
        PlantCheck.OneOf(at, "A load", ["heater", "selfLimiting", "currentA", "powerW", "voltsAmps"],
            [load.Heater is not null, load.SelfLimiting is not null, load.CurrentA is not null, load.PowerW is not null, load.VoltsAmps is not null], desk);
        if (load.Heater is { } heater)
        {
            desk.Range($"{at}.heater.ohm", "Ohms of a heater", heater.Ohm, heater.Ohm > 0, "above 0 Ω; an open heater cannot be run");
            desk.Range($"{at}.heater.atC", "A temperature", heater.AtC, heater.AtC > -273.15, "above -273.15 °C");
            desk.Range($"{at}.heater.alphaPerK", "A temperature coefficient", heater.AlphaPerK, heater.AlphaPerK is > -0.05 and < 0.05, "-0.05 to 0.05 1/K");
        }
        if (load.SelfLimiting is { } limiting)
        {
            desk.Range($"{at}.selfLimiting.leastOhm", "Ohms of a heater", limiting.LeastOhm, limiting.LeastOhm > 0, "above 0 Ω");
            desk.Range($"{at}.selfLimiting.switchC", "A temperature", limiting.SwitchC, limiting.SwitchC > -273.15, "above -273.15 °C");
            desk.Range($"{at}.selfLimiting.steepnessPerK", "A steepness", limiting.SteepnessPerK, limiting.SteepnessPerK is >= 0 and <= 1, "0 to 1 1/K");
        }
        PlantCheck.NotNegative($"{at}.currentA", load.CurrentA ?? 0, "A", desk);
        desk.Range($"{at}.powerW", "A power", load.PowerW ?? 1, load.PowerW is null or > 0, "above 0 W");
        if (load.VoltsAmps is { } table && (table.Count < 1 || table.Any(pair => pair.Count != 2) || !(table[0][0] > 0) || table[0][1] < 0
            || table.Zip(table.Skip(1)).Any(pair => !(pair.Second[0] > pair.First[0]) || pair.Second[1] < pair.First[1])))
        {
            desk.Say($"{at}.voltsAmps", "Volts and amps of a load do not rise.", $"{CheckDesk.Number(table.Count)} pairs", "pairs [volts, amps], volts rising from above 0, amps not falling", "Correct the pairs.");
        }
    }

    private static void Module(string at, double setV, double fixedW, double dropV, double slopeOhm, double? limitA, double lockOutV, CheckDesk desk)
    {
        desk.Range($"{at}.setV", "Set volts", setV, setV > 0, "above 0 V");
        PlantCheck.NotNegative($"{at}.fixedW", fixedW, "W", desk);
        PlantCheck.NotNegative($"{at}.dropV", dropV, "V", desk);
        PlantCheck.NotNegative($"{at}.slopeOhm", slopeOhm, "Ω", desk);
        PlantCheck.NotNegative($"{at}.lockOutV", lockOutV, "V", desk);
        desk.Range($"{at}.limitA", "A limit", limitA ?? 1, limitA is null or > 0, "above 0 A");
    }

    private static void Duty(string at, double duty, CheckDesk desk) => desk.Range(at, "A duty", duty, duty is > 0 and <= 1, "above 0, at most 1");
}

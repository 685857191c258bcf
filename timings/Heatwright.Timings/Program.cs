using Heatwright.Timings;

// One measurement a name; without a name, all of them.
string[] wanted = args.Length > 0 ? args : ["logs", "plant"];
foreach (string name in wanted)
{
    switch (name)
    {
        case "logs":
            LogTimings.Run(Console.Out);
            break;
        case "plant":
            PlantTimings.Run(Console.Out, Folder());
            break;
        case "plant-check":
            PlantTimings.Check(Console.Out, Folder());
            break;
        case "pages":
            await PageTimings.Run(Console.Out, Folder());
            break;
        case "warm-up":
            WarmUpTimings.Run(Console.Out, Folder());
            break;
        case "version":
            VersionTimings.Run(Console.Out, Folder());
            break;
        default:
            Console.Error.WriteLine($"No measurement is called '{name}'. There are: logs, plant, plant-check, warm-up, pages, version.");
            return 2;
    }
}

return 0;

// The folder that holds the peer's source and keeps the results.
static string Folder()
{
    string folder = AppContext.BaseDirectory;
    while (!File.Exists(Path.Combine(folder, "Heatwright.slnx")))
    {
        folder = Path.GetDirectoryName(folder) ?? throw new InvalidOperationException("Run this from inside the repository.");
    }

    return Path.Combine(folder, "timings");
}

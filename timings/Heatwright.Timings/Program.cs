using Heatwright.Timings;

// One measurement a name; without a name, all of them.
string[] wanted = args.Length > 0 ? args : ["logs"];
foreach (string name in wanted)
{
    switch (name)
    {
        case "logs":
            LogTimings.Run(Console.Out);
            break;
        default:
            Console.Error.WriteLine($"No measurement is called '{name}'. There is: logs.");
            return 2;
    }
}

return 0;

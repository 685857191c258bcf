using System.Diagnostics;
using System.Globalization;

namespace Heatwright.Timings;

/// <summary>How long the shortest command takes, from its start to its end.</summary>
internal static class VersionTimings
{
    private const int Times = 25;

    public static void Run(TextWriter says, string folder)
    {
        List<double> clock = [];
        for (int i = 0; i <= Times; i++)
        {
            var watch = Stopwatch.StartNew();
            using var program = TheProgram.Started("--version");
            program.StandardOutput.ReadToEnd();
            program.WaitForExit();
            if (i > 0)
            {
                clock.Add(watch.Elapsed.TotalMilliseconds); // the first brings the file into memory
            }
        }

        clock.Sort();
        string line = string.Create(CultureInfo.InvariantCulture,
            $"'--version', {TheProgram.Words}: {clock[Times / 2]:0} ms by the clock in the middle of {Times} starts, {clock[0]:0} at best, {clock[^1]:0} at worst; 80 ms asked.");
        says.WriteLine(line);
        File.WriteAllText(Path.Combine(folder, "results", "version.md"), $"# The shortest command\n\nTaken {TimeProvider.System.GetUtcNow():yyyy-MM-dd HH:mm} UTC. {Machine.Words()}\n\n{line}\n");
    }
}

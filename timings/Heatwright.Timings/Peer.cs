using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace Heatwright.Timings;

/// <summary>The plain C program, compiled and run where there is a compiler.</summary>
internal static class Peer
{
    /// <summary>Best milliseconds of one mission; null: no compiler here.</summary>
    public static double? Ms(string folder, string argument)
    {
        string program = Path.Combine(Path.GetTempPath(), "heatwright-mission-b");
        try
        {
            return Said("gcc", "-O3", "-march=native", Path.Combine(folder, "peer", "mission_b.c"), "-o", program, "-lm") is not null
                && Said(program, argument, "reps=15") is { } said
                ? double.Parse(said.Split(" ms ")[1].Split(' ')[0], CultureInfo.InvariantCulture)
                : null;
        }
        catch (Win32Exception)
        {
            return null; // no such program on this machine
        }
    }

    private static string? Said(string program, params string[] arguments)
    {
        using var run = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        string said = run.StandardOutput.ReadToEnd();
        run.WaitForExit();
        return run.ExitCode == 0 ? said : null;
    }
}

/// <summary>What the figures were taken on.</summary>
internal static class Machine
{
    public static string Words()
    {
        string model = Line("/proc/cpuinfo", "model name");
        string family = Line("/proc/cpuinfo", "cpu family");
        string load = File.Exists("/proc/loadavg") ? string.Join(' ', File.ReadAllText("/proc/loadavg").Split(' ').Take(3)) : "unknown";
        return string.Create(CultureInfo.InvariantCulture,
            $"Machine: {Environment.ProcessorCount} virtual cores, {model}, family {family}; vectors of 256 bits; .NET {Environment.Version}; load average {load} (other work runs beside).");
    }

    private static string Line(string path, string name) => File.Exists(path)
        ? File.ReadLines(path).FirstOrDefault(line => line.StartsWith(name, StringComparison.Ordinal))?.Split(':')[^1].Trim() ?? "unknown" : "unknown";
}

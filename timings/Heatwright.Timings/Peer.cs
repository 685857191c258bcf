using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;
using Heatwright.Plant;

namespace Heatwright.Timings;

/// <summary>The plain C program, compiled and run where there is a compiler.</summary>
internal static class Peer
{
    internal static readonly string[] Libraries = ["-lsundials_cvode", "-lsundials_nvecserial", "-lsundials_sunmatrixdense", "-lsundials_sunlinsoldense", "-lsundials_sunnonlinsolfixedpoint"];

    /// <summary>Best milliseconds of one mission; null: no compiler here, or not the library that the way asks for.</summary>
    /// <param name="folder">Of the timings.</param>
    /// <param name="way">rk4, or a way of CVODE.</param>
    /// <param name="arguments">As the program takes them.</param>
    public static double? Ms(string folder, string way, params string[] arguments)
    {
        string source = Path.Combine(folder, "peer", "mission.c"), program = Path.Combine(Path.GetTempPath(), "heatwright-mission-" + way);
        try
        {
            string[] built = way == "rk4" ? ["-DPLAIN_ONLY", source, "-o", program, "-lm"] : [source, "-o", program, .. Libraries, "-lm"];
            return Said("gcc", ["-O3", "-march=native", .. built]) is not null && Said(program, [way, .. arguments]) is { } said
                ? double.Parse(said.Split("(best ")[1].Split(')')[0], CultureInfo.InvariantCulture)
                : null;
        }
        catch (Win32Exception)
        {
            return null; // no such program on this machine
        }
    }

    private static string? Said(string program, params string[] arguments)
    {
        using var run = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
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
            $"Machine: {Environment.ProcessorCount} virtual cores, {model}, family {family}; vectors of {64 * SwiftBatch.Width} bits for many, 256 for one; .NET {Environment.Version}; load average {load} (other work runs beside).");
    }

    private static string Line(string path, string name) => File.Exists(path)
        ? File.ReadLines(path).FirstOrDefault(line => line.StartsWith(name, StringComparison.Ordinal))?.Split(':')[^1].Trim() ?? "unknown" : "unknown";
}

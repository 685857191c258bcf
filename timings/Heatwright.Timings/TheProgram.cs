using System.Diagnostics;

namespace Heatwright.Timings;

/// <summary>The program that is measured: as it is installed where HEATWRIGHT_PROGRAM names a published one, else as it was built, which compiles while it runs.</summary>
internal static class TheProgram
{
    private static readonly string? Published = Environment.GetEnvironmentVariable("HEATWRIGHT_PROGRAM");

    /// <summary>Which it is, in words.</summary>
    public static string Words { get; } = Published is null ? "as built, compiled while it runs" : "as published, compiled ahead";

    public static Process Started(params string[] words)
    {
        var start = new ProcessStartInfo(Published ?? (Environment.ProcessPath is { } own && Path.GetFileNameWithoutExtension(own) == "dotnet" ? own : "dotnet")) { RedirectStandardOutput = true, RedirectStandardError = true };
        string[] all = Published is null ? [Path.Combine(AppContext.BaseDirectory, "heatwright.dll"), .. words] : words;
        all.ToList().ForEach(start.ArgumentList.Add);
        return Process.Start(start) ?? throw new InvalidOperationException("The program does not start.");
    }
}

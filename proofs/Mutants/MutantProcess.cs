using System.Diagnostics;
using System.Globalization;

namespace Heatwright.Proofs.Mutants;

/// <summary>A process that tries changes; a new one takes its place when it is lost.</summary>
/// <param name="folder">Folder of the tests and the changed Core.</param>
/// <param name="classes">Parts of the names of the classes that are asked; none: all.</param>
internal sealed class MutantProcess(string folder, string[] classes) : IDisposable
{
    private readonly System.Text.StringBuilder said = new();
    private Process? process;

    /// <summary>What the processes had to say beside their answers.</summary>
    public string Said => said.ToString();

    /// <summary>Lines that answer one line.</summary>
    /// <param name="words">What is asked.</param>
    public IEnumerable<string> Ask(IEnumerable<string> words)
    {
        process ??= Started();
        process.StandardInput.WriteLine(string.Join('\t', words));
        process.StandardInput.Flush();
        while (process.StandardOutput.ReadLine() is { } line)
        {
            yield return line;
        }
    }

    /// <summary>What became of one change: survived, killed, hung, crashed or poisoned, and the test that says so.</summary>
    /// <param name="change">Its number.</param>
    /// <param name="tests">Names of tests in the order in which they are run.</param>
    /// <param name="fresh">In a process of its own, with the change on from the start.</param>
    public string[] Try(int change, IEnumerable<string> tests, bool fresh)
    {
        string[] said = (Ask([fresh ? "fresh" : "try", change.ToString(CultureInfo.InvariantCulture), .. tests]).FirstOrDefault() ?? "crashed").Split('\t');
        if (fresh || said[0] is not ("survived" or "killed"))
        {
            Dispose();
        }

        return said;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        process?.Kill(entireProcessTree: true);
        process?.Dispose();
        process = null;
    }

    private Process Started()
    {
        var start = new ProcessStartInfo("dotnet", [typeof(MutantProcess).Assembly.Location, "mutants-worker", folder, .. classes])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["DOTNET_GCHeapHardLimit"] = "C0000000";
        start.Environment["CsCheck_Threads"] = "1";
        var started = Process.Start(start)!;
        started.ErrorDataReceived += (_, line) => _ = line.Data is null || said.Length > 10_000 ? said : said.AppendLine(line.Data);
        started.BeginErrorReadLine();
        return started;
    }
}

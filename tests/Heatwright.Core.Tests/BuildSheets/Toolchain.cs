using System.Diagnostics;
using System.Globalization;
using Heatwright.BuildSheets;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Compilers of this machine, in a folder of their own. A machine without them skips the tests that need them, and says so.</summary>
internal sealed class Toolchain : IDisposable
{
    public static readonly string[] Strict = ["-Wall", "-Wextra", "-Werror", "-Wconversion", "-pedantic"];

    public string Folder { get; } = Directory.CreateTempSubdirectory("heatwright-code-").FullName;

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    public void Write(IEnumerable<SheetFile> files)
    {
        foreach (var file in files)
        {
            File.WriteAllText(Path.Combine(Folder, file.Name), file.Text);
        }
    }

    /// <summary>Runs a program; skips the test where it is not installed.</summary>
    public (int Exit, string Out, string Error) Run(string program, IEnumerable<string> words, string input = "")
    {
        var start = new ProcessStartInfo(program, words) { WorkingDirectory = Folder, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        Process? process = null;
        try
        {
            process = Process.Start(start);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            Assert.Skip($"'{program}' is not installed here: this build of the code is not tried.");
        }

        using (process)
        {
            var output = process!.StandardOutput.ReadToEndAsync();
            var error = process.StandardError.ReadToEndAsync();
            process.StandardInput.Write(input);
            process.StandardInput.Close();
            if (!process.WaitForExit(60_000))
            {
                process.Kill();
                Assert.Fail($"'{program}' did not end.");
            }

            return (process.ExitCode, output.GetAwaiter().GetResult(), error.GetAwaiter().GetResult());
        }
    }

    /// <summary>Compiles, and must: every complaint is a failure.</summary>
    public void Compile(string compiler, string[] options, string to, params string[] files)
    {
        var done = Run(compiler, [.. Strict, .. options, "-o", to, .. files]);
        Assert.True(done.Exit == 0, done.Error);
    }

    public double[][] Numbers(string output) => [.. output.Split('\n', StringSplitOptions.RemoveEmptyEntries)
        .Select(line => line.Split(' ').Select(word => double.Parse(word, CultureInfo.InvariantCulture)).ToArray())];
}

using System.Diagnostics;
using Heatwright.Cli;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Cli;

/// <summary>Shells finish commands and options with the printed scripts.</summary>
public sealed class CompletionTests : IDisposable
{
    /// <summary>What is typed up to the cursor, and what is offered then; by hand from the commands' sources.</summary>
    private static readonly (string[] Typed, string Offered)[] Cases =
    [
        (["heatwright", "par"], "part"),
        (["heatwright", "part", ""], "add drop label list photo show state"),
        (["heatwright", "trial", "fit"], "fit"),
        (["heatwright", "meter", ""], "add drop list"),
        (["heatwright", "compare", "knife.study", "--"], "--ascii --help --json --to"),
        (["heatwright", "part", "list", "knife.study", "--j"], "--json"),
        (["heatwright", "completion", ""], "bash fish powershell zsh"),
        (["heatwright", "import", "samp"], ""),
        (["heatwright", "--v"], "--version"),
    ];

    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    [Fact]
    public void Bash_offers_what_may_follow() => Offers("bash", "bash", ["--norc", "--noprofile"], (script, typed) =>
        $"source '{script}'; COMP_WORDS=({Words(typed)}); COMP_CWORD={typed.Length - 1}; _heatwright; printf '%s\\n' \"${{COMPREPLY[@]}}\"");

    [Fact]
    public void Zsh_offers_what_may_follow() => Offers("zsh", "zsh", ["-f"], (script, typed) =>
        "compdef() { }; _files() { }; _describe() { local one; for one in \"${(@P)2}\"; do case $one in ($PREFIX*) print -r -- \"${one%%:*}\";; esac; done }; "
        + $"source '{script}'; words=({Words(typed)}); CURRENT={typed.Length}; PREFIX='{typed[^1]}'; _heatwright");

    [Fact]
    public void Fish_offers_what_may_follow() => Offers("fish", "fish", ["--no-config"], (script, typed) =>
        typed[^1] == "samp" ? "true" : $"source '{script}'; cd '{bench.Folder}'; complete -C '{string.Join(' ', typed)}' | string split -f1 \\t");

    [Fact]
    public void Every_script_names_every_command_and_has_its_quotes_in_pairs()
    {
        foreach (string shell in (string[])["bash", "zsh", "fish", "powershell"])
        {
            string script = bench.Type("completion", shell).Out;
            foreach (string words in (string[])["part add", "trial recipe", "shelf constant", "build-sheet", "history"])
            {
                Assert.Contains($"' {words}", script, StringComparison.Ordinal);
            }
        }

        // PowerShell is the one that is seldom there to ask: a quote inside a text is written twice, so their number is even on every line.
        Assert.All(bench.Type("completion", "powershell").Out.Split('\n'), line => Assert.True(line.Count(sign => sign == '\'') % 2 == 0, line));
    }

    [Fact]
    public void Another_shell_is_refused_with_the_list()
    {
        var said = bench.Type("completion", "ksh");
        Assert.Equal(ExitCodes.BadInput, said.Exit);
        Assert.Contains("bash, zsh, fish, powershell", said.Error, StringComparison.Ordinal);
    }

    private static string Words(string[] typed) => string.Join(' ', typed.Select(word => $"'{word}'"));

    private void Offers(string shell, string program, string[] switches, Func<string, string[], string> line)
    {
        if (!(Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program))))
        {
            Assert.Skip($"needs {program}: install it from your system's packages");
        }

        string folder = Directory.CreateTempSubdirectory("heatwright-shell-").FullName;
        try
        {
            string script = Path.Combine(folder, "completion.ps1");
            var said = bench.Type("completion", shell);
            Assert.True(said.Exit == 0, said.Error);
            File.WriteAllText(script, said.Out);
            foreach (var (typed, offered) in Cases)
            {
                Assert.Equal($"{string.Join(' ', typed)} > {offered}", $"{string.Join(' ', typed)} > {Answer(program, [.. switches, "-c", line(script, typed)])}");
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string Answer(string program, string[] words)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["HOME"] = Path.GetTempPath();
        words.ToList().ForEach(start.ArgumentList.Add);
        using var running = Process.Start(start)!;
        var error = running.StandardError.ReadToEndAsync();
        string said = running.StandardOutput.ReadToEnd();
        running.WaitForExit();
        Assert.True(error.GetAwaiter().GetResult().Length == 0, error.Result);
        return string.Join(' ', said.Split(['\n', '\r', ' '], StringSplitOptions.RemoveEmptyEntries).Order(StringComparer.Ordinal));
    }
}

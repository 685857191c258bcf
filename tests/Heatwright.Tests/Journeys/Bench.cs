using System.Text.Json;
using Heatwright.Cli;

namespace Heatwright.Tests.Journeys;

/// <summary>Commands as a maker types them, in a folder of their own.</summary>
internal sealed class Bench : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("heatwright-").FullName;

    public string In(string name) => Path.Combine(Folder, name);

    public (int Exit, string Out, string Error) Type(params string[] words) => TypeWith("", words);

    /// <summary>A command with lines piped into it.</summary>
    public (int Exit, string Out, string Error) TypeWith(string input, params string[] words)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int exit = CommandLine.Run(words, new Screen(output, error, outputIsTerminal: false, errorIsTerminal: false, width: 100) { Input = new StringReader(input) });
        if (exit == 0 && words.Contains("--json") && output.ToString() is { Length: > 0 } answer)
        {
            Cli.AnswerCheck.Forms(Cli.AnswerCheck.Command(words), answer); // whatever a test looks for in it, it keeps to its published schema
        }

        return (exit, output.ToString(), error.ToString());
    }

    /// <summary>Word of each arrangement by its place, worked out from a bundle.</summary>
    public string[] Verdicts(string bundle)
    {
        string file = In(Guid.NewGuid().ToString("N") + ".study");
        var imported = Type("import", bundle, file);
        Assert.True(imported.Exit == 0, imported.Error);
        var studied = Type("study", file, "--json");
        Assert.True(studied.Exit == 0, studied.Error);
        using var json = JsonDocument.Parse(studied.Out);
        Last = studied.Out;
        return [.. json.RootElement.GetProperty("arrangements").EnumerateArray().Select(one => one.GetProperty("verdict").GetString()!)];
    }

    public string Last { get; private set; } = "";

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}

using System.Text.Json;
using Heatwright.Cli;

namespace Heatwright.Tests.Cli;

/// <summary>The command that reads logs, from words to words. Files are made up for their form.</summary>
public sealed class LogCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("log-command").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Json_tells_columns_time_and_refused_lines()
    {
        var (exit, output, _) = Run("log", "read", Write("Zeit (s);U (V);Stand\n0;3,95;an\nfoo\n1;3,90;an\n"), "--json");
        Assert.Equal(0, exit);
        var json = JsonDocument.Parse(output).RootElement;
        Assert.Equal(["Zeit s time", "U V number", "Stand  flag"], json.GetProperty("columns").EnumerateArray()
            .Select(column => $"{column.GetProperty("name").GetString()} {column.GetProperty("unit").GetString()} {column.GetProperty("kind").GetString()}"));
        Assert.Equal((0, "elapsed s", 2), (json.GetProperty("timeColumn").GetInt32(), json.GetProperty("timeBase").GetString(), json.GetProperty("rowsKept").GetInt32()));
        Assert.Equal(3, json.GetProperty("rowsRefused")[0].GetProperty("line").GetInt32());
        Assert.NotEmpty(json.GetProperty("rowsRefused")[0].GetProperty("reason").GetString()!);
        Assert.Equal(0, json.GetProperty("questions").GetArrayLength());
    }

    [Theory]
    [InlineData("t (s);U\n0;1,739\n1;1,742\n", "--decimal-mark", "comma"), InlineData("when,U\n03/04/2024,3.9\n03/04/2024,3.8\n", "--date-order", "month-first")]
    [InlineData("231,240\n232,240\n", "--comma", "separates"), InlineData("time,U\n1:20,1\n1:30,2\n", "--clock", "minutes"), InlineData("time,U\n0,1\n1000,2\n", "--time-unit", "ms")]
    public void A_question_ends_with_2_and_says_what_to_type(string file, string option, string word)
    {
        string path = Write(file);
        var (exit, _, error) = Run("log", "read", path);
        Assert.Equal(2, exit);
        Assert.Contains($"{option} {word}", error, StringComparison.Ordinal);
        Assert.Equal(0, Run("log", "read", path, option, word).Exit);
    }

    [Fact]
    public void A_clean_copy_is_written_once_and_never_over_another()
    {
        string log = Write("t (s);U (V)\n0;3,95\n"), copy = Path.Combine(folder, "clean.csv");
        Assert.Equal(0, Run("log", "read", log, "--csv", copy).Exit);
        Assert.Equal("t [s],U [V]\n0,3.95\n", File.ReadAllText(copy));
        Assert.Equal(2, Run("log", "read", log, "--csv", copy).Exit);
    }

    [Fact]
    public void People_get_a_table() => Assert.Contains("elapsed s, from 't'", Run("log", "read", Write("t (s);U (V)\n0;3,95\n1;3,9\n")).Output, StringComparison.Ordinal);

    [Fact]
    public void A_file_that_is_not_there_and_an_answer_that_is_none_are_said()
    {
        Assert.Equal(2, Run("log", "read", Path.Combine(folder, "nowhere.csv")).Exit);
        var (exit, _, error) = Run("log", "read", Write("1.5\n2.5\n"), "--date-order", "sideways");
        Assert.Equal(2, exit);
        Assert.Contains("sideways", error, StringComparison.Ordinal);
    }

    private string Write(string text)
    {
        string path = Path.Combine(folder, $"{Guid.NewGuid():N}.csv");
        File.WriteAllText(path, text);
        return path;
    }

    private static (int Exit, string Output, string Error) Run(params string[] words)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int exit = CommandLine.Run(words, new Screen(output, error, outputIsTerminal: false, errorIsTerminal: false, width: 120));
        return (exit, output.ToString(), error.ToString());
    }
}

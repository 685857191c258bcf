using System.Globalization;
using System.Text.Json;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Cli;

/// <summary>Runs typed off a film of the meters, by its time code.</summary>
public sealed class FilmRunTests : IDisposable
{
    private readonly Bench bench = new();

    public void Dispose() => bench.Dispose();

    /// <summary>An end of 20 J/K that loses 0.1 W/K, 10 W from 0:10:00 of the film on, by the exact exponential: 200 s of time constant. The camera rested for 40 s after the first minute.</summary>
    private static IEnumerable<string> Lines(char separator, char mark, string cut)
    {
        for (int i = 0; i < 30; i++)
        {
            double t = 10 * i;
            if (t is > 60 and <= 100)
            {
                if (t > 90)
                {
                    yield return cut;
                }

                continue;
            }

            int film = (int)(600 + (t > 60 ? t - 40 : t));
            string Number(double value) => value.ToString("0.00", CultureInfo.InvariantCulture).Replace('.', mark);
            yield return string.Join(separator, $"{film / 60}:{film % 60:00}:00", Number(5), Number(2), Number(20 + (100 * (1 - Math.Exp(-t / 200)))));
        }
    }

    [Theory, InlineData(',', '.'), InlineData(';', ','), InlineData('\t', '.')]
    public void A_table_with_time_codes_is_fitted(char separator, char mark)
    {
        string file = bench.In("film.csv");
        File.WriteAllText(file, $"# air = 20 °C\n# frame rate = 25\n{string.Join(separator, "film", "volts (V)", "amps (A)", "degrees (°C)")}\n{string.Join('\n', Lines(separator, mark, "cut+40s"))}\n");
        var (exit, output, error) = bench.Type("trial", "fit", "warm-up", "--readings", file, "--json");
        Assert.True(exit == 0, error);
        Assert.Equal(200, Value(output, "time constant"), 0.5);
        Assert.Equal(20, Value(output, "heat capacity"), 0.1);
    }

    [Fact]
    public void A_cut_of_unknown_length_is_asked_about()
    {
        string file = bench.In("film.csv");
        File.WriteAllText(file, $"# air = 20 °C\n# frame rate = 25\nfilm,volts (V),amps (A),degrees (°C)\n{string.Join('\n', Lines(',', '.', "cut"))}\n");
        var (exit, _, error) = bench.Type("trial", "fit", "warm-up", "--readings", file, "--json");
        Assert.NotEqual(0, exit);
        Assert.Contains("cut+40s", error, StringComparison.Ordinal);
    }

    [Theory, InlineData("0"), InlineData("5000"), InlineData("-25")]
    public void A_frame_rate_that_no_film_has_is_refused(string rate)
    {
        var (exit, _, error) = bench.Type("trial", "fit", "warm-up", "--read", "time=0:10:00 volts=5 amps=2 degrees=20", "--set", $"frame-rate={rate}");
        Assert.NotEqual(0, exit);
        Assert.Contains("1000", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_run_is_typed_off_a_film_and_its_moments_are_chapter_lines()
    {
        string file = bench.In("knife.study");
        Fine("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), file);
        Fine("trial", "add", file, "warm-up", "--on", "stick", "--name", "filmed");
        Fine(["trial", "enter", file, "filmed", "--run", "filmed-1", "--set", "air=20C", "--set", "frame-rate=25", "--read", .. Lines(' ', '.', "cut+40s")]);

        string[] lines = [.. Read(Fine("pictures", file, bench.In("pictures"), "--json")).GetProperty("chapters").EnumerateArray().Select(line => line.GetString()!)];
        Assert.StartsWith("00:00", lines[0], StringComparison.Ordinal);
        Assert.Contains(lines, line => line.StartsWith("10:00 ", StringComparison.Ordinal) && line.EndsWith("begins", StringComparison.Ordinal));

        // The last reading was taken after 290 s, 40 of which the film does not have.
        Assert.Contains(lines, line => line.StartsWith("14:10 ", StringComparison.Ordinal) && line.EndsWith("ends", StringComparison.Ordinal));
    }

    private string Fine(params string[] words)
    {
        var (exit, output, error) = bench.Type(words);
        Assert.True(exit == 0, $"{string.Join(' ', words)}: {error}");
        return output;
    }

    private static JsonElement Read(string json) => JsonDocument.Parse(json).RootElement;

    private static double Value(string json, string name) => Read(json).GetProperty("findings").EnumerateArray().First(finding => finding.GetProperty("name").GetString() == name).GetProperty("value").GetDouble();
}

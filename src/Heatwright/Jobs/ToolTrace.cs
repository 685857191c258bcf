using System.Globalization;
using System.Text;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>The trace of a prediction as CSV, and the instants at which one is wanted.</summary>
public static class ToolTrace
{
    /// <summary>One column a state, one line an instant; after the end of the run the fields are empty.</summary>
    public static string Csv(ToolPrediction of)
    {
        var trace = of.Run.Trace;
        var columns = new List<(string Name, Func<int, string> At)> { ("t_s", i => Text(trace.TimesS[i])) };
        for (int node = 0; node < trace.NodesK.Length; node++)
        {
            double[] kelvin = trace.NodesK[node];
            columns.Add(($"{of.Tool.Network.Nodes[node].Name.Replace(' ', '_')}_C", i => Text(kelvin[i] - 273.15)));
        }

        columns.AddRange(
        [
            ("sensor_C", i => Text(trace.SensorK[i] - 273.15)), ("charge_left", i => Text(trace.ChargeLeft[i])), ("short_pair_V", i => Text(trace.ShortV[i])),
            ("long_pair_V", i => Text(trace.LongV[i])), ("integral_W", i => Text(trace.IntegralW[i])), ("duty", i => Text(trace.Duty[i])), ("pack_V", i => Text(trace.TerminalV[i])),
            ("pack_A", i => Text(trace.PackA[i])), ("load_W", i => Text(trace.LoadW[i])), ("region", i => i < trace.Count ? RunWords.Of(trace.Regions[i]) : ""),
        ]);
        var text = new StringBuilder().AppendJoin(',', columns.Select(column => column.Name)).Append('\n');
        for (int i = 0; i < trace.TimesS.Length; i++)
        {
            text.AppendJoin(',', columns.Select(column => column.At(i))).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Writes the trace whole or not at all.</summary>
    public static Checked<string> Write(ToolPrediction of, string path)
    {
        string draft = path + ".draft";
        try
        {
            using (var file = File.Create(draft))
            {
                file.Write(Encoding.UTF8.GetBytes(Csv(of)));
                file.Flush(flushToDisk: true);
            }

            File.Move(draft, path, overwrite: true);
            return new(Path.GetFullPath(path));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The trace cannot be written.", path, error.Message, "a folder that may be written to, with room", "Choose another place with --trace."));
        }
    }

    /// <summary>The instants in the first column of a CSV, or in the one called t_s; lines that begin with # are passed over.</summary>
    public static Checked<double[]> Instants(string path)
    {
        try
        {
            string[] lines = [.. File.ReadLines(path).Take(1_000_002).Where(line => line.Length > 0 && line[0] != '#')];
            string[] heading = lines.Length > 0 ? lines[0].Split(',') : [];
            int column = Math.Max(0, Array.FindIndex(heading, name => name.Trim() == "t_s"));
            bool headed = heading.Length > 0 && Read(heading, column) is null;
            var instants = new List<double>();
            for (int i = headed ? 1 : 0; i < lines.Length; i++)
            {
                if (Read(lines[i].Split(','), column) is not { } at || at < 0 || (instants.Count > 0 && at <= instants[^1]))
                {
                    return Refused($"line {i + 1} after comments: '{lines[i]}'");
                }

                instants.Add(at);
            }

            return instants.Count > 0 ? new([.. instants]) : Refused("no instant");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return Refused(error.Message);
        }

        Checked<double[]> Refused(string value) => new(new Problem("The instants of --at cannot be used.", path, value, "a CSV whose column t_s holds rising seconds, 0 or more", "Correct the file."));
    }

    private static double? Read(string[] fields, int column) =>
        column < fields.Length && double.TryParse(fields[column], NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;

    private static string Text(double value) => double.IsNaN(value) ? "" : value.ToString("R", CultureInfo.InvariantCulture);
}

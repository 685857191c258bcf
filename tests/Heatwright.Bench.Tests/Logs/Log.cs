using System.Text;
using Heatwright.Logs;

namespace Heatwright.Tests.Logs;

/// <summary>Small files for the tests, and shorthands to look at what was read.</summary>
internal static class Log
{
    public static LogReading Read(string text, LogMapping? remembered = null) => LogReader.Read(Encoding.UTF8.GetBytes(text), remembered);

    public static LogReading File(string name) => LogReader.Read(System.IO.File.ReadAllBytes(Repository.Reference(Path.Combine("loggers", name))));

    public static string[] Names(this LogReading reading) => [.. reading.Columns.Select(column => column.Name)];

    public static string[] UnitSymbols(this LogReading reading) => [.. reading.Columns.Select(column => column.Unit?.Symbol ?? "")];

    public static double[] Values(this LogReading reading, string name) => reading.Columns.Single(column => column.Name == name).Values;

    public static LogColumn Column(this LogReading reading, string name) => reading.Columns.Single(column => column.Name == name);

    public static void IsSettled(this LogReading reading) => Assert.Empty(reading.Questions);
}

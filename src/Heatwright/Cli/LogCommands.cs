using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Heatwright.Jobs;
using Heatwright.Logs;
using Heatwright.Quantities;
using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>Commands about measurement logs.</summary>
internal static class LogCommands
{
    private const int MostRefusedShown = 10;

    private static readonly JsonSerializerOptions Pretty = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.Strict,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static Command Log(Screen screen) => new("log", "Measurement logs. Example: heatwright log read discharge.csv") { Read(screen), LogImportCommands.Import(screen), LogImportCommands.Offset(screen) };

    private static Command Read(Screen screen)
    {
        var file = new Argument<string>("FILE") { Description = "The log: a text file of readings, as docs/formats/logs.md describes." };
        var json = Answers.Json<LogView>(written: Pretty);
        var csv = new Option<string>("--csv") { Description = "Write a clean copy: commas, decimal points, units in the header." };
        var answers = LogAnswers.Options();
        var command = new Command("read", "Reads a log as it comes from an instrument and shows its columns, units and time. Example: heatwright log read discharge.csv --csv clean.csv") { file, json, csv };
        foreach (var option in answers.All)
        {
            command.Options.Add(option);
        }

        command.SetAction(parsed =>
        {
            var read = answers.Given(parsed).Then(mapping => ReadLog.Run(parsed.GetValue(file)!, mapping));
            return Answer(screen, read, parsed.GetValue(json), parsed.GetValue(csv));
        });
        return command;
    }

    private static int Answer(Screen screen, Checked<LogReading> read, bool json, string? csv)
    {
        if (!read.IsFine)
        {
            screen.Complain(read.Problems);
            return ExitCodes.BadInput;
        }

        var reading = read.Value;
        if (json)
        {
            Answers.Write(screen, LogView.Of(reading), Pretty);
        }
        else
        {
            Show(screen, reading);
        }

        if (reading.Questions.Count > 0)
        {
            screen.Complain([.. reading.Questions.Select(LogAnswers.Asked)]);
            return ExitCodes.BadInput;
        }

        return csv is null ? ExitCodes.Done : Copied(screen, ReadLog.Copy(reading, csv), json);
    }

    private static int Copied(Screen screen, Checked<string> copied, bool json)
    {
        if (!copied.IsFine)
        {
            screen.Complain(copied.Problems);
            return ExitCodes.BadInput;
        }

        if (!json)
        {
            screen.Say($"Clean copy: {copied.Value}");
        }

        return ExitCodes.Done;
    }

    private static void Show(Screen screen, LogReading reading)
    {
        var table = Answers.Table("column", "unit", "kind", "readings", "over range");
        foreach (var column in reading.Columns)
        {
            int count = column.Texts.Count > 0 ? column.Texts.Count(text => text.Length > 0) : column.Values.Count(value => !double.IsNaN(value));
            table.AddRow([.. new[]
            {
                column.Name, LogView.Unit(column) ?? "", LogView.Kind(column.Kind), Counted(count), Counted(column.Overload.Count(over => over)),
            }.Select(text => new Cell(text))]);
        }

        screen.Show(table);
        string time = reading.TimeColumn is { } index ? $"{reading.TimeBase.Word()}, from '{reading.Columns[index].Name}'" : reading.TimeBase.Word();
        screen.Say($"Time: {time}. Rows kept: {Counted(reading.RowsKept)}. Lines refused: {Counted(reading.RowsRefusedCount)}.");
        foreach (var row in reading.RowsRefused.Take(MostRefusedShown))
        {
            screen.Say($"  line {Counted(row.Line)}: {row.Reason}");
        }

        foreach (string note in reading.Notes)
        {
            screen.Say(note);
        }
    }

    private static string Counted(int count) => count.ToString(CultureInfo.InvariantCulture);
}

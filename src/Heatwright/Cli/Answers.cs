using System.CommandLine;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Heatwright.Cli.Answering;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>What all commands share: JSON for machines, tables for people, and how a command ends.</summary>
internal static class Answers
{
    public static readonly JsonSerializerOptions Pretty = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        NumberHandling = JsonNumberHandling.Strict,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.CamelCase), new IdConverter() },
    };

    /// <summary>The option that asks for the answer as JSON.</summary>
    /// <typeparam name="T">What the answer is made of.</typeparam>
    /// <param name="when">In which case, where the command has several answers.</param>
    /// <param name="written">How it is written; null: as most answers are.</param>
    public static JsonOption Json<T>(string when = "", JsonSerializerOptions? written = null) => new JsonOption("Write the result as JSON for machines.").Or<T>(when, written);

    public static Argument<string> StudyFile() => new("FILE") { Description = "The study file." };

    /// <summary>Problems, or the answer as JSON or in words.</summary>
    public static int Give<T>(Screen screen, Checked<T> outcome, bool json, Func<T, object> machine, Action<T> people)
    {
        if (!outcome.IsFine)
        {
            screen.Complain(outcome.Problems);
            return ExitCodes.BadInput;
        }

        if (json)
        {
            Write(screen, machine(outcome.Value));
        }
        else
        {
            people(outcome.Value);
        }

        return ExitCodes.Done;
    }

    /// <summary>An answer for machines.</summary>
    /// <param name="screen">Where to.</param>
    /// <param name="answer">What is written.</param>
    /// <param name="options">How; null: as most commands do.</param>
    public static void Write(Screen screen, object answer, JsonSerializerOptions? options = null)
    {
        screen.Output.WriteLine(JsonSerializer.Serialize(answer, options ?? Pretty));
    }

    /// <summary>Works an opened study out and answers from what came of it; a study that contradicts itself is refused.</summary>
    public static int WorkedOut(Screen screen, Checked<OpenedStudy> opened, Func<OpenedStudy, StudyResult, int> answer)
    {
        if (!opened.IsFine)
        {
            screen.Complain(opened.Problems);
            return ExitCodes.BadInput;
        }

        var study = opened.Value.Study;
        var contradictions = Contradictions.Of(study);
        if (contradictions.Count > 0)
        {
            screen.Complain(contradictions);
            return ExitCodes.Contradiction;
        }

        return answer(opened.Value, RunStudy.Run(study, opened.Value.Fingerprint, screen.Progress));
    }

    public static Table Table(params string[] headings)
    {
        var table = new Table { Border = TableBorder.Simple };
        foreach (string heading in headings)
        {
            table.AddColumn(new TableColumn(new Cell(heading)));
        }

        return table;
    }

    public static void Row(this Table table, params string[] cells) => table.AddRow([.. cells.Select(cell => new Cell(cell))]);

    private sealed class IdConverter : JsonConverter<PartId>
    {
        public override PartId Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => new(reader.GetString()!);

        public override void Write(Utf8JsonWriter writer, PartId value, JsonSerializerOptions options) => writer.WriteStringValue(value.Name);
    }
}

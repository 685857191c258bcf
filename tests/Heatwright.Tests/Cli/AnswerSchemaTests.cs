using System.CommandLine;
using System.CommandLine.Invocation;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heatwright.Cli;
using Heatwright.Cli.Answering;
using Heatwright.Tests.Journeys;
using Json.Schema;

namespace Heatwright.Tests.Cli;

/// <summary>What commands answer with --json is published, and they keep to it. Every other test that types a command with --json is held against the same schemas.</summary>
public sealed class AnswerSchemaTests : IDisposable
{
    private static readonly RootCommand Root = CommandLine.Table(new Screen(TextWriter.Null, TextWriter.Null, false, false, 100));

    private readonly Bench bench = new();

    private readonly HashSet<string> seen = new(StringComparer.Ordinal);

    public void Dispose() => bench.Dispose();

    [Fact]
    public void The_schemas_and_their_page_are_what_the_program_writes_today()
    {
        var written = bench.Type("help", "--write-schemas", bench.Folder);
        Assert.True(written.Exit == 0, written.Error);
        Assert.All(["answers.schema.json", "answers.md"], name =>
            Assert.True(File.ReadAllText(bench.In(name)) == File.ReadAllText(Path.Combine(Repository.Root, "docs", "formats", name)).ReplaceLineEndings("\n"), $"docs/formats/{name} is stale: run 'dotnet run --project src/Heatwright -- help --write-schemas docs/formats'."));
    }

    [Fact]
    public void The_document_is_a_schema_of_the_draft_that_it_names_and_every_field_says_what_it_means()
    {
        using var document = JsonDocument.Parse(AnswerCheck.Document.ToJsonString());
        Assert.Equal("https://json-schema.org/draft/2020-12/schema", document.RootElement.GetProperty("$schema").GetString());
        Assert.True(MetaSchemas.Draft202012.Evaluate(document.RootElement).IsValid);
        foreach (var (name, record) in AnswerCheck.Document["$defs"]!.AsObject().Where(pair => char.IsUpper(pair.Key[0])))
        {
            Assert.True(record!["description"]!.GetValue<string>().Length > 0, name);
            Assert.All(record["properties"]!.AsObject(), field => Assert.True(field.Value!["description"]!.GetValue<string>().Length > 0, $"{name}.{field.Key}"));
        }
    }

    [Fact]
    public void Every_command_that_answers_machines_has_a_schema_of_its_name()
    {
        string[] commands = [.. new CommandCard(Root).All().Where(card => card.Options.Any(option => option.Name == "--json")).Select(card => card.Words.Replace(' ', '-'))];
        Assert.True(commands.Length > 60, $"{commands.Length}");
        Assert.Equal([.. commands.Append("problems").Order(StringComparer.Ordinal)], AnswerSchemas.Whole(AnswerCheck.Document).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_field_too_many_too_few_or_of_another_kind_is_noticed()
    {
        var (_, schema) = Assert.Single(AnswerCheck.Of("new"));
        // By hand from the page: study is words, the others are whole numbers.
        Assert.Equal("", AnswerCheck.Against(schema, """{ "study": "bow", "parts": 1, "trials": 2, "arrangements": 0 }"""));
        Assert.All((string[])["""{ "study": "bow", "parts": 1, "trials": 2 }""", """{ "study": "bow", "parts": "1", "trials": 2, "arrangements": 0 }""", """{ "study": "bow", "parts": 1, "trials": 2, "arrangements": 0, "cells": 1 }""", """{ "study": null, "parts": 1, "trials": 2, "arrangements": 0 }""", "[]"],
            wrong => Assert.NotEqual("", AnswerCheck.Against(schema, wrong)));
    }

    [Fact]
    public void Each_command_has_its_schema_in_a_file_that_needs_no_other()
    {
        var said = Run("help", "--schemas", bench.In("schemas"));
        string[] files = [.. Directory.GetFiles(bench.In("schemas")).Select(path => Path.GetFileName(path)!).Order(StringComparer.Ordinal)];
        Assert.Equal(files, JsonNode.Parse(said)!["files"]!.AsArray().Select(one => one!.GetValue<string>()).Order(StringComparer.Ordinal));
        Assert.Equal(AnswerSchemas.Whole(AnswerCheck.Document).Select(name => name + ".schema.json").Order(StringComparer.Ordinal), files);
        Assert.Equal("", AnswerCheck.Against(JsonSchema.FromText(File.ReadAllText(bench.In("schemas/sum.schema.json"))), bench.Type("sum", "ohms-law", "volts=12V", "ohms=3.6ohm", "--json").Out));
        var refused = bench.Type("help", "--schemas", bench.In("schemas/sum.schema.json"));
        Assert.Equal(ExitCodes.BadInput, refused.Exit);
        Assert.Contains("Name a folder", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_machine_gets_problems_as_one_object_and_a_person_gets_them_in_words()
    {
        var said = bench.Type("part", "list", bench.In("nowhere.study"), "--json");
        Assert.Equal((ExitCodes.BadInput, ""), (said.Exit, said.Out));
        AnswerCheck.Forms("problems", said.Error);
        var problem = Assert.Single(JsonNode.Parse(said.Error)!["problems"]!.AsArray())!;
        string[] words = [.. ((string[])["what", "where", "value", "limit", "next"]).Select(field => problem[field]!.GetValue<string>())];
        string[] lines = bench.Type("part", "list", bench.In("nowhere.study")).Error.ReplaceLineEndings("\n").TrimEnd().Split('\n');
        Assert.Equal([words[0], $"  where  {words[1]}", $"  value  {words[2]}", $"  limit  {words[3]}", $"  next   {words[4]}"], lines);

        // A word that no command knows is told the same way, and two lines that are refused are one object.
        AnswerCheck.Forms("problems", bench.Type("part", "lost", "--json").Error);
        Assert.All(bench.Type("sum", "ohms-law", "volts=Ω", "--json", "--ascii").Error, sign => Assert.True(char.IsAscii(sign)));
    }

    [Fact]
    public async Task Every_answer_of_every_command_keeps_to_its_schema()
    {
        string pen = Pen(), shelf = bench.In("shelf.study"), photo = bench.In("photo.png"), mine = bench.In("mine.study"), blank = bench.In("blank.study");
        File.WriteAllBytes(photo, PhotoJourney.OnePixel);
        Run("new", blank, "--name", "blank");
        Parts(pen, shelf, photo);
        Bench(pen);
        Wiring(pen);
        Choice(pen);
        Keeping(pen);
        Run("share", pen, bench.In("viewers.zip"), "--without", "prices");
        Run("import", bench.In("viewers.zip"), mine);
        Run("beside", mine);
        Mine(mine);
        Words();
        await Served(pen);

        // The demo takes the longest by far: its own journey types it, and is held against the schema too.
        string[] promised = [.. new CommandCard(Root).All().SelectMany(card => card.Answers.Select(form => $"{card.Words}: {form.When}")).Except(["demo: "])];
        Assert.Equal([], promised.Except(seen));
    }

    private void Parts(string pen, string shelf, string photo)
    {
        Run("part", "add", pen, "spare", "heater", "spare loop", "--claimed", "ohms=6.8ohm (label)", "--note", "from the drawer");
        Run("part", "state", pen, "spare", "--measured", "mass=1.2g±0.1g (scale)");
        Run("part", "show", pen, "slim");
        Run("part", "list", pen);
        Run("part", "photo", pen, "spare", photo, "--note", "label side");
        Run("part", "label", pen, "spare");
        Run("part", "add", pen, "wrong", "switch", "wrong one");
        Run("part", "drop", pen, "wrong");
        Run("claims", "--text", Path.Combine(Repository.Root, "tests", "reference", "listings", "08-step-up-150.txt"));
        Run("give", pen, "spare", "--shelf", shelf);
        Run("take", pen, "spare", "--as", "spare-two", "--shelf", shelf);
        Run("shelf", "show", "--shelf", shelf);
        Run("shelf", "compare", pen, "--shelf", shelf);
        Run("shelf", "currency", "EUR", "--shelf", shelf);
        Run("shelf", "resistors", "10R", "4k7", "--shelf", shelf);
        Run("shelf", "price", "silicone wire, 1 m", "0.90", "--shelf", shelf);
        Run("shelf", "constant", "stroke of the pen", "3J", "--why", "own trial", "--shelf", shelf);
    }

    private void Bench(string pen)
    {
        Run("meter", "add", pen, "pocket", "pocket meter", "--reads", "ohm=1%+0.1ohm", "--step", "ohm=0.1ohm");
        Run("meter", "list", pen);
        Run("meter", "add", pen, "lent", "--reads", "V=1%", "A=1%");
        Run("meter", "drop", pen, "lent", "A");
        Run("trial", "kinds");
        Run("trial", "recipe", "cold-ohms");
        Run("trial", "fit", "cold-ohms", "--read", "ohms=7.4", "--set", "leads=0.2ohm");
        Run("trial", "check");
        Run("trial", "check", "--fact", "wanted-amps=1A", "--fact", "switch-amps=3A", "--fact", "volts-in=3.3V", "--fact", "volts-out=12V");
        Run("trial", "add", pen, "cold-ohms", "--on", "spare");
        Run("trial", "enter", pen, "spare-cold-ohms", "--set", "leads=0.2ohm", "--meter", "ohms=pocket", "--read", "7.1", "7.0", "70", "OL");
        Run("trial", "list", pen);
        Run("strike", pen, "spare-cold-ohms-1", "3", "--because", "wrong range");
        Run("stand", pen, "spare-cold-ohms-1", "3");
        Run("strike", pen, "spare-cold-ohms-1", "3", "--because", "wrong range");
        Run("trial", "add", pen, "cold-ohms", "--on", "spare", "--name", "twice");
        Run("trial", "drop", pen, "twice");
        Run("trial", "set", pen, "spare-cold-ohms-1", "--set", "leads=0.2ohm");
        Run("trial", "add", pen, "discharge", "--on", "slim", "--name", "again");

        string log = bench.In("one.csv"), two = bench.In("two.csv");
        // A hum that climbs goes together with itself at one offset only.
        static string Table(double ahead) => "t (s),U (V),I (A)\n" + string.Concat(Enumerable.Range(0, 120).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i},{4 - (0.1 * Math.Sin(0.01 * (i - ahead) * (i - ahead))):0.000},0.6\n")));
        File.WriteAllText(log, Table(0));
        File.WriteAllText(two, Table(5));
        Run("log", "read", log);
        Run("log", "offset", log, two);
        Run("log", "import", log, pen, "--trial", "again");
        Run("sheets", pen, two, "--trial", "again");
        string frames = bench.In("load.frames");
        File.WriteAllLines(frames, ["heatwright frames 1", "0.000 < U=4.10V I=0.6A\\n", "0.050 < U=4.09V I=OL\\n", "0.100 < ????\\n"]);
        Run("listen", $"load=replay:{frames}");
    }

    private void Wiring(string pen)
    {
        Run("loop", pen, "A");
        Run("arrange", pen, "--cell", "slim", "--heater", "loop", "--letter", "B");
        Run("clone", pen, "A", "--heater", "spare", "--letter", "C");
        Run("rewire", pen, "C", "--heater", "loop");
        Run("differences", pen, "A", "B");
        Run("unwire", pen, "B");
        Run("undo", pen);
        Run("undo", pen);
        Run("redo", pen);
        Run("undo", pen);
        Run("undo", pen);
        Run("undo", pen); // only A is left: what follows runs it over a whole charge
        Run("try", pen, "A");
        Run("try", pen, "A", "--set", "series=2");
        Run("tool", "add", pen, "X", "mains wax pen", "--read", "warm-up time=40s±2s (stopwatch)");
    }

    private void Choice(string pen)
    {
        Run("brief", pen);
        Run("brief", pen, "--say", "grip at most 43 °C");
        Run("brief", pen, "--set", "every=40s");
        Run("study", pen);
        Run("predict", pen, "--arrangement", "A");
        Run("compare", pen);
        Run("why", pen, "A", "--matters", "8");
        Run("next", pen, "--minutes", "40");
        Run("search", pen);
        Run("decide", pen, "A", "--because", "the only one", "--on", "2026-03-01");
        Run("check", pen, "--read", "ready=12 s ± 0.5 s", "--on", "2026-04-01");
        Run("build-sheet", pen, "--out", bench.In("sheet"), "--on", "2026-04-01");
        Run("build-sheet", pen, "--names");
        Run("report", pen, "--to", bench.In("pen.html"), "--on", "2026-04-01");
        Run("pictures", pen, bench.In("pictures"), "--on", "2026-04-01");
    }

    private void Keeping(string pen)
    {
        Run("history", pen);
        Run("history", pen, "--of", "spare");
        Run("file", "add", pen, bench.In("one.csv"), "--note", "raw");
        Run("file", "list", pen);
        Run("file", "take", pen, "one.csv", bench.In("back.csv"));
        Run("file", "drop", pen, "one.csv");
        Run("export", pen, bench.In("pen.zip"));
        Run("examine", pen);
        string number = JsonNode.Parse(Run("openings", pen))![0]!["number"]!.ToString();
        Run("openings", pen, "--restore", number, "--to", bench.In("as-it-was.study"));
        Run("pack", pen);
    }

    private void Mine(string mine)
    {
        Run("trial", "enter", mine, "mine-loop-cold", "--run", "mine-loop-cold-1", "--set", "leads=0.2ohm", "--read", "7.1", "7.1");
        Run("beside", mine, "--wire", "A");
    }

    private void Words()
    {
        Run("sum");
        Run("sum", "ohms-law");
        Run("sum", "trace-width", "current=5A", "rise=20K", "copper=1oz");
        Run("sum", "step-up-stage", JsonNode.Parse(Run("sum", "step-up-stage"))!["example"]!.GetValue<string>());
        Run("help", "part", "add");
        Run("help", "--schemas", bench.In("all"));
    }

    /// <summary>The one command that does not end by itself.</summary>
    private async Task Served(string pen)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        var running = CommandLine.Table(new Screen(output, error, false, false, 100)).Parse(["serve", pen, "--no-browser", "--json"]).InvokeAsync(new InvocationConfiguration(), stop.Token);
        while (!output.ToString().TrimEnd().EndsWith('}') && !running.IsCompleted)
        {
            await Task.Delay(20, TestContext.Current.CancellationToken);
        }

        await stop.CancelAsync();
        await running;
        Note("serve", output.ToString());
    }

    /// <summary>A command with --json: it ends well, and what it says has a form that is promised.</summary>
    private string Run(params string[] words)
    {
        string[] typed = words is ["sum", var law, var inputs] && inputs.Contains(' ', StringComparison.Ordinal) ? ["sum", law, .. inputs.Split(' ')] : words;
        var said = bench.Type([.. typed, "--json"]);
        Assert.True(said.Exit == 0 || (words is ["trial", "enter", ..] && said.Out.Length > 0), $"{string.Join(' ', typed)}: {said.Error}");
        Note(AnswerCheck.Command(typed), said.Out);
        return said.Out;
    }

    private void Note(string command, string answer)
    {
        var card = new CommandCard(Root).All().Single(one => one.Words.Replace(' ', '-') == command);
        foreach (string form in AnswerCheck.Forms(command, answer))
        {
            seen.Add($"{card.Words}: {card.Answers.Single(one => one.When.Length == 0 ? form.Length == 0 : string.Equals(one.When + ".", form, StringComparison.OrdinalIgnoreCase)).When}");
        }
    }

    /// <summary>The wax pen of the samples with one arrangement and few trials: quickly worked out.</summary>
    private string Pen()
    {
        string from = Path.Combine(Repository.Root, "samples", "wax-pen"), bundle = bench.In("bundle");
        var study = JsonNode.Parse(File.ReadAllText(Path.Combine(from, "study.json")))!;
        study["arrangements"] = new JsonArray(study["arrangements"]![0]!.DeepClone());
        study["trials"] = new JsonArray([.. study["trials"]!.AsArray().Where(trial => trial!["part"]!.GetValue<string>() is not ("spoon" or "module") && trial["id"]!.GetValue<string>() != "slim-pulses").Select(trial => trial!.DeepClone())]);
        Directory.CreateDirectory(Path.Combine(bundle, "runs"));
        File.WriteAllText(Path.Combine(bundle, "study.json"), study.ToJsonString());
        foreach (string run in study["trials"]!.AsArray().SelectMany(trial => trial!["runs"]!.AsArray()).Select(run => run!["id"]!.GetValue<string>()))
        {
            File.Copy(Path.Combine(from, "runs", run + ".csv"), Path.Combine(bundle, "runs", run + ".csv"));
        }

        string pen = bench.In("pen.study");
        Run("import", bundle, pen);
        return pen;
    }
}

using System.Globalization;
using System.Text.Json;
using Heatwright.Cli;
using Heatwright.Jobs;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Cli;

/// <summary>Every command that knows --json is typed with it; what it writes has the shape that is published, and the published shapes are those of today.</summary>
public sealed class AnswerSchemaTests : IDisposable
{
    private static readonly string Published = Path.Combine(Repository.Root, "docs", "formats", "answers.schema.json");

    /// <summary>They write until they are stopped: lines of an instrument (docs/formats/live.md), and the address of the pages.</summary>
    private static readonly string[] Endless = ["listen", "serve"];

    private readonly Bench bench = new();

    private readonly List<(string Words, Type Shape, JsonSerializerOptions Options)> shapes = [];

    private readonly JsonElement definitions = JsonDocument.Parse(File.Exists(Published) ? File.ReadAllText(Published) : "{\"$defs\":{}}").RootElement.GetProperty("$defs");

    private string Bow => bench.In("bow.study");

    public void Dispose() => bench.Dispose();

    [Fact]
    public void What_commands_write_for_machines_has_the_published_shape()
    {
        Parts();
        Readings();
        Keeping();
        Verdicts();
        Laws();
        string[] known = [.. new CommandCard(CommandLine.Table(new Screen(TextWriter.Null, TextWriter.Null, false, false, 100))).All().Where(card => card.Options.Any(option => option.Name == "--json")).Select(card => card.Words).Order(StringComparer.Ordinal)];
        Assert.Equal(known, shapes.Select(one => one.Words).Concat(Endless).Distinct().Order(StringComparer.Ordinal));
        string schema = AnswerSchema.Text(shapes);
        if (Environment.GetEnvironmentVariable("HEATWRIGHT_WRITE") == "1")
        {
            File.WriteAllText(Published, schema);
        }

        Assert.True(File.ReadAllText(Published).ReplaceLineEndings("\n") == schema, "docs/formats/answers.schema.json is stale: run this test with HEATWRIGHT_WRITE=1.");
    }

    [Fact]
    public void All_but_what_prints_a_script_knows_json()
    {
        var cards = new CommandCard(CommandLine.Table(new Screen(TextWriter.Null, TextWriter.Null, false, false, 100))).All().Where(card => card.Words.Length > 0 && card.Commands.Count == 0);
        Assert.Equal(["completion"], cards.Where(card => card.Options.All(option => option.Name != "--json")).Select(card => card.Words));
    }

    [Fact]
    public void A_wrong_shape_is_seen()
    {
        using var schema = JsonDocument.Parse("""{"type":"object","properties":{"a":{"type":"string"},"b":{"type":["number","null"]},"c":{"type":"array","items":{"type":"integer"}}},"required":["a"]}""");
        Assert.Equal("", Unlike("""{"a":"x","b":null,"c":[1,2]}"""));
        Assert.NotEqual("", Unlike("""{"a":1}"""));
        Assert.NotEqual("", Unlike("""{"a":"x","c":[1,"2"]}"""));
        Assert.NotEqual("", Unlike("""{"a":"x","d":1}"""));
        Assert.NotEqual("", Unlike("""{"b":1}"""));

        string Unlike(string text)
        {
            using var json = JsonDocument.Parse(text);
            return Difference(json.RootElement, schema.RootElement, schema.RootElement, "$");
        }
    }

    private void Parts()
    {
        string shelf = bench.In("own/shelf.study");
        Json("new", "new", Bow);
        Json("meter add", "meter", "add", Bow, "bench", "bench meter", "--reads", "V=0.5%+2mV");
        Json("meter list", "meter", "list", Bow);
        Json("part add", "part", "add", Bow, "wire", "heater", "foam wire", "--measured", "ohms=2.71ohm (meter)", "--claimed", "rated volts=3.7V");
        Json("part state", "part", "state", Bow, "wire", "--measured", "mass=1g");
        Json("part add", "part", "add", Bow, "round", "cell", "round cell", "--claimed", "capacity=2600mAh");
        Json("part show", "part", "show", Bow, "wire");
        Json("part list", "part", "list", Bow);
        File.WriteAllBytes(bench.In("wire.png"), PhotoJourney.OnePixel);
        Json("part photo", "part", "photo", Bow, "wire", bench.In("wire.png"));
        Json("part label", "part", "label", Bow, "wire", "--to", bench.In("labels.svg"));
        File.WriteAllText(bench.In("listing.txt"), "Heater 12V 40W, 2600mAh cell");
        Json("claims", "claims", "--text", bench.In("listing.txt"));
        Json("part add", "part", "add", Bow, "spare", "leads", "spare leads");
        Json("part drop", "part", "drop", Bow, "spare");
        Json("give", "give", Bow, "wire", "--shelf", shelf);
        Json("shelf show", "shelf", "show", "--shelf", shelf);
        Json("shelf compare", "shelf", "compare", Bow, "--shelf", shelf);
        Json("shelf currency", "shelf", "currency", "EUR", "--shelf", shelf);
        Json("shelf resistors", "shelf", "resistors", "10R", "4k7", "--shelf", shelf);
        Json("shelf price", "shelf", "price", "wire", "0.90", "--shelf", shelf);
        Json("shelf constant", "shelf", "constant", "cut", "55J", "--why", "own trial", "--shelf", shelf);
        Json("take", "take", Bow, "wire", "--shelf", shelf, "--as", "wire-2");
        Json("arrange", "arrange", Bow, "--heater", "wire");
        Json("clone", "clone", Bow, "A", "--pack", "2S1P");
        Json("rewire", "rewire", Bow, "B", "--pack", "1S2P");
        Json("loop", "loop", Bow, "A");
        Json("differences", "differences", Bow, "A", "B");
        Json("tool add", "tool", "add", Bow, "X", "mains bow", "--read", "mass=410g (scale)");
    }

    private void Readings()
    {
        Json("trial add", "trial", "add", Bow, "cold-ohms", "--on", "wire");
        Json("trial enter", "trial", "enter", Bow, "wire-cold-ohms", "--set", "leads=0.2ohm", "--read", "2.94", "2.95", "OL");
        Json("trial list", "trial", "list", Bow);
        Json("trial add", "trial", "add", Bow, "discharge", "--on", "round");
        File.WriteAllText(bench.In("log.csv"), "time s,volts V,amps A\n" + string.Concat(Enumerable.Range(0, 30).Select(i => string.Create(CultureInfo.InvariantCulture, $"{60 * i},{4.1 - (0.03 * i):0.000},1.000\n"))));
        Json("log read", "log", "read", bench.In("log.csv"));
        Json("log import", "log", "import", bench.In("log.csv"), Bow, "--trial", "round-discharge");
        File.Copy(bench.In("log.csv"), bench.In("sheet.csv"));
        Json("sheets", "sheets", Bow, bench.In("sheet.csv"), "--trial", "round-discharge");
        double[] switches = [12.3, 20.1, 47.7, 61.2, 90.4, 131.9, 140.2, 171.3];
        bool On(double at)
        {
            return switches.Count(moment => moment <= at) % 2 == 1;
        }

        File.WriteAllText(bench.In("volts.csv"), "time s,volts V\n" + string.Concat(Enumerable.Range(0, 400).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i * 0.5:0.0},{(On(i * 0.5) ? 3.6 : 4.1) + (0.001 * (i % 7)):0.000}\n"))));
        File.WriteAllText(bench.In("amps.csv"), "time s,amps A\n" + string.Concat(Enumerable.Range(0, 400).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i * 0.5:0.0},{(On((i * 0.5) + 37.4) ? 1.52 : 0.0) + (0.002 * (i % 5)):0.000}\n"))));
        Json("log offset", "log", "offset", bench.In("volts.csv"), bench.In("amps.csv"));
        Json("trial add", "trial", "add", Bow, "two-point-drop", "--on", "round", "--name", "spare");
        Json("trial drop", "trial", "drop", Bow, "spare");
        Json("trial kinds", "trial", "kinds");
        Json("trial recipe", "trial", "recipe", "cold-ohms");
        Json("trial fit", "trial", "fit", "cold-ohms", "--read", "ohms=7.4", "--set", "leads=0.2");
        Json("trial check", "trial", "check");
        Json("trial check", "trial", "check", "--fact", "wanted-amps=1A", "--fact", "switch-amps=3A", "--fact", "volts-in=3.3V", "--fact", "volts-out=12V");
        Json("strike", "strike", Bow, "wire-cold-ohms-1", "1", "--because", "clip loose");
        Json("stand", "stand", Bow, "wire-cold-ohms-1", "1");
    }

    private void Keeping()
    {
        Json("file add", "file", "add", Bow, bench.In("log.csv"));
        Json("file list", "file", "list", Bow);
        Json("file take", "file", "take", Bow, "log.csv", bench.In("copy.csv"));
        Json("file drop", "file", "drop", Bow, "log.csv");
        Json("history", "history", Bow);
        Json("history", "history", Bow, "--of", "wire");
        Json("undo", "undo", Bow);
        Json("redo", "redo", Bow);
        Json("export", "export", Bow, bench.In("bow.zip"));
        Json("import", "import", bench.In("bow.zip"), bench.In("again.study"));
        Json("share", "share", Bow, bench.In("sent.zip"), "--without", "prices");
        Json("import", "import", bench.In("sent.zip"), bench.In("mine.study"));
        Json("trial enter", "trial", "enter", bench.In("mine.study"), "mine-wire-cold-ohms", "--run", "mine-wire-cold-ohms-1", "--read", "2.9");
        Json("beside", "beside", bench.In("mine.study"));
        Json("beside", "beside", bench.In("mine.study"), "--wire", "A");
        Json("pack", "pack", Bow);
        Json("examine", "examine", Bow, "--rescue", bench.In("rescued.study"));
        Json("openings", "openings", Bow);
        Json("openings", "openings", Bow, "--restore", Openings()[0], "--to", bench.In("as-it-was.study"));
    }

    private void Verdicts()
    {
        string study = bench.In("sample.study");
        Json("import", "import", Path.Combine(Repository.Root, "samples", "foam-bow"), study);
        // One arrangement is enough for a shape.
        Assert.True(ChangeStudy.Run(study, "one is enough", now => new(now with { Arrangements = [.. now.Arrangements.Where(one => one.Letter == "C")] })).IsFine);
        Json("brief", "brief", study);
        Json("brief", "brief", study, "--say", "grip at most 43 °C");
        Json("brief", "brief", study, "--set", "every=60s");
        Json("study", "study", study);
        Json("report", "report", study, "--to", bench.In("report.html"));
        Json("pictures", "pictures", study, bench.In("pictures"), "--film", "thick-up-and-down-1=2:10");
        Json("predict", "predict", study, "--arrangement", "C");
        Json("compare", "compare", study);
        Json("why", "why", study, "C");
        Json("next", "next", study);
        Json("search", "search", study);
        Json("decide", "decide", study, "C", "--because", "no converter", "--on", "2026-03-01");
        Json("check", "check", study, "--read", "ready=5.1s±0.2s");
        Json("build-sheet", "build-sheet", study, "--arrangement", "C", "--out", bench.In("sheet"));
        Json("build-sheet", "build-sheet", study, "--names");
        Json("demo", "demo", "--into", Directory.CreateDirectory(bench.In("demo")).FullName);
    }

    private void Laws()
    {
        Json("sum", "sum");
        Json("sum", "sum", "ohms-law");
        Json("sum", "sum", "heater-power", "supply=3.7V", "heater=4.4ohm", "series=0.16ohm");
        Json("sum", "sum", "step-up-point", "open=3.7V", "source=0.12ohm", "set=9V", "heater=8ohm", "limit=5.5A", "lockout=2.5V");
        Json("help", "help", "part", "add");
    }

    private string[] Openings()
    {
        using var json = JsonDocument.Parse(bench.Type("openings", Bow, "--json").Out);
        return [.. json.RootElement.EnumerateArray().Select(one => one.GetProperty("number").GetInt64().ToString(CultureInfo.InvariantCulture))];
    }

    /// <summary>Types a command with --json, notes its shape, and holds what it wrote against the published one.</summary>
    private void Json(string command, params string[] words)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int exit = CommandLine.Run([.. words, "--json"], new Screen(output, error, false, false, 100) { Answered = (shape, options) => shapes.Add((command, shape, options)) });
        Assert.True(exit == 0 || command == "trial enter", $"{string.Join(' ', words)}: {error}");
        using var json = JsonDocument.Parse(output.ToString());
        if (Environment.GetEnvironmentVariable("HEATWRIGHT_WRITE") != "1")
        {
            Assert.True(definitions.TryGetProperty(command, out var schema), $"{command} is not in docs/formats/answers.schema.json.");
            Assert.Equal("", Difference(json.RootElement, schema, schema, command));
        }
    }

    /// <summary>The first place where a value differs from a schema, by the few words that the schemas here use; written apart from what makes them.</summary>
    private static string Difference(JsonElement value, JsonElement schema, JsonElement root, string at)
    {
        if (schema.ValueKind == JsonValueKind.True || (schema.ValueKind == JsonValueKind.Object && !schema.EnumerateObject().Any()))
        {
            return "";
        }

        if (schema.TryGetProperty("$ref", out var reference))
        {
            string[] path = reference.GetString()!.Split('/', StringSplitOptions.RemoveEmptyEntries);
            var there = path.Where(step => step != "#").Aggregate(root, (node, step) => node.ValueKind == JsonValueKind.Array ? node[int.Parse(step, CultureInfo.InvariantCulture)] : node.GetProperty(step.Replace("~1", "/", StringComparison.Ordinal)));
            return Difference(value, there, root, at);
        }

        if (schema.TryGetProperty("anyOf", out var kinds))
        {
            string[] all = [.. kinds.EnumerateArray().Select(kind => Difference(value, kind, kind, at))];
            return all.Any(one => one.Length == 0) ? "" : string.Join(" and ", all);
        }

        if (schema.TryGetProperty("enum", out var words))
        {
            return words.EnumerateArray().Any(word => JsonElement.DeepEquals(word, value)) ? "" : $"{at}: {value.GetRawText()} is none of the words";
        }

        if (schema.TryGetProperty("type", out var type) && !(type.ValueKind == JsonValueKind.Array ? type.EnumerateArray().Select(one => one.GetString()!) : [type.GetString()!]).Any(word => Is(value, word)))
        {
            return $"{at}: {value.ValueKind} where {type.GetRawText()} is published";
        }

        if (value.ValueKind == JsonValueKind.Array && schema.TryGetProperty("items", out var items))
        {
            return value.EnumerateArray().Select((one, i) => Difference(one, items, root, $"{at}[{i}]")).FirstOrDefault(one => one.Length > 0) ?? "";
        }

        return value.ValueKind == JsonValueKind.Object ? Members(value, schema, root, at) : "";
    }

    private static string Members(JsonElement value, JsonElement schema, JsonElement root, string at)
    {
        if (schema.TryGetProperty("required", out var required) && required.EnumerateArray().FirstOrDefault(name => !value.TryGetProperty(name.GetString()!, out _)) is { ValueKind: JsonValueKind.String } missing && !IsNullable(schema, missing.GetString()!))
        {
            return $"{at}: '{missing.GetString()}' is missing";
        }

        foreach (var member in value.EnumerateObject())
        {
            if (schema.TryGetProperty("properties", out var properties) && properties.TryGetProperty(member.Name, out var own))
            {
                if (Difference(member.Value, own, root, $"{at}.{member.Name}") is { Length: > 0 } inner)
                {
                    return inner;
                }
            }
            else if (schema.TryGetProperty("additionalProperties", out var others) && others.ValueKind == JsonValueKind.Object)
            {
                if (Difference(member.Value, others, root, $"{at}.{member.Name}") is { Length: > 0 } inner)
                {
                    return inner;
                }
            }
            else if (properties.ValueKind == JsonValueKind.Object)
            {
                return $"{at}: '{member.Name}' is not published";
            }
        }

        return "";
    }

    /// <summary>What is null is left out of the file, as docs/formats/answers.md says.</summary>
    private static bool IsNullable(JsonElement schema, string name) => schema.TryGetProperty("properties", out var properties) && properties.TryGetProperty(name, out var own)
        && own.ValueKind == JsonValueKind.Object && own.TryGetProperty("type", out var type) && type.ValueKind == JsonValueKind.Array && type.EnumerateArray().Any(one => one.GetString() == "null");

    private static bool Is(JsonElement value, string word) => word switch
    {
        "object" => value.ValueKind == JsonValueKind.Object,
        "array" => value.ValueKind == JsonValueKind.Array,
        "string" => value.ValueKind == JsonValueKind.String,
        "boolean" => value.ValueKind is JsonValueKind.True or JsonValueKind.False,
        "null" => value.ValueKind == JsonValueKind.Null,
        "integer" => value.ValueKind == JsonValueKind.Number && value.TryGetInt64(out _),
        "number" => value.ValueKind == JsonValueKind.Number,
        _ => false,
    };
}

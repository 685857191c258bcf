using System.Text.Json;
using System.Text.Json.Nodes;

namespace Heatwright.Cli.Answering;

/// <summary>The published schemas of what commands answer with --json (JSON Schema 2020-12).</summary>
internal static class AnswerSchemas
{
    /// <summary>Name of the definition of problems, which all commands share.</summary>
    public const string Problems = "problems";

    private const string Draft = "https://json-schema.org/draft/2020-12/schema", Resource = "answers.schema.json", Ending = ".schema.json";

    private static readonly JsonSerializerOptions Layout = new(Answers.Pretty);

    /// <summary>One document with a definition for each command, by its words with dashes between, and for each record.</summary>
    /// <param name="root">All commands.</param>
    public static string Text(CommandCard root) => Written(Document(root));

    /// <summary>The document that was made when the program was built.</summary>
    public static JsonObject Published()
    {
        using var stream = typeof(AnswerSchemas).Assembly.GetManifestResourceStream(Resource)!;
        return JsonNode.Parse(stream)!.AsObject();
    }

    /// <summary>Names of the definitions that are whole answers.</summary>
    public static IEnumerable<string> Whole(JsonObject document) => document["$defs"]!.AsObject().Select(pair => pair.Key).Where(name => char.IsLower(name[0]));

    /// <summary>The schema of one answer with all that it needs, to stand alone in a file.</summary>
    /// <param name="document">The document.</param>
    /// <param name="name">The answer: part-add, problems.</param>
    public static JsonObject One(JsonObject document, string name)
    {
        var all = document["$defs"]!.AsObject();
        var needed = new SortedDictionary<string, JsonNode>(StringComparer.Ordinal);
        var schema = all[name]!.DeepClone().AsObject();
        Gather(schema, all, needed);
        schema.Insert(0, "$schema", Draft);
        if (needed.Count > 0)
        {
            schema["$defs"] = new JsonObject(needed.Select(pair => KeyValuePair.Create(pair.Key, (JsonNode?)pair.Value)));
        }

        return schema;
    }

    /// <summary>Writes one file for each answer into a folder and tells their names.</summary>
    public static IReadOnlyList<string> WriteTo(string folder)
    {
        var document = Published();
        Directory.CreateDirectory(folder);
        string[] names = [.. Whole(document).Select(name => name + Ending)];
        foreach (string name in names)
        {
            File.WriteAllText(Path.Combine(folder, name), Written(One(document, name[..^Ending.Length])));
        }

        return names;
    }

    /// <summary>The document, made from the commands and the records that they answer with.</summary>
    internal static JsonObject Document(CommandCard root)
    {
        var types = new TypeSchema(new FieldWords());
        var answers = new SortedDictionary<string, JsonNode?>(StringComparer.Ordinal);
        foreach (var card in root.All().Where(card => card.Answers.Count > 0))
        {
            var forms = card.Answers.Select(form => (form.When, Schema: types.Of(form.Type, form.Written))).ToArray();
            string title = $"heatwright {card.Words} --json";
            var answer = new JsonObject { ["title"] = title, ["description"] = card.Brief };
            if (forms is [var only])
            {
                only.Schema.ToList().ForEach(pair => answer[pair.Key] = pair.Value?.DeepClone());
            }
            else
            {
                answer["anyOf"] = new JsonArray([.. forms.Select(form =>
                {
                    form.Schema.Insert(0, "description", char.ToUpperInvariant(form.When[0]) + form.When[1..] + ".");
                    return (JsonNode)form.Schema;
                })]);
            }

            answers.Add(card.Words.Replace(' ', '-'), answer);
        }

        var problems = types.Of(typeof(ProblemsView), Answers.Pretty);
        problems.Insert(0, "title", "what any command writes to the error output with --json where it ends with 1, 2 or 3");
        answers.Add(Problems, problems);
        return new()
        {
            ["$schema"] = Draft,
            ["title"] = "Answers of heatwright for machines",
            ["description"] = "One definition for each command, named by its words with dashes between, and one for each record. Fields may be added; none changes its meaning without a new name.",
            ["$defs"] = new JsonObject([.. answers, .. types.Definitions.Select(pair => KeyValuePair.Create(pair.Key, (JsonNode?)pair.Value))]),
        };
    }

    private static void Gather(JsonNode? node, JsonObject all, SortedDictionary<string, JsonNode> needed)
    {
        if (node is JsonArray list)
        {
            list.ToList().ForEach(one => Gather(one, all, needed));
        }

        foreach (var (key, value) in node as JsonObject ?? [])
        {
            if (key != "$ref" || value is null)
            {
                Gather(value, all, needed);
                continue;
            }

            string name = value.GetValue<string>().Split('/')[^1];
            if (!needed.ContainsKey(name))
            {
                var definition = all[name]!.DeepClone();
                needed.Add(name, definition);
                Gather(definition, all, needed);
            }
        }
    }

    private static string Written(JsonObject schema) => schema.ToJsonString(Layout) + "\n";
}

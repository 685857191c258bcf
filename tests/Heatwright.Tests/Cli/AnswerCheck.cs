using System.Collections.Concurrent;
using System.CommandLine;
using System.CommandLine.Parsing;
using System.Text.Json;
using System.Text.Json.Nodes;
using Heatwright.Cli;
using Heatwright.Cli.Answering;
using Json.Schema;

namespace Heatwright.Tests.Cli;

/// <summary>Holds what a command answers with --json against its published schema, by a validator that is not ours; a field that the schema does not name is refused here.</summary>
internal static class AnswerCheck
{
    private static readonly RootCommand Root = CommandLine.Table(new Screen(TextWriter.Null, TextWriter.Null, false, false, 100));

    private static readonly ConcurrentDictionary<string, Lazy<(string When, JsonSchema Schema)[]>> Known = new(StringComparer.Ordinal);

    public static JsonObject Document { get; } = JsonNode.Parse(File.ReadAllText(Path.Combine(Repository.Root, "docs", "formats", "answers.schema.json")))!.AsObject();

    /// <summary>The words of the command that was typed, or empty where it is none.</summary>
    public static string Command(string[] typed)
    {
        var words = new List<string>();
        for (SymbolResult? at = Root.Parse(typed).CommandResult; at is CommandResult { Command: not RootCommand } one; at = at.Parent)
        {
            words.Insert(0, one.Command.Name);
        }

        return string.Join('-', words);
    }

    /// <summary>The forms that an answer has; fails where it has none of those that its command promises.</summary>
    public static IReadOnlyList<string> Forms(string command, string answer) => command == "listen"
        ? [.. answer.Split('\n', StringSplitOptions.RemoveEmptyEntries).SelectMany(line => One(command, line)).Distinct()] : One(command, answer);

    /// <summary>Why an answer is not of a form; empty: it is.</summary>
    public static string Against(JsonSchema schema, string answer)
    {
        using var json = JsonDocument.Parse(answer);
        var results = schema.Evaluate(json.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        return results.IsValid ? "" : string.Join("\n", (results.Details ?? []).Append(results).SelectMany(one => (one.Errors ?? new Dictionary<string, string>()).Select(error => $"{one.InstanceLocation}: {error.Key} {error.Value}")).Append("not valid"));
    }

    /// <summary>The schemas of the forms of an answer.</summary>
    public static (string When, JsonSchema Schema)[] Of(string command) => Known.GetOrAdd(command, name => new(() =>
    {
        var whole = AnswerSchemas.One(Document, name);
        Strict(whole);
        if (whole["anyOf"] is not JsonArray forms)
        {
            return [("", JsonSchema.FromText(whole.ToJsonString()))];
        }

        return [.. forms.Select(form =>
        {
            var alone = form!.DeepClone().AsObject();
            alone["$schema"] = whole["$schema"]!.DeepClone();
            alone["$defs"] = whole["$defs"]!.DeepClone();
            return (form["description"]!.GetValue<string>(), JsonSchema.FromText(alone.ToJsonString()));
        })];
    })).Value;

    private static string[] One(string command, string answer)
    {
        var tried = Of(command).Select(form => (form.When, Against: Against(form.Schema, answer))).ToArray();
        string[] kept = [.. tried.Where(form => form.Against.Length == 0).Select(form => form.When)];
        Assert.True(kept.Length > 0, $"{command}: {string.Join("\n", tried.Select(form => $"{form.When} {form.Against}"))}\n{(answer.Length > 2000 ? answer[..2000] : answer)}");
        return kept;
    }

    private static void Strict(JsonNode? node)
    {
        if (node is JsonArray list)
        {
            list.ToList().ForEach(Strict);
        }

        if (node is JsonObject one)
        {
            one.ToList().ForEach(pair => Strict(pair.Value));
            if (one["properties"] is JsonObject && one["required"] is JsonArray)
            {
                one["additionalProperties"] = false;
            }
        }
    }
}

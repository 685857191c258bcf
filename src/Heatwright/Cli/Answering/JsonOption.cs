using System.CommandLine;
using System.Text.Json;

namespace Heatwright.Cli.Answering;

/// <summary>One form of the answer that a command gives to machines.</summary>
/// <param name="Type">What it is made of.</param>
/// <param name="When">In which case; empty: always.</param>
/// <param name="Written">How it is written.</param>
internal sealed record AnswerForm(Type Type, string When, JsonSerializerOptions Written);

/// <summary>The option --json, which knows what the answer then looks like: the published schemas are made from it.</summary>
internal sealed class JsonOption : Option<bool>
{
    private readonly List<AnswerForm> forms = [];

    /// <summary>The option, without a form yet.</summary>
    /// <param name="says">What help says of it.</param>
    public JsonOption(string says)
        : base("--json") => Description = says;

    /// <summary>The forms that the answer can have.</summary>
    public IReadOnlyList<AnswerForm> Forms => forms;

    /// <summary>Another form of the answer.</summary>
    /// <typeparam name="T">What it is made of.</typeparam>
    /// <param name="when">In which case; empty: always.</param>
    /// <param name="written">How it is written; null: as most answers are.</param>
    public JsonOption Or<T>(string when = "", JsonSerializerOptions? written = null)
    {
        forms.Add(new(typeof(T), when, written ?? Answers.Pretty));
        return this;
    }
}

using System.CommandLine;
using System.CommandLine.Completions;
using System.CommandLine.Help;
using Heatwright.Cli.Answering;

namespace Heatwright.Cli;

/// <summary>One line of a card: how a word is typed, and what it means.</summary>
/// <param name="Typed">As it is typed: --to TO.</param>
/// <param name="Says">What it means.</param>
internal sealed record CardLine(string Typed, string Says);

/// <summary>An option as a shell must know it.</summary>
/// <param name="Name">With its dashes.</param>
/// <param name="Says">What it means.</param>
/// <param name="TakesValue">Something is typed after it.</param>
internal sealed record CardOption(string Name, string Says, bool TakesValue);

/// <summary>What is known of one command. Help, the reference page and the shells' completion are all read from this.</summary>
internal sealed class CommandCard
{
    private const string BeforeExample = "Example: ";

    /// <summary>Commands that work a study out, or judge it: those that can find that it contradicts itself.</summary>
    private static readonly string[] Judging = ["build-sheet", "check", "compare", "decide", "demo", "next", "pictures", "report", "study", "try", "why"];

    private const string Contradicts = "the study contradicts itself";

    private readonly Command command;

    public CommandCard(Command command, string above = "")
    {
        this.command = command;
        bool root = command is RootCommand;
        Words = root ? "" : $"{above} {command.Name}".TrimStart();
        string about = command.Description ?? "";
        int at = about.IndexOf(BeforeExample, StringComparison.Ordinal);
        Says = (at < 0 ? about : about[..at]).TrimEnd();
        Example = at < 0 ? "" : about[(at + BeforeExample.Length)..].Trim();
        Commands = [.. command.Subcommands.Where(one => !one.Hidden).Select(one => new CommandCard(one, Words))];
    }

    /// <summary>The command's words after the program's name; empty for the program itself.</summary>
    public string Words { get; }

    /// <summary>The last of them.</summary>
    public string Name => command.Name;

    public string Says { get; }

    /// <summary>The first sentence, for lists.</summary>
    public string Brief => Says.IndexOf(". ", StringComparison.Ordinal) is var end and > 0 ? Says[..(end + 1)] : Says;

    /// <summary>A whole command to type; empty for the program itself.</summary>
    public string Example { get; }

    public IReadOnlyList<CommandCard> Commands { get; }

    public IReadOnlyList<CardLine> Arguments => [.. command.Arguments.Where(one => !one.Hidden).Select(one => new CardLine(Typed(one), one.Description ?? ""))];

    public IReadOnlyList<CardOption> Options => [.. command.Options.Where(one => !one.Hidden && !one.Recursive && one is not VersionOption and not HelpOption).Select(Option)];

    public IReadOnlyList<CardLine> OptionLines => [.. command.Options.Where(one => !one.Hidden && !one.Recursive && one is not VersionOption and not HelpOption).Select(one => new CardLine(Typed(one), Told(one)))];

    /// <summary>What it answers with --json; empty: it has no such option.</summary>
    public IReadOnlyList<AnswerForm> Answers => [.. command.Options.OfType<JsonOption>().SelectMany(one => one.Forms)];

    /// <summary>Words that stand for an argument and no others.</summary>
    public IReadOnlyList<string> Choices => [.. command.Arguments.SelectMany(one => one.CompletionSources.SelectMany(source => source(CompletionContext.Empty))).Select(one => one.Label).Distinct()];

    public string Usage => string.Join(' ', ((string[])
    [
        "heatwright", Words, Commands.Count > 0 ? "COMMAND" : "", .. Arguments.Select(one => one.Typed),
        .. command.Options.Where(one => one.Required && !one.Hidden).Select(Typed), command.Options.Any(one => !one.Required && !one.Hidden) ? "[OPTIONS]" : "",
    ]).Where(word => word.Length > 0));

    /// <summary>How it can end, in numbers and words.</summary>
    public IReadOnlyList<CardLine> Ends =>
    [
        new("0", "done; a no-go is done"),
        new("1", "our fault"),
        new("2", "bad input or usage, or a question that needs an answer"),
        .. Judging.Contains(Words) ? [new CardLine("3", Contradicts)] : Words.Length == 0 ? [new CardLine("3", $"{Contradicts}; only where a command says so")] : Array.Empty<CardLine>(),
    ];

    /// <summary>This card and all below it, in the order of the table.</summary>
    public IEnumerable<CommandCard> All() => Commands.SelectMany(one => one.All()).Prepend(this);

    private static CardOption Option(Option one) => new(one.Name, Told(one), one.ValueType != typeof(bool));

    private static string Told(Option one) => one.Required ? $"{one.Description} Must be given." : one.Description ?? "";

    private static string Typed(Argument one) => (one.Arity.MaximumNumberOfValues > 1 ? one.Name + "..." : one.Name) is var name && one.Arity.MinimumNumberOfValues == 0 ? $"[{name}]" : name;

    private static string Typed(Option one)
    {
        string value = one.Name.TrimStart('-').ToUpperInvariant();
        return one.ValueType == typeof(bool) ? one.Name : $"{one.Name} {value}{(one.AllowMultipleArgumentsPerToken ? "..." : "")}";
    }
}

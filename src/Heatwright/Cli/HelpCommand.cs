using System.CommandLine;
using System.CommandLine.Invocation;
using Heatwright.Cli.Answering;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Help in words, and as the page of all commands.</summary>
internal static class HelpCommand
{
    /// <summary>Options that every command takes.</summary>
    public static IReadOnlyList<CardLine> Everywhere { get; } =
    [
        new("--ascii", AsciiSays),
        new("--help", "Shows this."),
    ];

    public const string AsciiSays = "Writes plain ASCII only: 'ohm' for the sign, '+-' for plus or minus. JSON keeps every sign, as \\u and four digits.";

    public static Command Help(Screen screen, Func<RootCommand> root)
    {
        var json = Answers.Json<HelpView>("without --schemas").Or<SchemasWritten>("with --schemas");
        var words = new Argument<string[]>("COMMAND") { Description = "The command's words; without them, all commands.", Arity = ArgumentArity.ZeroOrMore };
        var page = new Option<string?>("--write-page") { Description = "Writes the page of all commands to this file.", Hidden = true };
        var schemas = new Option<string?>("--schemas") { Description = "Writes the schemas of all answers for machines into this folder, one file for each command." };
        var documents = new Option<string?>("--write-schemas") { Description = "Writes the document of all schemas and its page into this folder.", Hidden = true };
        var command = new Command("help", "Shows what a command does, its options, an example and how it can end. Example: heatwright help part add") { words, page, schemas, documents, json };
        command.SetAction(parsed =>
        {
            var all = new CommandCard(root());
            if (parsed.GetValue(page) is { } path)
            {
                File.WriteAllText(path, CommandPage.Of(all));
                return ExitCodes.Done;
            }

            if (parsed.GetValue(documents) is { } formats)
            {
                File.WriteAllText(Path.Combine(formats, "answers.schema.json"), AnswerSchemas.Text(all));
                File.WriteAllText(Path.Combine(formats, "answers.md"), AnswerPage.Of(AnswerSchemas.Document(all)));
                return ExitCodes.Done;
            }

            if (parsed.GetValue(schemas) is { } folder)
            {
                return Answers.Give(screen, Schemas(folder), parsed.GetValue(json), written => written, written => screen.Say($"{written.Files.Count} schemas in {written.Folder}: {written.Files[0]} to {written.Files[^1]}."));
            }

            string wanted = string.Join(' ', parsed.GetValue(words) ?? []);
            if (all.All().FirstOrDefault(card => card.Words == wanted) is not { } found)
            {
                screen.Complain([new Problem($"There is no command '{wanted}'.", "command line", wanted, Near(all, wanted), "Type 'heatwright help'.")]);
                return ExitCodes.BadInput;
            }

            if (parsed.GetValue(json))
            {
                Answers.Write(screen, HelpView.Of(found));
            }
            else
            {
                Write(screen, found);
            }

            return ExitCodes.Done;
        });
        return command;
    }

    private static string Near(CommandCard all, string wanted)
    {
        string[] words = [.. all.All().Select(card => card.Words)], near = NearNames.Of(wanted, words.Select(one => one.Replace(' ', '-')));
        return near.Length == 0 ? "a command as 'heatwright help' lists it" : "perhaps " + string.Join(" or ", words.Where(one => near.Contains(one.Replace(' ', '-'))).Select(one => $"'{one}'"));
    }

    private static Checked<SchemasWritten> Schemas(string folder)
    {
        try
        {
            return new(new SchemasWritten(folder, AnswerSchemas.WriteTo(folder)));
        }
        catch (Exception slip) when (slip is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return new(new Problem("The schemas cannot be written there.", "--schemas", folder, slip.Message, "Name a folder that may be written."));
        }
    }

    public static void Write(Screen screen, CommandCard card)
    {
        screen.Hang("", card.Usage);
        screen.Say("");
        screen.Hang("", card.Says);
        Lines(screen, "Commands", [.. card.Commands.Select(one => new CardLine(one.Name, one.Brief))]);
        Lines(screen, "Words", card.Arguments);
        Lines(screen, "Options", [.. card.OptionLines, .. Everywhere, .. card.Words.Length == 0 ? [new CardLine("--version", "Shows the version.")] : Array.Empty<CardLine>()]);
        if (card.Example.Length > 0)
        {
            screen.Say("");
            screen.Say("Example");
            screen.Hang("  ", card.Example);
        }

        Lines(screen, "Ends with", card.Ends);
        if (card.Commands.Count > 0)
        {
            screen.Say("");
            screen.Hang("", $"{string.Join(' ', ((string[])["heatwright help", card.Words, "COMMAND"]).Where(word => word.Length > 0))} tells more of one.");
        }
    }

    private static void Lines(Screen screen, string heading, IReadOnlyList<CardLine> lines)
    {
        if (lines.Count == 0)
        {
            return;
        }

        screen.Say("");
        screen.Say(heading);
        int wide = Math.Min(lines.Max(line => line.Typed.Length), 26);
        foreach (var line in lines)
        {
            screen.Hang($"  {line.Typed.PadRight(wide)}  ", line.Says);
        }
    }
}

/// <summary>Schemas that were written.</summary>
/// <param name="Folder">Where, as it was typed.</param>
/// <param name="Files">Their names there.</param>
internal sealed record SchemasWritten(string Folder, IReadOnlyList<string> Files);

/// <summary>A command as machines read it.</summary>
/// <param name="Command">Its words after the program's name; empty: the program itself.</param>
/// <param name="Says">What it does.</param>
/// <param name="Usage">How it is typed.</param>
/// <param name="Arguments">Words that are typed in their places.</param>
/// <param name="Options">Words that may be typed.</param>
/// <param name="Example">A whole command to type.</param>
/// <param name="Ends">How it can end: exit codes.</param>
/// <param name="Commands">Commands below it.</param>
internal sealed record HelpView(string Command, string Says, string Usage, IReadOnlyList<CardLine> Arguments, IReadOnlyList<CardLine> Options, string Example, IReadOnlyList<CardLine> Ends, IReadOnlyList<string> Commands)
{
    /// <summary>The view of a card.</summary>
    public static HelpView Of(CommandCard card) => new(card.Words, card.Says, card.Usage, card.Arguments, card.OptionLines, card.Example, card.Ends, [.. card.Commands.Select(one => one.Words)]);
}

/// <summary>What --help does on any command: the same words as the help command.</summary>
internal sealed class HelpWords(Screen screen) : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    /// <summary>The words of a typed command, the program's name first.</summary>
    public static string Of(System.CommandLine.Parsing.CommandResult typed) => string.Join(' ', Names(typed).Prepend("heatwright"));

    public override int Invoke(ParseResult parseResult)
    {
        HelpCommand.Write(screen, new CommandCard(parseResult.CommandResult.Command, string.Join(' ', Names(parseResult.CommandResult).SkipLast(1))));
        return ExitCodes.Done;
    }

    private static List<string> Names(System.CommandLine.Parsing.CommandResult typed)
    {
        var names = new List<string>();
        for (CommandResultOf at = new(typed); at.Name.Length > 0; at = at.Above)
        {
            names.Insert(0, at.Name);
        }

        return names;
    }

    /// <summary>A typed command and the one that it stands under; the program itself has no name here.</summary>
    private readonly record struct CommandResultOf(System.CommandLine.Parsing.SymbolResult? At)
    {
        public string Name => At is System.CommandLine.Parsing.CommandResult { Command: not RootCommand } one ? one.Command.Name : "";

        public CommandResultOf Above => new(At?.Parent);
    }
}

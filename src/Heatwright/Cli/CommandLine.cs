using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.Reflection;

namespace Heatwright.Cli;

/// <summary>Words in: the commands of Heatwright. Each one parses, asks a job, and renders what comes back.</summary>
public static class CommandLine
{
    /// <summary>Runs a command as a process does: what a maker can put right comes back as a problem, a mistake of ours is told in the same shape with all that helps to find it.</summary>
    /// <param name="words">As typed after the program's name.</param>
    /// <param name="screen">Where to write.</param>
    public static int RunOrTell(string[] words, Screen screen)
    {
        try
        {
            return Run(words, screen);
        }
        catch (Exception slip)
        {
            screen.Complain([new("Heatwright made a mistake here; what was saved before is safe.", string.Join(' ', words), slip.Message, "none of your making", "Please report this with the lines below.")]);
            screen.Trace(slip);
            screen.Settle();
            return ExitCodes.OurFault;
        }
    }

    /// <summary>Runs the command given in <paramref name="words"/> and tells how it ended.</summary>
    /// <param name="words">As typed after the program's name.</param>
    /// <param name="screen">Where to write.</param>
    public static int Run(string[] words, Screen screen)
    {
        if (words.Contains("--json"))
        {
            screen.GatherProblems();
        }

        int end = Carried(words, screen);
        screen.Settle();
        return end;
    }

    private static int Carried(string[] words, Screen screen)
    {
        if (words is ["--version"])
        {
            // Shells and scripts ask this often: answered before the table of commands is built.
            screen.Say(Version);
            return ExitCodes.Done;
        }

        var ascii = new Option<bool>("--ascii") { Description = HelpCommand.AsciiSays, Recursive = true };
        var root = Table(screen);
        root.Options.Add(ascii);
        foreach (var help in root.Options.OfType<HelpOption>())
        {
            help.Action = new HelpWords(screen);
        }

        var parsed = root.Parse(words);
        if (parsed.GetValue(ascii))
        {
            screen.GoPlain();
        }

        if (parsed.Errors.Count > 0 && parsed.CommandResult.Command.Subcommands.Count > 0)
        {
            // Nothing, or a word too many, behind a command that has others below it: help, or one word about the one that was meant.
            if (parsed.UnmatchedTokens.Count == 0 && !words.Contains("--json"))
            {
                return new HelpWords(screen).Invoke(parsed);
            }

            if (parsed.UnmatchedTokens is [var unknown, ..] && !unknown.StartsWith('-'))
            {
                var known = parsed.CommandResult.Command.Subcommands.Select(command => command.Name);
                string above = HelpWords.Of(parsed.CommandResult);
                screen.Complain([new Quantities.Problem($"There is no command '{unknown}' of {above}.", "command line", string.Join(' ', words), Quantities.NearNames.Told(unknown, known), $"Choose one of them; '{above} --help' tells what each does.")]);
                return ExitCodes.BadInput;
            }
        }

        if (parsed.Errors.Count > 0)
        {
            screen.Complain([.. parsed.Errors.Select(error => new Quantities.Problem(
                Sentence(error.Message), "command line", string.Join(' ', words), "a command as --help lists it", $"Type '{HelpWords.Of(parsed.CommandResult)} --help'.{(new CommandCard(parsed.CommandResult.Command).Example is { Length: > 0 } example ? $" For example: {example}" : "")}"))]);
            return ExitCodes.BadInput;
        }

        return parsed.Invoke(new InvocationConfiguration { Output = screen.Output, EnableDefaultExceptionHandler = false });
    }

    /// <summary>Every command there is.</summary>
    /// <param name="screen">Where they write.</param>
    internal static RootCommand Table(Screen screen)
    {
        var root = new RootCommand("Proves a battery-powered heated tool on the bench before a board is drawn: from readings to findings, predictions and a verdict.");
        root.Subcommands.Add(StudyCommands.Demo(screen));
        root.Subcommands.Add(StudyCommands.New(screen));
        root.Subcommands.Add(StudyCommands.Import(screen));
        root.Subcommands.Add(StudyCommands.Study(screen));
        root.Subcommands.Add(StudyCommands.Report(screen));
        root.Subcommands.Add(StudyCommands.Pictures(screen));
        root.Subcommands.Add(PredictCommand.Predict(screen));
        root.Subcommands.Add(PartCommands.Part(screen));
        root.Subcommands.Add(ClaimCommand.Claims(screen));
        root.Subcommands.Add(WiringCommands.Arrange(screen));
        root.Subcommands.Add(WiringCommands.Clone(screen));
        root.Subcommands.Add(WiringCommands.Rewire(screen));
        root.Subcommands.Add(WiringCommands.Unwire(screen));
        root.Subcommands.Add(TryCommand.Try(screen));
        root.Subcommands.Add(WiringCommands.Loop(screen));
        root.Subcommands.Add(WiringCommands.Differences(screen));
        root.Subcommands.Add(ToolCommands.Tool(screen));
        root.Subcommands.Add(ShelfCommands.Shelf(screen));
        root.Subcommands.Add(ShelfCommands.Take(screen));
        root.Subcommands.Add(ShelfCommands.Give(screen));
        root.Subcommands.Add(HistoryCommands.History(screen));
        root.Subcommands.Add(HistoryCommands.Undo(screen));
        root.Subcommands.Add(HistoryCommands.Redo(screen));
        root.Subcommands.Add(VerdictCommands.Brief(screen));
        root.Subcommands.Add(VerdictCommands.Compare(screen));
        root.Subcommands.Add(VerdictCommands.Why(screen));
        root.Subcommands.Add(VerdictCommands.Next(screen));
        root.Subcommands.Add(VerdictCommands.Search(screen));
        root.Subcommands.Add(DecisionCommands.Decide(screen));
        root.Subcommands.Add(DecisionCommands.Check(screen));
        root.Subcommands.Add(SumCommand.Sum(screen));
        root.Subcommands.Add(LogCommands.Log(screen));
        root.Subcommands.Add(ListenCommand.Listen(screen));
        root.Subcommands.Add(LogImportCommands.Sheets(screen));
        root.Subcommands.Add(KeepCommands.Files(screen));
        root.Subcommands.Add(KeepCommands.Strike(screen));
        root.Subcommands.Add(KeepCommands.Stand(screen));
        root.Subcommands.Add(KeepCommands.Export(screen));
        root.Subcommands.Add(ShareCommands.Share(screen));
        root.Subcommands.Add(ShareCommands.Beside(screen));
        root.Subcommands.Add(KeepCommands.Pack(screen));
        root.Subcommands.Add(KeepCommands.Examine(screen));
        root.Subcommands.Add(KeepCommands.Openings(screen));
        root.Subcommands.Add(TrialCommands.Trial(screen));
        root.Subcommands.Add(EnterCommands.Meter(screen));
        root.Subcommands.Add(BuildSheetCommand.BuildSheet(screen));
        root.Subcommands.Add(ServeCommand.Serve(screen));
        root.Subcommands.Add(HelpCommand.Help(screen, () => root));
        root.Subcommands.Add(CompletionCommand.Completion(screen, () => root));
        return root;
    }

    private static string Version => typeof(CommandLine).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "";

    private static string Sentence(string text) => text.EndsWith('.') ? text : text + ".";
}

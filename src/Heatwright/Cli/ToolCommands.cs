using System.CommandLine;
using Heatwright.Jobs;
using Heatwright.Verdicts;

namespace Heatwright.Cli;

/// <summary>Commands about tools that exist.</summary>
internal static class ToolCommands
{
    public static Command Tool(Screen screen) => new("tool", "Tools that exist, known only by what was read on them. Example: heatwright tool add knife.study X \"mains hot knife\" --read \"warm-up time=40s±2s (stopwatch)\" \"mass=410g (scale)\"") { Add(screen) };

    private static Command Add(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<ExistingTool>());
        var letter = new Argument<string>("LETTER") { Description = "How tables name it: X." };
        var name = new Argument<string?>("NAME") { Description = "What you call it.", Arity = ArgumentArity.ZeroOrOne };
        var read = new Option<string[]>("--read") { Description = "What was read on it, as \"quantity=value (how)\": what a requirement speaks of, or power.", AllowMultipleArgumentsPerToken = true };
        var note = new Option<string?>("--note") { Description = "Your note." };
        var command = new Command("add", "Puts a tool that exists beside the arrangements, or more readings of it. What was never read stays empty and costs it nothing. Example: heatwright tool add knife.study X \"mains hot knife\" --read \"grip temperature=39degC\"") { file, letter, name, read, note, json };
        command.SetAction(parsed => Answers.Give(screen, EnterTool.Put(parsed.GetValue(file)!, parsed.GetValue(letter)!, parsed.GetValue(name) ?? "", parsed.GetValue(read) ?? [], parsed.GetValue(note)), parsed.GetValue(json), tool => tool, tool =>
        {
            screen.Say($"{tool.Letter}  {tool.Name}");
            foreach (var one in tool.Readings)
            {
                screen.Say($"  {EnterTool.Said(one)}");
            }
        }));
        return command;
    }
}

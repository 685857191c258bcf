using System.Globalization;
using System.Text;

namespace Heatwright.Cli;

/// <summary>docs/commands.md: every command as help shows it.</summary>
internal static class CommandPage
{
    public static string Of(CommandCard root)
    {
        var page = new StringBuilder();
        page.Append("# Commands\n\n");
        page.Append("What `heatwright help` says of every command, on one page. Written by `heatwright help --write-page docs/commands.md`; a test fails when it is stale.\n");
        page.Append("For the laws of `heatwright sum` see [laws](laws/README.md).\n\n");
        page.Append("Every command also takes:\n\n");
        Table(page, HelpCommand.Everywhere);
        page.Append("\nA command ends with:\n\n");
        Table(page, root.Ends);
        page.Append("\nWith `NO_COLOR` set nothing is coloured. Where no terminal listens, nothing is asked and no progress is shown.\n\n");
        foreach (var one in root.Commands)
        {
            page.Append(CultureInfo.InvariantCulture, $"- [{one.Words}](#{one.Words}): {Safe(one.Brief)}\n");
        }

        foreach (var card in root.All().Where(card => card.Words.Length > 0))
        {
            Section(page, card);
        }

        return page.ToString();
    }

    private static void Section(StringBuilder page, CommandCard card)
    {
        page.Append(card.Words.Contains(' ', StringComparison.Ordinal) ? $"\n### {card.Words}\n\n" : $"\n## {card.Words}\n\n");
        page.Append(CultureInfo.InvariantCulture, $"```\n{card.Usage}\n```\n\n{Safe(card.Says)}\n");
        if (card.Arguments.Count + card.OptionLines.Count > 0)
        {
            page.Append('\n');
            Table(page, [.. card.Arguments, .. card.OptionLines]);
        }

        if (card.Commands.Count > 0)
        {
            page.Append(CultureInfo.InvariantCulture, $"\nIts commands: {string.Join(", ", card.Commands.Select(one => $"[{one.Name}](#{one.Words.Replace(' ', '-')})"))}.\n");
        }

        if (card.Answers.Count > 0)
        {
            page.Append(CultureInfo.InvariantCulture, $"\nIts `--json` answer: [{card.Words.Replace(' ', '-')}](formats/answers.md#commands).\n");
        }

        if (card.Example.Length > 0)
        {
            page.Append(CultureInfo.InvariantCulture, $"\nExample:\n\n```\n{card.Example}\n```\n");
        }

        page.Append(CultureInfo.InvariantCulture, $"\nEnds with {string.Join(", ", card.Ends.Select(end => end.Typed))}.\n");
    }

    private static void Table(StringBuilder page, IReadOnlyList<CardLine> lines)
    {
        page.Append("| typed | means |\n|---|---|\n");
        foreach (var line in lines)
        {
            page.Append(CultureInfo.InvariantCulture, $"| `{line.Typed}` | {Safe(line.Says).Replace("|", "\\|", StringComparison.Ordinal)} |\n");
        }
    }

    private static string Safe(string text) => text.Replace("<", "&lt;", StringComparison.Ordinal).Replace("*", "\\*", StringComparison.Ordinal);
}

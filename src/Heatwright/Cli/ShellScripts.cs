using System.Globalization;
using System.Text;

namespace Heatwright.Cli;

/// <summary>The table of commands in the words of four shells. Each script walks the words typed so far along the commands, then offers what may follow; where a file may stand, the shell's own files.</summary>
internal static class ShellScripts
{
    public static string Bash(CommandCard root)
    {
        var script = new StringBuilder("_heatwright() {\n    local here=${COMP_WORDS[COMP_CWORD]} at= i\n    for ((i = 1; i < COMP_CWORD; i++)); do\n        case \"$at ${COMP_WORDS[i]}\" in\n");
        script.Append(CultureInfo.InvariantCulture, $"            {string.Join('|', Below(root).Select(card => $"' {card.Words}'"))}) at=\"$at ${{COMP_WORDS[i]}}\" ;;\n        esac\n    done\n");
        script.Append("    local words=\n    case \"$at/$here\" in\n");
        foreach (var card in root.All())
        {
            script.Append(CultureInfo.InvariantCulture, $"        '{At(card)}/'-*) words='{string.Join(' ', Options(card).Select(one => one.Name))}' ;;\n");
            if (Words(card) is { Count: > 0 } words)
            {
                script.Append(CultureInfo.InvariantCulture, $"        '{At(card)}/'*) words='{string.Join(' ', words.Select(word => word.Name))}' ;;\n");
            }
        }

        return script.Append("    esac\n    COMPREPLY=()\n    if [ -n \"$words\" ]; then COMPREPLY=($(compgen -W \"$words\" -- \"$here\")); fi\n}\ncomplete -o default -F _heatwright heatwright\n").ToString();
    }

    public static string Zsh(CommandCard root)
    {
        var script = new StringBuilder("#compdef heatwright\n_heatwright() {\n    local at= word\n    local -a offered\n    for word in \"${(@)words[2,CURRENT-1]}\"; do\n        case \"$at $word\" in\n");
        script.Append(CultureInfo.InvariantCulture, $"            {string.Join('|', Below(root).Select(card => $"' {card.Words}'"))}) at=\"$at $word\" ;;\n        esac\n    done\n");
        script.Append("    case \"$at/$PREFIX\" in\n");
        foreach (var card in root.All())
        {
            script.Append(CultureInfo.InvariantCulture, $"        '{At(card)}/'-*) offered=({string.Join(' ', Options(card).Select(one => Pair(one.Name, one.Says)))}) ;;\n");
            if (Words(card) is { Count: > 0 } words)
            {
                script.Append(CultureInfo.InvariantCulture, $"        '{At(card)}/'*) offered=({string.Join(' ', words.Select(one => Pair(one.Name, one.Says)))}) ;;\n");
            }
        }

        return script.Append("    esac\n    if (( ${#offered} )); then _describe heatwright offered; else _files; fi\n}\n"
            + "if [ \"${funcstack[1]}\" = _heatwright ]; then _heatwright \"$@\"; else compdef _heatwright heatwright; fi\n").ToString();

        static string Pair(string name, string says) => Quoted($"{name}:{says.Replace(":", "\\:", StringComparison.Ordinal)}", "'\\''");
    }

    public static string Fish(CommandCard root)
    {
        var script = new StringBuilder("function __heatwright_at\n    set -l at ''\n    set -l typed (commandline -opc)\n    for word in $typed[2..-1]\n        switch \"$at $word\"\n");
        script.Append(CultureInfo.InvariantCulture, $"            case {string.Join(' ', Below(root).Select(card => $"' {card.Words}'"))}\n                set at \"$at $word\"\n        end\n    end\n    test \"$at\" = \"$argv[1]\"\nend\n");
        foreach (var card in root.All())
        {
            string when = $"complete -c heatwright -n \"__heatwright_at '{At(card)}'\"";
            foreach (var word in Words(card))
            {
                script.Append(CultureInfo.InvariantCulture, $"{when} -f -a {word.Name} -d {Quoted(word.Says, "\\'")}\n");
            }

            foreach (var option in Options(card))
            {
                script.Append(CultureInfo.InvariantCulture, $"{when} -l {option.Name.TrimStart('-')}{(option.TakesValue ? " -r" : "")} -d {Quoted(option.Says, "\\'")}\n");
            }
        }

        return script.ToString();
    }

    public static string PowerShell(CommandCard root)
    {
        var script = new StringBuilder("Register-ArgumentCompleter -Native -CommandName heatwright -ScriptBlock {\n    param($here, $line, $cursor)\n    $table = @{\n");
        foreach (var card in root.All())
        {
            IEnumerable<CardOption> all = [.. Words(card), .. Options(card)];
            script.Append(CultureInfo.InvariantCulture, $"        '{At(card)}' = @({string.Join(", ", all.Select(one => $"@('{one.Name}', {Quoted(one.Says, "''")})"))})\n");
        }

        return script.Append("    }\n    $at = ''\n    foreach ($word in $line.CommandElements | Select-Object -Skip 1) {\n        if ($word.Extent.EndOffset -ge $cursor -and $here) { break }\n"
            + "        if ($table.ContainsKey(\"$at $word\")) { $at = \"$at $word\" }\n    }\n"
            + "    $table[$at] | Where-Object { $_[0] -like \"$here*\" -and ($here -or $_[0] -notlike '-*') } | ForEach-Object {\n"
            + "        [System.Management.Automation.CompletionResult]::new($_[0], $_[0], 'ParameterValue', $_[1])\n    }\n}\n").ToString();
    }

    private static IEnumerable<CommandCard> Below(CommandCard root) => root.All().Where(card => card.Words.Length > 0);

    /// <summary>The words of a card with a blank before each: what a script has gathered when it stands there.</summary>
    private static string At(CommandCard card) => card.Words.Length == 0 ? "" : " " + card.Words;

    private static IReadOnlyList<CardOption> Words(CommandCard card) =>
        [.. card.Commands.Select(one => new CardOption(one.Name, one.Brief, false)), .. card.Choices.Select(choice => new CardOption(choice, "", false))];

    private static IReadOnlyList<CardOption> Options(CommandCard card) =>
    [
        .. card.Options, .. HelpCommand.Everywhere.Select(line => new CardOption(line.Typed, line.Says, false)),
        .. card.Words.Length == 0 ? [new CardOption("--version", "Shows the version.", false)] : Array.Empty<CardOption>(),
    ];

    /// <summary>In single quotes, as a shell wants a quote inside them; fish also reads a backslash there.</summary>
    private static string Quoted(string text, string quote) => $"'{(quote == "\\'" ? text.Replace("\\", "\\\\", StringComparison.Ordinal) : text).Replace("'", quote, StringComparison.Ordinal)}'";
}

using System.CommandLine;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Scripts with which a shell finishes commands and options, written from the same table as the help.</summary>
internal static class CompletionCommand
{
    private static readonly (string Name, Func<CommandCard, string> Script)[] Shells = [("bash", ShellScripts.Bash), ("zsh", ShellScripts.Zsh), ("fish", ShellScripts.Fish), ("powershell", ShellScripts.PowerShell)];

    public static Command Completion(Screen screen, Func<RootCommand> root)
    {
        string names = string.Join(", ", Shells.Select(one => one.Name));
        var shell = new Argument<string>("SHELL") { Description = $"One of {names}." };
        shell.CompletionSources.Add([.. Shells.Select(one => one.Name)]);
        var command = new Command("completion", "Prints a script with which your shell finishes commands and options. For bash: put it into ~/.bashrc as 'source <(heatwright completion bash)'; zsh: the same in ~/.zshrc after compinit; "
            + "fish: 'heatwright completion fish > ~/.config/fish/completions/heatwright.fish'; PowerShell: 'heatwright completion powershell | Out-String | Invoke-Expression' in $PROFILE. Example: heatwright completion bash") { shell };
        command.SetAction(parsed =>
        {
            string wanted = parsed.GetValue(shell)!;
            if (Shells.FirstOrDefault(one => one.Name == wanted).Script is not { } script)
            {
                screen.Complain([new Problem($"There is no completion for '{wanted}'.", "completion", wanted, names, "Type one of these.")]);
                return ExitCodes.BadInput;
            }

            screen.Output.Write(screen.InPlain(script(new CommandCard(root()))));
            return ExitCodes.Done;
        });
        return command;
    }
}

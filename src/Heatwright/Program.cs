using Heatwright.Cli;

return CommandLine.RunOrTell(args, Screen.OfProcess());

using Heatwright.Cli;

return CommandLine.Run(args, Screen.OfProcess());

using Heatwright.Cli;

var screen = Screen.OfProcess();
try
{
    return CommandLine.Run(args, screen);
}
catch (Exception slip)
{
    // What a maker can put right comes back as a problem and never gets here: this is our slip, told in the one shape, with all that helps to find it.
    screen.Complain([new("Heatwright made a mistake here; what was saved before is safe.", string.Join(' ', args), slip.Message, "none of your making", "Please report this with the lines below.")]);
    Console.Error.WriteLine(slip);
    return ExitCodes.OurFault;
}

using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>Where words go: tables and sentences to the output, progress and problems to the error output.</summary>
public sealed class Screen
{
    private readonly TextWriter error;
    private readonly bool errorIsTerminal;

    /// <summary>A screen on the two outputs of a process.</summary>
    /// <param name="output">Results.</param>
    /// <param name="error">Progress and problems.</param>
    /// <param name="outputIsTerminal">False: no colour, no width of a window.</param>
    /// <param name="errorIsTerminal">False: no progress.</param>
    /// <param name="width">Columns of the window.</param>
    public Screen(TextWriter output, TextWriter error, bool outputIsTerminal, bool errorIsTerminal, int width)
    {
        Output = output;
        this.error = error;
        this.errorIsTerminal = errorIsTerminal;
        Console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(output),
            Ansi = outputIsTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = outputIsTerminal && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
        });
        Console.Profile.Width = Math.Clamp(width, 40, 160);
    }

    /// <summary>Plain output, for JSON.</summary>
    public TextWriter Output { get; }

    /// <summary>Tables and sentences.</summary>
    public IAnsiConsole Console { get; }

    /// <summary>The screen of this process.</summary>
    public static Screen OfProcess()
    {
        bool terminal = !System.Console.IsOutputRedirected;
        int width = 100;
        if (terminal)
        {
            try
            {
                width = System.Console.WindowWidth;
            }
            catch (IOException)
            {
                width = 80; // a terminal that does not tell its size
            }
        }

        return new(System.Console.Out, System.Console.Error, terminal, !System.Console.IsErrorRedirected, width);
    }

    /// <summary>What is being done; silent where nobody watches.</summary>
    public void Progress(string what)
    {
        if (errorIsTerminal)
        {
            error.WriteLine($"{what} ...");
        }
    }

    /// <summary>A sentence.</summary>
    public void Say(string text) => Console.WriteLine(text);

    /// <summary>Problems in one shape: what, where, value, limit, next.</summary>
    public void Complain(IReadOnlyList<Quantities.Problem> problems)
    {
        foreach (var problem in problems)
        {
            error.WriteLine(problem.What);
            error.WriteLine($"  where  {problem.Where}");
            error.WriteLine($"  value  {problem.Value}");
            error.WriteLine($"  limit  {problem.Limit}");
            error.WriteLine($"  next   {problem.Next}");
        }
    }
}

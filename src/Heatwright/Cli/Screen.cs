using System.Text.Json;
using Heatwright.Cli.Answering;
using Heatwright.Quantities;
using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>Where words go: tables and sentences to the output, progress and problems to the error output.</summary>
public sealed class Screen
{
    private readonly TextWriter error;
    private readonly bool errorIsTerminal;
    private readonly IAnsiConsole console;
    private readonly int width;
    private TextWriter output;
    private SignOfLife? life;
    private List<Problem>? gathered;
    private string? trace;

    /// <summary>A screen on the two outputs of a process.</summary>
    /// <param name="output">Results.</param>
    /// <param name="error">Progress and problems.</param>
    /// <param name="outputIsTerminal">False: no colour, no width of a window.</param>
    /// <param name="errorIsTerminal">False: no progress.</param>
    /// <param name="width">Columns of the window.</param>
    public Screen(TextWriter output, TextWriter error, bool outputIsTerminal, bool errorIsTerminal, int width)
    {
        this.output = output;
        this.error = error;
        this.errorIsTerminal = errorIsTerminal;
        this.width = Math.Clamp(width, 40, 160);
        console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(output),
            Ansi = outputIsTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = outputIsTerminal && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")) ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
        });
        console.Profile.Width = this.width;
    }

    /// <summary>What is typed or piped in; empty where nothing is.</summary>
    public TextReader Input { get; init; } = TextReader.Null;

    /// <summary>True: a person types, so it may be asked for the next line.</summary>
    public bool InputIsTerminal { get; init; }

    /// <summary>The clock by which long work is told.</summary>
    internal TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Plain output, for JSON.</summary>
    public TextWriter Output
    {
        get
        {
            EndProgress();
            return output;
        }
    }

    /// <summary>Tables and sentences.</summary>
    public IAnsiConsole Console
    {
        get
        {
            EndProgress();
            return console;
        }
    }

    /// <summary>The screen of this process.</summary>
    public static Screen OfProcess()
    {
        bool terminal = !System.Console.IsOutputRedirected;
        // A pipe has no width of its own; a shell tells that of its window by this name.
        int width = Environment.GetEnvironmentVariable("COLUMNS") is { Length: 2 or 3 } said && said.All(char.IsAsciiDigit) ? Math.Max(20, said.Aggregate(0, (sum, digit) => (10 * sum) + digit - '0')) : 100;
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

        return new(System.Console.Out, System.Console.Error, terminal, !System.Console.IsErrorRedirected, width) { Input = System.Console.In, InputIsTerminal = !System.Console.IsInputRedirected && terminal };
    }

    /// <summary>From here on nothing but ASCII is written.</summary>
    public void GoPlain()
    {
        console.Profile.Capabilities.Unicode = false;
        output = output as EscapingWriter ?? new EscapingWriter(output);
    }

    /// <summary>The text as this screen can show it.</summary>
    /// <param name="text">With any signs.</param>
    public string InPlain(string text) => console.Profile.Capabilities.Unicode ? text : PlainWords.Of(text);

    /// <summary>What is being done, said on one line where it takes longer than a second; silent where nobody watches, and for machines.</summary>
    /// <param name="what">In a few words.</param>
    public void Progress(string what)
    {
        if (errorIsTerminal && gathered is null)
        {
            life ??= new(error, width, Clock);
            life.Begin(InPlain(what));
        }
    }

    /// <summary>The work is done, or there is something to say.</summary>
    internal void EndProgress() => life?.End();

    /// <summary>Where a mistake of ours was made.</summary>
    /// <param name="slip">The mistake.</param>
    internal void Trace(Exception slip)
    {
        EndProgress();
        if (gathered is not null)
        {
            trace = slip.ToString();
            return;
        }

        error.WriteLine(InPlain(slip.ToString()));
    }

    /// <summary>From here on problems are gathered for a machine: one object at the end.</summary>
    internal void GatherProblems() => gathered ??= [];

    /// <summary>Writes what was gathered.</summary>
    internal void Settle()
    {
        EndProgress();
        if (gathered is { Count: > 0 } all)
        {
            string told = JsonSerializer.Serialize(new ProblemsView(all, trace), Answers.Pretty);
            error.WriteLine(Console.Profile.Capabilities.Unicode ? told : PlainWords.Escaped(told));
            (gathered, trace) = ([], null);
        }
    }

    /// <summary>A sentence.</summary>
    public void Say(string text) => Console.WriteLine(InPlain(text));

    /// <summary>A table, within the width of the window; where its words would be cut, one line for each cell instead.</summary>
    /// <param name="table">With its rows.</param>
    internal void Show(Table table)
    {
        Func<string, string> plain = InPlain;
        var stack = Stacked.Of(table, plain);
        if (stack is not null && stack.Least > Console.Profile.Width && Stacked.Of(table, text => InPlain(SetOut.Apart(text))) is { } apart && apart.Least <= Console.Profile.Width)
        {
            plain = text => InPlain(SetOut.Apart(text));
        }
        else if (stack is not null && stack.Least > Console.Profile.Width)
        {
            foreach (var row in stack.Rows)
            {
                Say("");
                foreach (var (heading, words) in row)
                {
                    Hang($"{heading.PadRight(stack.Headings)}  ", words);
                }
            }

            Say("");
            return;
        }

        if (!Console.Profile.Capabilities.Unicode)
        {
            table.Border = TableBorder.Ascii;
        }

        Console.Write(stack is null ? table : SetOut.Within(table, Console.Profile.Width, plain));
    }

    /// <summary>A sentence that hangs from its first words: what does not fit into the width goes on under the text, not under the margin.</summary>
    /// <param name="lead">What stands before it.</param>
    /// <param name="text">The sentence; broken between words only.</param>
    public void Hang(string lead, string text)
    {
        (lead, text) = (InPlain(lead), InPlain(text));

        // A narrow window leaves no room beside a long lead: the text then goes on a little to the right of the margin.
        int hang = lead.Length <= Console.Profile.Width / 2 ? lead.Length : 4;
        string line = lead;
        bool first = true;
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!first && line.Length + 1 + word.Length > Console.Profile.Width)
            {
                Say(line.TrimEnd());
                line = new string(' ', hang) + word;
            }
            else
            {
                line += first ? word : " " + word;
            }

            first = false;
        }

        Say(line.TrimEnd());
    }

    /// <summary>Problems in one shape: what, where, value, limit, next.</summary>
    /// <param name="problems">All at once.</param>
    public void Complain(IReadOnlyList<Problem> problems)
    {
        EndProgress();
        gathered?.AddRange(problems);
        foreach (var problem in gathered is null ? problems : [])
        {
            error.WriteLine(InPlain(problem.What));
            error.WriteLine(InPlain($"  where  {problem.Where}"));
            error.WriteLine(InPlain($"  value  {problem.Value}"));
            error.WriteLine(InPlain($"  limit  {problem.Limit}"));
            error.WriteLine(InPlain($"  next   {problem.Next}"));
        }
    }
}

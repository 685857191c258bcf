using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Heatwright.Cli.Answering;
using Heatwright.Instruments;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Web;

namespace Heatwright.Cli;

/// <summary>The command that listens to instruments.</summary>
internal static class ListenCommand
{
    public static Command Listen(Screen screen)
    {
        var sources = new Argument<string[]>("SOURCE")
        {
            Description = "Instruments, each with a name before '=' if you like: meter=serial:/dev/ttyUSB0@115200, load=tcp:192.168.1.20:5025, old=replay:frames.txt.",
            Arity = ArgumentArity.OneOrMore,
        };
        var options = new Options();
        var command = new Command("listen", "Listens to instruments on serial ports, the network or recordings, all on one clock. Example: heatwright listen meter=serial:/dev/ttyUSB0@9600 load=tcp:192.168.1.20:5025 --csv bench.csv") { sources };
        options.All.ToList().ForEach(command.Options.Add);
        command.SetAction((parsed, cancel) => Run(screen, parsed, parsed.GetValue(sources)!, options, cancel));
        return command;
    }

    private static async Task<int> Run(Screen screen, ParseResult parsed, string[] sources, Options options, CancellationToken cancel)
    {
        var planned = options.Plan(parsed, sources);
        if (!planned.IsFine)
        {
            screen.Complain(planned.Problems);
            return ExitCodes.BadInput;
        }

        var plan = planned.Value;
        bool json = parsed.GetValue(options.Json);
        var clock = new BenchClock(TimeProvider.System);
        using var takers = new Takers();
        var problems = takers.Open(parsed, options, plan, clock, json ? new LiveLines(screen.Output) : new LiveWords(screen));
        if (problems.Count > 0)
        {
            screen.Complain(problems);
            return ExitCodes.BadInput;
        }

        var (page, address) = await Page(takers, parsed.GetValue(options.Page), cancel);
        if (address is not null && !json)
        {
            screen.Say($"Live page: {address} on this machine. Ctrl-C ends.");
        }

        Checked<Listened> listened;
        try
        {
            listened = await Listening.Run(plan, clock, takers.All, cancel);
        }
        finally
        {
            if (page is not null)
            {
                await page.StopAsync(CancellationToken.None);
                await page.DisposeAsync();
            }
        }

        return Told(screen, listened, takers.Run, json);
    }

    private static int Told(Screen screen, Checked<Listened> listened, LiveRun? run, bool json)
    {
        if (!listened.IsFine)
        {
            screen.Complain(listened.Problems);
            return ExitCodes.BadInput;
        }

        var done = listened.Value;
        if (json)
        {
            screen.Output.WriteLine(JsonSerializer.Serialize(new ListenEnd(done.Lines, done.Unread, done.Seconds, run?.Run, run?.Stored), LiveLines.Plain));
            return ExitCodes.Done;
        }

        string heard = string.Join(", ", done.Lines.Select(pair => $"{pair.Value.ToString(CultureInfo.InvariantCulture)} lines from {pair.Key}"));
        screen.Say($"{heard}; {done.Unread.ToString(CultureInfo.InvariantCulture)} without a reading, in {done.Seconds.ToString("0.0", CultureInfo.InvariantCulture)} s.");
        if (run is not null)
        {
            screen.Say($"Run '{run.Run}': {run.Stored.ToString(CultureInfo.InvariantCulture)} readings in the study, one change that 'undo' takes back.");
        }

        return ExitCodes.Done;
    }

    private static async Task<(Microsoft.AspNetCore.Builder.WebApplication? Page, string? Address)> Page(Takers takers, bool wanted, CancellationToken cancel)
    {
        if (!wanted)
        {
            return (null, null);
        }

        var hub = new LiveHub();
        takers.Add(hub);
        var app = LiveBench.Build(hub, 0);
        await app.StartAsync(cancel);
        return (app, WebBench.Address(app));
    }

    private sealed record Options
    {
        public Option<string> Seconds { get; } = new("--seconds") { Description = "Ends after so many seconds; without it, Ctrl-C ends." };

        public Option<string> Lines { get; } = new("--lines") { Description = "Ends after so many lines of readings." };

        public Option<string> Ask { get; } = new("--ask") { Description = "What to send for each reading, such as MEAS:VOLT:DC?; without it the lines that come are read, and a silent network instrument is asked READ?." };

        public Option<string> Every { get; } = new("--every") { Description = "Seconds from one question to the next; 1 without it." };

        public Option<string> Csv { get; } = new("--csv") { Description = "Write everything heard to a table, one value a line." };

        public Option<string> Frames { get; } = new("--frames") { Description = "Record all bytes as they pass, for replay: to this name, the instrument's, and .frames." };

        public Option<string> Into { get; } = new("--into") { Description = "Study file that takes the readings as a run." };

        public Option<string> Trial { get; } = new("--trial") { Description = "The trial that the run belongs to." };

        public Option<string> Run { get; } = new("--run") { Description = "Id of the run; without it, the trial's with a number." };

        public Option<string> Columns { get; } = new("--columns") { Description = "Which value goes into which column of the run: volts=meter.U,amps=load.I." };

        public Option<bool> Page { get; } = new("--page") { Description = "Show it in the browser too: big figures and curves, on this machine only." };

        public JsonOption Json { get; } = new JsonOption("One JSON object a line for machines.").Or<HeardLine>("each line of readings", LiveLines.Plain).Or<HeardUnread>("each line without a reading", LiveLines.Plain).Or<HeardNote>("each note on a connection", LiveLines.Plain).Or<ListenEnd>("the last line", LiveLines.Plain);

        public LogAnswers Answers { get; } = LogAnswers.Options();

        public IEnumerable<Option> All => [Seconds, Lines, Ask, Every, Csv, Frames, Into, Trial, Run, Columns, Page, Json, .. Answers.All];

        public Checked<ListenPlan> Plan(ParseResult parsed, string[] sources) => Answers.Given(parsed).Then<ListenPlan>(answers =>
        {
            var problems = new List<Problem>();
            var plans = sources.Select(SourcePlan.Read).ToArray();
            problems.AddRange(plans.SelectMany(plan => plan.Problems));
            double seconds = Number(parsed, Seconds, double.PositiveInfinity, problems), every = Number(parsed, Every, 1, problems), lines = Number(parsed, Lines, 0, problems);
            if (parsed.GetValue(Into) is not null != (parsed.GetValue(Trial) is not null))
            {
                problems.Add(new("A study and a trial belong together.", "--into, --trial", "one without the other", "both or none", "Say which study takes the readings, and for which trial."));
            }

            return problems.Count > 0 ? new(problems) : new(new ListenPlan([.. plans.Select(plan => plan.Value with
            {
                Ask = parsed.GetValue(Ask),
                EveryS = every,
                Answers = answers,
                Frames = parsed.GetValue(Frames) is { } name ? $"{name}{plan.Value.Name}.frames" : null,
            })])
            { Seconds = seconds, Lines = lines > 0 ? (long)lines : null });
        });

        private static double Number(ParseResult parsed, Option<string> option, double otherwise, List<Problem> problems)
        {
            if (parsed.GetValue(option) is not { } text)
            {
                return otherwise;
            }

            if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && number is > 0 and < 1e9)
            {
                return number;
            }

            problems.Add(new("This is no number for the option.", option.Name, text, "a number above nought, with a decimal point", "Type another."));
            return otherwise;
        }
    }

    private sealed class Takers : IDisposable
    {
        private readonly List<IHeardTaker> all = [];

        public IReadOnlyList<IHeardTaker> All => all;

        public LiveRun? Run { get; private set; }

        public void Add(IHeardTaker taker) => all.Add(taker);

        public IReadOnlyList<Problem> Open(ParseResult parsed, Options options, ListenPlan plan, BenchClock clock, IHeardTaker screen)
        {
            all.Add(screen);
            if (Listener.Check(plan.Plans) is { Count: > 0 } problems)
            {
                return problems;
            }

            if (parsed.GetValue(options.Into) is { } study)
            {
                var run = LiveRun.Open(study, parsed.GetValue(options.Trial)!, parsed.GetValue(options.Run), parsed.GetValue(options.Columns) ?? "", plan.Plans, clock);
                if (!run.IsFine)
                {
                    return run.Problems;
                }

                all.Add(Run = run.Value);
            }

            if (parsed.GetValue(options.Csv) is { } path)
            {
                var table = LiveTable.Open(path, clock);
                if (!table.IsFine)
                {
                    return table.Problems;
                }

                all.Add(table.Value);
            }

            return [];
        }

        public void Dispose() => all.OfType<IDisposable>().ToList().ForEach(taker => taker.Dispose());
    }
}

using System.Diagnostics;
using Heatwright.Instruments;

namespace Heatwright.Tests.Instruments;

/// <summary>A session under test: gathers what is heard until enough was.</summary>
internal sealed class Ear : IAsyncDisposable
{
    private const int MostRealS = 40;

    private readonly CancellationTokenSource stop = new();
    private readonly List<Heard> heard = [];
    private readonly Task reading;
    private bool stopped;

    public Ear(double hurry, params SourcePlan[] plans)
    {
        Clock = new(new HurriedClock(hurry));
        var reader = Listener.Begin(plans, Clock, stop.Token);
        reading = Task.Run(async () =>
        {
            await foreach (var one in reader.ReadAllAsync())
            {
                lock (heard)
                {
                    heard.Add(one);
                }
            }
        });
    }

    public BenchClock Clock { get; }

    public static SourcePlan Plan(string typed) => SourcePlan.Read(typed, 0).Value;

    public Heard[] All()
    {
        lock (heard)
        {
            return [.. heard];
        }
    }

    public Heard.Line[] Lines() => [.. All().OfType<Heard.Line>()];

    public string[] Unread() => [.. All().OfType<Heard.Unread>().Select(one => one.Text)];

    public string Notes() => string.Join('\n', All().OfType<Heard.Note>().Select(note => $"{note.State}: {note.Words}"));

    public string Everything() => string.Join('\n', All().Select(one => one.ToString()));

    /// <summary>Waits until it is so; a failed test shows all that was heard.</summary>
    public async Task Until(Func<Ear, bool> so)
    {
        var watch = Stopwatch.StartNew();
        while (!so(this))
        {
            Assert.True(watch.Elapsed.TotalSeconds < MostRealS, "Heard only:\n" + Everything());
            await Task.Delay(10, TestContext.Current.CancellationToken);
        }
    }

    public Task Until(int lines) => Until(ear => ear.Lines().Length >= lines);

    /// <summary>All sources are at their end.</summary>
    public Task End() => reading.WaitAsync(TimeSpan.FromSeconds(MostRealS));

    public async ValueTask DisposeAsync()
    {
        if (!stopped)
        {
            stopped = true;
            await stop.CancelAsync();
            await End();
            stop.Dispose();
        }
    }
}

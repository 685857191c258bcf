using Heatwright.Cli;

namespace Heatwright.Tests.Cli;

/// <summary>Work that takes longer than a second says so on a terminal, on one line that is gone before anything else is said.</summary>
public sealed class SignOfLifeTests : IDisposable
{
    private readonly StringWriter output = new();
    private readonly StringWriter error = new();
    private readonly HandClock clock = new();

    public void Dispose()
    {
        output.Dispose();
        error.Dispose();
    }

    private Screen On(bool terminal, int width = 100) => new(output, error, false, terminal, width) { Clock = clock };

    [Fact]
    public void What_is_quick_says_nothing()
    {
        var screen = On(terminal: true);
        screen.Progress("Working out 4 arrangements: A");
        clock.Pass(0.9);
        screen.Say("done");
        clock.Pass(5);
        Assert.Equal("", error.ToString());
        Assert.Equal("done", output.ToString().Trim());
    }

    [Fact]
    public void After_a_second_it_is_said_what_is_worked_out_and_taken_away_again()
    {
        var screen = On(terminal: true);
        screen.Progress("Working out 4 arrangements: A");
        clock.Pass(1);
        Assert.Equal("\rWorking out 4 arrangements: A ... 1 s", error.ToString());
        screen.Progress("Working out 4 arrangements: B, longer");
        clock.Pass(11);
        Assert.EndsWith("\rWorking out 4 arrangements: B, longer ... 12 s", error.ToString(), StringComparison.Ordinal);
        screen.Output.Write("{}");
        Assert.EndsWith("12 s\r" + new string(' ', "Working out 4 arrangements: B, longer ... 12 s".Length) + "\r", error.ToString(), StringComparison.Ordinal);
        Assert.Equal("{}", output.ToString());
        Assert.DoesNotContain('\n', error.ToString());
        Assert.DoesNotContain('\u001b', error.ToString()); // no colours and no cursor codes, with and without NO_COLOR
    }

    [Fact]
    public void A_pipe_a_machine_and_nobody_hear_nothing()
    {
        var piped = On(terminal: false);
        piped.Progress("Working out");
        clock.Pass(5);
        var machine = On(terminal: true);
        machine.GatherProblems();
        machine.Progress("Working out");
        clock.Pass(5);
        Assert.Equal("", error.ToString() + output);
    }

    [Fact]
    public void A_narrow_window_and_plain_ASCII_are_kept_to()
    {
        var screen = On(terminal: true, width: 40);
        screen.GoPlain();
        screen.Progress("Working out 4 arrangements: D, 20 Ω wire under a duty ceiling");
        clock.Pass(100);
        Assert.All(error.ToString().Split('\r', StringSplitOptions.RemoveEmptyEntries), line => Assert.True(line.Length < 40, line));
        Assert.All(error.ToString(), sign => Assert.True(char.IsAscii(sign)));
    }

    /// <summary>A clock that goes when it is told to.</summary>
    private sealed class HandClock : TimeProvider
    {
        private readonly List<Alarm> alarms = [];
        private long ticks;

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => ticks;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            var alarm = new Alarm(() => callback(state), period, ticks + dueTime.Ticks);
            alarms.Add(alarm);
            return alarm;
        }

        public void Pass(double seconds)
        {
            long end = ticks + TimeSpan.FromSeconds(seconds).Ticks;
            while (alarms.Where(one => !one.Off && one.Next <= end).MinBy(one => one.Next) is { } due)
            {
                ticks = due.Next;
                due.Next += due.Period.Ticks;
                due.Ring();
            }

            ticks = end;
        }

        private sealed class Alarm(Action ring, TimeSpan period, long next) : ITimer
        {
            public bool Off { get; private set; }

            public long Next { get; set; } = next;

            public TimeSpan Period => period;

            public void Ring() => ring();

            public bool Change(TimeSpan dueTime, TimeSpan period) => throw new NotSupportedException();

            public void Dispose() => Off = true;

            public ValueTask DisposeAsync()
            {
                Off = true;
                return ValueTask.CompletedTask;
            }
        }
    }
}

using System.Globalization;

namespace Heatwright.Cli;

/// <summary>One line that says what is being worked out, where that takes longer than a second; written over itself, and taken away before anything else is said.</summary>
/// <remarks>No colours and no cursor codes: a carriage return and blanks do on every terminal.</remarks>
internal sealed class SignOfLife(TextWriter error, int width, TimeProvider clock) : IDisposable
{
    /// <summary>What is quicker needs no sign.</summary>
    private static readonly TimeSpan First = TimeSpan.FromSeconds(1);

    private readonly Lock gate = new();
    private ITimer? timer;
    private long since;
    private string what = "";
    private int shown;

    /// <summary>Something is begun; a line that is there already says it at once.</summary>
    /// <param name="words">What, as this screen can show it.</param>
    public void Begin(string words)
    {
        lock (gate)
        {
            what = words;
            if (timer is null)
            {
                since = clock.GetTimestamp();
                timer = clock.CreateTimer(_ => Show(), null, First, First);
            }
            else if (shown > 0)
            {
                Write();
            }
        }
    }

    /// <summary>Takes the line away: there is something to say.</summary>
    public void End()
    {
        lock (gate)
        {
            timer?.Dispose();
            timer = null;
            Wipe();
        }
    }

    public void Dispose() => End();

    private void Show()
    {
        lock (gate)
        {
            if (timer is not null)
            {
                Write();
            }
        }
    }

    private void Write()
    {
        string seconds = string.Create(CultureInfo.InvariantCulture, $" ... {clock.GetElapsedTime(since).TotalSeconds:0} s");
        int room = Math.Max(1, width - 1 - seconds.Length); // the last column of a line stays free: some terminals go on to the next from there
        string line = (what.Length > room ? what[..room].TrimEnd() : what) + seconds;
        error.Write("\r" + line.PadRight(shown));
        error.Flush();
        shown = line.Length;
    }

    private void Wipe()
    {
        if (shown > 0)
        {
            error.Write("\r" + new string(' ', shown) + "\r");
            error.Flush();
            shown = 0;
        }
    }
}

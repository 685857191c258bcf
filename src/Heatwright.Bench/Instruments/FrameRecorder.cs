using System.Text;

namespace Heatwright.Instruments;

/// <summary>Writes frames to a file as they pass; what has passed is with the operating system at once, so that a killed program loses nothing of it.</summary>
internal sealed class FrameRecorder : IDisposable
{
    private readonly StreamWriter file;
    private readonly Lock gate = new();
    private double lastS;
    private bool closed;

    public FrameRecorder(string path, BenchClock clock)
    {
        file = new(new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.Read), new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };
        file.WriteLine(FrameFile.FirstLine);
        file.WriteLine($"# begun {clock.Began.ToUniversalTime().ToString("O", System.Globalization.CultureInfo.InvariantCulture)}");
    }

    /// <summary>Adds a frame; its seconds are those of the session.</summary>
    public void Add(Frame frame)
    {
        lock (gate)
        {
            if (!closed)
            {
                // What is sent and what comes is stamped on two threads; the file only goes forward.
                lastS = Math.Max(lastS, frame.AtS);
                file.WriteLine(FrameFile.Line(frame with { AtS = lastS }));
            }
        }
    }

    public void Dispose()
    {
        lock (gate)
        {
            if (!closed)
            {
                closed = true;
                file.Dispose();
            }
        }
    }
}

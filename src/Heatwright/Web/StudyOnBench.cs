using System.Security.Cryptography;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Web;

/// <summary>How the study stands at one moment.</summary>
/// <param name="Opened">The study as it was read last.</param>
/// <param name="Result">What was worked out of it; null: not yet, or not possible.</param>
/// <param name="Problems">Why it cannot be worked out; empty: nothing stands in the way.</param>
/// <param name="Doing">What is being worked out just now.</param>
/// <param name="FileProblems">Why the file cannot be read any more; the study is then the last one that could.</param>
public sealed record Standing(OpenedStudy Opened, StudyResult? Result, IReadOnlyList<Problem> Problems, string Doing, IReadOnlyList<Problem> FileProblems)
{
    /// <summary>What the trials told; there before the predictions are. Null: not yet.</summary>
    public IReadOnlyList<PartFindings>? Findings { get; init; }

    /// <summary>The state that a page shows: another one means that the page is out of date.</summary>
    public string Key => string.Join(' ', Opened.Fingerprint[..8], Findings is not null ? "found" : "-", Result is not null || Problems.Count > 0 ? "worked" : "-");
}

/// <summary>One study file on the bench: worked out once in the background, and again when the file has changed.</summary>
internal sealed class StudyOnBench : IDisposable
{
    /// <summary>Two changes so close together may leave a file of the same size and time: file systems count in steps of milliseconds.</summary>
    private static readonly TimeSpan Tick = TimeSpan.FromMilliseconds(50);

    private readonly Lock gate = new();
    private readonly CancellationTokenSource closing = new();
    private Work work;
    private string stamp;
    private IReadOnlyList<Problem> fileProblems = [];

    /// <summary>Begins to work the study out.</summary>
    /// <param name="opened">The study.</param>
    /// <param name="headStart">So long the first page has the machine to itself: working out takes all cores, and the browser that is to show the page needs them.</param>
    public StudyOnBench(OpenedStudy opened, TimeSpan headStart = default)
    {
        stamp = Stamp(opened.Path);
        work = new Work(opened, closing.Token, headStart);
    }

    /// <summary>Told apart from a bench that was started before: its tokens are not those of this one.</summary>
    public string Start { get; } = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(4));

    /// <summary>File of the maker's own shelf; it need not be there.</summary>
    public string Shelf { get; init; } = "";

    /// <summary>How it stands now; looks at the file first.</summary>
    public Standing Now()
    {
        lock (gate)
        {
            LookAtFile();
            return work.Standing(fileProblems);
        }
    }

    /// <summary>Done when what is being worked out now is worked out.</summary>
    public Task ReadyAsync()
    {
        lock (gate)
        {
            LookAtFile();
            return work.Done;
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        closing.Cancel();
        closing.Dispose();
    }

    private void LookAtFile()
    {
        string seen = Stamp(work.Opened.Path);
        if (seen == stamp)
        {
            return;
        }

        var (began, changed) = (DateTime.UtcNow, Changed(work.Opened.Path));
        var again = OpenStudy.Read(work.Opened.Path);
        fileProblems = again.Problems;
        // A file that cannot be read just now, as while another closes it, is asked again; so is one that could be written once more within the tick of its own time; one of the future, as of a clock set back, is not.
        stamp = again.IsFine && (began - changed).Duration() > Tick ? seen : "";
        if (again.IsFine && again.Value.Fingerprint != work.Opened.Fingerprint)
        {
            work.Cancel();
            work = new Work(again.Value, closing.Token);
        }
    }

    /// <summary>Size and time of the file and of its write-ahead log: cheap to ask at every page, and different after every change.</summary>
    private static string Stamp(string path) => string.Join(' ', Files(path).Select(file => file.Exists ? $"{file.Length}:{file.LastWriteTimeUtc.Ticks}" : "none"));

    private static DateTime Changed(string path) => Files(path).Where(file => file.Exists).Select(file => file.LastWriteTimeUtc).DefaultIfEmpty(DateTime.MaxValue).Max();

    private static FileInfo[] Files(string path) => [new(path), new(path + "-wal")];

    private sealed class Work
    {
        private readonly CancellationTokenSource cancel;
        private volatile string doing = "Checking readings and fitting trials";
        private volatile StudyResult? result;
        private volatile IReadOnlyList<PartFindings>? findings;
        private volatile IReadOnlyList<Problem> problems;

        public Work(OpenedStudy opened, CancellationToken closing, TimeSpan headStart = default)
        {
            Opened = opened;
            cancel = CancellationTokenSource.CreateLinkedTokenSource(closing);
            problems = Contradictions.Of(opened.Study);
            var token = cancel.Token;
            Done = problems.Count > 0 ? Task.CompletedTask : Task.Run(() => WorkOut(headStart, token), CancellationToken.None);
        }

        public OpenedStudy Opened { get; }

        public Task Done { get; }

        public void Cancel() => cancel.Cancel();

        public Standing Standing(IReadOnlyList<Problem> fileProblems) => new(Opened, result, problems, doing, fileProblems) { Findings = findings };

        private async Task WorkOut(TimeSpan headStart, CancellationToken token)
        {
            try
            {
                await Task.Delay(headStart, token);
                result = RunStudy.Run(Opened.Study, Opened.Fingerprint, what => doing = what, found => findings = found, token);
            }
            catch (OperationCanceledException) when (token.IsCancellationRequested)
            {
                // A newer study is being worked out in its place.
            }
            catch (Exception error) when (error is not OutOfMemoryException)
            {
                // The pages must say what happened instead of waiting for ever.
                problems = [new("The study cannot be worked out.", doing, error.Message, "a study the laws can be applied to", "This is our fault: keep the study file, it is not changed, and try a newer version.")];
            }
        }
    }
}

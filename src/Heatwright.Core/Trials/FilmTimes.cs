using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Times of readings that were typed off a film of the meters, by its time code: 'mm:ss:ff' or 'hh:mm:ss:ff', the last number counting frames.</summary>
/// <remarks>The form of SMPTE ST 12-1 (from memory): a ';' before the frames says that frame numbers are dropped, two a minute but for each tenth minute (four at 60 frames),
/// so that the code keeps up with a clock at 29.97 or 59.94 frames a second. A line 'cut' says that the film leaves time out there, 'cut+40s' or 'cut+40±5s' how much.</remarks>
public static partial class FilmTimes
{
    /// <summary>Setting of a run, Hz: frames a second of the film that its times were typed off. A run without it has a watch.</summary>
    public const string FrameRate = "frame rate";

    /// <summary>Slowest and fastest film that is taken, frames a second.</summary>
    public const double Slowest = 1, Fastest = 1000;

    /// <summary>What to do about a time that cannot be read.</summary>
    public const string Remedy = "Type it again, or 'cut' where the film leaves time out, 'cut+40s' where you know how long.";

    private const string CutWord = "cut";

    /// <summary>A place where the film leaves time out.</summary>
    /// <param name="From">First row behind it, from 0.</param>
    /// <param name="GapS">How long was left out; not a number where nobody said.</param>
    /// <param name="DoubtS">Standard doubt of that.</param>
    public sealed record Cut(int From, double GapS, double DoubtS);

    /// <summary>The times of a run.</summary>
    /// <param name="Read">Seconds since the run's first time, row by row, or what stands in the way.</param>
    /// <param name="FilmS">Where in the film each row stands, s; not a number where it has no time.</param>
    /// <param name="DoubtS">Standard doubt of each time by itself: one frame wide, one second where only seconds were typed.</param>
    /// <param name="Cuts">Where the film leaves time out.</param>
    public sealed record Times(IReadOnlyList<ReadingText> Read, double[] FilmS, double[] DoubtS, IReadOnlyList<Cut> Cuts);

    /// <summary>What is wrong about a frame rate; null: nothing.</summary>
    /// <param name="framesPerS">Frames a second.</param>
    /// <param name="text">As typed.</param>
    public static Problem? Wrong(double framesPerS, string text) => framesPerS is >= Slowest and <= Fastest ? null
        : new("No film runs at this frame rate.", FrameRate, text, string.Create(CultureInfo.InvariantCulture, $"{Slowest} to {Fastest} frames a second"), "Look it up in the film's properties: 24, 25, 29.97, 30, 50, 59.94 and 60 are usual.");

    /// <summary>True where a text says that the film was cut.</summary>
    public static bool IsCut(string text) => text.Trim().StartsWith(CutWord, StringComparison.OrdinalIgnoreCase);

    /// <summary>The times of a run's column; null where it holds no times, or none of a film.</summary>
    public static Times? Of(Run run, Column column, IReadOnlyList<string> texts) =>
        column.Name == "time" && run.Setting(FrameRate, double.NaN) is >= Slowest and <= Fastest and var rate ? Of(texts, rate) : null;

    /// <summary>The same of all readings of the run. A struck reading has no time; a struck cut still is one.</summary>
    public static Times? Of(Run run, int column) =>
        Of(run, run.Columns[column], [.. run.Readings.Select(reading => reading.StruckBecause is null || IsCut(reading.Raw[column]) ? reading.Raw[column] : "")]);

    /// <summary>The times of a whole run, in the order in which they were typed.</summary>
    /// <param name="texts">As typed.</param>
    /// <param name="framesPerS">Frames a second.</param>
    public static Times Of(IReadOnlyList<string> texts, double framesPerS)
    {
        var read = new ReadingText[texts.Count];
        double[] film = new double[texts.Count], doubts = new double[texts.Count];
        List<Cut> cuts = [];
        double first = double.NaN, last = double.NaN, leftOut = 0;
        for (int row = 0; row < read.Length; row++)
        {
            film[row] = double.NaN;
            if (IsCut(texts[row]))
            {
                var (gap, why) = Gap(texts[row]);
                read[row] = why.Length > 0 ? Unclear(why) : new(ReadingSays.Nothing, double.NaN, "");
                cuts.Add(new(row + 1, gap?.Si ?? double.NaN, gap?.SiDoubt ?? 0));
                leftOut += cuts[^1].GapS;
                continue;
            }

            var (code, doubt) = One(texts[row], framesPerS);
            read[row] = code;
            doubts[row] = doubt;
            if (code.Says != ReadingSays.Number)
            {
                continue;
            }

            film[row] = code.Value;
            first = double.IsNaN(first) ? code.Value : first;
            read[row] = code.Value < last
                ? Unclear("the film's time goes back: where the film was cut, type 'cut' on a line of its own, 'cut+40s' where you know how long")
                : double.IsNaN(leftOut)
                    ? Unclear("nobody knows how long the film was cut before it: type 'cut+40s' there, or begin a run of its own behind the cut")
                    : code with { Value = code.Value - first + leftOut };
            last = Math.Max(code.Value, double.IsNaN(last) ? code.Value : last);
        }

        return new(read, film, doubts, cuts);
    }

    /// <summary>One time as it stands in the film, s, and its standard doubt: within its frame, or its second, it may be anywhere.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="framesPerS">Frames a second.</param>
    public static (ReadingText Read, double DoubtS) One(string text, double framesPerS)
    {
        double frame = 1 / framesPerS;
        if (Code().Match(text.Trim()) is not { Success: true } match)
        {
            var plain = ReadingText.Read(text, Units.Second, "time");
            return (plain, plain.Says == ReadingSays.Number ? Math.Max(frame, text.Contains(':', StringComparison.Ordinal) && !text.Contains('.', StringComparison.Ordinal) ? 1 : 0) / Math.Sqrt(12) : 0);
        }

        int nominal = (int)Math.Ceiling(framesPerS - 0.05); // 29.97 counts to 30
        int Number(string group) => match.Groups[group].Success ? int.Parse(match.Groups[group].ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture) : 0;
        int minutes = (60 * Number("h")) + Number("m"), seconds = Number("s"), frames = Number("f");
        bool drops = match.Groups["drop"].ValueSpan is ";";
        int dropped = drops && nominal % 30 == 0 ? nominal / 15 : 0;
        string? why = frames >= nominal ? string.Create(CultureInfo.InvariantCulture, $"frames count from 0 to {nominal - 1} at {framesPerS:0.###} a second")
            : seconds > 59 || (match.Groups["h"].Success && Number("m") > 59) ? "minutes and seconds count to 59"
            : drops && dropped == 0 ? "';' before the frames is of films with 29.97 or 59.94 frames a second"
            : drops && seconds == 0 && frames < dropped && minutes % 10 != 0 ? string.Create(CultureInfo.InvariantCulture, $"a code that drops frames has no frame {frames} there")
            : null;
        return why is not null
            ? (Unclear(why), 0)
            : (new(ReadingSays.Number, ((nominal * ((60L * minutes) + seconds)) + frames - (dropped * (minutes - (minutes / 10)))) * frame, ""), frame / Math.Sqrt(12));
    }

    /// <summary>How long a cut is; why that cannot be read.</summary>
    private static (Estimate? Gap, string Why) Gap(string text)
    {
        string rest = text.Trim()[CutWord.Length..].TrimStart(' ', '\u00A0', '+', '=', ':');
        return rest.Length == 0 ? (null, "")
            : TypedValue.Read(rest, Expect.Seconds) is Answer.Fine { Value: TypedValue.Amount { Si: >= 0 } amount }
                ? (amount.AsEstimate("cut", CauseGroup.Assumption, new Origin.Assumed("typed with the cut")), "")
                : (null, "a cut is typed as 'cut', or with its length as 'cut+40s' or 'cut+40±5s'");
    }

    private static ReadingText Unclear(string why) => new(ReadingSays.Unclear, double.NaN, why);

    [GeneratedRegex(@"^(?:(?<h>\d{1,2}):)?(?<m>\d{1,3}):(?<s>\d{2})(?<drop>[:;])(?<f>\d{2,3})$", RegexOptions.CultureInvariant)]
    private static partial Regex Code();
}

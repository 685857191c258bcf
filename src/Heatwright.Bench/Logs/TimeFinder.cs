using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>What was found about the time of a log.</summary>
internal sealed record TimeFound(TimeBase Base, Draft? Column, double[] Seconds, double IntervalS = double.NaN, LogQuestion? Question = null);

/// <summary>Finds the time column and what it counts.</summary>
internal sealed partial class TimeFinder(List<Draft> drafts, IReadOnlyList<string> preamble, int rows, LogMapping? remembered, List<string> notes)
{
    private const double Day = 86400;

    /// <summary>A first row within the first minute after nought is a start; few benches are at work just past midnight.</summary>
    private const double LateStartS = 60;

    private static readonly string[] IndexNames = ["sample", "index", "idx", "n", "no", "no.", "nr", "nr.", "#", "scan", "point", "record", "row", "messung", "messwert", "sample no", "sample number", "reading"];
    private static readonly string[] ElapsedWords = ["elapsed", "duration", "dauer", "runtime", "run time", "uptime", "since", "relative", "rel", "laufzeit"];
    private static readonly string[] ClockWords = ["clock", "uhrzeit", "time of day", "stamp"];

    public TimeFound Find()
    {
        CalendarColumns.Join(drafts);
        if (rows == 0)
        {
            return new(TimeBase.None, null, []);
        }

        foreach (var draft in drafts)
        {
            var found = draft.IsTimeCells ? FromCells(draft) : Epoch(draft) ?? NamedTime(draft);
            if (found is not null)
            {
                return found;
            }
        }

        return drafts.Select(UnitOnly).FirstOrDefault(found => found is not null) ?? Index();
    }

    private TimeFound FromCells(Draft draft)
    {
        var look = draft.Look?.Times;
        if (look is { Intervals: > 0 })
        {
            var widths = draft.Ends.Zip(draft.Values, (end, start) => end - start).Where(width => !double.IsNaN(width)).Distinct().Take(2).ToList();
            return new(TimeBase.Interval, draft, draft.Values, widths.Count == 1 ? widths[0] : double.NaN);
        }

        if (draft.HasDate)
        {
            bool offset = look is { Offsets: > 0 } && look.Offsets >= look.Clocks;
            return new(offset ? TimeBase.DateTimeWithOffset : TimeBase.DateTimeWithoutOffset, draft, draft.Values);
        }

        bool elapsed = IsElapsed(draft, look);
        if (!elapsed)
        {
            Unwrap(draft);
        }

        return new(elapsed ? TimeBase.Elapsed : TimeBase.ClockTime, draft, draft.Values);
    }

    /// <summary>Hours, minutes and seconds since the start, or of the day? The name tells, or a start at nought, or more hours than a day has.</summary>
    private static bool IsElapsed(Draft draft, TimeTally? look)
    {
        if (look is { Halves: > 0 } or { Offsets: > 0 } || Speaks(draft.Name, ClockWords))
        {
            return false;
        }

        double first = draft.Values.FirstOrDefault(value => !double.IsNaN(value));
        return Speaks(draft.Name, ElapsedWords) || look is { PassesADay: true } || draft.Plan is { MinutesAndSeconds: true } || first is >= 0 and < LateStartS;
    }

    private static bool Speaks(string name, string[] words) => words.Any(word => name.Contains(word, StringComparison.OrdinalIgnoreCase));

    /// <summary>A clock that falls back by more than half a day has passed midnight.</summary>
    private void Unwrap(Draft draft)
    {
        double[] values = draft.Values;
        int midnights = 0, back = 0;
        double last = double.NaN;
        for (int i = 0; i < values.Length; i++)
        {
            if (double.IsNaN(values[i]))
            {
                continue;
            }

            double read = values[i];
            midnights += read < last - (Day / 2) ? 1 : 0;
            back += read < last && read >= last - (Day / 2) ? 1 : 0;
            last = read;
            values[i] = read + (midnights * Day);
        }

        if (midnights > 0)
        {
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"'{draft.Name}' passes midnight {midnights} times; its seconds go on counting from midnight of the first day."));
        }

        if (back > 0)
        {
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"'{draft.Name}' goes back {back} times within a day."));
        }
    }

    /// <summary>Seconds or thousandths since 1970: no elapsed time on a bench is that large. From 2001 to 2096.</summary>
    private static TimeFound? Epoch(Draft draft)
    {
        if (!IsRising(draft, out double first, out _, out _))
        {
            return null;
        }

        double? scale = first switch
        {
            >= 1e9 and < 4e9 => 1,
            >= 1e12 and < 4e12 => 1e3,
            >= 1e15 and < 4e15 => 1e6,
            >= 1e18 and < 4e18 => 1e9,
            _ => null,
        };
        if (scale is not { } perSecond)
        {
            return null;
        }

        if (draft.UnitText.Length == 0)
        {
            draft.UnitText = perSecond switch { 1 => "s", 1e3 => "ms", 1e6 => "µs", _ => "ns" };
            draft.Unit = UnitWords.Find(draft.UnitText);
        }

        return new(TimeBase.Epoch, draft, [.. draft.Values.Select(value => value / perSecond)]);
    }

    private TimeFound? NamedTime(Draft draft)
    {
        bool namedByUnit = draft.Name is "s" or "ms" || (draft.Name.Length >= 3 && draft.Name != "min" && IsTimeUnit(UnitWords.Find(draft.Name)));
        if (!(namedByUnit || HeaderName.IsTime(draft.Name)) || !(draft.Unit is null || IsTimeUnit(draft.Unit)) || !IsRising(draft, out _, out double step, out int falls, mayRestart: true))
        {
            return null;
        }

        if (falls > 0)
        {
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"'{draft.Name}' goes back {falls} times, as where a board starts anew; its seconds stand as they were read."));
        }

        if (draft.Unit is null)
        {
            string word = draft.Name.Contains("milli", StringComparison.OrdinalIgnoreCase) ? "ms" : draft.Name.Contains("micro", StringComparison.OrdinalIgnoreCase) ? "µs"
                : IsTimeUnit(UnitWords.Find(draft.Name)) ? draft.Name : remembered?.TimeUnit ?? "";
            // Fractions, and steps below ten, are seconds on any bench; whole hundreds may be thousandths of one.
            bool large = step >= 10 && draft.Values.All(value => double.IsNaN(value) || value == Math.Floor(value));
            if (word.Length == 0 && large)
            {
                return new(TimeBase.Elapsed, draft, [], double.NaN, UnitQuestion(draft, step));
            }

            if (word.Length == 0)
            {
                notes.Add($"'{draft.Name}' has no unit; taken as seconds.");
            }

            draft.Unit = word.Length == 0 ? Units.Second : UnitWords.Find(word);
        }

        return Elapsed(draft);
    }

    private LogQuestion UnitQuestion(Draft draft, double step)
    {
        var answer = remembered ?? new LogMapping();
        return new(
            string.Create(CultureInfo.InvariantCulture, $"'{draft.Name}' counts in steps of {step:G6} and has no unit. In which unit does it count?"),
            [.. ((string[])["s", "ms", "µs", "min"]).Select(unit => new LogChoice(unit, answer with { TimeUnit = unit }))]);
    }

    /// <summary>A column without a name for time that counts seconds, minutes or hours and rises.</summary>
    private static TimeFound? UnitOnly(Draft draft) => IsTimeUnit(draft.Unit) && IsRising(draft, out _, out _, out _) ? Elapsed(draft) : null;

    private static bool IsTimeUnit(Unit? unit) => unit is not null && unit.Dimension == Units.Second.Dimension;

    private static TimeFound Elapsed(Draft draft)
    {
        var unit = draft.Unit ?? Units.Second;
        return new(TimeBase.Elapsed, draft, unit == Units.Second ? draft.Values : [.. draft.Values.Select(value => UnitScale.Convert(value, unit, Units.Second))]);
    }

    private static bool IsRising(Draft draft, out double first, out double step, out int falls, bool mayRestart = false)
    {
        (first, step, falls) = (double.NaN, 0, 0);
        double last = double.NaN;
        int count = 0;
        if (draft.Kind != ColumnKind.Number || draft.IsTimeCells)
        {
            return false;
        }

        foreach (double value in draft.Values)
        {
            falls += value < last ? 1 : 0;
            if (falls > 0 && !mayRestart)
            {
                return false;
            }

            first = count == 0 ? value : first;
            last = double.IsNaN(value) ? last : value;
            count += double.IsNaN(value) ? 0 : 1;
        }

        step = count > 1 ? (last - first) / (count - 1) : 0;
        // A board that starts anew counts from nought again: now and then, not at every tenth row.
        return count > 0 && (falls == 0 || falls * 10 <= count + 6);
    }

    private TimeFound Index()
    {
        double interval = preamble.Select(StatedInterval).FirstOrDefault(value => value > 0, double.NaN);
        var index = drafts.FirstOrDefault(draft => draft.Kind == ColumnKind.Number && IndexNames.Contains(draft.Name, StringComparer.OrdinalIgnoreCase) && Counts(draft.Values));
        if (index is null && double.IsNaN(interval))
        {
            return new(TimeBase.None, null, []);
        }

        double[] seconds = double.IsNaN(interval) ? []
            : [.. Enumerable.Range(0, rows).Select(row => interval * (index is null ? row : index.Values[row] - index.Values[0]))];
        return new(TimeBase.SampleIndex, index, seconds, interval);
    }

    private static bool Counts(double[] values)
    {
        for (int i = 1; i < values.Length; i++)
        {
            if (values[i] <= values[i - 1] || values[i] != Math.Floor(values[i]))
            {
                return false;
            }
        }

        return values.Length > 0 && !double.IsNaN(values[0]);
    }

    private static double StatedInterval(string line)
    {
        var match = Stated().Match(line.Length > 400 ? line[..400] : line);
        if (!match.Success || UnitWords.Find(match.Groups["unit"].Value) is not { } unit)
        {
            return double.NaN;
        }

        double value = NumberCell.Read(match.Groups["value"].Value, '.').Value;
        return IsTimeUnit(unit) ? value * unit.Factor : unit.Dimension == Dimension.None / Units.Second.Dimension ? 1 / (value * unit.Factor) : double.NaN;
    }

    [GeneratedRegex(@"(?:interval|period|rate|frequency|spacing|delta ?t|\bdt\b|abtast)[^0-9]{0,16}?(?<value>[0-9]{1,9}(?:[.,][0-9]{1,9})?)[ ,;\t]{0,4}(?<unit>[A-Za-zµμ]{1,8})", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Stated();
}

using System.Globalization;
using Heatwright.Logs;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.StudyFile;

/// <summary>Which column of a log fills which column of a run.</summary>
/// <param name="Run">Column of the run: time, volts, amps …</param>
/// <param name="Log">Column of the log.</param>
public sealed record ColumnPair(string Run, string Log);

/// <summary>Makes a run of a log: finds which column is which, and writes each reading as text with every digit.</summary>
public static class RunFromLog
{
    /// <summary>A heading taken apart: the name and the unit, null where it names none.</summary>
    /// <param name="cell">As written: 'Current (mA)'.</param>
    public static (string Name, Unit? Unit) Heading(string cell)
    {
        var head = HeaderName.Split(cell);
        return (head.Name, head.Unit ?? Named(head.Name));
    }

    /// <summary>The unit that a name without one stands for: itself a unit, 'V', 'mA' or 'C', or the letter of what it counts, alone or before an underscore or a blank: 'I', 'I_load', 'U cell'.</summary>
    private static Unit? Named(string name)
    {
        return UnitWords.IsPlainly(name) || name.Trim() is "C" or "F" ? UnitWords.Find(name.Trim()) : name.Trim().Split('_', ' ')[0] switch
        {
            "U" or "V" => Units.Volt,
            "I" => Units.Ampere,
            "P" => Units.Watt,
            "R" => Units.Ohm,
            _ => null,
        };
    }

    /// <summary>The columns that a run of a trial needs, and those that it may have.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="named">Columns that the run has or shall have: where one stands for others, those need not be there. Null: none is known yet.</param>
    public static (IReadOnlyList<string> Needed, IReadOnlyList<string> Perhaps) Columns(Trial trial, IEnumerable<string>? named = null)
    {
        var (needed, perhaps, _) = StudyWords.Of(trial, named);
        return (needed, perhaps);
    }

    /// <summary>The columns that a run has where nothing is said of them: those it needs, and those its card asks for beside; the time first.</summary>
    /// <param name="trial">The trial.</param>
    public static IReadOnlyList<string> Usual(Trial trial)
    {
        var needed = Columns(trial).Needed;
        return TrialCard.Of(trial) is { } card && card.Columns.Any(column => column.Asked) ? [.. card.Columns.Where(column => column.Asked || needed.Contains(column.Name)).Select(column => column.Name).OrderBy(name => name != "time")] : needed;
    }

    /// <summary>The columns that a run needs with what is said of it: through a resistor of known ohms the volts tell the amps.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="settings">Names of the run's settings.</param>
    /// <param name="named">Columns that the run has or shall have; null: none is known yet.</param>
    public static IEnumerable<string> Needed(Trial trial, IEnumerable<string> settings, IEnumerable<string>? named = null) =>
        StudyWords.Of(trial, named).Needed.Where(column => column != "amps" || trial.Kind != TrialKind.Discharge || !settings.Contains("load", StringComparer.Ordinal));

    /// <summary>The settings that a run of a trial may have.</summary>
    public static IReadOnlyList<string> Settings(Trial trial) => StudyWords.Of(trial).Settings;

    /// <summary>Unit of a run's column, or any that measures the same; a column of words has none.</summary>
    public static Unit UnitOf(Trial trial, string column) => StudyWords.UnitOf(trial, column) ?? Units.One;

    /// <summary>True where a column of a trial holds words.</summary>
    public static bool IsWord(Trial trial, string column) => StudyWords.IsWord(trial, column);

    /// <summary>True where a name is that of a column of a trial, or another that loggers and makers give it.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="column">The column.</param>
    /// <param name="name">The name, without a unit.</param>
    public static bool IsCalled(Trial trial, string column, string name) => ((string[])[column, .. TrialCard.Of(trial)?.Column(column)?.Also ?? []]).Any(also => Plain(also).Equals(Plain(name), StringComparison.OrdinalIgnoreCase));

    private static string Plain(string name) => name.Trim().Replace('-', ' ').Replace('_', ' ');

    /// <summary>The pairs, from what the maker says, what is remembered, and what units and names settle; else one question with its answers.</summary>
    /// <param name="log">The log.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="said">As the maker says.</param>
    /// <param name="remembered">Names given to columns of this instrument's logs before.</param>
    public static Checked<IReadOnlyList<ColumnPair>> Pair(LogReading log, Trial trial, IReadOnlyList<ColumnPair> said, IReadOnlyList<ColumnLabel> remembered)
    {
        var (needed, perhaps, _) = StudyWords.Of(trial);
        var problems = new List<Problem>();
        string[] names = [.. log.Columns.Select(column => column.Name)];
        foreach (var pair in said)
        {
            if (!needed.Concat(perhaps).Contains(pair.Run, StringComparer.Ordinal))
            {
                problems.Add(new("A run of this trial has no such column.", "--columns", pair.Run, string.Join(", ", needed.Concat(perhaps)), "Name one of these before the '='."));
            }
            else if (!names.Contains(pair.Log, StringComparer.Ordinal))
            {
                problems.Add(new("The log has no such column.", "--columns", pair.Log, string.Join(", ", names), "Name one of these behind the '='."));
            }
            else if (log.Columns.First(column => column.Name == pair.Log) is var column && UnitOf(column) is { } unit && !unit.Measures(UnitOf(trial, pair.Run)) && pair.Run != "time")
            {
                problems.Add(new("This column of the log measures something else.", "--columns", $"{pair.Run}={pair.Log} in {unit.Symbol}", $"a column in {UnitOf(trial, pair.Run).Symbol} or its kin", "Choose another column."));
            }
        }

        var (pairs, open) = Best(log, trial, said, remembered);
        if (open.Count > 0 && problems.Count == 0)
        {
            problems.Add(new(
                "The log does not settle which of its columns is which.",
                "the log",
                string.Join("; ", open.Select(one => $"{one.Column}: {(one.Choices.Length > 0 ? string.Join(" or ", one.Choices) : "nothing in " + UnitOf(trial, one.Column).Symbol)}")),
                "one column for each",
                $"Import it again with --columns '{string.Join(",", open.Select(one => $"{one.Column}={(one.Choices.Length > 0 ? one.Choices[0] : "NAME")}"))}', as it is."));
        }

        return problems.Count > 0 ? new(problems) : new((IReadOnlyList<ColumnPair>)pairs);
    }

    /// <summary>What units and names settle, also where they leave another column open.</summary>
    public static IReadOnlyList<ColumnPair> Settled(LogReading log, Trial trial, IReadOnlyList<ColumnLabel> remembered) => Best(log, trial, [], remembered).Pairs;

    /// <summary>The pairs with the columns that a run usually has; where those are not all in the log, with what may stand for them.</summary>
    private static (List<ColumnPair> Pairs, List<(string Column, string[] Choices)> Open) Best(LogReading log, Trial trial, IReadOnlyList<ColumnPair> said, IReadOnlyList<ColumnLabel> remembered)
    {
        string[] named = [.. said.Select(pair => pair.Run)];
        var usual = Settle(log, trial, said, remembered, named);
        var other = usual.Open.Count == 0 ? usual : Settle(log, trial, said, remembered, [.. named, .. Columns(trial).Perhaps]);
        return other.Open.Count == 0 ? other : usual;
    }

    /// <summary>Columns of readings that go into no column of the run, each with those of the run that it could fill.</summary>
    /// <param name="log">The log.</param>
    /// <param name="trial">The trial.</param>
    /// <param name="pairs">Which column is which.</param>
    public static IReadOnlyList<(string Log, IReadOnlyList<string> Could)> Left(LogReading log, Trial trial, IReadOnlyList<ColumnPair> pairs)
    {
        var (needed, perhaps, _) = StudyWords.Of(trial);
        string[] open = [.. needed.Concat(perhaps).Where(name => name != "time" && !IsWord(trial, name) && !pairs.Any(pair => pair.Run == name))];
        return [.. log.Columns.Where((column, i) => i != log.TimeColumn && column.Kind == ColumnKind.Number && column.Values.Any(double.IsFinite) && !pairs.Any(pair => pair.Log == column.Name))
            .Select(column => (column.Name, (IReadOnlyList<string>)[.. open.Where(name => !CountsRows(column) && (UnitOf(column) is not { } unit || unit.Measures(UnitOf(trial, name))))]))];
    }

    /// <summary>True where a column only numbers the rows: numbers without a unit from 0 or 1 on, each one more than the last.</summary>
    /// <param name="column">Column of a log.</param>
    public static bool CountsRows(LogColumn column) => UnitOf(column) is null && column.Kind == ColumnKind.Number && column.Values is { Length: > 2 } rows && rows[0] is 0 or 1
        && Enumerable.Range(1, rows.Length - 1).All(row => rows[row] == rows[row - 1] + 1);

    /// <summary>Each column of the run that only one of the log can fill, and the needed ones that are left open.</summary>
    private static (List<ColumnPair> Pairs, List<(string Column, string[] Choices)> Open) Settle(LogReading log, Trial trial, IReadOnlyList<ColumnPair> said, IReadOnlyList<ColumnLabel> remembered, string[] named)
    {
        var (needed, perhaps, _) = StudyWords.Of(trial, named);
        List<ColumnPair> pairs = [.. said];
        List<(string Column, string[] Choices)> open = [];
        foreach (string column in needed.Concat(perhaps).Where(column => !said.Any(pair => pair.Run == column)))
        {
            bool isNeeded = needed.Contains(column, StringComparer.Ordinal);
            bool alone = isNeeded || (UnitOf(trial, column) is { IsLevel: false, Symbol.Length: > 0 } && !needed.Concat(perhaps).Any(other => other != column && UnitOf(trial, other).Measures(UnitOf(trial, column))));
            var found = Find(log, trial, column, pairs, remembered, alone);
            if (found is [var only])
            {
                pairs.Add(new(column, only));
            }
            else if (isNeeded)
            {
                open.Add((column, found));
            }
        }

        return (pairs, open);
    }

    /// <summary>The run.</summary>
    /// <param name="id">Its id.</param>
    /// <param name="trial">The trial it belongs to.</param>
    /// <param name="log">The log.</param>
    /// <param name="pairs">Which column is which.</param>
    /// <param name="instrument">Id of the instrument; empty: none known.</param>
    public static Run Make(RunId id, Trial trial, LogReading log, IReadOnlyList<ColumnPair> pairs, string instrument)
    {
        var columns = pairs.Select(pair => log.Columns.First(column => column.Name == pair.Log)).ToArray();
        double beganS = log.TimeS.FirstOrDefault(time => !double.IsNaN(time));
        var heading = pairs.Select((pair, i) => pair.Run == "time" ? new Column(pair.Run, Units.Second.Symbol, "") : new Column(pair.Run, IsWord(trial, pair.Run) ? "" : (UnitOf(columns[i]) ?? UnitOf(trial, pair.Run)).Symbol, instrument));
        var readings = new Reading[log.RowsKept];
        for (int row = 0; row < readings.Length; row++)
        {
            string[] raw = new string[columns.Length];
            for (int i = 0; i < raw.Length; i++)
            {
                raw[i] = pairs[i].Run == "time" ? Seconds(log.TimeS[row] - beganS) : Text(columns[i], row);
            }

            readings[row] = new(row + 1, raw);
        }

        return new(id, [.. heading], readings);
    }

    /// <summary>The columns of the log that may fill a column of the run: one where it is settled.</summary>
    private static string[] Find(LogReading log, Trial trial, string column, List<ColumnPair> taken, IReadOnlyList<ColumnLabel> remembered, bool byUnit)
    {
        if (column == "time")
        {
            return log.TimeS.Length > 0 && log.TimeColumn is { } index ? [log.Columns[index].Name] : [];
        }

        if (remembered.FirstOrDefault(label => label.Name == column && log.Columns.Any(one => one.Name == label.Column)) is { } known)
        {
            return [known.Column];
        }

        LogColumn[] free = [.. log.Columns.Where((one, i) => one.Kind == ColumnKind.Number && i != log.TimeColumn && !CountsRows(one) && !taken.Any(pair => pair.Log == one.Name))];
        string[] fits = [.. free.Where(one => UnitOf(one)?.Measures(UnitOf(trial, column)) == true).Select(one => one.Name)];
        fits = fits.Length > 0 ? fits : [.. free.Where(one => UnitOf(one) is null && IsCalled(trial, column, one.Name)).Select(one => one.Name)];
        fits = ReadNotSet(fits);
        string[] named = [.. fits.Where(name => Words(column).All(word => name.Contains(word, StringComparison.OrdinalIgnoreCase)))];
        // A column that need not be there is taken where its name says so, or where nothing else of the run is in its unit: degrees of the room are in many logs.
        return named.Length == 1 ? named : byUnit ? fits : [];
    }

    private static readonly string[] SetWords = ["soll", "set", "setpoint", "target", "sp"], ReadWords = ["ist", "actual", "act", "read", "measured", "meas"];

    /// <summary>Of a value that was set and one that was read, the one that was read: 'I ist' beside 'I soll'. Where the headings do not tell, all of them.</summary>
    private static string[] ReadNotSet(string[] names)
    {
        static bool Has(string name, string[] words) => name.Split([' ', '_', '-', '.', '/', '(', ')', '[', ']'], StringSplitOptions.RemoveEmptyEntries).Any(word => words.Contains(word, StringComparer.OrdinalIgnoreCase));
        string[] unset = [.. names.Where(name => !Has(name, SetWords))];
        unset = unset.Length > 0 ? unset : names;
        string[] read = [.. unset.Where(name => Has(name, ReadWords))];
        return read.Length > 0 ? read : unset;
    }

    /// <summary>Unit of a column, as written or as its name has it.</summary>
    private static Unit? UnitOf(LogColumn column) => column.Unit ?? Named(column.Name);

    private static string[] Words(string column) => column switch
    {
        "grip degrees" => ["grip"],
        "cell degrees" => ["cell"],
        "volts in" or "amps in" => ["in"],
        "volts out" or "amps out" => ["out"],
        _ => [column],
    };

    private static string Text(LogColumn column, int row) => column.Overload.Length > 0 && column.Overload[row] ? "OL" : double.IsNaN(column.Values[row]) ? "" : column.Values[row].ToString("R", CultureInfo.InvariantCulture);

    // A hundredth of a thousandth is what seconds since 1970 still tell apart.
    private static string Seconds(double seconds) => double.IsNaN(seconds) ? "" : Math.Round(seconds, 6).ToString("R", CultureInfo.InvariantCulture);
}

using System.Text.RegularExpressions;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>A line of names above pasted readings, and how the lines below it are brought into the order of a run.</summary>
internal sealed partial class TypedHeading
{
    private readonly Run run;
    private readonly int[]? places;
    private readonly Unit?[] units;

    private readonly int count;

    private TypedHeading(Run run, int[]? places, Unit?[] units, int count)
    {
        this.count = count;
        this.run = run;
        this.places = places;
        this.units = units;
    }

    /// <summary>The heading, or what it leaves open; null: the line is none, but a reading.</summary>
    public static Checked<TypedHeading>? Of(Trial trial, Run run, string line)
    {
        if (line.Contains('=', StringComparison.Ordinal))
        {
            return null;
        }

        string[] cells = Cells(line);
        var heads = cells.Select(RunFromLog.Heading).ToArray();
        int[] found = [.. run.Columns.Select(column => Named(trial, column.Name, cells, heads))];
        for (int i = 0; i < found.Length; i++)
        {
            found[i] = found[i] >= 0 ? found[i] : OfUnit(trial, run, i, heads, found);
        }

        bool named = (found.Any(place => place >= 0) || Known(trial).Any(name => Named(trial, name, cells, heads) >= 0)) && !cells.Any(cell => Number().IsMatch(cell));
        return named || (IsWords(trial, run, cells) && run.Columns.Count > 1) ? Placed(trial, run, cells, heads, found) : IsWords(trial, run, cells) ? new(new TypedHeading(run, null, new Unit?[run.Columns.Count], cells.Length)) : null;
    }

    /// <summary>The columns of a run that is begun under this heading: those that it names, where they are all that one needs; empty: it does not name them.</summary>
    public static IReadOnlyList<string> Columns(Trial trial, string line)
    {
        var (usual, perhaps) = RunFromLog.Columns(trial);
        string[] cells = Cells(line);
        var heads = cells.Select(RunFromLog.Heading).ToArray();
        foreach (var needed in new[] { usual, RunFromLog.Columns(trial, perhaps).Needed })
        {
            if (Of(trial, new(new("heading"), [.. needed.Select(name => ColumnOf(trial, name, ""))], []), line) is { IsFine: true, Value.places: not null })
            {
                return [.. needed.Concat(perhaps.Where(name => !needed.Contains(name) && Named(trial, name, cells, heads) >= 0)).OrderBy(name => name != "time")];
            }
        }

        return [];
    }

    /// <summary>A column of a run, in the unit of bare numbers.</summary>
    public static Column ColumnOf(Trial trial, string name, string meter) => new(name, RunFromLog.IsWord(trial, name) ? "" : RunFromLog.UnitOf(trial, name).Symbol, meter);

    private static IEnumerable<string> Known(Trial trial) => RunFromLog.Columns(trial) is var (needed, perhaps) ? needed.Concat(perhaps) : [];

    private static string[] Cells(string line) => [.. (line.IndexOfAny(['\t', ';', '|']) >= 0 ? line.Split(['\t', ';', '|']) : line.Contains(',', StringComparison.Ordinal) ? line.Split(',') : Apart().Split(line.Trim())).Select(cell => cell.Trim())];

    /// <summary>A line below the heading, its values in the order of the run; what the heading does not hold is not read.</summary>
    public string InOrder(string line)
    {
        string[] values = TypedLine.Values(line, count);
        return places is null || places.Any(place => place >= values.Length) ? line : string.Join('\t', run.Columns.Select((column, i) => places[i] < 0 || values[places[i]].Length == 0 ? TypedLine.Nothing : With(values[places[i]], column, units[i])));
    }

    private static Checked<TypedHeading> Placed(Trial trial, Run run, string[] cells, (string Name, Unit? Unit)[] heads, int[] found)
    {
        // 't U I': what is known stands where the run has it, so the rest does as well, unless it is called by something else.
        bool Free(int place) => heads[place].Unit is null && !Known(trial).Any(name => Named(trial, name, cells, heads) == place);
        string[] needed = [.. RunFromLog.Needed(trial, run.Settings.Keys, run.Columns.Select(column => column.Name))];
        int[] places = cells.Length == found.Length && found.Any(place => place >= 0) && found.Select((place, i) => place < 0 ? Free(i) : place == i).All(own => own) ? [.. found.Select((_, i) => i)] : found;
        string[] open = [.. run.Columns.Where((column, i) => places[i] < 0 && needed.Contains(column.Name)).Select(column => column.Name)];
        return open.Length == 0 ? new(new TypedHeading(run, places, [.. places.Select(place => place < 0 ? null : heads[place].Unit)], cells.Length))
            : new(new Problem("The heading does not say where a needed column is.", "heading", string.Join(", ", cells.Where(cell => cell.Length > 0)), string.Join(", ", open), $"Call it so in the heading, or leave the heading out and give the values in this order: {string.Join(' ', run.Columns.Select(column => column.Name))}."));
    }

    private static int Named(Trial trial, string column, string[] cells, (string Name, Unit? Unit)[] heads) =>
        Array.FindIndex(heads, head => RunFromLog.IsCalled(trial, column, head.Name)) is >= 0 and var place ? place : Array.FindIndex(cells, cell => RunFromLog.IsCalled(trial, column, cell));

    /// <summary>The one heading of the column's unit, where no other column of the run is in that unit.</summary>
    private static int OfUnit(Trial trial, Run run, int column, (string Name, Unit? Unit)[] heads, int[] taken)
    {
        if (Of(run.Columns[column]) is not { } unit || run.Columns.Where((_, i) => i != column).Any(other => Of(other)?.Measures(unit) == true))
        {
            return -1;
        }

        int[] alike = [.. heads.Select((head, i) => (head, i)).Where(pair => pair.head.Unit?.Measures(unit) == true && !taken.Contains(pair.i)).Select(pair => pair.i)];
        return alike.Length == 1 ? alike[0] : -1;

        Unit? Of(Column one) => RunFromLog.IsWord(trial, one.Name) ? null : RunFromLog.UnitOf(trial, one.Name);
    }

    /// <summary>Words in another language or of the maker's own: no number, nothing that stands for a reading.</summary>
    private static bool IsWords(Trial trial, Run run, string[] cells) => run.Columns.All(column => !RunFromLog.IsWord(trial, column.Name)) && cells.Length >= run.Columns.Count
        && cells.All(cell => cell.Length == 0 || (!cell.Any(char.IsDigit) && cell.Any(char.IsLetter) && ReadingText.Read(cell, Units.Volt, "heading").Says == ReadingSays.Unclear));

    /// <summary>A bare number below 'Current (mA)' is in milliamperes, whatever the run's own unit.</summary>
    private static string With(string value, Column column, Unit? unit) => unit is not null && unit.Symbol != column.Unit && Units.Find(column.Unit)?.Measures(unit) == true && Bare().IsMatch(value) ? $"{value} {unit.Symbol}" : value;

    /// <summary>Blanks between two headings, not before a unit in brackets.</summary>
    [GeneratedRegex(@"\s+(?![(\[])", RegexOptions.CultureInvariant)]
    private static partial Regex Apart();

    /// <summary>Begins as a reading does.</summary>
    [GeneratedRegex(@"^[-+\u2212<>~]?\s*[.,]?[0-9]", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    [GeneratedRegex(@"^[-+\u2212]?[0-9.,\u00A0]+(?:[eE][-+]?[0-9]+)?$", RegexOptions.CultureInvariant)]
    private static partial Regex Bare();
}

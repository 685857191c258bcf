using System.Text;
using Heatwright.Logs;
using Heatwright.Quantities;

namespace Heatwright.Instruments;

/// <summary>How the lines of one instrument are read, found from some of them.</summary>
internal sealed class LineFormat
{
    private const int MostLabels = 256;

    private readonly bool stamped;
    private readonly bool labelled;
    private readonly char mark;
    private readonly CellCutter cutter;
    private readonly IReadOnlyList<Place> places;
    private readonly Dictionary<string, Place> labels = new(StringComparer.Ordinal);

    private sealed record Place(string Name, Unit? Unit, bool IsTime);

    private LineFormat(bool stamped, bool labelled, byte separator, char mark, IReadOnlyList<Place> places)
    {
        (this.stamped, this.labelled, this.mark, this.places) = (stamped, labelled, mark, places);
        cutter = new(separator);
    }

    /// <summary>In words, for the maker.</summary>
    public string Words => $"{(stamped ? "a stamp, then " : "")}{(labelled ? "label and value" : cutter.Separator == 0 ? "one value" : $"values parted by {Name(cutter.Separator)}")}: {string.Join(", ", places.Select(Named))}";

    /// <summary>The form of these lines; null while they do not show one. A question stands in the way of reading them.</summary>
    public static LineFormat? Find(IReadOnlyList<string> lines, LogMapping? answers, out LogQuestion? question)
    {
        byte[] text = Encoding.UTF8.GetBytes(string.Join('\n', lines) + "\n");
        var log = LogReader.Read(text, answers);
        // What the log's own time counts need not be known here: every line is stamped when it arrives.
        question = log.Questions.FirstOrDefault(asked => asked.Choices.Any(choice => choice.Mapping.CommaSeparates != answers?.CommaSeparates || choice.Mapping.DecimalMark != answers?.DecimalMark));
        if (log.RowsKept == 0)
        {
            return null;
        }

        bool stamped = lines.Count(line => LineForms.Stamp(line, out _) is not null) * 10 >= lines.Count * 6;
        var inner = lines.Select(line => stamped && LineForms.Stamp(line, out string rest) is not null ? rest : line).ToList();
        bool labelled = inner.Count(line => LabelledLine.Pairs(line) is not null) * 2 > inner.Count;
        byte separator = log.Mapping.Signature[0] == '-' ? (byte)0 : (byte)log.Mapping.Signature[0];
        var columns = log.Columns.Select((column, i) => new Place(column.Name, column.Kind == ColumnKind.Time ? null : column.Unit, i == log.TimeColumn)).ToList();
        if (stamped && columns.Count > 0)
        {
            // With a stamp the log reader counts one column more than the bare line has.
            columns.RemoveAt(0);
            columns = [.. columns.Select((column, i) => column.Name == Numbered(i + 2) ? column with { Name = Numbered(i + 1) } : column)];
        }

        if (!labelled)
        {
            separator = stamped && columns.Count == 1 ? (byte)0 : separator;
            int cells = Usual(inner, separator);
            columns = columns.Count == cells ? columns : [.. Enumerable.Range(1, cells).Select(i => new Place(Numbered(i), null, false))];
            // One word above lone numbers is more often a greeting than a name, unless it brings a unit.
            columns = cells == 1 && !columns[0].IsTime && (columns[0].Name == Numbered(1) || columns[0].Unit is null) ? [columns[0] with { Name = "reading" }] : columns;
        }

        var format = new LineFormat(stamped, labelled, separator, log.Mapping.DecimalMark ?? '.', columns);
        // What was said last counts most: before it may lie what a board says when it starts.
        bool fits = lines.TakeLast(2).All(line => format.Read(line) is not null) || lines.Count(line => format.Read(line) is not null) * 2 > lines.Count;
        return format.places.Count > 0 && fits ? format : null;
    }

    /// <summary>The values of a line; null: it is not of this form, or holds no number.</summary>
    public IReadOnlyList<Readout>? Read(string line)
    {
        string text = stamped && LineForms.Stamp(line, out string rest) is not null ? rest : line;
        var readouts = labelled ? Labelled(text) : Bare(text);
        return readouts is not null && readouts.Any(readout => readout.Kind is ReadoutKind.Number or ReadoutKind.Overload or ReadoutKind.Missing) ? readouts : null;
    }

    private Readout[]? Labelled(string text) => LabelledLine.Pairs(text) is { } pairs ? [.. pairs.Select(pair => One(pair.Value, PlaceOf(pair.Key)))] : null;

    private Place PlaceOf(string label)
    {
        if (!labels.TryGetValue(label, out var place))
        {
            var name = HeaderName.Split(label);
            string bare = name.Name.Length > 0 ? name.Name : label;
            place = places.FirstOrDefault(known => known.Name == bare) ?? new(bare, name.Unit, label == "time");
            if (labels.Count < MostLabels)
            {
                labels.Add(label, place);
            }
        }

        return place;
    }

    private Readout[]? Bare(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        int count = cutter.Cut(bytes);
        count -= count == places.Count + 1 && cutter.Cell(bytes, count - 1).Length == 0 ? 1 : 0;
        if (count != places.Count)
        {
            return null;
        }

        var readouts = new Readout[count];
        for (int i = 0; i < count; i++)
        {
            readouts[i] = One(cutter.Text(bytes, i), places[i]);
        }

        readouts = WithUnitsBeside(readouts);
        return readouts.Any(readout => readout.Kind == ReadoutKind.Words) && !readouts.Any(readout => readout.Kind is ReadoutKind.Number or ReadoutKind.Overload) ? null : readouts;
    }

    /// <summary>Hand meters send the unit apart: DC -1.234 V.</summary>
    private static Readout[] WithUnitsBeside(Readout[] readouts)
    {
        List<Readout>? joined = null;
        for (int i = 0; i < readouts.Length; i++)
        {
            var unit = i > 0 && readouts[i] is { Kind: ReadoutKind.Words } words && readouts[i - 1] is { Unit: null, Kind: not (ReadoutKind.Words or ReadoutKind.Time) } ? UnitWords.Find(words.Raw) : null;
            if (unit is not null)
            {
                joined ??= [.. readouts[..i]];
                joined[^1] = joined[^1] with { Unit = unit };
            }
            else
            {
                joined?.Add(readouts[i]);
            }
        }

        return joined?.ToArray() ?? readouts;
    }

    private Readout One(string cell, Place place)
    {
        var value = NumberCell.Read(cell, mark);
        if (place.IsTime)
        {
            return new(place.Name, ReadoutKind.Time, value.Kind == CellKind.Number ? value.Value : double.NaN, null, cell);
        }

        var own = value.Unit.Length > 0 ? UnitWords.Find(value.Unit) : null;
        double number = own is not null && place.Unit is { } unit ? UnitScale.Convert(value.Value, own, unit) : value.Value;
        // A unit that measures something else is the instrument's business: the value stays with its own.
        var shown = double.IsNaN(number) && value.Kind == CellKind.Number ? own : place.Unit ?? own;
        return value.Kind switch
        {
            CellKind.Number => new(place.Name, ReadoutKind.Number, double.IsNaN(number) ? value.Value : number, shown, cell),
            CellKind.Overload => new(place.Name, ReadoutKind.Overload, double.NaN, place.Unit, cell),
            CellKind.Missing => new(place.Name, ReadoutKind.Missing, double.NaN, place.Unit, cell),
            _ => new(place.Name, ReadoutKind.Words, double.NaN, null, cell),
        };
    }

    private static int Usual(List<string> lines, byte separator)
    {
        var cutter = new CellCutter(separator);
        return lines.Skip(lines.Count / 2).Select(line =>
        {
            byte[] bytes = Encoding.UTF8.GetBytes(line);
            int count = cutter.Cut(bytes);
            return count > 1 && cutter.Cell(bytes, count - 1).Length == 0 ? count - 1 : count;
        }).GroupBy(count => count).MaxBy(group => group.Count())!.Key;
    }

    private static string Named(Place place) => place.Unit is { } unit ? $"{place.Name} in {unit.Symbol}" : place.Name;

    private static string Numbered(int number) => $"column {number.ToString(System.Globalization.CultureInfo.InvariantCulture)}";

    private static string Name(byte separator) => separator switch
    {
        (byte)' ' => "blanks",
        (byte)'\t' => "tabs",
        (byte)',' => "commas",
        (byte)';' => "semicolons",
        _ => $"'{(char)separator}'",
    };
}

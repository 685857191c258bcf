using System.Globalization;
using System.Text;
using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>Puts the columns, the time and everything worth telling together into one reading.</summary>
internal sealed class LogAssembly(LogPlan plan, ColumnFill fill, LogMapping? remembered)
{
    private readonly List<string> notes = [];

    /// <summary>A file without a single row of readings.</summary>
    public static LogReading Nothing(ReadOnlySpan<byte> text, int linesBefore, string encoding, LogMapping? remembered)
    {
        var refused = new List<RefusedRow>();
        var preamble = new List<string>();
        int count = 0;
        var walk = new LineWalk(text, 0, linesBefore);
        while (walk.Next())
        {
            if (LineWalk.IsBlank(walk.Line))
            {
                continue;
            }

            count++;
            if (refused.Count < 1000)
            {
                refused.Add(new(walk.Number, $"No reading in this line: {LineWalk.Show(walk.Line)}"));
            }

            if (preamble.Count < PlanMaker.MostPreamble)
            {
                preamble.Add(LineWalk.Show(walk.Line));
            }
        }

        return new()
        {
            Columns = [],
            TimeColumn = null,
            TimeBase = TimeBase.None,
            TimeS = [],
            IntervalS = double.NaN,
            RowsKept = 0,
            RowsRefused = refused,
            RowsRefusedCount = count,
            Questions = [],
            Notes = ["No line of this file holds a reading."],
            Preamble = preamble,
            Mapping = remembered ?? new(),
            Encoding = encoding,
        };
    }

    public LogReading Reading(string encoding, LogQuestion? first)
    {
        List<string> preamble = [.. plan.Preamble.Select(line => line.Trim()), .. fill.Remarks];
        var drafts = Drafts(preamble);
        var time = new TimeFinder(drafts, preamble, fill.Rows, remembered, notes).Find();
        ColumnNames.MakeDifferent(drafts);
        new Sentinels(preamble, remembered, notes).Mark(drafts, time.Column);
        Flags.Mark(drafts);
        if (time.Column is { } column)
        {
            column.Kind = ColumnKind.Time;
        }

        var questions = Questions.From(plan, remembered, first, time.Question);
        return new()
        {
            Columns = [.. drafts.Select(draft => draft.Done())],
            TimeColumn = time.Column is null ? null : drafts.IndexOf(time.Column),
            TimeBase = time.Base,
            TimeS = time.Seconds,
            IntervalS = time.IntervalS,
            RowsKept = fill.Rows,
            RowsRefused = fill.Refused,
            RowsRefusedCount = fill.RefusedCount,
            Questions = questions,
            Notes = notes,
            Preamble = [.. preamble.TakeLast(PlanMaker.MostPreamble)],
            Mapping = Mapping(),
            Encoding = encoding,
        };
    }

    private List<Draft> Drafts(List<string> preamble)
    {
        var nothing = new double[fill.Columns.Any(column => column.Plan.Role == ColumnRole.Words) ? fill.Rows : 0];
        Array.Fill(nothing, double.NaN);
        var listed = ListedUnits.Find(preamble);
        var drafts = new List<Draft>();
        foreach (var column in fill.Columns.Where(column => column.Plan.Role is not (ColumnRole.Nothing or ColumnRole.UnitOfLeft)))
        {
            var look = column.Plan.Look;
            bool isTime = column.Plan.Role == ColumnRole.Time;
            var draft = new Draft
            {
                Name = column.Plan.Name,
                UnitText = isTime ? "s" : column.Plan.UnitText,
                Unit = isTime ? Units.Second : column.Plan.Unit,
                Kind = isTime ? ColumnKind.Time : column.Plan.Role == ColumnRole.Words ? ColumnKind.Text : ColumnKind.Number,
                Values = column.Plan.Role == ColumnRole.Words ? nothing : column.Values,
                Overload = column.Overload,
                Texts = column.Texts,
                Ends = column.Ends,
                Look = look,
                Plan = column.Plan,
                IsTimeCells = isTime,
                HasDate = isTime && look.Times.HasDate(column.Plan.DotsAreClock),
                HasClock = isTime && look.Times.HasClock(column.Plan.DotsAreClock),
            };
            listed.GiveUnit(draft, drafts.Count + 1);
            Relabel(draft);
            Tell(column);
            drafts.Add(draft);
        }

        return drafts;
    }

    private void Relabel(Draft draft)
    {
        if (remembered is null || remembered.Signature != plan.Signature || remembered.Labels.FirstOrDefault(label => label.Column == draft.Name) is not { } label)
        {
            return;
        }

        (draft.Name, draft.UnitText, draft.Unit) = (label.Name, label.Unit, UnitWords.Find(label.Unit));
    }

    private void Tell(RawColumn column)
    {
        string name = column.Plan.Name;
        if (column.Words > 0 && column.Plan.Role == ColumnRole.Number)
        {
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"'{name}': {column.Words} cells hold words, such as {string.Join(", ", column.SomeWords)}; no number was taken from them."));
        }

        if (column.OtherUnits > 0)
        {
            notes.Add(string.Create(CultureInfo.InvariantCulture, $"'{name}': {column.OtherUnits} cells are in a unit that cannot be brought to {column.Plan.Unit?.Symbol}; they are left out."));
        }

        if (column.Plan.Look.Marks.Contradicts && column.Plan.Role == ColumnRole.Number)
        {
            notes.Add($"'{name}': some cells show a decimal comma and some a decimal point; each was read by its own mark.");
        }
    }

    private LogMapping Mapping()
    {
        var marks = plan.Columns.Where(column => column.Role == ColumnRole.Number && column.Mark != '\0'
            && column.Look.Marks is { CommaDecimal: > 0 } or { DotDecimal: > 0 }).Select(column => column.Mark).Distinct().ToList();
        var times = plan.Columns.Where(column => column.Role == ColumnRole.Time).ToList();
        var known = remembered ?? new LogMapping();
        return known with
        {
            Signature = plan.Signature,
            Labels = known.Signature.Length == 0 || known.Signature == plan.Signature ? known.Labels : [],
            DecimalMark = marks.Count == 1 ? marks[0] : known.DecimalMark,
            DateOrder = times.FirstOrDefault(column => column.Look.Times.Example.Length > 0)?.Order ?? known.DateOrder,
        };
    }
}

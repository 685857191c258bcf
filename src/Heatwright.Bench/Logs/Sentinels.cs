using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Logs;

/// <summary>Numbers that stand for 'no reading': taken out only on evidence, and told.</summary>
internal sealed partial class Sentinels(IReadOnlyList<string> preamble, LogMapping? remembered, List<string> notes)
{
    /// <summary>Common practice of loggers and data sets, no source; -127 is what a digital probe answers when its line is cut.</summary>
    private static readonly double[] Usual =
    [
        -99, -99.9, -99.99, -127, -200, -999, -999.9, -999.99, -9999, -9999.9, -9999.99, -99999, -999999, -32768, 9999, 9999.9, 99999, 999999,
    ];

    public void Mark(IReadOnlyList<Draft> drafts, Draft? time)
    {
        double[] declared = [.. preamble.SelectMany(Declared).Distinct()];
        var columns = drafts.Where(draft => draft.Kind == ColumnKind.Number && draft != time && draft.Values.Length > 0).ToList();
        var found = columns.SelectMany(draft => Candidates(draft, declared)).ToList();
        // Proof in one column is support in the next: an instrument has one mark for all its channels.
        var proven = found.Where(candidate => candidate.Proof).Select(candidate => candidate.Value).ToHashSet();
        foreach (var candidate in found)
        {
            bool supported = candidate.OthersNotNegative && candidate.Value < 0 && (candidate.Count >= 2 || proven.Contains(candidate.Value));
            if (candidate.Proof || supported)
            {
                TakeOut(candidate);
            }
        }
    }

    private sealed record Candidate(Draft Draft, double Value, int Count, double Least, double Most, bool Declared)
    {
        /// <summary>Further from the nearest other reading than those are from each other.</summary>
        public bool Proof => Declared || Gap > Math.Max(1.5 * (Most - Least), Math.Abs(Value) / 3);

        public bool OthersNotNegative => Least >= 0;

        private double Gap => Value < Least ? Least - Value : Value > Most ? Value - Most : 0;
    }

    private IEnumerable<Candidate> Candidates(Draft draft, double[] declared)
    {
        double[] marks = [.. Usual.Concat(declared).Distinct().Where(value => remembered?.RealValues.Contains(value) != true)];
        int[] counts = new int[marks.Length];
        var (least, most, others) = (double.PositiveInfinity, double.NegativeInfinity, 0);
        foreach (double value in draft.Values)
        {
            int mark = value is <= -90 or >= 90 ? Array.IndexOf(marks, value) : -1;
            if (mark >= 0)
            {
                counts[mark]++;
            }
            else if (!double.IsNaN(value))
            {
                others++;
                least = Math.Min(least, value);
                most = Math.Max(most, value);
            }
        }

        return from i in Enumerable.Range(0, marks.Length)
               where counts[i] > 0
               let isDeclared = declared.Contains(marks[i])
               where isDeclared || (others >= 2 && most > least && !IsPlausible(draft, marks[i]))
               select new Candidate(draft, marks[i], counts[i], least, most, isDeclared);
    }

    /// <summary>-200 mA is a load step, not a mark.</summary>
    private static bool IsPlausible(Draft draft, double value) => draft.Unit is { } unit && unit.Dimension != Units.Kelvin.Dimension && Math.Abs(value) < 999;

    private void TakeOut(Candidate candidate)
    {
        var (draft, value) = (candidate.Draft, candidate.Value);
        double[] values = draft.Values;
        for (int i = 0; i < values.Length; i++)
        {
            values[i] = values[i] == value ? double.NaN : values[i];
        }

        string why = candidate.Declared ? "the file says so"
            : string.Create(CultureInfo.InvariantCulture, $"all other readings lie from {candidate.Least:G6} to {candidate.Most:G6}");
        draft.Missing.Add(new(value, candidate.Count, why));
        notes.Add(string.Create(CultureInfo.InvariantCulture, $"'{draft.Name}': {value:G6} stands {candidate.Count} times for 'no reading' ({why}); left out."));
    }

    private static IEnumerable<double> Declared(string line) => Statement().Matches(line.Length > 400 ? line[..400] : line)
        .Select(match => double.Parse(match.Groups["value"].Value, NumberStyles.Float, CultureInfo.InvariantCulture))
        .Where(value => Math.Abs(value) >= 90);

    [GeneratedRegex(@"(?:no ?value|no ?data|missing|fill value|invalid|bad value|nodata_value)\D{0,20}?(?<value>-?[0-9]{2,8}(?:\.[0-9]{1,4})?)", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Statement();
}

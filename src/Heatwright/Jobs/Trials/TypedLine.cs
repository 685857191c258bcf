using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>What a line typed at the bench means in its run.</summary>
internal static partial class TypedLine
{
    /// <summary>Each value with its unit, or what cannot be read.</summary>
    public static Checked<FieldRead[]> Understood(Trial trial, Run run, string line)
    {
        var fields = Fields(run, line);
        if (!fields.IsFine)
        {
            return new(fields.Problems);
        }

        List<Problem> problems = [];
        var read = run.Columns.Select((column, i) => Field(trial, run, column, fields.Value[i], problems)).ToArray();

        // One column: a lone '-' keeps the place of a reading that was missed.
        bool missed = run.Columns.Count == 1 && line.Trim() == "-";
        if (problems.Count == 0 && !missed && fields.Value.All(text => text is "" or "-"))
        {
            problems.Add(new("The line holds no reading.", "readings", line.Trim().Length > 0 ? line.Trim() : "an empty line", "at least one value", $"Type {string.Join(' ', run.Columns.Select(column => column.Name))}, a blank between two."));
        }

        return problems.Count > 0 ? new(problems) : new(read);
    }

    /// <summary>One value as it is understood in its column; what is wrong with it goes into the list.</summary>
    public static FieldRead Field(Trial trial, Run run, Column column, string raw, List<Problem> problems)
    {
        if (FilmTimes.Of(run, column, [raw]) is { } film)
        {
            return OfFilm(film, column, raw, problems);
        }

        if (RunFromLog.IsWord(trial, column.Name))
        {
            string[] words = [.. TrialKinds.CardOf(trial)!.Column(column.Name)!.Words];
            if (words.Length > 0 && raw is not ("" or "-") && !words.Contains(raw, StringComparer.OrdinalIgnoreCase))
            {
                problems.Add(new($"{column.Name} takes one of a few words.", column.Name, raw, string.Join(", ", words), "Type one of them."));
            }

            return new(column.Name, raw, raw);
        }

        var unit = RunFromLog.UnitOf(trial, column.Name);
        var text = ReadingText.Read(raw, Units.Find(column.Unit) ?? unit, column.Name);
        if (text.Says == ReadingSays.Unclear)
        {
            problems.Add(new($"{column.Name} cannot be read: {text.Why.TrimEnd('.')}.", column.Name, raw, unit == Units.One ? "a number" : $"a value in {unit.Symbol}", "Type it again; '-' stands for nothing read, OL for over range."));
        }

        var shown = Units.Find(column.Unit) ?? unit;
        return new(column.Name, raw, text.Says switch
        {
            ReadingSays.Nothing => "not read",
            ReadingSays.Overload => "over range",
            ReadingSays.Unclear => "?",
            _ => $"{Display.Significant(shown.IsLevel ? text.Value : shown.FromSi(text.Value), 7)}{(shown.Symbol.Length > 0 ? "\u00A0" + shown.Symbol : "")}",
        });
    }

    /// <summary>A time typed off a film, where in the film it stands.</summary>
    private static FieldRead OfFilm(FilmTimes.Times film, Column column, string raw, List<Problem> problems)
    {
        var read = film.Read[0];
        if (read.Says == ReadingSays.Unclear)
        {
            problems.Add(new($"{column.Name} cannot be read: {read.Why.TrimEnd('.')}.", column.Name, raw, "the film's time code, mm:ss:ff", FilmTimes.Remedy));
        }

        return new(column.Name, raw, film.Cuts is [var cut] && read.Says != ReadingSays.Unclear
            ? double.IsNaN(cut.GapS) ? "the film was cut, nobody knows how long" : $"the film was cut, {Display.Significant(cut.GapS, 4)}\u00A0s left out"
            : read.Says switch { ReadingSays.Number => $"{film.FilmS[0].ToString("0.###", CultureInfo.InvariantCulture)}\u00A0s of the film", ReadingSays.Unclear => "?", _ => "not read" });
    }

    private static Checked<string[]> Fields(Run run, string line)
    {
        if (FilmTimes.IsCut(line) && run.Settings.ContainsKey(FilmTimes.FrameRate))
        {
            return new([.. run.Columns.Select(column => column.Name == "time" ? line.Trim().Replace(" ", "", StringComparison.Ordinal) : "-")]);
        }

        string[] texts = [.. Token().Matches(line).Select(match => match.Value.Trim())];
        if (texts.Any(text => text.Contains('=', StringComparison.Ordinal)))
        {
            var named = new string[run.Columns.Count];
            Array.Fill(named, "");
            foreach (string text in texts)
            {
                string[] pair = text.Split('=', 2);
                int column = pair.Length < 2 ? -1 : run.Columns.ToList().FindIndex(one => string.Equals(one.Name.Replace(' ', '-'), pair[0].Replace(' ', '-'), StringComparison.OrdinalIgnoreCase));
                if (column < 0)
                {
                    return new(new Problem("This is no column of the run.", $"run {run.Id}", text, string.Join(", ", run.Columns.Select(one => one.Name.Replace(' ', '-') + "=")), "Name each value, or none of them."));
                }

                named[column] = pair[1];
            }

            return new(named);
        }

        if (Between(line) is { } cells && (cells.Length == run.Columns.Count || texts.Length != run.Columns.Count) && cells.Skip(run.Columns.Count).All(cell => cell.Length == 0) && cells.Length >= run.Columns.Count)
        {
            return new([.. cells.Take(run.Columns.Count).Select(cell => cell.Length > 0 ? cell : Nothing)]);
        }

        if (Commas(line, run.Columns.Count) is { } apart)
        {
            return new(apart);
        }

        return texts.Length == run.Columns.Count && !texts.Any(text => text.EndsWith(',')) ? new(texts)
            : line.Contains(',', StringComparison.Ordinal) && line.Split(',').Length >= run.Columns.Count ? new(new Problem(
            "It is not clear which commas of the line stand between values and which are decimal marks.", $"run {run.Id}", line.Trim(), $"{run.Columns.Count.ToString(CultureInfo.InvariantCulture)} values: {string.Join(' ', run.Columns.Select(one => one.Name))}", "Put a blank between two values, and no comma: 0 4.135 1.01, or 0 4,135 1,01."))
            : new(new Problem(
            "The line has another number of values than the run has columns.", $"run {run.Id}", $"{texts.Length.ToString(CultureInfo.InvariantCulture)}: {line.Trim()}", string.Join(' ', run.Columns.Select(one => one.Name)), "Type one value for each, a blank between two; '-' stands for nothing read."));
    }

    /// <summary>Stands for what was not read.</summary>
    internal const string Nothing = "-";

    /// <summary>The values of a line with commas between them; null: it has none, or a comma may as well be a decimal mark.</summary>
    /// <param name="line">As typed: '0,4.135,1.01' or '0, 4.135, 1.01'.</param>
    /// <param name="count">So many values it must have.</param>
    internal static string[]? Commas(string line, int count)
    {
        if (count < 2 || line.IndexOfAny(['\t', ';', '|', '=']) >= 0)
        {
            return null;
        }

        // Behind a comma and a blank the next value stands, whatever marks decimals.
        string[] wide = [.. WideComma().Split(line.Trim().TrimEnd(',')).Select(cell => cell.Trim())];
        if (wide.Length == count && wide.All(cell => Token().Match(cell).Length == cell.Length))
        {
            return [.. wide.Select(cell => cell.Length > 0 ? cell : Nothing)];
        }

        // Of two numbers, '4,135' may be one with a decimal comma; a point or a unit in one of them tells.
        string[] cells = [.. line.Trim().Split(',').Select(cell => cell.Trim())];
        bool clear = count > 2 || cells.Any(cell => cell.Any(letter => letter == '.' || char.IsLetter(letter)));
        return cells.Length == count && clear && cells.All(cell => Token().Match(cell).Length == cell.Length) ? [.. cells.Select(cell => cell.Length > 0 ? cell : Nothing)] : null;
    }

    /// <summary>The values of a line, one by one: cells of a spreadsheet, or what stands between commas or blanks.</summary>
    /// <param name="line">As typed.</param>
    /// <param name="count">How many values there are where commas stand between them.</param>
    internal static string[] Values(string line, int count) => Between(line) ?? Commas(line, count) ?? [.. Token().Matches(line).Select(match => match.Value.Trim())];

    /// <summary>What stands between the tabs of a spreadsheet's line, where nothing means not read; null: there are no tabs.</summary>
    private static string[]? Between(string line) => line.Contains('\t', StringComparison.Ordinal) ? [.. line.Split('\t').Select(cell => cell.Trim())] : null;

    /// <summary>A comma and a blank.</summary>
    [GeneratedRegex(@",\s+", RegexOptions.CultureInvariant)]
    private static partial Regex WideComma();

    /// <summary>A value with its unit behind it, as '3.82', '3.82V', '3.82 V', '410 mA', '4k7', '1:20'.</summary>
    [GeneratedRegex(@"[^\s;|]+(?:[ \u00A0](?:[munkKM\u00B5\u03BC]?(?:V|A|W|Ohm|ohm|\u03A9|\u2126|s|J|Ah|Wh|Hz)|\u00B0[CF]|C|K|%|min|h)(?=[\s;|]|$))?", RegexOptions.CultureInvariant)]
    private static partial Regex Token();
}

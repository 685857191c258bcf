using System.Globalization;
using System.Text;
using Heatwright.Logs;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>What was said on the command line about the readings of a trial.</summary>
/// <param name="File">A log, or a typed form of lines 'volts=3.82 amps=0.41'; null: only typed readings.</param>
/// <param name="Typed">Readings typed one by one, each 'volts=3.82V amps=0.41A'.</param>
/// <param name="Settings">'air=24C'.</param>
/// <param name="Meters">'volts=0.5%+2d', 'amps=exact', 'bench:volts=...' to share one meter between columns.</param>
/// <param name="Columns">'amps=Current 1': which column of the file is which.</param>
public sealed record TrialWords(string? File, IReadOnlyList<string> Typed, IReadOnlyList<string> Settings, IReadOnlyList<string> Meters, IReadOnlyList<string> Columns)
{
    /// <summary>Answers to what the log leaves open.</summary>
    public LogMapping? Mapping { get; init; }
}

/// <summary>Reads what a trial took: a log as loggers write it, a typed form, or readings typed on the command line.</summary>
public static class TrialReadings
{
    private const long LargestBytes = 200_000_000;

    /// <summary>Everything that was read and said, or everything that stands in the way.</summary>
    /// <param name="card">The kind.</param>
    /// <param name="words">As typed.</param>
    public static Checked<TrialInput> Read(TrialCard card, TrialWords words)
    {
        List<Problem> problems = [];
        List<string> settingWords = [.. words.Settings];
        List<string> meterWords = [.. words.Meters];
        List<RawColumn> columns = [];
        if (words.File is { } path)
        {
            var file = Bytes(path);
            if (!file.IsFine)
            {
                return new(file.Problems);
            }

            string text = Encoding.UTF8.GetString(file.Value, 0, (int)Math.Min(file.Value.Length, 200_000));
            Remarks(text, settingWords, meterWords);
            double? rate = FramesPerS(card, settingWords);
            columns = TypedForm(card, text) is { } lines ? FromTyped(card, lines, rate, problems)
                : rate is { } frames && FilmSheet.Read(Encoding.UTF8.GetString(file.Value), frames) is { } sheet
                    ? OfFilm(FromLog(LogReader.Read(Encoding.UTF8.GetBytes(sheet.Text), Seconds(words.Mapping)), problems), sheet.Times, problems)
                    : FromLog(LogReader.Read(file.Value, Seconds(words.Mapping)), problems);
        }

        if (words.Typed.Count > 0)
        {
            columns = FromTyped(card, words.Typed, FramesPerS(card, settingWords), problems);
        }

        if (columns.Count == 0 && problems.Count == 0)
        {
            problems.Add(new("There are no readings.", words.File ?? "--read", "none", "a file of readings, or --read \"volts=3.82 amps=0.41\"", $"'heatwright trial recipe {card.Name}' says what to read."));
        }

        var settings = Settings(card, settingWords, problems);
        var meters = Meters(card, meterWords, problems);
        var mapping = Pairs(words.Columns, "--column", problems);
        return problems.Count > 0 ? new(problems) : new(new TrialInput(columns, settings, meters) { Mapping = mapping });
    }

    /// <summary>Settings alone, as plain numbers in SI (temperatures in °C), defaults filled in.</summary>
    public static Checked<IReadOnlyDictionary<string, double>> Known(TrialCard card, IReadOnlyList<string> words)
    {
        List<Problem> problems = [];
        var said = Settings(card, [.. words], problems);
        return problems.Count > 0 ? new(problems) : new((IReadOnlyDictionary<string, double>)card.Settings.Where(setting => said.ContainsKey(setting.Name) || setting.Default is not null)
            .ToDictionary(setting => setting.Name, setting => Plain(setting, said.GetValueOrDefault(setting.Name)), StringComparer.Ordinal));

        static double Plain(TrialSetting setting, Estimate? given) => Units.Find(setting.Unit)! is var unit && unit.IsLevel
            ? given?.In(unit).Value ?? setting.Default!.Value : given?.Si ?? unit.ToSi(setting.Default!.Value);
    }

    private static Checked<byte[]> Bytes(string path)
    {
        try
        {
            long size = new FileInfo(path).Length;
            return size > LargestBytes
                ? new(new Problem("The file of readings is too large for one trial.", path, $"{size / 1_000_000} MB", $"{LargestBytes / 1_000_000} MB", "Cut out the part that belongs to the trial."))
                : new(File.ReadAllBytes(path));
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The readings cannot be opened.", path, error.Message, "a file that may be read", "Check the name and the folder."));
        }
    }

    /// <summary>Lines '# air = 24 °C' and '# meter volts: 0.5%+2d' at the head of a file; what is typed on the command line stands above them.</summary>
    private static void Remarks(string text, List<string> settings, List<string> meters)
    {
        foreach (string line in text.Split('\n').Take(200).Select(line => line.Trim()).Where(line => line.StartsWith('#')))
        {
            string rest = line.TrimStart('#').Trim();
            if (rest.StartsWith("meter ", StringComparison.OrdinalIgnoreCase) && rest.Contains(':', StringComparison.Ordinal))
            {
                meters.Insert(0, rest["meter ".Length..].Replace(':', '='));
            }
            else if (rest.Split('=') is [var name, var value] && name.Trim().Length is > 0 and < 40 && value.Trim().Length > 0)
            {
                settings.Insert(0, $"{name.Trim()}={value.Trim()}");
            }
        }
    }

    /// <summary>A bare time of a trial counts seconds, unless the file or the maker says otherwise.</summary>
    private static LogMapping Seconds(LogMapping? said) => (said ?? new LogMapping()) is { TimeUnit: null } open ? open with { TimeUnit = "s" } : said!;

    private static List<string>? TypedForm(TrialCard card, string text)
    {
        List<string> lines = [.. text.Split('\n').Select(line => line.Trim().TrimStart('\uFEFF')).Where(line => line.Length > 0 && !line.StartsWith('#'))];
        return lines.Count > 0 && lines.All(line => line.Contains('=', StringComparison.Ordinal) && card.Columns.Any(column => line.StartsWith(column.Name + "=", StringComparison.OrdinalIgnoreCase) || line.StartsWith(column.Name.Replace(' ', '-') + "=", StringComparison.OrdinalIgnoreCase)))
            ? lines : null;
    }

    /// <summary>Frames a second of the film that the times were typed off; null: they are a watch's. What is wrong about it is told with the other settings.</summary>
    private static double? FramesPerS(TrialCard card, List<string> settings) =>
        Settings(card, settings, []).TryGetValue(FilmTimes.FrameRate, out var rate) && FilmTimes.Wrong(rate.Si, "") is null ? rate.Si : null;

    /// <summary>The columns with their rows' numbers turned into the times of the film.</summary>
    private static List<RawColumn> OfFilm(List<RawColumn> columns, FilmTimes.Times film, List<Problem> problems)
    {
        return [.. columns.Select(column => column.Name != "time" ? column : Timed(column, [.. column.Values.Select(row => (int)row)]))];

        RawColumn Timed(RawColumn column, int[] rows)
        {
            problems.AddRange(rows.Where(row => film.Read[row].Says == ReadingSays.Unclear).Select(row => Untimed(row, film.Read[row])));
            return column with { Values = [.. rows.Select(row => film.Read[row].Value)], Film = film with { DoubtS = [.. rows.Select(row => film.DoubtS[row])], Cuts = [.. film.Cuts.Select(cut => cut with { From = rows.Count(row => row < cut.From) })] } };
        }
    }

    private static Problem Untimed(int row, ReadingText read) => new($"time cannot be read: {read.Why}.", string.Create(CultureInfo.InvariantCulture, $"reading {row + 1}"), "the film's time", "a time code, mm:ss:ff", FilmTimes.Remedy);

    private static List<RawColumn> FromTyped(TrialCard card, IReadOnlyList<string> lines, double? framesPerS, List<Problem> problems)
    {
        var numbers = card.Columns.ToDictionary(column => column.Name, _ => Enumerable.Repeat(double.NaN, lines.Count).ToArray(), StringComparer.Ordinal);
        var texts = card.Columns.ToDictionary(column => column.Name, _ => Enumerable.Repeat("", lines.Count).ToArray(), StringComparer.Ordinal);
        HashSet<string> met = [];
        for (int i = 0; i < lines.Count; i++)
        {
            foreach (string part in ByName(card, lines[i]))
            {
                string[] pair = part.Split('=', 2);
                string where = FormattableString.Invariant($"reading {i + 1}");
                if (pair.Length < 2 || Column(card, pair[0]) is not { } column)
                {
                    problems.Add(new($"'{part}' is no reading of {card.Name}.", where, part, string.Join(", ", card.Columns.Select(column => column.Name.Replace(' ', '-') + "=")), "Type name=value, a space between two."));
                    continue;
                }

                met.Add(column.Name);
                if (column.IsWord || (column.Name == "time" && framesPerS is not null))
                {
                    texts[column.Name][i] = pair[1];
                }
                else if (TypedValue.Read(pair[1], Expect(column)) is Answer.Fine { Value: TypedValue.Amount amount })
                {
                    var unit = Units.Find(column.Unit)!;
                    numbers[column.Name][i] = unit.FromSi(amount.Si);
                }
                else if (TypedValue.Read(pair[1], Expect(column)) is not Answer.Fine { Value: TypedValue.Missing })
                {
                    problems.Add(new($"{column.Name} cannot be read.", where, pair[1], $"a number in {column.Unit}", $"Type it as {column.Name}=1.5{column.Unit}."));
                }
            }
        }

        var film = framesPerS is { } rate && met.Contains("time") ? FilmTimes.Of(texts["time"], rate) : null;
        problems.AddRange((film?.Read ?? []).Select((read, row) => (read, row)).Where(pair => pair.read.Says == ReadingSays.Unclear).Select(pair => Untimed(pair.row, pair.read)));
        return [.. card.Columns.Where(column => met.Contains(column.Name)).Select(column => film is not null && column.Name == "time"
            ? new RawColumn(column.Name, Units.Second, [.. film.Read.Select(read => read.Value)], []) { Film = film }
            : new RawColumn(column.Name, column.IsWord ? null : Units.Find(column.Unit), numbers[column.Name], column.IsWord ? texts[column.Name] : []))];
    }

    /// <summary>'gate volts=4.5 drop=27mV' in its pairs: words before a name belong to it, unless the name is a column without them.</summary>
    private static IEnumerable<string> ByName(TrialCard card, string line)
    {
        string before = "";
        foreach (string word in line.Split([' ', ';', '\t'], StringSplitOptions.RemoveEmptyEntries))
        {
            int equals = word.IndexOf('=', StringComparison.Ordinal);
            string whole = $"{before} {word}".TrimStart();
            if (equals < 0)
            {
                before = whole;
            }
            else if (before.Length > 0 && Column(card, whole[..whole.IndexOf('=', StringComparison.Ordinal)]) is null && Column(card, word[..equals]) is not null)
            {
                yield return before;
                yield return word;
                before = "";
            }
            else
            {
                yield return whole;
                before = "";
            }
        }

        if (before.Length > 0)
        {
            yield return before;
        }
    }

    private static TrialColumn? Column(TrialCard card, string name) => card.Columns.FirstOrDefault(column => Same(column.Name, name) || column.Also.Any(also => Same(also, name)));

    private static Expect Expect(TrialColumn column) => column.Unit == "Ω" ? Quantities.Expect.Ohms : Quantities.Expect.Of(Units.Find(column.Unit)!, column.Name);

    private static bool Same(string a, string b) => string.Equals(a.Replace('-', ' ').Replace('_', ' '), b.Replace('-', ' ').Replace('_', ' '), StringComparison.OrdinalIgnoreCase);

    private static List<RawColumn> FromLog(LogReading log, List<Problem> problems)
    {
        if (log.Questions.Count > 0)
        {
            problems.AddRange(log.Questions.Select(question => new Problem(question.Text, "the log", "not settled by the file", string.Join("; ", question.Choices.Select(choice => choice.Text)), "Answer it: --comma, --decimal-mark, --date-order, --clock or --time-unit, as 'log read' shows.")));
            return [];
        }

        List<RawColumn> columns = [];
        for (int i = 0; i < log.Columns.Count; i++)
        {
            var column = log.Columns[i];
            bool time = i == log.TimeColumn && log.TimeS.Length > 0;
            double[] values = time ? [.. log.TimeS.Select(t => t - (log.TimeBase is TimeBase.Elapsed ? 0 : log.TimeS[0]))] : column.Values;
            columns.Add(new(column.Name, time ? Units.Second : column.Unit, values, column.Texts) { Overload = column.Overload });
            if (time && !Same(column.Name, "time"))
            {
                columns.Add(new("time", Units.Second, values, []));
            }
        }

        return columns;
    }

    private static Dictionary<string, string> Pairs(IReadOnlyList<string> words, string option, List<Problem> problems)
    {
        var pairs = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (string word in words)
        {
            string[] pair = word.Split('=', 2);
            if (pair.Length == 2)
            {
                pairs[pair[0].Trim().Replace('-', ' ')] = pair[1].Trim();
            }
            else
            {
                problems.Add(new($"{option} takes name=value.", option, word, "name=value", $"Type {option} \"{word}=...\"."));
            }
        }

        return pairs;
    }

    private static Dictionary<string, Estimate> Settings(TrialCard card, List<string> words, List<Problem> problems)
    {
        var settings = new Dictionary<string, Estimate>(StringComparer.Ordinal);
        foreach (var (name, text) in Pairs(words, "--set", problems))
        {
            if (card.Settings.FirstOrDefault(setting => Same(setting.Name, name)) is not { } setting)
            {
                if (card.Columns.All(column => !Same(column.Name, name)) && words.Contains($"{name}={text}"))
                {
                    problems.Add(new($"{card.Name} has no setting '{name}'.", "--set", name, card.Settings.Count == 0 ? "none" : string.Join(", ", card.Settings.Select(each => each.Name)), "Type one of these, or leave it out."));
                }

                continue;
            }

            var unit = Units.Find(setting.Unit)!;
            var read = OptionReader.Read($"--set {setting.Name}", text, unit == Units.One ? Quantities.Expect.Ratio : Quantities.Expect.Of(unit, setting.Meaning));
            if (read.IsFine && read.Value is TypedValue.Amount amount)
            {
                if (setting.Name == FilmTimes.FrameRate && FilmTimes.Wrong(amount.Si, text) is { } wrong)
                {
                    problems.Add(wrong);
                }

                settings[setting.Name] = amount.AsEstimate($"{card.Name} {setting.Name}", CauseGroup.Assumption, new Origin.Assumed("typed")).In(unit.IsLevel == amount.Unit.IsLevel ? unit : amount.Unit);
            }
            else
            {
                problems.AddRange(read.IsFine ? [new Problem($"{setting.Name} takes one number.", "--set", text, $"a value in {setting.Unit}", "Type a value, or a value with ±.")] : read.Problems);
            }
        }

        return settings;
    }

    private static Dictionary<string, MeterSaid> Meters(TrialCard card, List<string> words, List<Problem> problems)
    {
        var meters = new Dictionary<string, MeterSaid>(StringComparer.Ordinal);
        foreach (var (said, text) in Pairs(words, "--meter", problems))
        {
            string[] parts = said.Split(':', 2);
            string column = parts[^1].Trim(), name = parts.Length == 2 ? parts[0].Trim() : $"{card.Name} {column}";
            if (column != "all" && card.Column(column) is null)
            {
                problems.Add(new($"{card.Name} reads no '{column}'.", "--meter", said, string.Join(", ", card.Columns.Select(each => each.Name)) + ", or all", "Name one of these."));
            }
            else if (text is "exact" or "none" or "0")
            {
                meters[column] = new(name, null);
            }
            else if (AccuracySpec.Read(text) is { IsFine: true } spec && spec.Value.OfRange == 0)
            {
                meters[column] = new(name, spec.Value);
            }
            else
            {
                problems.AddRange(AccuracySpec.Read(text) is { IsFine: false } bad ? bad.Problems : [new Problem("A share of the range needs the range.", "--meter", text, "0.5 % of reading + 2 digits, or a fixed amount", "Work the share of the range out to a fixed amount: 0.1 % of 20 V is 0.02 V.")]);
            }
        }

        return meters;
    }
}

using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>A column as it came from a file or from the keyboard.</summary>
/// <param name="Name">Name as written.</param>
/// <param name="Unit">Unit, or null where none was written.</param>
/// <param name="Values">Numbers in that unit; not a number where there is none.</param>
/// <param name="Texts">Words, for columns of words; else empty.</param>
public sealed record RawColumn(string Name, Unit? Unit, double[] Values, IReadOnlyList<string> Texts)
{
    /// <summary>True where the instrument said over range.</summary>
    public bool[] Overload { get; init; } = [];

    /// <summary>The times of a film where the column was typed off one; null: it was not.</summary>
    public FilmTimes.Times? Film { get; init; }
}

/// <summary>What a maker says of the meter behind a column.</summary>
/// <param name="Name">Name of the meter: columns with the same name share its errors.</param>
/// <param name="Promise">What it promises; null: exact.</param>
public sealed record MeterSaid(string Name, AccuracySpec? Promise);

/// <summary>Everything typed and read for one bench test.</summary>
/// <param name="Columns">Columns as they came.</param>
/// <param name="Settings">Numbers of the whole run.</param>
/// <param name="Meters">Meter per column name; 'all' for the rest.</param>
public sealed record TrialInput(IReadOnlyList<RawColumn> Columns, IReadOnlyDictionary<string, Estimate> Settings, IReadOnlyDictionary<string, MeterSaid> Meters)
{
    /// <summary>Column name of the kind by column name of the file.</summary>
    public IReadOnlyDictionary<string, string> Mapping { get; init; } = new Dictionary<string, string>();
}

/// <summary>Turns what came in into a sheet of a kind: names mapped, units converted, doubts put on, impossible readings named.</summary>
internal static class SheetMaker
{
    public static Checked<TrialSheet> Make(TrialCard card, TrialInput input, List<TrialRemark> remarks)
    {
        List<Problem> problems = [];
        var mapped = Map(card, input, problems);
        var settings = Settings(card, input, problems);
        foreach (var missing in card.Columns.Where(column => column.Needed && !mapped.ContainsKey(column.Name)))
        {
            problems.Add(new($"The column '{missing.Name}' ({missing.Meaning}) is missing.", $"readings for {card.Name}",
                input.Columns.Count == 0 ? "no columns" : string.Join(", ", input.Columns.Select(column => column.Name)), "a column of that name, in " + missing.Unit, $"Name it in the header, or say which one it is: --column \"{missing.Name}=NAME\"."));
        }

        if (mapped.Count == 0 && problems.Count == 0)
        {
            problems.Add(new($"None of the columns belongs to {card.Name}.", "the readings", input.Columns.Count == 0 ? "no columns" : string.Join(", ", input.Columns.Select(column => column.Name)),
                string.Join(", ", card.Columns.Select(column => column.Name)), "Name them so in the header, or say which one is which with --column."));
        }

        if (problems.Count > 0)
        {
            return new(problems);
        }

        int count = mapped.Values.Max(column => Math.Max(column.Values.Length, column.Texts.Count));
        var columns = new Dictionary<string, double[]>(StringComparer.Ordinal);
        var own = new Dictionary<string, double[]>(StringComparer.Ordinal);
        var words = new Dictionary<string, string[]>(StringComparer.Ordinal);
        List<SharedError> shared = [];
        List<string> notes = [];
        bool oneMeter = settings.TryGetValue("meters", out var meters) && meters.Value == 1;
        foreach (var column in card.Columns.Where(column => mapped.ContainsKey(column.Name)))
        {
            var raw = mapped[column.Name];
            if (column.IsWord)
            {
                words[column.Name] = [.. Enumerable.Range(0, count).Select(i => i < raw.Texts.Count ? raw.Texts[i].Trim().ToLowerInvariant() : i < raw.Values.Length && double.IsFinite(raw.Values[i]) ? raw.Values[i].ToString(CultureInfo.InvariantCulture) : "")];
                continue;
            }

            double[] values = Numbers(card, column, raw, count, remarks);
            columns[column.Name] = values;
            own[column.Name] = raw.Film is { } film ? film.DoubtS : Own(column, raw, values, oneMeter && column.Unit is "V" or "A" or "mV");
            shared.AddRange((raw.Film?.Cuts ?? []).Where(cut => cut.DoubtS > 0).Select((cut, i) =>
                new SharedError(Cause.Normal(string.Create(CultureInfo.InvariantCulture, $"{card.Name} film cut {i + 1}"), CauseGroup.Assumption), column.Name, 0, cut.DoubtS) { From = cut.From + 1 }));
            foreach (var setting in card.Settings.Where(setting => setting.With == column.Name && settings.ContainsKey(setting.Name)))
            {
                // Read on the same display, so rounded to the same step.
                double digit = StepOf(column, raw) * Units.Find(column.Unit)!.Factor / Math.Sqrt(12);
                settings[setting.Name] = (settings[setting.Name].Value, Math.Sqrt(Math.Pow(settings[setting.Name].Doubt, 2) + (digit * digit)));
            }

            if (Shared(card, input, column, raw, values, notes) is { } errors)
            {
                shared.AddRange(errors);
            }
        }

        foreach (var setting in card.Settings.Where(setting => settings.TryGetValue(setting.Name, out var value) && value.Doubt > 0))
        {
            shared.Add(new(Cause.Rectangular($"{card.Name} {setting.Name}", CauseGroup.Assumption), setting.Name, 0, settings[setting.Name].Doubt));
        }

        if (oneMeter)
        {
            notes.Add("One meter moved between places: volts and amps were not read at the same moment, so each reading is allowed ±1 % more.");
        }

        var sheet = new TrialSheet(card, [.. Enumerable.Range(1, count)], columns, own, words, settings, shared) { Notes = notes };

        // Marks are asked whether their times fit their degrees, as they were noted.
        return new(mapped.TryGetValue("time", out var time) && time.Film is null && columns.TryGetValue("time", out double[]? times) && card.Name != "warm-up-marks" ? sheet.Rows(TimeOrder.Of(times, times.Count(double.IsNaN))) : sheet);
    }

    private static Dictionary<string, RawColumn> Map(TrialCard card, TrialInput input, List<Problem> problems)
    {
        var mapped = new Dictionary<string, RawColumn>(StringComparer.Ordinal);
        foreach (var column in card.Columns)
        {
            string? said = input.Mapping.TryGetValue(column.Name, out string? name) ? name : null;
            var raw = said is not null
                ? input.Columns.FirstOrDefault(each => Plain(each.Name) == Plain(said))
                : input.Columns.FirstOrDefault(each => Plain(each.Name) == Plain(column.Name)) ?? input.Columns.FirstOrDefault(each => column.Also.Any(also => Plain(also) == Plain(each.Name)));
            if (raw is null && said is not null)
            {
                problems.Add(new($"There is no column '{said}' to take {column.Name} from.", "--column", said, string.Join(", ", input.Columns.Select(each => each.Name)), "Name one of these."));
            }

            if (raw is not null)
            {
                mapped[column.Name] = raw;
            }
        }

        return mapped;
    }

    private static string Plain(string name) => name.Trim().Replace('_', ' ').Replace('-', ' ').ToLowerInvariant();

    private static Dictionary<string, (double Value, double Doubt)> Settings(TrialCard card, TrialInput input, List<Problem> problems)
    {
        var settings = new Dictionary<string, (double Value, double Doubt)>(StringComparer.Ordinal);
        foreach (var setting in card.Settings)
        {
            var unit = Units.Find(setting.Unit)!;
            if (input.Settings.TryGetValue(setting.Name, out var given))
            {
                settings[setting.Name] = unit.IsLevel ? (given.In(unit).Value, given.In(unit).StandardDoubt) : (given.Si, given.SiDoubt);
            }
            else if (setting.Default is { } usual)
            {
                settings[setting.Name] = unit.IsLevel ? (usual, setting.Doubt) : (unit.ToSi(usual), setting.Doubt * unit.Factor);
            }
            else if (setting.Needed)
            {
                problems.Add(new($"{setting.Name} ({setting.Meaning}) is not said.", $"settings of {card.Name}", "none", $"a value in {setting.Unit}", $"Add --set \"{setting.Name}=...{setting.Unit}\", or a line '# {setting.Name} = ...{setting.Unit}' in the file."));
            }
        }

        return settings;
    }

    private static double[] Numbers(TrialCard card, TrialColumn column, RawColumn raw, int count, List<TrialRemark> remarks)
    {
        var unit = Units.Find(column.Unit)!;
        var from = raw.Unit is { } written && (written.Dimension == unit.Dimension) ? written : unit;
        double[] values = new double[count];
        for (int i = 0; i < count; i++)
        {
            double value = i < raw.Values.Length ? raw.Values[i] : double.NaN;
            if (Math.Abs(value) > 9e36)
            {
                value = double.NaN;
                remarks.Add(new(i + 1, "overload", "E", $"{column.Name} holds the number that instruments send for over range.", "Take a higher range, or check the connection.") { LeftOut = true });
            }
            else if (i < raw.Overload.Length && raw.Overload[i])
            {
                remarks.Add(new(i + 1, "overload", "E", $"{column.Name} was over range: no number.", "Take a higher range, or check the connection.") { LeftOut = true });
            }

            double si = unit.IsLevel ? unit.FromSi(from.IsLevel ? from.ToSi(value) : unit.ToSi(value)) : from.ToSi(value);
            double inUnit = unit.IsLevel ? si : unit.FromSi(si);
            if (inUnit < column.Low || inUnit > column.High)
            {
                remarks.Add(new(i + 1, "impossible", "E", string.Create(CultureInfo.InvariantCulture,
                    $"{column.Name} {Display.Significant(inUnit, 4)} {column.Unit} cannot be on {card.About}: it lies {(inUnit < column.Low ? $"below {column.Low}" : $"above {column.High}")} {column.Unit}.{(IsMilli(column, inUnit) ? $" In m{column.Unit} it could be." : "")}"),
                    "Check sign, range, unit and leads, and take it again.")
                { LeftOut = true });
                si = double.NaN;
            }

            values[i] = si;
        }

        return values;
    }

    /// <summary>A thousandth of it could be: the m of a milli was forgotten.</summary>
    private static bool IsMilli(TrialColumn column, double value) => column.Unit is "V" or "A" && value > column.High && value / 1000 <= column.High && !(value / 1000 < column.Low);

    /// <summary>Doubt of each reading by itself: its last digit, a hand, a meter that was moved.</summary>
    private static double[] Own(TrialColumn column, RawColumn raw, double[] values, bool moved)
    {
        var unit = Units.Find(column.Unit)!;
        double step = StepOf(column, raw) * unit.Factor;
        double rounded = unit.IsLevel ? Physics.ReadingChecks.LooksRoundedTo([.. values.Where(double.IsFinite)]) : 0;
        if (rounded > step && values.Count(double.IsFinite) >= 5)
        {
            step = rounded;
        }

        double hand = column.Own * unit.Factor, flicker = values.Count(double.IsFinite) <= Few ? Flicker * step : 0;
        return [.. values.Select(value => Math.Sqrt((step * step / 12) + (flicker * flicker) + (hand * hand) + (moved && double.IsFinite(value) ? value * value * 1e-4 / 3 : 0)))];
    }

    /// <summary>So few readings cannot show whether a last digit flickers, and by how much; more show it by their scatter.</summary>
    private const int Few = 5;

    /// <summary>Standard flicker of a last digit, in its steps; common practice, no source.</summary>
    private const double Flicker = 0.3;

    /// <summary>Of so many readings nine of ten tell the last digit: one that a hand divided by ten has a digit more than its display.</summary>
    private const int Many = 10;

    /// <summary>Digits behind the point. Fifteen digits in all: what a float carries beyond them is no digit of the display.</summary>
    private static int Decimals(double value)
    {
        string text = Math.Abs(value) < 1e15 ? ((decimal)value).ToString(CultureInfo.InvariantCulture) : "";
        int point = text.IndexOf('.', StringComparison.Ordinal);
        return point < 0 ? 0 : text.TrimEnd('0').Length - point - 1;
    }

    /// <summary>One step of the last digit that readings show.</summary>
    internal static double LastDigit(double[] values) => Math.Pow(10, -values.Max(Decimals));

    /// <summary>Step of the last digit, from the digits that the column shows, never coarser than a usual display of its kind.</summary>
    internal static double StepOf(TrialColumn column, RawColumn raw)
    {
        int[] digits = [.. raw.Values.Where(double.IsFinite).Take(2000).Select(Decimals).Order()];
        int most = digits.Length == 0 ? 0 : digits.Length < Many ? digits[^1] : digits[(int)(0.9 * digits.Length)];
        var unit = Units.Find(column.Unit)!;
        double scale = raw.Unit is { } written && written.Dimension == unit.Dimension ? written.Factor / unit.Factor : 1;
        double shown = most > 7 ? 0 : Math.Pow(10, -most) * scale;
        return column.Step > 0 ? Math.Min(shown, column.Step) : shown < 0.5 * scale ? shown : 0;
    }

    /// <summary>What stands for the meters that nobody named in tests of one kind.</summary>
    internal static string UsualMeter(TrialCard card) => card.Name + " meter";

    /// <summary>What a promise leaves open whatever is read, SI: its digits, in the steps that the display showed, and its fixed part.</summary>
    internal static double OffsetSi(AccuracySpec promise, TrialColumn column, RawColumn raw)
    {
        var unit = Units.Find(column.Unit)!;
        double step = (StepOf(column, raw) is var shown and > 0 ? shown : column.Step) * unit.Factor;
        double fixedSi = promise.FixedUnit is { } own && own.Dimension == unit.Dimension ? promise.Fixed * own.Factor : promise.Fixed * unit.Factor;
        return (promise.Digits * step) + fixedSi;
    }

    private static List<SharedError>? Shared(TrialCard card, TrialInput input, TrialColumn column, RawColumn raw, double[] values, List<string> notes)
    {
        var meter = input.Meters.GetValueOrDefault(column.Name) ?? input.Meters.GetValueOrDefault("all");
        var promise = meter?.Promise;
        if (meter is null && column.Usual.Length > 0)
        {
            promise = AccuracySpec.Read(column.Usual).Value;
            notes.Add($"No meter is named for {column.Name}: ±({column.Usual}) is assumed, as a usual one has it.");
        }

        if (promise is null || (promise.OfReading == 0 && promise.Digits == 0 && promise.Fixed == 0))
        {
            return null;
        }

        var unit = Units.Find(column.Unit)!;
        double offset = OffsetSi(promise, column, raw) / Math.Sqrt(3);
        double gain = promise.OfReading / Math.Sqrt(3);
        string name = $"{meter?.Name ?? UsualMeter(card)} {(SiPrefix.BaseOf(unit) ?? unit).Symbol}";
        if (promise.TakesLarger)
        {
            double typical = Sample.Median([.. values.Where(double.IsFinite).Select(Math.Abs)]);
            return gain * typical >= offset ? [new(Gain(name), column.Name, gain, 0)] : [new(Offset(name), column.Name, 0, offset)];
        }

        List<SharedError> errors = [];
        if (gain > 0)
        {
            errors.Add(new(Gain(name), column.Name, gain, 0));
        }

        if (offset > 0)
        {
            errors.Add(new(Offset(name), column.Name, 0, offset));
        }

        if (gain > 0 && offset > 0 && promise.Terms == SpecTerms.Together)
        {
            errors.Add(new(Cause.Rectangular(name + " gain with offset", CauseGroup.Instrument), column.Name, 0, 0, Math.Sqrt(2 * gain * offset)));
        }

        return errors;
    }

    private static Cause Gain(string meter) => Cause.Rectangular(meter + " gain", CauseGroup.Instrument);

    private static Cause Offset(string meter) => Cause.Rectangular(meter + " offset", CauseGroup.Instrument);
}

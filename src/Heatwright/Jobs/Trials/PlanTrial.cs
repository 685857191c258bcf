using System.Globalization;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs.Trials;

/// <summary>A meter as a maker enters it.</summary>
/// <param name="Id">Short name.</param>
/// <param name="Name">What it is called; empty: as its short name.</param>
/// <param name="Reads">What it promises for each unit: 'V=0.5%+2mV', 'A=1%+3d'.</param>
/// <param name="Steps">The smallest step it shows for each unit: 'V=1mV'.</param>
public sealed record MeterEntry(string Id, string Name, IReadOnlyList<string> Reads, IReadOnlyList<string> Steps);

/// <summary>Meters and bench tests of a study: put in, and taken out while nothing rests on them.</summary>
public static class PlanTrial
{
    /// <summary>A meter with its specification; one that is there is stated anew, unit by unit.</summary>
    public static Checked<Instrument> Meter(string path, MeterEntry entry)
    {
        Instrument? made = null;
        return Specs(entry).Then(specs => ChangeStudy.Run(path, $"meter {entry.Id} stated", study =>
        {
            var before = study.Instruments.FirstOrDefault(one => one.Id == entry.Id);
            var kept = (before?.Specs ?? []).Where(old => !specs.Any(spec => Units.Find(spec.Unit)!.Measures(Units.Find(old.Unit)!)));
            made = new(entry.Id, entry.Name.Length > 0 ? entry.Name : before?.Name ?? entry.Id, [.. kept, .. specs]);
            return new Checked<Study>(study with { Instruments = before is null ? [.. study.Instruments, made] : [.. study.Instruments.Select(one => one.Id == entry.Id ? made : one)] });
        })).Map(_ => made!);
    }

    /// <summary>Takes what a meter promises for a unit out of it, or the whole meter where no run was read with it; undo brings it back.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="id">Its short name.</param>
    /// <param name="unit">The unit, as 'meter list' shows it or as it was typed; empty: the whole meter.</param>
    public static Checked<StudyChanged> DropMeter(string path, string id, string unit) => ChangeStudy.Run(path, unit.Length > 0 ? $"what meter {id} promises for {unit} taken out" : $"meter {id} taken out", study =>
    {
        if (study.Instruments.FirstOrDefault(one => string.Equals(one.Id, id, StringComparison.OrdinalIgnoreCase)) is not { } meter)
        {
            return new(new Problem("The study has no such meter.", path, id, study.Instruments.Count > 0 ? NearNames.Told(id, study.Instruments.Select(one => one.Id)) : "no meter yet", "Choose one of them."));
        }

        if (unit.Length == 0)
        {
            string[] read = [.. study.Trials.SelectMany(trial => trial.Runs).Where(run => run.Columns.Any(column => column.Instrument == meter.Id)).Select(run => run.Id.Name)];
            return read.Length > 0
                ? new(new Problem("Runs were read with this meter.", $"meter {meter.Id}", string.Join(", ", read), "none", "Name another meter for them, or none, with 'heatwright trial set FILE RUN --meter COLUMN=none'; a single line is taken out by its unit."))
                : new Checked<Study>(study with { Instruments = [.. study.Instruments.Where(one => one != meter)] });
        }

        var line = meter.Specs.FirstOrDefault(spec => spec.Unit == unit) ?? meter.Specs.FirstOrDefault(spec => UnitOf(unit)?.Measures(Units.Find(spec.Unit)!) == true);
        return line is null
            ? new(new Problem("The meter promises nothing for this unit.", $"meter {meter.Id}", unit, meter.Specs.Count > 0 ? string.Join(", ", meter.Specs.Select(spec => spec.Unit)) : "nothing yet", "Choose one of them."))
            : new Checked<Study>(study with { Instruments = [.. study.Instruments.Select(one => one == meter ? one with { Specs = [.. one.Specs.Where(spec => spec != line)] } : one)] });
    });

    /// <summary>The kind with a maker's own law, where one is named.</summary>
    /// <param name="kind">Name of the kind.</param>
    /// <param name="law">Name of a law of the quick sums; null or empty: none.</param>
    /// <param name="result">Which of its results is read; null or empty: its first.</param>
    /// <param name="find">Inputs to find, apart by commas; null or empty: those that are neither read nor said.</param>
    public static Checked<string> KindOf(string kind, string? law, string? result, string? find) => Word(law) is { } named ? WithLaw(kind, named, Word(result), Word(find)) : new(kind);

    /// <summary>The kind that is done by a law of the quick sums: only that of a maker's own trial takes one.</summary>
    internal static Checked<string> WithLaw(string kind, string law, string? result, string? find) => TrialKinds.Find(kind)?.Card == OwnTrial.Kind
        ? OwnTrial.Of(law, result, find).Map(own => own.Name)
        : new(new Problem($"{kind} has laws of its own.", "law", law, $"only with the kind {OwnTrial.Kind}", $"Leave the law out, or choose {OwnTrial.Kind}."));

    private static string? Word(string? typed) => string.IsNullOrWhiteSpace(typed) ? null : typed.Trim();

    /// <summary>A bench test of a part, still without a reading.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="id">Short name of the trial; empty: the part and the kind.</param>
    /// <param name="kind">Name of the kind.</param>
    /// <param name="part">The part.</param>
    /// <param name="purpose">What it is to show; may be empty.</param>
    public static Checked<Trial> Add(string path, string id, string kind, string part, string purpose)
    {
        if (TrialKinds.Find(kind) is not { } found)
        {
            return new(new Problem("There is no such kind of bench test.", "KIND", kind, NearNames.Told(kind, TrialKinds.All), "Choose one of them; 'heatwright trial kinds' says what each tells."));
        }

        Trial? made = null;
        string called = OwnTrial.Find(kind)?.Law.Law.Name ?? kind.Trim();
        return ChangeStudy.Run(path, $"trial {(id.Length > 0 ? id : $"{part}-{called}")} planned", study => EnterPart.Found(study, part).Then(on =>
        {
            made = new(new(id.Length > 0 ? id : $"{on.Id.Name}-{called}"), found.Kind, on.Id, []) { Purpose = purpose, Card = found.Card };
            return study.Trials.Any(one => string.Equals(one.Id.Name, made.Id.Name, StringComparison.OrdinalIgnoreCase))
                ? new Checked<Study>(new Problem("The study has a trial of this name.", path, made.Id.Name, "a name that is free", "Choose another name, or type more readings into the one that is there."))
                : new(study with { Trials = [.. study.Trials, made] });
        })).Map(_ => made!);
    }

    /// <summary>Takes a trial out while it has no reading; undo brings it back.</summary>
    public static Checked<StudyChanged> Drop(string path, string id) => ChangeStudy.Run(path, $"trial {id} taken out", study => Found(study, id).Then(trial => trial.Runs.Any(run => run.Readings.Count > 0)
        ? new Checked<Study>(new Problem("The trial holds readings.", $"trial '{trial.Id}'", string.Create(CultureInfo.InvariantCulture, $"{trial.Runs.Sum(run => run.Readings.Count)} readings"), "none", "Strike them out with a reason instead: readings are not erased."))
        : new(study with { Trials = [.. study.Trials.Where(other => other.Id != trial.Id)] })));

    /// <summary>The trial of that name, or which there are.</summary>
    public static Checked<Trial> Found(Study study, string id) => study.Trials.FirstOrDefault(trial => string.Equals(trial.Id.Name, id, StringComparison.OrdinalIgnoreCase)) is { } trial
        ? new(trial)
        : new(new Problem("The study has no such trial.", $"study '{study.Name}'", id, study.Trials.Count > 0 ? NearNames.Told(id, study.Trials.Select(one => one.Id.Name)) : "no trial yet", "Choose one of them, or plan it with 'heatwright trial add'."));

    private static Checked<IReadOnlyList<InstrumentSpec>> Specs(MeterEntry entry)
    {
        List<Problem> problems = [];
        var steps = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var (unit, text) in Pairs(entry.Steps, "--step", problems))
        {
            var read = OptionReader.Amount($"--step {unit.Symbol}", text, Expect.Of(unit.IsLevel ? Units.Kelvin : unit));
            problems.AddRange(read.Problems);
            steps[unit.Symbol] = read.IsFine ? read.Value.Si / unit.Factor : 0;
        }

        List<InstrumentSpec> specs = [];
        foreach (var (unit, text) in Pairs(entry.Reads, "--reads", problems))
        {
            double step = steps.GetValueOrDefault(unit.Symbol);
            bool exact = text is "exact" or "none";
            var read = exact ? new(new AccuracySpec(0, 0, 0, 0)) : AccuracySpec.Read(text);
            if (!read.IsFine || read.Value.OfRange > 0 || (read.Value.Digits > 0 && step == 0))
            {
                problems.AddRange(!read.IsFine ? read.Problems : [new Problem(
                    read.Value.OfRange > 0 ? "A share of the range needs the range." : "Digits need the smallest step of the display.", $"--reads {unit.Symbol}", text,
                    read.Value.OfRange > 0 ? "a share of the reading and a fixed amount" : "--step with this unit",
                    read.Value.OfRange > 0 ? "Work the share of the range out to a fixed amount: 0.1 % of 20 V is 0.02 V." : $"Add --step \"{unit.Symbol}=0.01{unit.Symbol}\", as the display shows it.")]);
                continue;
            }

            double fixedOwn = read.Value.FixedUnit is { } own ? read.Value.Fixed * own.Factor / unit.Factor : read.Value.Fixed;
            specs.Add(new(unit.Symbol, 100 * read.Value.OfReading, fixedOwn + (read.Value.Digits * step), step));
        }

        if (entry.Id.Length == 0)
        {
            problems.Add(new("The meter has no short name.", "METER", "empty", "a word such as bench", "Type one: columns of readings name it."));
        }

        return problems.Count > 0 ? new(problems) : new((IReadOnlyList<InstrumentSpec>)specs);
    }

    /// <summary>A unit by its symbol, or as makers spell it: ohm, degC. No column is read in coulombs: a meter's C is degrees.</summary>
    private static Unit? UnitOf(string text) => text is "C" ? Units.Celsius : Units.Find(text) ?? (TypedValue.Read($"1 {text}", Expect.Anything) is Answer.Fine { Value: TypedValue.Amount { UnitWasTyped: true } amount } ? amount.Unit : null);

    private static IEnumerable<(Unit Unit, string Text)> Pairs(IReadOnlyList<string> words, string option, List<Problem> problems)
    {
        foreach (string word in words)
        {
            string[] pair = word.Split('=', 2, StringSplitOptions.TrimEntries);
            if (pair.Length == 2 && UnitOf(pair[0]) is { } unit && pair[1].Length > 0)
            {
                yield return (unit, pair[1]);
            }
            else
            {
                problems.Add(new("This does not say what the meter promises for which unit.", option, word, "UNIT=WORDS, with a unit such as V, mV, A, Ω, °C or s", option == "--reads" ? "Type --reads \"V=0.5%+2mV\", as the leaflet has it." : "Type --step \"V=1mV\", as the display shows it."));
            }
        }
    }
}

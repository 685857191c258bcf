using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Readings of which nobody named the meter, or one that promises nothing for them: a usual one is assumed, and said, in a study as in a trial by itself.</summary>
internal static class UsualMeters
{
    /// <summary>The trials with a usual meter in the place of those that nobody named, for the fits that ask meters by their name; and what those promise.</summary>
    /// <remarks>One meter per card and unit stands for all unnamed ones: it was the same meter more likely than not, and its error does not average out.</remarks>
    /// <param name="trials">Trials of one part.</param>
    /// <param name="instruments">The meters of the study.</param>
    public static (IReadOnlyList<Trial> Trials, InstrumentCauses Instruments) Named(IReadOnlyList<Trial> trials, InstrumentCauses instruments)
    {
        Dictionary<(string Meter, string Unit), InstrumentSpec> specs = [];
        List<Trial> named = [];
        foreach (var trial in trials)
        {
            var card = TrialCard.Of(trial);
            named.Add(card is null || !IsFittedByStudy(trial) ? trial : trial with { Runs = [.. trial.Runs.Select(run => Named(card, run, instruments, specs))] });
        }

        return (named, instruments.With([.. specs.GroupBy(pair => pair.Key.Meter, StringComparer.Ordinal).Select(group => new Instrument(group.Key, "a usual meter", [.. group.Select(pair => pair.Value)]))]));
    }

    /// <summary>What is said of readings whose meter promises nothing: what was assumed, and how to name it; once for each trial, and once for each meter that is named.</summary>
    /// <param name="trial">The trial, as it was typed.</param>
    /// <param name="instruments">The meters of the study.</param>
    public static IEnumerable<Remark> Told(Trial trial, InstrumentCauses instruments)
    {
        if (trial.Runs.FirstOrDefault(run => run.Readings.Count > 0 && Bare(run, instruments).Any()) is not { } run)
        {
            yield break;
        }

        var card = TrialCard.Of(trial);
        var usual = Bare(run, instruments).Select(column => (Column: column, Usual: card?.Column(column.Name)?.Usual ?? "")).ToArray();
        if (usual.Where(one => one.Column.Instrument.Length == 0 && one.Usual.Length > 0).ToArray() is { Length: > 0 } unnamed)
        {
            string name = unnamed[0].Column.Name, pair = name.Contains(' ', StringComparison.Ordinal) ? $"\"{name}=METER\"" : $"{name}=METER";
            yield return new(trial.Id, run.Id, 0, $"No meter is named: {string.Join(", ", unnamed.Select(one => $"±({one.Usual}) for {one.Column.Name}"))} {(unnamed.Length == 1 ? "is" : "are")} assumed, as usual ones have it. Name what they were read with: 'heatwright trial set FILE {run.Id} --meter {pair}'.", Remark.Kept);
        }

        foreach (var (column, assumed) in usual.Where(one => instruments.Knows(one.Column.Instrument)))
        {
            yield return new(trial.Id, run.Id, 0, $"{column.Name} is read with '{column.Instrument}', which promises nothing for {column.Unit}: {(assumed.Length > 0 ? $"±({assumed}) is assumed, as a usual one has it" : "these readings get no doubt from it")}. State it with 'heatwright meter add FILE {column.Instrument} --reads \"{Typed(column.Unit)}=...\"', as its leaflet has it.", Remark.Kept);
        }
    }

    /// <summary>Fits of cells, warm-ups and hot ohms take a part's trials together and know meters by name; all others go by their card, which knows the usual ones.</summary>
    public static bool IsFittedByStudy(Trial trial) => trial.TellsHowVoltsFall() || trial.Kind is TrialKind.WarmUp or TrialKind.HotOhms;

    /// <summary>Columns of numbers with a unit for which no meter promises anything.</summary>
    private static IEnumerable<Column> Bare(Run run, InstrumentCauses instruments) => run.Columns.Where(column => Units.Find(column.Unit) is { Symbol.Length: > 0 } && !instruments.Promises(column));

    private static string Typed(string unit) => unit switch { "°C" => "degC", "Ω" => "ohm", _ => unit };

    private static Run Named(TrialCard card, Run run, InstrumentCauses instruments, Dictionary<(string Meter, string Unit), InstrumentSpec> specs)
    {
        string meter = SheetMaker.UsualMeter(card);
        TrialColumn[] unnamed = [.. Bare(run, instruments).Select(column => card.Column(column.Name)).OfType<TrialColumn>().Where(column => column.Usual.Length > 0)];
        if (unnamed.Length == 0)
        {
            return run;
        }

        var read = CardBench.Input(card, run, instruments).Columns;
        foreach (var column in unnamed)
        {
            var unit = Units.Find(column.Unit)!;
            var promise = AccuracySpec.Read(column.Usual).Value;
            var raw = read.First(one => one.Name == column.Name);
            double step = SheetMaker.StepOf(column, raw) is var shown and > 0 ? shown : column.Step;
            double offset = SheetMaker.OffsetSi(promise, column, raw) / unit.Factor;

            // The finest display that was seen tells which meter it was.
            if (!specs.TryGetValue((meter, unit.Symbol), out var there) || there.Offset > offset)
            {
                specs[(meter, unit.Symbol)] = new(unit.Symbol, 100 * promise.OfReading, offset, step);
            }
        }

        return run with { Columns = [.. run.Columns.Select(column => unnamed.Any(one => one.Name == column.Name) ? column with { Instrument = meter } : column)] };
    }
}

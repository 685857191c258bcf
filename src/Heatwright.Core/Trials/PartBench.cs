using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>All trials of one part to findings: checks, fit, doubt.</summary>
public static class PartBench
{
    /// <summary>Findings of one part from its own trials.</summary>
    public static PartFindings One(Part part, IReadOnlyList<Trial> trials, InstrumentCauses instruments)
    {
        // A run of which every line is struck out is told, and neither fitted nor missed: another of the same trial takes its place.
        Remark[] struck = [.. trials.SelectMany(trial => trial.Runs.Where(IsStruck).SelectMany(run => run.Readings.Select(reading => new Remark(trial.Id, run.Id, reading.Number, $"struck out: {reading.StruckBecause}", Remark.LeftOut))))];
        trials = [.. trials.Select(trial => trial.Runs.Any(IsStruck) ? trial with { Runs = [.. trial.Runs.Where(run => !IsStruck(run))] } : trial)];
        Remark[] assumed = [.. trials.SelectMany(trial => UsualMeters.Told(trial, instruments))];
        (trials, instruments) = UsualMeters.Named(trials, instruments);
        List<PartFindings> pieces = [];
        var read = trials.Where(trial => trial.Kind != TrialKind.Bench).SelectMany(trial => trial.Runs.Select(run => (Trial: trial, Table: ReadingTable.Read(run, trial)))).ToArray();
        Trial[] ofCell = [.. trials.Where(trial => trial.TellsHowVoltsFall())];
        if (ofCell.Length > 0)
        {
            var cell = CellTrials.Findings(part, [.. ofCell.Select(AsCellLog).SelectMany(trial => trial.Runs.Select(run => (trial, ReadingTable.Read(run, trial))))], instruments);
            pieces.Add(cell);
            var slowest = (cell.Find(PartQuantities.Capacity)?.Origin as Origin.Fitted)?.Trial;
            pieces.AddRange(ofCell.Where(trial => !trial.IsDischarge() || cell.Cell is null || trial.Id == slowest).Select(trial => ByItself(trial, cell, instruments)));
        }

        var byCard = trials.Where(trial => trial.Kind == TrialKind.Bench && !trial.TellsHowVoltsFall()).Select(trial => (Trial: trial, Found: CardBench.Findings(trial, instruments))).ToArray();
        var (cold, coldC) = ColdOhms(read, byCard, instruments, pieces);

        // With its degrees it tells how the ohms grow with heat; without them, its ohms and watts by themselves.
        pieces.AddRange(read.Where(pair => pair.Trial.Kind == TrialKind.HotOhms).GroupBy(pair => pair.Trial.Id).SelectMany(pairs => pairs.Any(pair => HotOhmsBench.TellsDegrees(pair.Table))
            ? pairs.Where(pair => HotOhmsBench.TellsDegrees(pair.Table)).Select(pair => HotOhmsBench.HotOhms(pair.Trial, pair.Table, instruments, cold, coldC)) : [ByCard(pairs.First().Trial, [.. pairs.Select(pair => pair.Table)], instruments)]));
        pieces.AddRange(read.Where(pair => pair.Trial.Kind is TrialKind.TwoPointDrop or TrialKind.ModulePoints).GroupBy(pair => pair.Trial.Id).Select(pairs => ByCard(pairs.First().Trial, [.. pairs.Select(pair => pair.Table)], instruments)));
        if (read.Any(pair => pair.Trial.Kind == TrialKind.WarmUp)) // planned and not taken yet: there is nothing to fit
        {
            var warm = WarmUpTrials.Findings(part, [.. read.Where(pair => pair.Trial.Kind == TrialKind.WarmUp)], instruments);
            pieces.Add(warm);
            if (part.Kind == PartKind.Heater && cold is not null && read.All(pair => pair.Trial.Kind != TrialKind.HotOhms))
            {
                pieces.AddRange(read.Where(pair => pair.Trial.Kind == TrialKind.WarmUp && pair.Table.Has("volts") && pair.Table.Has("amps")).Select(pair => HotOhmsBench.HotOhmsOfWarmUp(pair.Trial, pair.Table, instruments, cold, coldC, warm.WarmUp?.LagS ?? 0)));
            }
        }

        pieces.AddRange(byCard.Select(pair => pair.Found));
        pieces.AddRange(AskedNames.Of(part, trials, pieces));
        pieces.AddRange(OhmsOverWatts.Of(part, InTheirOrder(pieces)));
        var findings = InTheirOrder(pieces);
        pieces.Add(new(part.Id, [], [.. OfWholeRuns(read, instruments, pieces), .. CardBench.Compared(findings, trials), .. struck, .. assumed, .. trials.SelectMany(trial => trial.Runs.SelectMany(run => TypedTwice.Of(trial, run)))], []));
        return new(part.Id, findings, [.. pieces.SelectMany(piece => piece.Remarks)], [.. pieces.SelectMany(piece => piece.Problems)])
        {
            Cell = pieces.Select(piece => piece.Cell).FirstOrDefault(cell => cell is not null),
            WarmUp = pieces.Select(piece => piece.WarmUp).FirstOrDefault(warm => warm is not null),
            Pictures = [.. pieces.SelectMany(piece => piece.Pictures).Where(picture => picture.X.Length >= FitPicture.Fewest)],
        };
    }

    /// <summary>Ohms of a cold heater into the pieces; the surest of them, by two wires or by four, with the degrees at which they were read.</summary>
    private static (Estimate? Cold, double ColdC) ColdOhms((Trial Trial, ReadingTable Table)[] read, (Trial Trial, PartFindings Found)[] byCard, InstrumentCauses instruments, List<PartFindings> pieces)
    {
        List<(Estimate? Ohms, double AtC)> known = [];
        foreach (var group in read.Where(pair => pair.Trial.Kind == TrialKind.ColdOhms).GroupBy(pair => pair.Trial.Id))
        {
            var found = ByCard(group.First().Trial, [.. group.Select(pair => pair.Table)], instruments);
            known.Add((found.Find(PartQuantities.Ohms), group.Last().Table.Run.Setting("at", 20)));
            pieces.Add(found);
        }

        // Ohms by four wires are cold ohms as well, and often the surer ones.
        known.AddRange(byCard.Where(pair => pair.Trial is { Card: "four-wire-ohms", Runs.Count: > 0 }).Select(pair => (pair.Found.Find(PartQuantities.Ohms), pair.Trial.Runs[^1].Setting("at", 20))));
        return known.Where(one => one.Ohms is not null).OrderBy(one => Doubt(one.Ohms!)).Append((null, 20)).First();
    }

    /// <summary>What the rules say of whole runs that the study fits together, unless a fit has said so.</summary>
    private static IEnumerable<Remark> OfWholeRuns((Trial Trial, ReadingTable Table)[] read, InstrumentCauses instruments, List<PartFindings> pieces) =>
        read.Where(pair => UsualMeters.IsFittedByStudy(pair.Trial)).SelectMany(pair => RunChecks.OfWhole(pair.Trial, pair.Table, instruments))
            .ExceptBy(pieces.SelectMany(piece => piece.Remarks).Select(remark => (remark.Run, remark.Words)), remark => (remark.Run, remark.Words));

    private static bool IsStruck(Run run) => run.Readings.Count > 0 && run.Readings.All(reading => reading.StruckBecause is not null);

    /// <summary>A discharge under the name of its card is read as any other discharge; so is a slow one for the open volts.</summary>
    private static Trial AsCellLog(Trial trial) => trial.Kind == TrialKind.Bench ? trial with { Kind = TrialKind.Discharge, Card = null } : trial;

    /// <summary>What a run of a cell tells without any other: amp-hours of a discharge, ohms after seconds of a pulse. Where there is a model, what the model tells is left to it.</summary>
    private static PartFindings ByItself(Trial trial, PartFindings cell, InstrumentCauses instruments)
    {
        var found = CardBench.Findings(trial with { Card = TrialCard.Of(trial)!.Name }, instruments);
        var modelled = cell.Findings.Select(finding => finding.Quantity).ToHashSet(StringComparer.Ordinal);

        // What the checks say of its readings is told with the model; what a slow discharge says of itself is its card's alone.
        bool slow = !trial.IsDischarge() && trial.Kind == TrialKind.Bench;
        return new(trial.Part, [.. found.Findings.Where(finding => !modelled.Contains(finding.Quantity))], [.. found.Remarks.Where(remark => slow && remark.Reading == 0)], slow ? found.Problems : []);
    }

    /// <summary>Module points call it 'set', the card 'set volts'.</summary>
    private static IReadOnlyDictionary<string, double> WithSetVolts(IReadOnlyDictionary<string, double> settings) =>
        settings.TryGetValue("set", out double set) ? new Dictionary<string, double>(settings, StringComparer.Ordinal) { ["set volts"] = set } : settings;

    /// <summary>A trial by its card: a reading that the checks left out takes no part, and what they said of one stands.</summary>
    private static PartFindings ByCard(Trial trial, ReadingTable[] tables, InstrumentCauses instruments)
    {
        Run Sound(ReadingTable table) => table.Run with
        {
            Readings = [.. table.Run.Readings.Select(reading => table.Numbers.Contains(reading.Number) ? reading : reading with { StruckBecause = reading.StruckBecause ?? "" })],
            Settings = WithSetVolts(table.Run.Settings),
            SettingsPlusMinus = WithSetVolts(table.Run.SettingsPlusMinus),
        };
        var sound = trial with { Card = TrialCard.Of(trial)!.Name, Runs = [.. tables.Select(Sound)] };
        var found = CardBench.Findings(sound, instruments, trial.Kind is not (TrialKind.ColdOhms or TrialKind.TwoPointDrop));
        if (found.Find(PartQuantities.ChangeCurrent)?.Origin is Origin.Fitted { Runs: var told } && told.Count < tables.Length)
        {
            // The losses hang together: a run that knows of no change says nothing of those below it.
            var losses = CardBench.Findings(sound with { Runs = [.. sound.Runs.Where(run => told.Contains(run.Id))] }, instruments);
            found = found with { Findings = [.. losses.Findings.Where(finding => !LowerBound.Is(finding.Quantity)), .. found.Findings.Where(finding => LowerBound.Is(finding.Quantity) || losses.Find(finding.Quantity) is null)] };
        }

        Remark[] checks = [.. tables.SelectMany(table => table.Remarks)];
        return found with { Remarks = [.. checks, .. found.Remarks.Where(remark => checks.All(check => check.Reading == 0 || (check.Run, check.Reading) != (remark.Run, remark.Reading)))] };
    }

    /// <summary>Findings so that of each quantity the one that counts stands first: the surest, of lower bounds the largest. What belongs to a model of cell or working end stays with its model, whose numbers hang together.</summary>
    private static Finding[] InTheirOrder(IReadOnlyList<PartFindings> pieces)
    {
        var all = pieces.SelectMany(piece => piece.Findings.Select(finding => (Finding: finding, OfModel: piece.Cell is not null || piece.WarmUp is not null))).ToArray();
        return [.. all.GroupBy(one => one.Finding.Quantity, StringComparer.Ordinal)
            .SelectMany(group => group.OrderByDescending(one => one.OfModel).ThenBy(one => LowerBound.Is(group.Key) ? -one.Finding.Value.Si : Doubt(one.Finding.Value)).Select(one => one.Finding))];
    }

    /// <summary>A finding without any doubt is one of which nobody said how well it was read: it is no surer than others.</summary>
    private static double Doubt(Estimate of) => of.SiDoubt > 0 ? of.SiDoubt : double.PositiveInfinity;
}

using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>All trials of one part to findings: checks, fit, doubt.</summary>
public static class PartBench
{
    /// <summary>Findings of one part from its own trials.</summary>
    public static PartFindings One(Part part, IReadOnlyList<Trial> trials, InstrumentCauses instruments)
    {
        List<PartFindings> pieces = [];
        var read = trials.Where(trial => trial.Kind != TrialKind.Bench).SelectMany(trial => trial.Runs.Select(run => (Trial: trial, Table: ReadingTable.Read(run, trial)))).ToArray();
        if (trials.Any(trial => trial.Kind is TrialKind.Discharge or TrialKind.Pulse))
        {
            var cell = CellTrials.Findings(part, [.. read.Where(pair => pair.Trial.Kind is TrialKind.Discharge or TrialKind.Pulse)], instruments);
            pieces.Add(cell);
            pieces.AddRange(trials.Where(trial => trial.Kind is TrialKind.Pulse || (trial.Kind is TrialKind.Discharge && cell.Cell is null)).Select(trial => ByItself(trial, cell, instruments)));
        }

        Estimate? cold = null;
        double coldC = 20;
        foreach (var (trial, table) in read.Where(pair => pair.Trial.Kind == TrialKind.ColdOhms))
        {
            var found = OhmsBench.ColdOhms(trial, table, instruments);
            if (found.Find(PartQuantities.Ohms) is { } ohms && (cold is null || Surer(ohms, cold)))
            {
                (cold, coldC) = (ohms, table.Run.Setting("at", 20));
            }

            pieces.Add(found);
        }

        pieces.AddRange(read.Where(pair => pair.Trial.Kind == TrialKind.HotOhms).Select(pair => OhmsBench.HotOhms(pair.Trial, pair.Table, instruments, cold, coldC)));
        pieces.AddRange(read.Where(pair => pair.Trial.Kind == TrialKind.TwoPointDrop).Select(pair => OhmsBench.Drop(pair.Trial, pair.Table, instruments)));
        pieces.AddRange(read.Where(pair => pair.Trial.Kind == TrialKind.ModulePoints).Select(pair => ModuleBench.Points(pair.Trial, pair.Table, instruments)));
        if (read.Any(pair => pair.Trial.Kind == TrialKind.WarmUp)) // planned and not taken yet: there is nothing to fit
        {
            var warm = WarmUpTrials.Findings(part, [.. read.Where(pair => pair.Trial.Kind == TrialKind.WarmUp)], instruments);
            pieces.Add(warm);
            if (part.Kind == PartKind.Heater && cold is not null && read.All(pair => pair.Trial.Kind != TrialKind.HotOhms))
            {
                pieces.AddRange(read.Where(pair => pair.Trial.Kind == TrialKind.WarmUp && pair.Table.Has("volts") && pair.Table.Has("amps")).Select(pair => OhmsBench.HotOhmsOfWarmUp(pair.Trial, pair.Table, instruments, cold, coldC, warm.WarmUp?.LagS ?? 0)));
            }
        }

        pieces.AddRange(trials.Where(trial => trial.Kind == TrialKind.Bench).Select(trial => CardBench.Findings(trial, instruments)));
        var findings = InTheirOrder(pieces);
        pieces.Add(new(part.Id, [], [.. CardBench.Compared(findings, trials), .. trials.SelectMany(trial => trial.Runs.SelectMany(run => TypedTwice.Of(trial, run).Concat(instruments.Silent(trial, run))))], []));
        return new(part.Id, findings, [.. pieces.SelectMany(piece => piece.Remarks)], [.. pieces.SelectMany(piece => piece.Problems)])
        {
            Cell = pieces.Select(piece => piece.Cell).FirstOrDefault(cell => cell is not null),
            WarmUp = pieces.Select(piece => piece.WarmUp).FirstOrDefault(warm => warm is not null),
            Pictures = [.. pieces.SelectMany(piece => piece.Pictures)],
        };
    }

    /// <summary>What a run of a cell tells without any other: amp-hours of a discharge, ohms after seconds of a pulse. Where there is a model, what the model tells is left to it.</summary>
    private static PartFindings ByItself(Trial trial, PartFindings cell, InstrumentCauses instruments)
    {
        var found = CardBench.Findings(trial with { Card = TrialCard.Of(trial)!.Name }, instruments);
        var modelled = cell.Findings.Select(finding => finding.Quantity).ToHashSet(StringComparer.Ordinal);
        return new(trial.Part, [.. found.Findings.Where(finding => !modelled.Contains(finding.Quantity))], [], []);
    }

    /// <summary>Findings so that of each quantity the one that counts stands first: the surest. What belongs to a model of cell or working end stays with its model, whose numbers hang together.</summary>
    private static Finding[] InTheirOrder(IReadOnlyList<PartFindings> pieces)
    {
        var all = pieces.SelectMany(piece => piece.Findings.Select(finding => (Finding: finding, OfModel: piece.Cell is not null || piece.WarmUp is not null))).ToArray();
        return [.. all.GroupBy(one => one.Finding.Quantity, StringComparer.Ordinal)
            .SelectMany(group => group.OrderByDescending(one => one.OfModel).ThenBy(one => Doubt(one.Finding.Value)).Select(one => one.Finding))];
    }

    private static bool Surer(Estimate one, Estimate other) => Doubt(one) < Doubt(other);

    /// <summary>A finding without any doubt is one of which nobody said how well it was read: it is no surer than others.</summary>
    private static double Doubt(Estimate of) => of.SiDoubt > 0 ? of.SiDoubt : double.PositiveInfinity;
}

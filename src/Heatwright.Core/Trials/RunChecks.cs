namespace Heatwright.Trials;

/// <summary>What the checks say of one run while it is being taken: those of its fit, and the rules of its card.</summary>
public static class RunChecks
{
    /// <summary>What the rules of its card say of a run as a whole: that it did not rest, that its columns are changed round. Its readings are what the fit's own checks left standing.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="table">The run, read.</param>
    /// <param name="instruments">The meters.</param>
    internal static IEnumerable<Remark> OfWhole(Trial trial, ReadingTable table, InstrumentCauses instruments)
    {
        if (TrialCard.Of(trial) is not { } card || table.Count == 0)
        {
            return [];
        }

        var standing = table.Run with { Readings = [.. table.Run.Readings.Where(reading => table.Numbers.Contains(reading.Number))] };
        return TrialFits.OfWhole(card, CardBench.Input(card, standing, instruments)).Select(remark => new Remark(trial.Id, table.Run.Id, 0, $"{remark.Words} {remark.Remedy}".Trim(), Remark.Kept));
    }

    /// <summary>Remarks on the readings as they stand, first those that leave a reading out.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="run">The run.</param>
    /// <param name="instruments">The meters.</param>
    /// <param name="card">The card that tells how the trial is done; null: its fit's checks alone.</param>
    public static IReadOnlyList<Remark> Of(Trial trial, Run run, InstrumentCauses instruments, TrialCard? card)
    {
        List<Remark> remarks = trial.Kind == TrialKind.Bench ? [] : [.. ReadingTable.Read(run, trial).Remarks];
        if (card is not null && run.Readings.Count > 0)
        {
            var struck = run.Readings.Where(reading => reading.StruckBecause is not null).Select(reading => reading.Number).ToHashSet();
            var told = remarks.Where(remark => remark.Effect == Remark.LeftOut).Select(remark => remark.Reading).ToHashSet();

            // What is left out already is nothing to hold the others against.
            var standing = run with { Readings = [.. run.Readings.Select(reading => told.Contains(reading.Number) ? reading with { StruckBecause = reading.StruckBecause ?? "left out" } : reading)] };
            var said = TrialFits.Check(card.Name, CardBench.Input(card, standing, instruments));
            remarks.AddRange((said.IsFine ? said.Value : []).Where(remark => !struck.Contains(remark.Reading) && !(remark.LeftOut && told.Contains(remark.Reading)))
                .Select(remark => new Remark(trial.Id, run.Id, remark.Reading, $"{remark.Words} {remark.Remedy}".Trim(), remark.LeftOut && trial.Kind == TrialKind.Bench ? Remark.LeftOut : Remark.Kept)));
        }

        return [.. remarks, .. TypedTwice.Of(trial, run), .. UsualMeters.Told(trial with { Runs = [run] }, instruments)];
    }
}

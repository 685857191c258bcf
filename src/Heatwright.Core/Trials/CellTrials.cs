using System.Globalization;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Discharge and pulse trials of a cell to capacity, ohms and a cell model.</summary>
public static class CellTrials
{
    /// <summary>Where a problem lies that all trials of a cell share.</summary>
    public const string Where = "its trials";

    internal static PartFindings Findings(Part part, (Trial Trial, ReadingTable Table)[] read, InstrumentCauses instruments)
    {
        var logs = read.Select(pair => (pair.Trial, pair.Table, Log: Log(pair.Table))).Where(entry => entry.Log.Count >= 3).ToArray();
        List<Remark> remarks = [.. read.SelectMany(pair => pair.Table.Remarks)];
        var discharges = logs.Where(entry => entry.Trial.Kind == TrialKind.Discharge).OrderBy(entry => IsBrokenOff(entry.Table, entry.Log)).ThenBy(entry => Rate(entry.Log)).ToArray(); // the slowest that ends where the cell is empty
        var others = logs.Where(entry => discharges.Length == 0 || !Same(entry.Log, discharges[0].Log)).DistinctBy(entry => entry.Log, EqualityComparer<CellLog>.Create((one, other) => Same(one!, other!), log => log.Count)).ToArray();
        if (discharges.Length == 0 || !others.Any(entry => entry.Trial.Kind == TrialKind.Pulse || OtherCurrent(entry.Log, discharges[0].Log)))
        {
            string missing = discharges.Length == 0 ? "a discharge down to the cut-off (kind 'discharge', also called 'capacity')" : "a pulse run (kind 'pulse'), or a second discharge at another current";
            remarks.AddRange(discharges.SelectMany(entry => CutOffOf(entry.Trial, entry.Table, entry.Log).Remarks));
            return new(part.Id, [], remarks, [new Problem($"How the volts of cell '{part.Name}' fall is not known yet.", Where, $"{logs.Length} usable {(logs.Length == 1 ? "run" : "runs")}", "a discharge down to the cut-off and a run at another current", $"Take {missing}.")]);
        }

        if (discharges.All(entry => IsBrokenOff(entry.Table, entry.Log)))
        {
            // What is below the end of the log may be a tenth of the cell or most of it: no curve of its volts can be drawn over its charge.
            var (trial, table, log) = discharges[0];
            remarks.AddRange(discharges.SelectMany(entry => CutOffOf(entry.Trial, entry.Table, entry.Log).Remarks));
            double cutV = EmptyV(table, log)!.Value;
            return new(part.Id, [], remarks, [new Problem($"How the volts of cell '{part.Name}' fall is not known down to its end.", Where, FormattableString.Invariant($"the log of '{trial.Id}' ends at {log.Volts[^1]:0.00} V"),
                FormattableString.Invariant($"a discharge down to its cut-off of {cutV:0.00} V"), FormattableString.Invariant($"Charge it full and take the discharge again until {cutV:0.00} V; or, where this cell is empty above, say so with --set cut-off=...V."))]);
        }

        var slow = discharges[0];
        double mass = part.Best(PartQuantities.Mass)?.Si ?? 0.045;
        var cell = CellFit.Fit(slow.Log, [.. others.Select(entry => entry.Log)], mass);
        remarks.AddRange(others.Where(entry => FlatAtTheStart(cell.Cell, entry.Log)).Select(entry => new Remark(entry.Trial.Id, entry.Table.Run.Id, 0,
            "The volts of this cell hardly change with its charge where this run begins, so the charge it began with is a guess. Count the ampere-hours taken since it was full, and say them with --set taken-before=0.25Ah.", Remark.Kept)));
        RunId[] runs = [.. logs.Select(entry => entry.Table.Run.Id)];
        var origin = new Origin.Fitted(slow.Trial.Id, runs);
        var volts = slow.Table.Run.Columns.First(column => column.Name == "volts");
        var amps = slow.Table.Run.Columns.FirstOrDefault(column => column.Name == "amps");

        // The model keeps the whole log, that it knows the volts below; what the cell holds is told down to where the maker says that it is empty.
        var (takenC, atItsEnd) = CutOffOf(slow.Trial, slow.Table, slow.Log);
        remarks.AddRange(atItsEnd);
        double ah = (takenC ?? cell.Cell.CapacityC) / 3600;

        var capacityDoubts = Doubts.From(Cause.Normal($"{slow.Trial.Id} capacity scatter", CauseGroup.Trial), 0.005 * ah);
        if (EmptyV(slow.Table, slow.Log) is { } emptyV)
        {
            capacityDoubts = capacityDoubts.With(EndOfDischarge.Cause(origin), EndOfDischarge.Missing(slow.Log.Volts, slow.Log.ChargeC(), emptyV) * ah / Math.Sqrt(3));
        }

        foreach (var cut in slow.Table.Cuts.Where(cut => cut.From > 0 && cut.From < slow.Table.Count))
        {
            // While nobody looked, the amps of both sides flowed on.
            double[] flowed = Amps(slow.Table, slow.Table["volts"]);
            double across = (flowed[cut.From - 1] + flowed[cut.From]) / 2;
            capacityDoubts = capacityDoubts.With(Cause.Normal(string.Create(CultureInfo.InvariantCulture, $"{slow.Table.Run.Id} film cut before row {cut.From + 1}"), CauseGroup.Assumption), double.IsFinite(across) ? across * cut.DoubtS / 3600 : 0);
        }

        if (amps is null && slow.Table.Run.SettingDoubt("load") is > 0 and var loadOhm)
        {
            // More ohms than said are fewer amps than counted.
            capacityDoubts = capacityDoubts.With(Cause.Rectangular($"{slow.Table.Run.Id} load", CauseGroup.Assumption), -loadOhm / slow.Table.Run.Setting("load", double.NaN) * ah);
        }

        double ohm = cell.Cell.R0Ohm.At(0.5) + cell.Cell.R1Ohm.At(0.5) + cell.Cell.R2Ohm.At(0.5);
        var ohmDoubts = Doubts.From(Cause.Normal($"{others[0].Trial.Id} ohms scatter", CauseGroup.Trial), cell.LogOhmsDoubt * ohm)
            .With(Cause.Normal($"{part.Name}: form of the cell model", CauseGroup.Assumption), CellFit.FormDoubt * ohm);
        var openDoubts = Doubts.From(Cause.Normal($"{slow.Trial.Id} open volts misfit", CauseGroup.Trial), Math.Max(0.002, cell.MisfitV));
        if (amps is not null && instruments.Gain(amps) is var (ampsGain, ampsShare))
        {
            capacityDoubts = capacityDoubts.With(ampsGain, ampsShare * ah);
            ohmDoubts = ohmDoubts.With(ampsGain, -ampsShare * ohm);
        }

        if (instruments.Gain(volts) is var (voltsGain, voltsShare))
        {
            ohmDoubts = ohmDoubts.With(voltsGain, voltsShare * ohm);
            openDoubts = openDoubts.With(voltsGain, voltsShare * cell.Cell.OpenV.At(0.5));
        }

        if (instruments.Offset(volts) is var (voltsOffset, offsetSi))
        {
            openDoubts = openDoubts.With(voltsOffset, offsetSi);
        }

        List<Finding> findings =
        [
            new(part.Id, PartQuantities.Capacity, new Estimate(ah, Units.AmpereHour, capacityDoubts, origin)),
            new(part.Id, PartQuantities.Ohms, new Estimate(ohm, Units.Ohm, ohmDoubts, origin)),
            new(part.Id, CellQuantities.OpenVolts, new Estimate(cell.Cell.OpenV.At(0.5), Units.Volt, openDoubts, origin)),
        ];
        return new(part.Id, findings, remarks, [])
        {
            Cell = cell,
            Pictures =
            [
                new($"Discharge, {part.Name}", "time", "s", "volts", "V", slow.Log.TimesS, slow.Log.Volts, []),
                .. others.Select((entry, i) => new FitPicture($"{entry.Trial.Id}, {part.Name}", "time", "s", "volts", "V", entry.Log.TimesS, entry.Log.Volts, cell.ModelledV[i]) { Doubt = cell.ModelledDoubtV[i] }),
            ],
        };
    }

    /// <summary>True where ten millivolts either way, what a cell that rested for minutes may still be off, are more than a tenth of its charge (our choice).</summary>
    private static bool FlatAtTheStart(CellModel cell, CellLog log)
    {
        const double Off = 0.010;
        double At(double volts) => CellBench.ChargeAt(cell, volts, log.Amps[0]);
        return log.TakenBeforeC is null && CellBench.StartCharge(cell, log) < 0.95 && At(log.Volts[0] + Off) - At(log.Volts[0] - Off) > 0.1;
    }

    /// <summary>Setting of a run: where its cell is empty, V.</summary>
    private const string CutOff = "cut-off";

    /// <summary>A single cell begins below these volts: of anything else nobody knows where it is empty, unless it is said.</summary>
    private const double MostOfOneCellV = 4.5;

    /// <summary>Where a cell is empty, V: as is said of the run, else what the card takes for a single cell; null: nothing is said, or the log begins there.</summary>
    private static double? EmptyV(ReadingTable table, CellLog log)
    {
        double? said = table.Run.Settings.TryGetValue(CutOff, out double cutV) ? cutV
            : log.Volts[0] < MostOfOneCellV ? TrialCard.Find("capacity")!.Settings.First(setting => setting.Name == CutOff).Default : null;
        return said < log.Volts[0] ? said : null;
    }

    /// <summary>True where a discharge was ended well above its cut-off.</summary>
    private static bool IsBrokenOff(ReadingTable table, CellLog log) => EmptyV(table, log) is { } cutV && double.IsNaN(EndOfDischarge.Missing(log.Volts, log.ChargeC(), cutV));

    /// <summary>Charge taken down to the stated cut-off, coulomb, and what to mind where the log does not reach it; null: none is stated, or it does not reach.</summary>
    private static (double? TakenC, Remark[] Remarks) CutOffOf(Trial trial, ReadingTable table, CellLog log)
    {
        bool said = table.Run.Settings.TryGetValue(CutOff, out double saidV);
        if (said && TakenTo(log, saidV) is { } takenC)
        {
            return (takenC, []);
        }

        string? mind = said && log.Volts[0] <= saidV
            ? FormattableString.Invariant($"The log begins at {log.Volts[0]:0.00} V, not above its cut-off of {saidV:0.00} V: all of it is counted. Say where this cell is empty with --set cut-off=...V.")
            : IsBrokenOff(table, log) && EmptyV(table, log) is { } cutV
            ? FormattableString.Invariant($"The log ends at {log.Volts[^1]:0.00} V, above its cut-off of {cutV:0.00} V: the capacity is a lower bound. Go on until {cutV:0.00} V, or say where this cell is empty with --set cut-off=...V.") : null;
        return (null, mind is null ? [] : [new(trial.Id, table.Run.Id, 0, mind, Remark.Kept)]);
    }

    /// <summary>The same log taken in twice tells nothing new.</summary>
    private static bool Same(CellLog one, CellLog other) => one == other || (one.TimesS.SequenceEqual(other.TimesS) && one.Volts.SequenceEqual(other.Volts) && one.Amps.SequenceEqual(other.Amps));

    /// <summary>True where two runs were drawn at currents far enough apart to tell ohms from open volts: an eighth (our choice).</summary>
    private static bool OtherCurrent(CellLog one, CellLog other)
    {
        double a = one.ChargeC()[^1] / (one.TimesS[^1] - one.TimesS[0]), b = other.ChargeC()[^1] / (other.TimesS[^1] - other.TimesS[0]);
        return Math.Abs(a - b) > Math.Max(Math.Abs(a), Math.Abs(b)) / 8;
    }

    /// <summary>Charge taken when the volts first pass the cut-off, coulomb; straight lines between rows. Null: they never do, or stand below it from the start.</summary>
    private static double? TakenTo(CellLog log, double cutV)
    {
        double[] taken = log.ChargeC();
        int past = Array.FindIndex(log.Volts, volts => volts <= cutV);
        if (past < 1)
        {
            return null;
        }

        double share = (log.Volts[past - 1] - cutV) / (log.Volts[past - 1] - log.Volts[past]);
        double ampsThere = log.Amps[past - 1] + (share * (log.Amps[past] - log.Amps[past - 1]));
        return taken[past - 1] + ((log.Amps[past - 1] + ampsThere) / 2 * share * (log.TimesS[past] - log.TimesS[past - 1]));
    }

    /// <summary>Mean current over charge taken, 1/s: the slower the smaller.</summary>
    private static double Rate(CellLog log) => 1 / (log.TimesS[^1] - log.TimesS[0]);

    /// <summary>Amps as read, or through a resistor of known ohms.</summary>
    private static double[] Amps(ReadingTable table, double[] volts) => table.Has("amps") ? AmpsOnce.Filled(volts, table["amps"]) : [.. volts.Select(v => v / table.Run.Setting("load", double.NaN))];

    private static CellLog Log(ReadingTable table)
    {
        double[] time = table["time"], volts = table["volts"], amps = Amps(table, volts);
        double[] degrees = table.Has("cell degrees") ? table["cell degrees"] : [.. time.Select(_ => double.NaN)];
        int[] rows = [.. Enumerable.Range(0, table.Count).Where(i => double.IsFinite(time[i] + volts[i] + amps[i]) && (i == 0 || time[i] > time[i - 1]))];
        return new(table.Run.Id.Name, [.. rows.Select(i => time[i])], [.. rows.Select(i => amps[i])], [.. rows.Select(i => volts[i])],
            [.. rows.Select(i => degrees[i])], table.Run.Setting("air", 20))
        {
            TakenBeforeC = table.Run.Settings.TryGetValue("taken before", out double taken) ? taken : null,
        };
    }
}

/// <summary>Names of findings that only cells have.</summary>
public static class CellQuantities
{
    /// <summary>Open-circuit volts at half charge.</summary>
    public const string OpenVolts = "open volts at half charge";

    /// <summary>Ohms that the shortest step of a pulse run shows, where no model of the cell tells them.</summary>
    public const string FirstOhms = "ohms in the first seconds";
}

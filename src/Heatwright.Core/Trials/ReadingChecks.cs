using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Sanity checks on the numbers of a run before any fit: slips of a thousand, loose clips, readings that cannot be.</summary>
internal static class ReadingChecks
{
    /// <summary>A clip that works loose costs tenths of a volt; less is sag or noise.</summary>
    private const double ClipV = 0.15;

    /// <summary>A leap of degrees that is no noise, K.</summary>
    private const double LeapK = 15;

    public static bool[] Suspects(Trial trial, Run run, List<Reading> kept, List<double[]> rows, List<Remark> remarks)
    {
        bool[] suspect = new bool[rows.Count];
        for (int column = 0; column < run.Columns.Count; column++)
        {
            if (run.Columns[column].Name is not "time")
            {
                Slips(trial, run, kept, rows, column, suspect, remarks);
            }
        }

        Swapped(trial, run, kept, rows, suspect, remarks);
        Contacts(trial, run, kept, rows, suspect, remarks);
        Leaps(trial, run, kept, rows, suspect, remarks);
        LooseClips(trial, run, kept, rows, suspect, remarks);
        Impossible(trial, run, kept, rows, suspect, remarks);
        return suspect;
    }

    /// <summary>A value about a thousand times off what stands around it: a unit slip.</summary>
    private static void Slips(Trial trial, Run run, List<Reading> kept, List<double[]> rows, int column, bool[] suspect, List<Remark> remarks)
    {
        if (run.Columns[column].Name.Contains("degrees", StringComparison.Ordinal))
        {
            return;
        }

        if (rows.Count == 2 && Math.Log10(Math.Abs(rows[1][column] / rows[0][column])) is var apart && (IsThousand(apart) || IsTen(trial, apart)))
        {
            // Of two it cannot be told which, unless one was typed with its unit and the other was not.
            bool[] said = [.. kept.Select(reading => WithUnit(reading.Raw[column]))];
            if (IsThousand(apart) && said[0] != said[1])
            {
                int bare = said[0] ? 1 : 0;
                suspect[bare] = true;
                remarks.Add(new(trial.Id, run.Id, kept[bare].Number,
                    $"{run.Columns[column].Name} '{kept[bare].Raw[column]}' counts in {run.Columns[column].Unit} and is about {((bare == 1) == (apart > 0) ? "a thousand times" : "a thousandth of")} '{kept[1 - bare].Raw[column]}': its unit forgotten? Type it again with its unit.", Remark.LeftOut));
                return;
            }

            remarks.Add(new(trial.Id, run.Id, kept[1].Number,
                $"{run.Columns[column].Name} '{kept[0].Raw[column]}' and '{kept[1].Raw[column]}' are about {(IsThousand(apart) ? "a thousand times apart: unit slip" : "ten times apart: decimal point")} in one of them? Type both with their unit.", Remark.Kept));
            return;
        }

        // A load that is switched on and off has readings near nothing on purpose.
        double largest = rows.Select(row => Math.Abs(row[column])).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        bool rests = rows.Count(row => Math.Abs(row[column]) < largest / 100) >= 3;
        for (int row = 0; row < rows.Count; row++)
        {
            double value = Math.Abs(rows[row][column]);
            double[] around = [.. Neighbours(rows, row, 4).Select(r => Math.Abs(rows[r][column])).Where(v => double.IsFinite(v) && v > 0)];
            // Two that agree with each other tell as much as three that do not.
            if (around.Length < 2 || (around.Length == 2 && around.Max() > 2 * around.Min()))
            {
                continue;
            }

            double decades = Math.Log10(value / Sample.Median(around));
            if (IsTen(trial, decades) || (AreTen(decades) && HoldTogether(around) && IsHeld(trial, run, rows, row, column)))
            {
                suspect[row] = true;
                remarks.Add(new(trial.Id, run.Id, kept[row].Number,
                    $"{run.Columns[column].Name} '{kept[row].Raw[column]}' is about {(decades < 0 ? "a tenth of" : "ten times")} what stands around it: decimal point?{Meant(decades < 0 ? 10 : 0.1)}", Remark.LeftOut));
                continue;
            }

            if (IsThousand(decades) && !(rests && decades < 0))
            {
                suspect[row] = true;
                string often = decades < 0 ? "a thousandth of" : "a thousand times";
                remarks.Add(new(trial.Id, run.Id, kept[row].Number,
                    $"{run.Columns[column].Name} '{kept[row].Raw[column]}' is about {often} what stands around it: unit slip?{Meant(decades < 0 ? 1000 : 0.001)}", Remark.LeftOut));
            }

            string Meant(double times) => $" Where {Display.Significant(times * rows[row][column], 6)} {run.Columns[column].Unit} was meant, type that.";
        }
    }

    /// <summary>True where a unit was typed behind the number: '73mV'. A letter for the decimal mark, as in '7k42', is none.</summary>
    private static bool WithUnit(string raw) => raw.Trim() is { Length: > 1 } text && char.IsLetter(text[^1]) && !"kKmMuR\u00B5\u03BC".Contains(text[^1], StringComparison.Ordinal);

    /// <summary>Volts and amps of a reading that are those of the others the other way round.</summary>
    private static void Swapped(Trial trial, Run run, List<Reading> kept, List<double[]> rows, bool[] suspect, List<Remark> remarks)
    {
        foreach (string side in new[] { "", " in", " out" })
        {
            int volts = Index(run, $"volts{side}"), amps = Index(run, $"amps{side}");
            double[] v = volts < 0 || amps < 0 ? [] : [.. rows.Select(row => row[volts])], a = v.Length == 0 ? [] : [.. rows.Select(row => row[amps])];
            var pairs = new SwappedPairs(TrialCard.Of(trial)?.Name ?? "", v, a, r => suspect[r]);
            int[] swapped = [.. Enumerable.Range(0, v.Length).Where(pairs.Is)];
            foreach (int row in swapped)
            {
                suspect[row] = true;
                string typedV = kept[row].Raw[volts], typedA = kept[row].Raw[amps];
                remarks.Add(new(trial.Id, run.Id, kept[row].Number,
                    $"volts{side} '{typedV}' and amps{side} '{typedA}' are off the readings around, and changed round they are like those: swapped? Type it again as {typedA} V and {typedV} A.", Remark.LeftOut));
            }
        }
    }

    /// <summary>The same ohms read again and again: ten times as many are a decimal point, and nothing else.</summary>
    private static bool IsTen(Trial trial, double decades) => trial.Kind == TrialKind.ColdOhms && AreTen(decades);

    private static bool AreTen(double decades) => Math.Abs(Math.Abs(decades) - 1) < 0.15;

    /// <summary>Volts that nobody changed: those of a cell at any current, and others while their current is what it was. A supply that is turned down takes the amps with it.</summary>
    private static bool IsHeld(Trial trial, Run run, List<double[]> rows, int row, int column)
    {
        string name = run.Columns[column].Name;
        if (name is not ("volts" or "volts in" or "volts out"))
        {
            return false;
        }

        if (trial.Kind is TrialKind.Discharge or TrialKind.Pulse)
        {
            return true;
        }

        int amps = Index(run, name.Replace("volts", "amps", StringComparison.Ordinal));
        double[] around = amps < 0 ? [] : [.. Neighbours(rows, row, 4).Select(r => Math.Abs(rows[r][amps])).Where(double.IsFinite)];
        return around.Length > 0 && Sample.Median(around) is var middle && Math.Abs(rows[row][amps]) is var here && here < 1.5 * middle && here > middle / 1.5;
    }

    /// <summary>Readings near each other; one beside them may be wrong too.</summary>
    private static bool HoldTogether(double[] around)
    {
        double middle = Sample.Median(around);
        int near = around.Count(value => value < 1.5 * middle && value > middle / 1.5);
        return near >= 3 && near >= around.Length - 1;
    }

    /// <summary>Drops at several currents are compared by their ohms: a contact is never ten times better for one reading, but may well be worse.</summary>
    private static void Contacts(Trial trial, Run run, List<Reading> kept, List<double[]> rows, bool[] suspect, List<Remark> remarks)
    {
        int amps = Index(run, "amps");
        int drop = Index(run, "drop");
        if (trial.Kind != TrialKind.TwoPointDrop || amps < 0 || drop < 0)
        {
            return;
        }

        double[] ohms = [.. rows.Select((row, i) => suspect[i] ? double.NaN : Math.Abs(row[drop] / row[amps]))];
        for (int row = 0; row < rows.Count; row++)
        {
            double[] others = [.. ohms.Where((ohm, i) => i != row && double.IsFinite(ohm) && ohm > 0)];
            if (!(double.IsFinite(ohms[row]) && ohms[row] > 0) || others.Length < 2 || others.Max() > 1.5 * others.Min())
            {
                continue;
            }

            double decades = Math.Log10(ohms[row] / Sample.Median(others));
            string typed = $"drop '{kept[row].Raw[drop]}' at '{kept[row].Raw[amps]}'";
            if (decades < -0.85)
            {
                suspect[row] = true;
                remarks.Add(new(trial.Id, run.Id, kept[row].Number,
                    $"{typed} is about {(decades < -2.5 ? "a thousandth" : decades < -1.5 ? "a hundredth" : "a tenth")} of what the others make of the same contact: decimal point, or unit? Type it again in {run.Columns[drop].Unit}.", Remark.LeftOut));
            }
            else if (decades > 0.85)
            {
                remarks.Add(new(trial.Id, run.Id, kept[row].Number,
                    $"{typed} is about {(decades > 2.5 ? "a thousand" : decades > 1.5 ? "a hundred" : "ten")} times what the others make of the same contact: a contact that worked loose, or a decimal point? Read it again, and strike it out if it was the decimal point.", Remark.Kept));
            }
        }
    }

    /// <summary>Degrees that leap there and back between two readings that agree with each other: nothing that has a heat capacity does that.</summary>
    private static void Leaps(Trial trial, Run run, List<Reading> kept, List<double[]> rows, bool[] suspect, List<Remark> remarks)
    {
        int degrees = Index(run, "degrees"), time = Index(run, "time");
        if (trial.Kind != TrialKind.WarmUp || degrees < 0 || time < 0)
        {
            return;
        }

        int[] read = [.. Enumerable.Range(0, rows.Count).Where(row => !suspect[row] && double.IsFinite(rows[row][degrees]))];
        for (int i = 1; i < read.Length - 1; i++)
        {
            double before = rows[read[i - 1]][degrees], here = rows[read[i]][degrees], after = rows[read[i + 1]][degrees];
            double off = Math.Min(Math.Abs(here - before), Math.Abs(here - after));
            if (off > LeapK + (3 * Math.Abs(after - before)))
            {
                double middle = (before + after) / 2;
                bool point = Math.Abs((here * 10) - middle) < 0.2 * Math.Abs(middle) || Math.Abs((here / 10) - middle) < 0.2 * Math.Abs(middle);
                suspect[read[i]] = true;
                remarks.Add(new(trial.Id, run.Id, kept[read[i]].Number,
                    $"degrees '{kept[read[i]].Raw[degrees]}' stand between '{kept[read[i - 1]].Raw[degrees]}' and '{kept[read[i + 1]].Raw[degrees]}': {(point ? "decimal point?" : "probe off its place, or a slip?")} Type it again.", Remark.LeftOut));
            }
        }
    }

    private static bool IsThousand(double decades) => Math.Abs(Math.Abs(decades) - 3) < 0.25;

    /// <summary>Volts that drop for one or two readings while the current stays: a clip worked loose.</summary>
    private static void LooseClips(Trial trial, Run run, List<Reading> kept, List<double[]> rows, bool[] suspect, List<Remark> remarks)
    {
        int volts = Index(run, "volts");
        int amps = Index(run, "amps");
        if (rows.Count == 0 || volts < 0 || amps < 0 || trial.Kind is not (TrialKind.Discharge or TrialKind.Pulse))
        {
            return;
        }

        // A reading that is wrong itself says nothing of those beside it.
        double most = rows.Where((_, row) => !suspect[row]).Select(row => Math.Abs(row[amps])).Where(double.IsFinite).DefaultIfEmpty(0).Max();
        for (int row = 0; row < rows.Count; row++)
        {
            // A sag has lower volts after it; a loose clip has higher volts on both sides.
            double[] before = Around(row, -1);
            double[] after = Around(row, +1);
            if (suspect[row] || before.Length < 2 || after.Length < 2 || !double.IsFinite(rows[row][volts]))
            {
                continue;
            }

            double off = Math.Min(Sample.Median(before), Sample.Median(after)) - rows[row][volts];
            if (off > ClipV)
            {
                suspect[row] = true;
                double ohm = off / Math.Max(1e-6, Math.Abs(rows[row][amps]));
                remarks.Add(new(trial.Id, run.Id, kept[row].Number, string.Create(CultureInfo.InvariantCulture,
                    $"{rows[row][volts]:0.00} V at {rows[row][amps]:0.00} A lies {off:0.00} V under its neighbours at the same current, {ohm * 1000:0} mΩ more: clip loose?"), Remark.LeftOut));
            }
        }

        double[] Around(int row, int way) => [.. Enumerable.Range(1, 4).Select(step => row + (way * step)).Where(r => r >= 0 && r < rows.Count)
            .Where(r => !suspect[r] && Math.Abs(rows[r][amps] - rows[row][amps]) < 0.1 * most && double.IsFinite(rows[r][volts])).Select(r => rows[r][volts])];
    }

    private static void Impossible(Trial trial, Run run, List<Reading> kept, List<double[]> rows, bool[] suspect, List<Remark> remarks)
    {
        for (int column = 0; column < run.Columns.Count; column++)
        {
            string name = run.Columns[column].Name;
            for (int row = 0; row < rows.Count; row++)
            {
                double value = rows[row][column];
                bool below = name is "ohms" or "time" or "volts in" or "volts out";
                bool never = (below && value < 0) || (name.Contains("degrees", StringComparison.Ordinal) && value is < -60 or > 2000);
                if (never)
                {
                    suspect[row] = true;
                    remarks.Add(new(trial.Id, run.Id, kept[row].Number, $"{name} '{kept[row].Raw[column]}' {run.Columns[column].Unit} cannot be. Check sign, range and leads.", Remark.LeftOut));
                }
            }
        }
    }

    private static IEnumerable<int> Neighbours(List<double[]> rows, int row, int each) =>
        Enumerable.Range(row - each, (2 * each) + 1).Where(r => r != row && r >= 0 && r < rows.Count);

    private static int Index(Run run, string name)
    {
        for (int i = 0; i < run.Columns.Count; i++)
        {
            if (run.Columns[i].Name == name)
            {
                return i;
            }
        }

        return -1;
    }
}

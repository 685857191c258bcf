using Heatwright.Numerics;

namespace Heatwright.Trials;

/// <summary>Amps that were noted once, with the load on: the same amps flow in every other row in which the volts tell that the load is on, and none where they tell that it is off.</summary>
internal static class AmpsOnce
{
    /// <summary>The sheet with its amps in all rows; as it is where more than one reading of them or no blank stands there.</summary>
    public static TrialSheet Filled(TrialSheet sheet)
    {
        double[] volts = sheet["volts"], amps = sheet["amps"];
        int[] noted = [.. Enumerable.Range(0, sheet.Count).Where(i => amps[i] > 0)];
        if (noted is not [var once] || !double.IsFinite(volts[once]) || On(volts, amps) is not { } on)
        {
            return sheet;
        }

        // Into most loads the amps go with the volts: by as much they may differ from those that were noted.
        double[] loaded = [.. Enumerable.Range(0, sheet.Count).Where(i => on[i] == true).Select(i => volts[i])];
        double follow = amps[once] * (loaded.Max() - loaded.Min()) / volts[once] / Math.Sqrt(3);
        double[] own = [.. sheet.Own("amps").Select((u, i) => i == once ? Math.Sqrt((u * u) + (follow * follow)) : 0)];
        int number = sheet.Numbers[once];
        TrialSheet Fill(TrialSheet s)
        {
            double[] there = s["amps"];
            int at = Array.IndexOf(s.Numbers, number);
            double flowing = at < 0 ? amps[once] : there[at];
            return s.Derived("amps", [.. there.Select((value, i) => on[Array.IndexOf(sheet.Numbers, s.Numbers[i])] switch { true => flowing, false => 0, _ => value })], [.. s.Numbers.Select(n => own[Array.IndexOf(sheet.Numbers, n)])], moved => Fill(moved));
        }

        return Fill(sheet).Saying($"The amps were noted once, in reading {number}: as many flow in every reading whose volts lie with that one's, none in the others.");
    }

    /// <summary>Amps of every row, of those too that were noted once.</summary>
    /// <param name="volts">Volts of the cell.</param>
    /// <param name="amps">Amps; not a number where none were noted.</param>
    public static double[] Filled(double[] volts, double[] amps) => On(volts, amps) is { } on
        ? [.. amps.Select((value, i) => double.IsFinite(value) || on[i] is null ? value : on[i] == true ? amps.Max(one => double.IsFinite(one) ? one : 0) : 0)] : amps;

    /// <summary>Per row: the load is on, it is off, or (null) its amps stand there or its volts do not. Null: no amps are missing, or no volts tell on from off.</summary>
    /// <param name="volts">Volts of the cell.</param>
    /// <param name="amps">Amps; not a number where none were noted.</param>
    public static bool?[]? On(double[] volts, double[] amps)
    {
        int[] noted = [.. Enumerable.Range(0, amps.Length).Where(i => amps[i] > 0)];
        if (noted.Length != 1 || !Enumerable.Range(0, amps.Length).Any(i => double.IsNaN(amps[i]) && double.IsFinite(volts[i])))
        {
            return null;
        }

        double loaded = volts[noted[0]], rest = volts.Where(double.IsFinite).Max(), middle = (loaded + rest) / 2;
        return rest > loaded ? [.. volts.Select((v, i) => double.IsFinite(amps[i]) || double.IsNaN(v) ? i == noted[0] ? true : null : (bool?)(v < middle))] : null;
    }
}

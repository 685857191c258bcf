using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>How the ohms of a heater grow with heat: from hot ohms, or from the hottest rows of a warm-up, against cold ones.</summary>
internal static class HotOhmsBench
{
    private const double ReferenceC = 20;

    private static readonly string[] BesideNames = ["burden", "leads"];

    /// <summary>Rows of a warm-up within a seventh of its highest rise count as hot: our choice.</summary>
    private const double NearlyHottest = 6.0 / 7;

    /// <summary>A probe pressed on lags this long at least, s: common practice, no source.</summary>
    private const double LeastLagS = 1;

    /// <summary>Temperature coefficient from one hot point or more against the cold ohms, referred to 20 °C.</summary>
    public static PartFindings HotOhms(Trial trial, ReadingTable table, InstrumentCauses instruments, Estimate? cold, double coldC)
    {
        if (cold is null)
        {
            return None(trial, table, "the cold ohms of this heater are not known", "none", "a trial of cold ohms");
        }

        int[] rows = Hot(table, coldC);
        return rows.Length == 0
            ? None(trial, table, "no hot reading is left", "0", "1 or more, 50 K above cold")
            : new(trial.Part, [Coefficient(trial, table, instruments, cold, coldC, rows, 0)], [.. table.Remarks, .. Open(trial, table)], []);
    }

    /// <summary>The same from the hottest rows of a warm-up, for a heater of which nobody took hot ohms: how far the probe may lag behind the heater there is a doubt of it.</summary>
    public static PartFindings HotOhmsOfWarmUp(Trial trial, ReadingTable table, InstrumentCauses instruments, Estimate cold, double coldC, double lagS)
    {
        double[] time = table["time"], degrees = table["degrees"];
        double offS = table.Run.Setting("off", double.PositiveInfinity);
        int[] hot = [.. Hot(table, coldC).Where(i => time[i] < offS)];
        int[] rows = hot.Length == 0 ? [] : [.. hot.Where(i => degrees[i] - coldC > NearlyHottest * (hot.Max(k => degrees[k]) - coldC))];
        if (rows.Length == 0)
        {
            return new(trial.Part, [], [], []);
        }

        double climbs = rows[^1] > rows[0] ? Math.Abs(degrees[rows[^1]] - degrees[rows[0]]) / (time[rows[^1]] - time[rows[0]]) : 0;
        return new(trial.Part, [Coefficient(trial, table, instruments, cold, coldC, rows, climbs * Math.Max(lagS, LeastLagS))], [], []);
    }

    /// <summary>What is open about where the volts of a run were read.</summary>
    public static Remark[] Open(Trial trial, ReadingTable table) =>
        table.Has("volts") && table.Has("amps") && VoltsAt.Open(table.Run.Setting) is { } open ? [new(trial.Id, table.Run.Id, 0, open, Remark.Kept)] : [];

    /// <summary>True where somebody read the heater's degrees beside its volts and amps.</summary>
    public static bool TellsDegrees(ReadingTable table) => table.Has("degrees") && table["degrees"].Any(double.IsFinite);

    /// <summary>Rows that tell ohms at least 50 K above cold.</summary>
    private static int[] Hot(ReadingTable table, double coldC)
    {
        double[] volts = table["volts"], amps = table["amps"], degrees = table["degrees"];
        double beside = Beside(table);
        return [.. Enumerable.Range(0, table.Count).Where(i => amps[i] != 0 && volts[i] / amps[i] > beside && double.IsFinite(degrees[i]) && degrees[i] > coldC + 50)];
    }

    private static double Beside(ReadingTable table) => VoltsAt.BesideOhm(table.Run.Setting);

    private static Finding Coefficient(Trial trial, ReadingTable table, InstrumentCauses instruments, Estimate cold, double coldC, int[] rows, double behindK)
    {
        double[] volts = table["volts"], amps = table["amps"], degrees = table["degrees"];
        double Alpha(double coldOhm, string moved, double gain, double offset, double besideMoreOhm = 0)
        {
            double beside = Beside(table) + besideMoreOhm;
            double sum = 0;
            foreach (int i in rows)
            {
                double v = Moved(volts[i], "volts"), a = Moved(amps[i], "amps"), c = Moved(degrees[i], "degrees");
                double about = ((((v / a) - beside) / coldOhm) - 1) / (c - coldC);
                sum += about / (1 + (about * (ReferenceC - coldC)));
                double Moved(double value, string name) => name == moved ? (value * (1 + gain)) + offset : value;
            }

            return sum / rows.Length;
        }

        double middle = Alpha(cold.Si, "", 0, 0);
        double slope = (Alpha(cold.Si * 1.0001, "", 0, 0) - middle) / (cold.Si * 0.0001);
        var doubts = cold.Doubts.Times(slope);
        foreach (var (cause, push) in FitDoubts.FromInstruments(table.Run, instruments, [middle], (name, gain, offset) => [Alpha(cold.Si, name, gain, offset)]))
        {
            doubts = doubts.With(cause, push[0]);
        }

        foreach (string name in BesideNames.Where(name => table.Run.SettingDoubt(name) > 0))
        {
            doubts = doubts.With(Cause.Rectangular($"{table.Run.Id} {name}", CauseGroup.Assumption), Alpha(cold.Si, "", 0, 0, table.Run.SettingDoubt(name)) - middle);
        }

        double rise = degrees[rows[0]] - coldC;
        doubts = doubts.With(Cause.Normal($"{trial.Id} scatter", CauseGroup.Trial), 0.003 / rise / Math.Sqrt(rows.Length));
        if (behindK > 0)
        {
            doubts = doubts.With(Cause.Normal($"{trial.Id} heater ahead of the probe", CauseGroup.Assumption), middle * behindK / rise);
        }

        return new(trial.Part, PartQuantities.Alpha, new Estimate(middle, Units.PerKelvin, doubts, new Origin.Fitted(trial.Id, [table.Run.Id])));
    }

    public static PartFindings None(Trial trial, ReadingTable table, string what, string value, string limit) =>
        new(trial.Part, [], table.Remarks, [new Problem($"Trial '{trial.Id}' gives no finding: {what}.", $"run '{table.Run.Id}'", value, limit, "Take the missing reading, or correct the struck and refused ones.")]);
}

using System.Globalization;
using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Warm-up trials of a working end to heat capacity, losses, lag and what reaches the grip.</summary>
internal static class WarmUpTrials
{
    private static readonly (string Searched, string Quantity, Unit Unit)[] Told =
    [
        ("heat capacity", PartQuantities.HeatCapacity, Units.JoulePerKelvin),
        ("linear loss", PartQuantities.LinearLoss, Units.WattPerKelvin),
        ("radiating area", PartQuantities.Radiating, Units.SquareMetre),
        ("lag", PartQuantities.Lag, Units.Second),
        ("grip link", PartQuantities.GripLink, Units.WattPerKelvin),
        ("grip heat capacity", PartQuantities.GripHeatCapacity, Units.JoulePerKelvin),
        ("grip loss", PartQuantities.GripLoss, Units.WattPerKelvin),
    ];

    /// <summary>Settings of a run whose doubt, where one was said, is a doubt of the fit.</summary>
    private static readonly string[] Believed = ["air", "burden", "leads"];

    public static PartFindings Findings(Part part, (Trial Trial, ReadingTable Table)[] read, InstrumentCauses instruments)
    {
        List<Remark> remarks = [.. read.SelectMany(pair => pair.Table.Remarks), .. read.SelectMany(pair => HotOhmsBench.Open(pair.Trial, pair.Table))];
        var usable = read.Where(pair => pair.Table["degrees"].Count(double.IsFinite) >= 5).ToArray();
        if (usable.Length == 0)
        {
            return HotOhmsBench.None(read[0].Trial, read[0].Table, "fewer than five readings of degrees are left", "under 5", "5 or more") with { Remarks = remarks };
        }

        // What leaves a lamp as light heats nothing, and is no power of the fit; how much it is goes by the amps.
        var light = part.Kind == PartKind.Lamp ? LampLight.WattsPerAmp(part) : null;
        if (light is not null && usable.Where(pair => !pair.Table.Has("amps")).Take(1).ToArray() is [var (dark, table)])
        {
            return HotOhmsBench.None(dark, table, "what leaves a lamp as light goes by its amps, and they were not read", "watts alone", "volts and amps") with { Remarks = remarks };
        }

        double lightV = light?.Si ?? 0;
        WarmUpLog[] logs = [.. usable.Select(pair => Log(pair.Table, instruments, lightV))];
        var found = WarmUpFit.Fit(logs);
        for (int l = 0; l < logs.Length; l++)
        {
            for (int row = 0; row < found.Scores[l].Length; row++)
            {
                if (found.Scores[l][row] > 6)
                {
                    remarks.Add(new(usable[l].Trial.Id, usable[l].Table.Run.Id, logs[l].Numbers[row], Off(logs[l].EndC[row], found.ModelledC[l][row], logs[l].AirC), Remark.LeftOut));
                }
            }
        }

        var values = Values(found);
        var origin = new Origin.Fitted(usable[0].Trial.Id, [.. usable.Select(pair => pair.Table.Run.Id)]);
        int n = found.Searched.Count;
        double[,] slopes = new double[values.Count, n];
        for (int v = 0; v < values.Count; v++)
        {
            slopes[v, v] = values[v].Si; // searched as logarithms: dx = x · d(ln x)
        }

        var doubts = FitDoubts.FromCovariance(usable[0].Trial.Id, found.LogCovariance, slopes);
        double[] middle = [.. values.Select(value => value.Si)];
        foreach (var (cause, push) in FitDoubts.FromInstruments(usable[0].Table.Run, instruments, middle, (name, gain, offset) => Refit(usable, instruments, found, lightV, name, gain, offset)))
        {
            for (int v = 0; v < values.Count; v++)
            {
                doubts[v] = doubts[v].With(cause, push[v]);
            }
        }

        foreach (var (run, cut) in usable.SelectMany((pair, run) => pair.Table.Cuts.Select(cut => (run, cut))))
        {
            double[] moved = [.. Values(WarmUpFit.FitAs([.. usable.Select((pair, r) => Log(r == run ? pair.Table.Longer(cut) : pair.Table, instruments, lightV))], found)).Select(value => value.Si)];
            for (int v = 0; v < values.Count; v++)
            {
                doubts[v] = doubts[v].With(Cause.Normal(string.Create(CultureInfo.InvariantCulture, $"{usable[run].Table.Run.Id} film cut before row {cut.From + 1}"), CauseGroup.Assumption), moved[v] - middle[v]);
            }
        }

        foreach (var (run, setting) in usable.SelectMany((pair, run) => Believed.Where(name => pair.Table.Run.SettingDoubt(name) > 0).Select(name => (run, name))))
        {
            double[] moved = [.. Values(WarmUpFit.FitAs([.. usable.Select((pair, r) => Log(r == run ? pair.Table.Moved(setting) : pair.Table, instruments, lightV))], found)).Select(value => value.Si)];
            for (int v = 0; v < values.Count; v++)
            {
                doubts[v] = doubts[v].With(Cause.Rectangular($"{usable[run].Table.Run.Id} {setting}", CauseGroup.Assumption), moved[v] - middle[v]);
            }
        }

        if (light is { SiDoubt: > 0 })
        {
            double[] moved = [.. Values(WarmUpFit.FitAs([.. usable.Select(pair => Log(pair.Table, instruments, lightV + light.SiDoubt))], found)).Select(value => value.Si)];
            foreach (var push in light.Doubts.Pushes)
            {
                for (int v = 0; v < values.Count; v++)
                {
                    doubts[v] = doubts[v].With(push.Cause, (moved[v] - middle[v]) * push.By / light.StandardDoubt);
                }
            }
        }

        if (found.RadiatingM2 > 0)
        {
            remarks.Add(new(usable[0].Trial.Id, usable[0].Table.Run.Id, 0, Loses(found, logs), Remark.Kept));
        }

        return new(part.Id, [.. values.Select((value, v) => new Finding(part.Id, value.Quantity, new Estimate(value.Si, value.Unit, doubts[v], origin)))], remarks, [])
        {
            WarmUp = found,
            Pictures = [.. logs.Select((log, l) => new FitPicture($"{usable[l].Trial.Id}, {part.Name}", "time", "s", "degrees", "°C", log.TimesS, log.EndC, found.ModelledC[l]) { Doubt = found.ModelledDoubtK[l] })],
        };
    }

    /// <summary>What it loses in all where it was hottest: a loss in proportion to the rise and an area that radiates say little by themselves.</summary>
    private static string Loses(WarmUpFindings found, WarmUpLog[] logs)
    {
        var log = logs.MaxBy(one => one.EndC.Where(double.IsFinite).Max())!;
        double hotC = log.EndC.Where(double.IsFinite).Max();
        double linear = found.LinearWPerK * (hotC - log.AirC);
        double radiated = Radiation.RadiatedW(1, found.RadiatingM2, hotC, log.AirC);
        return $"At {Display.Significant(Math.Round(hotC), 4)} °C it loses {Display.Significant(linear + radiated, 3)} W in all: {Display.Significant(linear, 3)} W in proportion to the rise, {Display.Significant(radiated, 3)} W radiated.";
    }

    /// <summary>What may be wrong with a reading far off the fit: a slip by ten falls near it, a probe off its place does not.</summary>
    private static string Off(double readC, double fittedC, double airC)
    {
        double near = 0.1 * Math.Max(20, Math.Abs(fittedC - airC));
        return Math.Abs((readC / 10) - fittedC) < near || Math.Abs((readC * 10) - fittedC) < near
            ? $"The fit says {Display.Significant(Math.Round(fittedC), 4)} °C here: a decimal point that slipped?"
            : $"The fit says {Display.Significant(Math.Round(fittedC), 4)} °C here, far from this reading: probe off its place?";
    }

    private static double[] Refit((Trial Trial, ReadingTable Table)[] usable, InstrumentCauses instruments, WarmUpFindings like, double lightV, string name, double gain, double offset)
    {
        if (name == "time")
        {
            return [.. Values(like).Select(value => value.Si)];
        }

        var again = WarmUpFit.FitAs([.. usable.Select(pair => Log(pair.Table, instruments, lightV, name, gain, offset))], like);
        return [.. Values(again).Select(value => value.Si)];
    }

    private static List<(string Quantity, Unit Unit, double Si)> Values(WarmUpFindings found)
    {
        double[] all = [found.HeatCapacityJPerK, found.LinearWPerK, found.RadiatingM2, found.LagS, found.GripLinkWPerK, found.GripHeatCapacityJPerK, found.GripLossWPerK];
        return [.. found.Searched.Select(name => Array.FindIndex(Told, told => told.Searched == name)).Select(i => (Told[i].Quantity, Told[i].Unit, all[i]))];
    }

    private static WarmUpLog Log(ReadingTable table, InstrumentCauses instruments, double lightV, string moved = "", double gain = 0, double offset = 0)
    {
        double[] Column(string name) => !table.Has(name) ? [.. Enumerable.Repeat(double.NaN, table.Count)] : name == moved ? [.. table[name].Select(value => (value * (1 + gain)) + offset)] : table[name];
        double[] time = Column("time"), volts = Column("volts"), amps = Column("amps"), watts = Column("watts"), degrees = Column("degrees"), grip = Column("grip degrees");

        // Behind the instant at which it was switched off nothing goes in, whatever is typed or left open there; of volts read at the supply, meter and leads keep theirs.
        double offS = table.Run.Setting("off", double.PositiveInfinity), besideOhm = VoltsAt.BesideOhm(table.Run.Setting);
        double Read(int i) => time[i] >= offS ? 0 : Math.Max(0, volts[i] - (amps[i] * besideOhm) - lightV) * amps[i] is var both && double.IsFinite(both) ? both : Math.Max(0, watts[i]);
        double[] power = WattsBetween.Filled(time, [.. Enumerable.Range(0, table.Count).Select(Read)], offS);
        int[] rows = [.. Enumerable.Range(0, table.Count).Where(i => double.IsFinite(time[i] + power[i]) && (i == 0 || time[i] > time[i - 1]))];
        return new(table.Run.Id.Name, [.. rows.Select(i => time[i])], [.. rows.Select(i => power[i])], [.. rows.Select(i => degrees[i])],
            [.. rows.Select(i => grip[i])], table.Run.Setting("air", 20))
        {
            OffS = offS,
            Numbers = [.. rows.Select(i => table.Numbers[i])],
            TimeDoubtS = table.FilmDoubtS > 0 ? table.FilmDoubtS : instruments.ResolutionSi(table.Run.Columns.First(column => column.Name == "time")),
        };
    }
}

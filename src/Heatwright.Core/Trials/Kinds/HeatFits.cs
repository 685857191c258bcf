using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Physics;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Bench tests of how a working end warms, holds, works and cools.</summary>
internal static class HeatFits
{
    public static readonly Dictionary<string, Func<TrialSheet, Checked<TrialAnswer>>> All = new(StringComparer.Ordinal)
    {
        ["warm-up"] = WarmUp,
        ["cool-down"] = CoolDown,
        ["warm-up-marks"] = MarkFit.Run,
        ["work-trial"] = WorkFits.Droop,
        ["work-ladder"] = WorkFits.Ladder,
        ["stuck-on"] = sheet => AtRest(sheet, "degrees", "plateau"),
        ["grip-rise"] = sheet => AtRest(sheet, "degrees", "grip at rest"),
        ["self-heating"] = sheet => AtRest(sheet, "degrees", "cell at rest"),
        ["converter-hot-spot"] = sheet => AtRest(sheet, "degrees", "hot spot at rest"),
    };

    private const string Three = "Temperature at one place carries three thermal numbers, not five: total loss and two times are known, the shares of core and tip are not. A mass with its specific heat, or hot ohms of the heater, would split them.";

    /// <summary>Watts that were read now and then, as with one meter at the start and the end, stand for the rows between.</summary>
    private static TrialSheet Between(TrialSheet sheet)
    {
        if (!sheet.Has("watts") || !sheet.Has("time") || sheet["watts"].All(double.IsFinite))
        {
            return sheet;
        }

        double[] watts = [.. StepResponse.Runs(sheet).SelectMany(run => WattsBetween.Filled(sheet["time"][run.From..run.To], sheet["watts"][run.From..run.To], sheet.Setting("off")))], own = sheet.Own("watts");
        double usual = own.Where(double.IsFinite).DefaultIfEmpty(0).Max();
        return sheet.Derived("watts", watts, [.. own.Select(doubt => double.IsFinite(doubt) && doubt > 0 ? doubt : usual)], Between);
    }

    private static Checked<TrialAnswer> WarmUp(TrialSheet read)
    {
        if (Curves.NoPower(read) is { } none)
        {
            return new(none);
        }

        var sheet = Between(HeaterFits.Watts(read)).Whole("time", "degrees", "watts");
        if (Curves.TooFew(sheet, 3, "time, watts and degrees") is { } few)
        {
            return new(few);
        }

        if (sheet["watts"].Max() <= 0)
        {
            return new(new Problem("No power went in: nothing can warm up.", "watts", "0 W", "more than 0 W", "For a cooling alone take the kind cool-down."));
        }

        (sheet, var slip) = WithoutFirstSlip(sheet);
        double air = sheet.Setting("air", sheet["degrees"][0]);
        double tau = FirstTau(sheet), k = Math.Max(0.1, (sheet["degrees"].Max() - air) / sheet["watts"].Max());
        bool said = double.IsFinite(sheet.Setting("off"));
        bool switches = Enumerable.Range(1, sheet.Count - 1).Any(i => !(sheet["time"][i] >= sheet.Setting("off")) && Math.Abs(sheet["watts"][i] - sheet["watts"][i - 1]) > 0.3 * sheet["watts"].Max());
        var (answer, held) = (switches ? Enum.GetValues<PowerHeld>() : [PowerHeld.Mean]).Select(held => (Answer: BenchFit.Run(sheet, [.. Models(sheet, k, tau, air, held)]), Held: held))
            .MinBy(pair => pair.Answer.Tried.First(t => t.Chosen).Rss);
        if (switches && !said)
        {
            answer = answer with { Notes = [.. answer.Notes, $"When the power changed between two readings is not noted: {held switch { PowerHeld.Until => "at the later reading", PowerHeld.Since => "at the earlier reading", _ => "in their middle" }} fits best. Add --set off=...s to say it."] };
        }

        bool many = answer.Tried.Any(t => t.Chosen && t.Name != "one body");
        answer = Shared(answer);
        return new(answer with
        {
            Remarks = [.. slip, .. answer.Remarks],
            Says = [many ? Three : "One body explains these readings.", .. Rest(sheet, answer)],
            Next = [.. answer.Next, .. Cooling(sheet)],
        });
    }

    /// <summary>A log from nothing begins at its own first temperature, so a slip there would bend the whole curve: the first reading has to lie near the line through the two after it.</summary>
    private static (TrialSheet Sheet, TrialRemark[] Slip) WithoutFirstSlip(TrialSheet sheet)
    {
        double[] c = sheet["degrees"];
        if (sheet.Count < 6 || Math.Abs(c[0] - ((2 * c[1]) - c[2])) <= 5 + (4 * Math.Abs(c[2] - c[1])))
        {
            return (sheet, []);
        }

        return (sheet.Without(0), [new(sheet.Numbers[0], "S23", "E", string.Create(CultureInfo.InvariantCulture, $"degrees {c[0]:0.0} stand alone before {c[1]:0.0} and {c[2]:0.0}."), "Look at the first reading: it says from where the end warms.") { LeftOut = true }]);
    }

    /// <summary>Smallest and largest core against the tip behind it, by heat capacity: a tenth and three quarters; common practice, no source.</summary>
    private const double LeastCore = 0.1, MostCore = 0.75;

    /// <summary>Two times and a loss leave the heat capacity open by the second time over the resistance. From s²·C₁C₂K/G + s·((C₁ + C₂)·K + C₁/G) + 1 = 0: (C₁ + C₂)·K = τ₁ − τ₂·C₁/C₂,
    /// so it takes what a core may weigh against its tip.</summary>
    /// <remarks>A dead time stands for short times in a row. Of a log that goes on for times the time constant, all but the first readings lie on the slowest exponential alone,
    /// so the time constant stands as found but for a thirtieth of the dead time (seen in campaigns); of the dead time the core has its share as of a second time constant.</remarks>
    private static TrialAnswer Shared(TrialAnswer answer)
    {
        bool bodies = answer.Find("second time constant") is not null;
        if ((answer.Find("second time constant") ?? answer.Find("dead time")) is not { } fast || answer.Find("resistance to air") is not { } k)
        {
            return answer;
        }

        var cause = Cause.Rectangular($"{answer.Kind} share of core and tip", CauseGroup.Assumption);
        double size = fast.Value / Math.Sqrt(3);
        return answer with
        {
            Findings = [.. answer.Findings.Select(finding => finding.Name == "heat capacity" ? finding.Wider(cause, (MostCore - LeastCore) / 2 * size / k.Value) : finding.Name == "time constant" && !bodies ? finding.Wider(cause, size / 30) : finding)],
        };
    }

    private static IEnumerable<BenchModel> Models(TrialSheet sheet, double k, double tau, double air, PowerHeld held)
    {
        yield return Bodies("one body", 0, "");
        yield return Bodies("two bodies", 0.04 * tau, "second time constant") with { Decides = "Read the first seconds closer together: at most a third of the second time constant apart." };
        yield return Bodies("one body behind a dead time", 0.04 * tau, "dead time");
        if (sheet.Count >= 25)
        {
            yield return Bodies("two bodies behind a dead time", 0.04 * tau, "second time constant", 0.01 * tau);
        }

        if (sheet["degrees"].Max() - air > 80 && sheet.Count >= 9)
        {
            yield return Radiating(k, tau);
        }

        BenchModel Bodies(string name, double fast, string second, double late = 0) => new(name, "degrees", ["time"], s => [k, tau, .. fast > 0 ? new[] { fast } : [], .. late > 0 ? new[] { late } : []],
            (s, p) => second == "dead time" ? StepResponse.Rise(s, p[0], p[1], 0, p[2], held) : StepResponse.Rise(s, p[0], p[1], p.Length > 2 ? p[2] : 0, p.Length > 3 ? p[3] : 0, held),
            [
                Curves.Tell("resistance to air", Units.KelvinPerWatt, 0), Curves.Tell("linear loss", Units.WattPerKelvin, (_, p) => 1 / p[0]),
                Curves.Tell("time constant", Units.Second, (_, p) => Slow(second, p)), .. fast > 0 ? new[] { Curves.Tell(second, Units.Second, (_, p) => Fast(second, p)) } : [], .. late > 0 ? new[] { Curves.Tell("dead time", Units.Second, 3) } : [],
                Curves.Tell("heat capacity", Units.JoulePerKelvin, (_, p) => (Slow(second, p) - ((LeastCore + MostCore) / 2 * Fast(second, p))) / p[0]),
                .. fast > 0 && second != "dead time" ? new[] { Curves.Tell("most heat capacity", Units.JoulePerKelvin, (_, p) => (p[1] + p[2]) / p[0]) } : [],
            ])
        {
            Apart = late > 0, // three times in a row: where they are told, they are told; where not, two stand
            Further = Curves.Spread(fast > 0 ? [1, 2] : [1]),
            Lower = [1e-3, 1e-2, .. fast > 0 ? new[] { 1e-3 } : [], .. late > 0 ? new[] { 1e-4 } : []],
            Upper = [1e5, 1e6, .. fast > 0 ? new[] { 1e5 } : [], .. late > 0 ? new[] { 1e4 } : []],
        };

        // Two times in a row may be found in either order.
        static double Slow(string second, double[] p) => second == "dead time" || p.Length < 3 ? p[1] : Math.Max(p[1], p[2]);

        static double Fast(string second, double[] p) => p.Length < 3 ? 0 : second == "dead time" ? p[2] : Math.Min(p[1], p[2]);
    }

    private static IEnumerable<string> Cooling(TrialSheet sheet)
    {
        if (sheet["watts"].Min() > 0.02 * sheet["watts"].Max() && !double.IsFinite(sheet.Setting("off")))
        {
            yield return "Switch off and log the cooling too: it has no error of the power and tells the air apart.";
        }
    }

    private static IEnumerable<string> Rest(TrialSheet sheet, TrialAnswer answer)
    {
        if (answer.Find("resistance to air") is { } k)
        {
            double watts = sheet["watts"].Max(), air = sheet.Setting("air", sheet["degrees"][0]);
            yield return string.Create(CultureInfo.InvariantCulture, $"At {watts:0.0} W it would come to rest at {air + (k.Value * watts):0} °C.");
            if (answer.Find("radiating area") is null && Cooler(sheet["degrees"].Max() - air) is { } cooler)
            {
                yield return cooler;
            }
        }
    }

    /// <summary>A loss in proportion holds at the rise that it was read at: what rises with warm air grows as the fourth root of the rise (laminar free convection,
    /// from memory), and what radiates grows faster, so that half of the rise loses at least a sixth less a kelvin: 1 − 2^(−1/4) = 0.16.</summary>
    public static string? Cooler(double riseK) => riseK < 100 ? null
        : string.Create(CultureInfo.InvariantCulture, $"This loss belongs to a rise of about {riseK:0} K. Nearer to the air a hot thing loses less a kelvin: at half of that rise about a sixth less. Warm it up to the heat that you work at, or hold two powers (kind hold-power).");

    /// <summary>Heat capacity, loss and radiation through the plant's own stepper.</summary>
    private static BenchModel Radiating(double k, double tau) => new("one body that radiates", "degrees", ["time"],
        s => [Math.Log(tau / k), Math.Log(0.6 / k), Math.Log(2e-4)], (s, p) => Stepped(s, p),
        [
            Curves.Tell("heat capacity", Units.JoulePerKelvin, (_, p) => Math.Exp(p[0])), Curves.Tell("linear loss", Units.WattPerKelvin, (_, p) => Math.Exp(p[1])),
            Curves.Tell("radiating area", Units.SquareMetre, (_, p) => Math.Exp(p[2])),
        ])
    {
        Apart = true,
        Further = Curves.SpreadLogs(1, 2),
        Lower = [-7, -14, -14],
        Upper = [9, 3, 0],
        Decides = "Take a second warm-up at 1.5 times the power: it tells radiation from loss in proportion.",
    };

    private static double[] Stepped(TrialSheet sheet, double[] p)
    {
        double[] modelled = new double[sheet.Count];
        foreach (var (from, to) in StepResponse.Runs(sheet))
        {
            double[] times = sheet["time"][from..to], watts = sheet["watts"][from..to], degrees = sheet["degrees"][from..to];
            double air = sheet.Setting("air", degrees[0]);
            bool cold = times[0] > 0;
            double[] at = cold ? [0, .. times] : times;
            var log = new WarmUpLog("", at, cold ? [watts[0], .. watts] : watts, cold ? [air, .. degrees] : degrees, [.. at.Select(_ => double.NaN)], air);
            double[] sensorK = WarmUpFit.Simulate(new(Math.Exp(p[0]), Math.Exp(p[1]), Math.Exp(p[2]), 0, 0, 0, 0), log)[^1];
            for (int i = from; i < to; i++)
            {
                modelled[i] = sensorK[i - from + (cold ? 1 : 0)] - 273.15;
            }
        }

        return modelled;
    }

    private static double FirstTau(TrialSheet sheet)
    {
        var (from, to) = StepResponse.Runs(sheet)[0];
        double[] t = sheet["time"][from..to], c = sheet["degrees"][from..to];
        double half = (c[0] + c.Max()) / 2;
        int past = Array.FindIndex(c, value => value >= half);
        return Math.Max(0.5, (t[Math.Clamp(past, 0, t.Length - 1)] - (past == 0 ? 0 : t[0])) * 1.4);
    }

    private static Checked<TrialAnswer> CoolDown(TrialSheet read)
    {
        var sheet = read.Whole("time", "degrees");
        if (Curves.TooFew(sheet, 3, "time and degrees") is { } few)
        {
            return new(few);
        }

        // Early against late, so that one reading off does not decide.
        int third = Math.Max(1, sheet.Count / 3);
        double early = Sample.Median(sheet["degrees"].AsSpan()[..third]), late = Sample.Median(sheet["degrees"].AsSpan()[^third..]);
        if (early - late <= 3 * sheet.Own("degrees").Max())
        {
            return new(new Problem("It does not cool in these readings.", "degrees", string.Create(CultureInfo.InvariantCulture, $"{early:0.#} °C at first, {late:0.#} °C at last"), "degrees that fall", "Take the power off, and read from then on; press hold once if the display stands still."));
        }

        double air = sheet.Setting("air", double.NaN);
        bool known = double.IsFinite(air);
        double[] Predict(TrialSheet s, double[] p, bool second) => [.. s["time"].Select(t => Air(s, p) + ((p[0] - Air(s, p)) * Curves.Late(t - s["time"][0], p[1], second ? p[2] : 0)))];
        double Air(TrialSheet s, double[] p) => known ? s.Setting("air") : p[^1];
        double start = sheet["degrees"][0], rest = known ? air : sheet["degrees"].Min() - 1;
        double tau = Math.Max(1, (sheet["time"][^1] - sheet["time"][0]) / Math.Max(0.3, Math.Log(Math.Max(1.05, (start - rest) / Math.Max(1, sheet["degrees"][^1] - rest)))));
        BenchModel Model(bool second) => new(second ? "two bodies" : "one body", "degrees", ["time"],
            s => [start, tau, .. second ? new[] { 0.05 * tau } : [], .. known ? [] : new[] { rest }], (s, p) => Predict(s, p, second),
            [Curves.Tell("time constant", Units.Second, 1), .. second ? new[] { Curves.Tell("second time constant", Units.Second, 2) } : [], .. known ? [] : new[] { Curves.Tell("air", Units.Kelvin, (_, p) => p[^1]) }])
        {
            Further = Curves.Spread(second ? [1, 2] : [1]),
            Lower = [-100, 1e-2, .. second ? new[] { 1e-3 } : [], .. known ? [] : new[] { -60.0 }],
            Upper = [3000, 1e6, .. second ? new[] { 1e5 } : [], .. known ? [] : new[] { 100.0 }],
        };

        // Switched off while it was driven, a body in front is hotter than what stands behind it, and falls faster at first.
        var behind = new BenchModel("two bodies, the one in front hotter", "degrees", ["time"],
            s => [start, tau, 0.05 * tau, 0.1, .. known ? [] : new[] { rest }],
            (s, p) => [.. s["time"].Select(t => t - s["time"][0]).Select(t => Air(s, p) + ((p[0] - Air(s, p)) * (((1 - p[3]) * Math.Exp(-t / p[1])) + (p[3] * Math.Exp(-t / p[2])))))],
            [Curves.Tell("time constant", Units.Second, 1), Curves.Tell("second time constant", Units.Second, 2), .. known ? [] : new[] { Curves.Tell("air", Units.Kelvin, (_, p) => p[^1]) }])
        {
            Further = Curves.Spread(1, 2),
            Lower = [-100, 1e-2, 1e-3, 0, .. known ? [] : new[] { -60.0 }],
            Upper = [3000, 1e6, 1e5, 0.5, .. known ? [] : new[] { 100.0 }],
        };
        var answer = BenchFit.Run(sheet, Model(false), Model(true), behind);
        return new(answer with
        {
            Findings = [.. answer.Findings.Where(finding => finding.Name != "air")],
            Says = ["A cooling alone tells times: heat capacity and loss need a known power."],
            Next = known ? answer.Next : [.. answer.Next, "Note the air temperature: a cooling that has to find it too tells its time less well."],
        });
    }

    /// <summary>A temperature that rises to rest: where it comes to rest, how fast, and per watt where the watts are known.</summary>
    private static Checked<TrialAnswer> AtRest(TrialSheet read, string y, string name)
    {
        var sheet = HeaterFits.Watts(read).Whole("time", y);
        if (Curves.TooFew(sheet, 4, $"time and {y}") is { } few)
        {
            return new(few);
        }

        if (Curves.OneLevel(sheet, y, 0.5) is { } level)
        {
            return new(level);
        }

        (sheet, var slip) = WithoutFirstSlip(sheet);
        double watts = sheet.Has("watts") ? sheet["watts"].Where(double.IsFinite).Average() : sheet.Setting("watts");
        double air = sheet.Setting("air", double.NaN);
        List<Told> tells = [new(name, Units.Celsius, (_, p) => p[0] + 273.15), Curves.Tell("time constant", Units.Second, 2)];
        if (watts > 0 && double.IsFinite(air))
        {
            tells.Add(Curves.Tell("resistance to air", Units.KelvinPerWatt, (s, p) => (p[0] - s.Setting("air")) / (s.Has("watts") ? s["watts"].Where(double.IsFinite).Average() : s.Setting("watts"))));
            tells.Add(Curves.Tell("heat capacity", Units.JoulePerKelvin, (s, p) => p[2] * (s.Has("watts") ? s["watts"].Where(double.IsFinite).Average() : s.Setting("watts")) / (p[0] - s.Setting("air"))));
        }

        var answer = BenchFit.Run(sheet, Curves.ToRest(y, [.. tells]), Curves.ToRestLate(y, [.. tells]));
        var rest = answer.Find(name)!;
        double last = sheet[y][^1], rise = rest.Value - sheet[y][0];
        List<string> says = [string.Create(CultureInfo.InvariantCulture, $"It would come to rest at {rest.Value:0} ± {rest.StandardDoubt:0.0} °C.")];
        List<string> next = [.. answer.Next];
        double limit = sheet.Setting("limit"), u = rest.StandardDoubt;
        bool beyond = sheet[y].Max() > limit, exceeds = rest.Value - (1.645 * u) > limit;
        if (Math.Abs(rest.Value - last) > 0.02 * Math.Abs(rise))
        {
            says.Add(string.Create(CultureInfo.InvariantCulture, $"Not a plateau yet: still about {rest.Value - last:0} K to go."));
            if (!beyond && !exceeds)
            {
                next.Add("Wait three time constants and read once more.");
            }
        }

        if (double.IsFinite(limit))
        {
            says.Add(string.Create(CultureInfo.InvariantCulture, $"Limit {limit:0} °C: {(rest.Value + (1.645 * u) < limit ? "kept" : exceeds ? "exceeded" : "cannot be told")}."));
            if (beyond || exceeds)
            {
                next.Add(string.Create(CultureInfo.InvariantCulture, $"{(beyond ? $"Switch it off: it read {sheet[y].Max():0} °C, beyond the limit of {limit:0} °C" : $"Switch it off at {limit:0} °C and do not wait for the rest")}. The curve tells where it would go."));
            }
        }

        return new(answer with { Says = says, Next = next, Remarks = [.. slip, .. answer.Remarks] });
    }
}

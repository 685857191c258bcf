using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Four readings at a time of a converter: what it loses over its input current, how well it does at its best, and where it gives way.</summary>
internal static class PointFits
{
    /// <summary>An output this far below the set volts is not held any more.</summary>
    private const double Held = 0.95;

    /// <summary>So much more may come out than went in by what meters are wrong by.</summary>
    private const double Most = 1.05;

    /// <summary>Readings that have to lie on either side of a change.</summary>
    private const int Beside = 3;

    /// <summary>Places from which a change is sought.</summary>
    private const int Places = 16;

    /// <summary>Where a reading more tells most of the losses.</summary>
    private const string LightAndHeavy = "Take one more reading at the heaviest load that still holds, and one at a tenth of it.";

    private static readonly string[] Four = ["volts in", "amps in", "volts out", "amps out"];

    public static Checked<TrialAnswer> Points(TrialSheet read)
    {
        var sheet = read.Whole(Four);
        sheet = sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(i => Four.All(name => sheet[name][i] > 0))]);
        int[] over = [.. Enumerable.Range(0, sheet.Count).Where(i => sheet["volts out"][i] * sheet["amps out"][i] > Most * In(sheet, i))];
        List<TrialRemark> remarks = [.. over.Select(i => new TrialRemark(sheet.Numbers[i], "T27", "E", "Output power exceeds input power: one meter or one pairing is wrong.", "Take the four readings again at the same moment.") { LeftOut = true })];
        sheet = sheet.Without(over);
        if (Curves.TooFew(sheet, 1, "all four readings, output below input") is { } few)
        {
            return new(few);
        }

        double set = sheet.Setting("set volts", sheet["volts out"].Max());
        int[] held = [.. Enumerable.Range(0, sheet.Count).Where(i => sheet["volts out"][i] >= Held * set)];
        int[] fallen = [.. Enumerable.Range(0, sheet.Count).Except(held)];
        var kept = Loss(sheet.Rows(held));
        List<TrialFinding> limit = [];
        List<string> says = [];
        var origin = new Origin.Fitted(new TrialId(sheet.Card.Name), [new RunId(sheet.Card.Name)]);
        if (fallen.Length > 0)
        {
            double most = fallen.Max(i => sheet["amps in"][i]), watts = held.Length > 0 ? held.Max(i => sheet["volts out"][i] * sheet["amps out"][i]) : 0;
            says.Add(string.Create(CultureInfo.InvariantCulture, $"The output falls in {fallen.Length} of {sheet.Count} readings, at {most:0.00} A in: it holds up to about {watts:0.0} W out. These readings count for the limit, not for the losses."));
            remarks.Add(new(sheet.Numbers[fallen[0]], "limit", "I", "Here the output fell: the module was at a limit, and the reading counts for the limit and not for the losses.", ""));
            limit.Add(new(PartQuantities.LimitCurrent, Estimate.Within(most, 0.1 * most, Units.Ampere, $"{sheet.Card.Name} limit", CauseGroup.Trial, origin), 0, double.PositiveInfinity));
        }
        else
        {
            // Nothing fell: the limit was not met, and lies above the most that went in.
            int heaviest = Array.IndexOf(kept["amps in"], kept["amps in"].Max());
            limit.AddRange(ReadOff.Of(kept, ["amps in"], (PartQuantities.HeldCurrent, Units.Ampere, s => s["amps in"][heaviest], 0)));
            says.Add(string.Create(CultureInfo.InvariantCulture, $"It held its output at every load, up to {kept["amps in"][heaviest]:0.00} A at its input: its limit lies above."));
        }

        if (kept.Count < 1)
        {
            return new(new TrialAnswer(sheet.Card.Name, limit, says) { Remarks = remarks, Next = ["Take readings at light load, where the output holds."], Word = "never held" });
        }

        var answer = kept.Count < 3 ? BenchFit.Run(kept, Share()) : kept.Count > 2 * Beside ? BenchFit.Run(kept, Three(), Changed(kept)) : BenchFit.Run(kept, Three());
        string[] next = kept.Count < 3 ? ["Take three readings or more, light to heavy: they tell its losses apart."] : kept.Count <= 2 * Beside ? [LightAndHeavy] : [];
        if (answer.Find(PartQuantities.LossAbove) is { } steeper && answer.Find(PartQuantities.ChangeCurrent) is { } from)
        {
            says.Add(string.Create(CultureInfo.InvariantCulture, $"Above {from.Value:G3} A in it loses {steeper.Value:G3} W more for each ampere more: a module that works in bursts at light load does so. A prediction takes both sides."));
        }

        return new(answer with
        {
            Findings = [.. answer.Findings, .. limit],
            Remarks = [.. answer.Remarks, .. remarks],
            Says = says,
            Next = [.. answer.Next, .. next],
            Picture = answer.Picture is { } picture ? Efficiency(kept, picture) : null,
            Word = fallen.Length > 0 ? "falls" : "holds",
        });
    }

    /// <summary>One or two readings: a share of what goes in.</summary>
    private static BenchModel Share() => new("loss in proportion to the input", "loss", ["amps in"], s => [0.15], (s, p) => [.. Enumerable.Range(0, s.Count).Select(i => p[0] * In(s, i))],
        [Curves.Tell(PartQuantities.Efficiency, Units.Percent, (_, p) => 1 - p[0])]);

    /// <summary>Loss as a₀ + a₁·I + a₂·I² of the input current. What is usual beforehand makes three numbers of three readings already; two would leave the third to a guess that knows nothing of them.</summary>
    private static BenchModel Three() => new("own needs, share and ohms", "loss", ["amps in"], _ => [0.1, 0.15, 0.06], (s, p) => [.. s["amps in"].Select(a => p[0] + (p[1] * a) + (p[2] * a * a))],
        [Curves.Tell(PartQuantities.LossFixed, Units.Watt, 0), Curves.Tell(PartQuantities.LossPerAmp, Units.Volt, 1), Curves.Tell(PartQuantities.LossPerAmpSquared, Units.Ohm, 2), .. Shares((a, p) => p[0] + (p[1] * a) + (p[2] * a * a))])
    {
        Lower = [-1, -1, -0.5], // a loss of next to nothing is read as a little less than nothing as often as not
        Upper = [10, 20, 5],
        // Common practice, no source: small modules lie inside 0.02–0.3 W, 0.05–0.5 V, 0.03–0.2 Ω; three times as wide.
        Prior = ([0.1, 0.15, 0.06], [0.6, 0.9, 0.45]),
    };

    /// <summary>Loss as a₀ + a₁·I, and above a current steeper: a module that works in bursts at light load loses little there.</summary>
    private static BenchModel Changed(TrialSheet kept)
    {
        double[] amps = [.. kept["amps in"].Order()];
        double low = amps[Beside - 1], high = amps[^Beside];
        static double At(double a, double[] p) => p[0] + (p[1] * a) + (p[2] * Math.Max(0, a - p[3]));
        return new("own needs and share, more above a current", "loss", ["amps in"], s => From(s, (low + high) / 2), (s, p) => [.. s["amps in"].Select(a => At(a, p))],
            [Curves.Tell(PartQuantities.LossFixed, Units.Watt, 0), Curves.Tell(PartQuantities.LossPerAmp, Units.Volt, 1), Curves.Tell(PartQuantities.LossPerAmpSquared, Units.Ohm, (_, _) => 0),
                Curves.Tell(PartQuantities.LossAbove, Units.Volt, 2), Curves.Tell(PartQuantities.ChangeCurrent, Units.Ampere, 3), .. Shares(At)])
        {
            Lower = [-1, -1, 0, low],
            Upper = [10, 20, 20, high],
            Further = _ => amps.Zip(amps.Skip(1), (a, b) => (a + b) / 2).Where(a => a > low && a < high).Distinct().Chunk(Math.Max(1, amps.Length / Places)).Select(some => From(kept, some[0])),
            Decides = LightAndHeavy,
            Apart = true,
            Needs = [2, 3],
        };
    }

    /// <summary>The straight parts that fit best where the change lies at a current.</summary>
    private static double[] From(TrialSheet s, double change)
    {
        double[] p = MathNet.Numerics.LinearRegression.MultipleRegression.QR([.. s["amps in"].Select(a => new[] { 1, a, Math.Max(0, a - change) })], s["loss"]);
        return double.IsFinite(p.Sum()) ? [Math.Clamp(p[0], -1, 10), Math.Clamp(p[1], -1, 20), Math.Clamp(p[2], 0, 20), change] : [0.1, 0.15, 0.1, change];
    }

    /// <summary>Efficiencies by a law of the loss: the highest, which a label speaks of, and those at either end.</summary>
    private static Told[] Shares(Func<double, double[], double> loss)
    {
        double At(TrialSheet s, double[] p, int i) => 1 - (loss(s["amps in"][i], p) / In(s, i));
        return
        [
            Curves.Tell(PartQuantities.Efficiency, Units.Percent, (s, p) => Enumerable.Range(0, s.Count).Max(i => At(s, p, i))),
            Curves.Tell("efficiency at the lightest load", Units.Percent, (s, p) => At(s, p, Enumerable.Range(0, s.Count).MinBy(i => s["amps in"][i]))),
            Curves.Tell("efficiency at the heaviest load", Units.Percent, (s, p) => At(s, p, Enumerable.Range(0, s.Count).MaxBy(i => s["amps in"][i]))),
        ];
    }

    /// <summary>What a maker looks at: watts lost are hard to see beside those that came through.</summary>
    private static TrialPicture Efficiency(TrialSheet kept, TrialPicture loss)
    {
        int[] rows = [.. Enumerable.Range(0, kept.Count).Where(i => !loss.LeftOut.Contains(kept.Numbers[i]))];
        double[] Of(double[] watts) => [.. rows.Select((row, i) => 100 * (1 - (watts[i] / In(kept, row))))];
        return new(loss.XName, loss.XUnit, "efficiency", "%", loss.X, Of(loss.Read), Of(loss.Fitted))
        {
            Band = [.. rows.Select((row, i) => 100 * loss.Band[i] / In(kept, row))],
            LeftOut = loss.LeftOut,
        };
    }

    private static double In(TrialSheet s, int i) => s["volts in"][i] * s["amps in"][i];

    private static TrialSheet Loss(TrialSheet s)
    {
        // The loss is worked out inside the model of moved readings too, so that a gain error shared by both voltmeters cancels as it does on the bench.
        double[] loss = [.. Enumerable.Range(0, s.Count).Select(i => In(s, i) - (s["volts out"][i] * s["amps out"][i]))];
        double[] own = [.. Enumerable.Range(0, s.Count).Select(i => Math.Sqrt(Sq(s["amps in"][i] * s.Own("volts in")[i]) + Sq(s["volts in"][i] * s.Own("amps in")[i]) + Sq(s["amps out"][i] * s.Own("volts out")[i]) + Sq(s["volts out"][i] * s.Own("amps out")[i]) + Sq(0.001 * In(s, i))))];
        return s.Derived("loss", loss, own, Loss);
    }

    private static double Sq(double x) => x * x;
}

using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Bench tests of lamps: what the driver holds, and what becomes of it below.</summary>
internal static class LampFits
{
    /// <summary>Below a tenth of its current a light follows the logarithm, and says nothing of the line above it.</summary>
    private const double Tail = 0.1;

    /// <summary>From here up a reading counts as held.</summary>
    private const double Held = 0.97;

    /// <summary>At the most volts a driver that holds its current takes at least this share of the most amps.</summary>
    private const double Switches = 0.9;

    /// <summary>So many readings tell one slip from what the others say.</summary>
    private const int Several = 8;

    /// <summary>A real light bends by about so much of its current where a straight line is drawn: our choice, from the logarithm in its volts.</summary>
    private const double Bend = 0.008;

    /// <summary>So near above the corner, as a share of the fall, the straight lines are no surer than below it.</summary>
    private const double Near = 0.25;

    /// <summary>Width of the corner as a share of the fall: less than the bend of a real light.</summary>
    private const double Corner = 0.015;

    /// <summary>Level above the least volts, straight line to nothing below: amps = A·min(1, max(0, 1 − (V_least − V)/span)).</summary>
    public static Checked<TrialAnswer> Points(TrialSheet read)
    {
        var sheet = read.Whole("volts", "amps");
        if (Curves.TooFew(sheet, 2, "volts and amps, from the most volts down") is { } few)
        {
            return new(few);
        }

        TrialRemark[] slip = [];
        if (sheet["amps"].OrderDescending().Take(2).ToArray() is [var top, var next] && sheet.Count >= Several && top > 2 * next)
        {
            (sheet, slip) = Without(sheet, Array.IndexOf(sheet["amps"], top));
        }

        if (Switching(sheet) is { } other)
        {
            // One slip shall not make a driver of it that switches.
            if (slip.Length > 0 || WithoutSlip(sheet) is not { } rest)
            {
                return new(other);
            }

            (sheet, slip) = rest;
        }

        double level = Sample.Median([.. sheet["amps"].Where(amps => amps > Held * sheet["amps"].Max())]);
        var lit = sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(i => sheet["amps"][i] >= Tail * level)]);
        int[] flat = [.. Enumerable.Range(0, lit.Count).Where(i => lit["amps"][i] > Held * level)], falling = [.. Enumerable.Range(0, lit.Count).Except(flat)];
        double lowestHeld = flat.Min(i => lit["volts"][i]);
        if (flat.Length < 2 || falling.Length < 2)
        {
            var mean = BenchFit.Run(lit.Rows(flat), Curves.Mean("amps", Curves.Tell("load current", Units.Ampere, 0)));
            return new(mean with
            {
                Says = [.. mean.Says, Text($"It holds {level:0.000} A down to {lowestHeld:0.00} V, the lowest reading that still does.")],
                Next = [.. mean.Next, falling.Length < 2 ? "Turn the volts further down, in steps of 0.1 V, until it is dark: nothing is known yet of the volts it needs." : "Take two readings at volts where the amps no longer grow."],
                Word = "held",
                Remarks = [.. slip, .. mean.Remarks],
            });
        }

        var model = new BenchModel("level, and a straight fall below", "amps", ["volts"], s => Start(s, level), Predict,
            [Curves.Tell("load current", Units.Ampere, 0), Curves.Tell("least input volts", Units.Volt, 1), Curves.Tell("dark volts", Units.Volt, (_, p) => p[1] - p[2])])
        {
            Further = Curves.Spread(2),
            Lower = [1e-4, 0.1, 1e-3],
            Upper = [1000, 1000, 1000],
            Doubt = (s, p) => [.. s["volts"].Zip(s.Own("amps"), (volts, own) => volts < p[1] + (Near * p[2]) ? Math.Sqrt((own * own) + (Bend * Bend * p[0] * p[0])) : own)],
        };
        var answer = BenchFit.Run(lit, model);
        return new(answer with
        {
            Says = [.. answer.Says, Text($"It holds {level:0.000} A down to {lowestHeld:0.00} V; below that it grows weaker. {(lit.Count < sheet.Count ? $"{sheet.Count - lit.Count} readings with less than a tenth of the amps count for nothing here." : "")}").TrimEnd()],
            Word = "falls",
            Remarks = [.. slip, .. answer.Remarks],
        });
    }

    /// <summary>A driver that steps up or down takes the same watts, so its amps grow as its volts fall: the law here is not its law.</summary>
    private static Problem? Switching(TrialSheet sheet)
    {
        double most = sheet["amps"].Max();
        int highest = Highest(sheet), largest = Array.IndexOf(sheet["amps"], most);
        return sheet["amps"][highest] >= Switches * most ? null
            : new("Its amps grow as its volts fall: its driver switches and takes the same watts, it does not hold a current at its own wires.", "the readings",
                Text($"{sheet["amps"][highest]:0.000} A at {sheet["volts"][highest]:0.00} V, {most:0.000} A at {sheet["volts"][largest]:0.00} V"), "amps that do not grow by more than a tenth as the volts fall",
                "Read amps and volts behind its driver, at the light itself, or pose it as a load of constant watts in a plant of stated numbers (docs/formats/plant.md).");
    }

    private static int Highest(TrialSheet sheet) => Array.IndexOf(sheet["volts"], sheet["volts"].Max());

    /// <summary>The readings without the one that alone speaks of a driver that switches: the most amps of all, or those at the most volts; null where more than one does.</summary>
    private static (TrialSheet Sheet, TrialRemark[] Slip)? WithoutSlip(TrialSheet sheet)
    {
        double[] amps = sheet["amps"];
        foreach (int row in sheet.Count < Several ? [] : new[] { Array.IndexOf(amps, amps.Max()), Highest(sheet) })
        {
            var rest = Without(sheet, row);
            if (Switching(rest.Sheet) is null)
            {
                return rest;
            }
        }

        return null;
    }

    private static (TrialSheet Sheet, TrialRemark[] Slip) Without(TrialSheet sheet, int row) => (sheet.Without(row),
        [new(sheet.Numbers[row], "S23", "E", Text($"{sheet["amps"][row]:0.000} A at {sheet["volts"][row]:0.00} V stand alone among the other readings."), "Look at the range, the decimal point and the clip; take it again.") { LeftOut = true }]);

    private static double[] Start(TrialSheet sheet, double level)
    {
        int[] falling = [.. Enumerable.Range(0, sheet.Count).Where(i => sheet["amps"][i] <= Held * level)];
        double[] line = Curves.Guess([.. falling.Select(i => sheet["volts"][i])], [.. falling.Select(i => sheet["amps"][i])]);
        double slope = Math.Max(1e-3, line[1]);
        return [level, (level - line[0]) / slope, level / slope];
    }

    private static double[] Predict(TrialSheet sheet, double[] p) => [.. sheet["volts"].Select(volts => p[0] * Math.Max(0, 1 - Fallen((p[1] - volts) / p[2])))];

    /// <summary>What has fallen off, with a corner that is a little round: at a sharp one the volts found would stand on a reading, and nothing would tell by how much they may move.</summary>
    private static double Fallen(double below) => 0.5 * (below + Math.Sqrt((below * below) + (Corner * Corner)));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

namespace Heatwright.Trials;

/// <summary>Where between two readings a power changed, when nobody noted it.</summary>
internal enum PowerHeld
{
    /// <summary>The mean of both readings over the whole stretch: a power that drifts.</summary>
    Mean,
    /// <summary>The earlier reading's power up to the later reading.</summary>
    Until,
    /// <summary>The later reading's power from the earlier reading on.</summary>
    Since,
}

/// <summary>Rise of one or two bodies in a row under a power that changes from reading to reading: exact steps, one sweep through the log.</summary>
/// <remarks>Superposition of the step responses of the warm-up laws, kept as two running sums instead of a sum over all steps. Checked: against that sum.</remarks>
internal static class StepResponse
{
    /// <summary>Stretches of a sheet in which time only grows.</summary>
    public static IReadOnlyList<(int From, int To)> Runs(TrialSheet sheet)
    {
        double[] t = sheet["time"];
        List<(int, int)> runs = [];
        int from = 0;
        for (int i = 1; i <= t.Length; i++)
        {
            if (i == t.Length || t[i] < t[i - 1])
            {
                runs.Add((from, i));
                from = i;
            }
        }

        return runs;
    }

    /// <summary>Degrees at each reading.</summary>
    /// <param name="sheet">time, watts, degrees; settings air and off.</param>
    /// <param name="kPerW">Resistance to air.</param>
    /// <param name="slow">Time constant.</param>
    /// <param name="fast">Second one; 0: none.</param>
    /// <param name="delay">Dead time.</param>
    /// <param name="held">Where the power changed.</param>
    public static double[] Rise(TrialSheet sheet, double kPerW, double slow, double fast, double delay, PowerHeld held = PowerHeld.Mean)
    {
        double[] modelled = new double[sheet.Count];
        double[] degrees = sheet["degrees"];
        double air = sheet.Setting("air", degrees.Length > 0 ? degrees[0] : 20);
        bool two = fast > 0;
        fast = two && Math.Abs(slow - fast) < Curves.Alike * slow ? slow * (1 - Curves.Alike) : fast; // two alike follow as two that are nearly so
        foreach (var (from, to) in Runs(sheet))
        {
            double[] t = sheet["time"][from..to];
            var (starts, watts) = Pieces(t, sheet["watts"][from..to], sheet.Setting("off"), held);

            // A log that begins at nothing begins from its own first temperature, if the thermometer may not just be off by that much; one that begins later began cold.
            double a = t[0] <= 0 && Math.Abs(degrees[from] - air) > MayBeOff(sheet, degrees[from]) ? degrees[from] - air : 0, b = a, now = Math.Min(0, t[0]);
            int piece = 0;
            for (int i = 0; i < t.Length; i++)
            {
                while (now < t[i])
                {
                    while (piece + 1 < starts.Length && starts[piece + 1] + delay <= now)
                    {
                        piece++;
                    }

                    double end = piece + 1 < starts.Length ? Math.Min(t[i], starts[piece + 1] + delay) : t[i];
                    double power = now < starts[piece] + delay ? 0 : watts[piece];
                    end = now < starts[piece] + delay ? Math.Min(t[i], starts[piece] + delay) : end;
                    double h = end - now, rise = kPerW * power;
                    a += (rise - a) * (1 - Math.Exp(-h / slow));
                    b += two ? (rise - b) * (1 - Math.Exp(-h / fast)) : 0;
                    now = end;
                }

                modelled[from + i] = air + (two ? ((slow * a) - (fast * b)) / (slow - fast) : a);
            }
        }

        return modelled;
    }

    /// <summary>What the thermometer's promise allows a reading to be off by, K, and a standard size of it besides, by which a fit moves the readings: a first reading that near to the air is the air, and its last digit bends nothing.</summary>
    private static double MayBeOff(TrialSheet sheet, double degrees) =>
        (1 + Math.Sqrt(3)) * sheet.Shared.Where(error => error.Column == "degrees").Sum(error => error.Offset + (error.Gain * Math.Abs(degrees)) + (error.Both * Math.Sqrt(Math.Abs(degrees)))) + (3 * (sheet.Own("degrees") is [var own, ..] ? own : 0));

    /// <summary>The power as pieces: where each begins and how large it is.</summary>
    private static (double[] Starts, double[] Watts) Pieces(double[] t, double[] w, double offS, PowerHeld held)
    {
        double zero = Math.Min(0, t[0]);
        if (offS <= zero)
        {
            return ([zero], [0]);
        }

        if (double.IsFinite(offS))
        {
            // Up to that instant as it was read, from then on nothing.
            int heated = Math.Max(1, t.Count(at => at < offS));
            var (before, power) = Pieces(t[..heated], w[..heated], double.NaN, held);
            return ([.. before, t[heated - 1] < offS ? t[heated - 1] : zero, offS], [.. power, w[heated - 1], 0]);
        }

        // The first reading's power holds from the start; each later piece lies between two readings.
        double[] starts = [zero, .. t.Take(t.Length - 1)];
        double[] watts = [w[0], .. Enumerable.Range(1, w.Length - 1).Select(i => held switch { PowerHeld.Until => w[i - 1], PowerHeld.Since => w[i], _ => (w[i - 1] + w[i]) / 2 })];
        return (starts, watts);
    }
}

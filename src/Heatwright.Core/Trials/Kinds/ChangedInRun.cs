namespace Heatwright.Trials;

/// <summary>Volts over amps of one heater that change from one reading on and stay: a meter or a clip was moved in mid-run.</summary>
/// <remarks>Ohms may rise with the watts along a line, so only a step beside that line counts, and only where the watts of both sides overlap: else it is the heater that tells. Limits: our choice.</remarks>
internal static class ChangedInRun
{
    /// <summary>Readings on each side of the step.</summary>
    private const int Fewest = 2;

    /// <summary>Of fewer readings a step is told by any curve.</summary>
    private const int FewestInAll = 6;

    /// <summary>More are a log, which nobody's hand moves a meter in.</summary>
    private const int Most = 400;

    /// <summary>Square of the step over its doubt.</summary>
    private const double Clear = 40;

    /// <summary>A step smaller than this share is a display's.</summary>
    private const double Least = 0.02;

    /// <summary>Standard doubt of ohms by the last digits of volts and amps, as a share.</summary>
    private const double Digits = 0.003;

    /// <summary>The first row behind the step, and by which share its ohms lie higher; null: there is none.</summary>
    /// <param name="volts">Volts in the order in which they were read.</param>
    /// <param name="amps">Amps beside them.</param>
    public static (int Row, double Share)? Of(double[] volts, double[] amps)
    {
        int[] rows = [.. Enumerable.Range(0, volts.Length).Where(i => volts[i] > 0 && amps[i] > 0)];
        double[] ohms = [.. rows.Select(i => volts[i] / amps[i])], watts = [.. rows.Select(i => volts[i] * amps[i])];
        if (rows.Length is < FewestInAll or > Most)
        {
            return null;
        }

        double middle = ohms.Average(), left = Square(Digits * middle) * (rows.Length - 3);
        double[] ohmsOff = Beside(ohms, watts);
        (int Row, double Share)? found = null;
        double most = Clear;
        for (int k = Fewest; k <= rows.Length - Fewest; k++)
        {
            if (Math.Max(watts[..k].Min(), watts[k..].Min()) >= Math.Min(watts[..k].Max(), watts[k..].Max()))
            {
                continue;
            }

            double[] stepOff = Beside([.. rows.Select((_, i) => i < k ? 0.0 : 1)], watts);
            double weight = stepOff.Sum(Square), step = stepOff.Zip(ohmsOff, (s, o) => s * o).Sum() / weight;
            double gain = step * step * weight, rest = Math.Max(left, ohmsOff.Sum(Square) - gain);
            double clear = gain / (rest / (rows.Length - 3));
            if (weight > 1e-9 && clear > most && Math.Abs(step) > Least * middle)
            {
                (most, found) = (clear, (rows[k], step / middle));
            }
        }

        return found;
    }

    /// <summary>What is left of y beside its line over x.</summary>
    private static double[] Beside(double[] y, double[] x)
    {
        var line = Curves.Guess(x, y);
        return [.. y.Zip(x, (value, at) => value - (line[0] + (line[1] * at)))];
    }

    private static double Square(double x) => x * x;
}

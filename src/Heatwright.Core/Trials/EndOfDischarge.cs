using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Whether a discharge went down to where its cell is empty.</summary>
internal static class EndOfDischarge
{
    /// <summary>A last part of the charge taken: what falls as fast as it did there reaches the cut-off within as much again, or the discharge was broken off. Our choice; a cell falls ever faster towards its end,
    /// and a tester that stops at its cut-off writes its last reading a little above it.</summary>
    private const double Last = 0.05;

    /// <summary>Share of the charge taken that may be missing at most down to the cut-off: 0 where it was reached; not a number where the discharge was broken off.</summary>
    /// <param name="volts">Volts at each row.</param>
    /// <param name="takenC">Charge taken at each row, coulomb.</param>
    /// <param name="cutV">Where the cell is empty, V.</param>
    public static double Missing(double[] volts, double[] takenC, double cutV)
    {
        if (volts.Any(v => v <= cutV))
        {
            return 0;
        }

        int from = Math.Max(0, Array.FindLastIndex(takenC, taken => taken <= (1 - Last) * takenC[^1]));
        double lowest = volts[from..].Min(); // a logger that goes on writes how the volts recover
        double fall = volts[from] - lowest, part = (takenC[^1] - takenC[from]) / takenC[^1];
        double share = fall > 0 ? part * (lowest - cutV) / fall : double.NaN;
        return share <= Last ? share : double.NaN;
    }

    /// <summary>Why a capacity is open upwards by what is missing.</summary>
    public static Cause Cause(Origin origin) => Quantities.Cause.Rectangular($"{(origin as Origin.Fitted)?.Trial} end of the discharge", CauseGroup.Trial);
}

using System.Globalization;
using Heatwright.Handbook;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>Chooses the gain resistors of a sensing chain: every pair that can be had is tried, none is guessed.</summary>
public static class ChainSearch
{
    /// <summary>Ground resistors lie between these, Ω: common practice, no source.</summary>
    public static readonly (double Low, double High) GroundOhms = (470, 4_700);

    /// <summary>Feedback resistors lie between these, Ω: common practice, no source.</summary>
    public static readonly (double Low, double High) FeedbackOhms = (10_000, 330_000);

    /// <summary>A gain below this share of the largest allowed wastes more than one bit and is not called near.</summary>
    private const double NearShare = 0.5;

    /// <summary>The chain with the largest gain from a series of preferred numbers.</summary>
    public static Checked<SensorChain> FromSeries(ChainWanted wanted, string series) =>
        Choose(wanted, series, PreferredNumbers.Between(series, FeedbackOhms.Low, FeedbackOhms.High), PreferredNumbers.Between(series, GroundOhms.Low, GroundOhms.High));

    /// <summary>The chain with the largest gain from the resistors in a drawer; a value that is there once cannot be both.</summary>
    public static Checked<SensorChain> FromDrawer(ChainWanted wanted, ResistorDrawer drawer)
    {
        if (drawer.Resistors.Count < 2 && drawer.Resistors.All(one => one.Count < 2))
        {
            return new(new Problem("A gain needs two resistors.", "resistor drawer", $"{drawer.Resistors.Count.ToString(CultureInfo.InvariantCulture)} in the drawer", "two or more", "Add what you have to the drawer, or choose from E24."));
        }

        double[] values = [.. drawer.Resistors.Select(one => one.Ohm).Distinct()];
        var chosen = Choose(wanted, "drawer", values, values, drawer);
        if (chosen.IsFine && chosen.Value.Pair.Use >= NearShare)
        {
            return chosen;
        }

        var bought = FromSeries(wanted, "E24");
        string limit = string.Create(CultureInfo.InvariantCulture, $"a gain between {NearShare * wanted.LargestGain:0.#} and {wanted.LargestGain:0.#}");
        string nearest = bought.IsFine
            ? string.Create(CultureInfo.InvariantCulture, $"Buy {Ohms(bought.Value.Pair.FeedbackOhm)} and {Ohms(bought.Value.Pair.GroundOhm)} of E24: gain {bought.Value.Pair.Gain:0.#}.")
            : bought.Problems[0].Next;
        return new(new Problem("No two resistors of the drawer make a gain near the one wanted.", "resistor drawer",
            chosen.IsFine ? string.Create(CultureInfo.InvariantCulture, $"the best pair makes {chosen.Value.Pair.Gain:0.##}") : "every pair is out of the limits", limit, nearest));
    }

    /// <summary>Ohms as a label says them.</summary>
    public static string Ohms(double ohm) => ohm >= 1e6 ? Plain(ohm / 1e6, "M") : ohm >= 1e3 ? Plain(ohm / 1e3, "k") : Plain(ohm, "");

    private static string Plain(double value, string prefix) => value.ToString("0.###", CultureInfo.InvariantCulture) + "\u00A0" + prefix + "Ω";

    private static Checked<SensorChain> Choose(ChainWanted wanted, string series, IReadOnlyList<double> feedback, IReadOnlyList<double> ground, ResistorDrawer? drawer = null)
    {
        if (Impossible(wanted) is { } why)
        {
            return new(why);
        }

        GainPair[] pairs = [.. Pairs(wanted, feedback, ground).Where(pair => pair.Gain > 1 && Settles(wanted, pair) && (drawer?.HasBoth(pair) ?? true))];
        return pairs.Length > 0
            ? new(new SensorChain(wanted, series, pairs[0], pairs.Length))
            : new(new Problem("No pair of resistors keeps all limits of the sensing chain.", series, string.Create(CultureInfo.InvariantCulture, $"gain at most {wanted.LargestGain:0.##}"),
                string.Create(CultureInfo.InvariantCulture, $"gain above 1, {Ohms(wanted.MostParallelOhm)} side by side at most, settled in {wanted.SettleMostS * 1e6:0} µs"),
                "Allow a longer wait (a faster amplifier), or more ohms side by side."));
    }

    private static IEnumerable<GainPair> Pairs(ChainWanted wanted, IReadOnlyList<double> feedback, IReadOnlyList<double> ground) => wanted.Form == AmplifierForm.NonInverting
        ? GainChoice.Feasible(feedback, ground, wanted.Tolerance, wanted.LargestGain, wanted.MostParallelOhm)
        : from f in feedback
          from g in ground
          let largest = Amplifier.DifferenceGain(f * (1 + wanted.Tolerance), g * (1 - wanted.Tolerance))
          where largest <= wanted.LargestGain && f * g / (f + g) <= wanted.MostParallelOhm
          let gain = Amplifier.DifferenceGain(f, g)
          orderby Math.Round(gain, 9) descending, g
          select new GainPair(f, g, gain, largest, largest / wanted.LargestGain);

    private static bool Settles(ChainWanted wanted, GainPair pair) =>
        Amplifier.SettlingS(Amplifier.TimeConstantS(Amplifier.BandwidthHz(wanted.BandwidthHz, pair.Gain)), wanted.Bits) <= wanted.SettleMostS;

    private static Problem? Impossible(ChainWanted wanted)
    {
        var curve = wanted.Curve;
        if (wanted.HottestC > curve.MaxC)
        {
            return new($"Type {curve.Type} is not defined so hot.", "sensor", Degrees(wanted.HottestC), $"at most {Degrees(curve.MaxC)}", "Take a sensor for that temperature, or read less far above the set point.");
        }

        if (wanted.RoomV - wanted.OutputBiasV <= wanted.FloorV)
        {
            return new("The amplifier has no room between its floor and its ceiling.", "supply of the amplifier", Volts(wanted.SupplyLeastV),
                $"above {Volts(wanted.FloorV + wanted.HeadroomV + wanted.OutputBiasV)}", $"Supply it from {Volts(Math.Ceiling((wanted.FloorV + wanted.HeadroomV + wanted.OutputBiasV + 1) * 10) / 10)} or more, or take off the output bias.");
        }

        return wanted.LargestGain > 1
            ? null
            : new("The signal needs no gain, or saturates at any.", "sensing chain", string.Create(CultureInfo.InvariantCulture, $"gain at most {wanted.LargestGain:0.###}"), "above 1",
                $"Raise the reference above {Volts(wanted.FullScaleV + wanted.OffsetV + wanted.OutputBiasV)}, or read the sensor without an amplifier.");

        static string Degrees(double value) => value.ToString("0.#", CultureInfo.InvariantCulture) + " °C";

        static string Volts(double value) => value.ToString("0.###", CultureInfo.InvariantCulture) + " V";
    }
}

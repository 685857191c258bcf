using Heatwright.Arrangements;
using Heatwright.Predictions;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>What a tool does where one claim of a seller is false: what a claim is worth is not in the ± that stands beside it.</summary>
/// <param name="Name">The input that rests on the claim.</param>
/// <param name="Less">What the tool does with that much less of it.</param>
/// <param name="More">With that much more.</param>
internal sealed record FalseClaim(string Name, Outcome Less, Outcome More)
{
    /// <summary>Ohms, amps, charge and watts of unbranded parts are taken as up to three times wrong: our choice, no source.</summary>
    public const double Times = 3;

    /// <summary>Volts as up to a quarter wrong: another chemistry, or a module turned to another output. Our choice, no source.</summary>
    public const double TimesOfVolts = 1.25;

    /// <summary>Degrees as up to so much wrong, K: our choice, no source.</summary>
    public const double Kelvins = 25;

    /// <summary>Every input that nobody measured and a seller speaks of, at both ends of what it may be.</summary>
    public static IReadOnlyList<FalseClaim> Of(PlantBuilder builder, CancellationToken cancel)
    {
        double[] middle = builder.Middle;
        int[] places = [.. Enumerable.Range(0, middle.Length).Where(i => builder.Inputs[i].Value.Origin.Weakest() is Origin.Claimed)];
        var runs = Predict.Many(builder, [.. places.SelectMany(place => new[] { Ends(place).Low, Ends(place).High }.Select(si => Turning.Moved(middle, place, si)))], cancel);
        return [.. places.Select((place, i) => new FalseClaim(builder.Inputs[place].Name, runs[2 * i], runs[(2 * i) + 1]))];

        (double Low, double High) Ends(int place)
        {
            var unit = builder.Inputs[place].Value.Unit;
            double times = unit.Measures(Units.Volt) ? TimesOfVolts : Times;
            return unit.IsLevel ? (middle[place] - Kelvins, middle[place] + Kelvins) : (middle[place] / times, middle[place] * times);
        }
    }
}

using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Ohms of a cell from a pulse run alone: those of its longest step, with a doubt for what a longer load adds, and those of its shortest for the first seconds.</summary>
internal static class PulseOhms
{
    /// <summary>A load of so long shows nearly all ohms that a tool's run meets, s: our choice.</summary>
    private const double SettledS = 120;

    /// <summary>Standard doubt for what comes after, as a share of the ohms for each tenfold of the time that is left to <see cref="SettledS"/>.</summary>
    /// <remarks>An 18650-size cell whose pulses of ten minutes stand in tests/reference: between 90 and 10 % charge its ohms grow by 40 to 65 % from 10 s to 120 s, and by 12 to 18 % from 60 s.
    /// Twice the doubt is that: 54 % and 15 %.</remarks>
    private const double SharePerDecade = 0.25;

    private const string Before = "ohms after ";

    /// <summary>The ohms that a loop asks for, from what a pulse run found.</summary>
    /// <param name="part">The cell.</param>
    /// <param name="trial">Its pulse run.</param>
    /// <param name="found">What that told.</param>
    /// <param name="known">What other trials, or the model of the cell, told.</param>
    public static PartFindings Of(Part part, Trial trial, IReadOnlyList<Finding> found, IReadOnlySet<string> known)
    {
        var steps = found.Where(finding => finding.Quantity.StartsWith(Before, StringComparison.Ordinal)).Select(finding => (Finding: finding, Seconds: Seconds(finding.Quantity))).OrderBy(one => one.Seconds).ToArray();
        if (steps.Length == 0 || known.Contains(PartQuantities.Ohms))
        {
            return new(part.Id, [], [], []);
        }

        var (longest, seconds) = steps[^1];
        double more = SharePerDecade * Math.Max(0, Math.Log10(SettledS / seconds));
        var ohms = more == 0 ? longest.Value : longest.Value with { Doubts = longest.Value.Doubts.With(Cause.Normal($"{part.Name}: ohms that a load longer than {Said(seconds)} adds", CauseGroup.Assumption), more * longest.Value.Value) };
        Remark[] says = more == 0 || trial.Runs is not [var run, ..] ? []
            : [new(trial.Id, run.Id, 0, string.Create(CultureInfo.InvariantCulture, $"The ohms after {Said(seconds)} stand for those of this cell until a discharge is there too. A load of minutes raises them: for that {100 * more:0} % are counted as doubt. Leave the load on for a minute or two to know them better."), Remark.Kept)];
        return new(part.Id, [new(part.Id, PartQuantities.Ohms, ohms), .. steps[0].Seconds < 10 || steps.Length > 1 ? [new Finding(part.Id, CellQuantities.FirstOhms, steps[0].Finding.Value)] : Array.Empty<Finding>()], says, []);
    }

    private static double Seconds(string quantity) => double.Parse(quantity[Before.Length..^2], CultureInfo.InvariantCulture);

    private static string Said(double seconds) => $"{Display.Significant(seconds, 2)} s";
}

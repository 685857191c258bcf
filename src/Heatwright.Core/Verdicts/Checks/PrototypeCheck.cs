using Heatwright.Numerics;
using Heatwright.Predictions;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>What the prototype did about one requirement.</summary>
/// <param name="Id">Unique in the study.</param>
/// <param name="Decision">The card that the prototype was built after.</param>
/// <param name="On">Date, year-month-day.</param>
/// <param name="Requirement">Id of the line.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="PlusMinus">Standard doubt of the reading.</param>
/// <param name="Unit">Unit symbol.</param>
public sealed record PrototypeReading(string Id, string Decision, string On, string Requirement, double Value, double PlusMinus, string Unit);

/// <summary>Whether the prototype kept a promise, and the prediction.</summary>
public enum Kept
{
    /// <summary>Nobody read it.</summary>
    NotTested,
    /// <summary>The reading keeps the limit.</summary>
    Kept,
    /// <summary>It does not.</summary>
    Missed,
}

/// <summary>One line of a check.</summary>
/// <param name="Requirement">Id.</param>
/// <param name="Promise">Against the limit of the brief.</param>
/// <param name="Read">The reading; null: not tested.</param>
/// <param name="Predicted">As the card has it.</param>
/// <param name="Doubts">How many standard doubts of reading and prediction they lie apart; NaN: not tested or not predicted, or the prediction is only the least it can be and the reading lies above.</param>
public sealed record CheckLine(string Requirement, Kept Promise, PrototypeReading? Read, FrozenLine Predicted, double Doubts)
{
    /// <summary>By how much a prototype lies above a sum that leaves something out, and what that may be; empty: nothing to say.</summary>
    public string Above { get; init; } = "";
}

/// <summary>One number that, changed alone, would explain what was read.</summary>
/// <param name="Name">Which.</param>
/// <param name="Now">What is believed, SI.</param>
/// <param name="Would">What it would have to be, SI.</param>
/// <param name="Words">As a maker says it.</param>
/// <param name="P">Chance of a misfit at least as large as what is left with it.</param>
public sealed record Culprit(string Name, double Now, double Would, string Words, double P);

/// <summary>A prototype beside its frozen prediction.</summary>
/// <param name="Lines">Line by line.</param>
/// <param name="P">Chance of a misfit at least as large as what was read, if the prediction holds.</param>
/// <param name="Culprits">Most likely first; empty: nothing needs explaining, or nothing single explains it.</param>
public sealed record CheckResult(IReadOnlyList<CheckLine> Lines, double P, IReadOnlyList<Culprit> Culprits)
{
    /// <summary>So many readings that a run tells were to be explained; 0: none lies apart, and no number was sought.</summary>
    public int Sought { get; init; }
}

/// <summary>Prototype readings against a decision card, and the single cause that would explain what differs.</summary>
public static class PrototypeCheck
{
    /// <summary>A misfit rarer than this asks for a reason; an explanation must leave a misfit more common than this.</summary>
    public const double Odd = 0.05;

    /// <summary>A number is looked for between a quarter and four times what is believed, and loop ohms up to ten times.</summary>
    private const double Reach = 10;

    /// <summary>The check.</summary>
    /// <param name="card">The frozen decision.</param>
    /// <param name="prediction">The chosen arrangement's plant, for refitting.</param>
    /// <param name="readings">What the prototype did.</param>
    /// <param name="now">How the chosen arrangement stands, for what its sums leave out; none: a mass leaves out what every mass does.</param>
    public static CheckResult Of(DecisionCard card, Prediction prediction, IReadOnlyList<PrototypeReading> readings, IReadOnlyList<RequirementVerdict>? now = null)
    {
        var lines = Lines(card, readings, now).ToArray();
        var brief = card.BriefThen;
        var told = lines.Where(line => line.Read is not null && double.IsFinite(line.Doubts))
            .Select(line => (Line: line, Requirement: brief.Requirements.First(one => one.Id == line.Requirement)))
            .Select(pair => (pair.Line, pair.Requirement, Tell: Told.ByRun(pair.Requirement, brief, prediction.Arrangement.Parallel))).Where(triple => triple.Tell is not null).ToArray();
        // All that was read counts, mass and price too; what a run tells is all that another number of the plant could explain.
        double p = Share([.. lines.Where(line => line.Read is not null && double.IsFinite(line.Doubts))]);
        if (told.Length == 0 || Share([.. told.Select(one => one.Line)]) >= Odd)
        {
            return new(lines, p, []);
        }

        var builder = prediction.Builder;
        double[] middle = builder.Middle;
        double Misfit(Outcome outcome)
        {
            return told.Sum(one =>
            {
                var unit = Units.Find(one.Requirement.Unit) ?? Units.One;
                double predicted = unit.FromSi(one.Tell!(outcome));
                double doubt = Math.Max(one.Line.Read!.PlusMinus, 0.2 * (one.Line.Predicted.StandardDoubt ?? 0));
                double apart = double.IsFinite(predicted) ? (one.Line.Read.Value - predicted) / doubt : 30;
                return Math.Min(900, apart * apart);
            });
        }

        // What explains several readings explains each of them alone, so one is asked as well. It leaves nothing over to tell the numbers apart by: that which need be moved least, for what is known of it, stands first.
        bool single = told.Length == 1;
        var refits = Enumerable.Range(0, middle.Length).Where(i => middle[i] > 0).AsParallel().AsOrdered().Select(i => (Refit: Refit(i), Doubt: builder.Inputs[i].Value.SiDoubt)).Where(one => one.Refit.P > Odd).ToArray();
        return new(lines, p, [.. (single ? refits.OrderBy(one => one.Doubt > 0 ? Math.Abs(one.Refit.Would - one.Refit.Now) / one.Doubt : double.PositiveInfinity) : refits.OrderByDescending(one => one.Refit.P)).Select(one => one.Refit)]) { Sought = told.Length };

        Culprit Refit(int place)
        {
            double[] Moved(IEnumerable<double> logs) => [.. Turning.Along(builder, place, logs.Select(log => middle[place] * Math.Exp(log))).Select(Misfit)];
            double span = Math.Log(Reach);
            double[] coarse = [.. Enumerable.Range(-12, 25).Select(step => step * span / 12)];
            double[] misfits = Moved(coarse);
            double best = coarse[Array.IndexOf(misfits, misfits.Min())];
            double low = best - (span / 12), high = best + (span / 12);
            for (int round = 0; round < 16; round++)
            {
                // Of four points inside, the best with its two neighbours is kept: two fifths.
                double fifth = (high - low) / 5;
                double[] four = Moved(Enumerable.Range(1, 4).Select(i => low + (i * fifth)));
                int at4 = Array.IndexOf(four, four.Min()) + 1;
                (low, high) = (low + ((at4 - 1) * fifth), low + ((at4 + 1) * fifth));
            }

            double at = (low + high) / 2, would = middle[place] * Math.Exp(at);
            var input = builder.Inputs[place];
            string more = would > middle[place] ? "more" : "less";
            double left = Moved([at])[0];
            double chance = ChiSquare.ShareAbove(left, Math.Max(1, told.Length - 1));
            return new(input.Name, middle[place], would, FormattableString.Invariant($"{Sentences.Input(input, Math.Abs(would - middle[place]))} {more} in {input.Name} would explain what was read{(single ? "" : $" (p = {chance:0.00})")}"), chance);
        }
    }

    /// <summary>Line by line, without seeking what would explain them.</summary>
    /// <param name="card">The frozen decision.</param>
    /// <param name="readings">What the prototype did.</param>
    /// <param name="now">How the chosen arrangement stands, for what its sums leave out.</param>
    public static IReadOnlyList<CheckLine> Lines(DecisionCard card, IReadOnlyList<PrototypeReading> readings, IReadOnlyList<RequirementVerdict>? now = null) =>
        [.. card.Lines.Select(line => Line(line, card.BriefThen, readings.FirstOrDefault(one => one.Requirement == line.Requirement), now ?? []))];

    /// <summary>What lies apart from its prediction, farthest first: where the readings together are odd, those two standard doubts off, else the farthest; empty: they agree.</summary>
    /// <param name="lines">Line by line.</param>
    public static IReadOnlyList<CheckLine> Apart(IReadOnlyList<CheckLine> lines)
    {
        const double doubts = 2;
        CheckLine[] far = [.. lines.Where(line => line.Read is not null && double.IsFinite(line.Doubts)).OrderByDescending(line => Math.Abs(line.Doubts))];
        return Share(far) >= Odd ? [] : [.. far.Where((line, i) => i == 0 || Math.Abs(line.Doubts) >= doubts)];
    }

    private static double Share(CheckLine[] lines) => lines.Length == 0 ? 1 : ChiSquare.ShareAbove(lines.Sum(line => line.Doubts * line.Doubts), lines.Length);

    private static CheckLine Line(FrozenLine frozen, Brief brief, PrototypeReading? read, IReadOnlyList<RequirementVerdict> now)
    {
        var line = brief.Requirements.FirstOrDefault(one => one.Id == frozen.Requirement);
        if (read is null || line is null)
        {
            return new(frozen.Requirement, Kept.NotTested, null, frozen, double.NaN);
        }

        double doubt = Math.Sqrt((read.PlusMinus * read.PlusMinus) + Math.Pow(frozen.StandardDoubt ?? 0, 2));
        bool keeps = line.AtMost ? read.Value <= line.Limit : read.Value >= line.Limit;
        var told = new CheckLine(frozen.Requirement, keeps ? Kept.Kept : Kept.Missed, read, frozen, frozen.Value is { } value && doubt > 0 ? (read.Value - value) / doubt : double.NaN);

        // A sum that leaves something out is the least it can be: more speaks for what was left out, and only less against the sum.
        string left = now.FirstOrDefault(one => one.Requirement.Id == line.Id)?.LeftOut is { Length: > 0 } words ? words : line.Quantity == RequirementQuantity.Mass ? StandingLines.NotCounted : "";
        return left.Length > 0 && told.Doubts > 0 ? told with
        {
            Doubts = double.NaN,
            Above = $"{(line.Quantity == RequirementQuantity.Mass ? "heavier" : "dearer")} than the counted parts by {Display.Significant(read.Value - frozen.Value!.Value, 2)}{Display.Behind(frozen.Unit)}: not counted were {left}",
        } : told;
    }
}

using System.Globalization;
using Heatwright.Handbook;
using Heatwright.Numerics;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Millivolts against degrees: which standard type, if any.</summary>
/// <remarks>The shared errors of probe, wire class and cold junction stay shared (see <see cref="UnknownCouple"/>). A type is named only where its chance is
/// above 5 % and that of the next below 1 in 1000; 'not a standard type' and 'cannot tell' are answers.</remarks>
internal static class CoupleKind
{
    /// <summary>Between readings so far apart a slope can be told: our choice, five times what a probe of 2 K twice is off.</summary>
    private const double ApartK = 15;

    private static readonly string[] Letters = ["K", "J", "T", "N", "E", "R", "S"];

    public static Checked<TrialAnswer> Run(TrialSheet read)
    {
        var sheet = read.Whole("volts", "degrees");
        if ((Curves.TooFew(sheet, 3, "millivolts and degrees") ?? Curves.OneLevel(sheet, "degrees", 15)) is { } few)
        {
            return new(few);
        }

        double[] volts = sheet["volts"], degrees = sheet["degrees"];
        double cold = sheet.Setting("cold"), probe = sheet.Setting("probe doubt");
        double probeOwn = probe > 0 ? probe : Math.Sqrt(sheet.Own("degrees").Average(o => o * o)); // what is said of the probe holds its last digit too
        double share = sheet.Shared.Where(e => e.Column == "volts").Select(e => e.Gain * e.Gain).Sum() is var g and > 0 ? Math.Sqrt(g) : 0.005 / Math.Sqrt(3);
        double stands = Math.Sqrt(Math.Pow(sheet.Shared.Where(e => e.Column == "volts").Sum(e => e.Offset), 2) + sheet.Own("volts").Average(o => o * o) + 1e-12);
        var readings = new CoupleReadings(volts, degrees, cold, probeOwn, share, stands, sheet.Setting("cold doubt"));
        var matches = Letters.Select(letter => (Curve: Thermocouples.Find(letter)!, Class: CoupleTolerances.Find(letter, 2)))
            .Where(pair => degrees.All(c => c > pair.Curve.MinC && c < pair.Curve.MaxC)).Select(pair => UnknownCouple.Compare(pair.Curve, c => Limit(pair.Class, c) / 2, readings)).ToArray();
        double span = degrees.Max() - degrees.Min();
        var (slope, error) = UnknownCouple.StraightLine(volts, degrees);
        double middle = degrees.Average(), promised = Math.Sqrt(Math.Pow(slope * probeOwn, 2) + sheet.Own("volts").Average(o => o * o)) / Math.Sqrt(degrees.Sum(c => (c - middle) * (c - middle)));
        int[] steps = Steps(degrees);
        bool steady = sheet.Count < 4 || span < 60 || UnknownCouple.HasSteadySlope([.. steps.Select(i => volts[i])], [.. steps.Select(i => degrees[i])]);
        var answer = UnknownCouple.Answer(matches);
        var best = matches.MaxBy(match => Math.Max(match.Probability, match.ReversedProbability))!;
        var both = matches.Where(match => match.Probability >= UnknownCouple.RuledOut).OrderByDescending(match => match.Probability).ToArray();
        string word = Math.Abs(slope) is < 4e-6 or > 95e-6 || !steady ? "not a thermocouple"
            : answer switch
            {
                CoupleAnswer.OneType => best.Type,
                CoupleAnswer.Reversed => $"{best.Type} with its leads swapped",
                CoupleAnswer.NoStandardType => "not a standard type",
                _ => "cannot tell",
            };
        List<string> says = [$"Answer: {word}."];
        List<string> next = [];
        if (word == "cannot tell")
        {
            string names = string.Join(" or ", both.Select(match => match.Type).Take(3));
            bool alone = both.Length == 1;
            says.Add(alone ? string.Create(CultureInfo.InvariantCulture, $"Of the usual types only {names} is left, and it fits poorly: chance alone misfits as badly in {100 * best.Probability:0.0} % of cases.") : $"{names}: these readings do not tell them apart.");
            double hotter = degrees.Max() + Math.Max(100, span);
            next.Add(string.Create(CultureInfo.InvariantCulture, $"Take a reading near {Math.Round(hotter / 50) * 50:0} °C, and read the probe to a degree: it {(alone ? $"says whether it is {names}" : $"separates {names}")}."));
        }
        else if (word == "not a standard type")
        {
            says.Add($"Nearest is {best.Type}, {string.Create(CultureInfo.InvariantCulture, $"{best.Gain:0.000} of it")}: keep your own table; a standard one times a number is wrong elsewhere.");
        }
        else if (word == "not a thermocouple")
        {
            says.Add(string.Create(CultureInfo.InvariantCulture, $"{slope * 1e6:0.0} µV/K on the mean, and it wanders: clip, probe or meter?"));
            next.Add("Do the sensor test first: both ends level, warmed, leads swapped, again.");
        }

        if (span < 150)
        {
            next.Add("Readings over 150 K or more tell types apart far better.");
        }

        return new(new TrialAnswer(sheet.Card.Name, Slope(sheet, slope, error, promised), says)
        {
            Word = word,
            Next = next,
            Tried = [.. matches.OrderByDescending(match => match.Probability).Select(match => new TriedModel($"type {match.Type}", 0, match.ChiSquare, double.NaN, double.NaN, double.NaN, match.Probability, string.Create(CultureInfo.InvariantCulture, $"gain {match.Gain:0.000}; leads swapped {match.ReversedProbability:0.000}")) { Chosen = match.Type == word[..1] })],
            Picture = new("degrees", "°C", "volts", "V", degrees, volts, [.. degrees.Select(c => volts.Average() + (slope * (c - degrees.Average())))]),
            Notes = sheet.Notes,
        });
    }

    private static TrialFinding[] Slope(TrialSheet sheet, double slope, double error, double promised)
    {
        // What is said of the probe holds where the scatter is of that size: then it is known, not guessed from few readings. That the volts of a couple bend is no scatter.
        bool bends = sheet.Count >= 7; // fewer readings hardly tell a bend from scatter
        if (bends)
        {
            double[] c = sheet["degrees"], v = sheet["volts"];
            double middle = c.Average();
            var bent = LinearLeastSquares.Polynomial([.. c.Select(each => each - middle)], v, 2);
            error = Math.Sqrt(bent.ResidualSumOfSquares / bent.DegreesOfFreedom / c.Sum(each => (each - middle) * (each - middle)));
        }

        error = error > 1.6 * promised || sheet.Count < 4 ? error : bends ? promised : Math.Max(promised, Math.Min(error, 1.1 * promised));
        var doubts = Doubts.From(Cause.Normal("couple-type scatter", CauseGroup.Trial), error * 1e6);
        foreach (var moved in sheet.Shared)
        {
            doubts = doubts.With(moved.Cause, (UnknownCouple.StraightLine(sheet.Moved(moved)["volts"], sheet.Moved(moved)["degrees"]).SlopeVPerK - slope) * 1e6);
        }

        return [new("slope", new Estimate(slope * 1e6, Units.MicrovoltPerKelvin, doubts, new Origin.Fitted(new TrialId(sheet.Card.Name), [new RunId(sheet.Card.Name)])), error * 1e6, error > 1.6 * promised ? sheet.Count - (bends ? 3 : 2) : double.PositiveInfinity)];
    }

    private static double Limit(CoupleTolerance wire, double c) => c < wire.MinC ? Math.Max(wire.FixedK, wire.Share * Math.Abs(c)) : c > wire.MaxC ? wire.Share * c : wire.LimitK(c);

    /// <summary>Readings from cold to hot, each so far above the one before that a probe of 2 K makes no slope of its own: two at one temperature have none at all.</summary>
    private static int[] Steps(double[] degrees)
    {
        List<int> steps = [];
        foreach (int i in Enumerable.Range(0, degrees.Length).OrderBy(i => degrees[i]))
        {
            if (steps.Count == 0 || degrees[i] - degrees[steps[^1]] >= ApartK)
            {
                steps.Add(i);
            }
        }

        return [.. steps];
    }
}

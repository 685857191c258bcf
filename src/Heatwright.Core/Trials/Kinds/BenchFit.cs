using System.Globalization;
using Heatwright.Numerics;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Fits the models of a bench test, flags what does not belong, chooses the order, and carries the shared errors of instruments through.</summary>
/// <remarks>Order: a larger model must bring its criterion down by 2, pass an F test at 1 % where it holds the smaller one, keep its open numbers inside
/// their bounds and known to half of their value, and have three readings a number ([hurvich-1989], [burnham-anderson-2002], from memory).
/// Shared errors are not in the scatter: each is an unknown beside the open numbers (<see cref="SharedFit"/>), so that what cancels in a difference cancels here.</remarks>
internal sealed class BenchFit
{
    private const double FarOff = 6;

    /// <summary>Chance of a gain beyond which a larger model stands, though one of its numbers may be next to nothing: a module that needs hardly any watts for itself still has ohms.</summary>
    private const double Beyond = 1e-6;

    /// <summary>Of more readings one slip does not pull the law after it.</summary>
    private const int Fewer = 60;

    /// <summary>Sum of squares a degree of freedom beyond which a fit is looked through for a slip.</summary>
    private const double Misfit = 9;

    /// <summary>How seldom chance alone may put a reading of a fit aside.</summary>
    private const double Luck = 1e-4;

    private readonly IReadOnlyList<BenchModel> models;

    private BenchFit(IReadOnlyList<BenchModel> models) => this.models = models;

    /// <summary>One model at its best open numbers.</summary>
    internal sealed record Solved(BenchModel Model, double[] P, double[,] Covariance, double[] Left, double[] Doubt, double Rss, bool Stuck, bool Open)
    {
        public int Free => Left.Length - P.Length;

        /// <summary>Models that were not chosen and are not ruled out, each with its likelihood against the chosen one.</summary>
        public IReadOnlyList<(Solved Solved, double Likelihood)> Rivals { get; init; } = [];
    }

    public static TrialAnswer Run(TrialSheet sheet, params BenchModel[] models) => new BenchFit(models).Answer(sheet);

    /// <summary>The best open numbers of one model.</summary>
    public static Solved Solve(BenchModel model, TrialSheet sheet, double[]? start = null)
    {
        double[] first = start ?? model.Start(sheet);
        double[] y = sheet[model.Y];
        double[] doubt = Doubts(model, sheet, first);
        LeastSquaresFit? fit = null;
        for (int pass = 0; pass < (model.Doubt is null ? 2 : 8); pass++)
        {
            double[] u = doubt;
            var problem = new LeastSquaresProblem(
                (p, r) =>
                {
                    double[] modelled = model.Predict(sheet, p.ToArray());
                    for (int i = 0; i < r.Length; i++)
                    {
                        r[i] = (modelled[i] - y[i]) / u[i];
                    }
                },
                y.Length, fit?.Parameters ?? first)
            {
                Lower = model.Lower,
                Upper = model.Upper,
                PriorMean = model.Prior?.Mean,
                PriorDoubt = model.Prior?.Doubt,
                MaxIterations = 80,
            };
            fit = pass == 0 && start is null && model.Further is { } further
                ? LeastSquares.FitFromSeveralStarts(problem, further(first).Select(each => Inside(model, each)))
                : LeastSquares.Fit(problem);
            double[] next = Doubts(model, sheet, fit.Parameters);
            bool settled = next.Zip(doubt).All(pair => Math.Abs(pair.First - pair.Second) <= 1e-7 * pair.Second);
            if (settled)
            {
                break;
            }

            doubt = next;
        }

        double[] left = model.Predict(sheet, fit!.Parameters);
        for (int i = 0; i < left.Length; i++)
        {
            left[i] = (left[i] - y[i]) / doubt[i];
        }

        return new(model, fit.Parameters, fit.Covariance, left, doubt, left.Sum(r => r * r), fit.AtBound.Any(at => at), fit.Undetermined.Any(open => open));
    }

    private static double[] Inside(BenchModel model, double[] p) =>
        [.. p.Select((value, j) => Math.Clamp(value, model.Lower?[j] ?? double.NegativeInfinity, model.Upper?[j] ?? double.PositiveInfinity))];

    /// <summary>Doubt of each Y: its own, and what the own doubts of the X do to the model. One for all where nothing is known.</summary>
    private static double[] Doubts(BenchModel model, TrialSheet sheet, double[] p)
    {
        double[] own = [.. model.Doubt?.Invoke(sheet, p) ?? sheet.Own(model.Y)];
        double[] middle = model.Predict(sheet, p);
        foreach (string x in model.X)
        {
            double[] step = sheet.Own(x);
            if (step.All(s => s == 0))
            {
                continue;
            }

            double[] moved = model.Predict(sheet.With(x, [.. sheet[x].Zip(step, (a, b) => a + b)], step), p);
            for (int i = 0; i < own.Length; i++)
            {
                double push = moved[i] - middle[i];
                own[i] = double.IsFinite(push) ? Math.Sqrt((own[i] * own[i]) + (push * push)) : own[i];
            }
        }

        double least = 1e-3 * Sample.Median(own); // a reading of nothing has a doubt of nothing, and would rule the fit
        return own.All(u => !(u > 0)) ? [.. own.Select(_ => 1.0)] : [.. own.Select(u => Math.Max(u, Math.Max(least, own.Where(o => o > 0).Min())))];
    }

    private TrialAnswer Answer(TrialSheet all)
    {
        var sheet = all;
        List<TrialRemark> remarks = [];
        var (best, tried, next) = Choose(sheet);
        for (int pass = 0; pass < 3 && sheet.Count >= 8; pass++)
        {
            int[] far = Single(FarRows(best), best) is { Length: > 0 } rows ? rows : Alone(sheet, best);
            if (far.Length == 0 || far.Length > sheet.Count / 5)
            {
                break;
            }

            remarks.AddRange(far.Select(row => Far(sheet, best, row)));
            sheet = sheet.Without(far);
            (best, tried, next) = Choose(sheet);
        }

        if (remarks.Count == 0 && sheet.Count >= 4)
        {
            remarks.AddRange(Single(FarRows(best, OutlierScores.Suspicious + 0.5), best).Select(row => Far(sheet, best, row) with { LeftOut = false, Level = "W" }));
        }

        return Report(all, sheet, best, tried, next, remarks);
    }

    private static TrialRemark Far(TrialSheet sheet, Solved best, int row)
    {
        double off = Scores(best)[row];
        return new(sheet.Numbers[row], "S23", "E", string.Create(CultureInfo.InvariantCulture,
            $"{best.Model.Y} lies {Math.Abs(off):0.0} usual spreads {(off > 0 ? "below" : "above")} what the other readings say."), "Look at the clip, the range and the unit of this reading; take it again.")
        { LeftOut = true };
    }

    /// <summary>Without those of which <see cref="Stretch"/> or more in a row lie off on one side: there it is the law that does not hold.</summary>
    private static int[] Single(int[] far, Solved best)
    {
        double[] scores = Scores(best);
        int Reach(int row, int way)
        {
            int steps = 0;
            while (row + way >= 0 && row + way < scores.Length && Math.Abs(scores[row + way]) > FarOff / 2 && Math.Sign(scores[row + way]) == Math.Sign(scores[row]))
            {
                (row, steps) = (row + way, steps + 1);
            }

            return steps;
        }

        return [.. far.Where(row => 1 + Reach(row, -1) + Reach(row, +1) < Stretch)];
    }

    /// <summary>Slips come alone or in twos: our choice.</summary>
    private const int Stretch = 3;

    private static int[] FarRows(Solved best, double limit = FarOff)
    {
        double[] scores = Scores(best);
        return [.. Enumerable.Range(0, scores.Length).Where(row => Math.Abs(scores[row]) > limit)];
    }

    /// <summary>The reading without which the law fits and with which it does not, when one slip has pulled the law so far that no reading lies far off it: each is left out in turn,
    /// and the misfit that goes with it (Student's t of a deleted residual, squared) has to be what chance brings in one fit of ten thousand.</summary>
    private int[] Alone(TrialSheet sheet, Solved best)
    {
        int n = sheet.Count;
        if (n is < 8 or > Fewer || best.Free < 5 || best.Rss < Misfit * best.Free || SharedFit.Judged(sheet, best).Rss < Misfit * best.Free)
        {
            return [];
        }

        int most = -1;
        double least = Luck / n;
        foreach (var model in models)
        {
            double with = Solve(model, sheet).Rss;
            for (int row = 0; row < n; row++)
            {
                var without = Solve(model, sheet.Without(row));
                double luck = without.Free < 4 || without.Stuck ? 1 : 2 * (1 - StudentT.ShareBelow(Math.Sqrt(Math.Max(0, with - without.Rss) * without.Free / Math.Max(without.Rss, 1e-12 * with)), without.Free));
                if (luck < least)
                {
                    (least, most) = (luck, row);
                }
            }
        }

        return most < 0 ? [] : [most];
    }

    /// <summary>Spreads each reading lies off: against the robust spread of the others, never finer than its own doubt.</summary>
    private static double[] Scores(Solved best)
    {
        double middle = Sample.Median(best.Left);
        double spread = Math.Max(1, Sample.Median([.. best.Left.Select(left => Math.Abs(left - middle))]) / Quantiles.Normal(0.75));
        spread *= Math.Sqrt(best.Left.Length / Math.Max(1.0, best.Free));
        return [.. best.Left.Select(left => left / spread)];
    }

    private (Solved Best, List<TriedModel> Tried, List<string> Next) Choose(TrialSheet sheet)
    {
        List<TriedModel> tried = [];
        List<string> next = [];
        Solved? best = null, bestJudged = null;
        double bestAicc = 0;
        List<(Solved Solved, double Aicc)> open = [];
        int chosen = 0;
        foreach (var model in models)
        {
            int k = model.Start(sheet).Length;
            if (best is not null && sheet.Count < Math.Max(3 * k, k + 2))
            {
                tried.Add(new(model.Name, k, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, string.Create(CultureInfo.InvariantCulture, $"not tried: {sheet.Count} readings for {k} numbers, {3 * k} are wanted")));
                Add(next, model.Decides);
                continue;
            }

            var solved = Solve(model, sheet);
            var judged = models.Count == 1 ? solved : SharedFit.Judged(sheet, solved);
            int n = sheet.Count;
            double aicc = InformationCriteria.Aicc(judged.Rss, n, k);
            double z = RunsTest.Of(judged.Left).Z;
            double p = best is null || model.Apart || k <= best.P.Length || judged.Free < 1 || !(judged.Rss > 0) ? double.NaN : InformationCriteria.NestedF(bestJudged!.Rss, best.P.Length, judged.Rss, k, n).P;
            string why = best is null ? "the simplest" : Refusal(judged, aicc, bestAicc, p, model.Apart);
            bool better = best is null || why.Length == 0;
            if (!better && (p is < 0.1 and >= 0.01 || why.StartsWith("its", StringComparison.Ordinal)))
            {
                Add(next, model.Decides);
            }

            double spread = Math.Sqrt(judged.Left.Zip(judged.Doubt, (left, doubt) => left * left * doubt * doubt).Sum() / Math.Max(1, judged.Free));
            tried.Add(new(model.Name, k, judged.Rss, spread, aicc, z, p, better && best is not null ? "explains clearly more" : why));
            open.Add((solved, aicc));

            if (better)
            {
                (best, bestJudged, bestAicc, chosen) = (solved, judged, aicc, tried.Count - 1);
            }
        }

        tried[chosen] = tried[chosen] with { Chosen = true };
        if (tried[chosen].RunsZ < -2 && sheet.Count >= 12 && bestJudged!.Rss > 1.5 * sheet.Count)
        {
            next.Add(string.Create(CultureInfo.InvariantCulture, $"What '{best!.Model.Name}' leaves over changes sign too seldom (z = {tried[chosen].RunsZ:0.0}): something is missing in the model, and the stated doubts are too small."));
        }

        return (best! with { Rivals = [.. open.Where(rival => Stays(rival.Solved, best)).Select(rival => (rival.Solved, Likelihood(bestAicc - rival.Aicc)))] }, tried, next);
    }

    /// <summary>Likelihood of a model against the chosen one; of two that leave over nothing at all, the simpler stands alone.</summary>
    private static double Likelihood(double gain) => double.IsNaN(gain) ? 0 : Math.Exp(Math.Min(0, gain) / 2);

    /// <summary>A larger model that the readings do not rule out.</summary>
    private static bool Stays(Solved rival, Solved best) => !rival.Model.Apart && !rival.Stuck && !rival.Open && rival.Free > 0 && rival.P.Length > best.P.Length;

    private static void Add(List<string> next, string reading)
    {
        if (reading.Length > 0 && !next.Contains(reading))
        {
            next.Add(reading);
        }
    }

    private static string Refusal(Solved solved, double aicc, double bestAicc, double p, bool apart) =>
        solved.Stuck ? "a number ran into its bound"
        : solved.Open ? "the readings leave a number open"
        : (solved.Model.Needs ?? Enumerable.Range(0, solved.P.Length)).Any(j => ScaledError(solved, j) > 0.5 * Math.Abs(solved.P[j])) && !(p < Beyond) ? "its last number is known to no better than half of its value"
        : !(aicc < bestAicc - 2) ? "explains no more than the simpler one"
        : !apart && p > 0.01 ? "its gain may be luck"
        : "";

    private static double ScaledError(Solved solved, int j) => Math.Sqrt(solved.Covariance[j, j] * Math.Max(1, solved.Free > 0 ? solved.Rss / solved.Free : 1));

    private static TrialAnswer Report(TrialSheet all, TrialSheet sheet, Solved best, List<TriedModel> tried, List<string> next, List<TrialRemark> remarks)
    {
        var (values, doubts, scatter, degrees) = FitScatter.Of(sheet, best);
        var origin = new Origin.Fitted(new TrialId(sheet.Card.Name), [new RunId(sheet.Card.Name)]);
        TrialFinding[] findings = [.. best.Model.Tells.Select((told, i) => (told, i)).Where(pair => double.IsFinite(values[pair.i]))
            .Select(pair => new TrialFinding(pair.told.Name, new Estimate(pair.told.Unit.FromSi(values[pair.i]), pair.told.Unit, doubts[pair.i].Times(1 / pair.told.Unit.Factor), origin),
                scatter[pair.i] / pair.told.Unit.Factor, degrees))];
        return new(sheet.Card.Name, findings, [])
        {
            Tried = tried,
            Next = next,
            Remarks = remarks,
            Notes = all.Notes,
            Picture = Picture(all, sheet, best),
        };
    }

    private static TrialPicture Picture(TrialSheet all, TrialSheet sheet, Solved best)
    {
        string x = best.Model.X.Length > 0 ? best.Model.X[0] : "";
        double[] fitted = best.Model.Predict(sheet, best.P);
        double scale = Math.Sqrt(Math.Max(1, best.Free > 0 ? best.Rss / best.Free : 1));
        double[,] slopes = FitScatter.Slopes(p => best.Model.Predict(sheet, p), best.P);
        return new(x.Length > 0 ? x : "reading", Si(all.Card, x), best.Model.Y, Si(all.Card, best.Model.Y),
            x.Length > 0 ? sheet[x] : [.. sheet.Numbers.Select(n => (double)n)], sheet[best.Model.Y], fitted)
        {
            Band = [.. fitted.Select((_, i) => scale * FitBand.At(slopes, i, best.Covariance))],
            LeftOut = [.. all.Numbers.Except(sheet.Numbers)],
        };
    }

    /// <summary>Unit of a column in SI, as the sheet holds it.</summary>
    private static string Si(TrialCard card, string column) => card.Column(column) is { } known && Units.Find(known.Unit) is { } unit
        ? unit.IsLevel ? unit.Symbol : (SiPrefix.BaseOf(unit) ?? unit).Symbol : "";
}

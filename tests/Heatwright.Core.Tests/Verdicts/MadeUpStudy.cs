using Heatwright.Numerics;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>Three choices over ten things in doubt, with their truth.</summary>
internal sealed class MadeUpStudy
{
    private const int Things = 10, Choices = 3, Draws = 400;
    private const double Scatter = 0.1;

    private readonly int number;
    private readonly double[][] leans = new double[Choices][];
    private readonly double[] offsets = new double[Choices];
    private readonly double[] doubts = new double[Things];
    private readonly double[] truth = new double[Things];

    public MadeUpStudy(int number)
    {
        this.number = number;
        for (int k = 0; k < Things; k++)
        {
            doubts[k] = 0.5 + Uniform(1, k);
            truth[k] = doubts[k] * Normal(2, k);
        }

        for (int c = 0; c < Choices; c++)
        {
            // Each choice leans strongly on two things and hardly on the rest, as tools do.
            int strong = (int)(Uniform(3, c) * Things), other = (int)(Uniform(4, c) * Things);
            leans[c] = [.. Enumerable.Range(0, Things).Select(k => (k == strong || k == other ? 1.0 : 0.05) * (Uniform(5, (c * Things) + k) < 0.5 ? -1 : 1))];
            offsets[c] = 1.6 * (Uniform(6, c) - 0.5);
        }
    }

    public bool SureAtOnce => new ReadingValue(Right(truth, [])).WrongNow <= NextReadings.SureEnough;

    /// <summary>Trials done before the choice is sure, in the order that a rule gives.</summary>
    public int TrialsUntilSure(Func<HashSet<int>, int> rule, out bool choseRight)
    {
        HashSet<int> done = [];
        while (true)
        {
            var value = new ReadingValue(Right(truth, done));
            if (value.WrongNow <= NextReadings.SureEnough || done.Count == Things)
            {
                double[][] real = Rows(truth.Select(t => new[] { t }).ToArray());
                choseRight = real[value.Best][0] == 1;
                return done.Count;
            }

            done.Add(rule(done));
        }
    }

    public int Advised(HashSet<int> done)
    {
        var value = new ReadingValue(Right(truth, done));
        double[][] drawn = Drawn(done);
        return Open(done).OrderByDescending(k => value.Drop([[.. drawn[k].Select((x, i) => x + (Scatter * doubts[k] * Normal(8, (k * Draws) + i)))]])).ThenByDescending(k => doubts[k]).First();
    }

    public int InAnyOrder(HashSet<int> done) => Open(done).OrderBy(k => Uniform(9, k)).First();

    public int LargestDoubt(HashSet<int> done) => Open(done).OrderByDescending(k => doubts[k]).First();

    /// <summary>Minutes that a trial takes, 3 to 18, drawn apart from what it is worth.</summary>
    public double Minutes(int k) => 3 + (15 * Uniform(13, k));

    public int Cheapest(HashSet<int> done) => Open(done).OrderBy(Minutes).First();

    private static IEnumerable<int> Open(HashSet<int> done) => Enumerable.Range(0, Things).Where(k => !done.Contains(k));

    /// <summary>A thing that was tried is known to the trial's scatter about what it showed; the others are as they were.</summary>
    private double[][] Drawn(HashSet<int> done) => [.. Enumerable.Range(0, Things).Select(k => Enumerable.Range(0, Draws)
        .Select(i => done.Contains(k) ? truth[k] + (Scatter * doubts[k] * (Normal(10, k) + Normal(11, (k * Draws) + i))) : doubts[k] * Normal(12, (k * Draws) + i)).ToArray())];

    private double[][] Right(double[] _, HashSet<int> done) => Rows(Drawn(done));

    private double[][] Rows(double[][] things)
    {
        int draws = things[0].Length;
        double[][] keeps = [.. Enumerable.Range(0, Choices).Select(c => Enumerable.Range(0, draws)
            .Select(i => offsets[c] + Enumerable.Range(0, Things).Sum(k => leans[c][k] * things[k][i]) > 0 ? 1.0 : 0).ToArray())];
        return [.. keeps, [.. Enumerable.Range(0, draws).Select(i => keeps.All(row => row[i] == 0) ? 1.0 : 0)]];
    }

    private double Uniform(ulong stream, int i) => CounterRandom.Uniform((ulong)number, stream, (ulong)i);

    private double Normal(ulong stream, int i) => Quantiles.Normal(Uniform(stream, i));
}

using Heatwright.Plant;
using Heatwright.Predictions;

namespace Heatwright.Report;

/// <summary>A run cut into stretches of whole pieces of work: mean of the middle run in each, and the range of what happens in it.</summary>
/// <param name="Minutes">Middle of each stretch.</param>
/// <param name="Mean">Mean of the middle run.</param>
/// <param name="Low">Lowest of middle run and lower edge of the band.</param>
/// <param name="High">Highest of middle run and upper edge of the band.</param>
internal sealed record Stretches(double[] Minutes, double[] Mean, double[] Low, double[] High)
{
    /// <summary>About so many stretches a run.</summary>
    private const int About = 24;

    /// <summary>Stretches from the target on, or from the start where the target is never reached.</summary>
    /// <param name="run">When it reached the target, and when it ended.</param>
    /// <param name="trace">Its values.</param>
    /// <param name="band">The band that belongs to the values.</param>
    /// <param name="values">What the curve shows.</param>
    /// <param name="everyS">Time from piece to piece: a stretch holds whole pieces, or its mean would wander with where it begins.</param>
    public static Stretches Of(PlantRun run, Trace trace, Band band, Func<Trace, double[]> values, double everyS)
    {
        double fromS = double.IsNaN(run.TargetS) ? 0 : run.TargetS;
        return Of(trace.TimesS[..trace.Count], values(trace)[..trace.Count], band, fromS, run.RunTimeS, everyS);
    }

    /// <summary>Stretches of a curve and its band between two times; stretches without a value are left out, a last one that is cut short too.</summary>
    internal static Stretches Of(double[] timesS, double[] values, Band band, double fromS, double toS, double everyS)
    {
        List<(double Minute, double Mean, double Low, double High)> kept = [];
        double stepS = Math.Max(1, Math.Ceiling((toS - fromS) / About / everyS)) * everyS;
        int count = Math.Max(1, (int)((toS - fromS) / stepS));
        for (int i = 0; i < count; i++)
        {
            double startS = fromS + (i * stepS);
            bool Inside(double s) => s >= startS && s < startS + stepS;
            double[] own = [.. values.Where((value, at) => Inside(timesS[at]) && double.IsFinite(value))];
            if (own.Length == 0)
            {
                continue;
            }

            double low = band.Low.Where((value, at) => Inside(band.TimesS[at]) && double.IsFinite(value)).DefaultIfEmpty(double.PositiveInfinity).Min();
            double high = band.High.Where((value, at) => Inside(band.TimesS[at]) && double.IsFinite(value)).DefaultIfEmpty(double.NegativeInfinity).Max();
            kept.Add(((startS + (stepS / 2)) / 60, own.Average(), Math.Min(low, own.Min()), Math.Max(high, own.Max())));
        }

        return new([.. kept.Select(one => one.Minute)], [.. kept.Select(one => one.Mean)], [.. kept.Select(one => one.Low)], [.. kept.Select(one => one.High)]);
    }
}

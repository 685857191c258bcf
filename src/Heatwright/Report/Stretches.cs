using Heatwright.Plant;
using Heatwright.Predictions;

namespace Heatwright.Report;

/// <summary>A run cut into stretches of whole pieces of work: mean of the middle run in each, and the range of what happens in it.</summary>
/// <param name="Minutes">Middle of each stretch.</param>
/// <param name="Mean">Mean of the middle run.</param>
/// <param name="Low">Lowest of middle run and lower edge of the band.</param>
/// <param name="High">Highest of middle run and upper edge of the band.</param>
public sealed record Stretches(double[] Minutes, double[] Mean, double[] Low, double[] High)
{
    /// <summary>About so many stretches a run.</summary>
    private const int About = 24;

    /// <summary>About so many where the picture is as wide as a page.</summary>
    private const int Wide = 200;

    /// <summary>Looks that a piece with its pause needs to be seen.</summary>
    private const int LooksToSee = 4;

    /// <summary>So many looks to either side: a dip of a seventh of a piece is hardly missed by thirteen.</summary>
    private const int LooksAbout = 6;

    /// <summary>A band's curve as it goes up and down with the work, where its own looks are too few to show that; null: they show it, there is no work, or it is slower than the work, as grip and cells are.</summary>
    /// <param name="prediction">The prediction.</param>
    /// <param name="band">One of its bands.</param>
    /// <param name="everyS">Time from piece to piece.</param>
    public static Stretches? Whole(Prediction prediction, Band band, double everyS)
    {
        if (band.Name is "grip" or "cells" || prediction.Arrangement.Lamp is not null || !(everyS > 0) || band.TimesS.Length < 2 || band.TimesS[^1] - band.TimesS[^2] <= everyS / LooksToSee)
        {
            return null;
        }

        var fine = FineRun.Of(prediction, everyS);
        double[] values = band.Name switch
        {
            "pack" => fine.TerminalV,
            "heater" => fine.LoadW,
            _ => [.. fine.NodesK[0].Select(kelvin => kelvin - Quantities.Units.ZeroCelsiusK)],
        };
        return Of(fine.TimesS[..fine.Count], values[..fine.Count], band with { TimesS = [], Low = [], High = [], Middle = [] }, 0, prediction.Middle.RunTimeS, everyS, Wide);
    }

    /// <summary>The band of what goes up and down with the work, each end as far as it reaches among the looks about it: one look that falls in step with the work sees it always or never.</summary>
    /// <param name="band">The band as it was looked at.</param>
    public static Band Widened(Band band)
    {
        if (band.Name is not ("working end" or "heater"))
        {
            return band; // pack, grip and cells are slower than the work
        }

        double[] Reach(double[] ends, Func<IEnumerable<double>, double> farthest) =>
            [.. ends.Select((end, i) => double.IsFinite(end) ? farthest(ends[Math.Max(0, i - LooksAbout)..Math.Min(ends.Length, i + LooksAbout + 1)].Where(double.IsFinite)) : end)];
        return band with { Low = Reach(band.Low, Enumerable.Min), High = Reach(band.High, Enumerable.Max) };
    }

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
    internal static Stretches Of(double[] timesS, double[] values, Band band, double fromS, double toS, double everyS, int about = About)
    {
        List<(double Minute, double Mean, double Low, double High)> kept = [];
        double stepS = Math.Max(1, Math.Ceiling((toS - fromS) / about / everyS)) * everyS;
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

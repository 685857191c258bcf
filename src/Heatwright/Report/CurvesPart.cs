using Heatwright.Jobs;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>Curves of all arrangements on one axis: the first minutes, and the whole charge.</summary>
internal static class CurvesPart
{
    /// <summary>The house has six colours.</summary>
    private const int MostTogether = 6;

    private const double FirstS = 240;

    private static readonly FigureAxis Minutes = new("time from switching on", "min");

    public static Html Of(StudyResult result)
    {
        Placed[] all = [.. All(result)];
        return Html.If(all.Length > 0, () => Html.Of($"""
            <section class="piece" id="curves"><header><h2>Over the charge</h2><span class="aside">line: the run with every cause at its middle; band: where 90 of 100 draws lie; letters stand at the ends of the lines</span></header>
            {Html.Each(all, one => PicturePart.Of(one.Figure, one.Caption, one.Behind))}</section>

            """));
    }

    /// <summary>Every picture with its caption, hot tools before lamps; at most six arrangements in one.</summary>
    public static IEnumerable<Placed> All(StudyResult result) => result.Study.Brief is null ? [] : result.Verdicts.Select(verdict => verdict.Prediction).OfType<Prediction>()
        .GroupBy(prediction => prediction.Arrangement.Lamp is not null).OrderBy(kind => kind.Key).SelectMany(kind => kind.Chunk(MostTogether)).SelectMany(group => Pictures(result, group));

    private static Placed[] Pictures(StudyResult result, Prediction[] group)
    {
        var brief = result.Study.Brief!;
        string end = Say.Sentence(brief.WorkingEnd).TrimEnd('.');
        if (group.All(prediction => prediction.Arrangement.Lamp is not null))
        {
            return Lamps(group, end);
        }

        FigureLimit[] target = double.IsNaN(brief.Work.TargetC) ? [] : [new($"target {Say.Number(brief.Work.TargetC)} °C", brief.Work.TargetC)];
        Trace[] fine = [.. group.Select(prediction => FineRun.Of(prediction, brief.Work.EveryS))];
        return
        [
            First(group, fine, $"{end}, first minutes", brief.WorkingEnd, target),
            Worked(group, fine, brief.Work.EveryS, $"{end} over the charge", "working end", brief.WorkingEnd, trace => [.. trace.NodesK[0].Select(k => k - 273.15)], target, true),
            Whole(group, fine, "Pack volts over the charge", "pack", "pack", trace => trace.TerminalV),
            Worked(group, fine, brief.Work.EveryS, "Heater watts over the charge", "heater", "heater", trace => trace.LoadW, [], false),
        ];
    }

    /// <summary>A lamp does no pieces of work: its curves are as smooth as its cells.</summary>
    private static Placed[] Lamps(Prediction[] group, string end)
    {
        Trace[] fine = [.. group.Select(prediction => prediction.Middle.Trace)];
        return
        [
            Whole(group, fine, "Lamp watts over the charge", "lamp", "lamp", trace => trace.LoadW),
            Whole(group, fine, "Pack volts over the charge", "pack", "pack", trace => trace.TerminalV),
            Whole(group, fine, $"{end} over the charge", "lamp head", end, trace => [.. trace.NodesK[0].Select(k => k - 273.15)]),
        ];
    }

    private static Placed First(Prediction[] group, Trace[] fine, string title, string end, FigureLimit[] target)
    {
        FigureCurve[] curves = [.. group.Select((prediction, place) =>
        {
            var trace = fine[place];
            int early = Enumerable.Range(0, trace.Count).TakeWhile(i => trace.TimesS[i] <= FirstS).Count();
            return Curve(prediction, place, [.. trace.TimesS.Take(early)], [.. trace.NodesK[0].Take(early).Select(k => k - 273.15)]);
        })];
        var figure = new Figure(title, $"{title}: {Letters(group)}, with the target as a line.", new("time from switching on", "s"), new(end, "°C"), curves) { Limits = target, Bands = Bands(group, "working end", 1, FirstS) };
        return new(figure, "Warm-up and the first pieces of work.", Html.None);
    }

    private static Placed Whole(Prediction[] group, Trace[] fine, string title, string band, string name, Func<Trace, double[]> values)
    {
        FigureCurve[] curves = [.. group.Select((prediction, place) =>
        {
            var trace = fine[place];
            return Curve(prediction, place, [.. trace.TimesS.Take(trace.Count).Select(s => s / 60)], [.. values(trace).Take(trace.Count)]);
        })];
        string unit = Unit(group, band);
        var figure = new Figure(title, $"{title}: {Letters(group)}.", Minutes, new(name, unit), curves) { Bands = Bands(group, band, 60, double.PositiveInfinity) };
        return new(figure, Caption(group), Numbers(group, fine, values, unit));
    }

    /// <summary>What goes up and down with every piece of work: hundreds of them would be a scribble, so each stretch of a run gives its mean and its range.</summary>
    private static Placed Worked(Prediction[] group, Trace[] fine, double everyS, string title, string band, string name, Func<Trace, double[]> values, FigureLimit[] limits, bool ranges)
    {
        Stretches[] each = [.. group.Select((prediction, place) => Stretches.Of(prediction.Middle, fine[place], prediction.Bands.First(one => one.Name == band), values, everyS))];
        string unit = Unit(group, band);
        var figure = new Figure(title, $"{title}: {Letters(group)}.", Minutes, new(name, unit), [.. group.Select((prediction, place) => Curve(prediction, place, each[place].Minutes, each[place].Mean))])
        {
            Limits = limits,
            Bands = ranges ? [.. each.Select((stretches, place) => new FigureBand(stretches.Minutes, stretches.Low, stretches.High, place + 1))] : [],
        };
        string says = $"{Caption(group)} Line: mean over stretches of whole pieces of work, from reaching the target on{(ranges ? "; band: from the lowest to the highest in it, where 90 of 100 draws lie, the dips of the work included" : "")}.";
        return new(figure, says, Numbers(group, fine, values, unit));
    }

    private static string Unit(Prediction[] group, string band) => group[0].Bands.First(one => one.Name == band).Unit;

    private static FigureCurve Curve(Prediction prediction, int place, double[] x, double[] y) =>
        new($"{prediction.Arrangement.Letter}, {prediction.Arrangement.Name}", x, y, place + 1) { EndLabel = prediction.Arrangement.Letter };

    private static FigureBand[] Bands(Prediction[] group, string name, double unitS, double untilS) => [.. group.Select((prediction, place) =>
    {
        var band = prediction.Bands.First(one => one.Name == name);
        int shown = band.TimesS.TakeWhile(s => s <= untilS).Count();
        return new FigureBand([.. band.TimesS.Take(shown).Select(s => s / unitS)], [.. band.Low.Take(shown)], [.. band.High.Take(shown)], place + 1);
    })];

    /// <summary>Each arrangement ends at its own time, so each row is a share of its own run.</summary>
    private static Html Numbers(Prediction[] group, Trace[] fine, Func<Trace, double[]> values, string unit)
    {
        double[] shares = [.. Enumerable.Range(0, 11).Select(i => 10.0 * i)];
        var columns = group.Select((prediction, place) =>
        {
            var trace = fine[place];
            double[] y = values(trace);
            return ($"{prediction.Arrangement.Letter}, {unit}", (IReadOnlyList<double>)[.. shares.Select(share => y[Nearest(trace, share / 100 * prediction.Middle.RunTimeS)])]);
        }).ToArray();
        return PicturePart.Table("of the run, in 100", shares, columns, "0.00");
    }

    private static int Nearest(Trace trace, double atS) => Enumerable.Range(0, Math.Max(1, trace.Count)).MinBy(i => Math.Abs(trace.TimesS[i] - atS));

    private static string Letters(Prediction[] group) => string.Join(", ", group.Select(prediction => $"{prediction.Arrangement.Letter} {prediction.Arrangement.Name}"));

    private static string Caption(Prediction[] group) => string.Join("; ", group.Select(prediction => $"{prediction.Arrangement.Letter} ends after {Say.Time(prediction.Middle.RunTimeS)}")) + ".";
}

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

    public static Html Of(StudyResult result)
    {
        Prediction[] all = [.. result.Verdicts.Select(verdict => verdict.Prediction).OfType<Prediction>()];
        return Html.If(all.Length > 0, () => Html.Of($"""
            <section class="piece" id="curves"><header><h2>Over the charge</h2><span class="aside">line: the run with every cause at its middle; band: where 90 of 100 draws lie; letters stand at the ends of the lines</span></header>
            {Html.Each(all.Chunk(MostTogether), group => Pictures(result, group))}</section>

            """));
    }

    private static Html Pictures(StudyResult result, Prediction[] group)
    {
        var brief = result.Study.Brief!;
        string end = Say.Sentence(brief.WorkingEnd).TrimEnd('.');
        FigureLimit[] target = [new($"target {Say.Number(brief.Duty.TargetC)} °C", brief.Duty.TargetC)];
        return Html.Of($"""
            {First(group, $"{end}, first minutes", brief.WorkingEnd, target)}
            {Whole(group, $"{end} over the charge", "working end", brief.WorkingEnd, trace => [.. trace.NodesK[0].Select(k => k - 273.15)], target)}
            {Whole(group, "Pack volts over the charge", "pack", "pack", trace => trace.TerminalV, [])}
            {Whole(group, "Heater watts over the charge", "heater", "heater", trace => trace.LoadW, [])}
            """);
    }

    private static Html First(Prediction[] group, string title, string end, FigureLimit[] target)
    {
        FigureCurve[] curves = [.. group.Select((prediction, place) =>
        {
            var trace = prediction.Middle.Trace;
            int early = Enumerable.Range(0, trace.Count).TakeWhile(i => trace.TimesS[i] <= FirstS).Count();
            return Curve(prediction, place, [.. trace.TimesS.Take(early)], [.. trace.NodesK[0].Take(early).Select(k => k - 273.15)]);
        })];
        var figure = new Figure(title, $"{title}: {Letters(group)}, with the target as a line.", new("time from switching on", "s"), new(end, "°C"), curves) { Limits = target, Bands = Bands(group, "working end", 1, FirstS) };
        return PicturePart.Of(figure, "Warm-up and the first pieces of work.", Html.None);
    }

    private static Html Whole(Prediction[] group, string title, string band, string name, Func<Trace, double[]> values, FigureLimit[] limits)
    {
        FigureCurve[] curves = [.. group.Select((prediction, place) =>
        {
            var trace = prediction.Middle.Trace;
            return Curve(prediction, place, [.. trace.TimesS.Take(trace.Count).Select(s => s / 60)], [.. values(trace).Take(trace.Count)]);
        })];
        string unit = group[0].Bands.First(one => one.Name == band).Unit;
        var figure = new Figure(title, $"{title}: {Letters(group)}.", new("time from switching on", "min"), new(name, unit), curves) { Limits = limits, Bands = Bands(group, band, 60, double.PositiveInfinity) };
        return PicturePart.Of(figure, Caption(group), Numbers(group, values, unit));
    }

    private static FigureCurve Curve(Prediction prediction, int place, double[] x, double[] y) =>
        new($"{prediction.Arrangement.Letter}, {prediction.Arrangement.Name}", x, y, place + 1) { EndLabel = prediction.Arrangement.Letter };

    private static FigureBand[] Bands(Prediction[] group, string name, double unitS, double untilS) => [.. group.Select((prediction, place) =>
    {
        var band = prediction.Bands.First(one => one.Name == name);
        int shown = band.TimesS.TakeWhile(s => s <= untilS).Count();
        return new FigureBand([.. band.TimesS.Take(shown).Select(s => s / unitS)], [.. band.Low.Take(shown)], [.. band.High.Take(shown)], place + 1);
    })];

    /// <summary>Each arrangement ends at its own time, so each row is a share of its own run.</summary>
    private static Html Numbers(Prediction[] group, Func<Trace, double[]> values, string unit)
    {
        double[] shares = [.. Enumerable.Range(0, 11).Select(i => 10.0 * i)];
        var columns = group.Select(prediction =>
        {
            var trace = prediction.Middle.Trace;
            double[] y = values(trace);
            return ($"{prediction.Arrangement.Letter}, {unit}", (IReadOnlyList<double>)[.. shares.Select(share => y[Nearest(trace, share / 100 * prediction.Middle.RunTimeS)])]);
        }).ToArray();
        return PicturePart.Table("of the run, in 100", shares, columns, "0.00");
    }

    private static int Nearest(Trace trace, double atS) => Enumerable.Range(0, Math.Max(1, trace.Count)).MinBy(i => Math.Abs(trace.TimesS[i] - atS));

    private static string Letters(Prediction[] group) => string.Join(", ", group.Select(prediction => $"{prediction.Arrangement.Letter} {prediction.Arrangement.Name}"));

    private static string Caption(Prediction[] group) => string.Join("; ", group.Select(prediction => $"{prediction.Arrangement.Letter} ends after {Say.Time(prediction.Middle.RunTimeS)}")) + ". A long charge has more pieces of work than instants: single dips may be missing.";
}

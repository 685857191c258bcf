using System.Globalization;
using Heatwright.Jobs;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>Where the energy of a charge goes: twice the same sum, as it leaves the cells and where the heat ends.</summary>
internal static class EnergyPart
{
    private const double JoulePerWattHour = 3600;

    private sealed record Share(string Form, string Name, Func<Energies, double> Joule);

    private static readonly Share[] Leaves =
    [
        new("heater", "into the load", e => e.LoadJ), new("cells", "lost in the cells", e => e.CellLossJ),
        new("loop", "lost in contacts, leads, switch, boards", e => e.LoopLossJ), new("path", "lost in the module", e => e.PathLossJ),
    ];

    private static readonly Share[] Ends =
    [
        new("light", "away as light", e => e.LightJ), new("work", "into the work", e => e.WorkJ), new("air", "into the air", e => e.AirJ), new("stored", "left in the tool at the end", e => e.StoredJ),
    ];

    public static Html Of(StudyResult result)
    {
        Prediction[] all = [.. result.Verdicts.Select(verdict => verdict.Prediction).OfType<Prediction>()];
        Share[] ends = [.. Ends.Where(share => share.Form != "light" || all.Any(prediction => prediction.Middle.Energies.LightJ > 0))];
        double most = all.Select(prediction => Sum(Leaves, prediction)).DefaultIfEmpty(0).Max();
        return Html.If(most > 0, () => Html.Of($"""
            <section class="piece" id="energy"><header><h2>Where the watts go</h2><span class="aside">middle run, from switching on until it ends; upper bar: as it leaves the cells; lower bar: where the heat is in the end</span></header>
            <div class="bars" aria-hidden="true">{Html.Each(all, prediction => Html.Of(
                $"""<span class="letter">{prediction.Arrangement.Letter}</span><div>{Bar(Leaves, prediction, most)}{Bar(ends, prediction, most)}</div>"""))}</div>
            <div class="wide" tabindex="0" role="region" aria-label="Where the watts go, in numbers"><table class="energies"><thead><tr><th scope="col">watt-hours (mean watts)</th>{Html.Each(all, prediction => Html.Of($"""<th class="r" scope="col">{prediction.Arrangement.Letter}</th>"""))}</tr></thead>
            <tbody>{Rows(Leaves, all)}{Rows(ends, all)}</tbody></table></div></section>

            """));
    }

    private static Html Bar(Share[] shares, Prediction prediction, double most) => Html.Of($"""
        <div class="bar">{Html.Each(shares, share =>
        {
            double of100 = 100 * Math.Max(0, share.Joule(prediction.Middle.Energies)) / most;
            return Html.Of($"""<i class="seg to-{share.Form}" style="width:{of100.ToString("0.###", CultureInfo.InvariantCulture)}%"></i>""");
        })}</div>
        """);

    private static Html Rows(Share[] shares, Prediction[] all) => Html.Of($"""
        {Html.Each(shares, share => Html.Of(
            $"""<tr><th scope="row"><i class="seg key to-{share.Form}"></i>{share.Name}</th>{Html.Each(all, prediction => Cell(share.Joule(prediction.Middle.Energies), prediction))}</tr>"""))}<tr class="sum"><th scope="row">together</th>{Html.Each(all, prediction => Cell(Sum(shares, prediction), prediction))}</tr>
        """);

    private static Html Cell(double joule, Prediction prediction) =>
        Html.Of($"""<td class="r">{Say.Number(joule / JoulePerWattHour, "0.00")} <span class="pm">({Say.Number(joule / prediction.Middle.RunTimeS, "0.00")})</span></td>""");

    private static double Sum(Share[] shares, Prediction prediction) => shares.Sum(share => share.Joule(prediction.Middle.Energies));
}

using System.Globalization;
using Heatwright.Handbook;
using Heatwright.Quantities;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>A number that opens: its line shows the weakest thing it rests on, its chain goes down to readings, labels and guesses.</summary>
internal static class Origins
{
    /// <summary>Less than this share of the variance is not worth a name.</summary>
    private const double SmallShare = 0.01;

    /// <summary>Value, doubt and unit as an opener. No script is needed; a key opens it.</summary>
    public static Html Number(Estimate of, bool scaled = true)
    {
        var shown = scaled ? Say.Scaled(of) : of;
        return Html.Of($"""<details class="origin num"><summary>{Value(shown)}<span class="off">, {of.Origin.Word}, opens where it comes from</span></summary><div class="from">{Chain(of)}</div></details>""");
    }

    /// <summary>Value, doubt and unit, not to be opened.</summary>
    private static Html Value(Estimate of)
    {
        var doubt = of.StandardDoubt > 0 ? Html.Of($"""<span class="pm">{"\u00A0"}±{"\u00A0"}{Display.Value(of.StandardDoubt, of.StandardDoubt)}</span>""") : Html.None;
        return Html.Of($"""<data class="v {Say.Line(of.Origin)}" value="{of.Value.ToString("R", CultureInfo.InvariantCulture)}">{Display.Value(of.Value, of.StandardDoubt)}{doubt}<span class="u">{Say.Unit(of.Unit.Symbol)}</span></data>""");
    }

    private static Html Chain(Estimate of) => Html.Of($"<p>{From(of.Origin)}</p>{Shares(of)}{Inputs(of)}");

    private static Html From(Origin origin)
    {
        string words = Say.Sentence(Say.From(origin));
        return origin is Origin.Published published && Bibliography.Own.Find(published.Source.Key) is { } source
            ? Html.Of($"{words} {source.By}: {source.Title} ({source.Year}).")
            : Html.Of($"{words}");
    }

    private static Html Shares(Estimate of)
    {
        var shares = of.Doubts.Shares().Where(share => share.Share >= SmallShare).Take(3).ToArray();
        return Html.If(shares.Length > 0, () => Html.Of(
            $"<p>± is one standard doubt; biggest shares of it: {string.Join("; ", shares.Select(share => $"{share.Cause.Id} {Say.Number(100 * share.Share, "0")} of 100"))}.</p>"));
    }

    private static Html Inputs(Estimate of)
    {
        var inputs = Sorted(of);
        return Html.If(inputs.Length > 0, () => Html.Of($"""<ul class="chain">{Html.Each(inputs, input => Html.Of(
            $"<li>{input.Name}: {Value(Say.Scaled(input.Value))} {From(input.Value.Origin)}{Inputs(input.Value)}</li>"))}</ul>"""));
    }

    /// <summary>What a prediction rests on, the biggest share of its doubt first; what a law used, in the law's order.</summary>
    private static Input[] Sorted(Estimate of)
    {
        if (of.Origin is not Origin.Predicted predicted)
        {
            return of.Origin is Origin.WorkedOut worked ? [.. worked.From] : [];
        }

        // A cause that several inputs share counts to each in part.
        var sharing = predicted.From.SelectMany(input => input.Value.Doubts.Causes).GroupBy(cause => cause).ToDictionary(group => group.Key, group => group.Count());
        return [.. predicted.From.OrderByDescending(input => input.Value.Doubts.Causes.Sum(cause => of.Doubts.By(cause) * of.Doubts.By(cause) / sharing[cause]))];
    }
}

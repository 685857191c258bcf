using Heatwright.Arrangements;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Web;

namespace Heatwright.Report;

/// <summary>What was not tested: numbers that rest on a guess or on a seller's word, and parts that no trial has seen.</summary>
internal static class UntestedPart
{
    public static Html Of(StudyResult result)
    {
        var weak = result.Verdicts
            .SelectMany(verdict => (verdict.Prediction?.Builder.Inputs ?? []).Select(input => (verdict.Arrangement.Letter, Input: input)))
            .Where(one => one.Input.Value.Origin.Weakest() is Origin.Assumed or Origin.Claimed)
            .GroupBy(one => (one.Input.Name, one.Input.Value.Value, one.Input.Value.Origin.Weakest()))
            .OrderBy(group => group.Key.Item3 is Origin.Assumed ? 0 : 1).ToArray();
        string[] untried = [.. result.Study.Parts.Where(part => result.Study.Trials.All(trial => trial.Part != part.Id)).Select(part => part.Name)];
        return Html.Of($"""
            <section class="piece" id="untested"><header><h2>What was not tested</h2><span class="aside">a reading of any of these makes the verdicts firmer</span></header>
            {Html.If(weak.Length > 0, () => Html.Of($"""
                <table class="numbers inputs"><thead><tr><th scope="col">number</th><th scope="col">value</th><th scope="col">used in</th><th scope="col">rests on</th></tr></thead><tbody>
                {Html.Each(weak, group => Row(group.First().Input, string.Join(", ", group.Select(one => one.Letter).Distinct()), group.Key.Item3))}</tbody></table>
                """))}
            {Html.If(untried.Length > 0, () => Html.Of($"""<p class="because">No trial has seen: {string.Join(", ", untried)}.</p>"""))}
            <p class="because">Not asked of any arrangement: drops, damp, wear of contacts and switch, cells that age, spread between two pieces of the same part.</p></section>

            """);
    }

    private static Html Row(PlantInput input, string letters, Origin weakest) =>
        Html.Of($"<tr><th scope=\"row\">{input.Name}</th><td>{Origins.Number(input.Value)}</td><td>{letters}</td><td>{Say.From(weakest)}</td></tr>");
}

using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>One thing in which two arrangements differ.</summary>
/// <param name="What">Place or number.</param>
/// <param name="One">In the first.</param>
/// <param name="Other">In the second.</param>
public sealed record WiringDifference(string What, string One, string Other);

/// <summary>In what two arrangements differ, and what that does to their loops.</summary>
/// <param name="One">Letter of the first.</param>
/// <param name="Other">Letter of the second.</param>
/// <param name="Wiring">Parts and counts that differ.</param>
/// <param name="Numbers">What the loops do, side by side.</param>
public sealed record WiringDifferences(string One, string Other, IReadOnlyList<WiringDifference> Wiring, IReadOnlyList<WiringDifference> Numbers)
{
    /// <summary>The differences of two arrangements of a study file.</summary>
    public static Checked<WiringDifferences> Read(string path, string one, string other) => OpenStudy.Read(path).Then(opened =>
    {
        var shelf = LoopView.Bench(opened.Study);
        return WireTool.Found(opened.Study, one).Then(first => LoopView.Of(opened.Study, first, shelf)).Then(first =>
            WireTool.Found(opened.Study, other).Then(second => LoopView.Of(opened.Study, second, shelf)).Map(second => Of(first, second)));
    });

    /// <summary>The differences of two.</summary>
    public static WiringDifferences Of(LoopView one, LoopView other)
    {
        List<WiringDifference> wiring = [.. one.Wiring.Zip(other.Wiring).Select(pair => new WiringDifference(pair.First.Place.Words, Part(pair.First), Part(pair.Second))).Where(pair => pair.One != pair.Other)];
        Add("pack", $"{one.Arrangement.Series}S{one.Arrangement.Parallel}P", $"{other.Arrangement.Series}S{other.Arrangement.Parallel}P");
        Add("touches", Number(one.Arrangement.ContactCount), Number(other.Arrangement.ContactCount));
        Add("duty at most", Number(one.Arrangement.DutyCeiling), Number(other.Arrangement.DutyCeiling));
        return new(one.Arrangement.Letter, other.Arrangement.Letter, wiring,
        [
            new("loop ohms", Shown(one.Look.Total), Shown(other.Look.Total)),
            new("watts at the load, full pack", Shown(one.Look.Full.LoadW), Shown(other.Look.Full.LoadW)),
            new("watts at the load, pack at its cut-off", Shown(one.Look.Empty.LoadW), Shown(other.Look.Empty.LoadW)),
            new("amps from the pack, full", Shown(one.Look.Full.PackA), Shown(other.Look.Full.PackA)),
            new("amps from the pack, at its cut-off", Shown(one.Look.Empty.PackA), Shown(other.Look.Empty.PackA)),
            new("limits first", one.First, other.First),
        ]);

        void Add(string what, string first, string second)
        {
            if (first != second)
            {
                wiring.Add(new(what, first, second));
            }
        }
    }

    private static string Part((Place Place, Parts.Part? Part, bool Assumed) row) => row.Part is null ? "none" : row.Part.Name;

    private static string Shown(Estimate? value) => value is null ? "no steady point" : Display.Rounded(value.Unit == Units.Ohm && value.Value < 0.3 ? value.In(Units.Milliohm) : value);

    private static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}

using Heatwright.Arrangements;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Quantities;

namespace Heatwright.Web;

/// <summary>One element that the pack's current passes.</summary>
/// <param name="Name">In trade words.</param>
/// <param name="Ohms">All of it together: cells by their count in series, contacts by their touches.</param>
public sealed record LoopElement(string Name, Estimate Ohms);

/// <summary>What the pack's current passes on its way round, without the load.</summary>
/// <param name="Elements">In the order of the current.</param>
/// <param name="MeanA">Mean current of the middle run: volts lost are linear in it, switched or not.</param>
public sealed record Loop(IReadOnlyList<LoopElement> Elements, double MeanA)
{
    /// <summary>All ohms in series.</summary>
    public Estimate Total { get; } = new(
        Elements.Sum(element => element.Ohms.Value), Units.Ohm, Elements.Aggregate(Doubts.None, (sum, element) => sum + element.Ohms.Doubts),
        new Origin.WorkedOut("sum of the ohms in series", [.. Elements.Select(element => new Input(element.Name, element.Ohms))]));

    /// <summary>The loop of a predicted arrangement.</summary>
    public static Loop Of(Prediction prediction)
    {
        ArgumentNullException.ThrowIfNull(prediction);
        var arrangement = prediction.Arrangement;
        List<LoopElement> elements = [];
        Add(PlantKey.CellOhms, (double)arrangement.Series / arrangement.Parallel);
        Add(PlantKey.ContactOhms, arrangement.ContactCount);
        Add(PlantKey.SupervisionOhms, 1);
        Add(PlantKey.SwitchOhms, 1);
        Add(PlantKey.LeadOhms, 1);
        return new(elements, prediction.Middle.Energies.ChargeC / prediction.Middle.RunTimeS);

        void Add(PlantKey key, double times)
        {
            if (prediction.Builder.Place(key) is >= 0 and var place)
            {
                var input = prediction.Builder.Inputs[place];
                var one = input.Value.In(Units.Ohm);
                var all = times == 1 ? one : new Estimate(one.Value * times, Units.Ohm, one.Doubts.Times(times), new Origin.WorkedOut(
                    $"{Say.Number(times)} times one", [new Input(input.Name, input.Value)]));
                elements.Add(new(times == 1 ? input.Name : $"{Say.Number(times)} × {input.Name}", all));
            }
        }
    }
}

using Heatwright.Numerics;
using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>How hot the ends of many tools would stand with their switches as much on as they may be: the quick look at a whole shelf before anything is predicted.</summary>
/// <remarks>The pack shows its ohms of the first moment at the air's temperature; nodes beside the end carry heat away as they do when all has settled. A real run stands a little cooler, as the slow pairs take their volts.</remarks>
public static class SteadyRises
{
    /// <summary>Charge left at which each tool is looked at.</summary>
    public static IReadOnlyList<double> Charges { get; } = [1, 0.5, 0.1];

    /// <summary>Rises over the air, K, at each of <see cref="Charges"/>; not a number: there is no steady point, or none was found; null: the tool is not of the kind that can be looked at so.</summary>
    /// <param name="tools">Tools in the same air.</param>
    public static double[]?[] Of(IReadOnlyList<AssembledTool> tools)
    {
        var known = tools.Select((tool, i) => (Tool: tool, At: i, Loss: Loss(tool))).Where(one => one.Loss is not null).ToArray();
        var rises = new double[]?[tools.Count];
        if (known.Length == 0)
        {
            return rises;
        }

        // Those of one path lie together, and each path fills its last lanes with its last tool once more.
        var rows = Filled([.. known.Where(one => one.Tool.Path is PathModel.Direct)]);
        rows.AddRange(Filled([.. known.Where(one => one.Tool.Path is PathModel.StepUp)]));
        double[] found = Found([.. rows.Select(row => row.Tool)], [.. rows.Select(row => row.Loss!.Value)]);
        for (int row = 0; row < rows.Count; row++)
        {
            rises[rows[row].At] = [.. Charges.Select((_, charge) => found[(charge * rows.Count) + row])];
        }

        return rises;
    }

    private static List<(AssembledTool Tool, int At, (double WPerK, double RadiatingM2)? Loss)> Filled((AssembledTool Tool, int At, (double WPerK, double RadiatingM2)? Loss)[] rows)
    {
        int over = rows.Length % ScreenTable.Together;
        return [.. rows, .. Enumerable.Repeat(rows.LastOrDefault(), over == 0 ? 0 : ScreenTable.Together - over)];
    }

    private static double[] Found(AssembledTool[] tools, (double WPerK, double RadiatingM2)[] losses)
    {
        double[] Of(Func<AssembledTool, double> number) => [.. tools.Select(number)];
        double[] Per(Func<(double WPerK, double RadiatingM2), double> number) => [.. losses.Select((loss, i) => number(loss) / Duty(tools[i]))]; // watts in at a duty are watts lost: as if less were lost
        double airK = tools[0].Network.AmbientK;
        var heaters = tools.Select(tool => (LoadModel.Heater)tool.Load);
        var table = ScreenTable.Of([.. tools.Select(tool => (tool.Path as PathModel.StepUp)?.Module)], airK,
            [.. Charges.SelectMany(charge => Of(tool => tool.Pack!.Series * tool.Pack.Cell.OpenV.At(charge)))],
            [.. Charges.SelectMany(charge => Of(tool => tool.Pack!.Cell.R0Ohm.At(charge) * tool.Pack.Cell.OhmsFactor(airK) * tool.Pack.Series / tool.Pack.Parallel))],
            Of(tool => tool.Pack!.LoopOhm), [.. heaters.Select(heater => heater.OhmAt(airK))], [.. heaters.Select(heater => heater.OhmAt(airK + 1) - heater.OhmAt(airK))],
            Per(loss => loss.WPerK), Per(loss => loss.RadiatingM2 * Constants.StefanBoltzmann));
        double[] rises = new double[table.OpenV.Length];
        SwiftBatch.Rises(table, rises);
        return rises;
    }

    private static double Duty(AssembledTool tool) => tool.Controller is ControllerModel.Pi pi ? pi.MaxDuty : ((ControllerModel.Fixed)tool.Controller).Duty;

    /// <summary>What the end loses by a kelvin once all beside it has settled, and its radiating area; null: the tool is of another kind.</summary>
    private static (double WPerK, double RadiatingM2)? Loss(AssembledTool tool)
    {
        var network = tool.Network;
        int end = network.HeaterNode;
        if (SwiftPlan.Refuses(tool with { Duty = null, TimesRecovery = 0 }) is not null || Duty(tool) <= 0
            || network.Nodes.Any(node => node.ConvectionWPerK125 > 0) || network.Nodes.Where((_, i) => i != end).Any(node => node.RadiatingM2 > 0))
        {
            return null;
        }

        // What the others hand back of what they get from it: bᵀ·A⁻¹·b, A all that leaves each of them, b what joins each to the end. What neither loses nor touches anything is left out.
        double Leaves(int i) => network.Nodes[i].LinearWPerK + network.Links.Where(link => link.A == i || link.B == i).Sum(link => link.WPerK);
        double Between(int i, int k) => network.Links.Where(link => (link.A, link.B) == (i, k) || (link.A, link.B) == (k, i)).Sum(link => link.WPerK);
        int[] others = [.. Enumerable.Range(0, network.Nodes.Count).Where(i => i != end && Leaves(i) > 0)];
        double[,] leaving = new double[others.Length, others.Length];
        for (int i = 0; i < others.Length; i++)
        {
            for (int k = 0; k < others.Length; k++)
            {
                leaving[i, k] = i == k ? Leaves(others[i]) : -Between(others[i], others[k]);
            }
        }

        double[] joined = [.. others.Select(i => Between(i, end))];
        return (Leaves(end) - new Cholesky(leaving).Form(joined, joined), network.Nodes[end].RadiatingM2);
    }
}

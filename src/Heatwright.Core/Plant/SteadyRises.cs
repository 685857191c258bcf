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
        int straight = rows.Count;
        rows.AddRange(Filled([.. known.Where(one => one.Tool.Path is PathModel.StepUp)]));
        double[] found = Found([.. rows.Select(row => row.Tool)], [.. rows.Select(row => row.Loss!.Value)], straight);
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

    private static double[] Found(AssembledTool[] tools, (double WPerK, double RadiatingM2)[] losses, int straight)
    {
        double[] Of(Func<AssembledTool, double> number) => [.. tools.Select(number)];
        double[] Module(Func<StepUpModule, double> number) => Of(tool => tool.Path is PathModel.StepUp { Module: var module } ? number(module) : 0);
        double[] Per(Func<(double WPerK, double RadiatingM2), double> number) => [.. losses.Select((loss, i) => number(loss) / Duty(tools[i]))]; // watts in at a duty are watts lost: as if less were lost
        double airK = tools[0].Network.AmbientK;
        var table = new ScreenTable(tools.Length, straight, airK)
        {
            OpenV = [.. Charges.SelectMany(charge => Of(tool => tool.Pack!.Series * tool.Pack.Cell.OpenV.At(charge)))],
            CellOhm = [.. Charges.SelectMany(charge => Of(tool => tool.Pack!.Cell.R0Ohm.At(charge) * tool.Pack.Cell.OhmsFactor(airK) * tool.Pack.Series / tool.Pack.Parallel))],
            LoopOhm = Of(tool => tool.Pack!.LoopOhm),
            HeaterOhm = Of(tool => ((LoadModel.Heater)tool.Load).OhmAt(airK)),
            HeaterSlope = Of(tool => ((LoadModel.Heater)tool.Load).OhmAt(airK + 1) - ((LoadModel.Heater)tool.Load).OhmAt(airK)),
            LossWPerK = Per(loss => loss.WPerK),
            RadiatingWPerK4 = Per(loss => loss.RadiatingM2 * Constants.StefanBoltzmann),
            SetV = Module(module => module.SetV),
            FixedW = Module(module => module.Loss.FixedW),
            DropV = Module(module => module.Loss.DropV),
            SlopeOhm = Module(module => module.Loss.SlopeOhm),
            LimitA = Module(module => module.PeakLimitA),
            RestSquared = Module(module => (1 - module.MaxDuty) * (1 - module.MaxDuty)),
            LockOutV = Module(module => module.LockoutV),
            DiodeV = Module(module => module.DiodeV),
        };
        double[] rises = new double[table.OpenV.Length];
        if (SwiftBatch.Width == ScreenTable.Together)
        {
            Wide.SwiftScreen.Rises(table, rises);
        }
        else
        {
            SwiftScreen.Rises(table, rises);
        }

        return rises;
    }

    private static double Duty(AssembledTool tool) => tool.Controller is ControllerModel.Pi pi ? pi.MaxDuty : ((ControllerModel.Fixed)tool.Controller).Duty;

    /// <summary>What the end loses by a kelvin once all beside it has settled, and its radiating area; null: the tool is of another kind.</summary>
    private static (double WPerK, double RadiatingM2)? Loss(AssembledTool tool)
    {
        var network = tool.Network;
        int end = network.HeaterNode;
        if (tool.Pack is not { Groups.Count: 0 } || SwiftPlan.Refuses(tool with { Duty = null, TimesRecovery = 0 }) is not null || Duty(tool) <= 0
            || network.Nodes.Any(node => node.ConvectionWPerK125 > 0) || network.Nodes.Where((_, i) => i != end).Any(node => node.RadiatingM2 > 0))
        {
            return null;
        }

        // Rises of the others for an end one kelvin above the air: each gives away what it gets. Gauss and Seidel's steps; so few nodes settle at once.
        double[] rise = new double[network.Nodes.Count];
        rise[end] = 1;
        for (int pass = 0; pass < 200; pass++)
        {
            for (int i = 0; i < rise.Length; i++)
            {
                double given = network.Nodes[i].LinearWPerK, taken = 0;
                foreach (var link in network.Links.Where(link => link.A == i || link.B == i))
                {
                    given += link.WPerK;
                    taken += link.WPerK * rise[link.A == i ? link.B : link.A];
                }

                rise[i] = i == end ? 1 : given > 0 ? taken / given : 0;
            }
        }

        return (network.Nodes[end].LinearWPerK + network.Links.Where(link => link.A == end || link.B == end).Sum(link => link.WPerK * (1 - rise[link.A == end ? link.B : link.A])), network.Nodes[end].RadiatingM2);
    }
}

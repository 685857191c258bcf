using Heatwright.Numerics;

namespace Heatwright.Plant;

/// <summary>Which tools the lanes can run, and their numbers as the lanes want them.</summary>
internal static class SwiftPlan
{
    private const int MostNodes = 4;

    /// <summary>A contact that would empty its node faster than this share of a step is left to the stepper, which takes it exactly.</summary>
    private const double MostShare = 0.1;

    /// <summary>Why the lanes cannot run it; null: they can.</summary>
    public static string? Refuses(AssembledTool tool) =>
        tool.Pack is null || tool.Charger is not null ? "no pack in use"
        : tool.Pack.Groups.Count > 0 || tool.Pack.CellCutoffV > 0 ? "cells that differ"
        : tool.Pack.Cell is { ShortTau: not null } or { LongTau: not null } || !Curves(tool.Pack.Cell).All(curve => curve is ChargeCurve.Flat or ChargeCurve.Table) ? "a cell curve by formula"
        : tool.Load is not LoadModel.Heater ? "a load that is no heater"
        : tool.Path is not (PathModel.Direct or PathModel.StepUp) || tool.Path is PathModel.StepUp { Module: { ThroughOhm: > 0 } or { StartV: > 0 } or { InductanceTimesHz: < double.PositiveInfinity } } ? "another path"
        : tool.Network.Nodes.Count > MostNodes || tool.Network.HeaterNode < 0 || (tool.Network.SensorNode != tool.Network.WorkingNode) ? "another network"
        : tool.Controller is not (ControllerModel.Fixed or ControllerModel.Pi { DerivativeWSPerK: 0 }) || double.IsFinite(tool.Controller.IdleAfterS) ? "another controller"
        : tool.TimesRecovery > 0 ? "recoveries to be timed"
        : tool.Duty is not null ? "a duty of blocks"
        : tool.TakesMeanVoltsForPower ? "power reckoned wrongly on purpose"
        : tool.BrownOutV > 0 || tool.Marks.Count > 0 || double.IsFinite(tool.Network.SensorLagS) is false ? "other events"
        : null;

    /// <summary>Nodes as the lanes order them: heater, working node where it is another, the rest.</summary>
    public static int[] Order(ThermalNetwork network)
    {
        int[] first = network.WorkingNode == network.HeaterNode ? [network.HeaterNode] : [network.HeaterNode, network.WorkingNode];
        return [.. first, .. Enumerable.Range(0, network.Nodes.Count).Except(first)];
    }

    public static SwiftShape Shape(AssembledTool tool, double stepS)
    {
        var network = tool.Network;
        int[] order = Order(network);
        var pi = tool.Controller as ControllerModel.Pi;
        int working = Array.IndexOf(order, network.WorkingNode);
        return new()
        {
            Lags = network.SensorLagS > 0,
            WorksAtSecond = working == 1,
            CellAt = network.CellNode < 0 ? -1 : Array.IndexOf(order, network.CellNode),
            ElectronicsAt = network.ElectronicsNode < 0 ? -1 : Array.IndexOf(order, network.ElectronicsNode),
            FourNodes = order.Length > 3,
            StepsUp = tool.Path is PathModel.StepUp,
            Transfers = tool.Pack!.Cell.ChargeTransfer,
            HoldsAmps = tool.Pack.Cell.LongHoldsAmps,
            Warms = tool.Pack.Cell.ActivationJPerMol > 0,
            UsesOhms = tool.Pack.Cell.ChargeTransfer || tool.Pack.Cell.LongHoldsAmps || tool.Pack.Cell.ActivationJPerMol > 0 || network.CellNode >= 0,
            Quantised = tool.Controller.ReadingStepK > 0,
            FixedNominal = pi is not null && !double.IsNaN(pi.NominalV),
            Tracks = pi?.TrackingPerS > 0,
            Regulates = pi is not null,
            OnlyWhileOn = tool.CutoffOnlyWhileOn,
            CurvedElsewhere = order.Where((_, place) => place != working).Any(i => network.Nodes[i].RadiatingM2 > 0 || network.Nodes[i].ConvectionWPerK125 > 0),
            TouchesOthers = network.Links.Any(link => link.WPerK > 0 && (TouchesAnother(link.A, link.B) || TouchesAnother(link.B, link.A))),
            Convects = network.Nodes.Any(node => node.ConvectionWPerK125 > 0),
            Drains = tool.DrainOnA > 0 || tool.DrainOffA > 0,
            Works = tool.Work is not null,
            Needs = tool.Work is { NeedJ: > 0 },
            StepsPerSample = pi is null ? 1 : (int)Math.Round(pi.PeriodS / stepS),
        };

        bool TouchesAnother(int one, int other) => one == network.WorkingNode && other != order[working == 1 ? 0 : order.Length > 1 ? 1 : 0];
    }

    /// <summary>True where the work is gentle enough for the lanes at this step: its contact, and pieces and pauses that are no shorter than a step.</summary>
    public static bool Gentle(AssembledTool tool, double stepS) =>
        tool.Work is not { } work || (work.ContactWPerK * stepS <= MostShare * tool.Network.Nodes[tool.Network.WorkingNode].CapacityJPerK && Math.Min(work.ForS, work.EveryS - work.ForS) >= stepS);

    public static ChargeCurve[] Curves(CellModel cell) => [cell.OpenV, cell.R0Ohm, cell.R1Ohm, cell.R2Ohm];

    /// <summary>Charges at which any curve of the cell bends, rising, without the ends 0 and 1.</summary>
    public static double[] Bends(CellModel cell) => [.. Curves(cell).OfType<ChargeCurve.Table>().SelectMany(table => table.Charges).Where(s => s is > 0 and < 1).Distinct().Order()];
}

using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>What a bench test finds under the name of its card, told again under the name by which a loop or a prediction asks for it. Where a trial tells the asked one itself, that one stands.</summary>
internal static class AskedNames
{
    /// <summary>A law from what a card finds to what is asked.</summary>
    /// <param name="Part">Kind of part that is asked.</param>
    /// <param name="Card">Card of the trial.</param>
    /// <param name="Found">Name of its finding.</param>
    /// <param name="Asked">Name that is asked for.</param>
    /// <param name="Over">True: one over it is asked, as a loss in W/K is of a resistance in K/W.</param>
    private sealed record Name(PartKind Part, string Card, string Found, string Asked, bool Over = false);

    private const string ToAir = "resistance to air";

    private static readonly Name[] Names =
    [
        new(PartKind.Heater, "warm-up-marks", ToAir, PartQuantities.LinearLoss, Over: true),
        new(PartKind.Heater, "stuck-on", ToAir, PartQuantities.LinearLoss, Over: true),
        new(PartKind.Lamp, "warm-up-marks", ToAir, PartQuantities.LinearLoss, Over: true),
        new(PartKind.Lamp, "stuck-on", ToAir, PartQuantities.LinearLoss, Over: true),
        new(PartKind.Handle, "grip-rise", ToAir, PartQuantities.GripLoss, Over: true),
        new(PartKind.Handle, "grip-rise", PartQuantities.HeatCapacity, PartQuantities.GripHeatCapacity),
        new(PartKind.Heater, "unknown-part", "the two wires: ohms cold", PartQuantities.Ohms),
        new(PartKind.Heater, "unknown-part", "the two wires: temperature coefficient", PartQuantities.Alpha),
        new(PartKind.Controller, "standby-drain", "standby amps", PartQuantities.Drain),
        new(PartKind.StepUp, "converter-idle", "idle watts", PartQuantities.LossFixed),
    ];

    /// <summary>Findings under the asked names, each piece by its trial.</summary>
    /// <param name="part">The part.</param>
    /// <param name="trials">Its trials.</param>
    /// <param name="told">What they told under their own names.</param>
    public static IReadOnlyList<PartFindings> Of(Part part, IReadOnlyList<Trial> trials, IReadOnlyList<PartFindings> told)
    {
        var known = told.SelectMany(piece => piece.Findings).Select(finding => finding.Quantity).ToHashSet(StringComparer.Ordinal);
        return [.. trials.Select(trial => Of(part, trial, [.. told.SelectMany(piece => piece.Findings).Where(finding => finding.Value.Origin is Origin.Fitted from && from.Trial == trial.Id)], known))];
    }

    private static PartFindings Of(Part part, Trial trial, Finding[] found, HashSet<string> known)
    {
        string card = TrialCard.Of(trial)?.Name ?? "";
        List<Finding> asked = [.. Names.Where(name => name.Part == part.Kind && name.Card == card && !known.Contains(name.Asked))
            .SelectMany(name => found.Where(finding => finding.Quantity == name.Found).Select(finding => finding with { Quantity = name.Asked, Value = name.Over ? Over(finding.Value) : finding.Value }))];
        List<Remark> remarks = [];
        if (part.Kind == PartKind.Switch && card == "switch-drop" && !known.Contains(PartQuantities.Ohms) && AtItsGate(part, found) is (var ohms, var says))
        {
            asked.Add(ohms with { Quantity = PartQuantities.Ohms });
            remarks.AddRange(says.Length > 0 ? [new(trial.Id, trial.Runs[^1].Id, 0, says, Remark.Kept)] : Array.Empty<Remark>());
        }

        return part.Kind == PartKind.Cell && card == "pulse" ? PulseOhms.Of(part, trial, found, known) : new(part.Id, asked, remarks, []);
    }

    /// <summary>W/K of K/W. The push of every cause turns round with the slope, so that what it shares with a heat capacity stays shared.</summary>
    private static Estimate Over(Estimate resistance) =>
        new(1 / resistance.Si, Units.WattPerKelvin, resistance.In(Units.KelvinPerWatt).Doubts.Times(-1 / (resistance.Si * resistance.Si)), resistance.Origin);

    /// <summary>Ohms of a switch at the gate volts that it will have: those nearest to its stated ones; where none are stated the lowest that were read, for its controller may give no more.</summary>
    private static (Finding Ohms, string Says)? AtItsGate(Part part, Finding[] found)
    {
        const string Before = "ohms at ", Behind = " V gate";
        var tried = found.Where(finding => finding.Quantity.StartsWith(Before, StringComparison.Ordinal) && finding.Quantity.EndsWith(Behind, StringComparison.Ordinal))
            .Select(finding => (Finding: finding, Volts: double.Parse(finding.Quantity[Before.Length..^Behind.Length], CultureInfo.InvariantCulture))).OrderBy(one => one.Volts).ToArray();
        return tried.Length == 0 ? null
            : part.Best(PartQuantities.GateVolts) is { } gate ? (tried.MinBy(one => Math.Abs(one.Volts - gate.Si)).Finding, "")
            : (tried[0].Finding, tried.Length == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $"Its ohms are those at {tried[0].Volts:0.0} V gate, the lowest that were read: state the gate volts that your controller gives, and those nearest to them count."));
    }
}

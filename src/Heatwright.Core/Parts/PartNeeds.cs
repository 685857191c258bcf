namespace Heatwright.Parts;

/// <summary>A value that a part of its kind should have.</summary>
/// <param name="Quantity">A name from <see cref="PartQuantities"/>.</param>
/// <param name="IsEssential">True where nothing is predicted without it; false where a class value stands in.</param>
/// <param name="How">How it is found out.</param>
public sealed record PartNeed(string Quantity, bool IsEssential, string How);

/// <summary>What a part of each kind needs to be known by.</summary>
public static class PartNeeds
{
    private const string Calliper = "callipers";
    private const string Scale = "a kitchen scale";
    private const string Receipt = "the receipt";

    /// <summary>The needs of a part: those of its kind, but a switch with contacts has no gate.</summary>
    public static IReadOnlyList<PartNeed> Of(Part part) => HandSwitch.HasContacts(part)
        ? [.. Of(part.Kind).Where(need => need.Quantity != PartQuantities.GateVolts).Select(need => need.Quantity == PartQuantities.RatedCurrent ? need with { How = "its print or sheet, for direct current" } : need)] : Of(part.Kind);

    /// <summary>The needs of a kind, the essential ones first.</summary>
    public static IReadOnlyList<PartNeed> Of(PartKind kind) => [.. Own(kind), .. Size(kind), new(PartQuantities.Mass, false, Scale), new(PartQuantities.Price, false, Receipt)];

    /// <summary>Those that a part does not have yet.</summary>
    public static IReadOnlyList<PartNeed> Missing(Part part, Func<string, bool> found) => [.. Of(part).Where(need => part.Best(need.Quantity) is null && !found(need.Quantity))];

    private static PartNeed[] Own(PartKind kind) => kind switch
    {
        PartKind.Cell =>
        [
            new(PartQuantities.Capacity, true, "a discharge"), new(PartQuantities.Ohms, true, "a pulse run"), new(PartQuantities.CutoffVolts, false, "its sheet"),
            new(PartQuantities.RatedCurrent, false, "its label or sheet"),
        ],
        PartKind.Supervision => [new(PartQuantities.Ohms, false, "the drop across it at working current"), new(PartQuantities.TripCurrent, false, "its label, or a load turned up")],
        PartKind.StepUp =>
        [
            new(PartQuantities.SetVolts, true, "the output without load"), new(PartQuantities.LimitCurrent, false, "a load turned up until the output gives way"),
            new(PartQuantities.LockOutVolts, false, "the input turned down until it stops"), new(PartQuantities.LossFixed, false, "four readings at several loads"),
        ],
        PartKind.Heater =>
        [
            new(PartQuantities.Ohms, true, "its ohms cold, leads taken off"), new(PartQuantities.HeatCapacity, true, "a warm-up"), new(PartQuantities.LinearLoss, true, "a warm-up"),
            new(PartQuantities.Alpha, false, "its ohms held hot"), new(PartQuantities.RatedVolts, false, "its label"),
        ],
        PartKind.Lamp =>
        [
            new(PartQuantities.LoadCurrent, true, "its volts and amps"), new(PartQuantities.LeastInputVolts, true, "its volts turned down until the amps fall"),
            new(PartQuantities.DarkVolts, false, "its volts turned down until it is dark"), new(PartQuantities.MostInputVolts, false, "its sheet"),
            new(PartQuantities.ForwardVolts, false, "a meter across the light itself"), new(PartQuantities.HighestTemperature, false, "its sheet"),
        ],
        PartKind.Switch => [new(PartQuantities.Ohms, false, "the drop across it at working current"), new(PartQuantities.GateVolts, false, "its sheet"), new(PartQuantities.RatedCurrent, false, "its sheet")],
        PartKind.Leads => [new(PartQuantities.Ohms, false, "the drop out and back at working current"), new(PartQuantities.RatedCurrent, false, "its sheet")],
        PartKind.Contacts => [new(PartQuantities.Ohms, false, "the drop across them at working current"), new(PartQuantities.RatedCurrent, false, "its sheet")],
        PartKind.Sensor => [new(PartQuantities.Lag, false, "a step from air into boiling water")],
        PartKind.Controller => [new(PartQuantities.Drain, false, "a meter in its supply")],
        PartKind.Charger => [new(PartQuantities.ChargeCurrent, false, "a meter in the cell's lead")],
        PartKind.CutOut => [new(PartQuantities.OpeningTemperature, false, "its sheet"), new(PartQuantities.RatedCurrent, false, "its sheet")],
        _ => [new(PartQuantities.GripHeatCapacity, false, "a warm-up with the grip's degrees"), new(PartQuantities.GripLoss, false, "a warm-up with the grip's degrees")],
    };

    private static PartNeed[] Size(PartKind kind) => kind switch
    {
        PartKind.Cell or PartKind.Heater or PartKind.Lamp or PartKind.Handle => [new(PartQuantities.Diameter, false, Calliper), new(PartQuantities.Length, false, Calliper)],
        PartKind.Supervision or PartKind.StepUp or PartKind.Controller =>
            [new(PartQuantities.Length, false, Calliper), new(PartQuantities.Width, false, Calliper), new(PartQuantities.Height, false, Calliper)],
        _ => [],
    };
}

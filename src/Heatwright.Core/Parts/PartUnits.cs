using System.Collections.Frozen;
using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>What each value of a part is measured in, and in which unit a maker who types none means it.</summary>
public static class PartUnits
{
    /// <summary>What to expect of each quantity of <see cref="PartQuantities"/>.</summary>
    public static FrozenDictionary<string, Expect> Expected { get; } = All().ToFrozenDictionary(expect => expect.What, StringComparer.Ordinal);

    /// <summary>The quantity that was typed: capitals, hyphens and blanks do not matter; null: none of that name.</summary>
    public static string? Find(string typed)
    {
        string plain = Plain(typed);
        return Expected.Keys.FirstOrDefault(name => Plain(name) == plain);
    }

    private static string Plain(string name) => string.Concat(name.Where(c => c is not ('-' or ' ' or '_'))).ToUpperInvariant();

    private static IEnumerable<Expect> All() =>
    [
        Of(Units.MilliampereHour, PartQuantities.Capacity) with { Likely = (72, 3.6e6) },
        Of(Units.WattHour, PartQuantities.CellEnergy),
        Of(Units.PerHour, PartQuantities.DischargeRate),
        .. Each(Units.Volt, PartQuantities.CutoffVolts, PartQuantities.FullVolts, PartQuantities.RatedVolts, PartQuantities.SetVolts, PartQuantities.LockOutVolts,
            PartQuantities.LossPerAmp, PartQuantities.LossAbove, PartQuantities.GateVolts, PartQuantities.ThresholdVolts, PartQuantities.LeastInputVolts, PartQuantities.MostInputVolts,
            PartQuantities.LeastOutputVolts, PartQuantities.MostOutputVolts, PartQuantities.DarkVolts, PartQuantities.ForwardVolts),
        .. Each(Units.Ampere, PartQuantities.RatedCurrent, PartQuantities.PeakCurrent, PartQuantities.TripCurrent, PartQuantities.LimitCurrent, PartQuantities.HeldCurrent, PartQuantities.ChangeCurrent, PartQuantities.SwitchCurrent,
            PartQuantities.OutputCurrent, PartQuantities.ChargeCurrent, PartQuantities.Drain, PartQuantities.LoadCurrent),
        .. Each(Units.Ohm, PartQuantities.Ohms, PartQuantities.LossPerAmpSquared),
        Of(Units.OhmPerMetre, PartQuantities.OhmsPerLength),
        Of(Units.PerKelvin, PartQuantities.Alpha),
        .. Each(Units.Watt, PartQuantities.RatedPower, PartQuantities.LossFixed),
        .. Each(Units.Percent, PartQuantities.Efficiency, PartQuantities.LightShare),
        Of(Units.Lumen, PartQuantities.LuminousFlux),
        .. Each(Units.Celsius, PartQuantities.HighestTemperature, PartQuantities.LowestTemperature, PartQuantities.OpeningTemperature),
        .. Each(Units.JoulePerKelvin, PartQuantities.HeatCapacity, PartQuantities.GripHeatCapacity),
        .. Each(Units.WattPerKelvin, PartQuantities.LinearLoss, PartQuantities.GripLink, PartQuantities.GripLoss),
        Of(Units.SquareCentimetre, PartQuantities.Radiating),
        Of(Units.SquareMillimetre, PartQuantities.Section),
        Of(Units.Second, PartQuantities.Lag),
        .. Each(Units.Millimetre, PartQuantities.Diameter, PartQuantities.Length, PartQuantities.Width, PartQuantities.Height),
        Of(Units.Gram, PartQuantities.Mass),
        .. new[] { PartQuantities.Price, PartQuantities.PriceAt10, PartQuantities.PriceAt100 }.Select(name => new Expect(name, ExpectKind.Money, [Units.Money])),
    ];

    private static Expect Of(Unit unit, string name) => Expect.Of(unit, name);

    private static IEnumerable<Expect> Each(Unit unit, params string[] names) => names.Select(name => Of(unit, name));
}

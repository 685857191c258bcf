using Heatwright.Physics;

namespace Heatwright.BuildSheets;

/// <summary>How the amplifier is wired.</summary>
public enum AmplifierForm
{
    /// <summary>Gain 1 + R_f/R_g, sensor against ground.</summary>
    NonInverting,

    /// <summary>Gain R_f/R_g by four resistors, sensor between two wires: where the sensor's ground is not the converter's.</summary>
    Difference,
}

/// <summary>What a sensing chain must do, and what it is built of. All volts, ohms and seconds are SI; degrees are °C.</summary>
/// <param name="Curve">The thermocouple.</param>
/// <param name="HottestC">Hottest tip to be read, overshoot included.</param>
/// <param name="ColdLeastC">Coldest cold end.</param>
/// <param name="ColdMostC">Hottest cold end.</param>
/// <param name="ReferenceV">Reference of the converter.</param>
/// <param name="ReferenceShare">Share by which it may be off.</param>
/// <param name="Bits">Bits of the converter.</param>
public sealed record ChainWanted(ThermocoupleCurve Curve, double HottestC, double ColdLeastC, double ColdMostC, double ReferenceV, double ReferenceShare, int Bits)
{
    /// <summary>How the amplifier is wired.</summary>
    public AmplifierForm Form { get; init; } = AmplifierForm.NonInverting;

    /// <summary>Lowest supply of the amplifier.</summary>
    public double SupplyLeastV { get; init; } = 3.2;

    /// <summary>Lowest output.</summary>
    public double FloorV { get; init; } = 0.02;

    /// <summary>Highest output lies so far under the supply.</summary>
    public double HeadroomV { get; init; } = 0.05;

    /// <summary>Limit of the amplifier's offset.</summary>
    public double OffsetV { get; init; } = 150e-6;

    /// <summary>Its drift, V/K.</summary>
    public double DriftVPerK { get; init; } = 2e-6;

    /// <summary>Its bias current.</summary>
    public double BiasA { get; init; } = 1e-9;

    /// <summary>Its gain-bandwidth product.</summary>
    public double BandwidthHz { get; init; } = 1e6;

    /// <summary>Volts added at the output, so that a cold tip does not lie on the floor.</summary>
    public double OutputBiasV { get; init; }

    /// <summary>Tolerance of the resistors as a share.</summary>
    public double Tolerance { get; init; } = 0.01;

    /// <summary>Share of the room that the hottest tip may fill.</summary>
    public double Share { get; init; } = 1;

    /// <summary>Feedback and ground resistor in parallel at most.</summary>
    public double MostParallelOhm { get; init; } = double.PositiveInfinity;

    /// <summary>The amplifier must settle to half a step in this time; infinite: no limit.</summary>
    public double SettleMostS { get; init; } = double.PositiveInfinity;

    /// <summary>Lowest reference.</summary>
    public double ReferenceLeastV => ReferenceV * (1 - ReferenceShare);

    /// <summary>Highest volts that both converter and amplifier can show.</summary>
    public double RoomV => Math.Min(ReferenceLeastV, SupplyLeastV - HeadroomV);

    /// <summary>Largest volts of the sensor: hottest tip, coldest cold end.</summary>
    public double FullScaleV => ColdJunction.VoltageV(Curve, HottestC, ColdLeastC);

    /// <summary>Gain never to be passed, tolerance included.</summary>
    public double LargestGain => GainChoice.LargestAllowed(FullScaleV, OffsetV, RoomV - OutputBiasV, Share);
}

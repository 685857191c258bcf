namespace Heatwright.Parts;

/// <summary>Names of the values that parts carry. One word, one meaning; files use these names.</summary>
public static class PartQuantities
{
    /// <summary>Charge of a cell from full to its cut-off.</summary>
    public const string Capacity = "capacity";
    /// <summary>Volts under which a cell must not be drawn while loaded.</summary>
    public const string CutoffVolts = "cut-off volts";
    /// <summary>Ohms: of a heater cold, of a switch on, of leads out and back, of one contact, of a supervision board.</summary>
    public const string Ohms = "ohms";
    /// <summary>Temperature coefficient of a heater's ohms, referred to 20 °C.</summary>
    public const string Alpha = "temperature coefficient";
    /// <summary>Label power of a heater or module.</summary>
    public const string RatedPower = "rated power";
    /// <summary>Label volts of a heater.</summary>
    public const string RatedVolts = "rated volts";
    /// <summary>Continuous current a part stands.</summary>
    public const string RatedCurrent = "rated current";
    /// <summary>Current at which a supervision board opens.</summary>
    public const string TripCurrent = "trip current";
    /// <summary>Set output volts of a module.</summary>
    public const string SetVolts = "set volts";
    /// <summary>Mean input current at which a module limits itself.</summary>
    public const string LimitCurrent = "limit current";
    /// <summary>Largest mean input current at which a module was seen to hold its output: its limit lies above.</summary>
    public const string HeldCurrent = "current it held";
    /// <summary>Input volts below which a module stops.</summary>
    public const string LockOutVolts = "lock-out volts";
    /// <summary>Always-there loss of a module.</summary>
    public const string LossFixed = "loss fixed";
    /// <summary>Loss of a module per input ampere.</summary>
    public const string LossPerAmp = "loss per ampere";
    /// <summary>Loss of a module per input ampere squared.</summary>
    public const string LossPerAmpSquared = "loss per ampere squared";
    /// <summary>Loss of a module per input ampere above <see cref="ChangeCurrent"/>, beside what it loses per ampere below: a module that works in bursts at light load loses more above.</summary>
    public const string LossAbove = "loss above the change";
    /// <summary>Input current above which <see cref="LossAbove"/> counts.</summary>
    public const string ChangeCurrent = "current of the change";
    /// <summary>Heat capacity of a working end or a cell.</summary>
    public const string HeatCapacity = "heat capacity";
    /// <summary>Linear loss of a working end to the air.</summary>
    public const string LinearLoss = "linear loss";
    /// <summary>Emissivity times area of a working end.</summary>
    public const string Radiating = "radiating area";
    /// <summary>Conductance from a working end into the grip.</summary>
    public const string GripLink = "grip link";
    /// <summary>Heat capacity of the grip.</summary>
    public const string GripHeatCapacity = "grip heat capacity";
    /// <summary>Conductance of the grip to the air.</summary>
    public const string GripLoss = "grip loss";
    /// <summary>Lag of a sensor.</summary>
    public const string Lag = "lag";
    /// <summary>Outer diameter, or a handle's inside diameter.</summary>
    public const string Diameter = "diameter";
    /// <summary>Length, or a handle's inside length.</summary>
    public const string Length = "length";
    /// <summary>Width of a board.</summary>
    public const string Width = "width";
    /// <summary>Height of a board with its parts.</summary>
    public const string Height = "height";
    /// <summary>Mass.</summary>
    public const string Mass = "mass";
    /// <summary>Price of one piece.</summary>
    public const string Price = "price";
    /// <summary>Current of a charger into the pack.</summary>
    public const string ChargeCurrent = "charge current";
    /// <summary>Current that the electronics draw always.</summary>
    public const string Drain = "drain";
    /// <summary>Volts when full: of a cell, of a charger's end, where a supervision board stops the charge.</summary>
    public const string FullVolts = "full volts";
    /// <summary>Energy of a cell from full to its cut-off.</summary>
    public const string CellEnergy = "energy";
    /// <summary>Current a part stands for a short time.</summary>
    public const string PeakCurrent = "peak current";
    /// <summary>Continuous current of a cell as parts of its capacity each hour: what a label writes as 25C.</summary>
    public const string DischargeRate = "discharge rate";
    /// <summary>Largest current of a module's own switch: what the bare amps of most labels mean.</summary>
    public const string SwitchCurrent = "switch current";
    /// <summary>Largest current at a module's output.</summary>
    public const string OutputCurrent = "output current";
    /// <summary>Least input volts.</summary>
    public const string LeastInputVolts = "least input volts";
    /// <summary>Most input volts.</summary>
    public const string MostInputVolts = "most input volts";
    /// <summary>Least output volts.</summary>
    public const string LeastOutputVolts = "least output volts";
    /// <summary>Most output volts.</summary>
    public const string MostOutputVolts = "most output volts";
    /// <summary>Efficiency of a module: claimed at an unsaid point, found at the best of those that were read.</summary>
    public const string Efficiency = "efficiency";
    /// <summary>Gate volts at which a switch's ohms hold, or that its input takes.</summary>
    public const string GateVolts = "gate volts";
    /// <summary>Gate volts at which a switch begins to conduct; not what turns it on.</summary>
    public const string ThresholdVolts = "threshold volts";
    /// <summary>Highest temperature a part stands.</summary>
    public const string HighestTemperature = "highest temperature";
    /// <summary>Lowest temperature a part stands.</summary>
    public const string LowestTemperature = "lowest temperature";
    /// <summary>Temperature at which a cut-out opens.</summary>
    public const string OpeningTemperature = "opening temperature";
    /// <summary>Copper or wire cross-section.</summary>
    public const string Section = "section";
    /// <summary>Ohms along a wire or ribbon.</summary>
    public const string OhmsPerLength = "ohms per length";
    /// <summary>Current that a load with a driver takes as long as its volts allow.</summary>
    public const string LoadCurrent = "load current";
    /// <summary>Volts at which a lamp takes no current any more.</summary>
    public const string DarkVolts = "dark volts";
    /// <summary>Volts of the light itself at its working current, without its driver.</summary>
    public const string ForwardVolts = "forward volts";
    /// <summary>Share of the light's own electrical power that leaves as light.</summary>
    public const string LightShare = "light share";
    /// <summary>All the light that a lamp gives.</summary>
    public const string LuminousFlux = "luminous flux";
    /// <summary>Price of one piece where ten are bought.</summary>
    public const string PriceAt10 = "price at 10";
    /// <summary>Price of one piece where a hundred are bought.</summary>
    public const string PriceAt100 = "price at 100";
}

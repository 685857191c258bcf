using Heatwright.Parts;
using Heatwright.Physics;
using Heatwright.Plant;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Arrangements;

/// <summary>An arrangement as a solvable plant: its numbers with doubt, and a way to build the bare plant from any draw of them.</summary>
public sealed class PlantBuilder
{
    /// <summary>The firmware aims so far above the target, K, so that the target is passed and not only approached: our choice.</summary>
    public const double UsualAimAboveK = 10;

    /// <summary>Controller period, s: our choice, well under the lag of any sensor here.</summary>
    public const double PeriodS = 0.5;

    /// <summary>Steps of a lamp's run at its full light; nothing in it is quicker than the pairs of its cells, which the stepper takes exactly.</summary>
    private const double LampSteps = 3000;

    /// <summary>A lamp's step is never shorter, s.</summary>
    private const double LampStepS = 10;

    /// <summary>A lamp is followed for so many times its full light: at a tenth of its current it counts as gone.</summary>
    private const double LampFollowed = 1.2 / LoadModel.Lamp.GoneShare;

    private readonly Arrangement arrangement;
    private readonly Shelf shelf;
    private readonly WorkPlan work;
    private readonly CellModel cell;
    private readonly double foundOhm;
    private readonly double foundOpenV;
    private readonly double wholePerFound;
    private readonly bool linkIsInLoss;
    private readonly Dictionary<PlantKey, int> places;

    private PlantBuilder(Arrangement arrangement, Shelf shelf, WorkPlan work, CellModel cell, IReadOnlyList<PlantInput> inputs)
    {
        (this.arrangement, this.shelf, this.work, this.cell) = (arrangement, shelf, work, cell);
        Inputs = inputs;
        places = inputs.Select((input, i) => (input.Key, i)).ToDictionary(pair => pair.Key, pair => pair.i);
        var found = shelf.FoundOfCell(arrangement.Cell);
        foundOhm = found?.Find(PartQuantities.Ohms)?.Si ?? Inputs[places[PlantKey.CellOhms]].Value.Si;
        foundOpenV = found?.Find(CellQuantities.OpenVolts)?.Si ?? Inputs[places[PlantKey.OpenVolts]].Value.Si;

        // A capacity is told down to a stated cut-off; the model reaches as far as its log.
        wholePerFound = found?.Find(PartQuantities.Capacity)?.Si is { } foundC && cell.CapacityC / foundC is var whole && Math.Abs(whole - 1) > 1e-9 ? whole : 1;
        linkIsInLoss = IsRead(PlantKey.EndLoss) && places.TryGetValue(PlantKey.GripLink, out int link) && inputs[link].Value.Origin is Origin.Assumed;
    }

    /// <summary>Temperature that the work asks of the working end, °C; NaN of a lamp.</summary>
    public double TargetC => arrangement.Lamp is null ? work.TargetC : double.NaN;

    /// <summary>True where what goes from the working end into the grip is a part of the end's own loss: a warm-up that did not tell the grip apart has read all that leaves the end.</summary>
    public bool LinkIsInLoss => linkIsInLoss;

    private bool IsRead(PlantKey key) => places.TryGetValue(key, out int place) && Inputs[place].Value.Origin is Origin.Fitted or Origin.Measured;

    /// <summary>The same numbers on a day with other air; what is built stands in it before it is switched on.</summary>
    /// <param name="airC">Air, °C.</param>
    public PlantBuilder InAir(double airC) => new(arrangement, shelf, work with { AirC = airC }, cell, Inputs);

    /// <summary>Step of a single traced run, s.</summary>
    public double StepS => arrangement.Lamp is null ? PeriodS : Math.Max(LampStepS, LampHoldS / LampSteps);

    /// <summary>How long the middle values would hold a lamp's current, were all charge drawn at it, s.</summary>
    private double LampHoldS => arrangement.Parallel * Inputs[places[PlantKey.Capacity]].Value.Si / Math.Max(1e-6, Inputs[places[PlantKey.LampAmps]].Value.Si * arrangement.DutyCeiling);

    /// <summary>The numbers it is built from.</summary>
    public IReadOnlyList<PlantInput> Inputs { get; }

    /// <summary>The middle values, SI, in the order of <see cref="Inputs"/>.</summary>
    public double[] Middle => [.. Inputs.Select(input => input.Value.Si)];

    /// <summary>Values of one draw, SI.</summary>
    public double[] Drawn(Draw draw) => [.. Inputs.Select(input => input.Value.DrawnSi(draw))];

    /// <summary>Place of a number in <see cref="Inputs"/>, or −1 where this arrangement has none.</summary>
    public int Place(PlantKey key) => places.GetValueOrDefault(key, -1);

    /// <summary>Collects the numbers of an arrangement; what is essential and unknown comes back as problems, each with the trial that would tell it.</summary>
    public static Checked<PlantBuilder> For(Arrangement arrangement, Shelf shelf, WorkPlan work)
    {
        List<Problem> problems = [];
        List<PlantInput> inputs = [];
        var cellModel = shelf.FoundOfCell(arrangement.Cell)?.Cell?.Cell;
        if (cellModel is null)
        {
            problems.Add(Missing(arrangement.Cell, "how its volts fall with charge and current", "a trial of kind 'discharge' (also called 'capacity') and one of kind 'pulse'"));
        }

        Need(PlantKey.Capacity, arrangement.Cell, PartQuantities.Capacity, "capacity", "a discharge");
        Need(PlantKey.CellOhms, arrangement.Cell, PartQuantities.Ohms, "cell ohms", "a pulse run");
        Need(PlantKey.OpenVolts, arrangement.Cell, CellQuantities.OpenVolts, "open volts at half charge", "a discharge");
        double mass = shelf.Value(arrangement.Cell, PartQuantities.Mass)?.Si ?? 0.045;
        Assume(PlantKey.CellHeat, arrangement.Cell, PartQuantities.HeatCapacity, "heat capacity of a cell", 900 * mass, 1100 * mass, Units.JoulePerKelvin,
            "mass times 900 to 1100 J/(kg·K), from memory");
        Assume(PlantKey.CellToGrip, arrangement.Cell, "to grip", "cell to grip", 0.05, 0.15, Units.WattPerKelvin, "a cell lying in a closed handle, common practice, no source");
        Assume(PlantKey.ContactOhms, arrangement.Contacts, PartQuantities.Ohms, "ohms of one contact", 0.010, 0.050, Units.Ohm, "spring holder contact 10 to 50 mΩ, common practice, no source");
        if (arrangement.Supervision is { } supervision)
        {
            Assume(PlantKey.SupervisionOhms, supervision, PartQuantities.Ohms, "ohms of supervision", 0.008, 0.080, Units.Ohm, "supervision boards 8 to 80 mΩ, common practice, no source");
        }

        Assume(PlantKey.SwitchOhms, arrangement.Switch, PartQuantities.Ohms, "ohms of the switch", 0.005, 0.040, Units.Ohm, "small transistor switch, common practice, no source");
        Assume(PlantKey.LeadOhms, arrangement.Leads, PartQuantities.Ohms, "ohms of the leads", 0.010, 0.050, Units.Ohm, "short leads, common practice, no source");
        if (arrangement.Heater is { } heater)
        {
            HotEnd(heater);
        }
        else
        {
            Light(arrangement.Load);
        }

        Assume(PlantKey.GripLink, arrangement.Load, PartQuantities.GripLink, arrangement.Lamp is null ? "working end to grip" : "lamp's head to grip", 0.005, 0.025, Units.WattPerKelvin, "steel shank of a small hot tool, common practice, no source");
        AssumeEither(PlantKey.GripHeat, PartQuantities.GripHeatCapacity, "heat capacity of the grip", 20, 80, Units.JoulePerKelvin, "hand-sized plastic grip, common practice, no source");
        AssumeEither(PlantKey.GripLoss, PartQuantities.GripLoss, "grip to air", 0.12, 0.27, Units.WattPerKelvin, "bare handle of 30 to 36 mm and 110 to 200 mm in still air, worked out with 12 W/(m²·K)");
        if (arrangement.StepUp is { } module)
        {
            Assume(PlantKey.ModuleFixed, module, PartQuantities.LossFixed, "fixed loss of the module", 0.02, 0.3, Units.Watt, "small modules, common practice, no source");
            Assume(PlantKey.ModulePerAmp, module, PartQuantities.LossPerAmp, "loss per ampere", 0.05, 0.5, Units.Volt, "small modules, common practice, no source");
            Assume(PlantKey.ModulePerAmpSquared, module, PartQuantities.LossPerAmpSquared, "loss per ampere squared", 0.03, 0.2, Units.Ohm, "small modules, common practice, no source");
            if (Optional(PlantKey.ModuleChange, module, PartQuantities.ChangeCurrent, "current of the change"))
            {
                Optional(PlantKey.ModuleAbove, module, PartQuantities.LossAbove, "loss above the change");
            }

            inputs.Add(new(PlantKey.ModuleLimit, $"current limit of the module, {shelf[module].Name}", shelf.ModuleLimit(module), module) { Quantity = PartQuantities.LimitCurrent });
            Assume(PlantKey.ModuleLockOut, module, PartQuantities.LockOutVolts, "lock-out of the module", 2.2, 3.0, Units.Volt, "one-cell modules, common practice, no source");
        }

        if (arrangement.StepUp is { } step)
        {
            if (!Optional(PlantKey.ModuleSet, step, PartQuantities.SetVolts, "set volts"))
            {
                problems.Add(SetVoltsAsked(shelf[step], $"arrangement {arrangement.Letter}"));
            }
        }

        if (arrangement.Controller is { } board)
        {
            Assume(PlantKey.Drain, board, PartQuantities.Drain, "always-on drain", 0.005, 0.03, Units.Ampere, "small controller board, common practice, no source");
        }

        if (arrangement.Lamp is null)
        {
            inputs.Add(new(PlantKey.WorkContact, "conductance into the work", work.Contact, null));
            inputs.Add(new(PlantKey.WorkNeed, "heat of one piece", work.Need, null));
        }

        return problems.Count > 0 ? new(problems) : new(new PlantBuilder(arrangement, shelf, work, cellModel!, inputs));

        void HotEnd(PartId heater)
        {
            if (double.IsNaN(work.TargetC))
            {
                problems.Add(new("The brief names no temperature that the tool works at.", $"arrangement {arrangement.Letter}", "no target", "a target temperature", "State it: heatwright brief FILE --set target=320C, or a warm-up as a sentence."));
            }

            Need(PlantKey.HeaterOhms, heater, PartQuantities.Ohms, "heater ohms", "cold ohms");
            Assume(PlantKey.HeaterAlpha, heater, PartQuantities.Alpha, "temperature coefficient", 0, 0.0045, Units.PerKelvin, "unknown alloy, 0 to 4.5e-3 per kelvin, from memory");
            Need(PlantKey.EndHeat, heater, PartQuantities.HeatCapacity, "heat capacity of the working end", "a warm-up");
            Need(PlantKey.EndLoss, heater, PartQuantities.LinearLoss, "loss of the working end", "a warm-up");
            Optional(PlantKey.EndRadiating, heater, PartQuantities.Radiating, "radiating area of the working end");
            if (!Optional(PlantKey.SensorLag, heater, PartQuantities.Lag, "lag of the sensor") && arrangement.Sensor is { } sensor)
            {
                Optional(PlantKey.SensorLag, sensor, PartQuantities.Lag, "lag of the sensor");
            }
        }

        void Light(PartId lamp)
        {
            Need(PlantKey.LampAmps, lamp, PartQuantities.LoadCurrent, "the current that its driver holds", "volts and amps");
            Need(PlantKey.LampLeastVolts, lamp, PartQuantities.LeastInputVolts, "least volts at which it holds its current", "volts and amps");
            double leastV = shelf.Value(lamp, PartQuantities.LeastInputVolts)?.Si ?? 3;
            Assume(PlantKey.LampDarkVolts, lamp, PartQuantities.DarkVolts, "volts at which it is dark", 0.75 * leastV, 0.95 * leastV, Units.Volt, "5 to 25 % under the least volts, common practice, no source");
            Assume(PlantKey.LampForwardVolts, lamp, PartQuantities.ForwardVolts, "volts of the light itself", LampLight.LeastForwardV, LampLight.MostForwardV, Units.Volt, LampLight.WhyForward);
            Assume(PlantKey.LampLightShare, lamp, PartQuantities.LightShare, "share that leaves as light", LampLight.LeastShare, LampLight.MostShare, Units.One, LampLight.WhyShare);
            Optional(PlantKey.LampLockOut, lamp, PartQuantities.LockOutVolts, "volts at which it switches itself off");
            double headKg = shelf.Value(lamp, PartQuantities.Mass)?.Si ?? 0.03;
            Assume(PlantKey.HeadHeat, lamp, PartQuantities.HeatCapacity, "heat capacity of the lamp's head", 600 * headKg, 1000 * headKg, Units.JoulePerKelvin, "mass times 600 to 1000 J/(kg·K), aluminium and plastic, from memory");
            Assume(PlantKey.HeadLoss, lamp, PartQuantities.LinearLoss, "loss of the lamp's head", 0.02, 0.06, Units.WattPerKelvin, "20 to 60 cm² of a small head in still air at 10 W/(m²·K), worked out from memory");
            Optional(PlantKey.EndRadiating, lamp, PartQuantities.Radiating, "radiating area of the lamp's head");
        }

        void Need(PlantKey key, PartId part, string quantity, string name, string trial)
        {
            if (!Optional(key, part, quantity, name))
            {
                problems.Add(Missing(part, name, trial));
            }
        }

        bool Optional(PlantKey key, PartId part, string quantity, string name)
        {
            if (shelf.Value(part, quantity) is not { } value)
            {
                return false;
            }

            inputs.Add(new(key, $"{name}, {shelf[part].Name}", value, part) { Quantity = quantity });
            return true;
        }

        void Assume(PlantKey key, PartId part, string quantity, string name, double low, double high, Unit unit, string why) =>
            inputs.Add(new(key, $"{name}, {shelf[part].Name}", shelf.ValueOr(part, quantity, low, high, unit, why), part) { Quantity = quantity });

        void AssumeEither(PlantKey key, string quantity, string name, double low, double high, Unit unit, string why) =>
            Assume(key, shelf.Value(arrangement.Load, quantity) is null ? arrangement.Handle : arrangement.Load, quantity, name, low, high, unit, why);

        Problem Missing(PartId part, string what, string trial) =>
            new($"'{shelf[part].Name}': {what} is not known.", $"arrangement {arrangement.Letter}", "none", "a finding, a sheet value or a claim", $"Take {trial} of '{shelf[part].Name}'.");
    }

    /// <summary>What a step-up is set to is not its label's range, and is nothing to be guessed.</summary>
    /// <param name="module">The module.</param>
    /// <param name="where">The place that asks.</param>
    public static Problem SetVoltsAsked(Part module, string where) => new($"'{module.Name}': what it is set to is not known.", where,
        module.Best(PartQuantities.MostOutputVolts) is { } most ? $"up to {Display.Rounded(most)}" : "none", "the volts at its output, without load",
        $"Read them with a meter, and say so: heatwright part state FILE {module.Id} --measured \"set volts=12V (read at its output)\".");

    /// <summary>The bare plant for one set of SI values in the order of <see cref="Inputs"/>. Values a draw pushed out of what can be are held at the edge.</summary>
    public AssembledTool Build(ReadOnlySpan<double> si)
    {
        double[] at = si.ToArray();
        double Take(PlantKey key, double otherwise = 0) => places.TryGetValue(key, out int place) ? at[place] : otherwise;
        double Positive(PlantKey key, double least) => Math.Max(least, Take(key));
        var drawn = cell.Altered(Positive(PlantKey.Capacity, 10) * wholePerFound, Positive(PlantKey.CellOhms, 1e-4) / foundOhm, Take(PlantKey.OpenVolts) - foundOpenV);
        double loop = (Positive(PlantKey.ContactOhms, 0) * arrangement.ContactCount) + Positive(PlantKey.SupervisionOhms, 0) + Positive(PlantKey.SwitchOhms, 0) + Positive(PlantKey.LeadOhms, 0);
        int cells = arrangement.Series * arrangement.Parallel;
        double trip = arrangement.Supervision is { } supervision && shelf.Value(supervision, PartQuantities.TripCurrent) is { } current ? current.Si : double.PositiveInfinity;
        PathModel path = arrangement.StepUp is not null
            ? new PathModel.StepUp(new StepUpModule(Positive(PlantKey.ModuleSet, 0.1), new(Positive(PlantKey.ModuleFixed, 0), Positive(PlantKey.ModulePerAmp, 0), Positive(PlantKey.ModulePerAmpSquared, 0)))
            {
                ChangeA = places.ContainsKey(PlantKey.ModuleAbove) ? Positive(PlantKey.ModuleChange, 0) : double.PositiveInfinity,
                SteeperV = Positive(PlantKey.ModuleAbove, 0),
                PeakLimitA = Positive(PlantKey.ModuleLimit, 0.1),
                MaxDuty = 0.92,
                LockoutV = Positive(PlantKey.ModuleLockOut, 0),
                DiodeV = 0.35,
            })
            : new PathModel.Direct();
        // A warm-up that did not tell the grip apart has read all that leaves the end: what is assumed to go into the grip is a part of it, not more.
        double link = Positive(PlantKey.GripLink, 0), endLoss = Positive(arrangement.Lamp is null ? PlantKey.EndLoss : PlantKey.HeadLoss, 0);
        (link, endLoss) = linkIsInLoss ? (Math.Min(link, endLoss), Math.Max(0, endLoss - link)) : (link, endLoss);
        double endHeat = Positive(arrangement.Lamp is null ? PlantKey.EndHeat : PlantKey.HeadHeat, 1e-3);
        double lag = Positive(PlantKey.SensorLag, 0);
        double air = 273.15 + work.AirC;
        return new AssembledTool(
            new PackModel(drawn, arrangement.Series, arrangement.Parallel, loop) { TripA = trip },
            path,
            arrangement.Lamp is null ? new LoadModel.Heater(Positive(PlantKey.HeaterOhms, 0.01), Take(PlantKey.HeaterAlpha), 293.15) : Lamp(Positive),
            new ThermalNetwork(
                [
                    new(arrangement.Lamp is null ? "working end" : "lamp head", endHeat, endLoss, 0, Positive(PlantKey.EndRadiating, 0)),
                    new("grip", Positive(PlantKey.GripHeat, 1), Positive(PlantKey.GripLoss, 0.01)),
                    new("cells", cells * Positive(PlantKey.CellHeat, 1), 0),
                ],
                [new(0, 1, link), new(1, 2, cells * Positive(PlantKey.CellToGrip, 0.001))],
                air)
            {
                CellNode = 2,
                ElectronicsNode = 1,
                SensorLagS = lag < 0.05 ? 0 : lag,
            },
            arrangement.Lamp is null ? Regulator(endHeat, lag, air) : new ControllerModel.Fixed(arrangement.DutyCeiling))
        {
            CutoffV = arrangement.Series * (shelf.Value(arrangement.Cell, PartQuantities.CutoffVolts)?.Si ?? 3.0),
            CutoffOnlyWhileOn = true,
            DrainOnA = Positive(PlantKey.Drain, 0),
            DrainOffA = Positive(PlantKey.Drain, 0),
            TargetK = arrangement.Lamp is null ? 273.15 + work.TargetC : double.NaN,
            Work = arrangement.Lamp is not null ? null
                : new WorkPattern(Positive(PlantKey.WorkContact, 0), 273.15 + work.AboveC, 0, work.EveryS, work.ForS, Positive(PlantKey.WorkNeed, 0)) { AfterTargetS = work.FirstAfterS, Count = work.MostPieces },
            Duty = arrangement.Lamp is null ? work.Blocks : null,
            TimesRecovery = work.TimesRecovery,
            MaxS = arrangement.Lamp is null ? work.AtMostS : LampFollowed * LampHoldS,
        };
    }

    private static LoadModel.Lamp Lamp(Func<PlantKey, double, double> positive)
    {
        double leastV = positive(PlantKey.LampLeastVolts, 0.2);
        return new(positive(PlantKey.LampAmps, 1e-3), leastV, Math.Min(positive(PlantKey.LampDarkVolts, 0.1), 0.99 * leastV))
        {
            ForwardV = positive(PlantKey.LampForwardVolts, 0),
            LightShare = Math.Min(1, positive(PlantKey.LampLightShare, 0)),
            LockOutV = positive(PlantKey.LampLockOut, 0),
        };
    }

    /// <summary>Simple internal-model tuning (Skogestad 2003) for a plant that integrates on the time scale of its delay: gain = C/(2θ), reset 8θ.</summary>
    /// <remarks>The integral begins with the power that holds the aim and stands still at the stops, so that warm-up runs at full power.</remarks>
    private ControllerModel.Pi Regulator(double endHeat, double lagS, double airK)
    {
        double aim = 273.15 + work.TargetC + work.AimAboveK;
        double delay = (lagS / 2) + PeriodS; // half rule (Skogestad 2003): half of the lag, half a sample, half a frame
        double gain = arrangement.GainWPerK ?? endHeat / (2 * delay);
        return new(aim, PeriodS, gain, gain / (arrangement.ResetS ?? 8 * delay), 0, Inputs[places[PlantKey.HeaterOhms]].Value.Si, arrangement.DutyCeiling) { StartW = HoldW(aim, airK) };
    }

    /// <summary>Gain and reset time of the controller: as the arrangement states them, or by the tuning of the middle values. Null: the load is a lamp.</summary>
    public (double GainWPerK, double ResetS)? Regulation => arrangement.Lamp is null && Build(Middle).Controller is ControllerModel.Pi pi ? (pi.GainWPerK, pi.GainWPerK / pi.IntegralWPerKS) : null;

    /// <summary>Power that holds the working end at a temperature, from the middle values: what the firmware would be given.</summary>
    private double HoldW(double kelvin, double airK)
    {
        double Value(PlantKey key) => places.TryGetValue(key, out int place) ? Math.Max(0, Inputs[place].Value.Si) : 0;
        double away = linkIsInLoss ? Value(PlantKey.EndLoss) : Value(PlantKey.EndLoss) + Value(PlantKey.GripLink);
        return (away * (kelvin - airK))
            + (Value(PlantKey.EndRadiating) * Physics.Constants.StefanBoltzmann * (Math.Pow(kelvin, 4) - Math.Pow(airK, 4)));
    }
}

using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.BuildSheets;

/// <summary>A tool near its set point as one lag with a dead time.</summary>
/// <param name="KelvinPerWatt">Thermal resistance to air, tangent at the set point.</param>
/// <param name="Lags">Time constant and dead time.</param>
/// <param name="HoldW">Power that holds the set point.</param>
public sealed record ToolModel(double KelvinPerWatt, ReducedLags Lags, double HoldW)
{
    /// <summary>The model of an assembled tool at a set point.</summary>
    /// <param name="tool">The tool.</param>
    /// <param name="setC">Set point.</param>
    /// <param name="sampleS">Sample period.</param>
    /// <param name="frameS">Frame of the duty.</param>
    public static ToolModel Of(AssembledTool tool, double setC, double sampleS, double frameS)
    {
        var network = tool.Network;
        int hot = network.HeaterNode;
        if (network.SensorNode != hot && Between(network, hot, network.SensorNode) > 0)
        {
            return OfTwoBodies(network, setC, sampleS, frameS);
        }

        double setK = setC + 273.15;

        // What the end is linked to hardly moves while the loop settles: the links count as losses to where it stands, which is near air.
        double tangent = Slope(network, hot, hot, setK), hold = LossW(network, hot, hot, setK);
        return new(1 / tangent, HalfRule.OfTool(network.Nodes[hot].CapacityJPerK / tangent, network.SensorLagS, 0, sampleS, frameS), hold);
    }

    /// <summary>A core that is heated and a tip that is read: both lags of the pair, their neighbours held near air, and the sensor's lag by the half rule.</summary>
    private static ToolModel OfTwoBodies(ThermalNetwork network, double setC, double sampleS, double frameS)
    {
        int core = network.HeaterNode, tip = network.SensorNode;
        double link = Between(network, core, tip), setK = setC + 273.15;
        double tipW = LossW(network, tip, core, setK), coreK = setK + (tipW / link);
        double tipSlope = Slope(network, tip, core, setK), coreSlope = Slope(network, core, tip, coreK);
        double coreJ = network.Nodes[core].CapacityJPerK, tipJ = network.Nodes[tip].CapacityJPerK;

        // Rates of the pair: roots of x² − sum·x + product, the slow one without cancellation.
        double sum = ((link + coreSlope) / coreJ) + ((link + tipSlope) / tipJ);
        double determinant = (link * (coreSlope + tipSlope)) + (coreSlope * tipSlope);
        double fast = (sum + Math.Sqrt((sum * sum) - (4 * determinant / (coreJ * tipJ)))) / 2;
        double slow = determinant / (coreJ * tipJ) / fast;
        var lags = HalfRule.ToFirstOrder([1 / slow, 1 / fast, network.SensorLagS], 0.5 * (sampleS + frameS));
        return new(link / determinant, lags, tipW + LossW(network, core, tip, coreK));
    }

    private static double Between(ThermalNetwork network, int a, int b) => network.Links.Where(one => (one.A == a && one.B == b) || (one.A == b && one.B == a)).Sum(one => one.WPerK);

    /// <summary>Links of a node to others than its partner count as losses to air.</summary>
    private static double Linear(ThermalNetwork network, int node, int partner) => network.Nodes[node].LinearWPerK
        + network.Links.Where(one => one.A == node || one.B == node).Sum(one => one.WPerK) - Between(network, node, partner);

    private static double LossW(ThermalNetwork network, int at, int partner, double kelvin)
    {
        var node = network.Nodes[at];
        double rise = Math.Max(1, kelvin - network.AmbientK);
        return (Linear(network, at, partner) * rise) + (node.ConvectionWPerK125 * Math.Pow(rise, 1.25))
            + (Constants.StefanBoltzmann * node.RadiatingM2 * (Math.Pow(kelvin, 4) - Math.Pow(network.AmbientK, 4)));
    }

    private static double Slope(ThermalNetwork network, int at, int partner, double kelvin)
    {
        var node = network.Nodes[at];
        return Linear(network, at, partner) + (1.25 * node.ConvectionWPerK125 * Math.Pow(Math.Max(1, kelvin - network.AmbientK), 0.25))
            + (4 * Constants.StefanBoltzmann * node.RadiatingM2 * Math.Pow(kelvin, 3));
    }
}

/// <summary>What the loop did in one simulated case.</summary>
/// <param name="Name">The case.</param>
/// <param name="OvershootK">Reading above the set point before any work; negative: it was never reached.</param>
/// <param name="SettledS">When it last left ±2 K before the work began, s; NaN: not settled.</param>
/// <param name="RippleK">Peak to peak over the last part before the work, once settled; NaN: not settled.</param>
/// <param name="DroopK">Deepest fall of the working end under the set point in a piece of work; NaN: no work.</param>
/// <param name="ReadyS">When the set point less 5 K was first read, s; NaN: never.</param>
public sealed record LoopCase(string Name, double OvershootK, double SettledS, double RippleK, double DroopK, double ReadyS)
{
    /// <summary>From the start of the first piece of work until the reading stays within ±2 K, s; NaN: no work, or not before the next piece.</summary>
    public double RecoveredS { get; init; } = double.NaN;

    /// <summary>When the working end itself first was at the tool's target, s, which is what a promised warm-up counts; NaN: never, or the tool has no target.</summary>
    public double TargetS { get; init; } = double.NaN;
}

/// <summary>Control constants, and how the loop does with them.</summary>
/// <param name="Model">The tool near its set point.</param>
/// <param name="Settings">Gain and integral time.</param>
/// <param name="SampleS">Sample period.</param>
/// <param name="Margins">How far the loop is from swinging.</param>
/// <param name="Cases">Simulated cases.</param>
/// <param name="Swing">Saw-tooth of on-off control at a full pack; null: the pack cannot hold the set point.</param>
/// <param name="AllowedK">Swing that is allowed, peak to peak.</param>
/// <param name="Relay">What a relay test should show.</param>
public sealed record ControlDesign(
    ToolModel Model, PiSettings Settings, double SampleS, Margins Margins, IReadOnlyList<LoopCase> Cases, SawTooth? Swing, double AllowedK, RelaySwing Relay)
{
    /// <summary>A pack this empty still has to hold the set point.</summary>
    public const double NearlyEmpty = 0.10;

    /// <summary>Half of what a relay test adds and takes, as a share of the power that holds.</summary>
    private const double RelayShare = 0.5;

    /// <summary>On-off is enough where its swing is no more than what is allowed.</summary>
    public bool OnOffIsEnough => Swing is { } swing && swing.HighC - swing.LowC <= AllowedK;

    /// <summary>Constants by the simple internal-model rules, tightest advised, and the checks in the coupled simulation.</summary>
    /// <param name="tool">The tool with its pack, path and work.</param>
    /// <param name="setC">Set point.</param>
    /// <param name="frameS">Frame of the duty.</param>
    /// <param name="mostDuty">Largest duty.</param>
    /// <param name="allowedK">Swing that is allowed, peak to peak.</param>
    /// <param name="fullOnW">Power into the heater, full pack, switch on.</param>
    /// <param name="stated">Gain and integral time that are stated in the place of the rules'; null: none.</param>
    public static ControlDesign Of(AssembledTool tool, double setC, double frameS, double mostDuty, double allowedK, double fullOnW, Func<PiSettings, PiSettings>? stated = null)
    {
        double airC = tool.Network.AmbientK - 273.15;
        double sample = SamplePeriod(tool, setC, frameS);
        var model = ToolModel.Of(tool, setC, sample, frameS);
        var settings = PiTuning.Pi(model.KelvinPerWatt, model.Lags.SlowS, model.Lags.DelayS, 1);
        settings = stated?.Invoke(settings) ?? settings;
        var margins = LoopMargins.Of(settings.GainWPerK, settings.IntegralS, model.KelvinPerWatt, model.Lags.SlowS, model.Lags.DelayS);
        double nominal = tool.Load is LoadModel.Heater heater ? heater.Ohm : 1;
        var pi = new ControllerModel.Pi(setC + 273.15, sample, settings.GainWPerK, settings.GainWPerK / settings.IntegralS, 0, nominal, mostDuty) { StartW = model.HoldW };
        List<LoopCase> cases = [];
        foreach (var (name, charge) in new[] { ("full pack", 1.0), ("nearly empty pack", NearlyEmpty) })
        {
            if (tool.Pack is { } pack)
            {
                var standing = tool with { Pack = pack with { StartCharge = charge }, Controller = pi, Duty = null, TargetK = setC - 5 + 273.15 };
                cases.Add(Simulated($"{name}, no work", standing with { Work = null }, setC, tool.TargetK));
                if (tool.Work is not null)
                {
                    cases.Add(Simulated($"{name}, at work", standing, setC, tool.TargetK));
                }
            }
        }

        double plateau = airC + (model.KelvinPerWatt * fullOnW);
        var swing = plateau > setC + allowedK && setC - allowedK > airC
            ? OnOffCycle.Of(model.KelvinPerWatt, model.Lags.SlowS, model.Lags.DelayS, fullOnW, airC, setC - (allowedK / 4), setC + (allowedK / 4))
            : null;
        return new(model, settings, sample, margins, cases, swing, allowedK, RelayTest.Swing(Math.Max(0.1, RelayShare * model.HoldW), model.KelvinPerWatt, model.Lags.SlowS, model.Lags.DelayS, 0));
    }

    /// <summary>A fifth of the dead time that is there without sampling, at least a frame, on a round figure: our choice.</summary>
    private static double SamplePeriod(AssembledTool tool, double setC, double frameS)
    {
        double bare = ToolModel.Of(tool, setC, 0, frameS).Lags.DelayS / 5;
        double[] round = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2];
        return Math.Max(frameS, round.Where(period => period <= bare).DefaultIfEmpty(round[0]).Max());
    }

    private static LoopCase Simulated(string name, AssembledTool tool, double setC, double targetK)
    {
        const double stepS = 0.25, endS = 240;
        double[] at = [.. Enumerable.Range(0, (int)(endS / stepS) + 1).Select(i => i * stepS)];
        var run = PlantRunner.Run(tool with { MaxS = endS }, new RunSettings { Instants = at, StepS = Math.Min(0.25, ((ControllerModel.Pi)tool.Controller).PeriodS) });
        double[] read = [.. run.Trace.SensorK.Select(kelvin => kelvin - 273.15)];
        int end = Array.FindIndex(read, value => !double.IsFinite(value));
        end = end < 0 ? read.Length : end;
        double firstWork = tool.Work is { } work ? (double.IsNaN(work.AfterTargetS) ? work.FirstS : double.IsNaN(run.TargetS) ? endS : run.TargetS + work.AfterTargetS) : endS;
        int quiet = Math.Min(end, (int)(firstWork / stepS));
        var before = read.AsSpan(0, Math.Max(0, quiet)).ToArray();
        int lastOut = Array.FindLastIndex(before, value => Math.Abs(value - setC) > 2);
        double[] tail = [.. before.Skip(Math.Max(lastOut + 1, before.Length - (int)(30 / stepS)))]; // where work begins soon, the way up is no ripple
        int ready = Array.FindIndex(read, 0, end, value => value >= setC - 5);
        double deepest = run.LowestAtWorkK.Count > 0 ? run.LowestAtWorkK.Min() - 273.15 : double.NaN;
        int next = tool.Work is { Count: > 1 } more ? Math.Min(end, quiet + (int)(more.EveryS / stepS)) : end;
        int away = tool.Work is null || next <= quiet ? end : Array.FindLastIndex(read, next - 1, next - quiet, value => Math.Abs(value - setC) > 2);
        double recovered = away < 0 ? 0 : away + 1 < next ? ((away + 1) * stepS) - firstWork : double.NaN;
        return new(name, before.Length > 0 ? before.Max() - setC : double.NaN, lastOut + 1 < before.Length ? (lastOut + 1) * stepS : double.NaN,
            tail.Length > 0 ? tail.Max() - tail.Min() : double.NaN, setC - deepest, ready < 0 ? double.NaN : ready * stepS)
        {
            RecoveredS = recovered,
            TargetS = Crossed(at, run.Trace.NodesK[tool.Network.WorkingNode], targetK),
        };
    }

    /// <summary>When a value first was at a level, on the straight line between two instants; NaN: never.</summary>
    private static double Crossed(double[] at, double[] values, double level)
    {
        int first = Array.FindIndex(values, value => value >= level);
        return first < 0 ? double.NaN : first == 0 ? at[0] : at[first] - ((at[first] - at[first - 1]) * (values[first] - level) / (values[first] - values[first - 1]));
    }
}

using Heatwright.Physics;

namespace Heatwright.Plant;

/// <summary>What the power is for.</summary>
public abstract record LoadModel
{
    private LoadModel() { }

    /// <summary>A heater whose ohms follow its temperature: R = R_ref·(1 + α(T − T_ref)).</summary>
    /// <param name="Ohm">Ohms at the reference temperature.</param>
    /// <param name="AlphaPerK">Temperature coefficient, 1/K; may be slightly negative.</param>
    /// <param name="ReferenceK">Reference temperature, K.</param>
    public sealed record Heater(double Ohm, double AlphaPerK, double ReferenceK) : LoadModel
    {
        /// <summary>Above 0.</summary>
        public double Ohm { get; } = Guard.Positive(Ohm);

        /// <summary>Ohms at a temperature, never below a tenth of the reference.</summary>
        public double OhmAt(double kelvin) => Math.Max(0.1 * Ohm, Ohm * (1 + (AlphaPerK * (kelvin - ReferenceK))));
    }

    /// <summary>A self-limiting heater: least ohms up to a temperature, climbing as R·exp(β·(T − T_c)) above it.</summary>
    /// <param name="LeastOhm">Least ohms.</param>
    /// <param name="SwitchK">Where the climb begins, K.</param>
    /// <param name="SteepnessPerK">β, 1/K.</param>
    public sealed record SelfLimiting(double LeastOhm, double SwitchK, double SteepnessPerK) : LoadModel
    {
        /// <summary>Above 0.</summary>
        public double LeastOhm { get; } = Guard.Positive(LeastOhm);

        /// <summary>0 or more.</summary>
        public double SteepnessPerK { get; } = Guard.ZeroOrMore(SteepnessPerK);
    }

    /// <summary>A load that draws the same current at any volts.</summary>
    public sealed record ConstantCurrent(double Amps) : LoadModel
    {
        /// <summary>0 or more.</summary>
        public double Amps { get; } = Guard.ZeroOrMore(Amps);
    }

    /// <summary>A load that draws the same power at any volts.</summary>
    public sealed record ConstantPower(double Watts) : LoadModel
    {
        /// <summary>Above 0.</summary>
        public double Watts { get; } = Guard.Positive(Watts);
    }

    /// <summary>A lamp: a light with the driver that holds its current, as far as its volts allow.</summary>
    /// <remarks>At and above <paramref name="LeastV"/> it takes <paramref name="SetA"/>; from there down the current falls straight to nothing at
    /// <paramref name="DarkV"/>, where the light's own volts are all there is. What leaves as light heats nothing: <see cref="LightShare"/> of
    /// <see cref="ForwardV"/> times the current. All else, the volts that the driver takes away too, is heat in the heater's node.</remarks>
    /// <param name="SetA">Current that the driver holds, A.</param>
    /// <param name="LeastV">Least volts at which it still holds it.</param>
    /// <param name="DarkV">Volts at which no current is left.</param>
    public sealed record Lamp(double SetA, double LeastV, double DarkV) : LoadModel
    {
        /// <summary>The light counts as full down to this share of the set current: our choice.</summary>
        public const double FullShare = 0.95;

        /// <summary>The light counts as gone below this share of the set current: a tenth, from memory the mark at which run times of hand lamps are said.</summary>
        public const double GoneShare = 0.1;

        /// <summary>Above 0.</summary>
        public double SetA { get; } = Guard.Positive(SetA);

        /// <summary>Above 0.</summary>
        public double DarkV { get; } = Guard.Positive(DarkV);

        /// <summary>Above the volts at which it is dark.</summary>
        public double LeastV { get; } = LeastV > DarkV ? LeastV
            : throw new ArgumentOutOfRangeException(nameof(LeastV), LeastV, $"A lamp that is dark at {DarkV} V holds its current only above that.");

        /// <summary>Volts of the light itself at the set current; 0: not known, and nothing is taken as light.</summary>
        public double ForwardV { get; init; }

        /// <summary>Share of the light's own electrical power that leaves as light, 0 to 1.</summary>
        public double LightShare { get; init; }

        /// <summary>Volts below which the driver switches itself off; 0: it never does.</summary>
        public double LockOutV { get; init; }

        /// <summary>Volts against amps.</summary>
        internal LoadLaw Law { get; } = LoadLaw.Of(new VoltsAmpsTable([DarkV, LeastV], [0, SetA]));

        /// <summary>Current at the load, A.</summary>
        public static double Amps(in OnState on) => on.LoadV > 0 ? on.LoadW / on.LoadV : 0;

        /// <summary>Power that leaves as light, W; never more than there is.</summary>
        public double LightW(in OnState on) => Math.Min(on.LoadW, LightShare * ForwardV * Amps(on));

        /// <summary>The light is under a tenth, or the driver has switched itself off.</summary>
        internal bool IsGone(in OnState on) => on.LoadV < LockOutV || Amps(on) < GoneShare * SetA;

        /// <summary>How far the current is above what counts as full, A.</summary>
        internal double AboveFullA(in OnState on) => Amps(on) - (FullShare * SetA);
    }

    /// <summary>A load given by a table of volts and amps.</summary>
    public sealed record VoltsAmps(VoltsAmpsTable Table) : LoadModel;

    /// <summary>A recorded current, positive out of the pack: how a cell log drives the plant.</summary>
    public sealed record RecordedCurrent(Schedule Amps) : LoadModel;

    /// <summary>A recorded power put straight into the heater node: how a warm-up log drives the plant.</summary>
    public sealed record RecordedPower(Schedule Watts) : LoadModel;
}

/// <summary>A quantity that stays at Values[i] from Times[i] until Times[i + 1].</summary>
/// <param name="Times">Seconds, rising; the first is when it begins.</param>
/// <param name="Values">As many as times.</param>
public sealed record Schedule(double[] Times, double[] Values)
{
    /// <summary>As many as times.</summary>
    public double[] Values { get; } = Values.Length == Times.Length && Times.Length > 0
        ? Values
        : throw new ArgumentException($"A schedule has as many values as times; here {Values.Length} and {Times.Length}.", nameof(Values));
}

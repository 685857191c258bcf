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

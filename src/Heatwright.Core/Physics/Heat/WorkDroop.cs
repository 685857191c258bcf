using Heatwright.Numerics;

namespace Heatwright.Physics;

/// <summary>How far a tip falls while it works, and how it comes back.</summary>
/// <remarks>One body, open loop. Checked: WorkTests.</remarks>
public static class WorkDroop
{
    /// <summary>Fall during a pulse of work with the power unchanged, K: K·P_w(1 − e^(−t_w/τ)).</summary>
    [Law("droop", "work", "droop = K·P_w·(1 − e^(−t_w/τ))", Says = "how far a tool falls during a pulse of work", Unit = "K", Source = "definition", Where = "response of one body to a pulse", Valid = "power unchanged during the pulse", Example = "resistance=30K/W time-constant=180s work=5W time=20s")]
    public static double DroopK(
        [In("K", "K/W", "thermal resistance to air", Name = "resistance", Min = 0)] double resistanceKPerW,
        [In("τ", "s", "time constant", Name = "time-constant", Min = 0)] double timeConstantS,
        [In("P_w", "W", "heat taken by the work", Name = "work", Min = 0)] double workW,
        [In("t_w", "s", "how long", Name = "time", Min = 0)] double timeS) =>
        Impossible.UnlessPositive(resistanceKPerW, "K/W") * Impossible.IfNegative(workW, "W") * Phi.RisenShare(Impossible.IfNegative(timeS, "s") / Impossible.UnlessPositive(timeConstantS, "s"));

    /// <summary>Heat that a tool gives up for a droop, J: C·d. Bursts below it work even when the power is below the job's.</summary>
    [Law("heat-reserve", "work", "E = C·d", Says = "heat that a tool gives up for an allowed droop", Unit = "J", Source = "definition", Where = "heat capacity", Valid = "tip and core fall together", Example = "capacity=6.2J/K droop=20K")]
    public static double ReserveJ(
        [In("C", "J/K", "heat capacity of tip and core", Name = "capacity", Min = 0)] double capacityJPerK,
        [In("d", "K", "allowed droop", Name = "droop", Min = 0)] double droopK) => Impossible.UnlessPositive(capacityJPerK, "J/K") * Impossible.IfNegative(droopK, "K");

    /// <summary>Time to make up a droop, s: C·d/S; infinite without a surplus.</summary>
    [Law("recovery-time", "work", "t = C·d/(P_max − P_hold)", Says = "time to make up a droop", Unit = "s", Source = "definition", Where = "heat balance, droop small against the rise", Valid = "full power until back; infinite means never", Example = "capacity=6.2J/K droop=20K most=20W hold=14W")]
    public static double RecoveryS(
        [In("C", "J/K", "heat capacity of tip and core", Name = "capacity", Min = 0)] double capacityJPerK,
        [In("d", "K", "droop", Name = "droop", Min = 0)] double droopK,
        [In("P_max", "W", "power at hand", Name = "most", Min = 0)] double mostW,
        [In("P_hold", "W", "power to hold", Name = "hold", Min = 0)] double holdW)
    {
        double surplus = Impossible.IfNegative(mostW, "W") - Impossible.IfNegative(holdW, "W");
        return surplus > 0 ? ReserveJ(capacityJPerK, droopK) / surplus : droopK == 0 ? 0 : double.PositiveInfinity;
    }
}

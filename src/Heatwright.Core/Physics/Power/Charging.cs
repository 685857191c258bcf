namespace Heatwright.Physics;

/// <summary>Charging at constant current, then at constant voltage.</summary>
/// <remarks>OCV = V_cv − k(1 − s) near the top: the constant current ends at s_cv = 1 − I·R/k, then the current falls with τ = R·Q/k. Integrals of ds/dt = I/Q.
/// With the resistance of a 10 s pulse the tail comes out 2 to 4 times too short (common practice, no source): use the one after minutes or a measured taper.
/// Charge only as the cell's and charger's sheets allow, never unattended.</remarks>
public static class Charging
{
    /// <summary>Whole charge over a straight rested voltage.</summary>
    [Law("charge-time", "charging", "Q·(s_cv − s0)/I + τ·ln(I_cv/Iterm), s_cv = 1 − I·R/k, τ = R·Q/k", Says = "how long a whole charge takes, constant current and tail", Source = "definition", Where = "integral of ds/dt = I/Q",
        Valid = "rested voltage straight near the top; real tails are longer", Example = "capacity=0.62Ah current=0.31A cell=0.15ohm slope=0.75V start-charge=5% end-current=31mA")]
    public static ChargeCourse ConstantCurrentConstantVoltage(
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("I", "A", "set current", Name = "current", Min = 0)] double setA,
        [In("R", "Ω", "resistance after minutes, inside the regulation loop", Name = "cell", Min = 0)] double cellOhm,
        [In("k", "V", "slope of the rested voltage near the top, per whole charge", Name = "slope", Min = 0, Default = 0.75)] double slopeV,
        [In("s0", "", "charge at the start", Name = "start-charge", Min = 0, Max = 1)] double fromCharge,
        [In("Iterm", "A", "end current", Name = "end-current", Min = 0)] double endA)
    {
        Impossible.UnlessPositive(capacityAs, "C");
        Impossible.UnlessFraction(fromCharge);
        double ohms = Impossible.UnlessPositive(cellOhm, "Ω");
        double slope = Impossible.UnlessPositive(slopeV, "V");
        double least = Impossible.UnlessPositive(endA, "A");
        double turn = Math.Max(fromCharge, 1 - (Impossible.UnlessPositive(setA, "A") * ohms / slope));
        double currentSeconds = capacityAs * (turn - fromCharge) / setA;

        // A cell that starts above the turn draws less than the set current from the first moment.
        double firstA = Math.Min(setA, slope * (1 - turn) / ohms);
        double tau = ohms * capacityAs / slope;
        double voltageSeconds = firstA > least ? tau * Math.Log(firstA / least) : 0;
        double finalCharge = firstA > least ? 1 - (least * ohms / slope) : turn;
        return new(turn, currentSeconds, tau, voltageSeconds, capacityAs * (finalCharge - turn), finalCharge);
    }

    /// <summary>Charge current at this moment: the least of the set current, what the charger's heat allows, and (V_cv − OCV)/R.</summary>
    public static double CurrentA(double openV, double cellOhm, double setA, double holdV, double heatLimitA = double.PositiveInfinity) => Math.Max(0, Math.Min(
        Math.Min(Impossible.UnlessPositive(setA, "A"), heatLimitA),
        (Impossible.UnlessPositive(holdV, "V") - Impossible.UnlessPositive(openV, "V")) / Impossible.UnlessPositive(cellOhm, "Ω")));

    /// <summary>Whole charge over a rested-voltage table, with a linear charger that folds back when hot if one is given.</summary>
    /// <remarks>t = Q·∫ds/I(s) by the midpoint rule over 2000 parts of every piece: the current has corners there, error below 1e-5.</remarks>
    public static ChargeCourse OverTable(OcvTable cell, double capacityAs, double cellOhm, double setA, double holdV, double fromCharge, double endA, ChargerHeat? heat = null)
    {
        Impossible.UnlessPositive(capacityAs, "C");
        Impossible.UnlessPositive(endA, "A");
        double turn = Math.Clamp(cell.ChargeAt(holdV - (setA * cellOhm)), Impossible.UnlessFraction(fromCharge), 1);
        double final = Math.Max(turn, cell.ChargeAt(holdV - (endA * cellOhm)));
        return new(turn, Seconds(fromCharge, turn), 0, Seconds(turn, final), capacityAs * (final - turn), final);

        double Seconds(double from, double to)
        {
            double sum = 0;
            double start = from;
            foreach (double point in cell.Charges)
            {
                double end = Math.Clamp(point, start, to);
                for (int i = 0; i < 2000 && end > start; i++)
                {
                    sum += capacityAs * (end - start) / 2000 / At(start + ((end - start) * (i + 0.5) / 2000));
                }

                start = end;
            }

            return sum;
        }

        double At(double charge)
        {
            double openV = cell.VoltsAt(charge);
            return CurrentA(openV, cellOhm, setA, holdV, heat?.MostA(openV, cellOhm) ?? double.PositiveInfinity);
        }
    }

    /// <summary>Balancing time of a bleed resistor: Δs·Q·R/V.</summary>
    [Law("balance-time", "charging", "Δs·Q·R/V", Says = "how long a bleed resistor takes to even out a cell", Unit = "s", Source = "definition", Where = "bleed current from Ohm's law", Valid = "passive balancing; series packs need per-cell over-voltage supervision", Example = "difference=5% capacity=2Ah bleed=62ohm cell=4.2V")]
    public static double BalanceS(
        [In("Δs", "", "charge difference", Name = "difference", Min = 0, Max = 1)] double difference,
        [In("Q", "C", "capacity", Name = "capacity", Min = 0)] double capacityAs,
        [In("R", "Ω", "bleed resistor", Name = "bleed", Min = 0)] double bleedOhm,
        [In("V", "V", "cell voltage", Name = "cell", Min = 0)] double cellV) =>
        Impossible.UnlessFraction(difference) * Impossible.UnlessPositive(capacityAs, "C") / BleedA(cellV, bleedOhm);

    /// <summary>Bleed current of a balancing resistor.</summary>
    public static double BleedA(double cellV, double bleedOhm) => Impossible.UnlessPositive(cellV, "V") / Impossible.UnlessPositive(bleedOhm, "Ω");
}

/// <summary>A charge from start to end.</summary>
/// <param name="TurnCharge">Charge at which constant current gives way to constant voltage.</param>
/// <param name="CurrentS">Time at constant current.</param>
/// <param name="TauS">Time constant of the tail; 0 where the rested voltage is a table.</param>
/// <param name="VoltageS">Time at constant voltage.</param>
/// <param name="TailAs">Charge gained in the tail.</param>
/// <param name="FinalCharge">Charge at the end.</param>
public readonly record struct ChargeCourse(
    [property: Out("", "charge when the voltage takes over")] double TurnCharge,
    [property: Out("s", "time at constant current", Name = "constant-current-time")] double CurrentS,
    [property: Out("s", "time constant of the tail", Name = "tail-time-constant")] double TauS,
    [property: Out("s", "time at constant voltage", Name = "constant-voltage-time")] double VoltageS,
    [property: Out("C", "charge gained in the tail", Name = "tail-charge")] double TailAs,
    [property: Out("", "charge at the end")] double FinalCharge)
{
    /// <summary>Whole time.</summary>
    [Out("s", "whole time", Name = "total-time")]
    public double TotalS => CurrentS + VoltageS;
}

namespace Heatwright.Arrangements;

/// <summary>The work a tool is to do, as the plant needs it.</summary>
/// <param name="TargetC">Ready at this temperature of the working end.</param>
/// <param name="AirC">Air.</param>
/// <param name="EveryS">From piece to piece.</param>
/// <param name="ForS">A piece may last so long.</param>
/// <param name="FirstAfterS">First piece so long after the target.</param>
/// <param name="AboveC">The work takes heat only from what is hotter.</param>
/// <param name="Contact">Conductance into the work, W/K, with doubt.</param>
/// <param name="Need">Heat of one piece, J, with doubt.</param>
public sealed record WorkPlan(
    double TargetC, double AirC, double EveryS, double ForS, double FirstAfterS, double AboveC, Quantities.Estimate Contact, Quantities.Estimate Need)
{
    /// <summary>Blocks of off, warm-up, hold, work and stand-by; null: the tool heats and works all the time.</summary>
    public Plant.DutyPattern? Blocks { get; init; }

    /// <summary>How far above the target the controller holds, K, so that it is surely reached.</summary>
    public double AimAboveK { get; init; } = PlantBuilder.UsualAimAboveK;

    /// <summary>The way back to the target is asked for after so many pieces; 0: not.</summary>
    public int TimesRecovery { get; init; }

    /// <summary>Predictions end here at the latest, s.</summary>
    public double AtMostS { get; init; } = 4 * 3600;

    /// <summary>The plant counts no more pieces than this.</summary>
    public int MostPieces { get; init; } = 400;
}

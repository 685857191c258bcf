namespace Heatwright.Plant;

/// <summary>A run whose step was halved until halving it again changed nothing that matters.</summary>
/// <param name="Run">The run with the shortest step taken.</param>
/// <param name="StepS">That step, s.</param>
/// <param name="ChangeS">By how much the last halving moved the run time, s.</param>
/// <param name="Settled">False: the last halving still moved it by more than asked.</param>
public sealed record HalvedRun(PlantRun Run, double StepS, double ChangeS, bool Settled)
{
    private const int MostHalvings = 7;

    /// <summary>Relative change of run time and load energy under which the step is short enough.</summary>
    public const double Enough = 1e-7;

    /// <summary>Runs the tool, the first time with the step of the settings.</summary>
    public static HalvedRun Of(AssembledTool tool, RunSettings settings)
    {
        // A sampled controller cuts steps to its period: halving a longer step would change nothing and prove nothing.
        double step = Math.Min(settings.StepS, tool.Controller switch
        {
            ControllerModel.Pi pi => pi.PeriodS,
            ControllerModel.OnOff { PeriodS: > 0 } onOff => onOff.PeriodS,
            _ => double.PositiveInfinity,
        });
        var run = PlantRunner.Run(tool, settings with { StepS = step });
        double change = double.PositiveInfinity;
        for (int i = 0; i < MostHalvings; i++)
        {
            step /= 2;
            var finer = PlantRunner.Run(tool, settings with { StepS = step });
            change = Math.Abs(finer.RunTimeS - run.RunTimeS);
            double heat = Math.Abs(finer.Energies.LoadJ - run.Energies.LoadJ);
            bool same = finer.Stop == run.Stop && change <= Enough * Math.Max(1, finer.RunTimeS) && heat <= 10 * Enough * Math.Max(1, Math.Abs(finer.Energies.LoadJ));
            run = finer;
            if (same)
            {
                return new(run, step, change, true);
            }
        }

        return new(run, step, change, false);
    }
}

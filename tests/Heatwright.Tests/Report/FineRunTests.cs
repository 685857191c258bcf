using Heatwright.Report;

namespace Heatwright.Tests.Report;

/// <summary>The middle run looked at more often is the same run.</summary>
public sealed class FineRunTests
{
    [Fact]
    public void It_gives_the_heater_the_energy_that_the_prediction_says()
    {
        var result = WrittenReports.Knife.Result;
        Assert.All(result.Verdicts, verdict =>
        {
            var run = verdict.Prediction!.Middle;
            var trace = FineRun.Of(verdict.Prediction, result.Study.Brief!.Work.EveryS);
            // Second way to the energy: trapezoids under the looked-at watts, against the tally the plant keeps at every step.
            double joule = Enumerable.Range(1, trace.Count - 1).Sum(i => 0.5 * (trace.LoadW[i] + trace.LoadW[i - 1]) * (trace.TimesS[i] - trace.TimesS[i - 1]));
            Assert.Equal(run.Energies.LoadJ, joule, 0.02 * run.Energies.LoadJ);
        });
    }
}

namespace Heatwright.Plant;

/// <summary>Finds where in a step something happens, on steps taken again from the step's start.</summary>
internal sealed class EventSearch(Stepper stepper, Stepper.State before)
{
    private const double Instant = 1e-9;
    private const int MostTries = 60;

    private readonly Stepper.State trial = new(stepper.Size, stepper.Members);

    /// <summary>The first time known at which g is no longer above 0: false position, Illinois variant; it has happened there, not just almost.</summary>
    public double Find(double h, double duty, bool working, double drive, Func<Stepper.State, double> g) =>
        Find(h, duty, working, drive, (state, _) => g(state));

    /// <summary>The same for something that depends on what flowed since the step began.</summary>
    public double Find(double h, double duty, bool working, double drive, Func<Stepper.State, Stepper.Tally, double> g)
    {
        double low = 0;
        double high = h;
        double gLow = g(before, default);
        double gHigh = At(h);
        if (gLow <= 0)
        {
            return 0;
        }

        for (int i = 0; i < MostTries && high - low > Instant; i++)
        {
            double at = Math.Clamp(low + ((high - low) * gLow / (gLow - gHigh)), low + (1e-3 * Instant), high);
            double value = At(at);
            if (value > 0)
            {
                if (value < 1e-13)
                {
                    return at;
                }

                low = at;
                gLow = value;
                gHigh /= 2;
            }
            else
            {
                high = at;
                gHigh = value;
                gLow /= 2;
                if (value > -1e-13)
                {
                    break;
                }
            }
        }

        return high;

        double At(double t)
        {
            trial.CopyFrom(before);
            var dropped = default(Stepper.Tally);
            stepper.Advance(trial, t, duty, working, drive, ref dropped);
            return g(trial, dropped);
        }
    }
}

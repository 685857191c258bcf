namespace Heatwright.Plant;

/// <summary>How the heater's duty is set.</summary>
public abstract record ControllerModel
{
    private ControllerModel() { }

    /// <summary>Step of the reading, K, counted from 0 °C, to the nearest; 0: it reads every digit.</summary>
    public double ReadingStepK { get; init; }

    /// <summary>So long after the last piece of work (or the start) the tool counts as lying idle, s; infinite: never.</summary>
    public double IdleAfterS { get; init; } = double.PositiveInfinity;

    /// <summary>Set point while idle, K; 0: off.</summary>
    public double IdleK { get; init; }

    /// <summary>The same duty always.</summary>
    public sealed record Fixed(double Duty) : ControllerModel
    {
        /// <summary>0 to 1.</summary>
        public double Duty { get; } = Guard.Share(Duty);
    }

    /// <summary>Sampled PI or PID on the sensor's reading, anti-windup by back-calculation, duty scaled by the square of the volts.</summary>
    /// <param name="TargetK">Set point, K.</param>
    /// <param name="PeriodS">Sample period, s.</param>
    /// <param name="GainWPerK">Proportional gain, W/K.</param>
    /// <param name="IntegralWPerKS">Integral gain, W/(K·s).</param>
    /// <param name="TrackingPerS">Back-calculation gain, 1/s; 0: the integral stands still while the output is at its end and the error would push it on.</param>
    /// <param name="NominalOhm">Load ohms that the firmware reckons with when it turns watts into duty.</param>
    /// <param name="MaxDuty">Duty ceiling: what the window in which the sensor is read leaves.</param>
    public sealed record Pi(double TargetK, double PeriodS, double GainWPerK, double IntegralWPerKS, double TrackingPerS, double NominalOhm, double MaxDuty)
        : ControllerModel
    {
        /// <summary>What the integral starts with, W: the power that holds the target, where the firmware knows it.</summary>
        public double StartW { get; init; }

        /// <summary>Gain on the falling of the reading, W·s/K; 0: PI.</summary>
        public double DerivativeWSPerK { get; init; }

        /// <summary>Time constant of the filter on that, s.</summary>
        public double FilterS { get; init; }

        /// <summary>Most watts the firmware asks for.</summary>
        public double MostW { get; init; } = double.PositiveInfinity;

        /// <summary>Volts the firmware takes for granted; NaN: it measures them under load, the feed-forward of the battery.</summary>
        public double NominalV { get; init; } = double.NaN;

        /// <summary>Above 0.</summary>
        public double PeriodS { get; } = Guard.Positive(PeriodS);

        /// <summary>Above 0.</summary>
        public double NominalOhm { get; } = Guard.Positive(NominalOhm);

        /// <summary>0 to 1.</summary>
        public double MaxDuty { get; } = Guard.Share(MaxDuty);
    }

    /// <summary>On below the lower temperature, off above the upper, in between as it was.</summary>
    /// <param name="LowK">Goes on at or below this, K.</param>
    /// <param name="HighK">Goes off at or above this, K.</param>
    public sealed record OnOff(double LowK, double HighK) : ControllerModel
    {
        /// <summary>Without sample period a band narrower than this would switch without end.</summary>
        public const double LeastBandK = 0.01;

        /// <summary>Duty while on.</summary>
        public double Duty { get; init; } = 1;

        /// <summary>Sample period, s; 0: it looks all the time, and every switching is located.</summary>
        public double PeriodS { get; init; }

        /// <summary>Switched on at the start.</summary>
        public bool StartsOn { get; init; } = true;

        /// <summary>Above the lower one; without sample period by so much that it does not chatter.</summary>
        public void Refuse()
        {
            if (!(HighK - LowK >= (PeriodS > 0 ? 0 : LeastBandK)))
            {
                throw new ArgumentOutOfRangeException(nameof(HighK), HighK - LowK,
                    $"On-off without a sample period and with a band under {LeastBandK} K chatters: it has no true course. Give it a band or a sample period.");
            }

            if (PeriodS <= 0 && ReadingStepK > 0)
            {
                throw new ArgumentOutOfRangeException(nameof(ReadingStepK), ReadingStepK, "A reading in steps needs a sample period.");
            }
        }
    }
}

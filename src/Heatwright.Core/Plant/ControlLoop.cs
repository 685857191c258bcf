namespace Heatwright.Plant;

/// <summary>The controller on its way: reads, decides, holds the duty until it looks again.</summary>
internal sealed class ControlLoop
{
    private const double Instant = 1e-9;

    private readonly AssembledTool tool;
    private readonly ControllerModel.Pi? pi;
    private readonly ControllerModel.OnOff? onOff;
    private readonly double periodS;
    private long sample;
    private double derivative;
    private double before = double.NaN;
    private bool isOn;

    public ControlLoop(AssembledTool tool)
    {
        this.tool = tool;
        pi = tool.Controller as ControllerModel.Pi;
        onOff = tool.Controller as ControllerModel.OnOff;
        onOff?.Refuse();
        periodS = pi?.PeriodS ?? onOff?.PeriodS ?? 0;
        IntegralW = pi?.StartW ?? 0;
        isOn = onOff?.StartsOn ?? false;
        Duty = tool.Controller is ControllerModel.Fixed @fixed ? @fixed.Duty : 0;
    }

    public double Duty { get; private set; }

    public double IntegralW { get; private set; }

    /// <summary>Asks for more than there is.</summary>
    public bool Saturated { get; private set; }

    /// <summary>Looks all the time, so that its switchings are events to be located.</summary>
    public bool IsContinuous => onOff is not null && periodS <= 0;

    public double NextS => periodS > 0 ? sample * periodS : double.PositiveInfinity;

    /// <summary>How far a continuous on-off is from switching; 0 or less: it switches.</summary>
    /// <param name="sensorK">What the sensor feels, K.</param>
    /// <param name="askedK">Set point in place of its own, K; 0: off; NaN: its own.</param>
    public double ToSwitch(double sensorK, double askedK) => isOn ? High(askedK) - sensorK : sensorK - Low(askedK);

    /// <summary>Looks, where it is time to. True: it looked.</summary>
    public bool Act(double now, double sensorK, in OnState on, double askedK)
    {
        if (pi is null && onOff is null)
        {
            Duty = tool.Controller is ControllerModel.Fixed { Duty: var duty } && double.IsNaN(askedK) ? duty : 0;
            return false;
        }

        if (periodS > 0)
        {
            if (NextS > now + Instant)
            {
                return false;
            }

            sample++;
        }

        double reading = Read(sensorK);
        if (onOff is not null)
        {
            isOn = isOn ? reading < High(askedK) : reading <= Low(askedK);
            Duty = isOn ? onOff.Duty : 0;
            Saturated = isOn;
        }
        else
        {
            Pi(reading, on, askedK);
        }

        return true;
    }

    private void Pi(double reading, in OnState on, double askedK)
    {
        if (askedK <= 0)
        {
            (Duty, IntegralW, derivative, before, Saturated) = (0, pi!.StartW, 0, double.NaN, false);
            return;
        }

        double volts = tool.Path is PathModel.Direct ? on.TerminalV : on.LoadV;
        volts = double.IsNaN(pi!.NominalV) ? volts : pi.NominalV;
        double nominalW = Math.Max(volts * volts / pi.NominalOhm, 1e-9);
        double error = (double.IsNaN(askedK) ? pi.TargetK : askedK) - reading;
        if (pi.DerivativeWSPerK > 0)
        {
            double change = double.IsNaN(before) ? 0 : reading - before;
            derivative = ((pi.FilterS * derivative) - (pi.DerivativeWSPerK * change)) / (pi.FilterS + pi.PeriodS);
            before = reading;
        }

        double wanted = (pi.GainWPerK * error) + IntegralW + derivative;
        double mostW = Math.Min(pi.MaxDuty * nominalW, pi.MostW);
        double givenW = Math.Clamp(wanted, 0, mostW);
        bool stands = pi.TrackingPerS == 0 && ((wanted > mostW && error > 0) || (wanted < 0 && error < 0));
        IntegralW += stands ? 0 : pi.PeriodS * ((pi.IntegralWPerKS * error) + (pi.TrackingPerS * (givenW - wanted)));
        Duty = givenW / nominalW;
        Saturated = wanted > mostW;
    }

    private double Read(double kelvin)
    {
        double step = tool.Controller.ReadingStepK;
        return step > 0 ? 273.15 + (Math.Floor(((kelvin - 273.15) / step) + 0.5) * step) : kelvin;
    }

    private double High(double askedK) => double.IsNaN(askedK) ? onOff!.HighK : askedK > 0 ? askedK : double.NegativeInfinity;

    private double Low(double askedK) => double.IsNaN(askedK) ? onOff!.LowK : askedK > 0 ? askedK - (onOff!.HighK - onOff.LowK) : double.NegativeInfinity;
}

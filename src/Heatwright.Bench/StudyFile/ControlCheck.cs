using Heatwright.Arrangements;
using Heatwright.Plant;

namespace Heatwright.StudyFile;

/// <summary>What the control of a stated plant must be.</summary>
internal static class ControlCheck
{
    private const double LeastPeriodS = 1e-3;

    public static void Control(StatedControl control, string at, CheckDesk desk)
    {
        PlantCheck.OneOf(at, "A control", ["duty", "pi", "onOff"], [control.Duty is not null, control.Pi is not null, control.OnOff is not null], desk);
        desk.Range($"{at}.duty", "A duty", control.Duty ?? 0, control.Duty is null or (>= 0 and <= 1), "0 to 1");
        PlantCheck.NotNegative($"{at}.readingStepK", control.ReadingStepK, "K", desk);
        desk.Range($"{at}.idleAfterS", "A time until idle", control.IdleAfterS ?? 1, control.IdleAfterS is null or > 0, "above 0 s");
        HeatCheck.Kelvin($"{at}.idleC", control.IdleC ?? 0, desk);
        if (control.Pi is { } pi)
        {
            Pi(pi, $"{at}.pi", desk);
        }
        if (control.OnOff is { } onOff)
        {
            OnOff(onOff, control.ReadingStepK, $"{at}.onOff", desk);
        }
    }

    private static void Pi(StatedPi pi, string at, CheckDesk desk)
    {
        HeatCheck.Kelvin($"{at}.targetC", pi.TargetC, desk);
        desk.Range($"{at}.periodS", "A sample period", pi.PeriodS, pi.PeriodS is >= LeastPeriodS and <= 3600, "0.001 to 3600 s");
        desk.Range($"{at}.nominalOhm", "Ohms of the firmware", pi.NominalOhm, pi.NominalOhm > 0, "above 0 Ω");
        desk.Range($"{at}.maxDuty", "A duty", pi.MaxDuty, pi.MaxDuty is > 0 and <= 1, "above 0, at most 1");
        PlantCheck.NotNegative($"{at}.gainWPerK", pi.GainWPerK, "W/K", desk);
        PlantCheck.NotNegative($"{at}.integralWPerKS", pi.IntegralWPerKS, "W/(K·s)", desk);
        PlantCheck.NotNegative($"{at}.trackingPerS", pi.TrackingPerS, "1/s", desk);
        PlantCheck.NotNegative($"{at}.derivativeWSPerK", pi.DerivativeWSPerK, "W·s/K", desk);
        PlantCheck.NotNegative($"{at}.filterS", pi.FilterS, "s", desk);
        desk.Range($"{at}.mostW", "A power limit", pi.MostW ?? 1, pi.MostW is null or > 0, "above 0 W");
        desk.Range($"{at}.nominalV", "Volts of the firmware", pi.NominalV ?? 1, pi.NominalV is null or > 0, "above 0 V");
        desk.Range($"{at}.startW", "A start", pi.StartW, true, "a number");
    }

    private static void OnOff(StatedOnOff onOff, double readingStepK, string at, CheckDesk desk)
    {
        HeatCheck.Kelvin($"{at}.lowC", onOff.LowC, desk);
        desk.Range($"{at}.periodS", "A sample period", onOff.PeriodS, onOff.PeriodS is 0 or (>= LeastPeriodS and <= 3600), "0 (it looks all the time), or 0.001 to 3600 s");
        double leastK = onOff.PeriodS > 0 ? 0 : ControllerModel.OnOff.LeastBandK;
        desk.Range($"{at}.highC", "An upper temperature", onOff.HighC, onOff.HighC - onOff.LowC >= leastK,
            $"{CheckDesk.Number(onOff.LowC + leastK)} °C or more: with a narrower band and no sample period it would switch without end");
        desk.Range($"{at}.duty", "A duty", onOff.Duty, onOff.Duty is > 0 and <= 1, "above 0, at most 1");
        if (onOff.PeriodS == 0 && readingStepK > 0)
        {
            desk.Say($"{at}.periodS", "A reading in steps needs a sample period.", "0 s", "0.001 s or more", "Give periodS, or leave readingStepK out.");
        }
    }
}

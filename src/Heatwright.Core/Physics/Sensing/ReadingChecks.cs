namespace Heatwright.Physics;

/// <summary>Sanity checks on readings: true means that something is worth a second look. What to say is not decided here.</summary>
/// <remarks>Rules and thresholds: common practice, no source; ids S01 to S30 name the rule. Checked: ReadingChecksTests.</remarks>
public static class ReadingChecks
{
    /// <summary>S01: volts × amps and the power noted differ by more than three standard doubts.</summary>
    public static bool PowerDisagrees(double volts, double amps, double notedW, double doubtW) => Math.Abs((volts * amps) - notedW) > 3 * doubtW;

    /// <summary>S02: a metal heater's resistance fell when hot.</summary>
    public static bool ResistanceFell(double hotOhm, double coldOhm) => hotOhm < 0.98 * coldOhm;

    /// <summary>S03: the element's resistance rises much; cold watts overstate hot watts.</summary>
    public static bool ResistanceRisesMuch(double hotOhm, double coldOhm) => hotOhm / coldOhm > 1.2;

    /// <summary>S04: temperature falls while power is on and nothing is worked.</summary>
    public static bool FallsUnderPower(double earlierC, double laterC, bool isPowered, bool isWorking) => isPowered && !isWorking && laterC < earlierC;

    /// <summary>S05: the tip reads colder than the air.</summary>
    public static bool ColderThanAir(double tipC, double airC) => tipC < airC - 2;

    /// <summary>S06: the first reading, cold, differs from the air.</summary>
    public static bool NotColdAtStart(double firstC, double airC) => Math.Abs(firstC - airC) > 3;

    /// <summary>Rise still to come at the last slope, K: slope·τ.</summary>
    public static double StillToRiseK(double lastSlopeKPerS, double timeConstantS) => lastSlopeKPerS * timeConstantS;

    /// <summary>S07: a plateau is claimed, but more than 2 % of the rise is still to come.</summary>
    public static bool NotAPlateau(double lastSlopeKPerS, double timeConstantS, double riseK) => StillToRiseK(lastSlopeKPerS, timeConstantS) > 0.02 * riseK;

    /// <summary>S08: a mark is passed no sooner than a higher mark. Times belong to rising marks.</summary>
    public static bool TimesOutOfOrder(IReadOnlyList<double> timesS) => Enumerable.Range(1, Math.Max(0, timesS.Count - 1)).Any(i => timesS[i] <= timesS[i - 1]);

    /// <summary>S09: the ratio of two times is not the one that the plateau allows, by more than two standard doubts.</summary>
    public static bool TimesDoNotFit(double ratio, double allowedRatio, double doubt) => Math.Abs(ratio - allowedRatio) > 2 * doubt;

    /// <summary>S10: heats faster than the power allows.</summary>
    public static bool FasterThanPower(double slopeKPerS, double leastCapacityJPerK, double powerW) => slopeKPerS * leastCapacityJPerK > powerW;

    /// <summary>S11: more energy came out than went in.</summary>
    public static bool EnergyFromNowhere(double outJ, double inJ) => outJ > inJ;

    /// <summary>S12: the step that all readings are multiples of, 10 or 5; 0 where there is none.</summary>
    public static double LooksRoundedTo(IReadOnlyList<double> readings) =>
        readings.Count < 3 ? 0 : readings.All(value => value % 10 == 0) ? 10 : readings.All(value => value % 5 == 0) ? 5 : 0;

    /// <summary>S13: several identical readings on a display fine enough to move.</summary>
    public static bool LooksFrozen(IReadOnlyList<double> readings, double displayStep, double expectedScatter) =>
        readings.Count >= 3 && displayStep < expectedScatter && readings.Distinct().Count() == 1;

    /// <summary>S14: the supply was limiting: its voltage lies more than 2 % below what was set.</summary>
    public static bool SupplyLimits(double volts, double setVolts) => volts < 0.98 * setVolts;

    /// <summary>S15: voltage sagged by more than 3 % during the trial.</summary>
    public static bool Sagged(double startV, double endV) => startV - endV > 0.03 * startV;

    /// <summary>S16: the sensor's voltage moves against the temperature.</summary>
    public static bool PolarityReversed(double changeV, double changeK) => changeV * changeK < 0;

    /// <summary>S17: no thermocouple has this slope.</summary>
    public static bool NotACoupleSlope(double slopeVPerK) => slopeVPerK is not (>= 5e-6 and <= 90e-6);

    /// <summary>S18: heating and cooling curves differ.</summary>
    public static bool LoopIsOpen(double heatingC, double coolingC) => Math.Abs(heatingC - coolingC) > 5;

    /// <summary>S20: output with a cold tip: neither floor nor large offset.</summary>
    public static bool ColdOutputIsOdd(double outputV) => outputV is not (>= 5e-3 and <= 20e-3);

    /// <summary>S21: the sensor jumps between samples with the heater on and off.</summary>
    public static bool JumpsWithHeater(double onC, double offC) => Math.Abs(onC - offC) > 20;

    /// <summary>S22: twice the reading before, without a change of power: a decimal point?</summary>
    public static bool DoubledFromNowhere(double reading, double before, bool powerChanged) => !powerChanged && Math.Abs(reading) > 2 * Math.Abs(before) && before != 0;

    /// <summary>Steps of the last digit by which a display flickers all by itself; half a step for what was cut off.</summary>
    private const double Flicker = 2.5;

    /// <summary>S23: index of an outlier by Grubbs, or −1. It stays unless its cause can be named; a step or two of the last digit are none.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="lastDigit">One step of the last digit; 0: not known.</param>
    public static int Outlier(IReadOnlyList<double> readings, double lastDigit = 0)
    {
        if (readings.Count < 3)
        {
            return -1;
        }

        double mean = readings.Average();
        double scatter = Math.Sqrt(readings.Sum(value => (value - mean) * (value - mean)) / (readings.Count - 1));
        int worst = Enumerable.Range(0, readings.Count).MaxBy(i => Math.Abs(readings[i] - mean));
        double others = Numerics.Sample.Median([.. readings.Where((_, i) => i != worst)]);
        return Math.Abs(readings[worst] - mean) > InstrumentDoubt.GrubbsLimit(readings.Count) * scatter && Math.Abs(readings[worst] - others) > Flicker * lastDigit ? worst : -1;
    }

    /// <summary>S25: hotter than a part stands.</summary>
    public static bool BeyondLimit(double tC, double limitC) => tC > limitC;

    /// <summary>S26: two instruments disagree beyond their limits.</summary>
    public static bool InstrumentsDisagree(double first, double firstExpanded, double second, double secondExpanded) =>
        InstrumentDoubt.NormalisedError(first, firstExpanded, second, secondExpanded) > 1;

    /// <summary>S27: the air changed by more than 3 K during the trial.</summary>
    public static bool AirMoved(double lowestC, double highestC) => highestC - lowestC > 3;

    /// <summary>S28: one reading is asked to decide what it cannot.</summary>
    public static bool OneReadingCannotDecide(int readings, double chance) => readings == 1 && chance is > 0.2 and < 0.8;

    /// <summary>S29: a factor of a thousand from what is expected: mA for A, mV for V.</summary>
    public static bool OffByAThousand(double value, double expected)
    {
        double decades = Math.Log10(Math.Abs(value / expected));
        return Math.Abs(Math.Abs(decades) - 3) < 0.3;
    }

    /// <summary>S29: a temperature that would fit, read as °F.</summary>
    public static bool LooksLikeFahrenheit(double value, double expectedC, double doubtK) =>
        Math.Abs(value - expectedC) > 3 * doubtK && Math.Abs(((value - 32) / 1.8) - expectedC) <= doubtK;

    /// <summary>S30: a battery trial began below full, or too soon after the charge.</summary>
    public static bool StartUnknown(double startV, double fullV, double restS) => startV < 0.99 * fullV || restS < 1800;
}

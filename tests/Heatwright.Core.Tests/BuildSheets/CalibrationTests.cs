using Heatwright.BuildSheets;
using Heatwright.Handbook;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Counts to degrees from cool-down readings.</summary>
/// <remarks>Readings 848:418 … 55:50 with the cold end at 28 °C: synthetic readings of this trade's handbook, made of the chain a 7.8196364 counts,
/// b 52.130909 counts/mV with the probe rounded to 1 °C; its fit 'physical K' gives a 9.2020724, b 52.190117 and 163.83368 °C at 300 counts (independent script).</remarks>
public sealed class CalibrationTests
{
    private static readonly CalibrationConditions Bench = new(1.1, 10, 1.05, 28, 0.01, 2);

    internal static readonly CalibrationPoint[] Worked =
    [
        .. "848:418 782:388 718:361 650:329 586:300 521:271 457:237 395:208 331:180 269:148 206:119 142:90 98:69 55:50".Split(' ')
            .Select(pair => pair.Split(':')).Select(pair => new CalibrationPoint(double.NaN, int.Parse(pair[0], System.Globalization.CultureInfo.InvariantCulture), int.Parse(pair[1], System.Globalization.CultureInfo.InvariantCulture))),
    ];

    [Fact]
    public void A_known_type_is_fitted_by_its_own_law()
    {
        var calibration = SensorCalibration.Fit(CalibrationReadings.Clear(Worked).Value, Thermocouples.TypeK, Bench).Value;
        Assert.Equal(9.2020724, calibration.Physical!.OffsetCounts, 1e-5);
        Assert.Equal(52.190117, calibration.Physical.CountsPerV / 1000, 1e-5);
        Assert.Equal(163.83368, calibration.AtC(300), 1e-4);
    }

    [Fact]
    public void An_unknown_type_gets_the_curve_that_the_criterion_picks()
    {
        // Order 3 has the lowest criterion of corrected information; T(700) 352.4194 °C (independent script).
        var calibration = SensorCalibration.Fit(CalibrationReadings.Clear(Worked).Value, null, Bench).Value;
        Assert.Contains("order 3", calibration.Words, StringComparison.Ordinal);
        Assert.Equal(352.4194, calibration.AtC(700), 1e-3);
    }

    [Fact]
    public void Nothing_is_said_beyond_the_readings()
    {
        var calibration = SensorCalibration.Fit(CalibrationReadings.Clear(Worked).Value, Thermocouples.TypeK, Bench).Value;
        Assert.Equal(887, calibration.ToCount, 1.0); // 848 and 5 % of the span of 793
        Assert.Throws<ArgumentOutOfRangeException>(() => calibration.AtC(900));
    }

    [Fact]
    public void Too_few_points_and_readings_that_fall_are_told()
    {
        Assert.Contains("few", CalibrationReadings.Clear(Worked[..4]).Problems[0].What, StringComparison.Ordinal);
        CalibrationPoint[] swapped = [.. Worked.Select((point, i) => i == 3 ? point with { ProbeC = 129 } : point)];
        var said = CalibrationReadings.Clear(swapped).Problems[0];
        Assert.Contains("less heat", said.What, StringComparison.Ordinal);
        Assert.Contains("650 counts", said.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void The_lag_between_probe_and_sensor_is_found_from_the_open_loop_and_taken_out()
    {
        // Made by hand: the sensor is at T, counts 2·T; up at 3 K/s from 50 to 350, down at 2 K/s; the probe follows 4 s late on straight ramps:
        // it shows T − 12 on the way up and T + 8 on the way down, so the gap is 4·(3 + 2) = 20 K.
        CalibrationPoint[] points =
        [
            .. Enumerable.Range(0, 21).Select(i => new CalibrationPoint(5.0 * i, 2 * (50 + (15.0 * i)), 50 + (15.0 * i) - 12)),
            .. Enumerable.Range(0, 16).Select(i => new CalibrationPoint(200 + (10.0 * i), 2 * (350 - (20.0 * i)), 350 - (20.0 * i) + 8)),
        ];
        var cleared = CalibrationReadings.Clear(points).Value;
        Assert.Equal(-20, cleared.FirstGapK, 0.7); // the pair at the turn of the ramp has a rate of its own
        Assert.Equal(4, cleared.LagS, 0.1);
        Assert.All(cleared.Points.Skip(2).Take(16), point => Assert.Equal(point.Count / 2, point.ProbeC, 0.4));
    }

    [Fact]
    public void A_loop_that_no_lag_closes_is_no_lag()
    {
        CalibrationPoint[] points =
        [
            .. Enumerable.Range(0, 21).Select(i => new CalibrationPoint(5.0 * i, 2 * (50 + (15.0 * i)), 50 + (15.0 * i) - (i > 10 ? 30 : 0))),
            .. Enumerable.Range(0, 16).Select(i => new CalibrationPoint(200 + (10.0 * i), 2 * (350 - (20.0 * i)), 350 - (20.0 * i))),
        ];
        Assert.Contains("one curve", CalibrationReadings.Clear(points).Problems[0].What, StringComparison.Ordinal);
    }

    [Fact]
    public void Carried_to_another_board_the_same_tip_gives_the_same_degrees()
    {
        var bench = SensorCalibration.Fit(CalibrationReadings.Clear(Worked).Value, Thermocouples.TypeK, Bench).Value;
        var board = new CalibrationConditions(3.3, 12, 3.1, 40, 0.01, 2);
        var moved = bench.MovedTo(board, 400).Value;

        // By hand: the amplifier's output at 300 bench counts is 300·1.1/1024 V; the tip is at 163.83368 °C. With the cold end at 40 instead of 28 °C the output
        // falls by the gain times E(40) − E(28) = 1.612 − 1.122 = 0.490 mV of the published table, and 12 bits of 3.3 V count it.
        double gain = 52190.117 * 1.1 / 1024;
        double outputV = (300 * 1.1 / 1024) - (gain * 0.490e-3);
        Assert.Equal(163.83, moved.AtC(outputV / 3.3 * 4096), 0.05);
        Assert.True(moved.BandK(outputV / 3.3 * 4096) > bench.BandK(300));
    }

    [Fact]
    public void A_board_that_clips_refuses_the_calibration()
    {
        var bench = SensorCalibration.Fit(CalibrationReadings.Clear(Worked).Value, Thermocouples.TypeK, Bench).Value;
        var low = new CalibrationConditions(1.1, 10, 0.6, 28, 0.01, 2);
        var said = bench.MovedTo(low, 400).Problems[0];
        Assert.Contains("clips", said.What, StringComparison.Ordinal);
        Assert.Contains("°C", said.Limit, StringComparison.Ordinal);
    }

    [Fact]
    public void A_reference_that_follows_the_cell_drifts_by_its_share()
    {
        // Reference 3.3 V sinks to 3.0 V: the same signal reads 10 % more counts. At 300 °C over a cold end of 28 °C that is about a tenth of the rise:
        // signal 12.2086 − 1.1217 = 11.087 mV (published table), 10 % more is 12.196 + 1.122 = 13.317 mV, which is 326.7 °C.
        var chain = new SensorChain(new ChainWanted(Thermocouples.TypeK, 450, 10, 50, 3.3, 0.01, 12), "hand", new Heatwright.Physics.GainPair(150_000, 1000, 151, 153, 1), 1);
        var calibration = SensorCalibration.OfChain(chain, new CalibrationConditions(3.3, 12, 3.1, 28, 0.01, 2), 3);
        Assert.Equal(26.7, calibration.DriftK(300, 3.3, 3.0), 0.2);
    }
}

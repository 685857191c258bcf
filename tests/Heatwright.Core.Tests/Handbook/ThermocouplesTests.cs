using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Handbook;

public class ThermocouplesTests
{
    public static TheoryData<string> Types => [.. Thermocouples.All.Select(curve => curve.Type)];

    [Fact]
    public void All_nine_types_stand_ready() => Assert.Equal("BCEJKNRST", string.Concat(Thermocouples.All.Select(curve => curve.Type)));

    [Theory, MemberData(nameof(Types))]
    public void A_temperature_comes_back_from_its_own_voltage_over_the_whole_range(string type)
    {
        var curve = Thermocouples.Find(type)!;
        Gen.Double[curve.InvertFromC, curve.MaxC].Sample(tC =>
        {
            // Near -250 °C terms of 130 V cancel to some millivolts, which leaves up to 5e-14 V (seen in 50-digit arithmetic).
            double toleranceK = (1e-13 / curve.SlopeVPerK(tC)) + 1e-9;
            return Math.Abs(curve.TemperatureC(curve.EmfV(tC)) - tC) <= toleranceK;
        }, iter: 20_000);
    }

    [Theory, MemberData(nameof(Types))]
    public void Both_ends_of_the_range_come_back_too(string type)
    {
        var curve = Thermocouples.Find(type)!;
        Assert.Equal(curve.InvertFromC, curve.TemperatureC(curve.EmfV(curve.InvertFromC)), 1e-6);
        Assert.Equal(curve.MaxC, curve.TemperatureC(curve.EmfV(curve.MaxC)), 1e-9);
    }

    [Theory, MemberData(nameof(Types))]
    public void Hotter_gives_more_voltage(string type)
    {
        var curve = Thermocouples.Find(type)!;
        Gen.Select(Gen.Double[curve.InvertFromC, curve.MaxC], Gen.Double[0.01, 50]).Sample((tC, stepK) =>
            tC + stepK > curve.MaxC || curve.EmfV(tC + stepK) > curve.EmfV(tC), iter: 20_000);
    }

    [Theory, MemberData(nameof(Types))]
    public void The_slope_is_the_change_of_voltage_per_kelvin(string type)
    {
        var curve = Thermocouples.Find(type)!;
        double[] joints = Joints(curve);
        Gen.Double[curve.MinC + 0.1, curve.MaxC - 0.1].Sample(tC =>
        {
            if (joints.Any(joint => Math.Abs(joint - tC) < 0.02))
            {
                return true;   // the slope itself jumps there, by up to 0.3 µV/K at 0 °C
            }

            double difference = (curve.EmfV(tC + 0.01) - curve.EmfV(tC - 0.01)) / 0.02;
            return Math.Abs(difference - curve.SlopeVPerK(tC)) <= 1e-10;
        }, iter: 5_000);
    }

    [Theory, MemberData(nameof(Types))]
    public void The_pieces_meet_where_they_join(string type)
    {
        var curve = Thermocouples.Find(type)!;
        Assert.All(Joints(curve), at => Assert.Equal(curve.EmfV(at), curve.EmfV(at + 1e-9), 1e-9));
    }

    [Theory, MemberData(nameof(Types))]
    public void No_hot_and_cold_difference_gives_no_voltage(string type) =>
        Gen.Double[43, 400].Sample(tC => Thermocouples.VoltageV(type, tC, tC) == 0);

    /// <summary>A second way: the exponential of type K is worked out by itself; below 0 °C it must not act.</summary>
    [Fact]
    public void The_exponential_of_type_K_acts_above_zero_only()
    {
        var polynomial = Tables.Find("thermocouple-forward").Rows.Where(row => row.Key == "K" && row.Word("term")[0] == 'c').ToList();
        double Sum(double from, double tC) => polynomial.Where(row => row.Number("from") == from)
            .Sum(row => row.Number("coefficient") * Math.Pow(tC, int.Parse(row.Word("term").AsSpan(1), System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(Sum(-270, -40), Thermocouples.TypeK.EmfV(-40) * 1e3, 1e-12);
        Assert.Equal(0.1185976 * Math.Exp(-1.183432e-4 * Math.Pow(100 - 126.9686, 2)), (Thermocouples.TypeK.EmfV(100) * 1e3) - Sum(0, 100), 1e-9);
    }

    [Theory]
    [InlineData("K", -270.001, "-270 to 1372 °C")]
    [InlineData("K", 1372.001, "-270 to 1372 °C")]
    [InlineData("T", 401, "-270 to 400 °C")]
    [InlineData("B", -1, "0 to 1820 °C")]
    [InlineData("K", double.NaN, "-270 to 1372 °C")]
    public void Outside_its_range_a_type_refuses_and_says_the_range(string type, double hotC, string range) =>
        Assert.Contains(range, Assert.Throws<ArgumentOutOfRangeException>(() => Thermocouples.VoltageV(type, hotC, 25)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("K", 60, "-6.458 to 54.886 mV")]
    [InlineData("K", -8, "-6.458 to 54.886 mV")]
    [InlineData("B", -0.001, "43 and 1820 °C")]
    public void A_voltage_the_type_cannot_give_is_refused_with_the_range(string type, double mV, string range) =>
        Assert.Contains(range, Assert.Throws<ArgumentOutOfRangeException>(() => Thermocouples.TemperatureC(type, mV * 1e-3, 0)).Message, StringComparison.Ordinal);

    [Fact]
    public void An_unknown_type_is_refused_with_the_types_there_are() =>
        Assert.Contains("B, C, E, J, K, N, R, S, T", Assert.Throws<ArgumentOutOfRangeException>(() => Thermocouples.VoltageV("X", 100, 25)).Message, StringComparison.Ordinal);

    /// <summary>[nist-srd60] type K table: 350 °C 14.293 mV, 25 °C 1.000 mV; type E table: 10 °C 0.591 mV. Printed digits.</summary>
    [Fact]
    public void The_two_sums_agree_with_differences_of_printed_values()
    {
        Assert.Equal(14.293 - 1.000, Thermocouples.VoltageV("K", 350, 25) * 1e3, 0.001);
        // 20 mV + 0.591 mV = 20.591 mV; type E prints 21.036 mV at 300 °C and 77.9 µV/K around it (from memory): 294.29 °C.
        Assert.Equal(300 - ((21.036 - 20.591) / 0.0779), Thermocouples.TemperatureC("e", 0.020, 10), 0.02);
    }

    /// <summary>Common practice, no source: an amplified tip sensor gives about 1.1 V near 400 °C. Gains by hand from printed millivolts
    /// at 400 and 25 °C [nist-srd60]; the list names no type as the answer.</summary>
    [Theory]
    [InlineData("K", 1.1 / 0.015397)]
    [InlineData("J", 1.1 / 0.020571)]
    [InlineData("T", 1.1 / 0.019880)]
    [InlineData("N", 1.1 / 0.012315)]
    [InlineData("E", 1.1 / 0.027451)]
    [InlineData("R", 1.1 / 0.003267)]
    [InlineData("S", 1.1 / 0.003117)]
    public void A_tip_sensor_of_1_1_V_near_400_C_implies_a_gain_for_each_type(string type, double gain)
    {
        var gains = Thermocouples.GainPerType(outputV: 1.1, hotC: 400, coldC: 25);
        Assert.Equal(9, gains.Count);
        Assert.Equal(gain, gains[type], gain * 5e-4);   // 1 µV of print in 3 mV
    }

    [Fact]
    public void Types_that_do_not_reach_the_temperature_get_no_gain() =>
        Assert.DoesNotContain("T", Thermocouples.GainPerType(1.1, 450, 25).Keys);

    [Fact]
    public void Type_C_says_that_it_is_from_memory() =>
        Assert.All(Tables.Find("thermocouple-forward-c").Rows, row => Assert.Equal(Mark.FromMemory, row.Mark));

    private static double[] Joints(ThermocoupleCurve curve)
    {
        string table = curve.Type == "C" ? "thermocouple-forward-c" : "thermocouple-forward";
        return [.. Tables.Find(table).Rows.Where(row => row.Key == curve.Type).Select(row => row.Number("from")).Distinct().Where(at => at > curve.MinC)];
    }
}

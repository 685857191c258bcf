using CsCheck;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics.Sensing;

/// <summary>Check values by a second program (Python) from the [nist-srd60] functions, unless the line names something else.</summary>
public class ColdJunctionTests
{
    private static readonly ThermocoupleCurve K = Thermocouples.TypeK;

    public static TheoryData<string, double, double> Voltages => Grid(
        ["K", "J", "T", "N", "E", "R", "S", "B"],
        """
        -20  -0.7775 -0.9947 -0.7568 -0.5180 -1.1516 -0.1000 -0.1028 -
        10   0.3969  0.5068  0.3910  0.2609  0.5912  0.0543  0.0553  -0.0019
        25   1.0002  1.2773  0.9920  0.6586  1.4951  0.1406  0.1426  -0.0025
        100  4.0962  5.2689  4.2785  2.7741  6.3189  0.6474  0.6459  0.0332
        200  8.1385  10.7787 9.2881  5.9134  13.4213 1.4686  1.4408  0.1783
        250  10.1534 13.5552 12.0134 7.5970  17.1806 1.9234  1.8736  0.2913
        300  12.2086 16.3272 14.8619 9.3412  21.0362 2.4006  2.3230  0.4306
        350  14.2931 19.0905 17.8187 11.1362 24.9644 2.8962  2.7858  0.5959
        400  16.3971 21.8481 20.8720 12.9737 28.9460 3.4077  3.2594  0.7865
        450  18.5158 24.6101 -       14.8464 32.9647 3.9331  3.7422  1.0020
        500  20.6443 27.3926 -       16.7479 37.0054 4.4713  4.2333  1.2418
        """);

    public static TheoryData<string, double, double> Slopes => Grid(
        ["K", "J", "T", "N", "E", "R", "S"],
        """
        25   40.518 51.752 40.682 26.782 60.952 5.943  5.991
        100  41.369 54.361 46.785 29.643 67.523 7.479  7.338
        250  40.710 55.512 55.800 34.313 76.240 9.334  8.836
        400  42.241 55.152 -      37.125 80.056 10.374 9.568
        """);

    [Theory, MemberData(nameof(Voltages))]
    public void Voltages_agree_with_the_second_program(string type, double tC, double mV) =>
        Assert.Equal(mV, Thermocouples.Find(type)!.EmfV(tC) * 1e3, 5.1e-5);

    [Theory, MemberData(nameof(Slopes))]
    public void Slopes_agree_with_the_second_program(string type, double tC, double uVPerK) =>
        Assert.Equal(uVPerK, Thermocouples.Find(type)!.SlopeVPerK(tC) * 1e6, 5.1e-4);

    [Theory]
    [InlineData("K", 40.920)]
    [InlineData("J", 55.088)]
    [InlineData("T", 53.180)]
    [InlineData("N", 32.939)]
    [InlineData("E", 73.575)]
    [InlineData("R", 8.7819)]
    [InlineData("S", 8.3826)]
    public void Mean_slopes_from_60_to_360_C_agree(string type, double uVPerK) =>
        Assert.Equal(uVPerK, ColdJunction.VoltageV(Thermocouples.Find(type)!, 360, 60) / 300 * 1e6, uVPerK > 10 ? 5.1e-4 : 5.1e-5);

    /// <summary>[nist-srd60] printed tables (from memory): the anchors of all types.</summary>
    [Theory]
    [InlineData("K", 100, 4.096)]
    [InlineData("K", 400, 16.397)]
    [InlineData("J", 400, 21.848)]
    [InlineData("T", 400, 20.872)]
    [InlineData("N", 400, 12.974)]
    [InlineData("E", 400, 28.946)]
    [InlineData("S", 400, 3.259)]
    public void Printed_anchors_agree(string type, double tC, double mV) => Assert.Equal(mV, Thermocouples.Find(type)!.EmfV(tC) * 1e3, 0.0005);

    [Theory]
    [InlineData("K", 1.0, 24.99402)]
    [InlineData("K", 4.096, 99.99443)]
    [InlineData("K", 10.0, 246.2295)]
    [InlineData("K", 16.397, 399.9966)]
    [InlineData("K", 20.0, 484.8813)]
    [InlineData("J", 1.0, 19.62811)]
    [InlineData("J", 4.096, 78.31717)]
    [InlineData("J", 10.0, 185.9641)]
    [InlineData("J", 16.397, 301.2609)]
    [InlineData("J", 20.0, 366.4866)]
    public void The_inverse_is_exact(string type, double mV, double tC) => Assert.Equal(tC, Thermocouples.Find(type)!.TemperatureC(mV * 1e-3), 5.1e-5);

    /// <summary>[nist-srd60] inverse polynomial of type K, 0 to 20.644 mV, evaluated by the second program.</summary>
    [Theory]
    [InlineData(1.0, 24.98365)]
    [InlineData(4.096, 99.96329)]
    [InlineData(10.0, 246.2220)]
    [InlineData(16.397, 400.0017)]
    [InlineData(20.0, 484.8818)]
    public void The_published_inverse_of_type_K_is_only_an_approximation(double mV, double tC) =>
        Assert.Equal(tC, K.ApproximateInverses.Single(piece => mV >= piece.FromMv && mV <= piece.ToMv).ApproximateC(mV * 1e-3), 5.1e-5);

    [Fact]
    public void Volts_are_added_and_not_degrees()
    {
        Assert.Equal(1.264352, K.EmfV(31.5) * 1e3, 5.1e-7);
        Assert.Equal(399.2237, ColdJunction.HotC(K, 15.10e-3, 31.5), 5.1e-5);
        Assert.Equal(400.7218, ColdJunction.DegreesAddedC(K, 15.10e-3, 31.5), 5.1e-5);
        Assert.Equal(369.2218, ColdJunction.UncompensatedC(K, 15.10e-3), 5.1e-5);
    }

    [Theory]
    [InlineData("K", 0.9645)]
    [InlineData("N", 0.7278)]
    [InlineData("S", 0.6408)]
    public void A_cold_junction_error_reaches_the_answer_by_the_ratio_of_slopes(string type, double ratio) =>
        Assert.Equal(ratio, ColdJunction.HotKPerColdK(Thermocouples.Find(type)!, 400, 31.5), 5.1e-5);

    [Fact]
    public void The_ratio_of_slopes_is_the_slope_of_the_answer() => Gen.Select(Gen.Double[60, 450], Gen.Double[0.1, 50]).Sample((hotC, coldC) =>
    {
        double measuredV = ColdJunction.VoltageV(K, hotC, coldC);
        double moved = (ColdJunction.HotC(K, measuredV, coldC + 0.01) - ColdJunction.HotC(K, measuredV, coldC - 0.01)) / 0.02;
        return Math.Abs(moved - ColdJunction.HotKPerColdK(K, hotC, coldC)) < 1e-6;
    });

    [Fact]
    public void The_hot_end_comes_back_through_any_cold_junction() => Gen.Select(Gen.Double[-50, 900], Gen.Double[-40, 85], Gen.Int[0, 3])
        .Sample((hotC, coldC, index) =>
        {
            var curve = Thermocouples.Find("EJKN"[index].ToString())!;
            return Math.Abs(ColdJunction.HotC(curve, ColdJunction.VoltageV(curve, hotC, coldC), coldC) - hotC) < 1e-9;
        });

    /// <summary>Without a sensor at the cold end, 20 to 50 °C of drift is about 29 °C at the tip (second program).</summary>
    [Fact]
    public void A_drifting_cold_end_is_nearly_degree_for_degree() =>
        Assert.Equal(29, ColdJunction.HotC(K, ColdJunction.VoltageV(K, 350, 20), 50) - 350, 0.5);

    /// <summary>Shown over true where the firmware takes the sensor for K, cold end 25 °C, 150 to 400 °C, measured as the ratio of the rises' voltages.</summary>
    [Theory]
    [InlineData("J", 1.27, 1.31)]
    [InlineData("T", 1.10, 1.26)]
    [InlineData("N", 0.76, 0.82)]
    [InlineData("E", 1.53, 1.71)]
    public void A_wrong_type_in_the_firmware_shows_a_ratio_of_its_own(string type, double low, double high)
    {
        for (double tC = 150; tC <= 400; tC += 25)
        {
            Assert.InRange(ColdJunction.MistakenC(Thermocouples.Find(type)!, K, tC, 25) / tC, low - 0.005, high + 0.005);
        }
    }

    [Fact]
    public void Mistaking_a_type_for_itself_changes_nothing() => Assert.Equal(300, ColdJunction.MistakenC(K, K, 300, 25), 1e-9);

    /// <summary>Second way: the whole circuit is walked leg by leg, sensor from 400 to 60 °C, swapped extension from 60 to 30 °C.</summary>
    [Fact]
    public void Swapped_extension_leads_subtract_twice_their_share()
    {
        double seenV = (K.EmfV(400) - K.EmfV(60)) - (K.EmfV(60) - K.EmfV(30));
        Assert.Equal(ColdJunction.HotC(K, seenV, 30) - 400, ColdJunction.ReversedExtensionErrorK(K, 400, 60, 30), 0.5);   // first order of 58 K
        Assert.Equal(0, ColdJunction.ReversedExtensionErrorK(K, 400, 30, 30), 1e-12);
    }

    /// <summary>J extension on a K sensor: +28 % of the joint's rise at 25 °C, from the slopes at 25 °C (hand: 51.752/40.518 − 1 = 0.277).</summary>
    [Fact]
    public void The_wrong_extension_adds_the_difference_of_slopes()
    {
        double errorV = ColdJunction.WrongExtensionErrorK(K, Thermocouples.TypeJ, 25, 26, 25) * K.SlopeVPerK(25);
        Assert.Equal(0.277, errorV / K.SlopeVPerK(25), 0.001);
    }

    private static TheoryData<string, double, double> Grid(string[] types, string lines)
    {
        TheoryData<string, double, double> data = [];
        foreach (string line in lines.Split('\n'))
        {
            string[] places = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            for (int i = 0; i < types.Length; i++)
            {
                if (places[i + 1] != "-")
                {
                    data.Add(types[i], double.Parse(places[0], System.Globalization.CultureInfo.InvariantCulture),
                        double.Parse(places[i + 1], System.Globalization.CultureInfo.InvariantCulture));
                }
            }
        }

        return data;
    }
}

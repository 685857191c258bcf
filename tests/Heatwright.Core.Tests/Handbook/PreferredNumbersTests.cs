using CsCheck;
using Heatwright.Handbook;

namespace Heatwright.Tests.Handbook;

public class PreferredNumbersTests
{
    /// <summary>[iec-60063] all series, row by row, exact.</summary>
    [Fact]
    public void Every_published_value_of_every_series_is_there()
    {
        var file = ReferenceCsv.Read("standards/e_series_iec60063.csv");
        Assert.Equal(3 + 6 + 12 + 24 + 48 + 96 + 192, file.Rows.Length);
        Assert.All(file.Rows, row => Assert.Equal(file.Number(row, "value"), PreferredNumbers.Decade(file.Word(row, "series"))[(int)file.Number(row, "index")]));
    }

    /// <summary>A second way: the fine series are rounded powers of ten [iec-60063], all but 9.20 of E192.</summary>
    [Theory]
    [InlineData("E48", 48)]
    [InlineData("E96", 96)]
    [InlineData("E192", 192)]
    public void Fine_series_are_rounded_powers_of_ten(string series, int steps)
    {
        for (int i = 0; i < steps; i++)
        {
            double rounded = Math.Round(Math.Pow(10, (double)i / steps), 2);
            Assert.Equal(rounded == 9.19 ? 9.20 : rounded, PreferredNumbers.Decade(series)[i]);
        }
    }

    /// <summary>Printed list of E24 [iec-60063], from memory.</summary>
    [Fact]
    public void E24_is_the_printed_list_and_not_rounded() => Assert.Equal(
        [1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1],
        PreferredNumbers.Decade("e24"));

    /// <summary>By hand; between 91 and 100 the border is √9100 = 95.394.</summary>
    [Theory]
    [InlineData("E24", 4872, 4700)]
    [InlineData("E96", 4872, 4870)]
    [InlineData("E24", 9.6e6, 10e6)]
    [InlineData("E12", 0.0101, 0.010)]
    [InlineData("E24", 95.39, 91)]
    [InlineData("E24", 95.40, 100)]
    public void The_nearest_value_is_nearest_by_ratio(string series, double wanted, double nearest) =>
        Assert.Equal(nearest, PreferredNumbers.Nearest(series, wanted), nearest * 1e-12);

    [Fact]
    public void No_value_of_the_series_is_nearer() => Gen.Select(Gen.Double[-3, 7], Gen.Int[0, 6]).Sample((power, index) =>
    {
        double wanted = Math.Pow(10, power);
        string series = PreferredNumbers.Names[index];
        double nearest = PreferredNumbers.Nearest(series, wanted);
        return PreferredNumbers.Between(series, wanted / 10, wanted * 10).All(value => Math.Abs(Math.Log(value / wanted)) >= Math.Abs(Math.Log(nearest / wanted)) - 1e-12);
    });

    [Fact]
    public void A_span_holds_both_its_ends() => Assert.Equal([470, 510, 560, 620, 680, 750, 820, 910, 1000], PreferredNumbers.Between("E24", 470, 1000));

    /// <summary>A second search, over every pair of both decades, in plain loops.</summary>
    [Fact]
    public void The_best_pair_is_the_best_of_all_pairs() => Gen.Select(Gen.Double[1.2, 200], Gen.Int[3, 5]).Sample((gain, index) =>
    {
        string series = PreferredNumbers.Names[index];
        var best = PreferredNumbers.BestPair(series, gain, 0, 0);
        double least = double.PositiveInfinity;
        foreach (double ground in PreferredNumbers.Decade(series))
        {
            foreach (double feedback in PreferredNumbers.Decade(series))
            {
                for (int power = -3; power <= 4; power++)
                {
                    least = Math.Min(least, Math.Abs(((1 + (feedback * Math.Pow(10, power) / ground)) / gain) - 1));
                }
            }
        }

        return Math.Abs(Math.Abs(best.Error) - least) < 1e-12 && Math.Abs(best.Achieved - (1 + (best.FirstOhm / best.SecondOhm))) < 1e-9;
    }, iter: 50);

    [Fact]
    public void Several_pairs_come_best_first_and_differ()
    {
        var pairs = PreferredNumbers.BestGains("E24", 56, 10);
        Assert.Equal(10, pairs.Distinct().Count());
        Assert.Equal(pairs.Select(pair => Math.Abs(pair.Error)).Order(), pairs.Select(pair => Math.Abs(pair.Error)));
        // By hand: 110 k over 2 k makes exactly 56.
        Assert.Equal((110e3, 2e3, 56.0), (pairs[0].FirstOhm, pairs[0].SecondOhm, pairs[0].Achieved));
    }

    [Fact]
    public void A_divider_and_a_ratio_are_found_too()
    {
        // By hand: 3 k over 1 k leaves a quarter; 2.2 to 1 is exact in E24.
        var divider = PreferredNumbers.BestPair("E24", 0, 0, 0.25);
        Assert.Equal(0.25, divider.SecondOhm / (divider.FirstOhm + divider.SecondOhm), 1e-12);
        Assert.Equal(0, divider.Error, 1e-12);
        var ratio = PreferredNumbers.BestPair("E24", 0, 2.2, 0);
        Assert.Equal((2200, 1000), (ratio.FirstOhm, ratio.SecondOhm));
    }

    [Fact]
    public void The_error_is_the_miss_as_a_share() => Gen.Double[0.02, 0.98].Sample(share =>
    {
        var pair = PreferredNumbers.BestPair("E96", 0, 0, share);
        return Math.Abs((pair.SecondOhm / (pair.FirstOhm + pair.SecondOhm) / share) - 1 - pair.Error) < 1e-12 && Math.Abs(pair.Error) < 0.0121;   // half a step of E96 at most
    }, iter: 100);

    [Fact]
    public void What_no_pair_can_do_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => PreferredNumbers.BestPair("E24", 0.9, 0, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => PreferredNumbers.BestPair("E24", 0, 0, 1));
        Assert.Throws<ArgumentException>(() => PreferredNumbers.BestPair("E24", 0, 0, 0));
        Assert.Throws<ArgumentException>(() => PreferredNumbers.BestPair("E24", 5, 5, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => PreferredNumbers.Nearest("E24", 0));
        Assert.Contains("E3, E6, E12, E24, E48, E96, E192",
            Assert.Throws<ArgumentOutOfRangeException>(() => PreferredNumbers.BestPair("E25", 5, 0, 0)).Message, StringComparison.Ordinal);
    }
}

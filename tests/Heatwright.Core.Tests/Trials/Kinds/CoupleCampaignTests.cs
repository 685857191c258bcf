using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Which type is it, over random sets: truth from the published coefficients, errors of a usual bench. Seed fixed beforehand.</summary>
public class CoupleCampaignTests(ITestOutputHelper output)
{
    private const int Sets = 500;

    private static readonly ILookup<string, (double From, double To, string Term, double Value)> Coefficients = Read();

    /// <summary>4 to 8 readings over 150 K or more, probe ±2 K (standard, each reading), wire inside class 2 (half the limit as standard), cold junction 1.5 K,
    /// meter 0.5 % and 20 µV, read to 10 µV: at least 90 % right, at most 1 % wrong.</summary>
    [Theory, InlineData(20261125), InlineData(777)]
    public void Over_wide_spans_nine_of_ten_are_named_and_hardly_one_wrong(int seed)
    {
        var random = new Random(seed);
        int right = 0, wrong = 0;
        for (int set = 0; set < Sets; set++)
        {
            string type = "KJTEN"[random.Next(5)].ToString();
            int count = random.Next(4, 9);
            double low = 40 + (60 * random.NextDouble()), high = Math.Min(type == "T" ? 380 : 600, low + 150 + (200 * random.NextDouble()));
            double[] probe = [.. Enumerable.Range(0, count).Select(i => Math.Round(low + ((high - low) * i / (count - 1.0))))];
            double cold = 25, coldTrue = cold + (1.5 * Normal(random)), wire = Normal(random), gain = 1 + (0.005 / Math.Sqrt(3) * Math.Sqrt(3) * ((2 * random.NextDouble()) - 1));
            double zero = 20e-6 * ((2 * random.NextDouble()) - 1);
            double[] volts = [.. probe.Select(c =>
            {
                double truth = c + (2 * Normal(random)), limit = type == "T" ? Math.Max(1, 0.0075 * truth) : Math.Max(2.5, 0.0075 * truth);
                return Math.Round(((Emf(type, truth + (wire * limit / 2)) - Emf(type, coldTrue)) / 1000 * gain) + zero, 5);
            })];
            var answer = Given.Fit("couple-type", [("volts", volts), ("degrees", probe)], [("cold", cold), ("cold doubt", 1.5), ("probe doubt", 2)], meters: "volts=0.5%+0.02mV");
            right += answer.Word == type ? 1 : 0;
            wrong += answer.Word != type && answer.Word.Length == 1 ? 1 : 0;
        }

        output.WriteLine($"right {right}, wrong {wrong} of {Sets}, seed {seed}");
        Assert.True(right >= 0.9 * Sets, $"{right} of {Sets} named right");
        Assert.True(wrong <= 0.01 * Sets, $"{wrong} of {Sets} named wrong");
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    /// <summary>Millivolts against 0 °C by the published polynomial, Horner-free on purpose: a second way to the product's own.</summary>
    private static double Emf(string type, double c)
    {
        var piece = Coefficients[type].Where(row => c >= row.From && c <= row.To).ToArray();
        double sum = piece.Where(row => row.Term[0] == 'c').Sum(row => row.Value * Math.Pow(c, int.Parse(row.Term[1..], System.Globalization.CultureInfo.InvariantCulture)));
        double? Term(string name) => piece.Where(row => row.Term == name).Select(row => (double?)row.Value).FirstOrDefault();
        return Term("a0") is { } a0 ? sum + (a0 * Math.Exp(Term("a1")!.Value * (c - Term("a2")!.Value) * (c - Term("a2")!.Value))) : sum;
    }

    private static ILookup<string, (double, double, string, double)> Read()
    {
        var file = ReferenceCsv.Read("thermocouples/its90_forward_coefficients.csv");
        return file.Rows.ToLookup(row => file.Word(row, "type"), row => (file.Number(row, "t_min_C"), file.Number(row, "t_max_C"), file.Word(row, "term"), file.Number(row, "coefficient")));
    }
}

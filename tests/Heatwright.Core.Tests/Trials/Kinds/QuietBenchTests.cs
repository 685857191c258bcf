using Heatwright.DemoTruth.Campaign;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Every kind of trial on benches whose truth is known, made by code that shares nothing with the product: meters are right and hands are steady, only displays round.
/// What is found must be the truth, and its doubt that of somebody who knows the law and every promise. With noise, and often: proofs, coverage.</summary>
public sealed class QuietBenchTests
{
    private const int Seed = 20261125, Benches = 8;

    /// <summary>Where doubts are another's than those of the information bound. Steady hands show less scatter than the bound reckons with, so that a doubt taken from it may be smaller.</summary>
    private static readonly Dictionary<string, (double Low, double High)> OtherWidths = new(StringComparer.Ordinal)
    {
        ["cold-ohms|ohms"] = (0.9, 1.3), // leads taken from habit where nobody read them
        ["converter-start|start current"] = (0.9, 1.35), // the largest of few
        ["time constant"] = (0.68, 1.05),
        ["hold-power|linear loss"] = (0.5, 1.05),
        ["hold-power|radiating area"] = (0.5, 1.05),
        ["open-volts|open volts at 20 %"] = (0.95, 1.35), // a slow discharge is not quite at rest
        ["open-volts|open volts at 50 %"] = (0.95, 1.35),
        ["open-volts|open volts at 80 %"] = (0.95, 1.35),
        ["standby-drain|standby amps"] = (0.9, 1.7), // one of eight went on at its meter's last digit
        ["volts-amps|ohms"] = (0.8, 1.3), // the law is chosen from two
        ["sensor-ohms|beta"] = (0.65, 1.1),
        ["couple-type|slope"] = (0.95, 1.25),
    };

    /// <summary>Findings that have no bound: limits on either side, readings without a law, a known size.</summary>
    private static readonly string[] NoBound = ["converter-collapse|output amps it holds", "work-ladder|heat rate at the work", "incoming|new less old", "open-volts|capacity", "own-line|slope", "own-line|at x = 0", "sensor-counts|degrees in the middle"];

    public static TheoryData<string> Kinds() => [.. BenchLaws.Kinds.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void What_is_found_is_the_truth(string kind)
    {
        Dictionary<string, List<(double Off, double Width)>> seen = new(StringComparer.Ordinal);
        for (int bench = 0; bench < Benches; bench++)
        {
            var made = BenchLaws.Quiet(kind, Seed, bench);
            var answer = TrialFits.Run(kind, Typed.Input(made));
            Assert.True(answer.IsFine, answer.IsFine ? "" : answer.Problems[0].ToString());
            Assert.DoesNotContain(answer.Value.Remarks, remark => remark.LeftOut);
            Assert.True(made.Word.Length == 0 || answer.Value.Word == made.Word, answer.Value.Word);
            foreach (var should in made.Findings)
            {
                if (should.Name.Split('|').Select(name => answer.Value.Findings.FirstOrDefault(finding => finding.Name == name)).FirstOrDefault(finding => finding is not null) is { } finding)
                {
                    var (low, high) = finding.Middle(0.95);
                    string name = should.Name.Split('|')[0];
                    (seen.TryGetValue(name, out var all) ? all : seen[name] = []).Add(((finding.Value.Value - should.Truth) / ((high - low) / 4), (high - low) / 2 / should.Half));
                }
            }
        }

        Assert.NotEmpty(seen);
        foreach (var (name, all) in seen)
        {
            double most = all.Max(one => Math.Abs(one.Off)), mean = all.Average(one => Math.Abs(one.Off)), width = all.Average(one => one.Width);
            bool time = name == "time constant";
            Assert.True(most < (time || NoBound.Contains($"{kind}|{name}") ? 3 : 1.6) && mean < (time || NoBound.Contains($"{kind}|{name}") ? 1.1 : 0.8), $"{name}: off by {mean:0.00} of its doubt, at most {most:0.00}");
            var (low, high) = OtherWidths.TryGetValue($"{kind}|{name}", out var own) ? own : OtherWidths.TryGetValue(name, out own) ? own : (0.9, 1.15);
            Assert.True(NoBound.Contains($"{kind}|{name}") || (width > low && width < high), $"{name}: {width:0.00} times as wide as the bound");
        }
    }

    /// <summary>A picture's curve lies on the readings, as far as a display's last digit lets it.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_picture_shows_the_readings_and_a_curve_on_them(string kind)
    {
        for (int bench = 0; bench < 3; bench++)
        {
            var made = BenchLaws.Quiet(kind, Seed, bench);
            if (TrialFits.Run(kind, Typed.Input(made)).Value.Picture is not { Read.Length: > 3 } picture || kind is "converter-start" or "work-trial")
            {
                continue;
            }

            Assert.Equal(picture.X.Length, picture.Read.Length);
            Assert.Equal(picture.X.Length, picture.Fitted.Length);
            Assert.Empty(picture.LeftOut);
            double spread = picture.Read.Max() - picture.Read.Min(), most = picture.Read.Max(Math.Abs), range = spread > 0.05 * most ? spread : most;
            Assert.True(Math.Sqrt(picture.Residuals.Average(left => left * left)) < 0.03 * range, $"off by {Math.Sqrt(picture.Residuals.Average(left => left * left)) / range:0.000} of the range");
            Assert.All(picture.Band, band => Assert.InRange(band / range, 0, 0.05));
        }
    }
}

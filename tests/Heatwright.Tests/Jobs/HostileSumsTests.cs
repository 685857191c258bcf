using System.Globalization;
using Heatwright.Handbook;
using Heatwright.Jobs.Sums;
using Heatwright.Quantities;

namespace Heatwright.Tests.Jobs;

/// <summary>Every law, and every one of its numbers in turn, given what no bench can give: a refusal with all its parts, or an answer of finite numbers and words.</summary>
public class HostileSumsTests
{
    private static readonly string[] Wild = ["NaN", "1e999", "-1e999", "-1", "0", "1e-30", "-1e-30", "1e30", "-1e30", "1e6", "1"];

    public static TheoryData<string> Names => [.. LawCard.All.Select(card => card.Law.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void No_law_ever_answers_with_what_is_no_number(string name)
    {
        var card = LawCard.Find(name)!;
        var example = Example(card);
        foreach (var input in card.Inputs.Where(IsNumber))
        {
            foreach (string wild in Wild)
            {
                var answer = QuickSum.Run(name, [.. example.Where(pair => pair.Key != input.Name).Select(pair => $"{pair.Key}={pair.Value}"), $"{input.Name}={wild}"]);
                Sane(answer, $"{name} {input.Name}={wild}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Just_outside_what_cannot_be_is_refused_and_just_outside_what_was_fitted_is_told(string name)
    {
        var card = LawCard.Find(name)!;
        var example = Example(card);
        foreach (var input in card.Inputs.Where(IsNumber))
        {
            double low = input.Card.Unit == "°C" ? Math.Max(input.Card.Min, -273.15) : input.Card.Min;
            Refused(low - Math.Max(1e-3 * Math.Abs(low), 1e-3), double.IsFinite(low));
            Refused(input.Card.Max + Math.Max(1e-3 * Math.Abs(input.Card.Max), 1e-3), double.IsFinite(input.Card.Max));
            Told(input.Card.SoftMin - Math.Max(1e-3 * Math.Abs(input.Card.SoftMin), 1e-9));
            Told(input.Card.SoftMax + Math.Max(1e-3 * Math.Abs(input.Card.SoftMax), 1e-9));

            void Refused(double value, bool limited)
            {
                if (limited && Typed(input, value) is { } text)
                {
                    Assert.False(Ask(text).IsFine, $"{name} {input.Name}={text} lies outside {low:R} to {input.Card.Max:R} and is answered");
                }
            }

            void Told(double value)
            {
                if (double.IsFinite(value) && value >= low && value <= input.Card.Max && Typed(input, value) is { } text && Ask(text) is { IsFine: true } answer)
                {
                    Assert.Contains(answer.Value.Caveats, caveat => caveat.StartsWith(input.Name + " ", StringComparison.Ordinal));
                }
            }

            Checked<SumAnswer> Ask(string text) => QuickSum.Run(name, [.. example.Where(pair => pair.Key != input.Name).Select(pair => $"{pair.Key}={pair.Value}"), $"{input.Name}={text}"]);
        }
    }

    /// <summary>A value in the law's own unit, spelled with that unit so that no bare unit changes it; whole numbers stay whole.</summary>
    private static string? Typed(LawInput input, double value)
    {
        if (input.Parameter.ParameterType == typeof(int))
        {
            value = value < input.Card.Min ? Math.Floor(value) : Math.Ceiling(value);
        }

        string unit = input.Card.Unit == "C" ? "As" : input.Card.Unit;
        return value.ToString("R", CultureInfo.InvariantCulture) + unit;
    }

    private static void Sane(Checked<SumAnswer> answer, string asked)
    {
        if (!answer.IsFine)
        {
            Assert.All(answer.Problems, problem => Assert.All((string[])[problem.What, problem.Where, problem.Value, problem.Limit, problem.Next], slot => Assert.False(string.IsNullOrWhiteSpace(slot), $"{asked}: {problem}")));
            return;
        }

        Assert.All(answer.Value.Results, result =>
        {
            Assert.True(result.Value is null ? result.Words.Length > 0 : double.IsFinite(result.Value.Value), $"{asked}: {result.Name} is {result.Value}");
            Assert.True(double.IsFinite(result.StandardDoubt), asked);
            Assert.DoesNotContain("NaN", result.Shown, StringComparison.Ordinal);
            Assert.DoesNotContain("∞", result.Shown, StringComparison.Ordinal);
        });
    }

    private static bool IsNumber(LawInput input) => input.Parameter.ParameterType != typeof(string) && !input.Parameter.ParameterType.IsEnum && !input.IsYesNo;

    private static Dictionary<string, string> Example(LawCard card) => card.Law.Example.Split(' ').Select(word => word.Split('=', 2)).ToDictionary(pair => pair[0], pair => pair[1]);
}

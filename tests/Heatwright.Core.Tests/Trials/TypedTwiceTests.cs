using System.Globalization;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Readings that stand twice, and numbers of readings as they are said and typed.</summary>
public sealed class TypedTwiceTests
{
    /// <summary>Three readings and more, not all alike, struck ones aside. Runs are written 'time volts, ...', a struck reading with an x behind.</summary>
    [Theory]
    [InlineData("0 4, 9 3, 18 2", "0 4, 9 3, 18 2", "The same readings stand in run 'r-1', all 3 of them: entered twice? They count twice. Strike 'all' of r-2 out if so.")]
    [InlineData("0 4, 9 3x, 9 3.1, 18 2", "0 4, 9 3.1, 18 2", "The same readings stand in run 'r-1', all 3 of them")]
    [InlineData("0 4, 9 3, 18 2", "0 4x, 9 3x, 18 2x", "")]
    [InlineData("0 4, 9 3, 18 2", "0 4, 9 3, 18 2.1", "")]
    [InlineData("0 4, 9 3, 18 2", "0 4, 9 3", "")]
    [InlineData("0 4, 9 3", "0 4, 9 3", "")]
    [InlineData("0 4, 0 4, 0 4", "0 4, 0 4, 0 4", "")] // the same ohms three times is what steady ohms read
    [InlineData("1 1, 2 2, 3 3", "0 4, 9 3, 18 2, 0 4, 9 3, 18 2", "Readings 4 to 6 are the same as 1 to 3: entered twice? Strike '4-6' of r-2 out if so.")]
    [InlineData("1 1, 2 2, 3 3", "0 4, 9 3, 0 4, 9 3", "")]
    public void The_second_of_two_same_runs_is_told(string first, string second, string told)
    {
        Run[] runs = [Of("r-1", first), Of("r-2", second)];
        Trial trial = new(new("t"), TrialKind.Discharge, new("p"), runs);
        Assert.DoesNotContain(RunChecks.Of(trial, runs[0], new([]), null), remark => remark.Words.Contains("twice", StringComparison.Ordinal));
        var said = RunChecks.Of(trial with { Runs = [runs[0]] }, runs[1], new([]), null).Where(remark => remark.Words.Contains("twice", StringComparison.Ordinal)).ToArray();
        Assert.Equal(told.Length > 0 ? 1 : 0, said.Length);
        Assert.All(said, remark => Assert.Equal((0, Remark.Kept), (remark.Reading, remark.Effect)));
        Assert.All(said, remark => Assert.StartsWith(told, remark.Words, StringComparison.Ordinal));
    }

    [Theory, InlineData("1 2 3 5", "1 to 3, 5"), InlineData("4", "4"), InlineData("2 1", "1, 2"), InlineData("9 7 8 20 21", "7 to 9, 20, 21"), InlineData("", "")]
    public void Numbers_in_a_row_are_said_as_a_span(string numbers, string said) => Assert.Equal(said, NumberSpans.Told(numbers.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(number => int.Parse(number, CultureInfo.InvariantCulture))));

    [Theory, InlineData("1-3,5 4", 9, "1 2 3 5 4"), InlineData("all", 3, "1 2 3"), InlineData("2-4", 4, "2 3 4"), InlineData("2 2", 9, "2"), InlineData("7-9999999", 8, "7 9999999"), InlineData("3-1", 9, null), InlineData("x", 9, null), InlineData("1-", 9, null), InlineData("-1", 9, null), InlineData("", 9, null)]
    public void Numbers_are_typed_one_by_one_as_spans_or_all(string typed, int count, string? numbers) => Assert.Equal(numbers, NumberSpans.Read([typed], count) is { } read ? string.Join(' ', read) : null);

    private static Run Of(string name, string readings) => new(new(name), [new("time", "s", ""), new("volts", "V", "")],
        [.. readings.Split(", ").Select((reading, i) => new Reading(i + 1, reading.TrimEnd('x').Split(' '), reading.EndsWith('x') ? "typed wrong" : null))]);
}

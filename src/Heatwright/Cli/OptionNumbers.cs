using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Numbers behind options, through the reader of every field: '12,5' is no count, and never 125.</summary>
internal static class OptionNumbers
{
    /// <summary>A count of at most so many; 0 where the option is not typed.</summary>
    public static Checked<int> Count(string option, string? text, int most) => text is null ? new(0)
        : OptionReader.Amount(option, text, Expect.Count).Then(amount => amount.Value >= 0 && amount.Value <= most
            ? new Checked<int>((int)amount.Value)
            : new(new Problem("So many cannot be taken.", option, text, string.Create(CultureInfo.InvariantCulture, $"0 to {most}"), "Give another count.")));

    /// <summary>Minutes of a day; 0 where the option is not typed.</summary>
    public static Checked<double> Minutes(string option, string? text) => text is null ? new(0)
        : OptionReader.Amount(option, text, Expect.Minutes).Then(amount => amount.Si / 60 is >= 0 and <= 1440 and var minutes
            ? new Checked<double>(minutes)
            : new(new Problem("An evening cannot be that long.", option, text, "0 to 1440 min", "Give the minutes that you have.")));
}

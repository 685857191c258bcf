using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Days as they are typed.</summary>
internal static class DayWords
{
    /// <summary>Today where this machine stands.</summary>
    public static string Today => TimeProvider.System.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>A typed day, or today where none is typed.</summary>
    public static Checked<string> Of(string? typed) => typed is null || DateOnly.TryParseExact(typed, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _)
        ? new(typed ?? Today)
        : new(new Problem("The date cannot be read.", "--on", typed, "year-month-day, such as 2026-03-01", "Correct it."));
}

namespace Heatwright.Quantities;

/// <summary>Says why a text cannot be read, and what would be right.</summary>
internal static class Refusal
{
    public static Answer TooLong(string typed, Expect expect, int most) => new Answer.Refused(new Problem(
        $"This is too long to be {expect.What}.", expect.What, typed[..20] + "...", FormattableString.Invariant($"at most {most} characters"), "Type one value with its unit."));

    public static Answer Of(string typed, string text, Expect expect)
    {
        string next = Next(text, expect);
        return new Answer.Refused(new Problem(What(text, expect), expect.What, $"'{typed.Trim()}'", Limit(expect), next));
    }

    private static string What(string text, Expect expect)
    {
        if (IsTooCold(text, expect))
        {
            return "Nothing can be colder than -273.15 degrees Celsius.";
        }

        return expect.Kind == ExpectKind.Amount && ValueReader.Read(text, Expect.Anything with { Mark = expect.Mark }) is Answer.Fine { Value: TypedValue.Amount { UnitWasTyped: true } other }
            ? $"A value in {UnitSpelling.Plain(other.Unit.Symbol)} does not belong here."
            : $"This cannot be read as {expect.What}.";
    }

    /// <summary>What would be a temperature without its sign is refused for nothing but the sign.</summary>
    private static bool IsTooCold(string text, Expect expect) => expect.Takes(Units.Celsius) && text.StartsWith('-')
        && ValueReader.Read(text[1..], expect) is Answer.Fine { Value: TypedValue.Amount { Unit.IsLevel: true } };

    private static string Limit(Expect expect) => expect.Kind switch
    {
        ExpectKind.Pack => "cells in series and parallel, such as 3S2P, or the pack's volts",
        ExpectKind.Clock => "hours, minutes and seconds, such as 14:03:22",
        ExpectKind.Tolerance => "a tolerance in per cent, such as 5 %",
        ExpectKind.Money => "a price, such as 1.20 or '3 for 5'; the currency is yours and is not kept",
        ExpectKind.Count => "a whole number, 0 or more",
        ExpectKind.Amount when expect.Bare.Symbol.Length > 0 => $"a number in {string.Join(" or ", expect.Units.Select(unit => UnitSpelling.Plain(unit.Symbol)))}",
        _ => "a number with its unit",
    };

    private static string Next(string text, Expect expect) =>
        expect.Takes(Units.Celsius) && !expect.Takes(Units.Kelvin) && text.EndsWith('K')
            ? $"Type '{text} abs' if you mean the absolute scale; a rise has a field of its own."
            : "Correct the value, or type 'n/a' where there is none.";
}

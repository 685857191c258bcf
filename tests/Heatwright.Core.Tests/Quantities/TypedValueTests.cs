using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>What is kept of a text beside its value: steps, limits, estimates, and the spelling that says it again.</summary>
public class TypedValueTests
{
    private static readonly Origin Guess = new Origin.Assumed("test");

    // By hand: one of the last figure, in the unit of the value; noughts at the end of a whole number count as figures.
    [Theory]
    [InlineData("12.5", 0.1)]
    [InlineData("12.50", 0.01)]
    [InlineData("1200", 1)]
    [InlineData("1.25e3", 10)]
    [InlineData("12e-3", 0.001)]
    [InlineData("1.234,5", 0.1)]
    [InlineData("1 234.56", 0.01)]
    [InlineData("3V30", 0.01)]
    [InlineData("12.5 mV", 0.1)]
    [InlineData("1/4 V", 0)]
    public void A_step_is_one_of_the_last_figure(string text, double step) => Assert.Equal(step, Amount(text, Expect.Volts).Step, 1e-12 * step);

    [Theory]
    [InlineData("1:20", 1)]
    [InlineData("1:02.5", 0.1)]
    [InlineData("0:01.25", 0.01)]
    [InlineData("1h15", 60)]
    [InlineData("1h15m", 60)]
    [InlineData("1m20", 1)]
    [InlineData("1m20.5s", 0.1)]
    [InlineData("1:02:03", 1)]
    public void A_time_is_as_fine_as_its_last_part(string text, double step) => Assert.Equal(step, Amount(text, Expect.Seconds).Step, 1e-12);

    [Fact]
    public void Steps_of_other_fields_follow_their_last_part_too()
    {
        Assert.Equal(60, Amount("1:20", Expect.Hours).Step);
        Assert.Equal(60, Amount("14:03", Expect.Clock).Step);
        Assert.Equal(1, Amount("14:03:22", Expect.Clock).Step);
        Assert.Equal(0.1, Amount("14:03:22.5", Expect.Clock).Step, 1e-15);
        Assert.Equal(0.1, Amount("4k7", Expect.Ohms).Step, 1e-15); // in kΩ
        Assert.Equal("kΩ", Amount("4k7", Expect.Ohms).Unit.Symbol);
        Assert.Equal(0.5, Amount("3 for 6", Expect.Money).Step * 1.5, 1e-15); // a third of one
        Assert.Equal(5.0 / 9, Amount("9F", Expect.Rise).Step, 1e-15); // one step of Fahrenheit, in kelvins
        Assert.Equal(319.85, Amount("593K", Expect.Temperature).Value); // less 273.15, to the last figure
        Assert.Equal(0.2777, Amount("C/3", Expect.Rate).Si * 3000, 1e-4); // a third of 1/3600, thousandfold thrice
        Assert.Equal(0, Amount("C/3", Expect.Rate).Step);
    }

    [Fact]
    public void A_unit_was_typed_or_the_field_lent_it()
    {
        Assert.True(Amount("3 V", Expect.Volts).UnitWasTyped);
        Assert.False(Amount("3", Expect.Volts).UnitWasTyped);
        Assert.True(Amount("3V3", Expect.Volts).UnitWasTyped);
        Assert.True(Amount("3 +- 0.1 V", Expect.Volts).UnitWasTyped);
        Assert.False(Amount("3 +- 0.1", Expect.Volts).UnitWasTyped);
        Assert.True(Amount("14:03", Expect.Clock).UnitWasTyped);
    }

    // By hand: a limit a has the standard doubt a/√3 ([jcgm-100] 4.3.7), a standard doubt has itself.
    [Theory]
    [InlineData("10 +- 3 V", 10, 1.7320508)]
    [InlineData("10 +- 3 V std", 10, 3)]
    [InlineData("10 V", 10, 0)]
    [InlineData("~10 V", 10, 1.1547005)]
    public void An_amount_becomes_an_estimate(string text, double value, double doubt)
    {
        var estimate = Amount(text, Expect.Volts).AsEstimate("typed", CauseGroup.Claim, Guess);
        Assert.Equal(value, estimate.Value);
        Assert.Equal(doubt, estimate.StandardDoubt, 5e-8);
        Assert.All(estimate.Doubts.Causes, cause => Assert.Equal(("typed", CauseGroup.Claim), (cause.Id, cause.Group)));
        Assert.All(estimate.Doubts.Causes, cause => Assert.Equal(text.EndsWith("std", StringComparison.Ordinal), cause.Shape is Shape.Normal));
    }

    [Fact]
    public void A_range_becomes_its_middle_with_both_limits()
    {
        // By hand: 3 to 5 is 4 ± 1, and 1/√3 = 0.5773503.
        var middle = new TypedValue.Range(3, 5, Units.Volt).AsEstimate("typed", CauseGroup.Claim, Guess);
        Assert.Equal(4, middle.Value);
        Assert.Equal(0.5773503, middle.StandardDoubt, 5e-8);
    }

    [Fact]
    public void Two_values_mean_the_same_only_where_all_that_they_say_is_the_same()
    {
        var amount = new TypedValue.Amount(3.5, Units.Volt) { PlusMinus = 0.1 };
        Assert.True(amount.Means(new TypedValue.Amount(3500, Units.Millivolt) { PlusMinus = 100, Step = 5, UnitWasTyped = true }));
        Assert.True(amount.Means(amount with { Value = 3.5 * (1 + 5e-13) }));
        TypedValue[] others =
        [
            amount with { Value = 3.5 * (1 + 5e-12) }, amount with { Value = 3.4 }, amount with { Value = -3.5 }, amount with { PlusMinus = 0.2 }, amount with { IsRough = true },
            amount with { Condition = Condition.Peak }, amount with { IsStandard = true }, amount with { Unit = Units.Ampere }, new TypedValue.Range(3.4, 3.6, Units.Volt),
        ];
        Assert.All(others, other => Assert.False(amount.Means(other)));
        Assert.All(others, other => Assert.False(other.Means(amount)));
        Assert.True(new TypedValue.Amount(3, Units.Volt).Means(new TypedValue.Amount(3, Units.Volt) { IsStandard = true })); // of no limit it says nothing
        Assert.True(new TypedValue.Amount(0, Units.Volt).Means(new TypedValue.Amount(0, Units.Millivolt)));

        var range = new TypedValue.Range(3, 4, Units.Volt);
        Assert.True(range.Means(new TypedValue.Range(3000, 4000, Units.Millivolt)));
        Assert.All<TypedValue>([range with { Low = 2 }, range with { High = 5 }, range with { IsRough = true }, range with { Condition = Condition.Most }, range with { Unit = Units.Ampere }],
            other => Assert.False(range.Means(other)));
        var bound = new TypedValue.Bound(3, Units.Volt, true);
        Assert.True(bound.Means(new TypedValue.Bound(3000, Units.Millivolt, true)));
        Assert.All<TypedValue>([bound with { Value = 2 }, bound with { IsAbove = false }, bound with { Condition = Condition.Most }, bound with { Unit = Units.Ampere }], other => Assert.False(bound.Means(other)));
        Assert.True(new TypedValue.Pack(3, 2).Means(new TypedValue.Pack(3, 2)));
        Assert.False(new TypedValue.Pack(3, 2).Means(new TypedValue.Pack(2, 3)));
    }

    // By hand from the promise: all figures, as many noughts as were typed, and a nought more where three could be thousands.
    [Theory]
    [InlineData(12.5, 0.1, "12.5")]
    [InlineData(12, 0.1, "12.0")]
    [InlineData(12, 1, "12")]
    [InlineData(12, 0, "12")]
    [InlineData(12, 10, "12")]
    [InlineData(12.5, 0.01, "12.50")]
    [InlineData(1.234, 0, "1.2340")]
    [InlineData(1.2, 0.001, "1.2000")]
    [InlineData(1, 0.001, "1.0000")]
    [InlineData(1.23456, 0.1, "1.23456")]
    [InlineData(1, 1e-20, "1.000000000000000")]
    [InlineData(1e-7, 0, "1E-07")]
    public void A_number_keeps_its_noughts(double value, double step, string spelled) => Assert.Equal(spelled, TypedText.Number(value, step));

    [Fact]
    public void Every_kind_of_value_has_one_spelling()
    {
        Assert.Equal("12:34:56", Display.Spelled(new TypedValue.Amount(45296, Units.Second), Expect.Clock)); // 12·3600 + 34·60 + 56
        Assert.Equal("00:01:02.5", Display.Spelled(new TypedValue.Amount(62.5, Units.Second), Expect.Clock));
        Assert.Equal("23:59:59", Display.Spelled(new TypedValue.Amount(86399, Units.Second), Expect.Clock));
        Assert.Equal("~3", Display.Spelled(new TypedValue.Amount(3, Units.One) { IsRough = true }, Expect.Count));
        Assert.Equal("3 +- 1", Display.Spelled(new TypedValue.Amount(3, Units.Money) { PlusMinus = 1 }, Expect.Money));
        Assert.Equal("3", Display.Spelled(new TypedValue.Amount(3, Units.Money), Expect.Money));
        Assert.Equal("~3 V +- 1 V std peak", Display.Spelled(new TypedValue.Amount(3, Units.Volt) { PlusMinus = 1, IsRough = true, IsStandard = true, Condition = Condition.Peak }, Expect.Volts));
        Assert.Equal("87 % +- 2", Display.Spelled(new TypedValue.Amount(87, Units.Percent) { PlusMinus = 2 }, Expect.Percent));
        Assert.Equal("212 degF +- 5 K", Display.Spelled(new TypedValue.Amount(212, Units.Fahrenheit) { PlusMinus = 9 }, Expect.Temperature)); // nine steps of Fahrenheit are five kelvins
        Assert.Equal("delta 40 K +- 2 K", Display.Spelled(new TypedValue.Amount(40, Units.Kelvin) { PlusMinus = 2 }, Expect.Rise));
        Assert.Equal("~ 3 V to 4 V peak", Display.Spelled(new TypedValue.Range(3, 4, Units.Volt) { IsRough = true, Condition = Condition.Peak }, Expect.Volts));
        Assert.Equal("> 3 V", Display.Spelled(new TypedValue.Bound(3, Units.Volt, true), Expect.Volts));
        Assert.Equal("< 3 V max", Display.Spelled(new TypedValue.Bound(3, Units.Volt, false) { Condition = Condition.Most }, Expect.Volts).Replace("maximum", "max", StringComparison.Ordinal));
        Assert.Equal("5000000 V", Display.Spelled(new TypedValue.Amount(5, new Unit("MV", Units.Volt.Dimension, 1e6)), Expect.Volts));
        Assert.Equal("3S2P", Display.Spelled(new TypedValue.Pack(3, 2), Expect.Pack));
        Assert.Equal("3S2P full", Display.Spelled(new TypedValue.Pack(3, 2, PackVoltage.Full), Expect.Pack));
        Assert.Equal("3S2P nominal", Display.Spelled(new TypedValue.Pack(3, 2, PackVoltage.Nominal), Expect.Pack));
        Assert.Equal("+-5 %", Display.Spelled(new TypedValue.Tolerance(0.05), Expect.Tolerance));
        Assert.Equal("3 metre", Display.Spelled(new TypedValue.Amount(3, Units.Metre), Expect.Anything));
        Assert.Equal("3 m", Display.Spelled(new TypedValue.Amount(3, Units.Metre), Expect.Length));
        Assert.Equal("3 mm2", Display.Spelled(new TypedValue.Amount(3, Units.SquareMillimetre), Expect.WireSize));
        Assert.Equal(["blank", "n/a", "OL", "open", "---", "NaN"], new[] { MissingReason.Blank, MissingReason.NotTaken, MissingReason.Overload, MissingReason.Open, MissingReason.Dashes, MissingReason.NotANumber }
            .Select(why => Display.Spelled(new TypedValue.Missing(why), Expect.Volts)));
    }

    private static TypedValue.Amount Amount(string text, Expect expect) =>
        Assert.IsType<TypedValue.Amount>(Assert.IsType<Answer.Fine>(TypedValue.Read(text, expect)).Value);
}

using Heatwright.Quantities;

namespace Heatwright.Tests.Quantities;

/// <summary>Words of units and their prefixes, by hand.</summary>
public class UnitSpellingTests
{
    [Theory, InlineData("45 g"), InlineData("45000 mg"), InlineData("0.045 kg"), InlineData("45 grams"), InlineData("45 gram")]
    public void Mass_is_read_in_grams_and_what_is_made_of_them(string text) =>
        Assert.Equal(0.045, Assert.IsType<TypedValue.Amount>(Assert.IsType<Answer.Fine>(TypedValue.Read(text, Expect.Of(Units.Gram))).Value).Si, 1e-12);
}

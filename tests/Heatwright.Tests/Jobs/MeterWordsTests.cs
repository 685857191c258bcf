using Heatwright.Jobs.Trials;
using Heatwright.Trials;

namespace Heatwright.Tests.Jobs;

/// <summary>What a meter promises is told without its noughts.</summary>
public sealed class MeterWordsTests
{
    [Theory]
    [InlineData(0.5, 0.002, 0.001, "±(0.5 % + 0.002 V), steps of 0.001 V")]
    [InlineData(0, 1.5, 0.1, "±1.5 V, steps of 0.1 V")]
    [InlineData(1, 0, 0, "±1 %")]
    [InlineData(0, 0, 1, "exact, steps of 1 V")]
    public void Noughts_are_left_out(double percent, double offset, double step, string told) => Assert.Equal(told, MeterWords.Promise(new InstrumentSpec("V", percent, offset, step), "V"));
}

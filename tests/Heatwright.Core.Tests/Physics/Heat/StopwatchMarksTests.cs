using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Stopwatch marks read as bounds. The small tip is a fact of the trade: common practice, no source.</summary>
public class StopwatchMarksTests
{
    private static readonly StopwatchMark[] SmallTip =
    [
        new(6.4, MarkKind.Passed, 250, 60),
        new(6.4, MarkKind.Passed, 350, 120),
        new(6.4, MarkKind.Stuck, 360),
        new(10, MarkKind.Passed, 450),
    ];

    /// <summary>Common practice, no source: at about 6.4 W a small tip passed 250 °C after more than 1 minute and 350 °C after more than 2, stuck near
    /// 360 °C, and passed 450 °C at about 10 W.</summary>
    [Fact]
    public void Marks_of_a_small_tip_leave_both_losses_open_and_one_hold_decides()
    {
        var said = StopwatchMarks.Say(SmallTip, aroundC: 25);
        Assert.Equal([LossShape.Linear, LossShape.Radiating], said.Left);
        Assert.Equal(new SpanC(450, double.PositiveInfinity), said.PlateauC[10]);
        Assert.Equal(new SpanC(350, 370), said.PlateauC[6.4]);
        Assert.Equal(new HoldToDo(10, Decides: true), said.NextHold);
    }

    /// <summary>By hand, ±5 % of power and ±10 K: linear rests between 25 + 325·(9.5/6.72) = 484.4 and 25 + 345·(10.5/6.08) = 620.8 °C;
    /// radiating between the passed 450 and (643.15⁴ − 298.15⁴)·10.5/6.08 + 298.15⁴ = 733.05⁴ K⁴, 459.9 °C.</summary>
    [Fact]
    public void Each_shape_says_where_ten_watts_would_rest()
    {
        var shapes = StopwatchMarks.Say(SmallTip, aroundC: 25).Shapes;
        var linear = shapes.Single(shape => shape.Shape == LossShape.Linear).PlateauC[10];
        Assert.Equal(484.4, linear.LowC, 0.05);
        Assert.Equal(620.8, linear.HighC, 0.05);
        var radiating = shapes.Single(shape => shape.Shape == LossShape.Radiating).PlateauC[10];
        Assert.Equal(450, radiating.LowC, 1e-9);
        double byHand = Math.Pow(((Math.Pow(643.15, 4) - Math.Pow(298.15, 4)) * 10.5 / 6.08) + Math.Pow(298.15, 4), 0.25) - 273.15;
        Assert.Equal(byHand, radiating.HighC, 1e-6);
        Assert.True(linear.ApartFrom(radiating));
    }

    /// <summary>What 'about' and 'near' mean decides: with ±2 % and ±3 K, by hand (636.15⁴ − 298.15⁴)·10.2/6.272 gives 440 °C, below the 450 that was passed.</summary>
    [Fact]
    public void Sharper_readings_would_have_rejected_pure_radiation()
    {
        var said = StopwatchMarks.Say(SmallTip, aroundC: 25, powerShare: 0.02, nearK: 3);
        Assert.Equal([LossShape.Linear], said.Left);
        Assert.Null(said.NextHold);
    }

    /// <summary>'After more than' bounds the heat capacity from below and nothing else. By hand for the linear shape at the weakest loss and power.</summary>
    [Fact]
    public void Times_that_were_only_exceeded_reject_nothing()
    {
        StopwatchMark[] slower = [.. SmallTip.Select(mark => mark with { TimeS = 100 * mark.TimeS })];
        Assert.Equal([LossShape.Linear, LossShape.Radiating], StopwatchMarks.Say(slower, 25).Left);
        double once = StopwatchMarks.Say(SmallTip, 25).Shapes[0].CapacityAtLeastJPerK;
        Assert.True(once > 0);
        Assert.Equal(100 * once, StopwatchMarks.Say(slower, 25).Shapes[0].CapacityAtLeastJPerK, 1e-6 * 100 * once);
    }

    /// <summary>Two plateaus that were waited for do reject: 5.00 W at 298 °C and 8.45 W at 391 °C is neither linear (486 °C) nor pure radiation (380 °C).</summary>
    [Fact]
    public void Plateaus_that_were_waited_for_reject_what_does_not_fit()
    {
        StopwatchMark[] two = [new(5.00, MarkKind.Stuck, 298), new(8.45, MarkKind.Stuck, 391)];
        Assert.Empty(StopwatchMarks.Say(two, 25, powerShare: 0.01, nearK: 2).Left);
        Assert.Equal([LossShape.Radiating], StopwatchMarks.Say(two, 25, powerShare: 0.05, nearK: 7).Left);
    }

    /// <summary>Marks of a tool made up here: linear, 0.02 W/K, 2 J/K, 8 W. By hand: 100 s constant, rests at 425 °C, is at 25 + 400(1 − e^(−1)) = 277.8 °C after 100 s.</summary>
    [Fact]
    public void A_temperature_read_at_a_time_is_kept_by_the_true_shape()
    {
        StopwatchMark[] marks = [new(8, MarkKind.At, 277.8, 100), new(8, MarkKind.At, 400, 277), new(8, MarkKind.Stuck, 425)];
        var sharp = StopwatchMarks.Say(marks, 25, powerShare: 0.01, nearK: 2, timeShare: 0.02);
        Assert.Equal([LossShape.Linear], sharp.Left);

        // A reading that comes too late for any heat capacity that keeps the other rejects both.
        StopwatchMark[] wrong = [marks[0], marks[1] with { TimeS = 900 }, marks[2]];
        Assert.Empty(StopwatchMarks.Say(wrong, 25, powerShare: 0.01, nearK: 2, timeShare: 0.02).Left);
    }

    [Fact]
    public void Without_an_open_power_the_next_hold_is_half_as_much_again()
    {
        StopwatchMark[] one = [new(6, MarkKind.Stuck, 300)];
        var said = StopwatchMarks.Say(one, 25);
        Assert.Equal(2, said.Left.Count());
        Assert.Equal(9, said.NextHold!.PowerW, 1e-12);

        // By hand, ±5 % and ±10 K: linear at least 25 + 265·8.55/6.3 = 384.6 °C; radiating at most (583.15⁴ − 298.15⁴)·9.45/5.7 + 298.15⁴ = 657.2⁴ K⁴, 384.0 °C.
        Assert.True(said.NextHold.Decides);

        // ±12 K: 381.9 against (585.15⁴ − 298.15⁴)·9.45/5.7 + 298.15⁴ = 659.5⁴ K⁴, 386.4 °C: they overlap.
        Assert.False(StopwatchMarks.Say(one, 25, nearK: 12).NextHold!.Decides);
    }

    [Fact]
    public void Impossible_marks_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => StopwatchMarks.Say([new(0, MarkKind.Stuck, 300)], 25));
        Assert.Throws<ArgumentOutOfRangeException>(() => StopwatchMarks.Say([new(5, MarkKind.Stuck, 30)], 25));
    }

    /// <summary>Seen to pass 100 °C and no more: the plateau lies there or anywhere above, without end.</summary>
    [Fact]
    public void A_mark_only_passed_leaves_the_plateau_open_above()
    {
        MarksSay say = StopwatchMarks.Say([new StopwatchMark(10, MarkKind.Passed, 100, 60)], 25);
        Assert.All(say.Shapes, shape =>
        {
            Assert.True(shape.Fits);
            Assert.Equal(100, shape.PlateauC[10].LowC, 1e-9);
            Assert.Equal(0, shape.CapacityAtLeastJPerK);      // its plateau may lie so near that any heat capacity took as long
            Assert.Equal(double.PositiveInfinity, shape.PlateauC[10].HighC);
        });
        Assert.Equal(new SpanC(100, double.PositiveInfinity), say.PlateauC[10]);
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        StopwatchMark[] marks = [new(10, MarkKind.Stuck, 100)];
        Printed.Refuses("powerShare", () => StopwatchMarks.Say(marks, 25, powerShare: 0.91));
        Printed.Refuses("powerShare", () => StopwatchMarks.Say(marks, 25, powerShare: -0.01));
        Printed.Refuses("nearK", () => StopwatchMarks.Say(marks, 25, nearK: -1));
        Printed.Refuses("timeShare", () => StopwatchMarks.Say(marks, 25, timeShare: 0.91));
        Printed.Refuses("marks", () => StopwatchMarks.Say([new(0, MarkKind.Stuck, 100)], 25));
        Printed.Refuses("marks", () => StopwatchMarks.Say([new(10, MarkKind.Stuck, 35)], 25));       // within 'near' of the air
        Assert.Single(StopwatchMarks.Say([new(10, MarkKind.Stuck, 35.1)], 25).PlateauC);
    }

    /// <summary>Two spans lie apart only with a gap between them.</summary>
    [Theory]
    [InlineData(10, 20, 20.1, 30, true)]
    [InlineData(20.1, 30, 10, 20, true)]
    [InlineData(10, 20, 20, 30, false)]
    [InlineData(20, 30, 10, 20, false)]
    [InlineData(10, 20, 12, 15, false)]
    public void Spans_apart(double low, double high, double otherLow, double otherHigh, bool apart) => Assert.Equal(apart, new SpanC(low, high).ApartFrom(new SpanC(otherLow, otherHigh)));

    /// <summary>10 W, almost without loss: 25 K after 10 s and 50 K after t. Heat capacities 0.9 to 1.1 times 4 J/K by the first, 0.9 to 1.1 times t/5 by the second; a loss only makes the second
    /// time longer. So t must be at least 20·0.9/1.1 = 16.36 s. Where each mark is known to 5 K only: 30 K at the most by the first, 45 K at the least by the second, 0.9/30 against 1.1·t/450: 12.27 s.</summary>
    [Theory]
    [InlineData(16.2, 0, false)]
    [InlineData(16.6, 0, true)]
    [InlineData(20, 0, true)]
    [InlineData(12.1, 5, false)]
    [InlineData(12.5, 5, true)]
    public void Two_times_must_allow_one_heat_capacity(double laterS, double nearK, bool fits)
    {
        MarksSay say = StopwatchMarks.Say([new(10, MarkKind.At, 50, 10), new(10, MarkKind.At, 75, laterS)], 25, powerShare: 0, nearK: nearK, timeShare: 0.1);
        Assert.All(say.Shapes, shape => Assert.Equal(fits, shape.Fits));
        Assert.All(say.Shapes, shape => Assert.InRange(shape.CapacityAtLeastJPerK, fits ? 2 : 0, fits ? 3.601 : 0));
    }
}

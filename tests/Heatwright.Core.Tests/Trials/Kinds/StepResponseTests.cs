using System.Globalization;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>One and two bodies under powers that change. Every expected value from the exponentials of a step, worked out beside it: 20 K/W, 100 s, air at 20 °C.</summary>
public sealed class StepResponseTests
{
    private static TrialSheet Sheet(double[] time, double[] watts, double start = 20, double? off = null, double own = 0, params SharedError[] shared)
    {
        var settings = new Dictionary<string, (double, double)>(StringComparer.Ordinal) { ["air"] = (20, 0) };
        if (off is { } at)
        {
            settings["off"] = (at, 0);
        }

        return new(TrialCard.Find("warm-up")!, [.. Enumerable.Range(1, time.Length)], new(StringComparer.Ordinal) { ["time"] = time, ["watts"] = watts, ["degrees"] = [.. time.Select(_ => start)] },
            new(StringComparer.Ordinal) { ["degrees"] = [.. time.Select(_ => own)] }, [], settings, shared);
    }

    private static double[] Rise(TrialSheet sheet, double fast = 0, double delay = 0, PowerHeld held = PowerHeld.Mean) => [.. StepResponse.Rise(sheet, 20, 100, fast, delay, held).Select(c => c - 20)];

    private static double E(double power) => Math.Exp(power);

    private static void Agree(double[] expected, double[] found)
    {
        Assert.Equal(expected.Length, found.Length);
        Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First, pair.Second, 1e-4));
    }

    [Theory, InlineData("0 1 2", "0-3"), InlineData("0 1 1 2", "0-4"), InlineData("0 1 0 1 2", "0-2 2-5"), InlineData("5 4 3", "0-1 1-2 2-3"), InlineData("7", "0-1")]
    public void A_time_that_goes_back_begins_a_run(string times, string runs) =>
        Assert.Equal(runs, string.Join(' ', StepResponse.Runs(Sheet([.. times.Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture))], [.. times.Split(' ').Select(_ => 1.0)])).Select(run => $"{run.From}-{run.To}")));

    [Fact]
    public void A_steady_power_warms_one_body_by_its_exponential()
    {
        Agree([0, 200 * (1 - E(-0.5)), 200 * (1 - E(-1)), 200 * (1 - E(-3))], Rise(Sheet([0, 50, 100, 300], [10, 10, 10, 10])));

        // A log that begins at 50 s began cold at 0 s; one that begins before 0 s is warm by then.
        Agree([200 * (1 - E(-0.5)), 200 * (1 - E(-1))], Rise(Sheet([50, 100], [10, 10], start: 90)));
        Agree([0, 200 * (1 - E(-0.1)), 200 * (1 - E(-1.1))], Rise(Sheet([-10, 0, 100], [10, 10, 10])));
    }

    /// <summary>Two in a row: 1 − (100·e^(−t/100) − 20·e^(−t/20))/80. Two alike: 1 − (1 + t/100)·e^(−t/100), and so all but do two that are nearly alike.</summary>
    [Fact]
    public void A_second_body_follows_late()
    {
        double Two(double t) => 200 * (1 - (((100 * E(-t / 100)) - (20 * E(-t / 20))) / 80));
        Agree([0, Two(10), Two(100)], Rise(Sheet([0, 10, 100], [10, 10, 10]), fast: 20));
        Agree([0, Two(10), Two(100)], [.. StepResponse.Rise(Sheet([0, 10, 100], [10, 10, 10]), 20, 20, 100, 0).Select(c => c - 20)]);
        double Alike(double t) => 200 * (1 - ((1 + (t / 100)) * E(-t / 100)));
        Agree([0, Alike(50), Alike(200)], Rise(Sheet([0, 50, 200], [10, 10, 10]), fast: 100));
        Assert.Equal(Alike(50), Rise(Sheet([0, 50], [10, 10]), fast: 100.01)[1], 0.02);
        Assert.Equal(1.5 * E(-0.5), Curves.Late(50, 100, 100), 1e-12);
        Assert.Equal(1.5 * E(-0.5), Curves.Late(50, 100, 100.01), 1e-4);
        Assert.Equal(((100 * E(-0.5)) - (20 * E(-2.5))) / 80, Curves.Late(50, 100, 20), 1e-12);
        Assert.Equal(E(-0.5), Curves.Late(50, 100, 0), 1e-12);
    }

    /// <summary>Off at 100 s: what was reached falls by e^(−t/100), whatever watts stand behind; the largest counts before.</summary>
    [Fact]
    public void Switched_off_it_cools()
    {
        Agree([0, 200 * (1 - E(-1)), 200 * (1 - E(-1)) * E(-0.5)], Rise(Sheet([0, 100, 150], [10, 9, 0], off: 100)));
        Agree([0, 200 * (1 - E(-1)) * E(-0.5)], Rise(Sheet([0, 150], [10, 10], off: 100)));

        // Behind a dead time of 30 s all of it comes 30 s later.
        Agree([0, 0, 200 * (1 - E(-0.2)), 200 * (1 - E(-1)), 200 * (1 - E(-1)) * E(-0.5)], Rise(Sheet([0, 20, 50, 130, 180], [10, 10, 10, 10, 0], off: 100), delay: 30));
        Agree([0, 0, 200 * (1 - E(-0.2))], Rise(Sheet([0, 20, 50], [10, 10, 10]), delay: 30));
    }

    /// <summary>0 W at 0 s, 10 W at 10 s and 20 s: between the first two 5 W, none or 10 W, as it is held. Each of 10 s takes the way to its rest by 1 − e^(−0.1).</summary>
    [Theory, InlineData(0, 5.0), InlineData(1, 0.0), InlineData(2, 10.0)]
    public void Between_two_readings_a_power_is_held_as_said(int held, double between)
    {
        double first = 20 * between * (1 - E(-0.1));
        double second = first + ((200 - first) * (1 - E(-0.1)));
        Agree([0, first, second], Rise(Sheet([0, 10, 20], [0, 10, 10]), held: (PowerHeld)held));

        // Behind 5 s of dead time the change comes 5 s later.
        double late = 20 * between * (1 - E(-0.05)), then = (late + ((20 * between) - late) * (1 - E(-0.05)));
        Agree([0, late, then + ((200 - then) * (1 - E(-0.05)))], Rise(Sheet([0, 10, 20], [0, 10, 10]), delay: 5, held: (PowerHeld)held));
    }

    [Fact]
    public void Each_run_begins_for_itself() =>
        Agree([0, 200 * (1 - E(-1)), 0, 100 * (1 - E(-1))], Rise(Sheet([0, 100, 0, 100], [10, 10, 5, 5])));

    /// <summary>A first temperature counts as the air within 3 of its own doubts and 1 + √3 = 2.732 times what the thermometer shares: 3·0.5 is 1.5 K; 2.732·1 K; 2.732·1 % of 20.56 °C is 0.562; 2.732·0.1·√21.26 is 1.2597.</summary>
    [Theory]
    [InlineData(40, 0, 0, 0, 0, true), InlineData(10, 0, 0, 0, 0, true), InlineData(21.5, 0.5, 0, 0, 0, false), InlineData(21.6, 0.5, 0, 0, 0, true), InlineData(18.4, 0.5, 0, 0, 0, true), InlineData(22.7, 0, 1, 0, 0, false), InlineData(22.8, 0, 1, 0, 0, true)]
    [InlineData(20.55, 0, 0, 0.01, 0, false), InlineData(20.58, 0, 0, 0.01, 0, true), InlineData(21.25, 0, 0, 0, 0.1, false), InlineData(21.28, 0, 0, 0, 0.1, true), InlineData(24.2, 0.5, 1, 0, 0, false), InlineData(24.3, 0.5, 1, 0, 0, true)]
    public void A_warm_start_counts_where_it_is_no_slip_of_the_thermometer(double start, double own, double offset, double gain, double both, bool counts)
    {
        SharedError[] shared = [new(Cause.Normal("probe", CauseGroup.Instrument), "degrees", gain, offset, both), new(Cause.Normal("meter", CauseGroup.Instrument), "watts", 0.5, 50, 3)];
        double from = counts ? start - 20 : 0;
        Agree([from, from * E(-0.5)], Rise(Sheet([0, 50], [0, 0], start, null, own, shared)));
        Agree([from, from * ((100 * E(-0.5)) - (20 * E(-2.5))) / 80], Rise(Sheet([0, 50], [0, 0], start, null, own, shared), fast: 20)); // both start warm, each falls by its own
    }
}

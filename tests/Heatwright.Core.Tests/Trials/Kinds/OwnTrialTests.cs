using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>A maker's own trial by a law of the quick sums.</summary>
public sealed class OwnTrialTests
{
    /// <summary>What a trial is called says all of it: the same words make the same trial again.</summary>
    [Theory]
    [InlineData("own-line by heater-ohms", "own-line by heater-ohms")]
    [InlineData("Own-Line by heater-ohms of heater-ohms", "own-line by heater-ohms")]
    [InlineData("own-line by ohms-law of current for resistance", "own-line by ohms-law of current for resistance")]
    [InlineData("own-line by heater-ohms for cold as ohms,slope", "own-line by heater-ohms for cold as ohms, slope")]
    [InlineData("own-line by heater-ohms for cold as cold", "own-line by heater-ohms for cold")]
    public void Its_name_is_all_of_it(string written, string name)
    {
        var own = OwnTrial.Find(written)!;
        Assert.Equal(name, own.Name);
        Assert.Equal(name, OwnTrial.Find(own.Name)!.Name);
        Assert.Equal(name, TrialCard.Find(written)!.Name);
    }

    [Theory]
    [InlineData("own-line")]
    [InlineData("cold-ohms")]
    [InlineData("own-line by no-such-law")]
    [InlineData("own-line by heater-ohms of watts")]
    [InlineData("own-line by heater-ohms for cald")]
    [InlineData("own-line by heater-ohms for cold, cald")]
    public void Another_kind_or_one_that_tells_none_is_none(string written) => Assert.Null(OwnTrial.Find(written));

    /// <summary>ohms = cold·(1 + slope·(T - 20 °C)): columns for the result and each number, the number that is read last not among the settings that must be said.</summary>
    [Fact]
    public void Its_card_names_the_numbers_of_the_law()
    {
        var card = OwnTrial.Find("own-line by heater-ohms for cold as ohms")!.Card;
        Assert.Equal(["heater ohms", "cold", "slope", "at", "cold at"], card.Columns.Select(column => column.Name));
        Assert.Equal(["heater ohms"], card.Columns.Where(column => column.Needed).Select(column => column.Name));
        Assert.Equal(["Ω", "Ω", "1/K", "°C", "°C"], card.Columns.Select(column => column.Unit));
        Assert.All(card.Settings, setting => Assert.False(setting.Needed));
        Assert.Equal(["ohms"], card.Finds);
        Assert.Equal(1, card.Fewest);
    }

    /// <summary>By hand: 2.4 Ω at 70 °C with 4e-3/K from 20 °C is 2.4/1.2 = 2 Ω cold.</summary>
    [Fact]
    public void A_number_that_is_said_is_not_sought()
    {
        var answer = Given.Fit("own-line by heater-ohms for cold as ohms", [("heater ohms", [2.4, 2.4]), ("at", [70, 70])], [("slope", 4e-3)]);
        Assert.Equal(2, answer.Value("ohms"), 1e-6);
        Assert.Single(answer.Findings);
        Assert.StartsWith("Law: ", answer.Says[0], StringComparison.Ordinal);
    }

    /// <summary>Two readings at one temperature leave open how cold ohms and slope share what was read; at two temperatures nothing is open, and by hand 2.4 and 2.8 Ω are 2 Ω and 4e-3/K.</summary>
    [Fact]
    public void What_the_readings_leave_open_is_asked_for()
    {
        var open = Given.Fit("own-line by heater-ohms", [("heater ohms", [2.4, 2.41, 2.39]), ("at", [70, 70, 70])]);
        Assert.Empty(open.Findings);
        Assert.Equal("These readings do not tell cold and slope: many values of them fit alike.", open.Says[1]);
        Assert.Equal("Take readings at other at, or say one of them with the run.", Assert.Single(open.Next));
        var told = Given.Fit("own-line by heater-ohms", [("heater ohms", [2.4, 2.8, 2.8]), ("at", [70, 120, 120])]);
        Assert.Empty(told.Next);
        Assert.Equal(2, told.Value("cold"), 1e-6);
        Assert.Equal(4e-3, told.Value("slope"), 1e-8);
        Assert.DoesNotContain(told.Says, says => says.Contains("right law", StringComparison.Ordinal));
    }

    /// <summary>Of y = √a·b·x readings tell √a·b only, however small a is; a law that has no value below nothing is not asked there.</summary>
    [Fact]
    public void Two_numbers_that_only_act_together_are_left_open_however_small_they_are()
    {
        var law = new OwnLaw("root", "y", ["x"], [new("a", Units.One, 1e-8, 0, 1), new("b", Units.One, 1, 0, 10)], of => Math.Sqrt(of("a")) * of("b") * of("x"));
        var answer = OwnLawFit.Run(BenchFitTests.Sheet([1, 2, 3, 4], [1e-4, 2e-4, 3e-4, 4e-4], 1e-7), law).Value;
        Assert.Equal("These readings do not tell a and b: many values of them fit alike.", Assert.Single(answer.Says));
        Assert.Empty(answer.Findings);
    }

    /// <summary>y = sin(x/a) has a valley at many an a; the one of 1e-3 lies three decades under the usual size, and is where the law fits.</summary>
    [Fact]
    public void A_number_is_looked_for_decades_off_its_usual_size()
    {
        double[] x = [5e-4, 1e-3, 1.5e-3, 2e-3, 2.5e-3, 3e-3, 4e-3, 5e-3];
        var law = new OwnLaw("swing", "y", ["x"], [new("a", Units.One, 1, 1e-9, 10)], of => Math.Sin(of("x") / of("a")));
        var answer = OwnLawFit.Run(BenchFitTests.Sheet(x, [.. x.Select(at => Math.Sin(at / 1e-3))], 1e-3), law).Value;
        Assert.Equal(1e-3, answer.Value("a"), 1e-8);
    }

    /// <summary>One number that is neither read nor said is sought, by hand 2.4 Ω/1.2. What a number is to be called may hold any word.</summary>
    [Fact]
    public void The_one_number_that_is_left_is_found_and_is_called_as_wished()
    {
        Assert.Equal(2, Given.Fit("own-line by heater-ohms", [("heater ohms", [2.4, 2.4]), ("at", [70, 70])], [("slope", 4e-3)]).Value("cold"), 1e-6);
        Assert.Equal("ohms for the day", Assert.Single(OwnTrial.Find("own-line by heater-ohms for cold as ohms for the day")!.Sought!).As);
    }

    [Fact]
    public void What_is_lacking_or_told_twice_is_said()
    {
        Assert.Contains("slope (", Refused("own-line by heater-ohms for cold", [("heater ohms", [2.4]), ("at", [70])], []), StringComparison.Ordinal);
        Assert.Contains("'slope' is read or said", Refused("own-line by heater-ohms for cold, slope", [("heater ohms", [2.4]), ("at", [70])], [("slope", 4e-3)]), StringComparison.Ordinal);
        Assert.Contains("none is left to find", Refused("own-line by heater-ohms", [("heater ohms", [2.4]), ("at", [70]), ("cold", [2])], [("slope", 4e-3)]), StringComparison.Ordinal);
    }

    private static string Refused(string kind, (string, double[])[] columns, (string, double)[] settings) =>
        string.Join(" ", TrialFits.Run(kind, Given.Readings(kind, columns, settings)).Problems.Select(problem => problem.What));
}

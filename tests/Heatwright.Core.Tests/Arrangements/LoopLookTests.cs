using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Arrangements;

/// <summary>The loop of three cells on a heater, from what is known of each: every ohm by hand.</summary>
public sealed class LoopLookTests
{
    private static Part Known(string id, PartKind kind, params StatedValue[] stated) => new(new(id), kind, id, stated);

    private static StatedValue Ohms(double ohms) => new(PartQuantities.Ohms, ohms, "Ω", 0, "measured", "");

    private static Shelf Shelf(params PartFindings[] found) => new(
    [
        Known("cell", PartKind.Cell), Known("rod", PartKind.Heater, Ohms(4.1)), Known("holder", PartKind.Contacts, Ohms(0.02)), Known("mos", PartKind.Switch, Ohms(0.009)), Known("wire", PartKind.Leads, Ohms(0.021)), Known("grip", PartKind.Handle),
    ], found);

    private static readonly Arrangement Three = new(new("a"), "A", "three", new("cell"), 3, 1, new("mos"), new("wire"), new("holder"), 6, new("grip")) { Heater = new("rod") };

    private static readonly Trial Step = new(new("step"), TrialKind.Pulse, new("cell"), [new(new("step-1"), [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", "")],
        [new(1, ["0", "4.0", "0"]), new(2, ["4.9", "4.0", "0"]), new(3, ["5.1", "3.94", "2"]), new(4, ["14.9", "3.916", "2"])])]);

    /// <summary>Three cells of 42 mΩ after 10 s are 126 mΩ, and of 30 mΩ at once 90 mΩ; the rest of the loop is 6 · 20 + 9 + 21 mΩ.</summary>
    [Fact]
    public void The_ohms_of_a_pulse_run_are_those_of_the_loop()
    {
        var shelf = Shelf(PartBench.One(new(new("cell"), PartKind.Cell, "cell", []), [Step], new([])));
        var look = LoopLook.Of(Three, shelf, 20);
        Assert.Equal(0.126, look.Steps[0].Ohms.Si, 1e-9);
        Assert.IsType<Origin.Fitted>(look.Steps[0].Ohms.Origin.Weakest());
        Assert.Equal(0.090, look.Full.Ohms[0].Si, 1e-9);
        Assert.Equal(0.126 + 0.150, look.Total.Si, 1e-9);
    }

    [Fact]
    public void A_temperature_coefficient_that_nobody_knows_is_named()
    {
        Assert.Contains("the temperature coefficient of rod", Assert.Single(LoopLook.Of(Three, Shelf(), 75).Guessed), StringComparison.Ordinal);
        Assert.Empty(LoopLook.Of(Three, Shelf(), 20).Guessed); // where the load is cold it counts for nothing
    }

    [Theory, InlineData("", "made for 3 cells"), InlineData("lithium ion", "made for 3 lithium ion cells")]
    public void A_board_that_is_missing_is_asked_for_by_its_cells(string chemistry, string said)
    {
        var shelf = Shelf().With([.. Shelf().Parts.Select(part => part.Kind == PartKind.Cell && chemistry.Length > 0 ? part with { Words = new Dictionary<string, string> { ["chemistry"] = chemistry } } : part)]);
        Assert.Contains(PairCheck.Of(Three, shelf, LoopLook.Of(Three, shelf, 20)), pair => pair.Problem.Next.Contains(said, StringComparison.Ordinal));
    }
}

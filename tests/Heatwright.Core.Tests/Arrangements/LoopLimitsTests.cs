using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Tests.Arrangements;

/// <summary>What a loop comes near to: each rating that is known, by hand. Examples are invented.</summary>
public sealed class LoopLimitsTests
{
    /// <summary>A protection board that stands 10 A and opens at 12 A, of which a full pack asks 9 A: 90 and 75 of 100.</summary>
    [Fact]
    public void A_protection_board_is_held_to_its_rated_current_and_to_its_trip()
    {
        static Part Of(string id, PartKind kind, params StatedValue[] stated) => new(new(id), kind, id, stated);
        static StatedValue Amps(string quantity, double value) => new(quantity, value, "A", 0, "claimed", "");
        Shelf shelf = new([Of("cell", PartKind.Cell), Of("fet", PartKind.Switch), Of("wire", PartKind.Leads), Of("holder", PartKind.Contacts), Of("grip", PartKind.Handle), Of("strip", PartKind.Heater),
            Of("board", PartKind.Supervision, Amps(PartQuantities.RatedCurrent, 10), Amps(PartQuantities.TripCurrent, 12))], []);
        Arrangement one = new(new("a"), "A", "a", new("cell"), 1, 1, new("fet"), new("wire"), new("holder"), 2, new("grip")) { Heater = new("strip"), Supervision = new("board") };
        var limits = LoopLimits.Of(one, shelf, Moment(9), Moment(8));
        Assert.Equal(["rated current of board", "trip current of board"], limits.Select(limit => limit.What));
        Assert.Equal([0.9, 0.75], limits.Select(limit => limit.Share));
    }

    /// <summary>3.8 V at a duty of 0.95 heat as 3.8·√0.95 = 3.704 V steadily do; the words say so, and without a ceiling they do not.</summary>
    [Theory, InlineData(0.95, 3.7038, ", steadily at its duty of 0.95"), InlineData(1, 3.8, "")]
    public void What_is_held_to_a_label_by_a_duty_says_so(double duty, double volts, string said)
    {
        static Part Of(string id, PartKind kind, params StatedValue[] stated) => new(new(id), kind, id, stated);
        Shelf shelf = new([Of("cell", PartKind.Cell), Of("fet", PartKind.Switch), Of("wire", PartKind.Leads), Of("holder", PartKind.Contacts), Of("grip", PartKind.Handle),
            Of("strip", PartKind.Heater, new StatedValue(PartQuantities.RatedVolts, 5, "V", 0, "claimed", ""))], []);
        Arrangement one = new(new("a"), "A", "a", new("cell"), 1, 1, new("fet"), new("wire"), new("holder"), 2, new("grip")) { Heater = new("strip"), DutyCeiling = duty };
        var limit = Assert.Single(LoopLimits.Of(one, shelf, Moment(9), Moment(8)));
        Assert.Equal(volts, limit.Is.Value, 1e-4);
        Assert.Equal($"at 8 A{said}", limit.When);
    }

    private static LoopMoment Moment(double amps)
    {
        static Estimate Exact(double value, Unit unit) => Estimate.Exact(value, unit, new Origin.Assumed("test"));
        return new($"at {amps} A", null, Exact(4.2, Units.Volt), Exact(4, Units.Volt), Exact(amps, Units.Ampere), [], [], [], null, Exact(3.8, Units.Volt), Exact(amps, Units.Ampere), Exact(3.8 * amps, Units.Watt), null, null);
    }
}

using Heatwright.Parts;

namespace Heatwright.Tests.Parts;

/// <summary>A switch with contacts is not asked for a gate, and a range is no setting.</summary>
public class HandSwitchTests
{
    private static Part Switch(string name, string type = "") => new(new("s"), PartKind.Switch, name, []) { Words = type.Length > 0 ? new Dictionary<string, string> { ["type"] = type } : [] };

    [Theory]
    [InlineData("slide switch", "", true)]
    [InlineData("little Toggle", "", true)]
    [InlineData("push-button with cap", "", true)]
    [InlineData("small relay", "", true)]
    [InlineData("the red one", "rocker", true)]
    [InlineData("small transistor switch", "", false)]
    [InlineData("switch board", "", false)]
    [InlineData("slide-in switch board with MOSFET", "", false)]
    public void A_switch_with_contacts_is_asked_for_ohms_and_amps_and_not_for_a_gate(string name, string type, bool contacts)
    {
        string[] asked = [.. PartNeeds.Missing(Switch(name, type), _ => false).Select(need => need.Quantity)];
        Assert.Equal(!contacts, asked.Contains(PartQuantities.GateVolts));
        Assert.Contains(PartQuantities.Ohms, asked);
        Assert.Contains(PartQuantities.RatedCurrent, asked);
    }

    [Fact]
    public void A_relay_is_not_moved_by_hand() => Assert.Equal((true, false), (HandSwitch.HasContacts(Switch("small relay")), HandSwitch.IsMovedByHand(Switch("small relay"))));

    [Fact]
    public void A_listing_of_a_slide_switch_is_one_of_a_switch_and_says_its_kind()
    {
        var found = ListingReader.Read("Mini slide switch, 3 A 12 V DC, 2 positions").Value;
        Assert.Equal(PartKind.Switch, found.Kind);
        Assert.Equal("slide", found.Words["type"]);
    }

    /// <summary>Invented texts; what they claim written down by hand.</summary>
    [Theory]
    [InlineData("Step-up module up to 12 V", PartQuantities.MostOutputVolts)]
    [InlineData("Step-up module, output up to 12V", PartQuantities.MostOutputVolts)]
    [InlineData("Boost module. Max output 12V", PartQuantities.MostOutputVolts)]
    [InlineData("Boost module, max input: 12V", PartQuantities.MostInputVolts)]
    [InlineData("Boost module, output 12V", PartQuantities.SetVolts)]
    [InlineData("Boost module 12V", PartQuantities.SetVolts)]
    public void Up_to_is_the_end_of_a_range_and_no_setting(string text, string quantity)
    {
        var claim = Assert.Single(ListingReader.Read(text, PartKind.StepUp).Value.Claims);
        Assert.Equal((quantity, 12.0), (claim.Quantity, claim.Value));
    }
}

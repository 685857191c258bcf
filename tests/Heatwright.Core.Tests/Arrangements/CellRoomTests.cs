using Heatwright.Arrangements;
using Heatwright.Parts;

namespace Heatwright.Tests.Arrangements;

/// <summary>Room of a cell in the handle, with the holder it sits in.</summary>
public sealed class CellRoomTests
{
    private static CellRoom Room(string contacts, int touches, (string Quantity, double Mm)[] ofCell, params (string Quantity, double Mm)[] ofContacts)
    {
        static Part Part(string id, PartKind kind, string name, (string Quantity, double Mm)[] stated) => new(new(id), kind, name, [.. stated.Select(one => new StatedValue(one.Quantity, one.Mm, "mm", 0, "measured", "callipers"))]);
        var tool = new Arrangement(new("A"), "A", "A", new("cell"), 2, 1, new("switch"), new("leads"), new("contacts"), touches, new("handle"));
        return CellRoom.Of(tool, new Shelf([Part("cell", PartKind.Cell, "cell", ofCell), Part("contacts", PartKind.Contacts, contacts, ofContacts)], []));
    }

    private static readonly (string, double)[] Cell = [(PartQuantities.Length, 65), (PartQuantities.Diameter, 18.4)];

    private static readonly (string, double)[] Holder = [(PartQuantities.Length, 78), (PartQuantities.Width, 21), (PartQuantities.Height, 20)];

    [Fact]
    public void On_tabs_a_cell_takes_its_own_room()
    {
        var room = Room("welded tabs", 4, Cell);
        Assert.Equal((0.065, 0.0184, ""), (Math.Round(room.LengthM, 9), Math.Round(room.AcrossM, 9), room.Assumed));
        Assert.False(room.InHolder);
    }

    [Fact]
    public void A_size_that_nobody_stated_is_told_as_assumed() => Assert.Equal("length and width", Room("welded tabs", 4, []).Assumed);

    /// <summary>By hand: 65 + 12 mm long, 18.4 + 2.5 mm across.</summary>
    [Fact]
    public void A_holder_without_a_size_takes_springs_and_walls_more()
    {
        var room = Room("spring holder", 4, Cell);
        Assert.Equal(0.077, room.LengthM, 1e-9);
        Assert.Equal(0.0209, room.AcrossM, 1e-9);
        Assert.Equal((true, "length and width"), (room.InHolder, room.Assumed));
    }

    /// <summary>By hand: 21 and 20 mm across are 29 mm from corner to corner.</summary>
    [Fact]
    public void What_a_holder_states_counts()
    {
        var room = Room("spring holder", 4, Cell, Holder);
        Assert.Equal((0.078, 0.021, 0.020, ""), (Math.Round(room.LengthM, 9), Math.Round(room.WidthM, 9), Math.Round(room.HeightM, 9), room.Assumed));
        Assert.Equal(0.029, room.AcrossM, 1e-9);
    }

    [Fact]
    public void A_holder_that_takes_several_cells_says_nothing_of_the_room_of_one() => Assert.Equal("length and width", Room("spring holder", 2, Cell, Holder).Assumed);

    [Fact]
    public void A_holder_shorter_than_its_cell_is_not_believed() => Assert.Equal("length", Room("spring holder", 4, Cell, (PartQuantities.Length, 20), (PartQuantities.Width, 21)).Assumed);
}

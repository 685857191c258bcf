using Heatwright.Web;

namespace Heatwright.Tests.Web;

/// <summary>Words of a picture keep clear of each other.</summary>
public sealed class PlotRoomTests
{
    /// <summary>By hand: four letters are 26.4 points wide; twelve points apart across and on one line they would lie on one another, 20 points lower they do not.</summary>
    [Fact]
    public void The_first_place_that_is_free_is_taken()
    {
        var room = new PlotRoom(0, 300);
        Assert.Equal((100, 50, "start"), room.Take("half", (100, 50, "start"), (100, 70, "start")));
        Assert.Equal((112, 70, "start"), room.Take("end", (112, 50, "start"), (112, 70, "start")));
        Assert.Equal((140, 50, "start"), room.Take("end", (140, 50, "start"), (140, 70, "start"))); // beside it there is room
    }

    [Fact]
    public void Words_do_not_run_out_of_the_picture_where_another_place_will_do()
    {
        var room = new PlotRoom(46, 352);
        Assert.Equal((340, 50, "end"), room.Take("protection opens 8", (340, 50, "start"), (340, 50, "end")));
        Assert.Equal((50, 50, "start"), room.Take("start", (50, 50, "middle"), (50, 50, "start")));
    }

    [Fact]
    public void Where_all_places_are_taken_the_least_covered_is()
    {
        var room = new PlotRoom(0, 300);
        room.Take("a long label of a limit", (10, 50, "start"));
        Assert.Equal((10, 60, "start"), room.Take("another", (10, 50, "start"), (10, 60, "start")));
    }
}

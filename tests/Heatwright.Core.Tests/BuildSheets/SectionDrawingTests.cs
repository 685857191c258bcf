using System.Globalization;
using System.Xml.Linq;
using Heatwright.BuildSheets;

namespace Heatwright.Tests.BuildSheets;

/// <summary>The section to scale: what is drawn is where the packing put it, millimetre by millimetre.</summary>
public sealed class SectionDrawingTests
{
    private static readonly PackedThing Cell = new("cell", 65, 18, 0, 46) { IsCell = true };
    private static readonly PackedThing Board = new("board", 60, 16, 4, 10);

    /// <summary>A tube of 24 mm, 120 mm long: cell from 0 to 65, 2 mm under the axis; board from 66 to 126 less 10, on the axis.</summary>
    private static readonly PackedHandle Handle = new(new(24, 0), 120, 116, [new(Cell, 0, 65, new(new(18, 0), 0, -2)), new(Board, 66, 116, new(new(16, 4), 1, 3))]);

    [Fact]
    public void One_unit_is_a_millimetre_on_paper()
    {
        var svg = Drawn(Handle).Root!;
        double[] box = [.. svg.Attribute("viewBox")!.Value.Split(' ').Select(Number)];
        Assert.Equal([0, 0, 136], box[..3]); // 120 and 8 to each side
        Assert.Equal("136mm", svg.Attribute("width")!.Value);
        Assert.Equal(box[3], Number(svg.Attribute("height")!.Value.Replace("mm", "", StringComparison.Ordinal)));
    }

    [Fact]
    public void Every_thing_is_drawn_where_it_lies()
    {
        var shapes = Drawn(Handle).Descendants().Where(one => one.Name.LocalName is "rect" or "circle").Select(one => (one.Name.LocalName, Box(one))).ToArray();

        // From the side: x = 8 + from; the axis is at 8 + 12 = 20; up is up, so 2 mm under the axis is y = 22 for the middle.
        Assert.Contains(("rect", (8, 13, 65, 18)), shapes);
        Assert.Contains(("rect", (74, 15, 50, 4)), shapes);

        // Cuts: middles at x = 8 + 12 and at 32 more, y = 8 + 24 + 16 + 12 = 60.
        Assert.Contains(("circle", (11, 53, 18, 18)), shapes);
        Assert.Contains(("rect", (45, 55, 16, 4)), shapes);
        Assert.Equal(8, shapes.Length); // these, paper, handle and the two cuts through it
    }

    /// <summary>46·32.5 + 10·91 over 56 g: 42.946 mm from the cool end.</summary>
    [Fact]
    public void The_balance_point_is_where_the_masses_put_it()
    {
        // The handle is drawn from 8 to 32: the line stands above and below it and leaves the numbers inside free.
        Assert.Equal("M50.95 5.5V8M50.95 32v2.6", Assert.Single(Drawn(Handle).Descendants(), one => one.Attribute("d")?.Value.StartsWith("M50.95 ", StringComparison.Ordinal) == true).Attribute("d")!.Value);
        Assert.Contains("balance 42.95", SectionDrawing.Svg(Handle, "x"), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_drawn_outside_the_paper_even_of_a_short_wide_handle()
    {
        PackedHandle[] handles = [Handle, new(new(60, 30), 40, 40, [new(Board, 0, 16, new(new(4, 16), 10, -5))]), HandlePacking.Shortest(new(44, 0), 170, [Cell, Cell with { Name = "second" }, Board], 1, 30)!];
        Assert.All(handles, handle =>
        {
            var svg = Drawn(handle).Root!;
            double[] paper = [.. svg.Attribute("viewBox")!.Value.Split(' ').Select(Number)];
            Assert.All(svg.Descendants().Where(one => one.Name.LocalName is "rect" or "circle").Select(Box), box =>
            {
                Assert.InRange(box.X, 0, paper[2] - box.W + 0.01);
                Assert.InRange(box.Y, 0, paper[3] - box.H + 0.01);
            });
        });
    }

    [Fact]
    public void A_size_that_nobody_stated_is_marked()
    {
        var guessed = Handle with { Assumed = "length", Places = [Handle.Places[0], Handle.Places[1] with { Thing = Board with { Assumed = "height" } }] };
        string[] words = Words(guessed);
        Assert.Contains("120 (length of the handle assumed)", words);
        Assert.Equal((2, 2), (words.Count(word => word == "1"), words.Count(word => word == "2*"))); // from the side, and in its own cut
        Assert.Contains(words, word => word.EndsWith("* size assumed", StringComparison.Ordinal));
        Assert.DoesNotContain(Words(Handle), word => word.Contains('*', StringComparison.Ordinal) || word.Contains("assumed", StringComparison.Ordinal));
    }

    /// <summary>Two cells side by side, seen from the side one behind the other: their numbers stand beside one another.</summary>
    [Fact]
    public void No_number_stands_on_another()
    {
        var both = Handle with { Hole = new(40, 0), Places = [new(Cell, 0, 65, new(new(18, 0), -9, 0)), new(Cell with { Name = "second" }, 0, 65, new(new(18, 0), 9, 0)), new(Board, 66, 116, new(new(16, 4), 1, 3))] };
        var labels = Drawn(both).Descendants().Where(one => one.Name.LocalName == "text" && one.Value is "1" or "2").Select(one => (X: Number(one.Attribute("x")!.Value), Y: Number(one.Attribute("y")!.Value))).Take(2).ToArray();
        Assert.True(Math.Abs(labels[0].X - labels[1].X) > 4, $"{labels[0]} {labels[1]}");
        Assert.All(labels, label => Assert.InRange(label.X, 8, 73));
    }

    private static string[] Words(PackedHandle handle) => [.. Drawn(handle).Descendants().Where(one => one.Name.LocalName == "text").Select(one => one.Value)];

    [Fact]
    public void A_title_with_signs_of_markup_stays_words() =>
        Assert.Equal("<rope & \"foam\">, 3 mm", (string)XDocument.Parse(SectionDrawing.Svg(Handle, "<rope & \"foam\">, 3 mm")).Root!.Attribute("aria-label")!);

    private static XDocument Drawn(PackedHandle handle) => XDocument.Parse(SectionDrawing.Svg(handle, "handle"));

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static (double X, double Y, double W, double H) Box(XElement one)
    {
        double Of(string name) => one.Attribute(name) is { } value ? Number(value.Value) : 0;
        return one.Name.LocalName == "circle" ? (Of("cx") - Of("r"), Of("cy") - Of("r"), 2 * Of("r"), 2 * Of("r")) : (Of("x"), Of("y"), Of("width"), Of("height"));
    }
}

using CsCheck;
using Heatwright.BuildSheets;

namespace Heatwright.Tests.BuildSheets;

/// <summary>Cells and boards in a handle: the shortest packing.</summary>
public sealed class HandlePackingTests
{
    private static readonly PackedThing Cell = new("cell", 65, 18, 0, 46) { IsCell = true };

    [Fact]
    public void Two_cells_in_a_narrow_tube_lie_in_line()
    {
        // By hand: 65 + 1 + 65, and 30 before the hot end.
        var found = HandlePacking.Shortest(new(20, 0), 170, [Cell, Cell with { Name = "second" }], 1, 30)!;
        Assert.Equal(161, found.UsedMm, 1e-9);
        Assert.Equal(65.5, found.BalanceMm, 1e-9);
    }

    [Fact]
    public void In_a_wide_tube_they_lie_side_by_side_with_a_board_on_top()
    {
        var found = HandlePacking.Shortest(new(44, 0), 170, [Cell, Cell with { Name = "second" }, new("board", 60, 20, 8, 10)], 1, 30)!;
        Assert.Equal(95, found.UsedMm, 1e-9);
        Assert.Equal(3, found.Places.Count(place => place.FromMm == 0));
    }

    [Fact]
    public void Two_short_boards_lie_one_behind_the_other_beside_a_cell()
    {
        var found = HandlePacking.Shortest(new(30, 0), 120, [Cell, new("left", 30, 18, 5, 5), new("right", 30, 18, 5, 5)], 1, 0)!;
        Assert.Equal(65, found.UsedMm, 1e-9);
    }

    [Fact]
    public void Three_cells_side_by_side_need_the_published_tube()
    {
        PackedThing[] cells = [.. Enumerable.Range(0, 3).Select(i => new PackedThing($"cell {i}", 50, 14, 0, 20))];
        Assert.Equal(30.2, HandlePacking.NarrowestMm(50, cells, 1, 0), 1e-9); // 2.1547 × 14 = 30.166, on a tenth
        Assert.Equal(14.0, HandlePacking.NarrowestMm(152, cells, 1, 0), 1e-9);
        Assert.Equal(double.PositiveInfinity, HandlePacking.NarrowestMm(49, cells, 1, 0));
    }

    [Fact]
    public void Nothing_lies_in_the_same_place_as_another() => Gen.Select(Gen.Int[4, 14].Array[9], Gen.Int[14, 26]).Sample(drawn =>
    {
        var (sides, tube) = drawn;
        PackedThing[] things = [.. Enumerable.Range(0, 3).Select(i => new PackedThing($"box {i}", 2 * sides[3 * i], sides[(3 * i) + 1], sides[(3 * i) + 2], 1)), new("cell", 20, 10, 0, 9) { IsCell = true }];
        var found = HandlePacking.Shortest(new(tube, 0), 100, things, 0, 0);
        return found is null || !found.Places.SelectMany((a, i) => found.Places.Skip(i + 1).Select(b => (a, b)))
            .Any(pair => pair.a.FromMm < pair.b.ToMm - 1e-6 && pair.b.FromMm < pair.a.ToMm - 1e-6 && !CrossSection.Apart(pair.a.Across, pair.b.Across));
    }, iter: 60);

    [Fact]
    public void Three_boxes_in_a_box_are_as_short_as_all_ways_tried_one_by_one() => Gen.Select(Gen.Int[1, 6].Array[9], Gen.Int[4, 8], Gen.Int[4, 8]).Sample(drawn =>
    {
        var (sides, width, height) = drawn;
        int[][] boxes = [.. Enumerable.Range(0, 3).Select(i => sides[(3 * i)..((3 * i) + 3)])];
        var found = HandlePacking.Shortest(new(width, height), 100, [.. boxes.Select((box, i) => new PackedThing($"{i}", box[0], box[1], box[2], 1))], 0, 0);
        return Math.Abs((found?.UsedMm ?? 99) - ByForce(boxes, width, height)) < 1e-9;
    }, iter: 120);

    /// <summary>Second method: three boxes can be split over stations in five ways; each box alone, each pair beside a third, all three together; pairs and threes side by side by a grid.</summary>
    private static double ByForce(int[][] boxes, int width, int height)
    {
        int[][] splits = [[0, 1, 2], [0, 0, 1], [0, 1, 0], [1, 0, 0], [0, 0, 0]];
        double best = 99;
        foreach (int[] split in splits)
        {
            double sum = split.Distinct().Sum(station => Station([.. Enumerable.Range(0, 3).Where(i => split[i] == station).Select(i => boxes[i])], width, height));
            best = Math.Min(best, sum);
        }

        return best;
    }

    /// <summary>Shortest length for boxes that all begin at one place, or follow one another in a lane as wide and high as the larger.</summary>
    private static double Station(int[][] boxes, int width, int height)
    {
        double best = 99;
        foreach (var lanes in Lanes(boxes.Length))
        {
            Walk(lanes, 0, []);
        }

        return best;

        void Walk(int[][] lanes, int at, List<(int L, int W, int H)> chosen)
        {
            if (at == lanes.Length)
            {
                int length = chosen.Max(lane => lane.L);
                if (length < best && Grids.Hold([.. chosen.Select(lane => (lane.W, lane.H))], turned: false, new bool[width, height]))
                {
                    best = length;
                }

                return;
            }

            foreach (var lane in LaneWays(lanes[at].Select(i => boxes[i]).ToArray()))
            {
                Walk(lanes, at + 1, [.. chosen, lane]);
            }
        }
    }

    private static int[][][] Lanes(int n) => n switch
    {
        1 => [[[0]]],
        2 => [[[0], [1]], [[0, 1]]],
        _ => [[[0], [1], [2]], [[0, 1], [2]], [[0, 2], [1]], [[1, 2], [0]], [[0, 1, 2]]],
    };

    private static List<(int L, int W, int H)> LaneWays(int[][] boxes)
    {
        List<(int L, int W, int H)> ways = [(0, 0, 0)];
        foreach (int[] box in boxes)
        {
            int[][] turns = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
            ways = [.. ways.SelectMany(way => turns.Select(t => (way.L + box[t[0]], Math.Max(way.W, box[t[1]]), Math.Max(way.H, box[t[2]])))).Distinct()];
        }

        return ways;
    }
}

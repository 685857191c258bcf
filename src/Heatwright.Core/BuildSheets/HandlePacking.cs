namespace Heatwright.BuildSheets;

/// <summary>Something that goes into the handle.</summary>
/// <param name="Name">What.</param>
/// <param name="LengthMm">Length; of a round thing along its axis.</param>
/// <param name="WidthMm">Width, or diameter.</param>
/// <param name="HeightMm">Height; 0: round, and it lies along the handle.</param>
/// <param name="MassG">Mass.</param>
public sealed record PackedThing(string Name, double LengthMm, double WidthMm, double HeightMm, double MassG)
{
    /// <summary>True for a cell: it goes as far from the hot end as can be.</summary>
    public bool IsCell { get; init; }

    /// <summary>Sizes of it that nobody stated, in words; empty: all are stated.</summary>
    public string Assumed { get; init; } = "";

    /// <summary>Ways it can lie: each with its length along the handle and its shape across.</summary>
    internal IEnumerable<(double Along, SectionShape Shape)> Ways() => HeightMm == 0
        ? [(LengthMm, new SectionShape(WidthMm, 0))]
        : new[] { (LengthMm, new SectionShape(WidthMm, HeightMm)), (WidthMm, new SectionShape(LengthMm, HeightMm)), (HeightMm, new SectionShape(LengthMm, WidthMm)) }.Distinct();
}

/// <summary>A thing in its place: from where to where along the handle, measured from its cool end, and where across.</summary>
public sealed record PackedPlace(PackedThing Thing, double FromMm, double ToMm, SectionPlace Across);

/// <summary>All things in a handle.</summary>
/// <param name="Hole">Inside of the handle, across.</param>
/// <param name="LengthMm">Inside length.</param>
/// <param name="UsedMm">Length used, gaps and the free length before the hot end included.</param>
/// <param name="Places">Every thing in its place.</param>
public sealed record PackedHandle(SectionHole Hole, double LengthMm, double UsedMm, IReadOnlyList<PackedPlace> Places)
{
    /// <summary>False: not all ways were tried, so a shorter one may exist.</summary>
    public bool IsProven { get; init; } = true;

    /// <summary>Sizes of the handle itself that nobody stated, in words; empty: all are stated.</summary>
    public string Assumed { get; init; } = "";

    /// <summary>Mass of what is inside, g.</summary>
    public double MassG => Places.Sum(place => place.Thing.MassG);

    /// <summary>Where it balances, from the cool end, mm.</summary>
    public double BalanceMm => MassG > 0 ? Places.Sum(place => place.Thing.MassG * 0.5 * (place.FromMm + place.ToMm)) / MassG : 0;
}

/// <summary>Looks for the shortest way to put things into a handle: stations along it, in each station things side by side or one behind the other.</summary>
/// <remarks>Exact over all ways to share the things out over stations and lanes and to turn each box, as long as the steps allowed for it last: six and more boxes of
/// different sizes can outlast them, and the packing then says that it is not proven. A thing does not reach from one station into the next.
/// Checked: HandlePackingTests.</remarks>
public sealed class HandlePacking
{
    /// <summary>More things than this are too many to try all ways.</summary>
    public const int Most = 9;

    /// <summary>Steps of placing for one search, about two seconds of work; a narrowest tube takes eleven searches of a tenth of it.</summary>
    private const int Steps = 20_000_000;

    /// <summary>Steps for one cross-section: what is not found in so many is hardly ever there.</summary>
    private const int StepsEach = 400_000;

    private readonly SectionHole hole;
    private readonly IReadOnlyList<PackedThing> things;
    private readonly double gapMm;
    private readonly Dictionary<string, IReadOnlyList<SectionPlace>?> known = [];
    private int steps;
    private bool cutShort;

    private HandlePacking(SectionHole hole, IReadOnlyList<PackedThing> things, double gapMm, int steps) => (this.hole, this.things, this.gapMm, this.steps) = (hole, things, gapMm, steps);

    /// <summary>One way to fill a station.</summary>
    private sealed record Station(double LengthMm, IReadOnlyList<(int[] Things, double[] Along)> Lanes, IReadOnlyList<SectionPlace> Across);

    /// <summary>The shortest packing of all things in a hole; null: some thing or pair does not go in across, at any length.</summary>
    /// <param name="hole">Across.</param>
    /// <param name="lengthMm">Inside length of the handle.</param>
    /// <param name="things">What goes in.</param>
    /// <param name="gapMm">Between two things along the handle.</param>
    /// <param name="hotGapMm">Kept free before the hot end.</param>
    public static PackedHandle? Shortest(SectionHole hole, double lengthMm, IReadOnlyList<PackedThing> things, double gapMm, double hotGapMm)
    {
        if (things.Count is 0 or > Most)
        {
            return things.Count == 0 ? new(hole, lengthMm, hotGapMm, []) : null;
        }

        return new HandlePacking(hole, things, gapMm, Steps).Search(lengthMm, hotGapMm);
    }

    /// <summary>The narrowest tube, on a tenth of a millimetre, that takes all things at a length; infinite where none up to the given width does.</summary>
    public static double NarrowestMm(double lengthMm, IReadOnlyList<PackedThing> things, double gapMm, double hotGapMm, double mostMm = 120)
    {
        bool Fits(int tenths) => (things.Count > Most ? null : new HandlePacking(new(tenths / 10.0, 0), things, gapMm, Steps / 10).Search(lengthMm, hotGapMm)) is { } found && found.UsedMm <= lengthMm + 1e-6;
        int low = 0, high = (int)(mostMm * 10);
        if (things.Count == 0 || !Fits(high))
        {
            return things.Count == 0 ? 0 : double.PositiveInfinity;
        }

        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = Fits(middle) ? (low, middle) : (middle, high);
        }

        return high / 10.0;
    }

    private PackedHandle? Search(double lengthMm, double hotGapMm)
    {
        int all = (1 << things.Count) - 1;
        double[] best = new double[all + 1];
        Station?[] last = new Station?[all + 1];
        int[] cameFrom = new int[all + 1];
        Array.Fill(best, double.PositiveInfinity);
        best[0] = -gapMm;
        Station?[] alone = [.. Enumerable.Range(0, things.Count).Select(i => Fill(1 << i, double.PositiveInfinity))];
        if (alone.Any(station => station is null))
        {
            return null;
        }

        for (int mask = 1; mask <= all; mask++)
        {
            int lowest = mask & -mask;
            for (int sub = mask; sub > 0; sub = (sub - 1) & mask)
            {
                if ((sub & lowest) == 0)
                {
                    continue;
                }

                // A station that is no shorter than its things one behind the other is not worth looking for.
                double apart = Indices(sub).Sum(i => alone[i]!.LengthMm + gapMm) - gapMm;
                var station = sub == lowest ? alone[(int)Math.Log2(sub)] : Filled(sub, apart);
                if (station is not null && best[mask ^ sub] + gapMm + station.LengthMm < best[mask] - 1e-9)
                {
                    (best[mask], last[mask], cameFrom[mask]) = (best[mask ^ sub] + gapMm + station.LengthMm, station, mask ^ sub);
                }
            }
        }

        List<Station> stations = [];
        for (int mask = all; mask > 0; mask = cameFrom[mask])
        {
            stations.Add(last[mask]!);
        }

        return Laid([.. stations.OrderByDescending(Cells).ThenByDescending(station => station.LengthMm)], lengthMm, best[all] + hotGapMm);
    }

    private double Cells(Station station) => station.Lanes.Sum(lane => lane.Things.Where(i => things[i].IsCell).Sum(i => things[i].MassG + 1));

    private readonly Dictionary<int, Station?> filled = [];

    private Station? Filled(int mask, double shorterThan)
    {
        if (!filled.TryGetValue(mask, out var station))
        {
            filled[mask] = station = Fill(mask, shorterThan);
        }

        return station;
    }

    private static IEnumerable<int> Indices(int mask)
    {
        for (int i = 0; mask >> i != 0; i++)
        {
            if ((mask & (1 << i)) != 0)
            {
                yield return i;
            }
        }
    }

    /// <summary>The shortest station that holds just these things, or null.</summary>
    private Station? Fill(int mask, double shorterThan)
    {
        Station? best = null;
        double limit = shorterThan;
        int[] own = [.. Indices(mask)];
        foreach (var lanes in Partitions(own, 0, []))
        {
            if (steps <= 0)
            {
                cutShort = true;
                break;
            }

            Turn(lanes, 0, [], [], 0);
        }

        return best;

        void Turn(List<List<int>> lanes, int lane, List<(int[] Things, double[] Along)> chosen, List<SectionShape> shapes, double length)
        {
            if (length >= limit - 1e-9)
            {
                return;
            }

            if (lane == lanes.Count)
            {
                if (Across(shapes) is { } places)
                {
                    best = new(length, [.. chosen], places);
                    limit = length;
                }

                return;
            }

            foreach (var (along, shape) in LaneWays(lanes[lane], 0, [], 0, 0, round: true))
            {
                chosen.Add(([.. lanes[lane]], along));
                shapes.Add(shape);
                Turn(lanes, lane + 1, chosen, shapes, Math.Max(length, along.Sum() + ((along.Length - 1) * gapMm)));
                chosen.RemoveAt(chosen.Count - 1);
                shapes.RemoveAt(shapes.Count - 1);
            }
        }
    }

    /// <summary>All ways to turn the things of a lane, with the shape that holds them all across.</summary>
    private IEnumerable<(double[] Along, SectionShape Shape)> LaneWays(List<int> lane, int at, List<double> along, double width, double height, bool round)
    {
        if (at == lane.Count)
        {
            yield return ([.. along], round ? new SectionShape(width, 0) : new SectionShape(width, height));
            yield break;
        }

        foreach (var (length, shape) in things[lane[at]].Ways())
        {
            // A round thing in a lane with boxes takes the square around it; boxes lie both ways.
            SectionShape[] ways = shape.IsRound || at == 0 ? [shape] : [shape, shape.Turned];
            foreach (var way in ways)
            {
                double h = way.IsRound ? way.WidthMm : way.HeightMm;
                along.Add(length);
                foreach (var found in LaneWays(lane, at + 1, along, Math.Max(width, way.WidthMm), Math.Max(height, h), round && way.IsRound))
                {
                    yield return found;
                }

                along.RemoveAt(along.Count - 1);
            }
        }
    }

    /// <summary>Places for shapes in their order. The same shapes in another order, or turned, are one question.</summary>
    private SectionPlace[]? Across(List<SectionShape> shapes)
    {
        if (shapes.Count > CrossSection.Most)
        {
            return null;
        }

        int[] order = [.. Enumerable.Range(0, shapes.Count).OrderBy(i => shapes[i].IsRound).ThenByDescending(i => Long(shapes[i])).ThenByDescending(i => Short(shapes[i]))];
        SectionShape[] sorted = [.. order.Select(i => shapes[i].IsRound ? shapes[i] : new SectionShape(Long(shapes[i]), Short(shapes[i])))];
        string key = string.Join(';', sorted.Select(shape => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{shape.WidthMm}x{shape.HeightMm}")));
        if (!known.TryGetValue(key, out var places))
        {
            int own = Math.Min(steps, StepsEach), left = own;
            places = sorted.Any(shape => !Alone(shape)) ? null : CrossSection.Fit(hole, sorted, ref left);
            steps -= own - left;
            cutShort |= left <= 0;
            known[key] = places;
        }

        if (places is null)
        {
            return null;
        }

        var back = new SectionPlace[shapes.Count];
        for (int i = 0; i < order.Length; i++)
        {
            back[order[i]] = places[i];
        }

        return back;
    }

    private bool Alone(SectionShape shape) => CrossSection.Inside(hole, new(shape, 0, 0)) || CrossSection.Inside(hole, new(shape.Turned, 0, 0));

    private static double Long(SectionShape shape) => shape.IsRound ? shape.WidthMm : Math.Max(shape.WidthMm, shape.HeightMm);

    private static double Short(SectionShape shape) => shape.IsRound ? 0 : Math.Min(shape.WidthMm, shape.HeightMm);

    private static IEnumerable<List<List<int>>> Partitions(int[] own, int at, List<List<int>> lanes)
    {
        if (at == own.Length)
        {
            yield return [.. lanes.Select(lane => lane.ToList())];
            yield break;
        }

        for (int lane = 0; lane <= lanes.Count && lane < CrossSection.Most; lane++)
        {
            if (lane == lanes.Count)
            {
                lanes.Add([]);
            }

            lanes[lane].Add(own[at]);
            foreach (var found in Partitions(own, at + 1, lanes))
            {
                yield return found;
            }

            lanes[lane].RemoveAt(lanes[lane].Count - 1);
            if (lanes[lane].Count == 0)
            {
                lanes.RemoveAt(lane);
            }
        }
    }

    private PackedHandle Laid(IReadOnlyList<Station> stations, double lengthMm, double usedMm)
    {
        List<PackedPlace> places = [];
        double from = 0;
        foreach (var station in stations)
        {
            for (int lane = 0; lane < station.Lanes.Count; lane++)
            {
                var (own, along) = station.Lanes[lane];
                double at = from;
                for (int i = 0; i < own.Length; i++)
                {
                    places.Add(new(things[own[i]], at, at + along[i], Shown(own[i], along[i], station.Across[lane])));
                    at += along[i] + gapMm;
                }
            }

            from += station.LengthMm + gapMm;
        }

        return new(hole, lengthMm, usedMm, places) { IsProven = !cutShort };
    }

    /// <summary>A thing in its lane: its own shape on the lane's middle, turned so that it lies inside the lane.</summary>
    private SectionPlace Shown(int thing, double along, SectionPlace lane)
    {
        double laneH = lane.Shape.IsRound ? lane.Shape.WidthMm : lane.Shape.HeightMm;
        var shape = things[thing].Ways().Where(way => way.Along == along).Select(way => way.Shape).SelectMany(one => new[] { one, one.Turned })
            .First(one => one.WidthMm <= lane.Shape.WidthMm + 1e-9 && (one.IsRound ? one.WidthMm : one.HeightMm) <= laneH + 1e-9);
        return new(shape, lane.XMm, lane.YMm);
    }
}

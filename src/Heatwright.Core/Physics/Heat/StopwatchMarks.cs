namespace Heatwright.Physics;

/// <summary>Reads stopwatch marks as bounds: which shapes of loss survive, where the plateaus can lie, and which hold would decide.</summary>
/// <remarks>One body, from cold, constant power. 'About' so many watts is a share of the power; 'near' a temperature is a number of kelvin: both are
/// arguments, because the answer hangs on them. A temperature only passed bounds the plateau from below and a time only exceeded bounds the heat
/// capacity from below: neither rejects a shape by itself. A real loss is a mixture of the shapes, so a mixture fits whenever one of them does.
/// Checked: StopwatchMarksTests.</remarks>
public static class StopwatchMarks
{
    private const int Strengths = 241;

    /// <summary>Everything the marks say.</summary>
    /// <param name="marks">What was seen.</param>
    /// <param name="aroundC">Air temperature.</param>
    /// <param name="powerShare">'About' for a power: 0.05 is ±5 %.</param>
    /// <param name="nearK">'Near' for a temperature, K.</param>
    /// <param name="timeShare">'About' for a time of an 'at' mark.</param>
    public static MarksSay Say(IReadOnlyList<StopwatchMark> marks, double aroundC, double powerShare = 0.05, double nearK = 10, double timeShare = 0.1)
    {
        Impossible.Unless(powerShare, 0, 0.9, "");
        Impossible.IfNegative(nearK, "K");
        Impossible.Unless(timeShare, 0, 0.9, "");
        foreach (var mark in marks)
        {
            Impossible.UnlessPositive(mark.PowerW, "W", nameof(marks));
            ImpossibleHeat.UnlessAbove(mark.TemperatureC - nearK, aroundC, "°C", nameof(marks));
        }

        double[] powers = [.. marks.Select(mark => mark.PowerW).Distinct().Order()];
        var open = powers.ToDictionary(power => power, power => BareSpan(marks.Where(mark => mark.PowerW == power), nearK));

        // A power that was seen but not waited for is the natural next hold; else half as much again as the strongest, far enough off to bend the line.
        double[] notHeld = [.. powers.Where(power => !marks.Any(mark => mark.PowerW == power && mark.Kind == MarkKind.Stuck))];
        double[] holds = notHeld.Length > 0 ? notHeld : [.. powers.TakeLast(1).Select(power => 1.5 * power)];
        var asked = new Dictionary<double, SpanC>(open);
        foreach (double power in holds)
        {
            asked.TryAdd(power, new SpanC(double.NegativeInfinity, double.PositiveInfinity));
        }

        ShapeLeft[] shapes = [.. Enum.GetValues<LossShape>().Select(shape => Judge(shape, marks, asked, aroundC, powerShare, nearK, timeShare))];
        return new MarksSay(shapes, open, NextHold(holds, [.. shapes.Where(shape => shape.Fits)]));
    }

    private static SpanC BareSpan(IEnumerable<StopwatchMark> marks, double nearK)
    {
        double low = double.NegativeInfinity;
        double high = double.PositiveInfinity;
        foreach (var mark in marks)
        {
            low = Math.Max(low, mark.Kind == MarkKind.Passed ? mark.TemperatureC : mark.TemperatureC - nearK);
            high = mark.Kind == MarkKind.Stuck ? Math.Min(high, mark.TemperatureC + nearK) : high;
        }

        return new SpanC(low, high);
    }

    private static ShapeLeft Judge(LossShape shape, IReadOnlyList<StopwatchMark> marks, Dictionary<double, SpanC> open, double aroundC, double powerShare, double nearK, double timeShare)
    {
        // Strength s of the loss s·f(T): each power's plateau span bounds it from both sides.
        double weakest = open.Max(pair => pair.Key * (1 - powerShare) / Form(shape, pair.Value.HighC, aroundC));
        double strongest = open.Min(pair => pair.Key * (1 + powerShare) / Form(shape, pair.Value.LowC, aroundC));
        var spans = new Dictionary<double, SpanC>();
        double leastCapacity = double.PositiveInfinity;
        if (weakest <= strongest)
        {
            double from = Math.Max(weakest, 1e-6 * strongest);
            for (int i = 0; i < Strengths; i++)
            {
                double strength = from * Math.Pow(strongest / from, (double)i / (Strengths - 1));
                var (least, most) = Capacity(shape, marks, strength, aroundC, powerShare, nearK, timeShare);
                if (least <= most)
                {
                    leastCapacity = Math.Min(leastCapacity, least);
                    Widen(spans, shape, open, strength, weakest == 0 && i == 0, aroundC, powerShare);
                }
            }
        }

        bool fits = spans.Count > 0;
        return new ShapeLeft(shape, fits, spans, fits ? leastCapacity : 0);
    }

    private static void Widen(Dictionary<double, SpanC> spans, LossShape shape, Dictionary<double, SpanC> open, double strength, bool endless, double aroundC, double powerShare)
    {
        foreach (var (power, span) in open)
        {
            double low = Math.Max(span.LowC, PlateauC(shape, power * (1 - powerShare) / strength, aroundC));
            double high = endless ? span.HighC : Math.Min(span.HighC, PlateauC(shape, power * (1 + powerShare) / strength, aroundC));
            spans[power] = spans.TryGetValue(power, out var before) ? new SpanC(Math.Min(before.LowC, low), Math.Max(before.HighC, high)) : new SpanC(low, high);
        }
    }

    /// <summary>Heat capacities that keep every time, for one strength of loss: time = C × a number that the shape fixes.</summary>
    private static (double Least, double Most) Capacity(LossShape shape, IReadOnlyList<StopwatchMark> marks, double strength, double aroundC, double powerShare, double nearK, double timeShare)
    {
        double least = 0;
        double most = double.PositiveInfinity;
        foreach (var mark in marks.Where(mark => mark.TimeS is not null && mark.Kind != MarkKind.Stuck))
        {
            double slack = mark.Kind == MarkKind.At ? nearK : 0;
            double slowest = TimePerCapacity(shape, strength, mark.PowerW * (1 - powerShare), mark.TemperatureC + slack, aroundC);
            least = Math.Max(least, mark.TimeS!.Value * (mark.Kind == MarkKind.At ? 1 - timeShare : 1) / slowest);
            if (mark.Kind == MarkKind.At)
            {
                double fastest = TimePerCapacity(shape, strength, mark.PowerW * (1 + powerShare), mark.TemperatureC - slack, aroundC);

                // Never reached even by the strongest power: no heat capacity can keep this time.
                most = Math.Min(most, double.IsFinite(fastest) ? mark.TimeS.Value * (1 + timeShare) / fastest : -1);
            }
        }

        return (least, most);
    }

    private static double TimePerCapacity(LossShape shape, double strength, double powerW, double toC, double aroundC) =>
        WarmUp.TimeToRiseS(1, rise => powerW - strength * Form(shape, aroundC + rise, aroundC), 0, toC - aroundC);

    private static double Form(LossShape shape, double hotC, double aroundC) => hotC switch
    {
        double.PositiveInfinity => double.PositiveInfinity,
        double.NegativeInfinity => 0,
        _ => shape == LossShape.Linear ? hotC - aroundC : PlateauPair.FourthPowers(hotC, aroundC),
    };

    private static double PlateauC(LossShape shape, double form, double aroundC) =>
        shape == LossShape.Linear ? aroundC + form : Math.Sqrt(Math.Sqrt(form + Math.Pow(ImpossibleHeat.Kelvin(aroundC), 4))) - Constants.ZeroCelsiusK;

    private static HoldToDo? NextHold(double[] holds, ShapeLeft[] left)
    {
        if (left.Length < 2 || holds.Length == 0)
        {
            return null;
        }

        double[] deciding = [.. holds.Where(power => left[0].PlateauC[power].ApartFrom(left[1].PlateauC[power]))];
        return deciding.Length > 0 ? new HoldToDo(deciding[0], true) : new HoldToDo(holds[^1], false);
    }
}

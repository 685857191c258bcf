namespace Heatwright.Quantities;

/// <summary>Carries doubt through any pure law of SI doubles: value, slopes and draws come from the one function.</summary>
public static class Propagate
{
    /// <summary>Through a law of any number of inputs, linearly (JCGM 100:2008, 5.1.2 with the causes as the independent inputs).</summary>
    /// <param name="law">Pure law on SI values, in the order of <paramref name="inputs"/>.</param>
    /// <param name="unit">Unit in which the result is stated.</param>
    /// <param name="name">The law's name, for the origin.</param>
    /// <param name="inputs">Named inputs.</param>
    public static Estimate Through(Func<double[], double> law, Unit unit, string name, params Input[] inputs)
    {
        double[] at = [.. inputs.Select(input => input.Value.Si)];
        double value = law(at);
        var doubts = Doubts.None;
        for (int i = 0; i < inputs.Length; i++)
        {
            if (inputs[i].Value.StandardDoubt > 0)
            {
                double slope = Slope(law, at, i, inputs[i].Value.SiDoubt);
                doubts += inputs[i].Value.Doubts.Times(slope * inputs[i].Value.Unit.Factor / unit.Factor);
            }
        }

        return new(unit.FromSi(value), unit, doubts, new Origin.WorkedOut(name, inputs));
    }

    /// <summary>Through a law of one input.</summary>
    public static Estimate Through(Func<double, double> law, Unit unit, string name, Input a) =>
        Through(x => law(x[0]), unit, name, [a]);

    /// <summary>Through a law of two inputs.</summary>
    public static Estimate Through(Func<double, double, double> law, Unit unit, string name, Input a, Input b) =>
        Through(x => law(x[0], x[1]), unit, name, [a, b]);

    /// <summary>Through a law of three inputs.</summary>
    public static Estimate Through(Func<double, double, double, double> law, Unit unit, string name, Input a, Input b, Input c) =>
        Through(x => law(x[0], x[1], x[2]), unit, name, [a, b, c]);

    /// <summary>Through a law whose slopes are known exactly.</summary>
    /// <param name="law">Pure law on SI values.</param>
    /// <param name="slopes">Its partial derivatives at the same SI values, in the same order.</param>
    /// <param name="unit">Unit in which the result is stated.</param>
    /// <param name="name">The law's name, for the origin.</param>
    /// <param name="inputs">Named inputs.</param>
    public static Estimate ThroughSlopes(Func<double[], double> law, Func<double[], double[]> slopes, Unit unit, string name, params Input[] inputs)
    {
        double[] at = [.. inputs.Select(input => input.Value.Si)];
        double[] slope = slopes(at);
        if (slope.Length != inputs.Length)
        {
            throw new ArgumentException($"Law '{name}' has {inputs.Length} inputs and {slope.Length} slopes.", nameof(slopes));
        }

        var doubts = inputs.Select((input, i) => input.Value.Doubts.Times(slope[i] * input.Value.Unit.Factor / unit.Factor)).Aggregate(Doubts.None, (sum, own) => sum + own);
        return new(unit.FromSi(law(at)), unit, doubts, new Origin.WorkedOut(name, inputs));
    }

    /// <summary>The same law, run once for each joint draw of all causes ([jcgm-101] clause 7, with the causes as the inputs).</summary>
    /// <param name="law">Pure law on SI values, in the order of <paramref name="inputs"/>.</param>
    /// <param name="unit">Unit in which the results are stated.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="count">How many draws, at least 2.</param>
    /// <param name="inputs">Named inputs; causes that they share are drawn once.</param>
    public static Spread Drawn(Func<double[], double> law, Unit unit, ulong seed, int count, params Input[] inputs)
    {
        double[] values = new double[count];
        double[] at = new double[inputs.Length];
        for (int number = 0; number < count; number++)
        {
            var draw = new Draw(seed, number);
            for (int i = 0; i < inputs.Length; i++)
            {
                at[i] = inputs[i].Value.DrawnSi(draw);
            }

            values[number] = unit.FromSi(law(at));
        }

        return new Spread(unit, values);
    }

    /// <summary>Central difference, wide enough to be free of rounding and narrow against the doubt.</summary>
    private static double Slope(Func<double[], double> law, double[] at, int index, double doubt)
    {
        double step = Math.Max(1e-3 * doubt, 1e-7 * Math.Abs(at[index]));
        double[] moved = [.. at];
        moved[index] = at[index] + step;
        double above = law(moved);
        moved[index] = at[index] - step;
        return (above - law(moved)) / (2 * step);
    }
}

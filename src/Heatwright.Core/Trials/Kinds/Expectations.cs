namespace Heatwright.Trials;

/// <summary>Values to expect from what the seller claims.</summary>
public static class Expectations
{
    /// <summary>Those whose names are all known.</summary>
    /// <param name="card">The kind.</param>
    /// <param name="known">Settings in SI, temperatures in °C.</param>
    public static IEnumerable<(string Say, double Value, string Unit)> Of(TrialCard card, IReadOnlyDictionary<string, double> known)
    {
        foreach (var expect in card.Recipe.Expect)
        {
            double value = Formula.Read(expect.Of).Of(new Known(known));
            if (double.IsFinite(value))
            {
                yield return (expect.Say, value, expect.Unit);
            }
        }
    }

    private sealed class Known(IReadOnlyDictionary<string, double> known) : IFacts
    {
        public double Value(string name) => known.TryGetValue(name, out double value) ? value : double.NaN;

        public double[] Series(string name) => [];

        public double Ask(string function, string name) => double.NaN;
    }
}

using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Predictions;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>Share of a requirement's doubt that one source brings.</summary>
/// <param name="Source">Trial, instrument, claim or assumption, by name.</param>
/// <param name="Group">Which of the four it is.</param>
/// <param name="First">What it brings alone.</param>
/// <param name="Total">What goes with everything it takes part in.</param>
public sealed record DoubtShare(string Source, CauseGroup Group, double First, double Total);

/// <summary>One bar of the tornado, in the requirement's own unit; infinite: never.</summary>
public sealed record TornadoBar(string Input, double LowInput, double HighInput, string Unit, double AtLow, double AtHigh);

/// <summary>What matters for one requirement.</summary>
/// <param name="Requirement">The line.</param>
/// <param name="Shares">Largest total first.</param>
/// <param name="Tornado">Widest first.</param>
public sealed record Matters(Requirement Requirement, IReadOnlyList<DoubtShare> Shares, IReadOnlyList<TornadoBar> Tornado);

/// <summary>Where the doubt of a prediction comes from, told by predicting again with one source of doubt exchanged at a time.</summary>
public static class WhatMatters
{
    /// <summary>Name of all sources that are too small to be named.</summary>
    public const string AllElse = "all else";

    /// <summary>Sources told by name; what is smaller goes into 'all else'.</summary>
    private const int Named = 8;

    /// <summary>A result that is never reached counts as so many times its limit, so that it has a spread at all: our choice.</summary>
    private const double NeverTimes = 3;

    private const ulong SecondSet = 0x9E3779B97F4A7C15;

    /// <summary>For every requirement that a run tells.</summary>
    /// <param name="brief">The brief.</param>
    /// <param name="prediction">The prediction.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="draws">Draws of each of the two sets; the cost is about eleven times as many runs.</param>
    public static IReadOnlyList<Matters> Of(Brief brief, Prediction prediction, ulong seed, int draws)
    {
        var builder = prediction.Builder;
        var lines = brief.Requirements.Select(line => (Line: line, Tell: Told.ByRun(line, brief, prediction.Arrangement.Parallel))).Where(pair => pair.Tell is not null).ToArray();
        var sensitivity = new Sensitivity(builder);
        var sources = Sources(builder, sensitivity, [.. lines.Select(pair => Capped(pair.Line, pair.Tell!))]);

        // Two sets that know nothing of each other: draws of one seed do.
        ulong other = seed + SecondSet;
        var a = Run(builder, draws, i => (new Draw(seed, i), new Draw(seed, i)), _ => false);
        var b = Run(builder, draws, i => (new Draw(other, i), new Draw(other, i)), _ => false);
        var mixed = sources.Select(source => Run(builder, draws, i => (new Draw(seed, i), new Draw(other, i)), source.Holds)).ToArray();
        return [.. lines.Select(pair =>
        {
            var tell = Capped(pair.Line, pair.Tell!);
            var indices = SobolIndices.Of([.. a.Select(tell)], [.. b.Select(tell)], [.. mixed.Select(row => row.Select(tell).ToArray())]);
            return new Matters(pair.Line, [.. sources.Select((source, i) => new DoubtShare(source.Name, source.Group, indices.First[i], indices.Total[i])).OrderByDescending(share => share.Total)],
                Tornado(pair.Line, sensitivity.Swings(pair.Tell!)));
        })];
    }

    /// <summary>Name of the source of a cause: what a fit numbers its causes by goes away.</summary>
    public static string SourceOf(Cause cause)
    {
        string[] words = cause.Id.Split(' ');
        return words.Length > 1 && int.TryParse(words[^1], NumberStyles.None, CultureInfo.InvariantCulture, out _) ? string.Join(' ', words[..^1]) : cause.Id;
    }

    private sealed record Source(string Name, CauseGroup Group, Func<Cause, bool> Holds);

    private static Func<Outcome, double> Capped(Requirement line, Func<Outcome, double> tell)
    {
        double limit = (Units.Find(line.Unit) ?? Units.One).ToSi(line.Limit);
        return outcome => double.IsFinite(tell(outcome)) ? tell(outcome) : NeverTimes * limit;
    }

    /// <summary>The sources that move any requirement most, by their pushes on the inputs and the inputs' swings; the rest together.</summary>
    private static Source[] Sources(PlantBuilder builder, Sensitivity sensitivity, Func<Outcome, double>[] tells)
    {
        var weights = new Dictionary<(string Name, CauseGroup Group), double>();
        foreach (var tell in tells)
        {
            var pushes = sensitivity.Rows.SelectMany(row =>
            {
                var input = builder.Inputs[row.Place].Value;
                double slope = (tell(row.High) - tell(row.Low)) / (row.HighSi - row.LowSi);
                return input.Doubts.Pushes.Select(push => (push.Cause, By: slope * push.By * input.Unit.Factor));
            }).GroupBy(push => push.Cause.Id, StringComparer.Ordinal).Select(group => (group.First().Cause, Variance: Math.Pow(group.Sum(push => push.By), 2))).ToArray();
            double sum = Math.Max(1e-300, pushes.Sum(push => push.Variance));
            foreach (var (cause, variance) in pushes)
            {
                var key = (SourceOf(cause), cause.Group);
                weights[key] = Math.Max(weights.GetValueOrDefault(key), variance / sum);
            }
        }

        var named = weights.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key.Name, StringComparer.Ordinal).Take(Named).Select(pair => pair.Key).ToHashSet();
        return [.. named.OrderBy(key => key.Name, StringComparer.Ordinal).Select(key => new Source(key.Name, key.Group, cause => cause.Group == key.Group && SourceOf(cause) == key.Name)),
            new(AllElse, CauseGroup.Assumption, cause => !named.Contains((SourceOf(cause), cause.Group)))];
    }

    private static Outcome[] Run(PlantBuilder builder, int draws, Func<int, (Draw Own, Draw Other)> pair, Func<Cause, bool> exchanged) =>
        Predict.Many(builder, [.. Enumerable.Range(0, draws).Select(i =>
        {
            var (own, other) = pair(i);
            return builder.Inputs.Select(input => Drawn(input.Value, own, other, exchanged)).ToArray();
        })]);

    private static double Drawn(Estimate value, Draw own, Draw other, Func<Cause, bool> exchanged)
    {
        double drawn = value.Value;
        foreach (var (cause, by) in value.Doubts.Pushes)
        {
            drawn += by * (exchanged(cause) ? other : own).Of(cause);
        }

        return value.Unit.ToSi(drawn);
    }

    private static TornadoBar[] Tornado(Requirement line, IReadOnlyList<Swing> swings)
    {
        var unit = Units.Find(line.Unit) ?? Units.One;
        return [.. swings.Take(10).Where(swing => Sensitivity.Size(swing.LowValue, swing.HighValue) > 0).Select(swing =>
        {
            var own = swing.Input.Value.Unit;
            return new TornadoBar(swing.Input.Name, own.FromSi(swing.LowInput), own.FromSi(swing.HighInput), own.Symbol, unit.FromSi(swing.LowValue), unit.FromSi(swing.HighValue));
        })];
    }
}

using Heatwright.Arrangements;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Safety;
using Heatwright.Verdicts;
using Condition = Heatwright.Safety.Condition;

namespace Heatwright.Tests.Verdicts;

/// <summary>Lines, arrangements and verdicts written down by hand, so that what follows from them can be counted.</summary>
internal static class WrittenVerdict
{
    public static Requirement Line(string id, RequirementQuantity quantity = RequirementQuantity.RunTime, double limit = 10, bool atMost = false, bool must = true, string unit = "min", double weight = 1) =>
        new(id, $"{id} holds.", quantity, limit, unit, atMost, must) { Weight = weight };

    public static RequirementVerdict Verdict(Requirement line, VerdictWord word, double? chance = null, params double[] drawn) =>
        new(line, word, null, "", chance, $"{line.Id} because", $"{line.Id} remedy") { Drawn = drawn };

    public static Arrangement Tool(string letter, int series = 1, int parallel = 1) =>
        new(new($"id-{letter}"), letter, $"tool {letter}", new("cell"), series, parallel, new("switch"), new("leads"), new("contacts"), 2, new("handle")) { Heater = new("tip") };

    public static ArrangementVerdict Of(string letter, VerdictWord word, RequirementVerdict[] lines, Condition[]? conditions = null, Prediction? prediction = null, int series = 1, int parallel = 1) =>
        new(Tool(letter, series, parallel), word, $"{letter} because.", lines, new(conditions ?? [], ["mind it"], double.NaN), prediction, []);

    public static Estimate Value(double value, double doubt, Unit unit) => new(value, unit, doubt > 0 ? Doubts.From(Cause.Normal("by hand", CauseGroup.Trial), doubt) : Doubts.None, new Origin.Assumed("by hand"));
}

using System.Text.Json.Nodes;

namespace Heatwright.DemoTruth;

/// <summary>Lines of a brief as a bundle writes them.</summary>
internal static class BriefText
{
    public static JsonObject Line(string id, string text, string quantity, double limit, string unit, bool atMost, bool must, string condition, double weight) => new()
    {
        ["id"] = id,
        ["text"] = text,
        ["quantity"] = quantity,
        ["limit"] = limit,
        ["unit"] = unit,
        ["atMost"] = atMost,
        ["must"] = must,
        ["condition"] = condition,
        ["weight"] = weight,
    };
}

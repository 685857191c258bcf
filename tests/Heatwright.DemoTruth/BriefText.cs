using System.Text.Json.Nodes;

namespace Heatwright.DemoTruth;

/// <summary>Lines of a brief as a bundle writes them.</summary>
internal static class BriefText
{
    /// <summary>What a hot tool must do: the scene's own work with what the maker believes of it.</summary>
    /// <param name="contact">Conductance into the work, W/K, with its half width.</param>
    /// <param name="needJ">Heat of a piece, with its half width.</param>
    public static JsonObject Hot(Hidden hidden, string promise, string end, string piece, (double Value, double PlusMinus) contact, (double Value, double PlusMinus) needJ, string why, params JsonNode[] lines)
    {
        var job = hidden.Scene.Job;
        return new()
        {
            ["promise"] = promise,
            ["workingEnd"] = end,
            ["piece"] = piece,
            ["airC"] = hidden["air"],
            ["duty"] = new JsonObject
            {
                ["targetC"] = job.TargetC,
                ["everyS"] = job.EveryS,
                ["forS"] = job.ForS,
                ["firstAfterS"] = job.FirstAfterS,
                ["aboveC"] = job.AboveC,
                ["contact"] = contact.Value,
                ["contactPlusMinus"] = contact.PlusMinus,
                ["needJ"] = needJ.Value,
                ["needPlusMinusJ"] = needJ.PlusMinus,
                ["why"] = why,
            },
            ["requirements"] = new JsonArray(lines),
        };
    }

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

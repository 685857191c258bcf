using System.Text.Json.Nodes;
using static Heatwright.DemoTruth.BriefText;

namespace Heatwright.DemoTruth;

/// <summary>What the invented tool must do.</summary>
internal static class RopeKnifeBrief
{
    public static JsonObject Json(Names names, Hidden hidden)
    {
        string end = names.Of("blade");
        string piece = names.Of("cut");
        return Hot(hidden, $"A cordless tool whose hot {end} parts and seals 8 mm synthetic rope, one {piece} after another.", end, piece, (0.22, 0.04), (41, 9),
            "Polyamide melts at about 220 °C. To melt it from 20 °C takes 0.526 J/mm³; 75 mm³ of kerf filled to 0.8 take 31.6 J, "
                + "with both sealed faces 32 to 50 J. From memory ±30 %; the conductance is a guess.",
            Line("ready", $"The {end} is at 320 °C within 25 s of switching on.", "warmUpTime", 25, "s", true, true, "full cells, air at 20 °C", 1),
            Line("pieces", $"40 times a {piece} on one charge, one every 20 s.", "piecesPerCharge", 40, "", false, true, "each contact up to 4 s", 1),
            Line("grip", "The grip stays at most at its touch limit of 43 °C.", "gripTemperature", 43, "°C", true, true, "held longer than 10 min", 1),
            Line("cells", "No cell gets hotter than 60 °C.", "cellTemperature", 60, "°C", true, true, "while working", 1),
            Line("bore", "All fits a handle of 34 mm inside diameter.", "insideDiameter", 34, "mm", true, true, "", 1),
            Line("charging", "A USB source charges it in at most 6 h.", "chargeTime", 6, "h", true, true, "from empty", 1),
            Line("cost", "All parts cost at most 30.", "partsCost", 30, "money", true, false, "", 1));
    }
}

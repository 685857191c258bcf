namespace Heatwright.DemoTruth;

/// <summary>Words and groups of values that several shelves write down.</summary>
internal static class Stated
{
    public const string Sheet = "sheet";
    public const string Claimed = "claimed";
    public const string Measured = "measured";
    public const string Assumed = "assumed";

    public static Said[] Size(double diameterMm, double lengthMm, double massG, double price) =>
    [
        new("diameter", diameterMm, "mm", 0.1, Measured, "caliper"), new("length", lengthMm, "mm", 0.1, Measured, "caliper"),
        new("mass", massG, "g", 0.5, Measured, "scale"), new("price", price, "money", 0, Measured, price > 0 ? "receipt" : "from a scrapped machine, nothing paid"),
    ];

    public static Said[] Board(double lengthMm, double widthMm, double heightMm, double massG, double price) =>
    [
        new("length", lengthMm, "mm", 0.2, Measured, "caliper"), new("width", widthMm, "mm", 0.2, Measured, "caliper"),
        new("height", heightMm, "mm", 0.2, Measured, "caliper, tallest part"), new("mass", massG, "g", 0.5, Measured, "scale"),
        new("price", price, "money", 0, Measured, "receipt"),
    ];
}

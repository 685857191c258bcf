using Heatwright.Quantities;

namespace Heatwright.Parts;

/// <summary>Turns stated values into estimates: the doubt that an origin carries when none was stated is decided here, once.</summary>
public static class PartValues
{
    /// <summary>Half width of a seller's claim that states none, as a share: common practice, no source (heater ohms ±10 %, ±20 % seen).</summary>
    public const double ClaimHalfWidth = 0.20;

    /// <summary>Half width of a data sheet value that states none, as a share: common practice, no source.</summary>
    public const double SheetHalfWidth = 0.05;

    /// <summary>Half width of an assumption that states none, as a share: common practice, no source.</summary>
    public const double AssumedHalfWidth = 0.30;

    /// <summary>A stated value as an estimate; throws for an unknown unit or origin, which the reader of study files reports before.</summary>
    public static Estimate Read(Part part, StatedValue stated)
    {
        var unit = Units.Find(stated.Unit) ?? throw new ArgumentException($"Unit '{stated.Unit}' is not known.", nameof(stated));
        double size = Math.Abs(stated.Value);
        var (origin, group, share) = stated.Origin switch
        {
            "measured" => (new Origin.Measured(new RunId($"{part.Id} {stated.Quantity}"), stated.Text) as Origin, CauseGroup.Instrument, 0.0),
            "sheet" => (new Origin.Sheet(stated.Text, part.Name), CauseGroup.Claim, SheetHalfWidth),
            "claimed" => (new Origin.Claimed(stated.Text), CauseGroup.Claim, ClaimHalfWidth),
            "published" => (new Origin.Published(new SourceKey(stated.Text), stated.Quantity), CauseGroup.Assumption, SheetHalfWidth),
            "assumed" => (new Origin.Assumed(stated.Text), CauseGroup.Assumption, AssumedHalfWidth),
            _ => throw new ArgumentException($"Origin '{stated.Origin}' is not one of measured, sheet, claimed, published, assumed.", nameof(stated)),
        };
        bool counted = unit == Units.Money || stated.Quantity is PartQuantities.SetVolts or PartQuantities.CutoffVolts;
        double half = stated.PlusMinus > 0 ? stated.PlusMinus : counted ? 0 : share * size;
        return Estimate.Within(stated.Value, half, unit, $"{part.Id}: {stated.Quantity}, {stated.Origin}", group, origin);
    }

    /// <summary>How much an origin is trusted; higher is better.</summary>
    public static int Trust(Origin origin) => origin.Weakest() switch
    {
        Origin.Assumed => 0,
        Origin.Claimed => 1,
        Origin.Published => 2,
        Origin.Sheet => 3,
        _ => 4,
    };
}

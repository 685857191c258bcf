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

        // A seller who is off by a fifth of an efficiency of 96 % is off by a fifth of the 4 % that are lost.
        double size = stated.Quantity == PartQuantities.Efficiency ? Math.Min(Math.Abs(stated.Value), Math.Abs(unit.FromSi(1) - stated.Value)) : Math.Abs(stated.Value);
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

    /// <summary>Any one piece of a purchase, where two or more of its sound pieces were measured; null where they were not.</summary>
    /// <remarks>Mean of n pieces; a further piece lies about it with s·√(1 + 1/n), s the standard deviation of the n ([jcgm-100] 4.2 for s; a new piece's own scatter and the mean's add).
    /// What one meter was wrong by stays one cause.</remarks>
    public static Estimate? OfSamples(Part part, string quantity)
    {
        var destroyed = part.Samples?.Where(sample => sample.State == "destroyed").Select(sample => sample.Number).ToHashSet() ?? [];
        StatedValue[] pieces = [.. part.Stated.Where(stated => stated.Quantity == quantity && stated.Origin == "measured" && stated.Sample is { } number && !destroyed.Contains(number))];
        if (pieces.Select(piece => piece.Sample).Distinct().Count() < 2)
        {
            return null;
        }

        var unit = Units.Find(pieces[0].Unit)!;
        Estimate[] each = [.. pieces.Select(piece => Read(part, piece).In(unit))];
        double mean = each.Average(one => one.Value);
        double spread = Math.Sqrt(each.Sum(one => (one.Value - mean) * (one.Value - mean)) / (each.Length - 1) * (1 + (1.0 / each.Length)));
        var doubts = each.Select(one => one.Doubts.Times(1.0 / each.Length)).Aggregate(Doubts.None, (sum, own) => sum + own);
        doubts = spread > 0 ? doubts.With(new Cause($"{part.Id}: {quantity}, from piece to piece", CauseGroup.Trial, new Shape.Normal()), spread) : doubts;
        return new(mean, unit, doubts, each[0].Origin);
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

using Heatwright.Parts;

namespace Heatwright.Arrangements;

/// <summary>Room that one cell takes in the handle: its own, or that of the spring holder it sits in.</summary>
/// <param name="LengthM">Along the cell, m.</param>
/// <param name="WidthM">Across it, or the diameter, m.</param>
/// <param name="HeightM">Height of a holder that states one, m; 0: round.</param>
public sealed record CellRoom(double LengthM, double WidthM, double HeightM)
{
    /// <summary>Springs and end walls of a holder for one round cell: 10 to 14 mm, common practice, no source.</summary>
    public const double HolderLongerM = 0.012;

    /// <summary>Its side walls: 2 to 3 mm, common practice, no source.</summary>
    public const double HolderWiderM = 0.0025;

    private const double UsualLengthM = 0.0652;
    private const double UsualDiameterM = 0.0185;

    /// <summary>Sizes that nobody stated, in words; empty: all are stated.</summary>
    public string Assumed { get; init; } = "";

    /// <summary>True where it is the room of a holder with the cell in it.</summary>
    public bool InHolder { get; init; }

    /// <summary>Diameter of the tube that takes one, m.</summary>
    public double AcrossM => HeightM > 0 ? Math.Sqrt((WidthM * WidthM) + (HeightM * HeightM)) : WidthM;

    /// <summary>The room of a cell of this arrangement. What a holder states counts where each cell has a holder of its own.</summary>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="shelf">Its parts.</param>
    public static CellRoom Of(Arrangement arrangement, Shelf shelf)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        ArgumentNullException.ThrowIfNull(shelf);
        var own = Bare(arrangement, shelf);
        var contacts = shelf[arrangement.Contacts];
        if (!contacts.IsHolder())
        {
            return own;
        }

        bool each = arrangement.Pieces(contacts) >= arrangement.Series * arrangement.Parallel;
        double? Stated(string quantity, double least) => each && shelf.Value(arrangement.Contacts, quantity)?.Si is { } value && value >= least ? value : null;
        double? longer = Stated(PartQuantities.Length, own.LengthM), wider = Stated(PartQuantities.Width, own.WidthM) ?? Stated(PartQuantities.Diameter, own.WidthM), high = Stated(PartQuantities.Height, 0);
        return new(longer ?? own.LengthM + HolderLongerM, wider ?? own.WidthM + HolderWiderM, wider is null ? 0 : high ?? 0)
        {
            Assumed = Words(longer is null, wider is null),
            InHolder = true,
        };
    }

    /// <summary>The room of the cell alone, without a holder.</summary>
    /// <param name="arrangement">The arrangement.</param>
    /// <param name="shelf">Its parts.</param>
    public static CellRoom Bare(Arrangement arrangement, Shelf shelf)
    {
        ArgumentNullException.ThrowIfNull(arrangement);
        ArgumentNullException.ThrowIfNull(shelf);
        double? length = shelf.Value(arrangement.Cell, PartQuantities.Length)?.Si, diameter = shelf.Value(arrangement.Cell, PartQuantities.Diameter)?.Si;
        return new(length ?? UsualLengthM, diameter ?? UsualDiameterM, 0) { Assumed = Words(length is null, diameter is null) };
    }

    private static string Words(bool length, bool across) => (length, across) switch { (true, true) => "length and width", (true, _) => "length", (_, true) => "width", _ => "" };
}

using System.Globalization;
using Heatwright.Parts;

namespace Heatwright.Arrangements;

/// <summary>Whether cells and electronics go into the handle, and how.</summary>
/// <param name="NeededM">Smallest inside diameter that holds them within the handle's length; infinite: none does.</param>
/// <param name="HowWords">The layout in words.</param>
public sealed record HandleFit(double NeededM, string HowWords)
{
    /// <summary>Cells, insulators and welds need so much more than their own length: common practice, no source.</summary>
    private const double Overhead = 1.10;

    /// <summary>Kept between hot end and cells: 20 to 40 mm, common practice, no source.</summary>
    private const double HotGapM = 0.030;

    /// <summary>Diameter of the tube around k equal circles over their own diameter; exact packings for k up to 4 (elementary geometry).</summary>
    private static readonly double[] Around = [0, 1, 2, 2.1547005, 2.4142136];

    /// <summary>Tries cells in line and cells side by side, boards behind them; the slimmest that is short enough counts.</summary>
    public static HandleFit Of(Arrangement arrangement, Shelf shelf)
    {
        double length = Si(arrangement.Handle, PartQuantities.Length, 0.18);
        // A verdict does not rest on a guess: a holder counts where its size is stated, and is told as not counted where it is not.
        var room = CellRoom.Of(arrangement, shelf);
        bool guessed = room is { InHolder: true, Assumed.Length: > 0 };
        var cell = guessed ? CellRoom.Bare(arrangement, shelf) : room;
        string left = guessed ? $"; '{shelf[arrangement.Contacts].Name}' not counted, its size is not stated" : "";
        double cellL = cell.InHolder ? cell.LengthM : cell.LengthM * Overhead;
        var boards = arrangement.Boards(shelf)
            .Select(id => (W: Si(id, PartQuantities.Width, 0.02), H: Si(id, PartQuantities.Height, 0.008), L: Si(id, PartQuantities.Length, 0.03))).ToArray();
        double boardsL = boards.Sum(board => board.L);
        double boardsD = boards.Length == 0 ? 0 : boards.Max(board => Math.Sqrt((board.W * board.W) + (board.H * board.H)));
        int cells = arrangement.Series * arrangement.Parallel;
        var best = new HandleFit(double.PositiveInfinity, "does not go in at this length");
        for (int side = 1; side <= Math.Min(cells, 4); side++)
        {
            int rows = (cells + side - 1) / side;
            double needL = (rows * cellL) + boardsL + HotGapM;
            double needD = Math.Max(Around[side] * cell.AcrossM, boardsD);
            if (needL <= length && needD < best.NeededM)
            {
                string how = side == 1 ? $"cells{(cell.InHolder ? " in holders" : "")} in line" : $"{side} {(cell.InHolder ? "holders" : "cells")} side by side";
                best = new(needD, string.Create(CultureInfo.InvariantCulture, $"{how}, boards behind them: {needL * 1000:0} of {length * 1000:0} mm length used{left}"));
            }
        }

        return best;

        double Si(Quantities.PartId id, string quantity, double otherwise) => shelf.Value(id, quantity)?.Si ?? otherwise;
    }
}

using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Arrangements;

/// <summary>One element that the pack's current passes.</summary>
/// <param name="Name">In trade words, with its count.</param>
/// <param name="Part">The part.</param>
/// <param name="Ohms">All of it together: cells by their count in series, contacts by their touches.</param>
public sealed record LoopStep(string Name, PartId Part, Estimate Ohms);

/// <summary>The loop at one moment, the switch on.</summary>
/// <param name="When">Which moment, in a maker's words.</param>
/// <param name="Region">Where the path works; without a steady point there are no amps.</param>
/// <param name="OpenV">Pack volts without load.</param>
/// <param name="PackV">Pack volts under load.</param>
/// <param name="PackA">Current out of the pack.</param>
/// <param name="Ohms">Ohms of each element then, in the order of the loop: a cell has fewer in its first seconds than after minutes.</param>
/// <param name="DropsV">Volts lost at each element, in the order of the loop.</param>
/// <param name="LostW">Watts lost there.</param>
/// <param name="LoadOhms">Ohms of the load then.</param>
/// <param name="LoadV">Volts at the load.</param>
/// <param name="LoadA">Its current.</param>
/// <param name="LoadW">Watts at the load.</param>
/// <param name="ModuleV">Volts at the module's input; null: no module.</param>
/// <param name="ModuleW">Watts lost in the module; null: no module.</param>
public sealed record LoopMoment(
    string When, PathRegion? Region, Estimate OpenV, Estimate? PackV, Estimate? PackA, IReadOnlyList<Estimate> Ohms, IReadOnlyList<Estimate> DropsV, IReadOnlyList<Estimate> LostW,
    Estimate? LoadOhms, Estimate? LoadV, Estimate? LoadA, Estimate? LoadW, Estimate? ModuleV, Estimate? ModuleW);

/// <summary>How near the loop comes to something that limits it.</summary>
/// <param name="What">The limit, with the part's name.</param>
/// <param name="Part">The part.</param>
/// <param name="Is">What the loop asks.</param>
/// <param name="Limit">What the part gives or stands.</param>
/// <param name="Share">What is asked over what is stood: above 1 it is passed.</param>
/// <param name="When">At which moment.</param>
public sealed record LoopLimit(string What, PartId Part, Estimate Is, Estimate Limit, double Share, string When);

/// <summary>What an arrangement's loop does, known at once from its parts: no prediction over time, no warm-up needed.</summary>
/// <param name="Arrangement">Which.</param>
/// <param name="Steps">What the pack's current passes, in its order.</param>
/// <param name="Total">All ohms in series, those of the cells after minutes of load.</param>
/// <param name="HotC">Temperature of the load at the working moments, °C.</param>
/// <param name="Start">Full pack, cold load: the inrush.</param>
/// <param name="Full">Full pack, hot load, the first seconds.</param>
/// <param name="Empty">Cells at their cut-off under load, hot load.</param>
/// <param name="Limits">Nearest first.</param>
public sealed record LoopLook(
    Arrangement Arrangement, IReadOnlyList<LoopStep> Steps, Estimate Total, double HotC, LoopMoment Start, LoopMoment Full, LoopMoment Empty, IReadOnlyList<LoopLimit> Limits)
{
    /// <summary>The numbers of the loop that nobody knows and its rows do not show, each with why it was taken as it is: the temperature coefficient of the load.</summary>
    public IReadOnlyList<string> Guessed { get; init; } = [];

    /// <summary>The loop of an arrangement.</summary>
    /// <param name="arrangement">Which.</param>
    /// <param name="shelf">Parts with their findings.</param>
    /// <param name="hotC">Temperature of the working end while it works, °C.</param>
    public static LoopLook Of(Arrangement arrangement, Shelf shelf, double hotC) => new LoopBench(arrangement, shelf, hotC).Look();
}

using Heatwright.Arrangements;
using Heatwright.Quantities;

namespace Heatwright.Jobs;

/// <summary>A number as machines get it.</summary>
/// <param name="Weakest">The weakest origin among those that it rests on.</param>
public sealed record NumberView(double Value, string Unit, double StandardDoubt, string Origin, string Weakest)
{
    /// <summary>The view of an estimate; null stays null.</summary>
    public static NumberView? Of(Estimate? value) => value is null ? null : new(value.Value, value.Unit.Symbol, value.StandardDoubt, value.Origin.Word, value.Origin.Weakest().Word);
}

/// <summary>A place of an arrangement and what is in it.</summary>
/// <param name="Place">Name of the place, as its option has it.</param>
/// <param name="Part">Short name of the part in it; absent: none.</param>
/// <param name="Name">What that part is called; absent: none.</param>
/// <param name="Assumed">True: nobody chose it.</param>
public sealed record PlaceView(string Place, string? Part, string? Name, bool Assumed);

/// <summary>An element of the loop with what it costs at full and at empty pack.</summary>
/// <param name="Ohms">Its resistance, cold.</param>
/// <param name="OhmsFull">The same at full pack.</param>
/// <param name="VoltsFull">Voltage lost in it at full pack.</param>
/// <param name="VoltsEmpty">The same at the cut-off.</param>
/// <param name="WattsFull">Power lost in it at full pack.</param>
/// <param name="WattsEmpty">The same at the cut-off.</param>
public sealed record LoopStepView(string Name, string Part, NumberView Ohms, NumberView? OhmsFull, NumberView? VoltsFull, NumberView? VoltsEmpty, NumberView? WattsFull, NumberView? WattsEmpty);

/// <summary>The loop at one moment.</summary>
/// <param name="When">Which moment.</param>
/// <param name="Region">State of the circuit: direct, or that of the module.</param>
/// <param name="OpenVolts">Pack without load.</param>
/// <param name="PackVolts">Pack under load; absent: no steady point.</param>
/// <param name="PackAmps">Current from the pack; absent: no steady point.</param>
/// <param name="LoadOhms">Load.</param>
/// <param name="LoadVolts">Voltage at the load.</param>
/// <param name="LoadAmps">Current through the load.</param>
/// <param name="LoadWatts">Power in the load.</param>
/// <param name="ModuleVolts">Voltage at the input of the module; absent: no module.</param>
/// <param name="ModuleWatts">Power lost in the module; absent: no module.</param>
public sealed record LoopMomentView(string When, string Region, NumberView OpenVolts, NumberView? PackVolts, NumberView? PackAmps, NumberView? LoadOhms, NumberView? LoadVolts, NumberView? LoadAmps, NumberView? LoadWatts, NumberView? ModuleVolts, NumberView? ModuleWatts)
{
    internal static LoopMomentView Of(LoopMoment one) => new(one.When, one.Region is { } region ? char.ToLowerInvariant(region.ToString()[0]) + region.ToString()[1..] : "direct", NumberView.Of(one.OpenV)!, NumberView.Of(one.PackV), NumberView.Of(one.PackA),
        NumberView.Of(one.LoadOhms), NumberView.Of(one.LoadV), NumberView.Of(one.LoadA), NumberView.Of(one.LoadW), NumberView.Of(one.ModuleV), NumberView.Of(one.ModuleW));
}

/// <summary>A limit and how near the loop comes to it.</summary>
/// <param name="What">What is limited.</param>
/// <param name="Asked">What is asked of it.</param>
/// <param name="Limit">What it stands.</param>
/// <param name="Share">Asked over limit; above 1: too much.</param>
/// <param name="When">At which moment.</param>
public sealed record LoopLimitView(string What, string Part, NumberView Asked, NumberView Limit, double Share, string When);

/// <summary>A pair of parts that does not go together.</summary>
/// <param name="Refused">True: it cannot be; false: to mind.</param>
/// <param name="What">What is not right.</param>
/// <param name="Value">The value met, with its unit.</param>
/// <param name="Limit">What would be right.</param>
/// <param name="Next">What to do.</param>
public sealed record PairView(bool Refused, string What, string Value, string Limit, string Next);

/// <summary>An arrangement with its loop as machines get it.</summary>
/// <param name="Touches">Contacts that the current passes.</param>
/// <param name="Places">What is in each place.</param>
/// <param name="LoopOhms">Everything in series but the load.</param>
/// <param name="HotC">Temperature at which the heater is reckoned, °C.</param>
/// <param name="Loop">Element by element.</param>
/// <param name="Start">Switched on cold.</param>
/// <param name="Full">Hot, with a full pack.</param>
/// <param name="Empty">Hot, with the pack at its cut-off.</param>
/// <param name="Limits">Limits, nearest first.</param>
/// <param name="First">What limits first, in words.</param>
/// <param name="Pairs">Parts that do not go together.</param>
public sealed record LoopJsonView(
    string Letter, string Name, int Series, int Parallel, int Touches, double DutyCeiling, IReadOnlyList<PlaceView> Places, NumberView LoopOhms, double HotC, IReadOnlyList<LoopStepView> Loop,
    LoopMomentView Start, LoopMomentView Full, LoopMomentView Empty, IReadOnlyList<LoopLimitView> Limits, string First, IReadOnlyList<PairView> Pairs)
{
    /// <summary>Numbers behind it that nobody knows and its elements do not show, each with why it was taken as it is.</summary>
    public IReadOnlyList<string> Guessed { get; init; } = [];

    /// <summary>The view of a loop.</summary>
    public static LoopJsonView Of(LoopView view)
    {
        var (one, look) = (view.Arrangement, view.Look);
        return new(one.Letter, one.Name, one.Series, one.Parallel, one.ContactCount, one.DutyCeiling,
            [.. view.Wiring.Select(row => new PlaceView(row.Place.Name, row.Part?.Id.Name, row.Part?.Name, row.Assumed))],
            NumberView.Of(look.Total)!, look.HotC,
            [.. look.Steps.Select((step, i) => new LoopStepView(step.Name, step.Part.Name, NumberView.Of(step.Ohms)!, At(look.Full.Ohms, i), At(look.Full.DropsV, i), At(look.Empty.DropsV, i), At(look.Full.LostW, i), At(look.Empty.LostW, i)))],
            LoopMomentView.Of(look.Start), LoopMomentView.Of(look.Full), LoopMomentView.Of(look.Empty),
            [.. look.Limits.Select(limit => new LoopLimitView(limit.What, limit.Part.Name, NumberView.Of(limit.Is)!, NumberView.Of(limit.Limit)!, limit.Share, limit.When))],
            view.First, [.. view.Pairs.Select(pair => new PairView(pair.Refused, pair.Problem.What, pair.Problem.Value, pair.Problem.Limit, pair.Problem.Next))])
        {
            Guessed = look.Guessed,
        };
    }

    private static NumberView? At(IReadOnlyList<Estimate> values, int i) => values.Count > i ? NumberView.Of(values[i]) : null;
}

namespace Heatwright.Physics;

/// <summary>How a temperature was seen.</summary>
public enum MarkKind
{
    /// <summary>It read this at about this time, still on the way.</summary>
    At,

    /// <summary>It went past this; a time says no more than 'not before'.</summary>
    Passed,

    /// <summary>It stayed near this and went no further: a plateau that was waited for.</summary>
    Stuck,
}

/// <summary>How a loss grows with temperature.</summary>
public enum LossShape
{
    /// <summary>In proportion to the rise: conduction and gentle convection.</summary>
    Linear,

    /// <summary>With the fourth power of the kelvin temperature: radiation.</summary>
    Radiating,
}

/// <summary>A range of temperature; the upper end is infinite when nothing bounds it.</summary>
/// <param name="LowC">Lowest.</param>
/// <param name="HighC">Highest.</param>
public readonly record struct SpanC(double LowC, double HighC)
{
    /// <summary>Whether no temperature lies in both.</summary>
    public bool ApartFrom(SpanC other) => HighC < other.LowC || other.HighC < LowC;
}

/// <summary>One thing seen while a tool was heated from cold.</summary>
/// <param name="PowerW">Power, about.</param>
/// <param name="Kind">How the temperature was seen.</param>
/// <param name="TemperatureC">The temperature.</param>
/// <param name="TimeS">When, from switching on; for 'passed' it was not before this. Null when nobody looked at the clock.</param>
public sealed record StopwatchMark(double PowerW, MarkKind Kind, double TemperatureC, double? TimeS = null);

/// <summary>What marks leave open about a loss of one shape.</summary>
/// <param name="Shape">The shape.</param>
/// <param name="Fits">Whether any strength of loss and any heat capacity agree with every mark.</param>
/// <param name="PlateauC">Where each power of the marks would come to rest under this shape, as far as the marks allow; empty when it does not fit.</param>
/// <param name="CapacityAtLeastJPerK">Least heat capacity that keeps the times; 0 when no time was taken.</param>
public sealed record ShapeLeft(LossShape Shape, bool Fits, IReadOnlyDictionary<double, SpanC> PlateauC, double CapacityAtLeastJPerK);

/// <summary>A hold worth doing: constant power until nothing moves.</summary>
/// <param name="PowerW">The power.</param>
/// <param name="Decides">Whether the shapes that still fit would come to rest at temperatures that do not overlap.</param>
public sealed record HoldToDo(double PowerW, bool Decides);

/// <summary>All that marks say, and no more.</summary>
/// <param name="Shapes">Each shape of loss and whether it survives.</param>
/// <param name="PlateauC">What the marks by themselves, without any shape, say of the plateau at each power.</param>
/// <param name="NextHold">The hold that would tell the shapes apart; null when at most one is left.</param>
public sealed record MarksSay(IReadOnlyList<ShapeLeft> Shapes, IReadOnlyDictionary<double, SpanC> PlateauC, HoldToDo? NextHold)
{
    /// <summary>Shapes that survive.</summary>
    public IEnumerable<LossShape> Left => Shapes.Where(shape => shape.Fits).Select(shape => shape.Shape);
}

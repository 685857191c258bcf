using System.Globalization;

namespace Heatwright.DemoTruth.Campaign;

/// <summary>A meter's promise, its last digit, and how much that digit flickers.</summary>
/// <param name="Name">Columns of one name are read on one meter.</param>
/// <param name="Percent">Limit of reading.</param>
/// <param name="Digits">Limit in steps.</param>
/// <param name="Step">Step of the display.</param>
internal sealed record Display(string Name, double Percent, double Digits, double Step)
{
    /// <summary>A fixed limit beside, in the unit of the column.</summary>
    public double Fixed { get; init; }

    /// <summary>How the fixed limit is printed.</summary>
    public string FixedUnit { get; init; } = "";

    /// <summary>Standard flicker before the display rounds, in steps.</summary>
    public double Flicker { get; init; } = 0.3;

    /// <summary>Share of reading at its worst.</summary>
    public double Gain => Percent / 100;

    /// <summary>Fixed amount at its worst.</summary>
    public double Offset => (Digits * Step) + Fixed;

    /// <summary>As printed on its sheet.</summary>
    public string Promise => Percent == 0 && Offset == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $"{Percent}%{(Digits > 0 ? $"+{Digits}d" : "")}{(Fixed > 0 ? $"+{Fixed}{FixedUnit}" : "")}");

    /// <summary>What the shared errors do to a value. A promise of two terms is one limit: gain, offset, and both wrong together, each somewhere inside.</summary>
    public double Wrong(double value, double gain, double offset, double both) =>
        value + (Gain * gain * value) + (Offset * offset) + (Math.Sqrt(2 * Gain * Offset * Math.Abs(value)) * Math.Sign(value) * both);
}

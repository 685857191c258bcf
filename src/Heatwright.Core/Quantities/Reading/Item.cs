namespace Heatwright.Quantities;

/// <summary>One value found in a text, and where it ends.</summary>
/// <param name="Value">What it is.</param>
/// <param name="End">Where it ends.</param>
/// <param name="StandsAlone">True where it says what it is without help of the field, so that others may stand beside it.</param>
internal readonly record struct Item(TypedValue Value, int End, bool StandsAlone);

namespace Heatwright.DemoTruth.Campaign;

/// <summary>A column of made-up readings: numbers as a display showed them, or words.</summary>
/// <param name="Name">Name as the kind of trial knows it.</param>
/// <param name="Values">Numbers in the unit of the kind; empty for words.</param>
/// <param name="Words">Words; empty for numbers.</param>
/// <param name="Meter">Name of the meter; columns of one name share its errors.</param>
/// <param name="Promise">What the meter promises, as printed on its sheet; empty: exact.</param>
public sealed record MadeUpColumn(string Name, double[] Values, string[] Words, string Meter, string Promise);

/// <summary>A number of the whole run.</summary>
/// <param name="Name">Name as the kind knows it.</param>
/// <param name="Value">As shown, in the unit of the kind.</param>
/// <param name="HalfWidth">How far off it may be, evenly.</param>
public sealed record MadeUpSetting(string Name, double Value, double HalfWidth);

/// <summary>What a finding should be.</summary>
/// <param name="Name">Name of the finding; alternatives apart by a bar.</param>
/// <param name="Truth">True value in the unit of the finding.</param>
/// <param name="Half">Half-width that holds 95 of 100 for someone who knows the law, every noise and every meter's limits; not a number where there is no such bound.</param>
public sealed record MadeUpFinding(string Name, double Truth, double Half);

/// <summary>One made-up execution of a bench test whose truth is known.</summary>
public sealed record MadeUpTrial(string Kind, IReadOnlyList<MadeUpColumn> Columns, IReadOnlyList<MadeUpSetting> Settings, IReadOnlyList<MadeUpFinding> Findings)
{
    /// <summary>The word that the trial should answer; empty where it answers with numbers only.</summary>
    public string Word { get; init; } = "";
}

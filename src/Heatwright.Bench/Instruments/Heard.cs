using Heatwright.Quantities;

namespace Heatwright.Instruments;

/// <summary>What a value of a line turned out to be.</summary>
public enum ReadoutKind
{
    /// <summary>A number.</summary>
    Number,
    /// <summary>Over range: no value.</summary>
    Overload,
    /// <summary>The instrument says that it has none.</summary>
    Missing,
    /// <summary>The instrument's own time.</summary>
    Time,
    /// <summary>Words.</summary>
    Words,
}

/// <summary>One value of a line.</summary>
/// <param name="Name">Its label in the line, or a name of ours where it has none.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Value">The number in <paramref name="Unit"/>; NaN where there is none.</param>
/// <param name="Unit">Unit, or null where it is not known.</param>
/// <param name="Raw">As it stood in the line.</param>
public readonly record struct Readout(string Name, ReadoutKind Kind, double Value, Unit? Unit, string Raw);

/// <summary>Something heard from an instrument, with the second of the session in which it arrived.</summary>
/// <param name="Source">The instrument's name in this session.</param>
/// <param name="AtS">Arrival, seconds of the session. It is the time of arrival, not of sampling.</param>
public abstract record Heard(string Source, double AtS)
{
    /// <summary>A line of readings.</summary>
    /// <param name="Source">The instrument.</param>
    /// <param name="AtS">Arrival.</param>
    /// <param name="Text">The line.</param>
    /// <param name="Readouts">Its values.</param>
    public sealed record Line(string Source, double AtS, string Text, IReadOnlyList<Readout> Readouts) : Heard(Source, AtS);

    /// <summary>A line from which no reading was taken.</summary>
    /// <param name="Source">The instrument.</param>
    /// <param name="AtS">Arrival.</param>
    /// <param name="Text">The line.</param>
    /// <param name="Why">Why not.</param>
    public sealed record Unread(string Source, double AtS, string Text, string Why) : Heard(Source, AtS);

    /// <summary>Something about the connection.</summary>
    /// <param name="Source">The instrument.</param>
    /// <param name="AtS">When.</param>
    /// <param name="State">What it concerns.</param>
    /// <param name="Words">In words, with the next step where there is one.</param>
    public sealed record Note(string Source, double AtS, LinkState State, string Words) : Heard(Source, AtS);
}

/// <summary>How it stands with a connection.</summary>
public enum LinkState
{
    /// <summary>Open.</summary>
    Open,
    /// <summary>Cannot be opened; it is tried again.</summary>
    Refused,
    /// <summary>Was open and is gone; it is tried again.</summary>
    Lost,
    /// <summary>Open, and nothing comes.</summary>
    Silent,
    /// <summary>The form of the lines is known.</summary>
    Understood,
    /// <summary>The lines can be read in two ways: the maker has to say which.</summary>
    Question,
    /// <summary>A recorded file is at its end.</summary>
    Ended,
}

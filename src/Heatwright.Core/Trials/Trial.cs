using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>The bench tests there are.</summary>
public enum TrialKind
{
    /// <summary>A cell emptied at a steady current: time, volts, amps, and cell degrees where taken.</summary>
    Discharge,
    /// <summary>A cell loaded and rested in turn: time, volts, amps, and cell degrees where taken.</summary>
    Pulse,
    /// <summary>Ohms of a cold heater on an ohmmeter, the shorted leads read too: ohms.</summary>
    ColdOhms,
    /// <summary>Volts and amps of a heater held hot, with its degrees: volts, amps, degrees.</summary>
    HotOhms,
    /// <summary>A working end warming up or cooling down: time, volts, amps, degrees, and grip degrees where taken.</summary>
    WarmUp,
    /// <summary>A module's four readings taken at one moment: volts in, amps in, volts out, amps out.</summary>
    ModulePoints,
    /// <summary>Drop across a contact or a lead at a known current: amps, drop.</summary>
    TwoPointDrop,
    /// <summary>Any other bench test that has a card; the card's name stands beside.</summary>
    Bench,
}

/// <summary>A column of a run's readings.</summary>
/// <param name="Name">time, volts, amps, degrees, grip degrees, cell degrees, ohms, drop, volts in, amps in, volts out, amps out.</param>
/// <param name="Unit">Unit symbol that the raw texts are in.</param>
/// <param name="Instrument">Which instrument of the study read it; empty: none known.</param>
public sealed record Column(string Name, string Unit, string Instrument);

/// <summary>One line of readings, as it was typed or logged.</summary>
/// <param name="Number">Line number in its run, from 1.</param>
/// <param name="Raw">Raw text per column.</param>
/// <param name="StruckBecause">Why the maker struck it out; null: it stands.</param>
public sealed record Reading(int Number, IReadOnlyList<string> Raw, string? StruckBecause = null);

/// <summary>One execution of a trial.</summary>
public sealed record Run(RunId Id, IReadOnlyList<Column> Columns, IReadOnlyList<Reading> Readings)
{
    /// <summary>Numbers that hold for the whole run: 'air' in °C, 'leads' (shorted-lead ohms), 'at' in °C, 'taken before' (charge out of the full cell already), in SI or °C by name.</summary>
    public IReadOnlyDictionary<string, double> Settings { get; init; } = new Dictionary<string, double>();

    /// <summary>By how much a setting may be off either way, as far as the maker said so: half widths, under the setting's name and in its unit (kelvins of a temperature).</summary>
    public IReadOnlyDictionary<string, double> SettingsPlusMinus { get; init; } = new Dictionary<string, double>();

    /// <summary>A setting, or the alternative.</summary>
    public double Setting(string name, double otherwise) => Settings.TryGetValue(name, out double value) ? value : otherwise;

    /// <summary>Standard doubt of a setting, SI: anything within what was said is as likely; 0 where nothing was said.</summary>
    public double SettingDoubt(string name) => Settings.ContainsKey(name) && SettingsPlusMinus.TryGetValue(name, out double halfWidth) ? halfWidth / Math.Sqrt(3) : 0;
}

/// <summary>A planned bench test of one part.</summary>
public sealed record Trial(TrialId Id, TrialKind Kind, PartId Part, IReadOnlyList<Run> Runs)
{
    /// <summary>What it is to show.</summary>
    public string Purpose { get; init; } = "";

    /// <summary>Name of the card of a <see cref="TrialKind.Bench"/> trial; null for the other kinds.</summary>
    public string? Card { get; init; }

    /// <summary>True where a cell is emptied at a steady current: a discharge, also under the name of its card, as older studies keep it.</summary>
    public bool IsDischarge() => Kind == TrialKind.Discharge || Card == "capacity";

    /// <summary>True where a run feeds the model of a cell: a discharge, a slow one for the open volts, or a pulse run.</summary>
    public bool TellsHowVoltsFall() => IsDischarge() || Kind == TrialKind.Pulse || Card == "open-volts";
}

/// <summary>What a meter may be wrong by, for one unit.</summary>
/// <param name="Unit">Unit that it reads.</param>
/// <param name="Percent">Percent of the reading.</param>
/// <param name="Offset">Fixed part, in the unit.</param>
/// <param name="Resolution">Smallest step that it shows, in the unit; 0: none is known.</param>
public sealed record InstrumentSpec(string Unit, double Percent, double Offset, double Resolution);

/// <summary>A meter, probe, watch or logger.</summary>
/// <param name="Id">Its short name.</param>
/// <param name="Name">What the maker calls it.</param>
/// <param name="Specs">What it promises, unit by unit.</param>
public sealed record Instrument(string Id, string Name, IReadOnlyList<InstrumentSpec> Specs);

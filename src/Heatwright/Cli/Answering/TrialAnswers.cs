using Heatwright.Instruments;
using Heatwright.Jobs.Trials;
using Heatwright.Trials;

namespace Heatwright.Cli.Answering;

/// <summary>A bench test that was planned.</summary>
/// <param name="Trial">Its short name.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Part">The part that is tried.</param>
/// <param name="Doubt">What to mind where the kind is not one for this part; absent: it suits.</param>
internal sealed record TrialPlanned(string Trial, string Kind, string Part, string? Doubt);

/// <summary>A remark that a reading called forth.</summary>
/// <param name="Reading">Number of the reading; 0: the run as a whole.</param>
/// <param name="Words">What and what to do.</param>
/// <param name="Effect">Left out of the fit, or kept.</param>
internal sealed record ReadingRemark(int Reading, string Words, string Effect);

/// <summary>A reading that was taken in.</summary>
/// <param name="Number">Its number in the run.</param>
/// <param name="Fields">What was understood.</param>
/// <param name="Remarks">What the checks say now that they did not say before.</param>
internal sealed record ReadingEntered(int Number, IReadOnlyList<FieldRead> Fields, IReadOnlyList<ReadingRemark> Remarks)
{
    /// <summary>The view of a reading.</summary>
    public static ReadingEntered Of(ReadingTaken taken) => new(taken.Number, taken.Fields, [.. taken.Remarks.Select(remark => new ReadingRemark(remark.Reading, remark.Words, remark.Effect))]);
}

/// <summary>Readings that were typed into a run.</summary>
/// <param name="Run">The run; empty: none was begun, since no reading was taken.</param>
/// <param name="Readings">Those that were taken in.</param>
/// <param name="Refused">How many lines were not; why stands on the error output.</param>
internal sealed record ReadingsEntered(string Run, IReadOnlyList<ReadingEntered> Readings, int Refused);

/// <summary>A column of a run.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Unit of a bare number; absent: none.</param>
/// <param name="Meter">Short name of the meter that reads it; absent: none is named.</param>
internal sealed record ColumnHeld(string Name, string? Unit, string? Meter);

/// <summary>A run as it stands: what it is read with and what held for it.</summary>
/// <param name="Run">The run.</param>
/// <param name="Trial">Its trial.</param>
/// <param name="Columns">Its columns, in the order in which they are typed.</param>
/// <param name="Settings">What held for the whole run, each as it is typed: 'air=24 °C'.</param>
internal sealed record RunHeld(string Run, string Trial, IReadOnlyList<ColumnHeld> Columns, IReadOnlyList<string> Settings)
{
    /// <summary>The view of a run.</summary>
    public static RunHeld Of(Trial trial, Run run) => new(run.Id.Name, trial.Id.Name,
        [.. run.Columns.Select(column => new ColumnHeld(column.Name, column.Unit.Length > 0 ? column.Unit : null, column.Instrument.Length > 0 ? column.Instrument : null))], TrialKinds.Held(trial, run));
}

/// <summary>A kind of bench test.</summary>
/// <param name="Kind">Name to type.</param>
/// <param name="About">What it is done on.</param>
/// <param name="Purpose">What it tells.</param>
/// <param name="Columns">What is read.</param>
/// <param name="Settings">What holds for the whole run.</param>
/// <param name="Finds">Names of the findings.</param>
/// <param name="Checks">Names of the checks that look at its readings.</param>
internal sealed record TrialKindView(string Kind, string About, string Purpose, IReadOnlyList<TrialColumn> Columns, IReadOnlyList<TrialSetting> Settings, IReadOnlyList<string> Finds, IReadOnlyList<string> Checks)
{
    /// <summary>Another name that it goes by; null: none.</summary>
    public string? Also { get; init; }

    /// <summary>The view of a kind.</summary>
    public static TrialKindView Of(string kind) => Of(kind, TrialKinds.CardOf(kind)!);

    private static TrialKindView Of(string kind, TrialCard card) => new(kind, card.About, card.Purpose, card.Columns, card.Settings, card.Finds, RecipeView.Of(card, new Dictionary<string, double>()).Checks) { Also = TrialKinds.OtherName(kind) };
}

/// <summary>A check of readings or facts.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Level">E: an error, W: a warning, I: to know.</param>
/// <param name="When">Its formula: it speaks up where this holds.</param>
/// <param name="Says">What it then says; {formula|unit} is worked out.</param>
/// <param name="Remedy">What to do.</param>
/// <param name="Names">Names of the numbers that it needs.</param>
/// <param name="Kinds">Kinds of bench test that it is asked of; empty: wherever its names are known.</param>
internal sealed record RuleView(string Id, string Level, string When, string Says, string Remedy, IReadOnlyList<string> Names, IReadOnlyList<string> Kinds)
{
    /// <summary>The view of a rule.</summary>
    public static RuleView Of(TrialRule rule) => new(rule.Id, rule.Level, rule.When, rule.Says, rule.Remedy, [.. RuleBook.NamesOf(rule.Id)], rule.Kinds);
}

/// <summary>A value in a line that an instrument sent.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Value">In the unit beside it; absent: over range, missing, or words.</param>
/// <param name="Unit">Unit symbol; absent: none was sent.</param>
/// <param name="Raw">As it was sent.</param>
internal sealed record HeardValue(string Name, ReadoutKind Kind, double? Value, string? Unit, string Raw);

/// <summary>A line of readings that an instrument sent.</summary>
/// <param name="AtS">When, seconds since the session began.</param>
/// <param name="Source">The instrument.</param>
/// <param name="Text">The line as it was sent.</param>
/// <param name="Values">What was read from it.</param>
internal sealed record HeardLine(double AtS, string Source, string Text, IReadOnlyList<HeardValue> Values)
{
    /// <summary>The view of a line.</summary>
    public static HeardLine Of(Heard.Line line) => new(line.AtS, line.Source, line.Text,
        [.. line.Readouts.Select(one => new HeardValue(one.Name, one.Kind, double.IsFinite(one.Value) ? one.Value : null, one.Unit?.Symbol, one.Raw))]);
}

/// <summary>A line without a reading.</summary>
/// <param name="AtS">When, seconds since the session began.</param>
/// <param name="Source">The instrument.</param>
/// <param name="Unread">The line as it was sent.</param>
/// <param name="Why">Why it was not read.</param>
internal sealed record HeardUnread(double AtS, string Source, string Unread, string Why);

/// <summary>A note on a connection.</summary>
/// <param name="AtS">When, seconds since the session began.</param>
/// <param name="Source">The instrument.</param>
/// <param name="State">How it stands with the connection.</param>
/// <param name="Words">The same in words, with the next step where there is one.</param>
internal sealed record HeardNote(double AtS, string Source, LinkState State, string Words);

/// <summary>How a session ended.</summary>
/// <param name="Lines">How many lines of readings each instrument sent.</param>
/// <param name="Unread">How many lines were without a reading.</param>
/// <param name="Seconds">How long it was.</param>
/// <param name="Run">The run that took the readings; absent without --into.</param>
/// <param name="Stored">How many readings went into it; absent without --into.</param>
internal sealed record ListenEnd(IReadOnlyDictionary<string, long> Lines, long Unread, double Seconds, string? Run, int? Stored);

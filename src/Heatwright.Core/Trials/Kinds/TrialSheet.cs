using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>An error that all readings of a column share, or that one setting brings.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Column">Column or setting it moves.</param>
/// <param name="Gain">Share of the reading.</param>
/// <param name="Offset">Fixed amount, SI.</param>
/// <param name="Both">Part that stands for gain and offset wrong together: √(2·p·x·n·d), here without √x.</param>
internal sealed record SharedError(Cause Cause, string Column, double Gain, double Offset, double Both = 0)
{
    /// <summary>Number of the first reading that it moves; 0: all, and the settings read on the same meter.</summary>
    public int From { get; init; }
}

/// <summary>Something noticed about a reading, or about the run as a whole.</summary>
/// <param name="Reading">Number of the reading; 0: the run.</param>
/// <param name="Rule">Id of the rule.</param>
/// <param name="Level">E: the reading is left out; W: look again; I: for your information.</param>
/// <param name="Words">What.</param>
/// <param name="Remedy">What to do now.</param>
public sealed record TrialRemark(int Reading, string Rule, string Level, string Words, string Remedy)
{
    /// <summary>The reading takes no part in the fit; it stays in the file.</summary>
    public bool LeftOut { get; init; }
}

/// <summary>Numbers of a bench test, column by column in SI (temperatures in °C), with what may be wrong with them.</summary>
internal sealed class TrialSheet
{
    private readonly Dictionary<string, double[]> columns;
    private readonly Dictionary<string, double[]> own;
    private readonly Dictionary<string, string[]> words;
    private readonly Dictionary<string, (double Value, double Doubt)> settings;

    public TrialSheet(TrialCard card, int[] numbers, Dictionary<string, double[]> columns, Dictionary<string, double[]> own,
        Dictionary<string, string[]> words, Dictionary<string, (double Value, double Doubt)> settings, IReadOnlyList<SharedError> shared)
    {
        (Card, Numbers, this.columns, this.own, this.words, this.settings, Shared) = (card, numbers, columns, own, words, settings, shared);
    }

    public TrialCard Card { get; }

    /// <summary>Works out a column that stands for others again, when one of them has been moved.</summary>
    private Func<TrialSheet, TrialSheet> Again { get; init; } = sheet => sheet;

    /// <summary>Number of each reading, as in the file.</summary>
    public int[] Numbers { get; }

    public int Count => Numbers.Length;

    public IReadOnlyList<SharedError> Shared { get; }

    /// <summary>What was assumed or corrected on the way, in words.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    public double[] this[string column] => columns.TryGetValue(column, out double[]? values) ? values : [.. Enumerable.Repeat(double.NaN, Count)];

    public bool Has(string column) => columns.TryGetValue(column, out double[]? values) && values.Any(double.IsFinite);

    public string[] Words(string column) => words.TryGetValue(column, out string[]? texts) ? texts : [.. Enumerable.Repeat("", Count)];

    /// <summary>Standard doubt of each reading by itself: last digit, hand, one meter moved.</summary>
    public double[] Own(string column) => own.TryGetValue(column, out double[]? doubts) ? doubts : new double[Count];

    /// <summary>A setting; not a number where it is not known.</summary>
    public double Setting(string name) => settings.TryGetValue(name, out var setting) ? setting.Value : double.NaN;

    public double Setting(string name, double otherwise) => Setting(name) is var value && double.IsNaN(value) ? otherwise : value;

    public IEnumerable<string> SettingNames => settings.Where(pair => double.IsFinite(pair.Value.Value)).Select(pair => pair.Key);

    public double SettingDoubt(string name) => settings.TryGetValue(name, out var setting) ? setting.Doubt : 0;

    /// <summary>The sheet as it would read if one shared error had one standard size.</summary>
    public TrialSheet Moved(SharedError error)
    {
        var column = columns;
        if (columns.TryGetValue(error.Column, out double[]? values))
        {
            column = new(columns, StringComparer.Ordinal) { [error.Column] = [.. values.Select((value, i) => Numbers[i] < error.From ? value : Move(value))] };
        }

        var setting = new Dictionary<string, (double Value, double Doubt)>(settings, StringComparer.Ordinal);
        foreach (string name in settings.Keys.Where(name => error.From == 0).Where(name => name == error.Column || Card.Settings.Any(s => s.Name == name && s.With == error.Column)).ToArray())
        {
            setting[name] = (Move(settings[name].Value), settings[name].Doubt);
        }

        return Again(new(Card, Numbers, column, own, words, setting, Shared) { Notes = Notes, Again = Again });

        double Move(double value) => value + (error.Gain * value) + error.Offset + (error.Both * Math.CopySign(Math.Sqrt(Math.Abs(value)), value));
    }

    /// <summary>The sheet with a further or changed column, in SI; its doubts follow from the given ones.</summary>
    public TrialSheet With(string name, double[] values, double[] doubts) => new(Card, Numbers,
        new(columns, StringComparer.Ordinal) { [name] = values }, new(own, StringComparer.Ordinal) { [name] = doubts }, words, settings, Shared)
    {
        Notes = Notes,
        Again = Again,
    };

    /// <summary>The sheet with a column worked out from others, which follows when those are moved.</summary>
    public TrialSheet Derived(string name, double[] values, double[] doubts, Func<TrialSheet, TrialSheet> again)
    {
        var before = Again;
        return new(Card, Numbers, new(columns, StringComparer.Ordinal) { [name] = values }, new(own, StringComparer.Ordinal) { [name] = doubts }, words, settings, Shared)
        {
            Notes = Notes,
            Again = sheet => again(before(sheet)),
        };
    }

    /// <summary>Columns that stand for others, worked out again after one of those was changed.</summary>
    public TrialSheet Redone() => Again(this);

    public TrialSheet Saying(string note) => new(Card, Numbers, columns, own, words, settings, Shared) { Notes = Notes.Contains(note) ? Notes : [.. Notes, note], Again = Again };

    /// <summary>Only some of the readings.</summary>
    public TrialSheet Rows(IReadOnlyList<int> rows)
    {
        Dictionary<string, T[]> Pick<T>(Dictionary<string, T[]> from) =>
            from.ToDictionary(pair => pair.Key, pair => rows.Select(row => pair.Value[row]).ToArray(), StringComparer.Ordinal);
        return new(Card, [.. rows.Select(row => Numbers[row])], Pick(columns), Pick(own), Pick(words), settings, Shared) { Notes = Notes, Again = Again };
    }

    /// <summary>All readings but some.</summary>
    public TrialSheet Without(params int[] rows) => Rows([.. Enumerable.Range(0, Count).Except(rows)]);

    /// <summary>Only the readings that have all these columns.</summary>
    public TrialSheet Whole(params string[] names) =>
        Rows([.. Enumerable.Range(0, Count).Where(row => names.All(name => double.IsFinite(this[name][row])))]);
}

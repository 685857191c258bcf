using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>From typed and logged readings of any kind of bench test to findings with doubt.</summary>
public static class TrialFits
{
    private static readonly Dictionary<string, Func<TrialSheet, Checked<TrialAnswer>>> Fits = new[]
    {
        HeaterFits.All, HeatFits.All, CellKindFits.All, PowerFits.All, SensorFits.All, PartFits.All,
    }.SelectMany(group => group).ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);

    /// <summary>Kinds that have a fit.</summary>
    internal static IEnumerable<string> Kinds => Fits.Keys;

    /// <summary>Findings of a bench test, or everything that stands in the way.</summary>
    /// <param name="kind">Name of the kind.</param>
    /// <param name="input">What was read and said.</param>
    public static Checked<TrialAnswer> Run(string kind, TrialInput input) =>
        OwnTrial.Find(kind) is { } own ? own.Fit(input) : TrialCard.Find(kind) is not { } card ? new(Unknown(kind)) : Run(card, input, Fits[card.Name]);

    /// <summary>Findings of a maker's own trial by a law of the maker's choice.</summary>
    /// <param name="card">Its columns and settings, named as the law names its numbers.</param>
    /// <param name="input">What was read and said.</param>
    /// <param name="law">The law.</param>
    public static Checked<TrialAnswer> Run(TrialCard card, TrialInput input, OwnLaw law) => Run(card, input, sheet => OwnLawFit.Run(sheet, law));

    private static Checked<TrialAnswer> Run(TrialCard card, TrialInput input, Func<TrialSheet, Checked<TrialAnswer>> fit)
    {
        List<TrialRemark> remarks = [];
        var made = SheetMaker.Make(card, input, remarks);
        if (!made.IsFine)
        {
            return new(made.Problems);
        }

        var sheet = made.Value;
        remarks.AddRange(RuleBook.Readings(sheet));
        if (remarks.FirstOrDefault(remark => remark is { Reading: 0, LeftOut: true }) is { } wrong)
        {
            return new(new Problem(wrong.Words, $"readings for {card.Name}", string.Join(", ", input.Columns.Select(column => column.Name)), string.Join(", ", card.Columns.Where(column => column.Needed).Select(column => $"{column.Name} in {column.Unit}")), wrong.Remedy));
        }

        var out1 = remarks.Where(remark => remark.LeftOut).Select(remark => remark.Reading).ToHashSet();
        var kept = sheet.Rows([.. Enumerable.Range(0, sheet.Count).Where(row => !out1.Contains(sheet.Numbers[row]))]);
        var found = fit(kept);
        return found.IsFine ? found.Map(answer => answer with
        {
            Remarks = [.. remarks, .. answer.Remarks],
            Picture = answer.Picture is { } picture && picture.X.Length >= FitPicture.Fewest ? picture : null,
            Notes = [.. sheet.Notes.Concat(answer.Notes).Distinct()],
        }) : new([.. found.Problems.Select(problem => WithReasons(problem, remarks, sheet.Count))]);
    }

    /// <summary>A fit that has too few readings left says why the others do not count: that, and no further reading, is what has to be mended.</summary>
    private static Problem WithReasons(Problem problem, List<TrialRemark> remarks, int read)
    {
        TrialRemark[] left = [.. remarks.Where(remark => remark.LeftOut)];
        if (left.Length == 0 || !problem.What.Contains(Curves.LeftForKind, StringComparison.Ordinal))
        {
            return problem;
        }

        string[] reasons = [.. left.DistinctBy(remark => (remark.Rule, remark.Remedy)).Take(3).Select(remark => string.Create(CultureInfo.InvariantCulture, $"Reading {remark.Reading}: {remark.Words} {remark.Remedy}"))];
        int count = left.Select(remark => remark.Reading).Distinct().Count();
        return problem with { Value = string.Create(CultureInfo.InvariantCulture, $"{problem.Value}; {count} of {read} readings are left out"), Next = string.Join(" ", reasons) };
    }

    /// <summary>What the rules say of the readings, without a fit.</summary>
    /// <param name="kind">Name of the kind.</param>
    /// <param name="input">What was read and said.</param>
    public static Checked<IReadOnlyList<TrialRemark>> Check(string kind, TrialInput input)
    {
        if (TrialCard.Find(kind) is not { } card)
        {
            return new(Unknown(kind));
        }

        List<TrialRemark> remarks = [];
        return SheetMaker.Make(card, input, remarks).Map<IReadOnlyList<TrialRemark>>(sheet => [.. remarks, .. RuleBook.Readings(sheet)]);
    }

    /// <summary>What the rules say of a run as a whole, its readings being what they are.</summary>
    /// <param name="card">The kind.</param>
    /// <param name="input">What was read and said.</param>
    internal static IEnumerable<TrialRemark> OfWhole(TrialCard card, TrialInput input) => SheetMaker.Make(card, input, []) is { IsFine: true, Value: var sheet } ? RuleBook.OfWhole(sheet) : [];

    /// <summary>What is said of a kind that there is not.</summary>
    /// <param name="kind">As it was typed.</param>
    /// <param name="names">Those that there are; null: of all cards.</param>
    public static Problem Unknown(string kind, IEnumerable<string>? names = null) => new($"There is no kind of trial '{kind}'.", "KIND", kind, NearNames.Told(kind, names ?? TrialCard.All.Select(card => card.Name)), "Type one of these; 'heatwright trial kinds' says what each is for.");
}

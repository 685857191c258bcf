using System.Text;
using Heatwright.Arrangements;
using Heatwright.BuildSheets;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Safety;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs.BuildSheets;

/// <summary>Makes the build sheet of an arrangement from a study.</summary>
public static class MakeBuildSheet
{
    /// <summary>The sheet, or everything that stands in the way. What a section cannot work out stands in it; the rest is there all the same.</summary>
    /// <param name="opened">The study.</param>
    /// <param name="request">What is wanted.</param>
    /// <param name="result">The study worked out, where that is at hand; it is worked out only where nothing says which arrangement is meant.</param>
    /// <param name="progress">Told what is being done.</param>
    public static Checked<MadeSheet> Of(OpenedStudy opened, SheetRequest request, StudyResult? result = null, Action<string>? progress = null)
    {
        var study = opened.Study;
        if (study.Brief is not { } brief)
        {
            return new(new Problem("The study has no brief, so there is nothing to build to.", study.Name, "none", "what the tool must do", "Say its warm-up first: heatwright brief FILE --add 'blade at 320 °C within 25 s from 20 °C'."));
        }

        var chosen = Chosen(opened, request.Arrangement, result, progress);
        var choices = Choices(request.Set);
        var drawer = Drawer(study, request.Drawer);
        var columns = request.Columns is { } headings ? PartsList.Headings(headings) : new(PartsList.Usual);
        var readings = request.Calibration is { } file ? CalibrationFile.Read(file) : new Checked<IReadOnlyList<CalibrationPoint>>((IReadOnlyList<CalibrationPoint>)[]);
        var taken = CalibrationFile.Under(request.Taken, choices.IsFine ? choices.Value : SheetChoices.Defaults);
        List<Problem> problems = [.. chosen.Problems, .. choices.Problems, .. drawer.Problems, .. columns.Problems, .. readings.Problems, .. taken.Problems];
        if (request.Series is not ("E24" or "E96"))
        {
            problems.Add(new("There is no such series of resistors here.", "--series", request.Series, "E24 or E96 (IEC 60063)", "Choose one, or give what is in your drawer with --drawer FILE."));
        }

        if (problems.Count > 0)
        {
            return new(problems);
        }

        progress?.Invoke($"Laying out {chosen.Value.Arrangement.Letter}");
        var arrangement = chosen.Value.Arrangement;
        var shelf = result?.Shelf ?? new Arrangements.Shelf(study.Parts, RunStudy.Findings(study));
        var plan = RunStudy.Plan(brief);
        return PlantBuilder.For(arrangement, shelf, plan).Map(builder => new MadeSheet(SheetMaker.Make(new SheetAsk(study.Name, arrangement, shelf, builder, plan, SafetyCheck.Of(arrangement, shelf, builder), new StudyState(opened.Fingerprint), study.Seed)
        {
            Choices = choices.Value,
            Series = request.Series,
            Drawer = drawer.Value.Resistors.Count > 0 ? drawer.Value : null,
            Form = request.Form,
            Readings = readings.Value.Count > 0 ? readings.Value : null,
            ReadUnder = request.Taken.Count > 0 ? taken.Value : null,
            Alternates = study.Parts,
            Prices = Prices(study),
            Date = request.Date,
            WarmUp = brief.Requirements.Where(line => line is { Quantity: RequirementQuantity.WarmUpTime, AtMost: true }).OrderByDescending(line => line.Must).ThenBy(line => line.Limit)
                .Select(line => new PromisedWarmUp(line.Text.TrimEnd('.'), (Units.Find(line.Unit) ?? Units.Second).ToSi(line.Limit))).FirstOrDefault(),
        }), arrangement.Letter, chosen.Value.Why, columns.Value, study.Invented));
    }

    /// <summary>Day to write on a sheet where nobody says one: that of the decision for its arrangement, else this day.</summary>
    /// <param name="study">The study.</param>
    /// <param name="letter">Letter of the arrangement; empty: the one decided for, else the one that stands best.</param>
    /// <param name="today">This day, as 2026-03-01.</param>
    public static string Day(Study study, string letter, string today) =>
        study.Decisions is [.., var card] && (letter.Length == 0 || study.Arrangements.Any(one => one.Letter == letter && one.Id == card.Chosen)) ? card.On : today;

    /// <summary>All numbers that can be set, with their defaults and why they are so.</summary>
    public static IReadOnlyList<(string Name, string Value, string Why)> Names() =>
        [.. SheetChoices.Defaults.All.Select(choice => (choice.Name, $"{Display.Significant(choice.Value, 6)}{(choice.PlusMinus > 0 ? $" ± {Display.Significant(choice.PlusMinus, 3)}" : "")} {choice.Unit.Symbol}".TrimEnd(), choice.Why))];

    private static Checked<(Arrangement Arrangement, string Why)> Chosen(OpenedStudy opened, string? wanted, StudyResult? result, Action<string>? progress)
    {
        var study = opened.Study;
        string have = study.Arrangements.Count > 0 ? string.Join(", ", study.Arrangements.Select(one => one.Letter)) : "no arrangement yet";
        if (wanted is not null)
        {
            return study.Arrangements.FirstOrDefault(one => string.Equals(one.Letter, wanted, StringComparison.OrdinalIgnoreCase) || one.Id.Name == wanted) is { } named
                ? new((named, "this arrangement was asked for")) : new(new Problem("The study has no such arrangement.", "--arrangement", wanted, have, "Name one of them."));
        }

        if (study.Decisions is [.., var card] && study.Arrangements.FirstOrDefault(one => one.Id == card.Chosen) is { } decided)
        {
            return new((decided, $"decided for on {card.On}"));
        }

        if (study.Arrangements.Count == 0)
        {
            return new(new Problem("The study has no arrangement.", study.Name, "none", "one wired arrangement", "Wire one with 'heatwright arrange'."));
        }

        var verdicts = (result ?? RunStudy.Run(study, opened.Fingerprint, progress)).Verdicts;
        VerdictWord[] order = [VerdictWord.Go, VerdictWord.GoIf, VerdictWord.NeedMoreReadings, VerdictWord.NoGo];
        var best = verdicts.MinBy(verdict => Array.IndexOf(order, verdict.Word))!;
        return new((best.Arrangement, $"nothing is decided yet; of {have} it stands best, {ComparisonText.Word(best.Word)}"));
    }

    private static Checked<SheetChoices> Choices(IReadOnlyList<string> words)
    {
        var choices = SheetChoices.Defaults;
        List<Problem> problems = [];
        foreach (string word in words)
        {
            string[] pair = word.Split('=', 2, StringSplitOptions.TrimEntries);
            if (pair.Length < 2 || choices.Find(pair[0]) is not { } choice)
            {
                problems.AddRange(choices.With(pair[0], 0).Problems is { Count: > 0 } unknown && pair.Length == 2 ? unknown : [new("A number of the board is set as name=value.", "--set", word, "name=value", "Type for example --set \"supply=3.0V\"; --names lists all.")]);
                continue;
            }

            var read = OptionReader.Amount($"--set {pair[0]}", pair[1], choice.Unit == Units.One ? Expect.Ratio : Expect.Of(choice.Unit, pair[0]));
            var next = read.Then(amount => choices.With(pair[0], choice.Unit.IsLevel ? Units.Celsius.FromSi(amount.Si) : amount.Si / choice.Unit.Factor, amount.PlusMinus * amount.Unit.Factor / choice.Unit.Factor));
            problems.AddRange(next.Problems);
            choices = next.IsFine ? next.Value : choices;
        }

        return problems.Count > 0 ? new(problems) : new(choices);
    }

    private static Checked<ResistorDrawer> Drawer(Study study, string? from)
    {
        if (from is null)
        {
            return new(new ResistorDrawer([]));
        }

        if (from == "own")
        {
            return study.Own is { Resistors.Count: > 0 } own ? new(new ResistorDrawer([.. own.Resistors.GroupBy(ohm => ohm).Select(group => new DrawerResistor(group.Key, group.Count()))]))
                : new(new Problem("The study knows no resistor drawer.", "--drawer", "own", "resistors among the study's own things", "Give a file: one value a line, with a count behind a comma."));
        }

        try
        {
            return ResistorDrawer.Parse(File.ReadAllText(from, Encoding.UTF8), from);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The drawer cannot be opened.", from, error.Message, "a text file of resistor values", "Check the name."));
        }
    }

    private static Dictionary<string, PartPrices> Prices(Study study) => study.Parts
        .Select(part => (part.Id.Name, Prices: new PartPrices(part.Best(PartQuantities.Price)?.Value, part.Best(PartQuantities.PriceAt10)?.Value, part.Best(PartQuantities.PriceAt100)?.Value)))
        .ToDictionary(pair => pair.Name, pair => pair.Prices, StringComparer.Ordinal);
}

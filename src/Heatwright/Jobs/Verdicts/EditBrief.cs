using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>States the work of a brief, value by value, and takes lines out of it.</summary>
public static class EditBrief
{
    /// <summary>The working end as long as nobody named it.</summary>
    internal const string AnyEnd = "working end";

    /// <summary>A piece of work as long as nobody named it.</summary>
    internal const string AnyPiece = "piece";

    private sealed record Field(string Name, string Says, Func<Brief, string> Now, Func<Brief, string, Checked<Brief>> With)
    {
        public Unit? Unit { get; init; }

        public Func<Brief, double>? Value { get; init; }
    }

    private static readonly Field[] Fields =
    [
        Words("promise", "what the tool promises, in a sentence", brief => brief.Promise, (brief, text) => brief with { Promise = text }),
        Words("end", "the working end: blade, pen, wire", brief => brief.WorkingEnd, (brief, text) => brief with { WorkingEnd = text }),
        Words("piece", "one piece of work: cut, stroke, seam", brief => brief.Piece, (brief, text) => brief with { Piece = text }),
        Words("why", "where the figures of the work come from", brief => brief.Work.Why, (brief, text) => brief with { Duty = brief.Work with { Why = text } }),
        Number("air", "air around the tool", Units.Celsius, brief => brief.AirC, (brief, value, _) => brief with { AirC = value }),
        Number("target", "temperature at which the tool is ready", Units.Celsius, brief => brief.Work.TargetC, (brief, value, _) => brief with { Duty = brief.Work with { TargetC = value } }),
        Number("above", "temperature above which the work takes heat", Units.Celsius, brief => brief.Work.AboveC, (brief, value, _) => brief with { Duty = brief.Work with { AboveC = value } }),
        Number("every", "time from piece to piece", Units.Second, brief => brief.Work.EveryS, (brief, value, _) => brief with { Duty = brief.Work with { EveryS = value } }),
        Number("for", "time a piece may last", Units.Second, brief => brief.Work.ForS, (brief, value, _) => brief with { Duty = brief.Work with { ForS = value } }),
        Number("first", "first piece so long after the target is reached", Units.Second, brief => brief.Work.FirstAfterS, (brief, value, _) => brief with { Duty = brief.Work with { FirstAfterS = value } }),
        Number("aim", "how far above the target the controller holds", Units.Kelvin, brief => brief.Work.AimAboveK ?? PlantBuilder.UsualAimAboveK, (brief, value, _) => brief with { Duty = brief.Work with { AimAboveK = value } }),
        new("blocks", "what it does one after another: warm-up; work 12; stand-by 5min at 150C; off 1h; again", brief => BlockWords.Of(brief.Work), (brief, text) => BlockWords.Read(brief.Work, text).Map(duty => brief with { Duty = duty })),
        Number("contact", "conductance into the work", Units.WattPerKelvin, brief => brief.Work.Contact, (brief, value, half) => brief with { Duty = brief.Work with { Contact = value, ContactPlusMinus = half } }, brief => brief.Work.ContactPlusMinus),
        Number("need", "heat that a piece takes", Units.Joule, brief => brief.Work.NeedJ, (brief, value, half) => brief with { Duty = brief.Work with { NeedJ = value, NeedPlusMinusJ = half } }, brief => brief.Work.NeedPlusMinusJ),
    ];

    /// <summary>Values of the hot work: a lamp's brief has none of them.</summary>
    private static readonly string[] Hot = ["why", "target", "above", "every", "for", "first", "aim", "blocks", "contact", "need"];

    /// <summary>The work as it stands before anything but its target was said of it.</summary>
    internal static Duty First(double targetC, double airC) => new(targetC, 60, 10, 5, airC, 0, 0, 0, 0, Duty.NothingSaid);

    /// <summary>Why the work is as it is, where somebody stated it and no why.</summary>
    internal const string WithoutWhy = "as the brief states the work; nobody said why";

    /// <summary>A brief as its first sentence begins it: a hot tool with its target, or a lamp, which has none.</summary>
    internal static Brief Begun(SaidRequirement said) => said.TargetC is { } target
        ? new("", AnyEnd, AnyPiece, said.AirC ?? 20, []) { Duty = First(target, said.AirC ?? 20) }
        : new("", "lamp head", "use", said.AirC ?? 20, []);

    /// <summary>What can be stated, each with what it means and how it stands.</summary>
    public static IReadOnlyList<(string Name, string Says, string Now)> Known(Brief? brief) => [.. Fields.Select(field => (field.Name, field.Says, brief is null || (brief.Duty is null && Hot.Contains(field.Name)) ? "" : field.Now(brief)))];

    /// <summary>The values that are one number, each with its unit; of a brief without hot work only those that it has.</summary>
    internal static IReadOnlyList<(string Name, string Says, Unit Unit, double Value)> Numbers(Brief brief) =>
        [.. Fields.Where(field => field.Unit is not null && (brief.Duty is not null || !Hot.Contains(field.Name))).Select(field => (field.Name, field.Says, field.Unit!, field.Value!(brief)))];

    /// <summary>A value of the work that somebody said, in a sentence or by its name; what nobody said is as is usual.</summary>
    internal static bool IsSaid(Brief brief, string name)
    {
        var usual = brief with { AirC = 20, Duty = First(brief.Work.TargetC, brief.AirC) };
        var field = Fields.First(field => field.Name == name);
        return name == "target" || field.Now(brief) != field.Now(usual) || brief.Requirements.Select(line => BriefSentence.Read(line.Text, [])).Any(read => read.IsFine && name switch
        {
            "air" => read.Value.AirC == brief.AirC,
            "every" => read.Value.EveryS == brief.Work.EveryS,
            _ => false,
        });
    }

    /// <summary>Limits that were typed, with what they are as a standard doubt: ±20 J that turns into ±12 J without a word looks like a slip; empty: none were typed.</summary>
    internal static string Limits(double plusMinus, Unit unit) => plusMinus > 0
        ? $"typed as limits of ±{Display.Significant(plusMinus, 4)}{Display.Behind(unit)}, which is ±{Display.Significant(plusMinus / Math.Sqrt(3), 2)}{Display.Behind(unit)} as one standard doubt" : "";

    /// <summary>The brief with one value stated; nothing is written. The name is one of those known.</summary>
    internal static Checked<Brief> With(Brief brief, string name, string text) => Fields.First(field => field.Name == name).With(brief, text);

    /// <summary>States values: 'every=40s', 'need=45J±10J', 'piece=cut'.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="words">name=value, each.</param>
    public static Checked<Brief> Set(string path, IReadOnlyList<string> words)
    {
        Brief? made = null;
        return ChangeStudy.Run(path, $"brief: {string.Join(", ", words)}", study =>
        {
            List<Problem> problems = [];
            var brief = study.Brief ?? (words.Any(word => word.StartsWith("target=", StringComparison.Ordinal)) ? new Brief("", AnyEnd, AnyPiece, 20, []) { Duty = First(0, 20) } : null);
            if (brief is null)
            {
                return new Checked<Study>(new Problem("The study has no brief.", study.Name, "none", "a target temperature first", "State it with the rest: target=320C, or say a warm-up: heatwright brief FILE --add 'blade at 320 °C within 25 s from 20 °C'; of a lamp, its light: --add 'full light for 5 h'."));
            }

            bool hot = words.Any(word => Hot.Contains(word.Split('=')[0].Trim()));
            if (hot && brief.Duty is null)
            {
                if (!words.Any(word => word.StartsWith("target=", StringComparison.Ordinal)))
                {
                    return new Checked<Study>(new Problem("The brief has no hot work.", study.Name, string.Join(", ", words), "a target temperature first", "State it with the rest: target=320C. A lamp needs none of it."));
                }

                brief = brief with { Duty = First(0, brief.AirC) };
            }

            bool fromAir = brief.Duty is { } work && work.AboveC == brief.AirC && !words.Any(word => word.StartsWith("above=", StringComparison.Ordinal));
            foreach (string word in words)
            {
                string[] pair = word.Split('=', 2, StringSplitOptions.TrimEntries);
                if (pair.Length < 2 || Fields.FirstOrDefault(field => field.Name == pair[0]) is not { } found)
                {
                    problems.Add(new("The brief has no such value.", "brief", word, string.Join(", ", Fields.Select(field => $"{field.Name}=")), "Type name=value, one of these."));
                    continue;
                }

                var next = found.With(brief, pair[1]);
                problems.AddRange(next.Problems);
                brief = next.IsFine ? next.Value : brief;
            }

            if (brief.Duty is { Why: Duty.NothingSaid } told && words.Any(word => word.StartsWith("need=", StringComparison.Ordinal) || word.StartsWith("contact=", StringComparison.Ordinal)))
            {
                brief = brief with { Duty = told with { Why = WithoutWhy } };
            }

            // Until something else is said, the work takes heat from the air on, whatever the air is.
            made = fromAir ? brief with { Duty = brief.Work with { AboveC = brief.AirC } } : brief;
            return problems.Count > 0 ? new(problems) : new(study with { Brief = made });
        }).Map(_ => made!);
    }

    /// <summary>Takes a line out of the brief; undo brings it back.</summary>
    public static Checked<StudyChanged> Drop(string path, string line) => ChangeStudy.Run(path, $"brief: line {line} taken out", study => study.Brief is { } brief && brief.Requirements.Any(one => one.Id == line)
        ? new Checked<Study>(study with { Brief = brief with { Requirements = [.. brief.Requirements.Where(one => one.Id != line)] } })
        : new(new Problem("The brief has no such line.", study.Name, line, study.Brief is { Requirements.Count: > 0 } there ? string.Join(", ", there.Requirements.Select(one => one.Id)) : "no line yet", "Choose one of them.")));

    private static Field Words(string name, string says, Func<Brief, string> now, Func<Brief, string, Brief> with) => new(name, says, now, (brief, text) => new(with(brief, text)));

    private static Field Number(string name, string says, Unit unit, Func<Brief, double> now, Func<Brief, double, double, Brief> with, Func<Brief, double>? half = null) => new(name, says,
        brief => string.Create(CultureInfo.InvariantCulture, $"{now(brief):0.######}{(unit == Units.Celsius ? "C" : unit.Symbol)}{(half?.Invoke(brief) is > 0 and var off ? string.Create(CultureInfo.InvariantCulture, $"±{off:0.######}{unit.Symbol}") : "")}"),
        (brief, text) => OptionReader.Amount(name, text, Expect.Of(unit, says)).Then(read =>
        {
            double value = unit.IsLevel ? Units.Celsius.FromSi(read.Si) : read.Si;
            return unit.IsLevel || value >= 0 ? new Checked<Brief>(with(brief, value, read.PlusMinus * read.Unit.Factor)) : new(new Problem($"{name} cannot be below nought.", "brief", text, "0 or more", "Type it again."));
        }))
    { Unit = unit, Value = now };
}

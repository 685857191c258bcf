using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Quantities;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.StudyFile;

/// <summary>What a study must be to be worked with: words that are known, ids that stand once, references that lead somewhere.</summary>
public static class StudyCheck
{
    /// <summary>All that is wrong, at once; empty: nothing.</summary>
    public static IReadOnlyList<Problem> Of(Study study, string where)
    {
        var problems = new ProblemList();
        var desk = new CheckDesk(where, _ => false, problems);
        Wholeness.Check(study, desk);
        Check(study, desk);
        return problems.All();
    }

    /// <summary>Lays all that is wrong on the desk.</summary>
    internal static void Check(Study study, CheckDesk desk)
    {
        if (string.IsNullOrWhiteSpace(study.Name))
        {
            desk.Say("name", "The study has no name.", study.Name, "the maker's words for it", "Give it a name.");
        }
        CheckInstruments(study.Instruments, desk);
        CheckParts(study.Parts, desk);
        RunCheck.Check(study, desk);
        CheckArrangements(study, desk);
        CheckDecisions(study, desk);
        PlantCheck.Check(study, desk);
        KeepCheck.Check(study, desk);
        CheckTools(study, desk);
        if (study.Own is { } own)
        {
            CheckOwn(own, desk);
        }
        if (study.Brief is { } brief)
        {
            CheckBrief(brief, desk);
        }
    }

    private static void CheckInstruments(IReadOnlyList<Instrument> instruments, CheckDesk desk)
    {
        desk.Ids("instruments", instruments.Select((instrument, i) => (instrument.Id, $"{CheckDesk.At("instruments", i)}.id")));
        foreach (var (spec, path) in instruments.SelectMany((instrument, i) => instrument.Specs.Select((spec, j) => (spec, CheckDesk.At($"{CheckDesk.At("instruments", i)}.specs", j)))))
        {
            desk.Unit($"{path}.unit", spec.Unit, like: null);
            desk.Range($"{path}.percent", "A gain error", spec.Percent, spec.Percent >= 0, "0 % or more");
            desk.Range($"{path}.offset", "An offset error", spec.Offset, spec.Offset >= 0, "0 or more");
            desk.Range($"{path}.resolution", "A resolution", spec.Resolution, spec.Resolution >= 0, "0 or more");
        }
    }

    private static void CheckParts(IReadOnlyList<Part> parts, CheckDesk desk)
    {
        desk.Ids("parts", parts.Select((part, i) => (part.Id.Name ?? "", $"{CheckDesk.At("parts", i)}.id")));
        for (int i = 0; i < parts.Count; i++)
        {
            string at = CheckDesk.At("parts", i);
            desk.Range($"{at}.count", "A count", parts[i].Count, parts[i].Count >= 0, "0 or more");
            desk.Word($"{at}.from", "How a part came", parts[i].From, StudyWords.From);
            CheckSamples(parts[i], at, desk);
            CheckLike(parts[i], parts, at, desk);
            CheckTwin(parts[i], parts, at, desk);
            for (int j = 0; j < parts[i].Stated.Count; j++)
            {
                CheckStated(parts[i].Stated[j], CheckDesk.At($"{at}.stated", j), desk);
            }
        }
    }

    /// <summary>One step only: what a part is like stands for itself.</summary>
    private static void CheckLike(Part part, IReadOnlyList<Part> parts, string at, CheckDesk desk)
    {
        if (part.Like is not { } like)
        {
            return;
        }

        if (!parts.Any(other => other.Id == like.Part && other.Id != part.Id && other.Kind == part.Kind && other.Like is null))
        {
            desk.Say($"{at}.like.part", "A part is like one that cannot stand for it.", like.Part.Name ?? "", "another part of the same kind, itself like none", "Name one, or leave 'like' out.");
        }

        for (int j = 0; j < like.But.Count; j++)
        {
            desk.Word($"{at}.like.but[{j}]", "A quantity", like.But[j], StudyWords.Quantities.Keys.Order(StringComparer.Ordinal));
        }
    }

    private static void CheckTwin(Part part, IReadOnlyList<Part> parts, string at, CheckDesk desk)
    {
        if (part.TwinOf is { } other && !parts.Any(one => one.Id == other && one.Id != part.Id && one.Kind == part.Kind))
        {
            desk.Say($"{at}.twinOf", "A part is to be set beside one that is not there.", other.Name, "another part of the same kind", "Name one, or leave the field out.");
        }
    }

    private static void CheckSamples(Part part, string at, CheckDesk desk)
    {
        var samples = part.Samples ?? [];
        for (int j = 0; j < samples.Count; j++)
        {
            string path = CheckDesk.At($"{at}.samples", j);
            desk.Range($"{path}.number", "The number of a piece", samples[j].Number, samples[j].Number >= 1 && !samples.Take(j).Any(other => other.Number == samples[j].Number), "1 or more, each once");
            desk.Word($"{path}.state", "The state of a piece", samples[j].State, StudyWords.SampleStates);
        }
    }

    private static void CheckStated(StatedValue stated, string path, CheckDesk desk)
    {
        desk.Word($"{path}.quantity", "A quantity", stated.Quantity, StudyWords.Quantities.Keys.Order(StringComparer.Ordinal));
        desk.Unit($"{path}.unit", stated.Unit, StudyWords.Quantities.GetValueOrDefault(stated.Quantity));
        desk.Range($"{path}.value", "A value", stated.Value, true, "a number");
        desk.Range($"{path}.plusMinus", "A half width", stated.PlusMinus, stated.PlusMinus >= 0, "0 or more; 0: none stated");
        desk.Range($"{path}.sample", "The number of a piece", stated.Sample ?? 1, stated.Sample is null or >= 1, "1 or more; left out: all of them");
        desk.Word($"{path}.origin", "An origin", stated.Origin, StudyWords.Origins);
        if (stated.Origin is "assumed" or "published" && string.IsNullOrWhiteSpace(stated.Text))
        {
            desk.Say($"{path}.text", "A value rests on nothing that can be read.", stated.Text, stated.Origin == "assumed" ? "why it is assumed" : "the source and the place in it", "Write it down.");
        }
    }

    private static void CheckArrangements(Study study, CheckDesk desk)
    {
        desk.Ids("arrangements", study.Arrangements.Select((arrangement, i) => (arrangement.Id.Name ?? "", $"{CheckDesk.At("arrangements", i)}.id")));
        var shelf = new Shelf(study.Parts, desk);
        for (int i = 0; i < study.Arrangements.Count; i++)
        {
            var one = study.Arrangements[i];
            string at = CheckDesk.At("arrangements", i);
            foreach (var (field, part, kind) in PartsOf(one))
            {
                shelf.Check($"{at}.{field}", part, kind);
            }
            if (one.Heater is null == one.Lamp is null)
            {
                desk.Say(one.Heater is null ? $"{at}.heater" : $"{at}.lamp", "An arrangement has exactly one load.", one.Heater is null ? "neither heater nor lamp" : "heater and lamp", "a heater, or a lamp", "Name one of the two.");
            }
            else if (one.Heater is not null && (one.Sensor is null || one.Controller is null))
            {
                desk.Say(one.Sensor is null ? $"{at}.sensor" : $"{at}.controller", "A heater is never without sensor and controller.", "absent", "a part", "Name one; only a lamp works without.");
            }

            desk.Range($"{at}.series", "A count of cells in series", one.Series, one.Series >= 1, "1 or more");
            desk.Range($"{at}.parallel", "A count of strings side by side", one.Parallel, one.Parallel >= 1, "1 or more");
            desk.Range($"{at}.contactCount", "A count of touches", one.ContactCount, one.ContactCount >= 0, "0 or more");
            desk.Range($"{at}.dutyCeiling", "A duty", one.DutyCeiling, one.DutyCeiling is > 0 and <= 1, "above 0, at most 1");
            desk.Range($"{at}.gainWPerK", "A controller's gain", one.GainWPerK ?? 1, one.GainWPerK is null or > 0, "above 0; left out: by the usual tuning");
            desk.Range($"{at}.resetS", "A controller's reset time", one.ResetS ?? 1, one.ResetS is null or > 0, "above 0; left out: by the usual tuning");
        }
    }

    private static void CheckDecisions(Study study, CheckDesk desk)
    {
        desk.Ids("decisions", study.Decisions.Select((card, i) => (card.Id, $"{CheckDesk.At("decisions", i)}.id")));
        desk.Ids("prototypeReadings", study.PrototypeReadings.Select((reading, i) => (reading.Id, $"{CheckDesk.At("prototypeReadings", i)}.id")));
        var cards = study.Decisions.Select(card => card.Id).ToHashSet(StringComparer.Ordinal);
        for (int i = 0; i < study.PrototypeReadings.Count; i++)
        {
            var reading = study.PrototypeReadings[i];
            string at = CheckDesk.At("prototypeReadings", i);
            desk.Unit($"{at}.unit", reading.Unit, like: null);
            desk.Range($"{at}.plusMinus", "A doubt", reading.PlusMinus, reading.PlusMinus > 0, "above 0");
            if (!cards.Contains(reading.Decision))
            {
                desk.Say($"{at}.decision", "A prototype reading belongs to a decision that is not there.", reading.Decision, string.Join(", ", cards.Order(StringComparer.Ordinal)), "Name the decision card it was built after.");
            }
        }
    }

    private static IEnumerable<(string Field, PartId? Part, PartKind Kind)> PartsOf(Arrangement one) =>
    [
        ("cell", one.Cell, PartKind.Cell), ("heater", one.Heater, PartKind.Heater), ("switch", one.Switch, PartKind.Switch), ("leads", one.Leads, PartKind.Leads),
        ("contacts", one.Contacts, PartKind.Contacts), ("sensor", one.Sensor, PartKind.Sensor), ("controller", one.Controller, PartKind.Controller),
        ("handle", one.Handle, PartKind.Handle), ("lamp", one.Lamp, PartKind.Lamp), ("supervision", one.Supervision, PartKind.Supervision), ("stepUp", one.StepUp, PartKind.StepUp),
        ("charger", one.Charger, PartKind.Charger), ("cutOut", one.CutOut, PartKind.CutOut),
    ];

    private static void CheckTools(Study study, CheckDesk desk)
    {
        desk.Ids("tools", study.Tools.Select((tool, i) => (tool.Id ?? "", $"{CheckDesk.At("tools", i)}.id")));
        string[] words = [.. Enum.GetValues<RequirementQuantity>().Select(quantity => char.ToLowerInvariant(quantity.ToString()[0]) + quantity.ToString()[1..]), .. ToolReading.Others.Keys];
        foreach (var (reading, path) in study.Tools.SelectMany((tool, i) => tool.Readings.Select((reading, j) => (reading, CheckDesk.At($"{CheckDesk.At("tools", i)}.readings", j)))))
        {
            desk.Word($"{path}.quantity", "What was read on a tool", reading.Quantity, words);
            var like = ToolReading.Speaks(reading.Quantity) is { } quantity ? StudyWords.Of(quantity) : ToolReading.Others.GetValueOrDefault(reading.Quantity);
            desk.Unit($"{path}.unit", reading.Unit, like);
            desk.Range($"{path}.value", "A reading", reading.Value, true, "a number");
            desk.Range($"{path}.plusMinus", "A half width", reading.PlusMinus, reading.PlusMinus >= 0, "0 or more; 0: none stated");
        }
    }

    private static void CheckOwn(OwnThings own, CheckDesk desk)
    {
        for (int i = 0; i < own.Resistors.Count; i++)
        {
            desk.Range(CheckDesk.At("own.resistors", i), "A resistor", own.Resistors[i], own.Resistors[i] > 0, "above 0 Ω");
        }
        for (int i = 0; i < own.Prices.Count; i++)
        {
            desk.Range($"{CheckDesk.At("own.prices", i)}.price", "A price", own.Prices[i].Price, own.Prices[i].Price >= 0, "0 or more");
        }
        for (int i = 0; i < own.Constants.Count; i++)
        {
            desk.Unit($"{CheckDesk.At("own.constants", i)}.unit", own.Constants[i].Unit, like: null);
            desk.Range($"{CheckDesk.At("own.constants", i)}.value", "A constant", own.Constants[i].Value, true, "a number");
        }
    }

    private static void CheckBlocks(Duty duty, CheckDesk desk)
    {
        desk.Range("brief.duty.aimAboveK", "How far above the target the controller holds", duty.AimAboveK ?? 0, duty.AimAboveK is null or (>= 0 and <= 200), "0 to 200 K");
        desk.Range("brief.duty.rounds", "A count of rounds", duty.Rounds ?? 1, duty.Rounds is null or (>= 1 and <= 100_000), "1 to 100000, or nothing: until the charge is over");
        if (duty.Blocks is not { } blocks)
        {
            return;
        }

        desk.Range("brief.duty.blocks", "A count of blocks", blocks.Count, blocks.Count is >= 1 and <= 1000, "1 to 1000, or no such field");
        for (int i = 0; i < blocks.Count; i++)
        {
            var block = blocks[i];
            string at = CheckDesk.At("brief.duty.blocks", i);
            bool works = block.Does == DutyKind.Work;
            desk.Range($"{at}.pieces", "A count of pieces", block.Pieces ?? 0, works ? block.Pieces is >= 1 and < 100_000 : block.Pieces is null, works ? "1 or more" : "none: only work has pieces");
            desk.Range($"{at}.lastsS", "How long a block lasts", block.LastsS ?? 0, works ? block.LastsS is null : block.LastsS is > 0 || (block.LastsS is null && block.Does == DutyKind.WarmUp),
                works ? "nothing: the pieces say it" : "above 0 s");
            desk.Range($"{at}.holdsC", "A temperature of stand-by", block.HoldsC ?? 0, block.HoldsC is null || (block.Does == DutyKind.StandBy && block.HoldsC > -60 && block.HoldsC <= duty.TargetC), "at most the target; only stand-by has one");
        }
    }

    private static void CheckBrief(Brief brief, CheckDesk desk)
    {
        desk.Range("brief.airC", "A temperature of the air", brief.AirC, brief.AirC is >= -60 and <= 100, "-60 to 100 °C");
        if (brief.Duty is { } duty)
        {
            CheckDuty(duty, desk);
            CheckBlocks(duty, desk);
        }

        desk.Ids("requirements", brief.Requirements.Select((line, i) => (line.Id, $"{CheckDesk.At("brief.requirements", i)}.id")));
        for (int i = 0; i < brief.Requirements.Count; i++)
        {
            var line = brief.Requirements[i];
            string at = CheckDesk.At("brief.requirements", i);
            desk.Unit($"{at}.unit", line.Unit, desk.StandsIn($"{at}.quantity") ? null : StudyWords.Of(line.Quantity));
            desk.Range($"{at}.limit", "A limit", line.Limit, true, "a number");
            desk.Range($"{at}.weight", "A weight", line.Weight, line.Weight >= 0, "0 or more");
        }
    }

    private static void CheckDuty(Duty duty, CheckDesk desk)
    {
        desk.Range("brief.duty.everyS", "A time from piece to piece", duty.EveryS, duty.EveryS > 0, "above 0 s");
        desk.Range("brief.duty.forS", "A time a piece may last", duty.ForS, duty.ForS > 0, "above 0 s");
        desk.Range("brief.duty.firstAfterS", "A wait before the first piece", duty.FirstAfterS, duty.FirstAfterS >= 0, "0 s or more");
        desk.Range("brief.duty.contact", "A conductance into the work", duty.Contact, duty.Contact >= 0, "0 W/K or more");
        desk.Range("brief.duty.contactPlusMinus", "A half width", duty.ContactPlusMinus, duty.ContactPlusMinus >= 0, "0 or more");
        desk.Range("brief.duty.needJ", "A heat of a piece", duty.NeedJ, duty.NeedJ >= 0, "0 J or more");
        desk.Range("brief.duty.needPlusMinusJ", "A half width", duty.NeedPlusMinusJ, duty.NeedPlusMinusJ >= 0, "0 or more");
    }
}

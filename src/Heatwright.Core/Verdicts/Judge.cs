using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.Verdicts;

/// <summary>Judges an arrangement against the brief by the rule of the four words.</summary>
public sealed class Judge
{
    /// <summary>Kept with at least this probability: go. Failed with at least this probability: no-go.</summary>
    public const double Sure = 0.95;

    /// <summary>From this chance on, a must that a value inside its range lifts is a condition; below, it asks for a reading.</summary>
    internal const double Likely = 0.75;

    private readonly Brief brief;
    private readonly Shelf shelf;
    private readonly Arrangement arrangement;
    private readonly SafetyFindings safety;
    private readonly Prediction? prediction;
    private readonly Sensitivity? sensitivity;
    private readonly Sentences? say;
    private readonly ulong seed;
    private readonly StudyState state;
    private readonly StandingLines standing;
    private readonly Lazy<IReadOnlyList<FalseClaim>>? claims;

    private Judge(Brief brief, Shelf shelf, Arrangement arrangement, SafetyFindings safety, Prediction? prediction, ulong seed, StudyState state, CancellationToken cancel)
    {
        (this.brief, this.shelf, this.arrangement, this.safety, this.prediction, this.seed, this.state) = (brief, shelf, arrangement, safety, prediction, seed, state);
        standing = new(shelf, arrangement, safety, seed);
        if (prediction is not null)
        {
            sensitivity = new Sensitivity(prediction.Builder, cancel);
            say = new Sentences(brief, prediction);
            claims = new(() => FalseClaim.Of(prediction.Builder, cancel));
        }
    }

    /// <summary>The verdict on one arrangement.</summary>
    public static ArrangementVerdict Of(Brief brief, Shelf shelf, Arrangement arrangement, SafetyFindings safety, Prediction? prediction, IReadOnlyList<Problem> problems, ulong seed, StudyState state, CancellationToken cancel = default)
    {
        var judge = new Judge(brief, shelf, arrangement, safety, prediction, seed, state, cancel);
        RequirementVerdict[] lines = [.. brief.Requirements.Select(line =>
        {
            cancel.ThrowIfCancellationRequested();
            return judge.Line(line);
        })];
        var musts = lines.Where(line => line.Requirement.Must).ToArray();
        var word = musts.Select(line => line.Word).DefaultIfEmpty(VerdictWord.Go).Max();
        if (word == VerdictWord.Go && safety.Conditions.Count > 0)
        {
            word = VerdictWord.GoIf;
        }

        if (problems.Count > 0)
        {
            word = word == VerdictWord.NoGo ? word : VerdictWord.NeedMoreReadings;
        }

        return new(arrangement, word, judge.Because(word, musts, problems), lines, safety, prediction, problems)
        {
            FindWorst = () => prediction is null ? [] : WorstCases.Of(brief, shelf, prediction, judge.sensitivity!, CancellationToken.None),
        };
    }

    private string Because(VerdictWord word, RequirementVerdict[] musts, IReadOnlyList<Problem> problems)
    {
        if (word == VerdictWord.NeedMoreReadings && problems.Count > 0)
        {
            return $"{problems[0].What} {problems[0].Next}";
        }

        var worst = musts.Where(line => line.Word == word).OrderBy(line => line.Probability ?? 0).FirstOrDefault();
        string conditions = string.Join("; and ", safety.Conditions.Select(condition => $"there is {condition.Words} ({condition.Because})"));
        return word switch
        {
            VerdictWord.Go => "every must holds with at least 95 of 100 draws, and no claim that nobody checked could turn one.",
            VerdictWord.GoIf => "it works if " + string.Join("; and ", new[]
            {
                conditions,
                string.Join("; and ", musts.Where(line => line.Word == VerdictWord.GoIf && line.Remedy.Length > 0 && line.Probability is not null).Select(line => line.Remedy).Distinct().Take(2)),
            }.Where(text => text.Length > 0)) + ".",
            _ => $"{worst!.Because}.{(worst.Remedy.Length > 0 ? " " + Capital(worst.Remedy) + "." : "")}",
        };
    }

    private RequirementVerdict Line(Requirement line) => line.Quantity switch
    {
        _ when standing.Line(line) is { } known => known,
        _ when prediction is null => new(line, VerdictWord.NeedMoreReadings, null, "not known", null, "the arrangement cannot be predicted yet", ""),
        RequirementQuantity.WarmUpTime or RequirementQuantity.PiecesPerCharge or RequirementQuantity.Steadiness or RequirementQuantity.WorkRate or RequirementQuantity.RecoveryTime or RequirementQuantity.StuckSwitchTemperature
            when arrangement.Lamp is not null => NotOfALamp(line),
        RequirementQuantity.FullLightTime when arrangement.Lamp is null => new(line, VerdictWord.NoGo, null, "no light", 0, "its load is a heater, and gives no light", "a lamp in the place of the heater"),
        RequirementQuantity.PiecesPerCharge or RequirementQuantity.WorkRate or RequirementQuantity.RecoveryTime when BriefPlan.IsOpen(brief.Work) =>
            new(line, VerdictWord.NeedMoreReadings, null, "not known", null, $"nobody said how much heat one {brief.Piece} takes", "state it in the brief, in joules, and 0 J where it takes none"),
        RequirementQuantity.WarmUpTime => FromDraws(line, say!.WarmUp(prediction.MiddleOutcome) + (BriefSentence.OtherThanSaid(line, brief) is { Length: > 0 } start ? $"; {start}" : "")),
        RequirementQuantity.PiecesPerCharge => FromDraws(line, say!.Pieces(prediction.MiddleOutcome) + (BriefSentence.OtherThanSaid(line, brief) is { Length: > 0 } pace ? $"; {pace}" : "")),
        RequirementQuantity.GripTemperature => FromDraws(line, $"the grip gets to {Sentences.Say(prediction.MiddleOutcome.GripC, "0.0")} °C while the whole charge is used"),
        RequirementQuantity.CellTemperature => FromDraws(line, $"the cells get to {Sentences.Say(prediction.MiddleOutcome.CellC, "0.0")} °C, {Sentences.Say(prediction.Middle.HighestA, "0.0")} A at most"),
        RequirementQuantity.RunTime => FromDraws(line, $"it runs {Sentences.Time(prediction.MiddleOutcome.RunTimeS)}, then {say!.Ended(prediction.MiddleOutcome)}"),
        RequirementQuantity.FullLightTime => FromDraws(line, say!.FullLight(prediction.MiddleOutcome)),
        RequirementQuantity.CaseTemperature => FromDraws(line, $"case and grip are one body here, and get to {Sentences.Say(prediction.MiddleOutcome.GripC, "0.0")} °C"),
        RequirementQuantity.EndTemperature => FromDraws(line, $"the {brief.WorkingEnd} gets to {Sentences.Say(prediction.MiddleOutcome.HottestC, "0")} °C"),
        RequirementQuantity.Steadiness => FromDraws(line, say!.Droop(prediction.MiddleOutcome)),
        RequirementQuantity.WorkRate => FromDraws(line, $"the duty asks a {brief.Piece} every {Sentences.Time(brief.Work.EveryS)}, and {say!.Plural(prediction.MiddleOutcome.Pieces)} in a row are done in time"),
        RequirementQuantity.CellCurrent => FromDraws(line, say!.CellCurrent(prediction.MiddleOutcome, shelf)),
        RequirementQuantity.ProtectionTrips => FromDraws(line, $"{Sentences.Say(prediction.MiddleOutcome.HighestA, "0.0")} A at most; {say!.Trip(shelf)}"),
        RequirementQuantity.ControllerVolts => FromDraws(line, $"the pack falls to {Sentences.Say(prediction.MiddleOutcome.LowestV, "0.00")} V under load"),
        RequirementQuantity.StuckSwitchTemperature => StuckSwitch(line),
        RequirementQuantity.RecoveryTime => FromDraws(line, say!.Recovery(prediction.MiddleOutcome)),
        _ => throw new InvalidOperationException($"Requirement quantity {line.Quantity} has no rule."),
    };

    /// <summary>What only a hot end can do is not missed by a lamp, it is not there.</summary>
    private static RequirementVerdict NotOfALamp(Requirement line) =>
        new(line, VerdictWord.NoGo, null, "no hot end", 0, "its load is a lamp, and does no hot work", "take the line out of the brief, or choose a heater");

    /// <summary>Draws enough for a temperature that is compared with a limit: the tail beyond one in twenty is told by three of them.</summary>
    private const int StuckDraws = 64;

    private RequirementVerdict StuckSwitch(Requirement line)
    {
        var unit = Units.Find(line.Unit) ?? Units.Celsius;
        var builder = prediction!.Builder;
        double Held(Draw draw) => SafetyCheck.HeldK(SafetyCheck.StuckOnC(builder, builder.Drawn(draw)), arrangement, shelf, builder.TargetC, draw);
        double[] drawn = [.. Enumerable.Range(0, StuckDraws).AsParallel().AsOrdered().Select(i => Held(new(seed, i)))];
        double heldK = SafetyCheck.HeldK(safety.StuckOnC, arrangement, shelf, builder.TargetC);
        string opens = heldK < safety.StuckOnC + 273.15 ? $" {Sentences.Say(heldK - 273.15, "0")} °C, where '{shelf[arrangement.CutOut!.Value].Name}' opens; without it to" : "";
        double limit = unit.ToSi(line.Limit);
        double probability = drawn.Count(si => line.AtMost ? si <= limit : si >= limit) / (double)drawn.Length;
        var value = Predicted(unit, heldK, Spread(drawn), line, []);
        var word = probability >= Sure ? VerdictWord.Go : probability <= 1 - Sure ? VerdictWord.NoGo : VerdictWord.NeedMoreReadings;
        return new(line, word, value, Display.Rounded(value.Value, Spread(drawn), unit), probability,
            $"with the switch stuck on and a full pack the {brief.WorkingEnd} goes to about{opens} {Sentences.Say(safety.StuckOnC, "0")} °C", word == VerdictWord.Go ? "" : opens.Length > 0 ? "a cut-out that opens sooner, or a heater of more ohms" : "a cut-out that works without the controller and whose opening temperature is stated, or a heater of more ohms")
        {
            Drawn = [.. drawn.Select(unit.FromSi)],
            Margin = (line.AtMost ? limit - heldK : heldK - limit) / unit.Factor,
        };
    }

    /// <param name="line">The requirement.</param>
    /// <param name="because">What the middle run says of it.</param>
    private RequirementVerdict FromDraws(Requirement line, string because)
    {
        var quantity = Told.ByRun(line, brief, arrangement.Parallel)!;
        var unit = Units.Find(line.Unit) ?? Units.One;
        double limit = unit.ToSi(line.Limit);
        bool Kept(Outcome outcome) => line.AtMost ? quantity(outcome) <= limit : quantity(outcome) >= limit;
        double[] drawn = [.. prediction!.Draws.Select(quantity)];
        double probability = prediction.Draws.Count(Kept) / (double)prediction.Draws.Count;
        double middle = quantity(prediction.MiddleOutcome);
        var swings = sensitivity!.Swings(quantity);
        var value = double.IsFinite(middle) ? Predicted(unit, middle, Spread(drawn), line, swings) : null;
        string shown = value is null ? "never" : line.Quantity == RequirementQuantity.PiecesPerCharge ? Display.Counted(value.Value, value.StandardDoubt) : Display.Rounded(value);
        var (word, remedy) = Weigh(probability, quantity, Kept, swings);
        string story = word is VerdictWord.NoGo or VerdictWord.NeedMoreReadings && line.Quantity is RequirementQuantity.PiecesPerCharge or RequirementQuantity.WarmUpTime ? say!.RegionStory() : "";
        return new(line, word, value, shown, probability, story.Length > 0 ? $"{because}; {story}" : because, remedy)
        {
            Drawn = [.. drawn.Select(unit.FromSi)],
            Margin = double.IsFinite(middle) ? (line.AtMost ? limit - middle : middle - limit) / unit.Factor : double.NegativeInfinity,
        };
    }

    private (VerdictWord Word, string Remedy) Weigh(
        double probability, Func<Outcome, double> quantity, Func<Outcome, bool> kept, IReadOnlyList<Swing> swings)
    {
        if (probability >= Sure)
        {
            string[] claimed = [.. claims!.Value.Where(claim => !kept(claim.Less) || !kept(claim.More)).OrderByDescending(claim => Sensitivity.Size(quantity(claim.Less), quantity(claim.More))).Select(claim => claim.Name)];
            return claimed.Length == 0 ? (VerdictWord.Go, "")
                : (VerdictWord.GoIf, $"a reading confirms what the seller claims of {string.Join(" and ", claimed.Take(2))}");
        }

        var lifting = Lifting(kept, swings);
        if (probability <= 1 - Sure)
        {
            return lifting is var (input, end, si)
                ? (VerdictWord.NeedMoreReadings, $"it would do with {input.Name} {end} {Sentences.Input(input, si)}; take {WhichReading.Of(input.Key)}")
                : (VerdictWord.NoGo, WhatWouldHaveToBeTrue(kept));
        }

        if (lifting is var (cause, side, at))
        {
            return probability >= Likely
                ? (VerdictWord.GoIf, $"{cause.Name} is {side} {Sentences.Input(cause, at)} ({WhichReading.Of(cause.Key)} tells)")
                : (VerdictWord.NeedMoreReadings, $"it holds if {cause.Name} is {side} {Sentences.Input(cause, at)}: take {WhichReading.Of(cause.Key)}");
        }

        var first = swings.FirstOrDefault(swing => Sensitivity.Size(swing.LowValue, swing.HighValue) > 0);
        return (VerdictWord.NeedMoreReadings, first is null ? "" : $"{first.Input.Name} matters most ({Sentences.Input(first.Input, first.LowInput)} to {Sentences.Input(first.Input, first.HighInput)}): take {WhichReading.Of(first.Input.Key)}");
    }

    /// <summary>The input that alone, somewhere inside its range, decides the requirement, with the value at which it flips.</summary>
    private (PlantInput Input, string Side, double Si)? Lifting(Func<Outcome, bool> kept, IReadOnlyList<Swing> swings)
    {
        foreach (var swing in swings.Take(6))
        {
            var row = sensitivity!.Rows.First(r => prediction!.Builder.Inputs[r.Place] == swing.Input);
            bool low = kept(row.Low);
            bool high = kept(row.High);
            if (low == high)
            {
                continue;
            }

            bool middleKept = kept(prediction!.MiddleOutcome);
            double end = middleKept == low ? row.HighSi : row.LowSi;
            double flip = sensitivity.FlipSi(row.Place, end, kept);
            if (double.IsFinite(flip))
            {
                return (swing.Input, low ? "at most" : "at least", flip);
            }
        }

        return null;
    }

    /// <summary>Inverts the prediction: how far loop ohms, heater ohms or set volts would have to be moved, outside what is believed of them.</summary>
    private string WhatWouldHaveToBeTrue(Func<Outcome, bool> kept)
    {
        List<string> ways = [];
        var builder = prediction!.Builder;
        Try(PlantKey.ModuleSet, 0.4, "the module is set to at most", "the module is set to at least");
        Try(PlantKey.HeaterOhms, 0.3, "the heater has at most", "the heater has at least");
        Try(PlantKey.HeaterOhms, 3.0, "the heater has at most", "the heater has at least");
        Try(PlantKey.CellOhms, 0.1, "a cell has at most", "a cell has at least");
        Try(PlantKey.LampAmps, 0.3, "the lamp takes at most", "the lamp takes at least");
        Try(PlantKey.LampLeastVolts, 0.7, "the lamp's driver holds its current down to", "the lamp's driver holds its current down to");
        return ways.Count == 0 ? $"no single change of {(arrangement.Lamp is null ? "heater" : "lamp")}, set volts or cell ohms within reason lifts it" : "it would work if " + string.Join(", or if ", ways.Take(2));

        void Try(PlantKey key, double factor, string below, string above)
        {
            int place = builder.Place(key);
            if (place < 0)
            {
                return;
            }

            double flip = sensitivity!.FlipSi(place, factor * builder.Middle[place], kept);

            // A step-up gives no less than its pack has.
            if (double.IsFinite(flip) && !(key == PlantKey.ModuleSet && builder.Build(builder.Middle).Pack is { } pack && flip < pack.Series * pack.Cell.OpenV.At(1)))
            {
                ways.Add($"{(factor < 1 ? below : above)} {Sentences.Input(builder.Inputs[place], flip)}");
            }
        }
    }

    /// <summary>A predicted number carries the push of every input, scaled so that together they give the spread of the draws.</summary>
    private Estimate Predicted(Unit unit, double si, double spreadSi, Requirement line, IReadOnlyList<Swing> swings)
    {
        var origin = new Origin.Predicted(arrangement.Id, state, [.. prediction!.Builder.Inputs.Select(input => new Input(input.Name, input.Value))]);
        var finite = swings.Where(swing => double.IsFinite(swing.HighValue - swing.LowValue) && swing.HighValue != swing.LowValue).ToArray();
        double norm = Math.Sqrt(finite.Sum(swing => Math.Pow(swing.HighValue - swing.LowValue, 2)));
        var doubts = Doubts.None;
        foreach (var swing in finite)
        {
            double push = norm == 0 ? 0 : (swing.HighValue - swing.LowValue) / norm * spreadSi / unit.Factor;
            double own = swing.Input.Value.StandardDoubt;
            doubts += swing.Input.Value.Doubts.Times(own == 0 ? 0 : push / own);
        }

        // Numbers of one fit hang together: their shared causes add up or cancel here, and only what is left together is the spread of the draws.
        double together = doubts.Combined;
        return new(unit.FromSi(si), unit, together > 0 ? doubts.Times(spreadSi / unit.Factor / together) : doubts, origin);
    }

    /// <summary>Half the distance that holds the middle 68 of 100 draws; draws that never get there count at the far end.</summary>
    private static double Spread(double[] drawn)
    {
        double[] sorted = [.. drawn.Where(double.IsFinite).Order()];
        return sorted.Length < 5 ? 0 : (sorted[(int)(0.84 * (sorted.Length - 1))] - sorted[(int)(0.16 * (sorted.Length - 1))]) / 2;
    }

    private static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}

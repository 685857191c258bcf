using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Predictions;
using Heatwright.Quantities;
using Heatwright.Safety;

namespace Heatwright.Verdicts;

/// <summary>A group of arrangements that was put aside, with the reason of the one that came nearest.</summary>
/// <param name="Family">What they have in common.</param>
/// <param name="Count">How many they are.</param>
/// <param name="Reason">Why, with a number.</param>
public sealed record Discarded(string Family, int Count, string Reason);

/// <summary>A found arrangement, predicted in full.</summary>
/// <param name="Verdict">How it stands.</param>
/// <param name="Warnings">Heater above its label.</param>
public sealed record Found(ArrangementVerdict Verdict, IReadOnlyList<string> Warnings)
{
    /// <summary>What must be bought before it can be built, piece by piece; empty: all of it is there.</summary>
    public IReadOnlyList<string> ToBuy { get; init; } = [];
}

/// <summary>What the shelf can do.</summary>
/// <param name="Tried">How many arrangements were looked at.</param>
/// <param name="TooCold">How many of them were put aside at the first look: with the switch as much on as it may be, their end stands too cold.</param>
/// <param name="NoPoint">How many have no steady point at one of the charges of that look, or none was found; they are run all the same.</param>
/// <param name="Best">The best handful, best first.</param>
/// <param name="Discards">Every family that was put aside.</param>
/// <param name="Buy">What kind of part would help where nothing on the shelf will do; empty: something will.</param>
public sealed record SearchResult(int Tried, int TooCold, int NoPoint, IReadOnlyList<Found> Best, IReadOnlyList<Discarded> Discards, IReadOnlyList<string> Buy)
{
    /// <summary>Where each arrangement ended: those that keep every must by the middle run first, the largest margin first, then those put aside.</summary>
    public IReadOnlyList<(Arrangement One, string Reason)> Places { get; init; } = [];

    /// <summary>How many keep every must by the middle run too and are not among the best: what is tried is either there, here or put aside.</summary>
    public int Behind => Tried - Best.Count - Discards.Sum(family => family.Count);
}

/// <summary>Tries every sensible arrangement of the shelf: cells in series and side by side, straight or through a step-up, every load, contact, switch and wire.</summary>
public static class ShelfSearch
{
    /// <summary>So many cells in series and side by side at most: a hand-held tool.</summary>
    private const int MostSeries = 4, MostParallel = 2;

    /// <summary>Predicted in full.</summary>
    private const int Handful = 5;

    /// <summary>A heater stands a little more than its label: common practice, no source.</summary>
    private const double LabelSlack = 1.05;

    /// <summary>The search.</summary>
    /// <param name="brief">What the tool must do.</param>
    /// <param name="parts">The shelf.</param>
    /// <param name="shelf">The same with findings.</param>
    /// <param name="plan">The work of the brief.</param>
    /// <param name="seed">The study's seed.</param>
    /// <param name="draws">Draws of each of the best.</param>
    /// <param name="state">State of the study.</param>
    /// <param name="wired">What is wired already: where the search comes to the same cells, load and way between them, it takes what the search does not vary from there.</param>
    public static Checked<SearchResult> Of(Brief brief, IReadOnlyList<Part> parts, Shelf shelf, WorkPlan plan, ulong seed, int draws, StudyState state, IReadOnlyList<Arrangement>? wired = null)
    {
        var kinds = Usable(parts).ToLookup(part => part.Kind);
        // A brief without hot work looks for lamps: those need neither sensor nor controller.
        PartKind[] needed = brief.Duty is null ? [PartKind.Cell, PartKind.Lamp, PartKind.Switch, PartKind.Leads, PartKind.Contacts, PartKind.Handle]
            : [PartKind.Cell, PartKind.Heater, PartKind.Switch, PartKind.Leads, PartKind.Contacts, PartKind.Sensor, PartKind.Controller, PartKind.Handle];
        Problem[] lacking = [.. needed.Where(kind => !kinds[kind].Any()).Select(kind => new Problem($"The shelf has no {Kind(kind)}.", "shelf", "none", "one of each", $"Add a {Kind(kind)} to the shelf, stated as well as you know it."))];
        if (lacking.Length > 0)
        {
            return new(lacking);
        }

        Screened[] stated = [.. All(kinds, shelf, brief.Duty is null).Select(one => AsWired(one, wired ?? [])).AsParallel().AsOrdered().Select(one => Screen(one, shelf, plan))];
        var looked = brief.Duty is null ? stated : ColdLook.At(stated, brief, plan.TargetC);
        Screened[] screened = [.. looked.AsParallel().AsOrdered().Select(one => one.Reason.Length > 0 ? one : Run(one, brief, shelf, seed))];
        var passing = screened.Where(one => one.Reason.Length == 0).OrderByDescending(one => one.Margin).ToArray();
        // What can be built from what is there comes first; of what needs buying the best is told all the same.
        var byHand = passing.ToLookup(one => IsOnHand(one.One, shelf));
        Screened[] ready = [.. byHand[true]], other = [.. byHand[false]];
        int bought = Math.Min(other.Length, Math.Max(Handful - ready.Length, 1));
        Screened[] passed = [.. ready.Take(Handful - bought), .. other.Take(bought)];
        Found[] best = [.. passed.Select(one => Predicted(one, brief, shelf, seed, draws, state)).OrderBy(found => found.ToBuy.Count > 0).ThenBy(found => found.Verdict.Word).ThenByDescending(found => Wants(found.Verdict))];
        Discarded[] discards = [.. screened.Where(one => one.Reason.Length > 0).GroupBy(one => one.Family)
            .Select(family => new Discarded(family.Key, family.Count(), family.MaxBy(one => one.Margin)!.Reason)).OrderBy(family => family.Family, StringComparer.Ordinal)];
        return new(new SearchResult(screened.Length, looked.Count(one => one.IsCold), looked.Count(one => one.NoPoint), best, discards, best.Any(found => found.Verdict.Word is VerdictWord.Go or VerdictWord.GoIf) ? [] : Buy(screened, brief))
        {
            Places = [.. passing.Concat(screened.Where(one => one.Reason.Length > 0)).Select(one => (one.One, one.Reason))],
        });
    }

    /// <summary>Pieces that an arrangement takes beyond those on hand, as '6 × stub cell'; empty: it can be built from what is there.</summary>
    private static IReadOnlyList<string> Lacking(Arrangement one, Shelf shelf) => [.. one.Parts().Select(id => shelf[id]).Select(part => (part.Name, More: one.Lacking(part)))
        .Where(lack => lack.More > 0).Select(lack => FormattableString.Invariant($"{lack.More} × {lack.Name}"))];

    private static bool IsOnHand(Arrangement one, Shelf shelf) => one.Parts().All(id => one.Lacking(shelf[id]) == 0);

    /// <param name="One">The arrangement.</param>
    /// <param name="Family">Its family.</param>
    /// <param name="Builder">Its plant; null: not known well enough.</param>
    /// <param name="Reason">Why it is put aside; empty: it is not.</param>
    /// <param name="Margin">Least margin of its musts over their limits.</param>
    /// <param name="Missed">The must that it misses by most.</param>
    internal sealed record Screened(Arrangement One, string Family, PlantBuilder? Builder, string Reason, double Margin, Requirement? Missed)
    {
        /// <summary>Put aside at the first look, since its end stands too cold.</summary>
        public bool IsCold { get; init; }

        /// <summary>Without a steady point at one of the charges of that look.</summary>
        public bool NoPoint { get; init; }
    }

    /// <summary>The same cells, load and way between them: what the search varies.</summary>
    /// <param name="one">An arrangement.</param>
    /// <param name="other">Another one.</param>
    public static bool SameWay(Arrangement one, Arrangement other) => (one.Cell, one.Series, one.Parallel, one.StepUp, one.Load, one.Contacts, one.Switch, one.Leads)
        == (other.Cell, other.Series, other.Parallel, other.StepUp, other.Load, other.Contacts, other.Switch, other.Leads);

    /// <summary>As it is wired, with what it lacks and the shelf has.</summary>
    private static Arrangement AsWired(Arrangement tried, IReadOnlyList<Arrangement> wired) => wired.FirstOrDefault(one => SameWay(one, tried)) is not { } there ? tried : there with
    {
        Id = tried.Id,
        Letter = tried.Letter,
        Name = tried.Name,
        Supervision = there.Supervision ?? tried.Supervision,
        Charger = there.Charger ?? tried.Charger,
        CutOut = there.CutOut ?? tried.CutOut,
    };

    /// <summary>What is whole; what is only thought of as its class stands back where there is a real one.</summary>
    private static IEnumerable<Part> Usable(IReadOnlyList<Part> parts)
    {
        bool IsOnlyAClass(Part part) => part is { Count: 0, Stated.Count: > 0 } && part.Stated.All(stated => stated.Origin == "assumed");
        Part[] whole = [.. parts.Where(part => part.From != "destroyed")];
        var real = whole.Where(part => !IsOnlyAClass(part)).Select(part => part.Kind).ToHashSet();
        return whole.Where(part => !IsOnlyAClass(part) || !real.Contains(part.Kind));
    }

    private static Part OnHandFirst(IEnumerable<Part> parts) => parts.FirstOrDefault(part => part.Count > 0) ?? parts.First();

    private static IEnumerable<Arrangement> All(ILookup<PartKind, Part> kinds, Shelf shelf, bool lamps)
    {
        int number = 0;
        PartId? sensor = lamps ? null : OnHandFirst(kinds[PartKind.Sensor]).Id, controller = lamps ? null : OnHandFirst(kinds[PartKind.Controller]).Id;
        var handle = OnHandFirst(kinds[PartKind.Handle]).Id;
        foreach (var cell in kinds[PartKind.Cell])
        {
            for (int count = 0; count < MostSeries * MostParallel; count++)
            {
                int series = 1 + (count % MostSeries), parallel = 1 + (count / MostSeries);
                foreach (var module in kinds[PartKind.StepUp].Cast<Part?>().Prepend(null))
                {
                    foreach (var load in kinds[lamps ? PartKind.Lamp : PartKind.Heater])
                    {
                        foreach (var contacts in kinds[PartKind.Contacts])
                        {
                            foreach (var (switched, leads) in kinds[PartKind.Switch].SelectMany(one => kinds[PartKind.Leads].Select(two => (one, two))))
                            {
                                number++;
                                string name = $"{series.ToString(CultureInfo.InvariantCulture)}S{parallel.ToString(CultureInfo.InvariantCulture)}P {cell.Name}, {(module is null ? "straight" : $"through {module.Name}")}, {load.Name}, {contacts.Name}";
                                var bare = new Arrangement(new(FormattableString.Invariant($"search-{number}")), FormattableString.Invariant($"#{number}"), name, cell.Id, series, parallel, switched.Id, leads.Id, contacts.Id,
                                    2 * series, handle)
                                {
                                    Heater = lamps ? null : load.Id,
                                    Lamp = lamps ? load.Id : null,
                                    Sensor = sensor,
                                    Controller = controller,
                                    StepUp = module?.Id,
                                    DutyCeiling = lamps ? 1 : Ceiling(cell, series, module, load, shelf),
                                };
                                string cells = series.ToString(CultureInfo.InvariantCulture), chemistry = cell.Word("chemistry", "lithium");
                                yield return bare with
                                {
                                    Supervision = Suiting(kinds[PartKind.Supervision], cells, chemistry)?.Id,
                                    Charger = Suiting(kinds[PartKind.Charger], cells, chemistry)?.Id,
                                    CutOut = lamps ? null : kinds[PartKind.CutOut].FirstOrDefault()?.Id,
                                };
                            }
                        }
                    }
                }
            }
        }
    }

    private static Part? Suiting(IEnumerable<Part> parts, string cells, string chemistry) => parts.FirstOrDefault(part =>
        part.Word("cells", "1") == cells && (part.Word("chemistry").Length == 0 || string.Equals(part.Word("chemistry"), chemistry, StringComparison.OrdinalIgnoreCase)));

    /// <summary>A heater above its label volts is held back by a duty whose mean power is the label's: (rated over full)².</summary>
    private static double Ceiling(Part cell, int series, Part? module, Part heater, Shelf shelf)
    {
        double full = module is null ? series * FullV(cell) : shelf.Value(module.Id, PartQuantities.SetVolts)?.Si ?? 12;
        return shelf.Value(heater.Id, PartQuantities.RatedVolts) is { } rated && full > LabelSlack * rated.Si ? Math.Max(0.05, Math.Pow(rated.Si / full, 2)) : 0.95;
    }

    /// <summary>Full cells: 4.2 V for layered oxides, 3.6 V for iron phosphate, from memory.</summary>
    private static double FullV(Part cell) => Chemistry.IsIron(cell) ? 3.6 : 4.2;

    /// <summary>What its parts' own numbers rule out, before anything is run.</summary>
    private static Screened Screen(Arrangement one, Shelf shelf, WorkPlan plan)
    {
        string family = $"{one.Series.ToString(CultureInfo.InvariantCulture)}S{one.Parallel.ToString(CultureInfo.InvariantCulture)}P {shelf[one.Cell].Name}, {(one.StepUp is { } module ? shelf[module].Name : "straight")}, {shelf[one.Load].Name}";
        var built = PlantBuilder.For(one, shelf, plan);
        if (!built.IsFine)
        {
            return new(one, family, null, $"{built.Problems[0].What} {built.Problems[0].Next}", double.NegativeInfinity, null);
        }

        if (one.StepUp is { } boost && shelf.Value(boost, PartQuantities.SetVolts) is { } set && one.Series * FullV(shelf[one.Cell]) > set.Si)
        {
            return new(one, family, built.Value, FormattableString.Invariant($"the full pack, {one.Series * FullV(shelf[one.Cell]):0.0} V, lies above what the step-up is set to, {set.Si:0.0} V"), -10, null);
        }

        double fullV = one.StepUp is { } up && shelf.Value(up, PartQuantities.SetVolts) is { } held ? held.Si : one.Series * FullV(shelf[one.Cell]);
        if (one.Lamp is { } lamp && shelf.Value(lamp, PartQuantities.MostInputVolts) is { } stands && fullV > stands.Si)
        {
            return new(one, family, built.Value, FormattableString.Invariant($"{fullV:0.0} V at a lamp that is to stand {stands.Si:0.0} V ({stands.Origin.Word})"), (stands.Si / fullV) - 2, null);
        }

        return new(one, family, built.Value, "", double.NaN, null);
    }

    /// <summary>The middle run of what is left, against every must of the brief.</summary>
    private static Screened Run(Screened of, Brief brief, Shelf shelf, ulong seed)
    {
        var one = of.One;
        var outcome = Predict.Once(of.Builder!, of.Builder!.Middle);
        if (shelf.Value(one.Cell, PartQuantities.RatedCurrent) is { } rating && outcome.HighestA / one.Parallel > rating.Si)
        {
            return Aside(FormattableString.Invariant($"{outcome.HighestA / one.Parallel:0.0} A through one cell that is to stand {rating.Si:0.0} A ({rating.Origin.Word})"), (rating.Si * one.Parallel / outcome.HighestA) - 1, null);
        }

        var standing = new StandingLines(shelf, one, new SafetyFindings([], [], double.NaN), seed);
        var worst = brief.Requirements.Where(line => line.Must).Select(line => (Line: line, Margin: Margin(line, brief, one, outcome, standing))).MinBy(pair => pair.Margin.Share);
        return worst.Line is null || worst.Margin.Share >= 0
            ? of with { Margin = worst.Line is null ? 0 : worst.Margin.Share }
            : Aside($"{worst.Line.Text.TrimEnd('.')}: {worst.Margin.Words}", worst.Margin.Share, worst.Line);

        Screened Aside(string reason, double margin, Requirement? missed) => of with { Reason = reason, Margin = margin, Missed = missed };
    }

    /// <summary>Margin over the limit and what is said of it; a line that is not known puts nothing aside.</summary>
    private static (double Share, string Words) Margin(Requirement line, Brief brief, Arrangement one, Outcome outcome, StandingLines standing)
    {
        if (standing.Line(line) is { } known)
        {
            return (known.Word == VerdictWord.NoGo ? Math.Min(-0.01, double.IsFinite(known.Margin) ? known.Margin / Math.Abs(line.Limit) : -1) : double.PositiveInfinity, $"{known.Shown}, {known.Because}");
        }

        if (Told.ByRun(line, brief, one.Parallel) is not { } tell)
        {
            return (double.PositiveInfinity, "");
        }

        var unit = Units.Find(line.Unit) ?? Units.One;
        double value = unit.FromSi(tell(outcome));
        double margin = (line.AtMost ? line.Limit - value : value - line.Limit) / Math.Max(1e-9, Math.Abs(line.Limit));
        string end = line.Quantity == RequirementQuantity.PiecesPerCharge ? FormattableString.Invariant($", with {100 * outcome.ChargeLeft:0} % of the charge left") : "";
        return (double.IsNaN(margin) ? -1 : Math.Max(-100, margin), double.IsFinite(value) ? $"{Display.Significant(value, 3)} {line.Unit}".TrimEnd() + end : FormattableString.Invariant($"never; it stays at {outcome.HottestC:0} °C"));
    }

    private static Found Predicted(Screened one, Brief brief, Shelf shelf, ulong seed, int draws, StudyState state)
    {
        var prediction = Predict.Charge(one.Builder!, one.One, seed, draws);
        var safety = SafetyCheck.WithFaults(one.One, shelf, one.Builder, prediction.MiddleOutcome.HighestA);
        List<string> warnings = [];
        if (one.One.DutyCeiling < 0.9 && one.One.Heater is not null)
        {
            warnings.Add(FormattableString.Invariant($"the heater runs above its label under a duty of {100 * one.One.DutyCeiling:0} %: with the switch stuck on it goes to {Math.Round(safety.StuckOnC / 10) * 10:0} °C, and its life is shorter; a cut-out that works without the controller is a must"));
        }

        return new(Judge.Of(brief, shelf, one.One, safety, prediction, [], seed, state), warnings) { ToBuy = Lacking(one.One, shelf) };
    }

    private static double Wants(ArrangementVerdict verdict) => verdict.Requirements.Where(line => !line.Requirement.Must).Sum(line => line.Requirement.Weight * (line.Probability ?? 0));

    /// <summary>Turns round the nearest misses: one number of one part that would lift the must they miss.</summary>
    private static List<string> Buy(Screened[] screened, Brief brief)
    {
        List<string> buys = [];
        foreach (var near in screened.Where(one => one.Missed is not null && one.Builder is not null).OrderByDescending(one => one.Margin).Take(3))
        {
            var ways = WouldHaveToBeTrue.Of(near.Builder!, near.Missed!, Told.ByRun(near.Missed!, brief, near.One.Parallel)).Where(way => !way.Believable).Take(2).Select(way => way.Words).ToArray();
            if (ways.Length > 0)
            {
                buys.Add($"{near.One.Name} misses '{near.Missed!.Text.TrimEnd('.')}'; it would do with {string.Join(", or with ", ways)}");
            }
        }

        return buys;
    }

    private static string Kind(PartKind kind) => kind switch
    {
        PartKind.Cell => "cell",
        PartKind.Heater => "heater",
        PartKind.Lamp => "lamp",
        PartKind.Switch => "switch",
        PartKind.Leads => "pair of leads",
        PartKind.Contacts => "cell contact",
        PartKind.Sensor => "sensor",
        PartKind.Controller => "controller",
        _ => "handle",
    };
}

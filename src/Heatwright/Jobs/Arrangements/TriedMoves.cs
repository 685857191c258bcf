using System.Globalization;
using Heatwright.Arrangements;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>The moved values of one arrangement, gathered until the study with them can be made.</summary>
internal sealed class TriedMoves(Study study, Arrangement one)
{
    private readonly List<TriedValue> values = [];
    private readonly Dictionary<string, string> chosen = [];
    private readonly List<(Dial Dial, double Value, double Half)> ofParts = [];
    private int series = one.Series, parallel = one.Parallel;
    private string? touches, duty;
    private double? gain = one.GainWPerK, reset = one.ResetS;
    private Brief? brief = study.Brief;
    private bool wires;

    /// <summary>The touches stay as they are, however many cells there are.</summary>
    public void HoldTouches() => touches = Dial.Digits(one.ContactCount);

    /// <summary>Takes one value; what stands in its way comes back.</summary>
    public IReadOnlyList<Problem> Take(Dial dial, string text)
    {
        if (dial.Kind == DialKind.Choice)
        {
            string Words(string typed) => dial.Choices.FirstOrDefault(choice => choice.Typed == typed).Words ?? typed;
            chosen[dial.Place] = text;
            wires = true;
            values.Add(new(dial.Name, dial.Words, Words(dial.Was), Words(text)));
            return [];
        }

        var read = dial.Read(text);
        if (!read.IsFine)
        {
            return read.Problems;
        }

        var (value, half) = read.Value;
        if (dial.Kind == DialKind.Count && value != Math.Floor(value))
        {
            return [new($"{dial.Words} are counted.", dial.Name, text, "a whole number", "Type it again.")];
        }

        values.Add(new(dial.Name, dial.Words, dial.Was, Dial.Spelled(value, dial.Unit) + (half > 0 ? $" ± {Dial.Digits(half)}" : "")));
        return Take(dial, value, half);
    }

    /// <summary>The study with all of them: first parts that are like others, then the clone that is wired from them.</summary>
    public Checked<TriedStudy> Made(string? called)
    {
        var stage = study with { Brief = brief };
        bool ofBrief = !ReferenceEquals(brief, study.Brief);
        if (!wires)
        {
            return new(new TriedStudy(stage, one, one, values) { ChangesBrief = ofBrief });
        }

        foreach (var group in ofParts.GroupBy(part => part.Dial.Place))
        {
            var place = Places.All.First(known => known.Name == group.Key);
            string name = chosen.GetValueOrDefault(group.Key) ?? place.Of(one)!.Value.Name;
            if (stage.Parts.FirstOrDefault(part => part.Id.Name == name) is not { } part)
            {
                return new(new Problem($"There is no {place.Words} whose values could differ.", $"arrangement {one.Letter}", name, "a part in its place", "Leave the value as it is, or choose a part."));
            }

            var like = Likened(stage, part, [.. group]);
            stage = stage with { Parts = [.. stage.Parts, like] };
            chosen[group.Key] = like.Id.Name;
        }

        string? pack = (series, parallel) != (one.Series, one.Parallel) ? string.Create(CultureInfo.InvariantCulture, $"{series}S{parallel}P") : null;
        return WireTool.Wire(stage, new WiringEntry { Chosen = chosen, Pack = pack, Touches = touches, Duty = duty, Name = called }, one.Letter, inPlace: false, evenSame: true).Map(wired =>
        {
            var clone = wired.Arrangements[^1] with { GainWPerK = gain, ResetS = reset };
            if (touches is null && clone.ContactCount != one.ContactCount)
            {
                values.Add(new(Dials.Touches, "touches in the loop, two for each cell in series", Dial.Digits(one.ContactCount), Dial.Digits(clone.ContactCount)));
            }

            return new TriedStudy(wired with { Arrangements = [.. wired.Arrangements.SkipLast(1), clone] }, one, clone, values) { ChangesBrief = ofBrief };
        });
    }

    private IReadOnlyList<Problem> Take(Dial dial, double value, double half)
    {
        wires = wires || dial.Owner is DialOwner.Wiring or DialOwner.Part or DialOwner.Controller;
        switch (dial.Owner)
        {
            case DialOwner.Part:
                ofParts.Add((dial, value, half));
                return [];
            case DialOwner.Controller:
                gain = dial.Name == "gain" ? value : gain;
                reset = dial.Name == "reset" ? value : reset;
                return [];
            case DialOwner.Limit:
                brief = brief! with { Requirements = [.. brief!.Requirements.Select(line => line.Id == dial.Quantity ? line with { Limit = value } : line)] };
                return [];
            case DialOwner.Brief:
                var next = Worked(brief!, dial.Name, value, half, dial.Unit);
                brief = next.IsFine ? next.Value : brief;
                return next.Problems;
            default:
                (series, parallel) = dial.Name switch { "series" => ((int)value, parallel), "parallel" => (series, (int)value), _ => (series, parallel) };
                touches = dial.Name == Dials.Touches ? Dial.Digits(value) : touches;
                duty = dial.Name == "duty" ? Dial.Digits(value) : duty;
                return [];
        }
    }

    /// <summary>The brief with one value otherwise: without a doubt of its own it keeps the share of doubt that it had.</summary>
    private static Checked<Brief> Worked(Brief brief, string name, double value, double half, Unit unit)
    {
        string R(double number) => number.ToString("R", CultureInfo.InvariantCulture);
        string text = $"{R(value)} {unit.Symbol}{(half > 0 ? $" ± {R(half)} {(unit.IsLevel ? "K" : unit.Symbol)}" : "")}";
        return EditBrief.With(brief, name, text).Map(next => half > 0 ? next : name switch
        {
            "need" => next with { Duty = next.Work with { NeedPlusMinusJ = Shared(brief.Work.NeedPlusMinusJ, brief.Work.NeedJ, value) } },
            "contact" => next with { Duty = next.Work with { ContactPlusMinus = Shared(brief.Work.ContactPlusMinus, brief.Work.Contact, value) } },
            _ => next,
        });
    }

    private static double Shared(double half, double old, double value) => old > 0 ? half / old * value : half;

    /// <summary>A part like another one, but for what is tried: to be bought or made, and marked assumed.</summary>
    private Part Likened(Study stage, Part part, IReadOnlyList<(Dial Dial, double Value, double Half)> tried)
    {
        var root = stage.Parts.FirstOrDefault(other => other.Id == part.Like?.Part) ?? part;
        string[] but = [.. tried.Select(move => move.Dial.Quantity)];
        string id = Enumerable.Range(2, 10_000).Select(i => string.Create(CultureInfo.InvariantCulture, $"{root.Id.Name}-{i}")).First(free => stage.Parts.All(other => !string.Equals(other.Id.Name, free, StringComparison.OrdinalIgnoreCase)));
        return part with
        {
            Id = new(id),
            Name = $"{part.Name} with {string.Join(", ", tried.Select(move => $"{move.Dial.Quantity} {Dial.Spelled(move.Value, move.Dial.Unit)}"))}",
            Stated = [.. part.Stated.Where(stated => !but.Contains(stated.Quantity)), .. tried.Select(move => Stated(move.Dial, move.Value, move.Half))],
            Count = 0,
            From = "bought",
            Samples = null,
            Listing = null,
            Photo = null,
            Whence = null,
            Like = new(root.Id, [.. (part.Like?.But ?? []).Union(but)]),
        };
    }

    /// <summary>Without a doubt of its own a tried value has the share of doubt of the one it stands for: only its middle moves.</summary>
    private StatedValue Stated(Dial dial, double value, double half)
    {
        // A stated value without a half width would be given that of a bare assumption; one in a thousand million is none.
        double wide = half > 0 ? half : Math.Max(1e-9 * Math.Max(1, Math.Abs(value)), Math.Sqrt(3) * dial.Share * Math.Abs(value));
        return new(dial.Quantity, value, dial.Unit.Symbol, wide, "assumed", $"tried otherwise in arrangement {one.Letter}, where it was {dial.Was}");
    }
}

using Heatwright.Handbook;
using Heatwright.Quantities;

namespace Heatwright.Jobs.Sums;

/// <summary>One result of a quick sum.</summary>
/// <param name="Name">Which result.</param>
/// <param name="Meaning">In trade words; empty where the law has one result.</param>
/// <param name="Value">In <paramref name="Unit"/>; null: there is none, and <paramref name="Words"/> says why.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="Words">A result that is a word: a region, yes or no; or why there is no value.</param>
public sealed record SumResult(string Name, string Meaning, double? Value, string Unit, string Words)
{
    /// <summary>What the doubt of each input brings in, signed, in <see cref="Unit"/>; empty where no doubt was typed.</summary>
    public IReadOnlyList<(string Input, double Push)> Pushes { get; init; } = [];

    /// <summary>Propagated from the doubts typed; 0 where none were, or where the law has no slope here.</summary>
    public double StandardDoubt => Math.Sqrt(Pushes.Sum(push => push.Push * push.Push)) is var all && double.IsFinite(all) ? all : 0;

    /// <summary>As a maker reads it: prefix, doubt, unit.</summary>
    public string Shown => Value is { } value ? SumUnits.Shown(value, StandardDoubt, Unit) : Words;
}

/// <summary>An input as it was understood.</summary>
/// <param name="Name">Name to type.</param>
/// <param name="Meaning">In trade words.</param>
/// <param name="Value">In <paramref name="Unit"/>; null: a word, or left out, or not readable.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="StandardDoubt">From the doubt typed.</param>
/// <param name="Words">An input that is a word.</param>
/// <param name="Typed">False: the law's own value, because nothing was typed.</param>
public sealed record SumInput(string Name, string Meaning, double? Value, string Unit, double StandardDoubt, string Words, bool Typed)
{
    /// <summary>True where it was typed without a unit.</summary>
    public bool IsBare { get; init; }

    /// <summary>As a maker reads it; empty where there is nothing to say.</summary>
    public string Shown => Value is { } value ? SumUnits.Shown(value, StandardDoubt, Unit) : Words;
}

/// <summary>The answer of a quick sum.</summary>
/// <param name="Law">Which law.</param>
/// <param name="Inputs">As understood.</param>
/// <param name="Results">One or more.</param>
/// <param name="Caveats">What to mind; empty: nothing.</param>
public sealed record SumAnswer(LawCard Law, IReadOnlyList<SumInput> Inputs, IReadOnlyList<SumResult> Results, IReadOnlyList<string> Caveats)
{
    /// <summary>What the law was called with, in the order of its inputs.</summary>
    internal IReadOnlyList<object?> Arguments { get; init; } = [];

    /// <summary>A result with its origin: the law, and each input as it was typed. Null for a word.</summary>
    public Estimate? AsEstimate(SumResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Value is { } value
            ? Scaled(value, result.Unit, result.StandardDoubt > 0 ? result.Pushes : [], new Origin.WorkedOut($"{Law.Law.Name}, {Law.Law.Formula}", [.. Inputs.Where(input => input.Value is not null).Select(AsInput)]))
            : null;
    }

    private static Input AsInput(SumInput input) => new(input.Name, Scaled(input.Value!.Value, input.Unit, input.StandardDoubt > 0 ? [(input.Name, input.StandardDoubt)] : [],
        new Origin.Assumed(input.Typed ? "typed for this sum" : "not typed, the usual value of the sum")));

    private static Estimate Scaled(double value, string symbol, IReadOnlyList<(string Input, double Push)> pushes, Origin origin)
    {
        var own = SumUnits.Own(symbol);
        var unit = SumUnits.For(symbol, value);
        var doubts = pushes.Aggregate(Doubts.None, (sum, push) => sum.With(Cause.Rectangular($"{push.Input} as typed", CauseGroup.Assumption), push.Push));
        return new(unit.FromSi(own.ToSi(value)), unit, doubts.Times(own.Factor / unit.Factor), origin);
    }
}

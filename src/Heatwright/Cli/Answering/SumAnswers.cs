using Heatwright.Jobs.Sums;

namespace Heatwright.Cli.Answering;

/// <summary>An input of a sum as it was understood.</summary>
/// <param name="Value">In the unit beside it; absent: a word, or left out.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="StandardDoubt">From the doubt that was typed, in the same unit; 0: none was.</param>
/// <param name="Words">An input that is a word.</param>
/// <param name="Typed">False: the law's own value, because nothing was typed.</param>
internal sealed record SumInputView(double? Value, string Unit, double StandardDoubt, string? Words, bool Typed);

/// <summary>One of several results of a sum.</summary>
/// <param name="Name">Which result.</param>
/// <param name="Value">In the unit beside it; absent: there is none, and the words say why.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="StandardDoubt">From the doubts that were typed, in the same unit; 0: none were.</param>
/// <param name="Words">A result that is a word, or why there is no value.</param>
internal sealed record SumResultView(string Name, double? Value, string Unit, double StandardDoubt, string? Words);

/// <summary>A sum with one result.</summary>
/// <param name="Law">Name of the law.</param>
/// <param name="Inputs">Inputs by name, as they were understood.</param>
/// <param name="Value">In the unit beside it; absent: there is none, and the words say why.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="StandardDoubt">From the doubts that were typed, in the same unit; 0: none were.</param>
/// <param name="Words">A result that is a word, or why there is no value.</param>
/// <param name="Source">Key of the law's source.</param>
/// <param name="Caveats">What to mind.</param>
internal sealed record SumView(string Law, IReadOnlyDictionary<string, SumInputView> Inputs, double? Value, string Unit, double StandardDoubt, string? Words, string Source, IReadOnlyList<string> Caveats)
{
    /// <summary>The view of an answer with one result.</summary>
    public static SumView Of(SumAnswer answer)
    {
        var only = answer.Results[0];
        return new(answer.Law.Law.Name, SumsView.Understood(answer), only.Value, only.Unit, only.StandardDoubt, SumsView.Said(only.Words), answer.Law.SourceKey, answer.Caveats);
    }
}

/// <summary>A sum with several results.</summary>
/// <param name="Law">Name of the law.</param>
/// <param name="Inputs">Inputs by name, as they were understood.</param>
/// <param name="Results">The results.</param>
/// <param name="Source">Key of the law's source.</param>
/// <param name="Caveats">What to mind.</param>
internal sealed record SumsView(string Law, IReadOnlyDictionary<string, SumInputView> Inputs, IReadOnlyList<SumResultView> Results, string Source, IReadOnlyList<string> Caveats)
{
    /// <summary>The view of an answer with several results.</summary>
    public static SumsView Of(SumAnswer answer) => new(answer.Law.Law.Name, Understood(answer),
        [.. answer.Results.Select(one => new SumResultView(one.Name, one.Value, one.Unit, one.StandardDoubt, Said(one.Words)))], answer.Law.SourceKey, answer.Caveats);

    internal static Dictionary<string, SumInputView> Understood(SumAnswer answer) =>
        answer.Inputs.ToDictionary(input => input.Name, input => new SumInputView(input.Value, input.Unit, input.StandardDoubt, Said(input.Words), input.Typed));

    internal static string? Said(string words) => words.Length > 0 ? words : null;
}

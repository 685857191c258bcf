using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Jobs.Sums;

/// <summary>An input of a law as machines read it; limits that do not exist are left out.</summary>
/// <param name="Name">Name to type.</param>
/// <param name="Symbol">Symbol in the formula.</param>
/// <param name="Unit">Unit of a bare number; word, or yes/no.</param>
/// <param name="Meaning">What it is.</param>
/// <param name="Optional">True: it may be left out.</param>
/// <param name="Default">Taken where nothing is typed, in the unit.</param>
/// <param name="DefaultWord">The same where it is a word.</param>
/// <param name="Min">Less is refused, in the unit.</param>
/// <param name="Max">More is refused, in the unit.</param>
/// <param name="FittedFrom">Less is answered with a caveat, in the unit.</param>
/// <param name="FittedTo">More is answered with a caveat, in the unit.</param>
/// <param name="Words">Words that it takes.</param>
public sealed record LawInputView(string Name, string Symbol, string Unit, string Meaning, bool Optional, double? Default, string? DefaultWord, double? Min, double? Max, double? FittedFrom, double? FittedTo, IReadOnlyList<string>? Words);

/// <summary>A result of a law as machines read it.</summary>
/// <param name="Meaning">What it is; empty where the law has one result.</param>
public sealed record LawResultView(string Name, string Unit, string Meaning);

/// <summary>A law as machines read it.</summary>
/// <param name="Law">Name to type.</param>
/// <param name="Topic">What it belongs to.</param>
/// <param name="Says">What it tells.</param>
/// <param name="Formula">The formula.</param>
/// <param name="Inputs">What goes in.</param>
/// <param name="Results">What comes out.</param>
/// <param name="Valid">Where it holds.</param>
/// <param name="Source">Keys of its sources.</param>
/// <param name="Where">Place in the source.</param>
/// <param name="Example">Inputs to type.</param>
public sealed record LawView(string Law, string Topic, string Says, string Formula, IReadOnlyList<LawInputView> Inputs, IReadOnlyList<LawResultView> Results, string Valid, string Source, string Where, string Example)
{
    /// <summary>The view of a law.</summary>
    public static LawView Of(LawCard card)
    {
        ArgumentNullException.ThrowIfNull(card);
        return new(card.Law.Name, card.Law.Topic, card.Says, card.Law.Formula, [.. card.Inputs.Select(Of)], [.. card.Results().Select(result => new LawResultView(result.Name, result.Unit, result.Meaning))],
            card.Law.Valid, card.Law.Source, card.Law.Where, card.Law.Example);
    }

    private static LawInputView Of(LawInput input)
    {
        InAttribute card = input.Card;
        return new(input.Name, card.Symbol, card.Unit, card.Meaning, input.IsOptional, Known(card.Default), card.DefaultWord.Length > 0 ? card.DefaultWord : null,
            Known(Typed.Lowest(input)), Known(card.Max), Known(card.SoftMin), Known(card.SoftMax), input.Words.Count > 0 ? input.Words : null);
    }

    private static double? Known(double limit) => double.IsFinite(limit) ? limit : null;
}

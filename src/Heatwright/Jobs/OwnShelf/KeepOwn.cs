using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs;

/// <summary>Keeps what a maker has beside parts on the own shelf: money, resistor drawer, prices, constants.</summary>
public static class KeepOwn
{
    /// <summary>How the maker writes money.</summary>
    public static Checked<OwnThings> Currency(string shelf, string word) => Change(shelf, "currency set", own => new(own with { Currency = word.Trim() }));

    /// <summary>Puts resistors into the drawer: values as they are printed; none: empties it.</summary>
    public static Checked<OwnThings> Resistors(string shelf, IReadOnlyList<string> typed, bool anew) => Change(shelf, "resistor drawer filled", own =>
    {
        var read = typed.Select(text => OptionReader.Amount("resistor", text, Expect.Ohms)).ToArray();
        return read.SelectMany(one => one.Problems).ToArray() is { Length: > 0 } problems ? new(problems)
            : new(own with { Resistors = [.. (anew ? [] : own.Resistors).Concat(read.Select(one => one.Value.Si)).Distinct().Order()] });
    });

    /// <summary>The price of one piece of something.</summary>
    public static Checked<OwnThings> Price(string shelf, string what, string price) => Change(shelf, $"price of {what} set", own => OptionReader.Amount("price", price, Expect.Money).Map(read =>
        own with { Prices = [.. own.Prices.Where(one => one.What != what), new OwnPrice(what, read.Value)] }));

    /// <summary>A constant of the maker's own, with where it comes from.</summary>
    public static Checked<OwnThings> Constant(string shelf, string name, string value, string why) => Change(shelf, $"constant {name} set", own =>
        why.Trim().Length == 0 ? new(new Problem("A constant needs its source.", $"constant '{name}'", "none", "where it comes from", "Say it with --why \"...\"."))
        : OptionReader.Amount(name, value, Expect.Anything).Map(read => own with { Constants = [.. own.Constants.Where(one => one.Name != name), new OwnConstant(name, read.Value, read.Unit.Symbol, why.Trim())] }));

    private static Checked<OwnThings> Change(string shelf, string what, Func<OwnThings, Checked<OwnThings>> change) => OwnShelf.Made(shelf).Then(path =>
        ChangeStudy.Run(path, what, study => change(study.Own ?? new OwnThings()).Map(own => study with { Own = own })).Map(done => done.After.Own!));
}

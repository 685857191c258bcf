using System.Globalization;
using System.Text.RegularExpressions;

namespace Heatwright.Quantities;

/// <summary>Prices and counts of things.</summary>
internal static partial class MoneySpelling
{
    private static readonly string[] Each = ["each", "ea.", "ea", "apiece", "per piece", "/pc"];

    private static readonly string[] Pieces = ["pieces", "piece", "pcs.", "pcs", "pc", "off", "x"];

    /// <summary>A price for one piece; the currency is the maker's own and is left out.</summary>
    public static IEnumerable<Item> Price(string typed, Expect expect)
    {
        string text = Letters.Even(WithoutCurrency(typed));
        foreach (var price in Amounts(text, 0, expect))
        {
            int at = Letters.SkipSpace(text, price.End);
            if (Past(text, at, Each) is >= 0 and var each)
            {
                yield return price with { End = typed.Length + each - text.Length };
            }

            int per = Past(text, at, ["per", "/"]);
            var (count, end) = NumberSpelling.Whole(text, Letters.SkipSpace(text, Math.Max(per, 0)));
            if (per >= 0 && count > 0 && end == text.Length)
            {
                yield return new(Share((TypedValue.Amount)price.Value, count), typed.Length, true);
            }

            if (price.End == text.Length)
            {
                yield return price with { End = typed.Length };
            }
        }

        var (pieces, past) = NumberSpelling.Whole(text, 0);
        if (pieces > 0 && Past(text, Letters.SkipSpace(text, past), ["for"]) is >= 0 and var start)
        {
            foreach (var price in Amounts(text, Letters.SkipSpace(text, start), expect).Where(item => item.End == text.Length))
            {
                yield return new(Share((TypedValue.Amount)price.Value, pieces), typed.Length, true);
            }
        }
    }

    /// <summary>Signs and names of money before or behind a number are left out; 'cents' are no name of it, for they would be a hundred times too much.</summary>
    private static string WithoutCurrency(string typed) => Currency().Replace(string.Concat(typed.Where(c => CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.CurrencySymbol)), "").Trim();

    [GeneratedRegex(@"(?<![\p{L}])(?:EUR|USD|GBP|CHF|SEK|NOK|DKK|ISK|PLN|CZK|HUF|RON|BGN|TRY|UAH|JPY|CNY|KRW|TWD|INR|AUD|CAD|NZD|BRL|MXN|ZAR|ILS|SGD|HKD|euros?|dollars?|pounds?|francs?|kronor|kroner)(?![\p{L}])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Currency();

    /// <summary>A whole number of things.</summary>
    public static IEnumerable<Item> Count(string text, Expect expect)
    {
        foreach (var item in Amounts(text, 0, expect))
        {
            var amount = (TypedValue.Amount)item.Value;
            if (amount.Value >= 0 && amount.Value == Math.Floor(amount.Value) && amount.Unit == Units.One)
            {
                int past = Past(text, Letters.SkipSpace(text, item.End), Pieces);
                yield return item with { End = past >= 0 ? past : item.End };
            }
        }
    }

    private static IEnumerable<Item> Amounts(string text, int start, Expect expect) =>
        AmountSpelling.At(text, start, expect with { Kind = ExpectKind.Amount }, false).Where(item => item.Value is TypedValue.Amount);

    private static TypedValue.Amount Share(TypedValue.Amount price, int pieces) =>
        price with { Value = price.Value / pieces, PlusMinus = price.PlusMinus / pieces, Step = price.Step / pieces };

    private static int Past(string text, int at, string[] words) => words.Select(word => Letters.After(text, at, word)).FirstOrDefault(end => end >= 0, -1);
}

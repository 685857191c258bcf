using System.Text.RegularExpressions;

namespace Heatwright.Parts;

/// <summary>What kind of part a seller's text speaks of, and the words about it that are no numbers.</summary>
internal static partial class ListingKinds
{
    // In this order: a charger for a cell names the cell, a holder for a cell too, and a step-up charger is a charger.
    private static readonly (PartKind Kind, Regex Words)[] Kinds =
    [
        (PartKind.Handle, Handle()), (PartKind.Sensor, Sensor()), (PartKind.CutOut, CutOut()), (PartKind.Supervision, Supervision()), (PartKind.Charger, Charger()),
        (PartKind.StepUp, StepUp()), (PartKind.Contacts, Contacts()), (PartKind.Heater, Heater()), (PartKind.Leads, Leads()), (PartKind.Switch, Switch()),
        (PartKind.Controller, Controller()), (PartKind.Lamp, Lamp()), (PartKind.Cell, Cell()),
    ];

    public static PartKind? Of(string text)
    {
        foreach (var (kind, words) in Kinds)
        {
            if (words.IsMatch(text))
            {
                return kind;
            }
        }

        return null;
    }

    public static SortedDictionary<string, string> Words(PartKind kind, string text)
    {
        SortedDictionary<string, string> words = new(StringComparer.Ordinal);
        if (kind is PartKind.Cell or PartKind.Charger or PartKind.Supervision && Chemistry(text) is { } chemistry)
        {
            words["chemistry"] = chemistry;
        }

        if (kind is PartKind.Charger or PartKind.Supervision && Cells(text) is { } cells)
        {
            words["cells"] = cells;
        }

        if (kind == PartKind.Cell && RoundSize().Match(text) is { Success: true } size)
        {
            words["size"] = size.Value;
        }

        if (kind == PartKind.Switch && HandSwitch.Kind(text) is { } contacts)
        {
            words["type"] = contacts;
        }

        if (kind == PartKind.Sensor)
        {
            if (CoupleType().Match(text) is { Success: true } couple)
            {
                words["type"] = (couple.Groups[1].Success ? couple.Groups[1] : couple.Groups[2]).Value.ToUpperInvariant();
            }
            else if (Thermistor().IsMatch(text))
            {
                words["type"] = "thermistor";
            }
        }

        return words;
    }

    private static string? Chemistry(string text) => IronPhosphate().IsMatch(text) ? "lithium iron phosphate" : NickelHydride().IsMatch(text) ? "nickel-metal hydride"
        : LithiumIon().IsMatch(text) ? "lithium-ion" : null;

    private static string? Cells(string text) => SeriesCount().Match(text) is { Success: true } count ? count.Groups[1].Value
        : OneCell().IsMatch(text) ? "1" : TwoCells().IsMatch(text) ? "2" : ThreeCells().IsMatch(text) ? "3" : null;

    private const RegexOptions Any = RegexOptions.IgnoreCase | RegexOptions.CultureInvariant;

    [GeneratedRegex(@"\bhandle\b|grip tube", Any)]
    private static partial Regex Handle();

    [GeneratedRegex(@"thermocouple|thermistor|\bntc\b|\brtd\b|\bpt ?100\b|temperature (sensor|probe)", Any)]
    private static partial Regex Sensor();

    [GeneratedRegex(@"thermal (fuse|link|cut-?off|cut-?out|switch|protector)|\bcut-?out\b|thermostat", Any)]
    private static partial Regex CutOut();

    [GeneratedRegex(@"protection (board|module)|protection circuit (board|module)|\bbms\b|supervision|balance board", Any)]
    private static partial Regex Supervision();

    [GeneratedRegex(@"\bcharger\b|charg(e|ing) (board|module|circuit)", Any)]
    private static partial Regex Charger();

    [GeneratedRegex(@"step-?\s?up|\bboost\b|up-?converter", Any)]
    private static partial Regex StepUp();

    [GeneratedRegex(@"\bholder\b|battery box|spring contacts?|contact strip|nickel strip|battery clips?", Any)]
    private static partial Regex Contacts();

    [GeneratedRegex(@"\bheat(er|ing)\b|\bheating element|nichrome|nickel-chromium|resistance (wire|ribbon)", Any)]
    private static partial Regex Heater();

    [GeneratedRegex(@"silicone (wire|lead)|hook-?up wire|\bcable\b|stranded wire|\bwire\b.*\bawg\b|\bawg\b.*\bwire\b", Any)]
    private static partial Regex Leads();

    [GeneratedRegex(@"mosfet|transistor|switch (module|board)|\brelay\b|load switch|\b(slide|toggle|rocker|push[- ]?button|lever|micro|rotary) ?-?switch", Any)]
    private static partial Regex Switch();

    [GeneratedRegex(@"microcontroller|controller board|control board|development board", Any)]
    private static partial Regex Controller();

    [GeneratedRegex(@"\blumens?\b|\d ?lm\b|\bled (module|emitter|chip|driver|light)|light engine|\b(work|inspection|reading|white) lamp\b|\blamp (head|module)\b", Any)]
    private static partial Regex Lamp();

    [GeneratedRegex(@"\bcells?\b|batter(y|ies)|\bli-?po\b|\bli-?ion\b|ni-?mh|\bmah\b|\d+ ?mah\b", Any)]
    private static partial Regex Cell();

    [GeneratedRegex(@"lifepo4?|\blfp\b|iron.phosphate", Any)]
    private static partial Regex IronPhosphate();

    [GeneratedRegex(@"ni-?mh|nickel.metal hydride", Any)]
    private static partial Regex NickelHydride();

    [GeneratedRegex(@"\bli-?ion\b|\bli-?po\b|lithium", Any)]
    private static partial Regex LithiumIon();

    [GeneratedRegex(@"\b([1-6])S(?:[1-9]P)?\b", RegexOptions.CultureInvariant)]
    private static partial Regex SeriesCount();

    [GeneratedRegex(@"\b(single|one)[ -](\w+ )?cell\b|\b1 cell\b|\bone-cell\b", Any)]
    private static partial Regex OneCell();

    [GeneratedRegex(@"\b(two|2)[ -](\w+ )?cells?\b", Any)]
    private static partial Regex TwoCells();

    [GeneratedRegex(@"\b(three|3)[ -](\w+ )?cells?\b", Any)]
    private static partial Regex ThreeCells();

    [GeneratedRegex(@"\b(10440|14500|16340|18350|18500|18650|20700|21700|26650|32650|32700)\b", RegexOptions.CultureInvariant)]
    private static partial Regex RoundSize();

    [GeneratedRegex(@"\btype[ -]?([BCEJKNRST])\b|\b([BCEJKNRST])[ -]type\b", Any)]
    private static partial Regex CoupleType();

    [GeneratedRegex(@"thermistor|\bntc\b", Any)]
    private static partial Regex Thermistor();
}

using System.Globalization;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Handbook;

/// <summary>Stopwatch marks of a tip as a maker types them, and all they say.</summary>
/// <remarks>Reads the marks; the judging is <see cref="StopwatchMarks"/>. Checked: TradeFactsTests.</remarks>
public static class TipMarks
{
    private const string Form = "marks such as '6.4W passed 250C 60s, 6.4W stuck 360C, 10W passed 450C'";

    /// <summary>Which shapes of loss survive, where the plateaus can lie, and which hold would decide.</summary>
    [Law("tip-marks", "warm-up", "P = s·f(T), f = T − T_a or T⁴ − T_a⁴; 'passed' and 'not before' are bounds, 'stuck' is a plateau, 'at' a reading", Says = "what stopwatch marks of a tip say, and which hold would decide",
        Source = "definition", Where = "heat balance of one body", Valid = "constant power from cold; power ±5 %, temperature ±10 K, time of an 'at' mark ±10 %", Example = "marks=6.4W/passed/250C/60s,6.4W/passed/350C/120s,6.4W/stuck/360C,10W/passed/450C around=25C")]
    public static MarksRead Read(
        [In("marks", "word", "power, at or passed or stuck, temperature, time if any; commas between", Name = "marks")] string marks,
        [In("T_a", "°C", "air temperature", Name = "around", Min = -100, Max = 100, Default = 25)] double aroundC,
        [In("p", "", "'about' for a power", Name = "about-power", Min = 0, Max = 0.5, Default = 0.05)] double powerShare = 0.05,
        [In("d", "K", "'near' for a temperature", Name = "near", Min = 0, Max = 100, Default = 10)] double nearK = 10)
    {
        StopwatchMark[] seen = [.. Parts(marks ?? "").Select(One)];
        if (seen.Length == 0)
        {
            throw new ArgumentOutOfRangeException(nameof(marks), marks, $"There is no mark to read. Type {Form}.");
        }

        var said = StopwatchMarks.Say(seen, aroundC, powerShare, nearK);
        LossShape[] left = [.. said.Left];
        double hold = said.NextHold?.PowerW ?? seen.Max(mark => mark.PowerW);
        var open = said.PlateauC.TryGetValue(hold, out var bare) ? bare : new SpanC(double.NegativeInfinity, double.PositiveInfinity);
        SpanC? Of(LossShape shape) => said.Shapes.Single(each => each.Shape == shape) is { Fits: true } fits && fits.PlateauC.TryGetValue(hold, out var span) ? span : null;
        return new(left.Contains(LossShape.Linear), left.Contains(LossShape.Radiating), hold, Finite(open.LowC), Finite(open.HighC),
            Finite(Of(LossShape.Linear)?.LowC), Finite(Of(LossShape.Linear)?.HighC), Finite(Of(LossShape.Radiating)?.LowC), Finite(Of(LossShape.Radiating)?.HighC),
            Words(left, hold, open, said.NextHold));
    }

    private static string Words(LossShape[] left, double hold, SpanC open, HoldToDo? next)
    {
        string fits = left.Length switch
        {
            2 => "linear and radiating losses both fit",
            1 => left[0] == LossShape.Linear ? "only a linear loss fits" : "only a radiating loss fits",
            _ => "neither a linear nor a radiating loss fits: a mixture, or a mark is wrong",
        };
        string plateau = (double.IsFinite(open.LowC), double.IsFinite(open.HighC)) switch
        {
            (true, true) => string.Create(CultureInfo.InvariantCulture, $"; the plateau at {hold:0.###} W is between {open.LowC:0} and {open.HighC:0} °C"),
            (true, false) => string.Create(CultureInfo.InvariantCulture, $"; the plateau at {hold:0.###} W is anywhere above {open.LowC:0} °C"),
            _ => "",
        };
        string decide = next is null ? "" : string.Create(CultureInfo.InvariantCulture, $"; one hold at {next.PowerW:0.###} W {(next.Decides ? "would decide" : "may decide")}");
        return fits + plateau + decide;
    }

    /// <summary>Semicolons part the marks; without one, commas do, but for those between two digits.</summary>
    private static string[] Parts(string marks)
    {
        char[] letters = marks.ToCharArray();
        for (int i = 0; i < letters.Length; i++)
        {
            bool decimalComma = i > 0 && i + 1 < letters.Length && char.IsAsciiDigit(letters[i - 1]) && char.IsAsciiDigit(letters[i + 1]);
            letters[i] = letters[i] == ',' && !decimalComma && !marks.Contains(';', StringComparison.Ordinal) ? ';' : letters[i];
        }

        return new string(letters).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
    }

    private static StopwatchMark One(string text)
    {
        string[] words = text.Split([' ', '/'], StringSplitOptions.RemoveEmptyEntries);
        int kindAt = Array.FindIndex(words, word => Enum.TryParse<MarkKind>(word, ignoreCase: true, out _) && word.All(char.IsLetter));
        if (kindAt != 1 || words.Length is < 3 or > 4)
        {
            throw new ArgumentOutOfRangeException(nameof(text), text, $"The mark '{text}' cannot be read. Type {Form}.");
        }

        return new(Amount(words[0], Units.Watt), Enum.Parse<MarkKind>(words[1], ignoreCase: true), Amount(words[2], Units.Celsius), words.Length > 3 ? Amount(words[3], Units.Second) : null);

        double Amount(string word, Unit unit) => OptionReader.Amount("marks", word, Expect.Of(unit)) is { IsFine: true } fine
            ? unit.FromSi(fine.Value.Si)
            : throw new ArgumentOutOfRangeException(nameof(text), text, $"'{word}' in the mark '{text}' cannot be read in {unit.Symbol}. Type {Form}.");
    }

    private static double? Finite(double? value) => value is { } known && double.IsFinite(known) ? known : null;
}

/// <summary>All that marks say.</summary>
/// <param name="Linear">Whether a loss in proportion to the rise fits.</param>
/// <param name="Radiating">Whether a radiating loss fits.</param>
/// <param name="HoldW">The power to hold next.</param>
/// <param name="LowC">What the marks by themselves say of the plateau at that power, lower end.</param>
/// <param name="HighC">Upper end.</param>
/// <param name="LinearLowC">Under a linear loss, lower end.</param>
/// <param name="LinearHighC">Under a linear loss, upper end.</param>
/// <param name="RadiatingLowC">Under a radiating loss, lower end.</param>
/// <param name="RadiatingHighC">Under a radiating loss, upper end.</param>
/// <param name="Says">In one sentence.</param>
public sealed record MarksRead(
    [property: Out("", "whether a linear loss fits", Name = "linear-fits")] bool Linear,
    [property: Out("", "whether a radiating loss fits", Name = "radiating-fits")] bool Radiating,
    [property: Out("W", "power to hold next", Name = "hold")] double HoldW,
    [property: Out("°C", "plateau there, least by the marks alone", Name = "plateau-least")] double? LowC,
    [property: Out("°C", "plateau there, most by the marks alone", Name = "plateau-most")] double? HighC,
    [property: Out("°C", "plateau there under a linear loss, least", Name = "linear-least")] double? LinearLowC,
    [property: Out("°C", "plateau there under a linear loss, most", Name = "linear-most")] double? LinearHighC,
    [property: Out("°C", "plateau there under a radiating loss, least", Name = "radiating-least")] double? RadiatingLowC,
    [property: Out("°C", "plateau there under a radiating loss, most", Name = "radiating-most")] double? RadiatingHighC,
    [property: Out("", "in one sentence", Name = "says")] string Says);

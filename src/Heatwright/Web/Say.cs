using System.Globalization;
using System.Text.RegularExpressions;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Web;

/// <summary>Words and figures of the pages, the same in every culture.</summary>
internal static partial class Say
{
    /// <summary>The verdict in words.</summary>
    public static string Word(VerdictWord word) => word == VerdictWord.NeedMoreReadings ? "need more readings" : ArrangementView.Word(word);

    /// <summary>The verdict in words, from what machines read.</summary>
    public static string Word(string verdict) => verdict == ArrangementView.Word(VerdictWord.NeedMoreReadings) ? Word(VerdictWord.NeedMoreReadings) : verdict;

    /// <summary>Class and mark of a verdict.</summary>
    public static string Mark(VerdictWord word) => word == VerdictWord.NeedMoreReadings ? "need" : ArrangementView.Word(word);

    /// <summary>Of 100 draws.</summary>
    public static string Odds(double probability) => probability > 0.99 ? "99+" : Math.Round(100 * probability).ToString(CultureInfo.InvariantCulture);

    /// <summary>A number in a given format.</summary>
    public static string Number(double value, string format = "0.###") => value.ToString(format, CultureInfo.InvariantCulture).Replace('-', '−');

    /// <summary>A count.</summary>
    public static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A limit with its sign and unit.</summary>
    public static string Limit(Requirement line) => $"{(line.AtMost ? "≤" : "≥")} {Number(line.Limit)}{Unit(line.Unit)}";

    /// <summary>A requirement as it was typed; that it is a want is told beside it.</summary>
    public static string Asked(Requirement line) => !line.Must && line.Text.StartsWith("want:", StringComparison.OrdinalIgnoreCase) ? line.Text["want:".Length..].Trim() : line.Text;

    /// <summary>Its limit to stand beside it; empty where its own words name that number with its unit, a time in whichever.</summary>
    public static string LimitBeside(Requirement line) => Numbers().Matches(line.Text).Any(match => Names(line, double.Parse(match.Groups[1].Value.Replace(',', '.'), CultureInfo.InvariantCulture), match.Groups[2].Value)) ? "" : Limit(line);

    private static bool Names(Requirement line, double said, string letter)
    {
        double scale = line.Unit is "s" or "min" or "h" ? Seconds(letter) / Seconds(line.Unit[..1])
            : Unit(line.Unit).Length == 0 || (letter.Length > 0 && (line.Unit.StartsWith(letter, StringComparison.Ordinal) || line.Unit == "°" + letter)) ? 1 : double.NaN;
        return Math.Abs((said * scale) - line.Limit) <= 1e-6 * Math.Abs(line.Limit);

        static double Seconds(string letter) => letter switch { "s" => 1, "m" => 60, "h" => 3600, _ => double.NaN };
    }

    [GeneratedRegex(@"([0-9]+(?:[.,][0-9]+)?)\s*(\S?)", RegexOptions.CultureInvariant)]
    private static partial Regex Numbers();

    /// <summary>A unit behind its number.</summary>
    public static string Unit(string symbol) => Display.Behind(symbol);

    /// <summary>A time in the unit a maker says it in.</summary>
    public static string Time(double seconds) => !double.IsFinite(seconds) ? "never"
        : seconds < 90 ? Number(seconds, "0.#") + "\u00A0s" : seconds < 5400 ? Number(seconds / 60, "0.#") + "\u00A0min" : Number(seconds / 3600, "0.0") + "\u00A0h";

    /// <summary>A sentence with a capital and a full stop, in the words of the pages.</summary>
    public static string Sentence(string said)
    {
        string text = PageWords.Of(said);
        return text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..] + (text[^1] is '.' or '?' or '!' ? "" : ".");
    }

    /// <summary>Small ohms as milliohms, areas as square centimetres: as a maker says them.</summary>
    public static Estimate Scaled(Estimate value) =>
        value.Unit == Units.Ohm && Math.Abs(value.Value) < 0.3 ? value.In(Units.Milliohm) : value.Unit == Units.SquareMetre ? value.In(Units.SquareCentimetre) : value;

    /// <summary>Form and mark of an origin: measured, sheet, claimed, assumed or worked.</summary>
    public static string Form(Origin origin) => origin switch
    {
        Origin.Measured or Origin.Fitted => "measured",
        Origin.Sheet or Origin.Published => "sheet",
        Origin.Claimed => "claimed",
        Origin.Assumed => "assumed",
        _ => "worked",
    };

    /// <summary>Classes of the line under a number: a worked one wears the form of the weakest thing it rests on.</summary>
    public static string Line(Origin origin) => Form(origin) != "worked" ? Form(origin) : origin.Weakest() is Origin.Claimed or Origin.Assumed ? $"worked {Form(origin.Weakest())}" : "worked";

    /// <summary>Where a number comes from, in a sentence.</summary>
    public static string From(Origin origin) => origin switch
    {
        Origin.Measured measured => $"measured, run '{measured.Run}'{(measured.Instrument.Length > 0 ? $", {measured.Instrument}" : "")}",
        Origin.Fitted fitted => $"fitted from trial '{fitted.Trial}', {(fitted.Runs.Count == 1 ? "run" : "runs")} {string.Join(", ", fitted.Runs)}",
        Origin.Claimed claimed => $"claimed by the seller: “{claimed.Wording}”",
        Origin.Sheet sheet => $"data sheet: {sheet.Document}, {sheet.Where}",
        Origin.Published published => $"published: {published.Source}, {published.Where}",
        Origin.WorkedOut worked => $"worked out: {worked.Law}",
        Origin.Predicted predicted => $"predicted for {predicted.Arrangement}",
        Origin.Assumed assumed => $"assumed: {assumed.Why}",
        _ => origin.Word,
    };
}

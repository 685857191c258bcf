using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>Collects the lines of a section.</summary>
internal sealed class Lines(SheetAsk ask)
{
    private readonly List<SheetLine> lines = [];

    public IReadOnlyList<SheetLine> All => lines;

    public void Add(string name, Estimate value, string words = "", bool warns = false) => lines.Add(new(name, value, words) { Warns = warns });

    public void Say(string name, string words, bool warns = false) => lines.Add(new(name, null, words) { Warns = warns });

    /// <summary>A choice of the sheet, as a line.</summary>
    public void Choice(string title, string name, string words = "") => Add(title, ask.Choices[name].Estimate, words);

    /// <summary>A number worked out by a law from named numbers, told without doubt of its own: a thing to be bought or set.</summary>
    public void Made(string name, double value, Unit unit, string law, IReadOnlyList<Input> from, string words = "", bool warns = false)
    {
        if (double.IsFinite(value))
        {
            Add(name, Made(value, unit, law, from), words, warns);
        }
        else
        {
            Say(name, words.Length > 0 ? words : "cannot be", warns: true);
        }
    }

    public static Estimate Made(double value, Unit unit, string law, IReadOnlyList<Input> from) => Estimate.Exact(value, unit, new Origin.WorkedOut(law, from));

    public static string N(double value, string format = "0.##") => value.ToString(format, CultureInfo.InvariantCulture);
}

using System.Globalization;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.BuildSheets;

/// <summary>A resistor value in the drawer.</summary>
/// <param name="Ohm">Value.</param>
/// <param name="Count">Pieces.</param>
public sealed record DrawerResistor(double Ohm, int Count);

/// <summary>The resistors that a maker has.</summary>
/// <param name="Resistors">Value by value, rising.</param>
public sealed record ResistorDrawer(IReadOnlyList<DrawerResistor> Resistors)
{
    /// <summary>True where both resistors of a pair can be taken out at once.</summary>
    public bool HasBoth(GainPair pair) => pair.FeedbackOhm != pair.GroundOhm || Resistors.Any(one => one.Ohm == pair.FeedbackOhm && one.Count >= 2);

    /// <summary>Reads a drawer: a value a line or cell ('4k7', '120 k', '470'), with a count after a comma where there is one. A heading is skipped.</summary>
    public static Checked<ResistorDrawer> Parse(string text, string where)
    {
        List<Problem> problems = [];
        Dictionary<double, int> found = [];
        int number = 0;
        foreach (string line in text.Split('\n'))
        {
            number++;
            string plain = line.Trim().TrimStart('\uFEFF');
            if (plain.Length == 0 || plain[0] == '#')
            {
                continue;
            }

            string[] cells = plain.Split([',', ';', '\t']);
            if (OhmsOf(cells[0]) is not { } ohm)
            {
                if (number > 1 || cells[0].Any(char.IsAsciiDigit))
                {
                    problems.Add(new("This is no resistor value.", $"{where}, line {number.ToString(CultureInfo.InvariantCulture)}", cells[0].Trim(), "ohms such as 470, 4k7, 120k or 1M", "Write the value as its label says it."));
                }

                continue;
            }

            int count = 1;
            if (cells.Length > 1 && cells[1].Trim().Length > 0 && (!int.TryParse(cells[1].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out count) || count > 1_000_000))
            {
                problems.Add(new("This is no count of pieces.", $"{where}, line {number.ToString(CultureInfo.InvariantCulture)}", cells[1].Trim(), "a whole number", "Write how many there are, or leave it out."));
                continue;
            }

            if (count > 0)
            {
                found[ohm] = found.GetValueOrDefault(ohm) + count;
            }
        }

        if (problems.Count == 0 && found.Count == 0)
        {
            problems.Add(new("The drawer is empty.", where, "no value", "one resistor value a line", "List what you have, such as '4k7,20'."));
        }

        return problems.Count > 0 ? new(problems) : new(new ResistorDrawer([.. found.OrderBy(pair => pair.Key).Select(pair => new DrawerResistor(pair.Key, pair.Value))]));
    }

    /// <summary>Ohms of a label: letters R, k, M as the decimal mark or behind the number (IEC 60062); null: none.</summary>
    private static double? OhmsOf(string cell)
    {
        string plain = cell.Trim().Trim('"').Replace("Ω", "", StringComparison.Ordinal).Replace("ohm", "", StringComparison.OrdinalIgnoreCase).Replace(" ", "", StringComparison.Ordinal).Replace("\u00A0", "", StringComparison.Ordinal);
        int letter = plain.IndexOfAny(['R', 'r', 'k', 'K', 'M']);
        double factor = 1;
        if (letter >= 0)
        {
            factor = plain[letter] switch { 'k' or 'K' => 1e3, 'M' => 1e6, _ => 1 };
            plain = letter == plain.Length - 1 ? plain[..letter] : string.Concat(plain.AsSpan(0, letter), ".", plain.AsSpan(letter + 1));
        }

        return double.TryParse(plain, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) && value > 0 && value * factor is >= 0.1 and <= 100e6
            ? Math.Round(value * factor, 6)
            : null;
    }
}

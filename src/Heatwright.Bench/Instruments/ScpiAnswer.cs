using System.Text.RegularExpressions;
using Heatwright.Logs;
using Heatwright.Quantities;

namespace Heatwright.Instruments;

/// <summary>Answers of instruments that follow IEEE 488.2: numbers such as +1.234560E+00, parted by commas and semicolons.</summary>
internal static partial class ScpiAnswer
{
    /// <summary>Names and units by the function that the question names. Units: the fundamental ones of SCPI 1999 for each function, from memory.</summary>
    private static readonly (string Function, string Name, Unit? Unit)[] Functions =
    [
        ("VOLT", "volts", Units.Volt), ("CURR", "amps", Units.Ampere), ("FRES", "ohms", Units.Ohm), ("RES", "ohms", Units.Ohm),
        ("TEMP", "degrees", null), ("POW", "watts", Units.Watt), ("FREQ", "hertz", Units.Find("Hz")),
    ];

    /// <summary>The values of an answer to this question; null: it is no answer with numbers.</summary>
    public static IReadOnlyList<Readout>? Read(string question, string answer)
    {
        string[] parts = answer.Split([',', ';'], StringSplitOptions.TrimEntries);
        // An entry of the error queue, such as -113,"Undefined header", is no reading.
        if (parts.Length > 64 || parts.Any(part => part.StartsWith('"')))
        {
            return null;
        }

        string[] questions = question.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var readouts = new Readout[parts.Length];
        bool each = questions.Length == parts.Length;
        var whole = each ? default : Named(question);
        for (int i = 0; i < parts.Length; i++)
        {
            var (name, unit) = each ? Named(questions[i]) : whole;
            string label = parts.Length > 1 && !each ? $"{name} {(i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}" : name;
            var value = NumberCell.Read(parts[i], '.');
            var own = value.Unit.Length > 0 ? UnitWords.Find(value.Unit) ?? unit : unit;
            readouts[i] = value.Kind switch
            {
                CellKind.Number => new(label, ReadoutKind.Number, value.Value, own, parts[i]),
                CellKind.Overload => new(label, ReadoutKind.Overload, double.NaN, unit, parts[i]),
                CellKind.Missing => new(label, ReadoutKind.Missing, double.NaN, unit, parts[i]),
                _ => new(label, ReadoutKind.Words, double.NaN, null, parts[i]),
            };
        }

        return readouts[0].Kind != ReadoutKind.Words && readouts.Any(readout => readout.Raw.Length > 0) ? readouts : null;
    }

    /// <summary>Who an instrument says it is: four fields with commas between them, in plain letters.</summary>
    public static bool IsIdentity(string answer) => answer.Contains(',', StringComparison.Ordinal) && answer.Any(char.IsAsciiLetter) && answer.All(c => c is >= ' ' and <= '~');

    /// <summary>The line without the prompts that a terminal service puts before it.</summary>
    public static string WithoutPrompt(string line)
    {
        if (!line.Contains('>', StringComparison.Ordinal))
        {
            return line;
        }

        var prompt = Prompt().Match(line);
        return prompt.Success ? line[prompt.Length..] : line;
    }

    private static (string Name, Unit? Unit) Named(string question)
    {
        foreach (var (function, name, unit) in Functions)
        {
            for (int at = question.IndexOf(function, StringComparison.OrdinalIgnoreCase); at >= 0; at = question.IndexOf(function, at + 1, StringComparison.OrdinalIgnoreCase))
            {
                if (at == 0 || !char.IsAsciiLetter(question[at - 1]))
                {
                    return (name, unit);
                }
            }
        }

        return (question.Trim(), null);
    }

    [GeneratedRegex(@"^(?:[A-Za-z0-9_ .-]{0,24}> ?)+", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Prompt();
}

using Heatwright.Handbook;

namespace Heatwright.Jobs.Sums;

/// <summary>Sorts what was typed behind a sum to its inputs: names first, then words of the trade, then values that can only be meant for one.</summary>
internal static class TypedWords
{
    /// <summary>Words of the trade for a quantity, with the units it is measured in. They stand for an input only where one alone fits.</summary>
    private static readonly (string[] Words, string[] Units)[] Quantities =
    [
        (["voltage", "volts", "volt", "v", "u"], ["V"]),
        (["current", "amps", "amp", "amperes", "ampere", "i"], ["A"]),
        (["resistance", "ohms", "ohm", "r"], ["Ω"]),
        (["power", "watts", "watt", "p"], ["W"]),
        (["temperature", "temp", "t", "hot"], ["°C"]),
        (["rise", "dt"], ["K"]),
        (["capacity", "charge", "mah", "ah", "q"], ["C"]),
        (["energy", "wh"], ["J"]),
        (["time", "seconds"], ["s"]),
        (["frequency", "freq", "f"], ["Hz"]),
        (["diameter", "length", "width", "thickness", "size"], ["m"]),
        (["area", "section", "cross-section", "wire"], ["m²"]),
        (["ambient", "room", "air"], ["°C"]),
        (["d", "duty-cycle"], [""]),
    ];

    /// <summary>Text by input name, and what found no place.</summary>
    public static (Dictionary<string, string> Texts, IReadOnlyList<string> Left) Sorted(LawCard card, IReadOnlyList<string> typed)
    {
        Dictionary<string, string> texts = new(StringComparer.OrdinalIgnoreCase);
        List<string> left = [], unnamed = [];
        string? last = null;
        bool unknown = false;
        foreach (string word in typed)
        {
            int equals = word.IndexOf('=', StringComparison.Ordinal);
            if (equals <= 0)
            {
                // 'capacity=550 mAh': a word without a digit goes on with the value before it.
                if (unknown && !word.Any(char.IsAsciiDigit))
                {
                    left[^1] += " " + word;
                }
                else if (last is not null && !word.Any(char.IsAsciiDigit) && !card.Inputs.Any(input => input.Words.Contains(word, StringComparer.OrdinalIgnoreCase)))
                {
                    texts[last] += " " + word;
                }
                else
                {
                    unnamed.Add(word);
                }

                continue;
            }

            (last, unknown) = (null, false);
            if (card.Input(word[..equals].Trim()) is { } input)
            {
                texts[input.Name] = word[(equals + 1)..];
                last = input.Name;
            }
            else
            {
                left.Add(word);
                unknown = true;
            }
        }

        foreach (string word in left.ToArray())
        {
            int equals = word.IndexOf('=', StringComparison.Ordinal);
            string name = word[..equals].Trim().ToLowerInvariant(), text = word[(equals + 1)..];
            string[] units = [.. Quantities.Where(each => each.Words.Contains(name)).SelectMany(each => each.Units)];
            if (Only(card, texts, input => units.Contains(input.Card.Unit, StringComparer.Ordinal) && !input.IsYesNo) is { } meant)
            {
                texts[meant.Name] = text;
                left.Remove(word);
            }
        }

        // Two values that fit one input say nothing of which is which: '350C 25C' is asked back.
        var fits = unnamed.Distinct().ToDictionary(word => word, word => card.Inputs.Where(input => !texts.ContainsKey(input.Name) && Typed.Suits(input, word)).ToArray(), StringComparer.Ordinal);
        string[] unclear = [.. unnamed.Where(word => unnamed.Count(other => other == word) > 1 || unnamed.Any(other => other != word && fits[other].Intersect(fits[word]).Any()))];
        foreach (string word in unnamed)
        {
            if (!unclear.Contains(word) && Only(card, texts, input => fits[word].Contains(input)) is { } meant)
            {
                texts[meant.Name] = word;
            }
            else
            {
                left.Add(word);
            }
        }

        // One value left over and one input that must be typed: they belong together, unit or not.
        string[] over = [.. left.Where(word => !word.Contains('=', StringComparison.Ordinal))];
        if (over.Length == 1 && !unclear.Contains(over[0]) && Only(card, texts, input => !input.IsOptional) is { } meantFor && (Typed.IsBare(over[0]) || meantFor.Parameter.ParameterType == typeof(string)))
        {
            texts[meantFor.Name] = over[0];
            left.Remove(over[0]);
        }

        return (texts, left);
    }

    /// <summary>The one input that is still open and fits, those that must be typed before those that need not be; null where none or several do.</summary>
    private static LawInput? Only(LawCard card, Dictionary<string, string> texts, Func<LawInput, bool> fits)
    {
        LawInput[] open = [.. card.Inputs.Where(input => !texts.ContainsKey(input.Name) && fits(input))];
        LawInput[] needed = [.. open.Where(input => !input.IsOptional)];
        return needed.Length == 1 ? needed[0] : needed.Length == 0 && open.Length == 1 ? open[0] : null;
    }
}

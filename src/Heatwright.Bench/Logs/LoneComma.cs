namespace Heatwright.Logs;

/// <summary>Lines like 231,240 and nothing else: two columns, or one with a decimal comma.</summary>
internal static class LoneComma
{
    /// <summary>Null when the lines could be either.</summary>
    public static bool? Separates(ReadOnlySpan<byte> text, LogSample sample, out string example)
    {
        example = "";
        int length = -1;
        bool? separates = null;
        foreach (var place in sample.Lines)
        {
            string line = LineWalk.Show(place.In(text));
            int comma = line.IndexOf(',', StringComparison.Ordinal);
            if (comma < 0)
            {
                continue;
            }

            string left = line[..comma].TrimStart('+', '-'), right = line[(comma + 1)..];
            if (right.Length > 1 && right[0] == '0' && right.All(char.IsAsciiDigit))
            {
                return false;
            }

            // A sign, a point or a blank behind the comma, or a changing number of digits, is no fraction.
            separates = !left.All(char.IsAsciiDigit) || !right.All(char.IsAsciiDigit) || right.Length == 0 || (length >= 0 && right.Length != length) ? true : separates;
            (example, length) = (line, right.Length);
        }

        return separates;
    }

    public static LogQuestion? Question(
        ReadOnlySpan<byte> text, LogSample sample, SeparatorFinder.Choice choice, LogPlan plan, byte? stated, LogMapping? remembered)
    {
        if (choice is not { Separator: (byte)',', Cells: 2 } || plan.HasHeader || stated is not null || remembered?.CommaSeparates is not null
            || Separates(text, sample, out string example) is not null || example.Length == 0)
        {
            return null;
        }

        var answer = remembered ?? new LogMapping();
        return new(
            $"The lines hold two numbers with a comma between them and no names, such as {example}. What is the comma?",
            [
                new($"A separator: {example.Replace(",", " and ", StringComparison.Ordinal)} are two columns", answer with { CommaSeparates = true }),
                new($"The decimal mark: {example.Replace(',', '.')} is one number", answer with { CommaSeparates = false, DecimalMark = ',' }),
            ]);
    }
}

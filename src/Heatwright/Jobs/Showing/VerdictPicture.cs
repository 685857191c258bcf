using System.Globalization;
using System.Text;
using Heatwright.Quantities;
using Heatwright.Report;
using Heatwright.Verdicts;

namespace Heatwright.Jobs.Showing;

/// <summary>One arrangement against its brief at the size of a film: every requirement as a bar of 90 of 100 draws beside its limit, with value and chance.</summary>
internal static class VerdictPicture
{
    private const double Top = 240, Foot = 1010, Left = 720, Reach = 720, Values = 1480;
    private const int LetterWidth = 40;

    /// <summary>The picture. Right of the line is kept, left is missed; one limit's worth is the half width.</summary>
    public static string Svg(Contender one, Brief brief, bool isInvented)
    {
        Requirement[] lines = [.. brief.Requirements.OrderByDescending(line => line.Must)];
        double row = Math.Min(112, (Foot - Top) / Math.Max(1, lines.Length)), middle = Left + (Reach / 2);
        string ink = Tokens.Of("--ink"), quiet = Tokens.Of("--ink-2"), title = $"{one.Verdict.Arrangement.Letter}  {one.Verdict.Arrangement.Name}";
        var svg = new StringBuilder(string.Create(CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{FigureSvg.Wide}\" height=\"{FigureSvg.High}\" viewBox=\"0 0 {FigureSvg.Wide} {FigureSvg.High}\" role=\"img\" font-family=\"sans-serif\">\n<title>{Html.Escaped($"{title}: {ComparisonText.Word(one.Verdict.Word)}")}</title>\n<rect width=\"{FigureSvg.Wide}\" height=\"{FigureSvg.High}\" fill=\"{Tokens.Of("--well")}\"/>\n"));
        Text(svg, title.Length > 66 ? title[..65] + "…" : title, 60, 84, 46, ink, weight: 700);
        Text(svg, ComparisonText.Word(one.Verdict.Word), 60, 150, 46, ink, weight: 700);
        if (isInvented)
        {
            Text(svg, "invented readings, for demonstration", FigureSvg.Wide - 60, 150, 30, quiet, anchor: "end");
        }

        Text(svg, "missed", middle - 30, Top - 24, 32, quiet, anchor: "end");
        Text(svg, "kept", middle + 30, Top - 24, 32, quiet);
        for (int i = 0; i < lines.Length; i++)
        {
            Row(svg, Comparison.Cell(one, lines[i]), lines[i], Top + (row * (i + 0.5)), row);
        }

        svg.Append(CultureInfo.InvariantCulture, $"<path d=\"M{middle} {Top - 50}V{Top + (row * lines.Length):0.#}\" stroke=\"{ink}\" stroke-width=\"4\"/>\n");
        Text(svg, "Bar: where 90 of 100 draws lie; dot: the middle one.", 60, FigureSvg.High - 26, 28, quiet);
        return svg.Append("</svg>\n").ToString();
    }

    private static void Row(StringBuilder svg, RequirementVerdict? cell, Requirement line, double y, double row)
    {
        string ink = Tokens.Of("--ink"), quiet = Tokens.Of("--ink-2");
        string[] name = Broken(line.Text.TrimEnd('.') + (line.Must ? "" : " (want)"), row > 74 ? 2 : 1);
        for (int i = 0; i < name.Length; i++)
        {
            Text(svg, name[i], 60, y + 10 + ((i - ((name.Length - 1) / 2.0)) * 36), 30, ink);
        }

        Text(svg, cell?.Value is { } value ? $"{Display.Value(value.Value, value.StandardDoubt)}{(value.StandardDoubt > 0 ? $" ± {Display.Value(value.StandardDoubt, value.StandardDoubt)}" : "")}{Web.Say.Unit(line.Unit)}" : cell?.Shown ?? "not known", Values, y + (row > 74 ? -8 : 10), 32, ink, weight: 700);
        if (row > 74)
        {
            Text(svg, cell?.Probability is { } probability ? $"kept in {ComparisonText.Odds(probability)} of 100" : "no chance known", Values, y + 30, 28, quiet);
        }

        double[] drawn = [.. (cell?.Drawn ?? []).Order()];
        if (drawn.Length > 0)
        {
            double a = At(line, drawn[(int)(0.05 * (drawn.Length - 1))]), b = At(line, drawn[(int)(0.95 * (drawn.Length - 1))]), at = At(line, drawn[drawn.Length / 2]);
            string colour = Tokens.Of(cell!.Word switch { VerdictWord.Go => "--go", VerdictWord.GoIf => "--go-if", VerdictWord.NoGo => "--no-go", _ => "--need" });
            svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"{Math.Min(a, b):0.0}\" y=\"{y - 18:0.#}\" width=\"{Math.Max(4, Math.Abs(b - a)):0.0}\" height=\"36\" fill=\"{colour}\" fill-opacity=\"0.4\"/>\n");
            svg.Append(CultureInfo.InvariantCulture, $"<circle cx=\"{at:0.0}\" cy=\"{y:0.#}\" r=\"13\" fill=\"{colour}\"/>\n");
        }
    }

    /// <summary>Margin over limit, from −1 to 1.</summary>
    private static double At(Requirement line, double value)
    {
        double margin = (line.AtMost ? line.Limit - value : value - line.Limit) / Math.Max(1e-12, Math.Abs(line.Limit));
        return Left + (Reach * ((double.IsNaN(margin) ? -1 : Math.Clamp(margin, -1, 1)) + 1) / 2);
    }

    /// <summary>Words in at most so many lines.</summary>
    private static string[] Broken(string text, int most)
    {
        List<string> lines = [""];
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (lines[^1].Length > 0 && lines[^1].Length + 1 + word.Length > LetterWidth && lines.Count < most)
            {
                lines.Add(word);
            }
            else
            {
                lines[^1] += lines[^1].Length > 0 ? " " + word : word;
            }
        }

        return [.. lines.Select(line => line.Length > LetterWidth + 2 ? line[..(LetterWidth + 1)] + "…" : line)];
    }

    private static void Text(StringBuilder svg, string text, double x, double y, int size, string colour, string anchor = "start", int weight = 400) => svg.Append(CultureInfo.InvariantCulture,
        $"<text x=\"{x:0.#}\" y=\"{y:0.#}\" font-size=\"{size}\" font-weight=\"{weight}\" text-anchor=\"{anchor}\" fill=\"{colour}\">{Html.Escaped(text)}</text>\n");
}

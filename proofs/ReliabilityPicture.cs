using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Heatwright.Proofs;

/// <summary>Said odds against odds that came true, drawn from the kept results.</summary>
public static class ReliabilityPicture
{
    /// <summary>Its file beside the page.</summary>
    public const string Name = "verdict-reliability.svg";

    private const int Side = 400, Left = 60, Top = 20;

    private static readonly (string File, string List, string Words, string Mark, string Colour)[] Series =
    [
        ("verdicts", "ownWidths", "truth as doubtful as stated, first seed", "circle", "#1b5e8c"),
        ("verdicts-again", "ownWidths", "the same, second seed", "square", "#8c5a1b"),
        ("verdicts", "twiceAsWide", "truth of what nobody measured twice as far off", "diamond", "#6b6b6b"),
    ];

    /// <summary>The picture; without results the empty frame.</summary>
    /// <param name="resultFolder">Folder of the result files.</param>
    public static string Svg(string resultFolder)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {Left + Side + 20} {Top + Side + 110}\" font-family=\"sans-serif\" font-size=\"13\">\n");
        text.Append(CultureInfo.InvariantCulture, $"<title>Said odds against odds that came true</title>\n<rect x=\"0\" y=\"0\" width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n<rect x=\"{Left}\" y=\"{Top}\" width=\"{Side}\" height=\"{Side}\" fill=\"none\" stroke=\"#444\"/>\n");
        text.Append(CultureInfo.InvariantCulture, $"<line x1=\"{X(0)}\" y1=\"{Y(0)}\" x2=\"{X(100)}\" y2=\"{Y(100)}\" stroke=\"#999\" stroke-dasharray=\"4 4\"/>\n");
        text.Append(CultureInfo.InvariantCulture, $"<rect x=\"{X(85)}\" y=\"{Y(93)}\" width=\"{X(95) - X(85)}\" height=\"{Y(87) - Y(93)}\" fill=\"#d9ead3\" stroke=\"#5a8a4a\"/>\n");
        for (int at = 0; at <= 100; at += 20)
        {
            text.Append(CultureInfo.InvariantCulture, $"<text x=\"{X(at)}\" y=\"{Y(0) + 18}\" text-anchor=\"middle\">{at}</text>\n<text x=\"{Left - 8}\" y=\"{Y(at) + 4}\" text-anchor=\"end\">{at}</text>\n");
        }

        text.Append(CultureInfo.InvariantCulture, $"<text x=\"{Left + (Side / 2)}\" y=\"{Y(0) + 38}\" text-anchor=\"middle\">said: holds in so many of 100</text>\n<text transform=\"translate(18 {Top + (Side / 2)}) rotate(-90)\" text-anchor=\"middle\">held in so many of 100</text>\n");
        int line = 0;
        foreach (var (file, list, words, mark, colour) in Series)
        {
            string path = Path.Combine(resultFolder, file + ".json");
            if (!File.Exists(path))
            {
                continue;
            }

            using var json = JsonDocument.Parse(File.ReadAllText(path));
            var bins = json.RootElement.GetProperty("result").GetProperty(list).EnumerateArray().Select(bin => (Said: bin.GetProperty("mean").GetDouble(), Kept: bin.GetProperty("kept").GetDouble())).ToArray();
            text.Append(CultureInfo.InvariantCulture, $"<polyline fill=\"none\" stroke=\"{colour}\" points=\"{string.Join(' ', bins.Select(bin => string.Create(CultureInfo.InvariantCulture, $"{X(bin.Said):0.#},{Y(bin.Kept):0.#}")))}\"/>\n");
            foreach (var (said, kept) in bins)
            {
                Mark(text, mark, colour, X(said), Y(kept));
            }

            int y = Top + Side + 58 + (18 * line++);
            Mark(text, mark, colour, Left + 6, y - 4);
            text.Append(CultureInfo.InvariantCulture, $"<text x=\"{Left + 18}\" y=\"{y}\">{words}</text>\n");
        }

        return text.Append("</svg>\n").ToString();
    }

    private static double X(double percent) => Left + (Side * percent / 100);

    private static double Y(double percent) => Top + Side - (Side * percent / 100);

    /// <summary>Told apart by form as well as colour.</summary>
    private static void Mark(StringBuilder text, string mark, string colour, double x, double y) => text.Append(mark switch
    {
        "circle" => string.Create(CultureInfo.InvariantCulture, $"<circle cx=\"{x:0.#}\" cy=\"{y:0.#}\" r=\"4\" fill=\"{colour}\"/>\n"),
        "square" => string.Create(CultureInfo.InvariantCulture, $"<rect x=\"{x - 4:0.#}\" y=\"{y - 4:0.#}\" width=\"8\" height=\"8\" fill=\"{colour}\"/>\n"),
        _ => string.Create(CultureInfo.InvariantCulture, $"<path d=\"M{x:0.#} {y - 5:0.#}l5 5-5 5-5-5z\" fill=\"{colour}\"/>\n"),
    });
}

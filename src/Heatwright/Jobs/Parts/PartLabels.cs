using System.Globalization;
using System.Security;
using System.Text;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Jobs;

/// <summary>One strip for a bag.</summary>
/// <param name="Code">Short name of the part, and number of the piece.</param>
/// <param name="Line">What tells it apart.</param>
/// <param name="Date">Day of the label, year-month-day.</param>
public sealed record PartLabel(string Code, string Line, string Date);

/// <summary>Label strips for bags of parts: 12 mm high, as the tape of label printers is.</summary>
public static class PartLabels
{
    private const double WidthMm = 70;
    private const double HeightMm = 12;

    /// <summary>The labels of some parts, or of all; written as a page to print where a file is named.</summary>
    public static Checked<IReadOnlyList<PartLabel>> Make(Study study, IReadOnlyList<string> ids, TimeProvider clock, string? to)
    {
        var found = ids.Select(id => EnterPart.Found(study, id)).ToArray();
        if (found.SelectMany(one => one.Problems).ToArray() is { Length: > 0 } problems)
        {
            return new(problems);
        }

        string date = clock.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var parts = ids.Count > 0 ? found.Select(one => one.Value) : study.Parts;
        PartLabel[] labels = [.. parts.SelectMany(part => (part.Samples is { Count: > 0 } samples ? samples.Select(sample => (int?)sample.Number) : [null])
            .Select(sample => new PartLabel(sample is { } number ? $"{part.Id} #{number.ToString(CultureInfo.InvariantCulture)}" : part.Id.Name, Line(part, sample, RunStudy.Findings(study, part)), date)))];
        return to is null ? new(labels) : Write(to, labels);
    }

    /// <summary>The value that tells a part apart on the bench, and its name: what trials told with its doubt, and beside it what was stated.</summary>
    private static string Line(Part part, int? sample, PartFindings? findings)
    {
        string telling = part.Kind switch
        {
            PartKind.Cell => PartQuantities.Capacity,
            PartKind.StepUp => PartQuantities.SetVolts,
            PartKind.Lamp => PartQuantities.LoadCurrent,
            PartKind.Charger => PartQuantities.ChargeCurrent,
            _ => PartQuantities.Ohms,
        };
        var stated = part.Stated.Where(value => value.Quantity == telling && (value.Sample is null || value.Sample == sample)).OrderByDescending(value => value.Sample == sample)
            .ThenByDescending(value => PartValues.Trust(PartValues.Read(part, value).Origin)).FirstOrDefault();

        // What was measured of this very piece says more of it than what trials told of the part.
        var found = stated is { Sample: not null, Origin: "measured" } ? null : findings?.Find(telling);
        return string.Join(", ", new[]
        {
            part.Name, found is null ? "" : $"{Display.Rounded(found)} {found.Origin.Word}".Replace('\u00A0', ' '), stated is null ? "" : $"{Display.Significant(stated.Value, 4)} {stated.Unit} {stated.Origin}",
        }.Where(text => text.Length > 0));
    }

    private static Checked<IReadOnlyList<PartLabel>> Write(string path, IReadOnlyList<PartLabel> labels)
    {
        if (File.Exists(path))
        {
            return new(new Problem("The labels would replace a file.", path, "the file is there", "a name that is not taken", "Choose another name, or move the file away."));
        }

        try
        {
            string draft = path + ".draft";
            File.WriteAllText(draft, Svg(labels), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            File.Move(draft, path, overwrite: false);
            return new(labels);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The labels cannot be written.", path, error.Message, "a folder that may be written to, with room", "Choose another place with --to."));
        }
    }

    /// <summary>Height of the letters of a line, mm: smaller where it would run off the strip; a letter is about half as wide as high.</summary>
    private static double LetterMm(string line) => Math.Round(Math.Clamp((WidthMm - 4) / (0.52 * Math.Max(1, line.Length)), 1.5, 3), 2);

    private static string Svg(IReadOnlyList<PartLabel> labels)
    {
        var svg = new StringBuilder();
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{WidthMm}mm\" height=\"{HeightMm * labels.Count}mm\" viewBox=\"0 0 {WidthMm} {HeightMm * labels.Count}\" font-family=\"sans-serif\">\n");
        for (int i = 0; i < labels.Count; i++)
        {
            double top = i * HeightMm;
            svg.Append(CultureInfo.InvariantCulture, $"<rect x=\"0.2\" y=\"{top + 0.2}\" width=\"{WidthMm - 0.4}\" height=\"{HeightMm - 0.4}\" fill=\"none\" stroke=\"black\" stroke-width=\"0.1\"/>\n");
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"2\" y=\"{top + 5}\" font-size=\"4\" font-weight=\"bold\">{SecurityElement.Escape(labels[i].Code)}</text><text x=\"{WidthMm - 2}\" y=\"{top + 5}\" font-size=\"3\" text-anchor=\"end\">{labels[i].Date}</text>\n");
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"2\" y=\"{top + 9.5}\" font-size=\"{LetterMm(labels[i].Line)}\">{SecurityElement.Escape(labels[i].Line)}</text>\n");
        }

        return svg.Append("</svg>\n").ToString();
    }
}

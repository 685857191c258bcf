using System.Globalization;
using System.Text;
using Heatwright.Jobs.Keeping;
using Heatwright.Quantities;
using Heatwright.Report;
using Heatwright.Verdicts;

namespace Heatwright.Jobs.Showing;

/// <summary>A picture that was written.</summary>
/// <param name="File">Its name in the folder.</param>
/// <param name="Title">Heading.</param>
/// <param name="Caption">What to say under it.</param>
public sealed record WrittenPicture(string File, string Title, string Caption);

/// <summary>What goes beside a film or onto a page.</summary>
/// <param name="Folder">Where it lies.</param>
/// <param name="Pictures">1920 by 1080 each.</param>
/// <param name="Texts">Names of the texts to paste: table, captions, chapters.</param>
/// <param name="Chapters">Lines for the film's description; empty where no run was read off one.</param>
public sealed record WrittenShow(string Folder, IReadOnlyList<WrittenPicture> Pictures, IReadOnlyList<string> Texts, IReadOnlyList<string> Chapters);

/// <summary>Writes pictures at the size of a film with captions, the page's table, and chapter lines.</summary>
public static class WritePictures
{
    /// <summary>Writes the folder; never over something that is there.</summary>
    /// <param name="folder">A folder that is not there yet, or is empty.</param>
    /// <param name="result">The study worked out.</param>
    /// <param name="ask">What the table is about, and its date.</param>
    /// <param name="clocks">Runs that were read off a film.</param>
    public static Checked<WrittenShow> To(string folder, StudyResult result, ReportAsk ask, IReadOnlyList<FilmClock> clocks)
    {
        if (File.Exists(folder) || (Directory.Exists(folder) && Directory.EnumerateFileSystemEntries(folder).Any()))
        {
            return new(new Problem("The folder of the pictures holds something already.", folder, "not empty", "a folder that is not there yet, or is empty", "Choose another, or move the old one away: it is not written over."));
        }

        return Chapters.Of(result, clocks).Then(chapters => Table(result, ask).Then(table => Write(folder, result, table, chapters)));
    }

    /// <summary>Every picture of a study with its file name, title, caption and bytes.</summary>
    internal static IReadOnlyList<(WrittenPicture Picture, string Svg)> All(StudyResult result)
    {
        List<(WrittenPicture, string)> all = [];
        if (result.Study.Brief is { } brief && result.Verdicts.Count > 0)
        {
            foreach (var one in Comparison.Of(brief, result.Verdicts, result.Shelf).Ranked)
            {
                string letter = one.Verdict.Arrangement.Letter;
                all.Add((new(Numbered(all.Count, $"verdict-{letter}"), $"{letter}, {one.Verdict.Arrangement.Name}: {ComparisonText.Word(one.Verdict.Word)}", $"{Web.Say.Sentence(one.Verdict.Because)} Bar: where 90 of 100 draws lie; dot: the middle one; right of the line is kept."),
                    VerdictPicture.Svg(one, brief, result.Study.Invented)));
            }
        }

        foreach (var placed in CurvesPart.All(result).Concat(FitsPart.All(result)))
        {
            all.Add((new(Numbered(all.Count, placed.Figure.Title), placed.Figure.Title, placed.Caption), FigureSvg.Of(placed.Figure, placed.Caption, result.Study.Invented)));
        }

        return all;
    }

    private static Checked<string> Table(StudyResult result, ReportAsk ask) => result.Study.Brief is null || result.Verdicts.Count == 0 ? new("") : PageText.Markdown(result, ask);

    private static Checked<WrittenShow> Write(string folder, StudyResult result, string table, IReadOnlyList<string> chapters)
    {
        var all = All(result);
        List<(string Name, string Text)> files = [.. all.Select(one => (one.Picture.File, one.Svg))];
        List<(string Name, string Text)> texts = [("captions.md", Captions(result, all.Select(one => one.Picture)))];
        if (table.Length > 0)
        {
            texts.Insert(0, ("table.md", table));
        }

        if (chapters.Count > 0)
        {
            texts.Add(("chapters.txt", string.Join('\n', chapters) + "\n"));
        }

        try
        {
            Directory.CreateDirectory(folder);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new(new Problem("The folder cannot be made.", folder, error.Message, "a place that may be written to, with room", "Choose another place."));
        }

        foreach (var (name, text) in files.Concat(texts))
        {
            if (WriteFile.New(Path.Combine(folder, name), Encoding.UTF8.GetBytes(text)) is { IsFine: false } failed)
            {
                return new(failed.Problems);
            }
        }

        return new(new WrittenShow(Path.GetFullPath(folder), [.. all.Select(one => one.Picture)], [.. texts.Select(one => one.Name)], chapters));
    }

    private static string Captions(StudyResult result, IEnumerable<WrittenPicture> pictures)
    {
        var text = new StringBuilder();
        foreach (var one in pictures)
        {
            text.Append(CultureInfo.InvariantCulture, $"![{one.Title}]({one.File})\n\n*{one.Title}.{(one.Caption.Length > 0 ? $" {one.Caption}" : "")}{(result.Study.Invented ? " Invented readings, for demonstration." : "")}*\n\n");
        }

        return text.ToString();
    }

    private static string Numbered(int place, string title)
    {
        string plain = string.Concat(title.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' '));
        return string.Create(CultureInfo.InvariantCulture, $"{place + 1:00}-{string.Join('-', plain.Split(' ', StringSplitOptions.RemoveEmptyEntries).Take(8))}.svg");
    }
}

using System.Text.RegularExpressions;
using Heatwright.Quantities;

namespace Heatwright.Web;

/// <summary>Remedies are written once, for both ways of working; a page names its own places where the command line names commands and options.</summary>
internal static partial class PageWords
{
    private static readonly (Regex From, string To)[] Places =
    [
        (Destroyed(), "as destroyed, under 'say more' at '$1' on the shelf"),
        (PartValue(), "at '$1' on the shelf, $2 $3$4"),
        (PartState(), "'say more' at '$1' on the shelf"),
        (BriefLine(), "on the page 'Brief', "),
        (DecideWith(), "choose $1 on the page 'Decision', because "),
        (Clone(), "on the page of arrangement $1"),
        (AddPart(), "on the page 'Shelf'"),
        (TrialsPage(), "on the page 'Trials'"),
        (WirePage(), "on the page 'Arrangements'"),
        (HistoryPage(), "the page 'History'"),
        (FilesPage(), "on the page 'Shelf'"),
        (OwnPage(), "on the page 'Own shelf'"),
        (BesidePage(), "the page 'Mine beside theirs'"),
        (ImportColumns(), "Choose it below, under 'Take it in'"),
        (NextSetting(), "$1 and "),
        (Setting(), "the setting "),
        (Dropped(), ""),
    ];

    /// <summary>A remedy in the words of the pages; a command that no page stands for keeps its wording.</summary>
    public static string Of(string text)
    {
        if (!text.Contains("--", StringComparison.Ordinal) && !text.Contains("heatwright ", StringComparison.Ordinal))
        {
            return text;
        }

        string placed = Places.Aggregate(text, (words, place) => place.From.Replace(words, place.To));
        return string.Concat(Command().Split(placed).Select(piece => Command().IsMatch(piece) ? piece : Options(piece)));
    }

    /// <summary>A problem as a page tells it; the value stays as it was typed.</summary>
    public static Problem Of(Problem problem) => problem.OnPage ?? problem with { What = Of(problem.What), Where = Of(problem.Where), Limit = Of(problem.Limit), Next = Of(problem.Next) };

    private static string Options(string text) => Other().Replace(With().Replace(text, match => Name(match)), match => match.Index == 0 ? Name(match) : $"'{Name(match)}'");

    private static string Name(Match option) => option.Groups[1].Value.Replace('-', ' ');

    [GeneratedRegex("with 'heatwright part state \\S+ (\\S+) --from destroyed'", RegexOptions.CultureInvariant)]
    private static partial Regex Destroyed();

    [GeneratedRegex("'?heatwright part state \\S+ (\\S+) --([a-z]+) (?:\"([^\"]*)\"|([^'\\s]+))'?", RegexOptions.CultureInvariant)]
    private static partial Regex PartValue();

    [GeneratedRegex("'?heatwright part state \\S+ ([^\\s']+)(?: \\.\\.\\.)?'?", RegexOptions.CultureInvariant)]
    private static partial Regex PartState();

    [GeneratedRegex("heatwright brief \\S+ --(?:set|add) ", RegexOptions.CultureInvariant)]
    private static partial Regex BriefLine();

    [GeneratedRegex("heatwright decide \\S+ (\\S+) --because ", RegexOptions.CultureInvariant)]
    private static partial Regex DecideWith();

    [GeneratedRegex("heatwright clone \\S+ (\\w+)", RegexOptions.CultureInvariant)]
    private static partial Regex Clone();

    [GeneratedRegex("(?:with )?'heatwright part (?:add|list)[^']*'|heatwright part add \\S+ \\S+ \\S*\\w", RegexOptions.CultureInvariant)]
    private static partial Regex AddPart();

    [GeneratedRegex("(?:with )?'heatwright (?:trial (?:add|enter)|meter add)[^']*'", RegexOptions.CultureInvariant)]
    private static partial Regex TrialsPage();

    [GeneratedRegex("(?:with )?'heatwright (?:arrange|clone|rewire)[^']*'", RegexOptions.CultureInvariant)]
    private static partial Regex WirePage();

    [GeneratedRegex("'heatwright history[^']*'", RegexOptions.CultureInvariant)]
    private static partial Regex HistoryPage();

    [GeneratedRegex("that 'heatwright file list[^']*' shows|heatwright file drop FILE ID", RegexOptions.CultureInvariant)]
    private static partial Regex FilesPage();

    [GeneratedRegex("with 'heatwright (?:take|give)[^']*'", RegexOptions.CultureInvariant)]
    private static partial Regex OwnPage();

    [GeneratedRegex("'heatwright beside[^']*'", RegexOptions.CultureInvariant)]
    private static partial Regex BesidePage();

    [GeneratedRegex("Import it again with --columns '.*', as it is", RegexOptions.CultureInvariant)]
    private static partial Regex ImportColumns();

    [GeneratedRegex("(=\\S+) --set ", RegexOptions.CultureInvariant)]
    private static partial Regex NextSetting();

    [GeneratedRegex("--set (?=\"?[a-z])", RegexOptions.CultureInvariant)]
    private static partial Regex Setting();

    [GeneratedRegex("--(?:add|read|because|why) (?=[\"'])", RegexOptions.CultureInvariant)]
    private static partial Regex Dropped();

    [GeneratedRegex("('heatwright [^']*')", RegexOptions.CultureInvariant)]
    private static partial Regex Command();

    /// <summary>An option with what is said behind it: the name alone reads as the field does.</summary>
    [GeneratedRegex("--([a-z][a-z-]*)(?=\\s+(?:\"|[0-9]|\\S*=|[A-Z]{2,}\\b|none\\b|[a-z]+-[a-z]+=))", RegexOptions.CultureInvariant)]
    private static partial Regex With();

    [GeneratedRegex("--([a-z][a-z-]*)", RegexOptions.CultureInvariant)]
    private static partial Regex Other();
}

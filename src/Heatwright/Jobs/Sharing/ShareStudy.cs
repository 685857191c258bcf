using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs.Sharing;

/// <summary>A study that was shared.</summary>
/// <param name="Bundle">The zip.</param>
/// <param name="Parts">Parts of the maker.</param>
/// <param name="Runs">Runs with readings.</param>
/// <param name="Empty">Runs that wait for the viewer's own readings.</param>
/// <param name="LeftOut">What did not go along, by choice or because it must not.</param>
/// <param name="Photos">Photos from which place and camera data were cut.</param>
public sealed record Shared(string Bundle, int Parts, int Runs, int Empty, IReadOnlyList<string> LeftOut, IReadOnlyList<string> Photos);

/// <summary>Writes a bundle for viewers: without what the maker keeps to themselves, with an empty twin of every run.</summary>
public static class ShareStudy
{
    /// <summary>Writes the bundle; never over something that is there.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="bundle">The zip to write.</param>
    /// <param name="choice">What does not go along.</param>
    public static Checked<Shared> To(string path, string bundle, ShareChoice choice) => Path.Exists(bundle)
        ? new(new Problem("The bundle would replace a file.", bundle, "the file is there", "a name that is not taken", "Choose another name, or move the file away."))
        : Of(path, choice).Then(made => Bundle.Write(made.Study, bundle).Map(written => made.Shared with { Bundle = Path.GetFullPath(written) }));

    /// <summary>The study as a viewer gets it, and what was done to it.</summary>
    internal static Checked<(Study Study, Shared Shared)> Of(string path, ShareChoice choice) => StudyBook.Open(path, readOnly: true).Map(book =>
    {
        using (book)
        {
            var (study, cut, stay) = SharedFiles.Of(book.ReadWhole());
            var shown = Twins.With(LeaveOut.Of(study, choice));
            var runs = shown.Trials.SelectMany(trial => trial.Runs).ToArray();
            int twins = shown.Parts.Count(part => part.TwinOf is not null);
            return (shown, new Shared("", shown.Parts.Count - twins, runs.Count(run => run.Readings.Count > 0), runs.Count(run => run.Readings.Count == 0), [.. Words(choice), .. Priced(study, choice), .. stay], cut));
        }
    });

    private static IEnumerable<string> Priced(Study study, ShareChoice choice) =>
        choice.Prices && !choice.Sellers && !choice.Names && study.Parts.Where(LeaveOut.NamesPrice).Select(part => part.Id.Name).ToArray() is { Length: > 0 } named
            ? [$"the seller's text of {string.Join(", ", named)}: it may name a price"] : [];

    private static IEnumerable<string> Words(ShareChoice choice) =>
    [
        .. choice.Prices ? ["prices, and what the brief asks of costs"] : Array.Empty<string>(),
        .. choice.Notes || choice.Names ? ["notes"] : Array.Empty<string>(),
        .. choice.Sellers || choice.Names ? ["sellers' texts"] : Array.Empty<string>(),
        .. choice.Names ? ["names of parts, meters, trials and files, and decision cards, whose words hold them"] : Array.Empty<string>(),
    ];
}

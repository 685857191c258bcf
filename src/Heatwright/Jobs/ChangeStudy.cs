using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Jobs;

/// <summary>A change that was made to a study file.</summary>
/// <param name="Before">The study as it stood.</param>
/// <param name="After">The study as it stands.</param>
/// <param name="Change">The entry of the history; null: nothing differed.</param>
public sealed record StudyChanged(Study Before, Study After, StudyChange? Change);

/// <summary>Changes a study file: one transaction, whole or absent, with its undo record.</summary>
public static class ChangeStudy
{
    /// <summary>Opens the file, makes the change, closes it.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="what">What is done, in a maker's words.</param>
    /// <param name="change">The study as it shall stand, from the one that stands; or why not, and then nothing is written.</param>
    public static Checked<StudyChanged> Run(string path, string what, Func<Study, Checked<Study>> change) => Run(path, _ => what, change);

    /// <summary>As <see cref="Run(string, string, Func{Study, Checked{Study}})"/>, for changes whose name is known only from what they did.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="what">What was done, in a maker's words, from the study as it stands after it.</param>
    /// <param name="change">The study as it shall stand, from the one that stands; or why not, and then nothing is written.</param>
    public static Checked<StudyChanged> Run(string path, Func<Study, string> what, Func<Study, Checked<Study>> change) => StudyBook.Open(path, readOnly: false).Then(book =>
    {
        using (book)
        {
            PastStates.Keep(book, path, TimeProvider.System);
            Study? before = null, after = null;
            return book.Change(what, study =>
            {
                before = study;
                return change(study).Map(next => after = next);
            }).Map(done => new StudyChanged(before!, after!, done));
        }
    });

    /// <summary>Everything that was done to a study, oldest first.</summary>
    public static Checked<IReadOnlyList<StudyChange>> History(string path) => StudyBook.Open(path, readOnly: true).Map(book =>
    {
        using (book)
        {
            return book.History();
        }
    });

    /// <summary>What was done to one record of a study, oldest first; an unknown name is a problem.</summary>
    public static Checked<IReadOnlyList<RecordChange>> History(string path, string record) => StudyBook.Open(path, readOnly: true).Then(book =>
    {
        using (book)
        {
            return book.HistoryOf(record) is { Count: > 0 } changes ? new Checked<IReadOnlyList<RecordChange>>(changes)
                : new(new Problem("Nothing of that name was ever in the study.", path, record, "the name of a part, trial, run, arrangement, instrument, tool or file, or 'brief'", "Look at 'heatwright history FILE' and 'heatwright part list FILE'."));
        }
    });

    /// <summary>Takes the last change back, or makes the one taken back last again.</summary>
    public static Checked<StudyChange> Step(string path, bool back) => StudyBook.Open(path, readOnly: false).Then(book =>
    {
        using (book)
        {
            return (back ? book.Undo() : book.Redo()).Then(done => done is { } change ? new Checked<StudyChange>(change) : new(new Problem(
                back ? "There is nothing to take back." : "There is nothing to make again.", path, "none", back ? "a change after the study was begun" : "a change that was taken back last",
                "Look at 'heatwright history FILE'.")));
        }
    });
}

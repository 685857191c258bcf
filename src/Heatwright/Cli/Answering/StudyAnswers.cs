using Heatwright.Jobs;
using Heatwright.Jobs.Keeping;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Cli.Answering;

/// <summary>A study that was made.</summary>
/// <param name="Study">Its name.</param>
/// <param name="Parts">How many parts it has.</param>
/// <param name="Trials">How many trials.</param>
/// <param name="Arrangements">How many arrangements.</param>
internal sealed record StudyMade(string Study, int Parts, int Trials, int Arrangements);

/// <summary>What cannot be done and what to do instead: one shape for all commands, on the error output.</summary>
/// <param name="Problems">One or more.</param>
/// <param name="Trace">Where in the program it happened; only of a mistake of ours.</param>
internal sealed record ProblemsView(IReadOnlyList<Problem> Problems, string? Trace);

/// <summary>A change of a study.</summary>
/// <param name="Number">Its number in the history.</param>
/// <param name="What">What was done, in words.</param>
/// <param name="Undone">True: it was taken back.</param>
internal sealed record ChangeView(long Number, string What, bool Undone)
{
    /// <summary>The view of a change.</summary>
    public static ChangeView Of(StudyChange change) => new(change.Number, change.What, change.Undone);
}

/// <summary>What a change did to one record.</summary>
/// <param name="Number">Number of the change in the history.</param>
/// <param name="What">What was done, in words.</param>
/// <param name="Undone">True: it was taken back.</param>
/// <param name="Kind">Kind of record: part, trial, run, readings, arrangement, brief and so on.</param>
/// <param name="Id">Its id; empty for the records of which a study has one.</param>
/// <param name="Begun">True: the record was not there before.</param>
/// <param name="TakenAway">True: the record is not there since.</param>
/// <param name="Fields">The values that differ.</param>
internal sealed record RecordChangeView(long Number, string What, bool Undone, string Kind, string Id, bool Begun, bool TakenAway, IReadOnlyList<FieldChange> Fields)
{
    /// <summary>The view of what was done to a record.</summary>
    public static RecordChangeView Of(RecordChange one) => new(one.Change.Number, one.Change.What, one.Change.Undone, one.Kind, one.Id, one.Begun, one.TakenAway, one.Fields);
}

/// <summary>The change that a command made.</summary>
/// <param name="Number">Its number in the history; absent: nothing had to be changed.</param>
/// <param name="What">What was done, in words; absent: nothing had to be changed.</param>
internal sealed record ChangeTaken(long? Number, string? What)
{
    /// <summary>The view of a study that was changed.</summary>
    public static ChangeTaken Of(StudyChanged done) => new(done.Change?.Number, done.Change?.What);
}

/// <summary>A bundle that was written.</summary>
/// <param name="Bundle">Its path, as it was typed.</param>
internal sealed record BundleWritten(string Bundle);

/// <summary>A copy that was written.</summary>
/// <param name="Copy">Its path, as it was typed.</param>
internal sealed record CopyWritten(string Copy);

/// <summary>A study that was packed into one file.</summary>
/// <param name="Bytes">Its size, bytes.</param>
internal sealed record PackedView(long Bytes);

/// <summary>A kept file.</summary>
/// <param name="Id">Its name in the study.</param>
/// <param name="Name">Name of the file that it came from.</param>
/// <param name="About">What it is about.</param>
/// <param name="Subject">Id of that; empty: the study.</param>
/// <param name="Note">The maker's note.</param>
/// <param name="Sha256">Fingerprint of its content, 64 hexadecimal digits.</param>
/// <param name="Bytes">Its size, bytes.</param>
internal sealed record KeptView(string Id, string Name, KeptAbout About, string Subject, string Note, string Sha256, int Bytes);

/// <summary>How a study file is.</summary>
/// <param name="Path">The file, as it was typed.</param>
/// <param name="Bytes">Its size, bytes.</param>
/// <param name="Beside">Files of its own that lie beside it.</param>
/// <param name="Format">Its format; absent: it cannot be told.</param>
/// <param name="Whole">True: everything in it can be read and hangs together.</param>
/// <param name="Problems">What is wrong with it.</param>
/// <param name="Records">How many records of each kind there are.</param>
/// <param name="Changes">How many changes its history holds.</param>
/// <param name="Kept">How many files are kept in it.</param>
/// <param name="KeptBytes">Their size, bytes, each content once.</param>
/// <param name="Openings">How many past openings are kept beside it.</param>
/// <param name="Lost">With --rescue: what could not be read, in words.</param>
/// <param name="Copy">With --rescue: the new study file.</param>
internal sealed record ConditionView(string Path, long Bytes, IReadOnlyList<string> Beside, int? Format, bool Whole, IReadOnlyList<Problem> Problems, IReadOnlyDictionary<string, int> Records, int Changes, int Kept,
    long KeptBytes, int Openings, IReadOnlyList<string>? Lost, string? Copy)
{
    /// <summary>The view of a study file's condition.</summary>
    public static ConditionView Of(StudyCondition one) => new(one.Examined.Path, one.Examined.Bytes, one.Examined.Beside, one.Examined.Format, one.Examined.IsWhole, one.Examined.Problems, one.Examined.Records, one.Examined.Changes,
        one.Examined.Kept, one.Examined.KeptBytes, one.Examined.Openings, one.Lost, one.Copy);
}

/// <summary>A study that is shown in the browser.</summary>
/// <param name="Study">Its name.</param>
/// <param name="Address">Where, on this machine.</param>
/// <param name="Near">Where for paired devices near by; absent without --near.</param>
internal sealed record ServedView(string Study, string Address, string? Near);

/// <summary>The arrangements that are left in a study.</summary>
/// <param name="Arrangements">Their letters.</param>
internal sealed record ArrangementsLeftView(IReadOnlyList<string> Arrangements);

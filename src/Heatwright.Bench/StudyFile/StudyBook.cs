using System.Collections.Immutable;
using Heatwright.Quantities;
using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>One study file, open: a SQLite file in which every change is one transaction with its own undo record.</summary>
/// <remarks>Write-ahead log and full synchronisation: when <see cref="Write(string, Study)"/> has returned, what was typed is on the disk. Several books, also of
/// other programs, may have one file open; each sees what the others have written. Members may be called from any thread.</remarks>
public sealed class StudyBook : IDisposable
{
    /// <summary>Marks a SQLite file as a study: 'HtWr'.</summary>
    public const int ApplicationId = 0x48745772;

    /// <summary>Format that this version writes.</summary>
    public const int Format = 2;

    private readonly SqliteConnection connection;
    private readonly ChangeLog log;
    private readonly string path;
    private readonly string name;
    private readonly bool readOnly;
    private readonly Lock gate = new();

    // What the caller last saw: a write stores what differs from it, so that it does not take back what others wrote meanwhile.
    private ImmutableSortedDictionary<RecordKey, string>? seen;
    private bool closed;

    internal StudyBook(SqliteConnection connection, string path, string name, bool readOnly, TimeProvider clock)
    {
        this.connection = connection;
        this.path = path;
        this.name = name;
        this.readOnly = readOnly;
        log = new(connection, clock);
    }

    /// <summary>Fingerprint of the content as it stands: the same content has the same one, whatever the file, the machine or the time.</summary>
    public string Fingerprint => Within(() => StudyRecords.Fingerprint(log.Load()));

    /// <summary>Creates a study file; never over something that is there, and whole or not at all.</summary>
    public static Checked<StudyBook> Create(string path, Study study, TimeProvider clock) =>
        StudyMaking.Make(path, study, clock) is { Count: > 0 } problems ? new(problems) : Open(path, readOnly: false, clock);

    /// <summary>Opens a study file, or says why not; a file that is refused is not touched.</summary>
    public static Checked<StudyBook> Open(string path, bool readOnly, TimeProvider? clock = null) => StudyOpening.Open(path, readOnly, clock ?? TimeProvider.System);

    /// <summary>The study as it stands.</summary>
    public Study Read() => Within(() => StudyRecords.Join(seen = log.Load()));

    /// <summary>The study as it stands and the fingerprint of just that, whoever else writes at the same moment.</summary>
    public (Study Study, string Fingerprint) ReadWithFingerprint() => Within(() => (StudyRecords.Join(seen = log.Load()), StudyRecords.Fingerprint(seen)));

    /// <summary>The study as it stands with the bytes of all kept files.</summary>
    public Study ReadWhole() => Within(() =>
    {
        var study = StudyRecords.Join(seen = log.Load());
        return study with { Files = [.. study.Files.Select(file => file with { Content = StudyTables.Content(connection, file.Sha256) ?? throw new InvalidDataException($"The bytes of '{file.Id}' are not in the study file.") })] };
    });

    /// <summary>The bytes of a kept file; null: they are not there.</summary>
    public byte[]? Content(KeptFile file) => Within(() => StudyTables.Content(connection, file.Sha256));

    /// <summary>Makes the file hold <paramref name="next"/>: one transaction, whole or absent, with what stood there before kept.</summary>
    /// <param name="what">What was done, in a maker's words.</param>
    /// <param name="next">The study as it shall stand, made from the one this book gave or took last.</param>
    /// <returns>The change, or null where nothing differs; else what stands in the way, and then nothing was written.</returns>
    public Checked<StudyChange?> Write(string what, Study next) => Storing(() => Store(what, next, null));

    /// <summary>As <see cref="Write(string, Study)"/>, but adds to an earlier change while that is still the last one.</summary>
    /// <param name="what">What was done, in a maker's words.</param>
    /// <param name="next">The study as it shall stand.</param>
    /// <param name="onto">The change to add to; null: a change of its own.</param>
    public Checked<StudyChange?> Write(string what, Study next, StudyChange? onto) => Storing(() => Store(what, next, onto?.Number));

    /// <summary>Changes the study as it stands at this moment, with nobody in between: for callers that share a book.</summary>
    public Checked<StudyChange?> Change(string what, Func<Study, Checked<Study>> change) => Storing(() =>
    {
        seen = log.Load();
        return change(StudyRecords.Join(seen)).Then(next => Store(what, next, null));
    });

    /// <summary>As <see cref="Change(string, Func{Study, Checked{Study}})"/>, for changes whose name is known only from what they did.</summary>
    /// <param name="what">What was done, in a maker's words, from the study as it stands after it.</param>
    /// <param name="change">The study as it shall stand, from the one that stands.</param>
    public Checked<StudyChange?> Change(Func<Study, string> what, Func<Study, Checked<Study>> change) => Storing(() =>
    {
        seen = log.Load();
        return change(StudyRecords.Join(seen)).Then(next => Store(what(next), next, null));
    });

    /// <summary>Takes the last change back. Null: there is none.</summary>
    public Checked<StudyChange?> Undo() => Storing(() => Step(log.Undo()));

    /// <summary>Makes the change that was taken back last again. Null: there is none, or something else was changed since.</summary>
    public Checked<StudyChange?> Redo() => Storing(() => Step(log.Redo()));

    /// <summary>All changes, oldest first.</summary>
    public IReadOnlyList<StudyChange> History() => Within(log.History);

    /// <summary>Number of the last change.</summary>
    public long LastChange => Within(log.Last);

    /// <summary>The changes that touched records of one name, oldest first, each with the values it changed. Kind of record ('brief') or id ('heater', 'warm-up-1').</summary>
    public IReadOnlyList<RecordChange> HistoryOf(string record) => Within(() => log.HistoryOf(record));

    /// <summary>Makes the file ready for the post and closes it: everything in one file, nothing beside it, no room wasted.</summary>
    /// <returns>Its bytes, or what stands in the way; the file is closed in any case and lost nothing.</returns>
    public Checked<long> Pack()
    {
        try
        {
            return Within(() =>
            {
                StudyTables.Scalar(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
                StudyTables.Execute(connection, "VACUUM");
                // Refused while anybody else has the file open: a log of theirs would be left beside it.
                string mode = StudyTables.Scalar(connection, "PRAGMA journal_mode = DELETE");
                return mode == "delete" ? new Checked<long>(new FileInfo(path).Length)
                    : new(new OpenProblem(OpenFault.Locked, "The study cannot be packed.", path, $"journal {mode}", "a file that nothing else holds", "Close the study everywhere else; then try again. Nothing was lost."));
            });
        }
        catch (Exception error) when (SqliteFaults.IsExpected(error))
        {
            return new(SqliteFaults.Problem(error, path));
        }
        finally
        {
            Dispose();
        }
    }

    /// <summary>Looks at the tables themselves.</summary>
    internal T Counts<T>(Func<SqliteConnection, T> look) => Within(() => look(connection));

    /// <summary>The records as they stand, and the bytes of kept files under their fingerprints.</summary>
    internal (ImmutableSortedDictionary<RecordKey, string> Records, Func<string, byte[]?> Content) Whole() =>
        (Within(log.Load), sha256 => Within(() => StudyTables.Content(connection, sha256)));

    /// <summary>Closes the file.</summary>
    public void Dispose()
    {
        lock (gate)
        {
            if (!closed)
            {
                closed = true;
                StudyDoor.Left(name, connection.Dispose);
            }
        }
    }

    private Checked<StudyChange?> Store(string what, Study next, long? onto)
    {
        if (StudyCheck.Of(next, "the study") is { Count: > 0 } problems)
        {
            return new(problems);
        }
        var after = StudyRecords.Of(next);
        var current = log.Load();
        var known = seen ?? current;
        var mine = Difference(known, after);
        var taken = mine.Where(change => current.GetValueOrDefault(change.Key) != known.GetValueOrDefault(change.Key) && current.GetValueOrDefault(change.Key) != change.Value).ToArray();
        if (taken.Length > 0)
        {
            return new(new OpenProblem(OpenFault.Overtaken, "Another window changed the same thing first.", path, string.Join(", ", taken.Select(change => $"{change.Key.Kind} {change.Key.Id}".TrimEnd())),
                "one change at a time to one thing", "Look at the study as it is now and make the change again; nothing was written."));
        }
        var together = mine.Aggregate(current, (records, change) => change.Value is { } body ? records.SetItem(change.Key, body) : records.Remove(change.Key));
        // Two changes that are fine alone may not be together: one takes a part away, the other uses it.
        if (!known.SequenceEqual(current) && StudyCheck.Of(StudyRecords.Join(together), "the study with what another window wrote") is { Count: > 0 } clash)
        {
            return new(clash);
        }
        StudyTables.Keep(connection, next.Files);
        var stored = Difference(current, together);
        var done = stored.Count == 0 ? null : (onto is { } number ? log.Extend(number, stored, current) : null) ?? log.Append(what, stored, current);
        seen = after;
        return new(done);
    }

    private Checked<StudyChange?> Step(StudyChange? step)
    {
        seen = log.Load();
        return new(step);
    }

    private static Dictionary<RecordKey, string?> Difference(ImmutableSortedDictionary<RecordKey, string> before, ImmutableSortedDictionary<RecordKey, string> after) =>
        before.Keys.Union(after.Keys).Where(key => before.GetValueOrDefault(key) != after.GetValueOrDefault(key)).ToDictionary(key => key, after.GetValueOrDefault);

    private Checked<StudyChange?> Storing(Func<Checked<StudyChange?>> act)
    {
        if (readOnly)
        {
            return new(new OpenProblem(OpenFault.NoAccess, "The study was opened for reading only.", path, "a change", "none", "Open it for writing."));
        }
        var before = seen;
        try
        {
            return Within(() =>
            {
                using var transaction = connection.BeginTransaction(deferred: false);
                var result = act();
                if (result.IsFine)
                {
                    transaction.Commit();
                }
                return result;
            });
        }
        catch (Exception error) when (SqliteFaults.IsExpected(error))
        {
            seen = before;
            return new(SqliteFaults.Problem(error, path));
        }
    }

    private T Within<T>(Func<T> act)
    {
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(closed, this);
            return act();
        }
    }
}

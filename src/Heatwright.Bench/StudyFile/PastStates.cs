using System.Collections.Immutable;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using Heatwright.Quantities;
using Microsoft.Data.Sqlite;

namespace Heatwright.StudyFile;

/// <summary>A study as it stood when it was opened.</summary>
/// <param name="Number">Rising number.</param>
/// <param name="At">When it was opened, UTC.</param>
/// <param name="Fingerprint">Of its content then.</param>
public sealed record PastState(long Number, DateTimeOffset At, string Fingerprint);

/// <summary>The study as it stood at its last ten openings, in one small file beside it: what did not change is kept once.</summary>
/// <remarks>A second file on purpose: it helps where the study file itself is lost or damaged. It is a convenience, so nothing here ever stops a study from being opened.</remarks>
public static class PastStates
{
    /// <summary>How many openings are kept.</summary>
    public const int Most = 10;

    private const string Tables = """
        CREATE TABLE IF NOT EXISTS opening (number INTEGER PRIMARY KEY, at TEXT NOT NULL, fingerprint TEXT NOT NULL) STRICT;
        CREATE TABLE IF NOT EXISTS piece (sha256 TEXT PRIMARY KEY, packed BLOB NOT NULL) STRICT;
        CREATE TABLE IF NOT EXISTS opening_piece (opening INTEGER NOT NULL REFERENCES opening, kind TEXT NOT NULL, id TEXT NOT NULL, sha256 TEXT NOT NULL, PRIMARY KEY (opening, kind, id)) STRICT;
        """;

    /// <summary>Bytes of kept files stand under this kind, which no record of a study has.</summary>
    private const string Bytes = "content";

    /// <summary>Name of the file beside a study file.</summary>
    public static string Beside(string study) => study + ".past";

    /// <summary>Keeps the study as it stands, unless it was kept just so; failures are passed over.</summary>
    public static void Keep(StudyBook book, string study, TimeProvider clock)
    {
        try
        {
            var (records, content) = book.Whole();
            using var connection = Open(Beside(study), SqliteOpenMode.ReadWriteCreate);
            StudyTables.Execute(connection, Tables);
            string fingerprint = StudyRecords.Fingerprint(records);
            using var transaction = connection.BeginTransaction(deferred: false);
            if (StudyTables.Scalar(connection, "SELECT fingerprint FROM opening ORDER BY number DESC LIMIT 1") == fingerprint)
            {
                return;
            }

            StudyTables.Execute(connection, "INSERT INTO opening (at, fingerprint) VALUES ($at, $fingerprint)",
                ("$at", clock.GetUtcNow().ToUniversalTime().ToString("O", CultureInfo.InvariantCulture)), ("$fingerprint", fingerprint));
            long number = long.Parse(StudyTables.Scalar(connection, "SELECT max(number) FROM opening"), CultureInfo.InvariantCulture);
            foreach (var (key, body) in records)
            {
                Put(connection, number, key.Kind, key.Id, KeptFile.Fingerprint(Encoding.UTF8.GetBytes(body)), () => Encoding.UTF8.GetBytes(body));
            }

            foreach (var file in StudyRecords.Join(records).Files.DistinctBy(file => file.Sha256))
            {
                Put(connection, number, Bytes, file.Sha256, file.Sha256, () => content(file.Sha256) ?? []);
            }

            StudyTables.Execute(connection, "DELETE FROM opening_piece WHERE opening <= $old", ("$old", number - Most));
            StudyTables.Execute(connection, "DELETE FROM opening WHERE number <= $old", ("$old", number - Most));
            StudyTables.Execute(connection, "DELETE FROM piece WHERE sha256 NOT IN (SELECT sha256 FROM opening_piece)");
            transaction.Commit();
        }
        catch (Exception error) when (SqliteFaults.IsExpected(error) || error is SqliteException or InvalidDataException)
        {
            // Without room, rights or a sound file beside it the study is opened all the same.
        }
    }

    /// <summary>The openings that are kept, oldest first.</summary>
    public static Checked<IReadOnlyList<PastState>> List(string study) => With(study, connection => new Checked<IReadOnlyList<PastState>>(
        [.. StudyTables.Rows(connection, "SELECT CAST(number AS TEXT), at, fingerprint FROM opening ORDER BY number").Select(row =>
            new PastState(long.Parse(row[0]!, CultureInfo.InvariantCulture), DateTimeOffset.Parse(row[1]!, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind), row[2]!))]));

    /// <summary>The study as it stood at an opening, with the bytes of its kept files.</summary>
    public static Checked<Study> Read(string study, long number) => With(study, connection =>
    {
        var records = ImmutableSortedDictionary.CreateBuilder<RecordKey, string>(StudyRecords.Order);
        var kept = new Dictionary<string, byte[]>(StringComparer.Ordinal);
        foreach (string?[] row in StudyTables.Rows(connection, "SELECT kind, id, sha256 FROM opening_piece WHERE opening = $number", ("$number", number)))
        {
            byte[] bytes = Unpack(StudyTables.Piece(connection, row[2]!));
            if (row[0] == Bytes)
            {
                kept[row[1]!] = bytes;
            }
            else
            {
                records.Add(new(row[0]!, row[1]!), Encoding.UTF8.GetString(bytes));
            }
        }

        if (records.Count == 0)
        {
            string there = string.Join(", ", StudyTables.Rows(connection, "SELECT CAST(number AS TEXT) FROM opening ORDER BY number").Select(row => row[0]));
            return new(new Problem("This opening is not kept.", Beside(study), number.ToString(CultureInfo.InvariantCulture), there, "Choose one that is listed by 'heatwright openings FILE'."));
        }

        var joined = StudyRecords.Join(records.ToImmutable());
        return new Checked<Study>(joined with { Files = [.. joined.Files.Select(file => file with { Content = kept[file.Sha256] })] });
    });

    private static Checked<T> With<T>(string study, Func<SqliteConnection, Checked<T>> read)
    {
        string path = Beside(study);
        if (!File.Exists(path))
        {
            return new(new OpenProblem(OpenFault.Missing, "No openings are kept beside this study.", path, "absent", "a file that is made when a study is opened for writing", "Change something in the study first, or check the name."));
        }

        try
        {
            using var connection = Open(path, SqliteOpenMode.ReadOnly);
            return read(connection);
        }
        catch (Exception error) when (SqliteFaults.IsExpected(error) || error is SqliteException or InvalidDataException or System.Text.Json.JsonException or KeyNotFoundException)
        {
            return new(SqliteFaults.Damaged(path, error.Message));
        }
    }

    private static SqliteConnection Open(string path, SqliteOpenMode mode) => StudyOpening.Connect(path, mode);

    private static void Put(SqliteConnection connection, long opening, string kind, string id, string sha256, Func<byte[]> bytes)
    {
        if (StudyTables.Rows(connection, "SELECT sha256 FROM piece WHERE sha256 = $sha", ("$sha", sha256)).Count == 0)
        {
            StudyTables.Execute(connection, "INSERT INTO piece (sha256, packed) VALUES ($sha, $packed)", ("$sha", sha256), ("$packed", Pack(bytes())));
        }

        StudyTables.Execute(connection, "INSERT INTO opening_piece (opening, kind, id, sha256) VALUES ($opening, $kind, $id, $sha)", ("$opening", opening), ("$kind", kind), ("$id", id), ("$sha", sha256));
    }

    private static byte[] Pack(byte[] bytes)
    {
        using var memory = new MemoryStream();
        using (var packer = new DeflateStream(memory, CompressionLevel.Optimal, leaveOpen: true))
        {
            packer.Write(bytes);
        }

        return memory.ToArray();
    }

    private static byte[] Unpack(byte[] packed)
    {
        using var memory = new MemoryStream();
        using var unpacker = new DeflateStream(new MemoryStream(packed), CompressionMode.Decompress);
        unpacker.CopyTo(memory);
        return memory.ToArray();
    }
}

using Heatwright.StudyFile;
using Microsoft.Data.Sqlite;

namespace Heatwright.Proofs;

/// <summary>Makes a file of format 1, as the first version did: the same tables without the one for kept bytes.</summary>
internal static class OldFormat
{
    public static void Make(string path, Study study)
    {
        using (var book = StudyBook.Create(path, study, TimeProvider.System).Value)
        {
            book.Write("note", book.Read() with { Note = "old" });
        }

        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "DROP TABLE content; PRAGMA user_version = 1";
        command.ExecuteNonQuery();
    }
}

using Microsoft.Data.Sqlite;

namespace Heatwright.Tests.StudyFile;

/// <summary>SQLite without our code in between.</summary>
internal static class Raw
{
    public static SqliteConnection Open(string path)
    {
        var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
        connection.Open();
        return connection;
    }

    public static void Run(SqliteConnection connection, string text)
    {
        using var command = connection.CreateCommand();
        command.CommandText = text;
        command.ExecuteNonQuery();
    }

    public static string[] Texts(string path, string query)
    {
        using var connection = Open(path);
        using var command = connection.CreateCommand();
        command.CommandText = query;
        using var reader = command.ExecuteReader();
        var texts = new List<string>();
        while (reader.Read())
        {
            texts.Add(reader.GetString(0));
        }
        return [.. texts];
    }
}

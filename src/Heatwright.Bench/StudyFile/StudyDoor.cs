using System.Buffers.Binary;

namespace Heatwright.StudyFile;

/// <summary>Looks at the first bytes of a file before SQLite does, so that a file that is not ours is not touched: no byte, no file beside it.</summary>
/// <remarks>Offsets of the header: https://www.sqlite.org/fileformat.html, section 1.3.</remarks>
internal static class StudyDoor
{
    private const int HeaderBytes = 100, FormatAt = 60, ApplicationAt = 68;

    // On Unix, closing any handle of a file drops all locks that this process holds on it, SQLite's too; another program would then believe
    // itself alone and throw away the write-ahead log under an open book. So a file that is open here already is never opened a second time
    // past SQLite: https://www.sqlite.org/howtocorrupt.html, section 2.2.
    private static readonly Lock Gate = new();
    private static readonly Dictionary<string, int> OpenHere = new(StringComparer.Ordinal);

    /// <summary>Opens through the door: look first, then open; the name it is kept under goes back through <see cref="Left"/>.</summary>
    /// <param name="path">The file.</param>
    /// <param name="open">Takes what the look found, the name, and whether the file is not open here yet, so that it may be opened past SQLite's locks.</param>
    /// <param name="isOpen">Whether that led to an open file.</param>
    public static T Enter<T>(string path, Func<OpenProblem?, string, bool, T> open, Func<T, bool> isOpen)
    {
        lock (Gate)
        {
            string name = FullName(path);
            bool fresh = !OpenHere.ContainsKey(name);
            var opened = open(fresh ? Look(path) : null, name, fresh);
            if (isOpen(opened))
            {
                OpenHere[name] = OpenHere.GetValueOrDefault(name) + 1;
            }
            return opened;
        }
    }

    /// <summary>Closes, and forgets that the file is open here once nobody has it.</summary>
    public static void Left(string name, Action close)
    {
        lock (Gate)
        {
            close();
            if (--OpenHere[name] == 0)
            {
                OpenHere.Remove(name);
            }
        }
    }

    private static string FullName(string path)
    {
        string full = Path.GetFullPath(path);
        return File.Exists(full) ? File.ResolveLinkTarget(full, returnFinalTarget: true)?.FullName ?? full : full;
    }

    private static OpenProblem? Look(string path)
    {
        if (Directory.Exists(path))
        {
            return new(OpenFault.Folder, "This is a folder, not a study file.", path, "folder", "a file ending in .study", "Name the study file; a bundle folder is read by 'heatwright import'.");
        }
        if (!File.Exists(path))
        {
            return new(OpenFault.Missing, "There is no study file with this name.", path, "absent", "a study file", "Check the name, or create one with 'heatwright new'.");
        }
        try
        {
            byte[] head = new byte[HeaderBytes];
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            return Judge(head.AsSpan(0, file.ReadAtLeast(head, head.Length, throwOnEndOfStream: false)), path);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return SqliteFaults.Problem(error, path);
        }
    }

    private static OpenProblem? Judge(ReadOnlySpan<byte> head, string path)
    {
        if (head.IsEmpty)
        {
            return new(OpenFault.Empty, "The file is empty.", path, "0 bytes", "a study file", "Take the last good copy of it, or create a study under another name.");
        }
        if (!head.StartsWith("SQLite format 3\0"u8[..Math.Min(head.Length, 16)]))
        {
            return new(OpenFault.NotSqlite, "This is not a study file.", path, "something else", "a study file", "Choose the right file; readings in a text file go in through a bundle.");
        }
        if (head.Length < HeaderBytes)
        {
            return SqliteFaults.Damaged(path, $"{CheckDesk.Number(head.Length)} bytes");
        }
        int format = BinaryPrimitives.ReadInt32BigEndian(head[FormatAt..]);
        int application = BinaryPrimitives.ReadInt32BigEndian(head[ApplicationAt..]);
        return application != StudyBook.ApplicationId
            ? new(OpenFault.OtherProgram, "This file belongs to another program.", path, $"application {application:x8}", $"application {StudyBook.ApplicationId:x8}", "Choose a file that Heatwright made; this one was not changed.")
            : Format(format, path);
    }

    /// <summary>What is wrong with a format number; null: nothing.</summary>
    public static OpenProblem? Format(int format, string path) =>
        format > StudyBook.Format ? new(OpenFault.Newer, "This study file is of a newer format.", path, $"format {CheckDesk.Number(format)}", $"format {CheckDesk.Number(StudyBook.Format)}", "Get a newer Heatwright; nothing was changed.")
        : format < 1 ? SqliteFaults.Damaged(path, $"format {CheckDesk.Number(format)}")
        : null;
}

using System.Security.Cryptography;

namespace Heatwright.Tests.StudyFile;

/// <summary>A folder of its own for one test, cleared away behind it.</summary>
internal sealed class Desk : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("heatwright-").FullName;

    public string At(string name) => Path.Combine(Folder, name);

    public string Put(string name, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At(name))!);
        File.WriteAllText(At(name), text);
        return At(name);
    }

    /// <summary>Every file with its bytes' fingerprint: what a refused file must leave as it was.</summary>
    public string Listing() => string.Join('\n', Directory.EnumerateFileSystemEntries(Folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)
        .Select(path => $"{path} {(File.Exists(path) ? Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(path))) : "folder")}"));

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}

/// <summary>A clock that tells what it is told.</summary>
internal sealed class SetClock(DateTimeOffset now) : TimeProvider
{
    public static SetClock Noon => new(new DateTimeOffset(2026, 3, 1, 12, 0, 0, TimeSpan.Zero));

    public override DateTimeOffset GetUtcNow() => now;
}

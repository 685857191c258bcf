using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Heatwright.Quantities;

namespace Heatwright.Web.Near;

/// <summary>A device that was paired.</summary>
/// <param name="Id">Short and of no meaning.</param>
/// <param name="Name">As its maker called it.</param>
/// <param name="Secret">SHA-256 of what its browser keeps, in hexadecimal digits; the thing itself is kept nowhere here.</param>
/// <param name="Paired">When.</param>
/// <param name="Seen">When it last asked for something.</param>
public sealed record PairedDevice(string Id, string Name, string Secret, DateTimeOffset Paired, DateTimeOffset Seen);

/// <summary>The devices that this user paired. They are remembered in a file of the user's own, so that a bench that was killed lets them go on; several running benches share it.</summary>
public sealed class PairedDevices(string path, TimeProvider clock)
{
    /// <summary>No more devices are paired at once.</summary>
    public const int Most = 12;

    /// <summary>A device not seen for so long must be paired anew.</summary>
    public static readonly TimeSpan Forgotten = TimeSpan.FromDays(30);

    private static readonly TimeSpan SeenEvery = TimeSpan.FromMinutes(1);

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    private readonly Lock gate = new();
    private List<PairedDevice> devices = [];
    private string stamp = "";

    /// <summary>Paired ones, newest first.</summary>
    public IReadOnlyList<PairedDevice> All()
    {
        lock (gate)
        {
            Look();
            return [.. devices.OrderByDescending(one => one.Paired)];
        }
    }

    /// <summary>The device whose browser keeps this, seen from now on; null: none.</summary>
    public PairedDevice? Known(string? token)
    {
        if (token is not { Length: > 0 and <= 100 })
        {
            return null;
        }

        byte[] secret = Encoding.ASCII.GetBytes(Hash(token));
        lock (gate)
        {
            Look();
            var found = devices.FirstOrDefault(one => CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(one.Secret), secret));
            if (found is not null && clock.GetUtcNow() - found.Seen is var since && since > TimeSpan.Zero)
            {
                devices[devices.IndexOf(found)] = found with { Seen = clock.GetUtcNow() };
                if (since >= SeenEvery)
                {
                    // Not being able to write down when it was seen is no reason to send it away.
                    Change(now => [.. now.Select(one => one.Id == found.Id ? one with { Seen = clock.GetUtcNow() } : one)]);
                }
            }

            return found;
        }
    }

    /// <summary>Pairs a device and gives what its browser is to keep.</summary>
    public Checked<string> Pair(string name)
    {
        string token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(32));
        ArgumentNullException.ThrowIfNull(name);
        string clean = string.Concat(name.Where(c => !char.IsControl(c))).Trim();
        lock (gate)
        {
            Look();
            if (devices.Count >= Most)
            {
                return new(new Problem("No more devices are paired.", "paired devices", $"{Most}", $"{Most}", "Let one go at the desk first."));
            }

            var now = clock.GetUtcNow();
            string called = clean.Length == 0 ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"device {devices.Count + 1}") : clean.Length > 40 ? clean[..40] : clean;
            var problem = Change(there => [.. there, new PairedDevice(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(6)), called, Hash(token), now, now)]);
            return problem is null ? new(token) : new(problem);
        }
    }

    /// <summary>Lets go of a device: its next request is that of a stranger.</summary>
    public Problem? Revoke(string id)
    {
        lock (gate)
        {
            return Change(now => [.. now.Where(one => one.Id != id)]);
        }
    }

    private static string Hash(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));

    /// <summary>Another bench of the same user may have paired or let go.</summary>
    private void Look()
    {
        var file = new FileInfo(path);
        string now = file.Exists ? $"{file.Length}:{file.LastWriteTimeUtc.Ticks}" : "none";
        if (now != stamp)
        {
            devices = Read();
            stamp = now;
        }

        devices.RemoveAll(one => clock.GetUtcNow() - one.Seen > Forgotten);
    }

    private List<PairedDevice> Read()
    {
        try
        {
            return File.Exists(path) ? JsonSerializer.Deserialize<List<PairedDevice>>(File.ReadAllBytes(path), Json) ?? [] : [];
        }
        catch (Exception error) when (error is JsonException or IOException or UnauthorizedAccessException)
        {
            return []; // what cannot be read lets nobody in
        }
    }

    private Problem? Change(Func<List<PairedDevice>, List<PairedDevice>> change)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            using var alone = Alone();
            var next = change(Read());
            WriteWhole(JsonSerializer.SerializeToUtf8Bytes(next, Json));
            stamp = "";
            Look();
            return null;
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            return new("The paired devices cannot be written down.", path, error.Message, "a folder that may be written to", "Free some room or set the folder right, then try again.");
        }
    }

    /// <summary>One bench at a time; a second one waits a little.</summary>
    private FileStream Alone()
    {
        for (int i = 0; ; i++)
        {
            try
            {
                return new FileStream(path + ".lock", FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose);
            }
            catch (IOException) when (i < 40)
            {
                Thread.Sleep(50);
            }
        }
    }

    private void WriteWhole(byte[] content)
    {
        string draft = path + ".draft";
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite; // nobody else of this machine reads it
        }

        using (var file = new FileStream(draft, options))
        {
            file.Write(content);
            file.Flush(flushToDisk: true);
        }

        File.Move(draft, path, overwrite: true);
    }
}

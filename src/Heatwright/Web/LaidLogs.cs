using System.Security.Cryptography;
using Heatwright.Logs;

namespace Heatwright.Web;

/// <summary>A log that was sent and is looked at before it is taken in.</summary>
/// <param name="Id">Its name in the address.</param>
/// <param name="Trial">The trial that it was sent for.</param>
/// <param name="Name">Name of the file.</param>
/// <param name="Bytes">As it came.</param>
/// <param name="Answers">What was answered to its question; null: nothing yet.</param>
public sealed record LaidLog(string Id, string Trial, string Name, byte[] Bytes, LogMapping? Answers);

/// <summary>The last few logs that lie on the bench without being taken in; the files themselves stay where the maker has them.</summary>
internal sealed class LaidLogs
{
    private const int Most = 4;

    private readonly Lock gate = new();
    private readonly LinkedList<LaidLog> laid = [];

    /// <summary>Lays a log down; the oldest of many gives way.</summary>
    public LaidLog Lay(string trial, string name, byte[] bytes)
    {
        var log = new LaidLog(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8)), trial, name, bytes, null);
        lock (gate)
        {
            laid.AddFirst(log);
            while (laid.Count > Most)
            {
                laid.RemoveLast();
            }
        }

        return log;
    }

    /// <summary>The log of that name for that trial; null: it is not there any more.</summary>
    public LaidLog? Find(string trial, string id)
    {
        lock (gate)
        {
            return laid.FirstOrDefault(one => one.Id == id && one.Trial == trial);
        }
    }

    /// <summary>The same log with its question answered.</summary>
    public void Answer(LaidLog log, LogMapping answers)
    {
        lock (gate)
        {
            if (laid.Find(log) is { } node)
            {
                node.Value = log with { Answers = answers };
            }
        }
    }

    /// <summary>It was taken in, or is not wanted.</summary>
    public void Away(LaidLog log)
    {
        lock (gate)
        {
            laid.Remove(log);
        }
    }
}

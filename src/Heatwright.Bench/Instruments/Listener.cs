using System.Threading.Channels;
using Heatwright.Quantities;

namespace Heatwright.Instruments;

/// <summary>Listens to several instruments on one clock until it is stopped, or until every recorded file is at its end.</summary>
public static class Listener
{
    /// <summary>Where the reader falls so far behind, the instruments' own buffers have to wait.</summary>
    private const int MostWaiting = 20_000;

    /// <summary>What is wrong with the plans themselves: names that stand twice, files that are not there.</summary>
    public static IReadOnlyList<Problem> Check(IReadOnlyList<SourcePlan> plans)
    {
        var problems = new List<Problem>();
        foreach (string name in plans.GroupBy(plan => plan.Name, StringComparer.OrdinalIgnoreCase).Where(group => group.Count() > 1).Select(group => group.Key))
        {
            problems.Add(new("Two sources have one name.", "the sources", name, "a name for each", "Give one of them another name before its '='."));
        }

        foreach (var plan in plans)
        {
            if (plan.Address is SourceAddress.Replay { File: var file } && !File.Exists(file))
            {
                problems.Add(new("The recorded frames are not there.", plan.Name, file, "a frame file", "Check the name and the folder."));
            }

            if (plan.Frames is { } frames && Path.Exists(frames))
            {
                problems.Add(new("The frames would be written over a file.", plan.Name, frames, "a name that is not taken", "Choose another name, or move the file away."));
            }

            if (plan.Ask is { } ask && (ask.Length is 0 or > 500 || ask.Any(c => c is < ' ' or > '~')))
            {
                problems.Add(new("This cannot be asked.", plan.Name, ask, "1 to 500 plain letters, digits and marks", "Write the question as the instrument's manual has it."));
            }

            if (!(plan.EveryS is >= 0.01 and <= 86400))
            {
                problems.Add(new("This is no pace for questions.", plan.Name, plan.EveryS.ToString("R", System.Globalization.CultureInfo.InvariantCulture) + " s", "0.01 s to a day", "Give another pace."));
            }
        }

        return problems;
    }

    /// <summary>Begins to listen. Whoever reads has to read to the end: after <paramref name="cancel"/> what was heard before still comes.</summary>
    /// <param name="plans">The instruments.</param>
    /// <param name="clock">The one clock.</param>
    /// <param name="cancel">Ends the session.</param>
    public static ChannelReader<Heard> Begin(IReadOnlyList<SourcePlan> plans, BenchClock clock, CancellationToken cancel)
    {
        var channel = Channel.CreateBounded<Heard>(new BoundedChannelOptions(MostWaiting) { SingleReader = true });
        _ = Task.Run(async () =>
        {
            try
            {
                await Task.WhenAll(plans.Select(plan => new Source(plan, clock, channel.Writer).Listen(cancel))).ConfigureAwait(false);
                channel.Writer.TryComplete();
            }
            catch (Exception error)
            {
                channel.Writer.TryComplete(error);
                throw;
            }
        }, CancellationToken.None);
        return channel.Reader;
    }
}

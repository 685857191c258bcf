using System.Globalization;

namespace Heatwright.Trials;

/// <summary>Readings that were entered twice: the same command given again makes them count double.</summary>
internal static class TypedTwice
{
    /// <summary>Fewer readings may well come out the same again.</summary>
    private const int Least = 3;

    /// <summary>A remark where all readings of a run stand in an earlier run of its trial too, or stand twice in itself.</summary>
    public static IEnumerable<Remark> Of(Trial trial, Run run)
    {
        var mine = Standing(run);
        if (mine.Length < Least || mine.Skip(1).All(reading => Same(reading, mine[0])))
        {
            yield break;
        }

        foreach (var other in trial.Runs.TakeWhile(one => one.Id != run.Id).Where(one => one.Columns.Select(column => column.Name).SequenceEqual(run.Columns.Select(column => column.Name), StringComparer.Ordinal)))
        {
            var theirs = Standing(other);
            if (theirs.Length == mine.Length && mine.Zip(theirs).All(pair => Same(pair.First, pair.Second)))
            {
                yield return new(trial.Id, run.Id, 0, string.Create(CultureInfo.InvariantCulture,
                    $"The same readings stand in run '{other.Id}', all {mine.Length} of them: entered twice? They count twice. Strike 'all' of {run.Id} out if so."), Remark.Kept);
                yield break;
            }
        }

        int half = mine.Length / 2;
        if (mine.Length % 2 == 0 && half >= Least && Enumerable.Range(0, half).All(i => Same(mine[i], mine[half + i])))
        {
            yield return new(trial.Id, run.Id, 0, string.Create(CultureInfo.InvariantCulture,
                $"Readings {NumberSpans.Told(mine[half..].Select(reading => reading.Number))} are the same as {NumberSpans.Told(mine[..half].Select(reading => reading.Number))}: entered twice? Strike '{NumberSpans.Told(mine[half..].Select(reading => reading.Number), "-", " ")}' of {run.Id} out if so."), Remark.Kept);
        }
    }

    private static Reading[] Standing(Run run) => [.. run.Readings.Where(reading => reading.StruckBecause is null)];

    private static bool Same(Reading one, Reading other) => one.Raw.SequenceEqual(other.Raw, StringComparer.Ordinal);
}

namespace Heatwright.Jobs;

/// <summary>What was worked out a while ago from the same things: the latest few answers, each under a key that holds all that it rests on.</summary>
/// <typeparam name="T">An answer; never changed after it was made.</typeparam>
/// <param name="most">So many are kept, those that were asked for last.</param>
internal sealed class Remembered<T>(int most)
    where T : class
{
    private readonly Lock gate = new();
    private readonly LinkedList<(string Key, T Answer)> latest = [];

    /// <summary>The answer under this key, made where it is not there; what throws is not kept.</summary>
    public T Of(string key, Func<T> make)
    {
        lock (gate)
        {
            for (var node = latest.First; node is not null; node = node.Next)
            {
                if (node.Value.Key == key)
                {
                    latest.Remove(node);
                    latest.AddFirst(node);
                    return node.Value.Answer;
                }
            }
        }

        var answer = make();
        lock (gate)
        {
            latest.AddFirst((key, answer));
            while (latest.Count > most)
            {
                latest.RemoveLast();
            }
        }

        return answer;
    }
}

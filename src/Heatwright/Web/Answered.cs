using System.Runtime.CompilerServices;

namespace Heatwright.Web;

/// <summary>Questions on a result that take seconds to answer: asked once in the background, then kept as long as what they rest on.</summary>
internal static class Answered
{
    private static readonly ConditionalWeakTable<object, Dictionary<string, Task<object>>> Asked = [];

    /// <summary>The answer, or null while it is being worked out.</summary>
    /// <param name="rests">What the answer rests on: the result, or of it the verdicts alone, which a note or a reading of the prototype leaves as they are.</param>
    /// <param name="question">Its name.</param>
    /// <param name="work">Answers it.</param>
    public static T? Of<T>(object rests, string question, Func<T> work)
        where T : class
    {
        var kept = Asked.GetOrCreateValue(rests);
        Task<object> task;
        lock (kept)
        {
            if (!kept.TryGetValue(question, out task!))
            {
                kept[question] = task = Task.Run(() => (object)work());
            }
        }

        // A failure is thrown here, so that the page says it as any other fault of ours.
        return task.IsCompleted ? (T)task.GetAwaiter().GetResult() : null;
    }
}

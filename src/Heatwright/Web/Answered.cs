using System.Runtime.CompilerServices;
using Heatwright.Jobs;

namespace Heatwright.Web;

/// <summary>Questions on a result that take seconds to answer: asked once a result in the background, then kept as long as the result is.</summary>
internal static class Answered
{
    private static readonly ConditionalWeakTable<StudyResult, Dictionary<string, Task<object>>> Asked = [];

    /// <summary>The answer, or null while it is being worked out.</summary>
    /// <param name="result">The result that is asked about.</param>
    /// <param name="question">Its name.</param>
    /// <param name="work">Answers it.</param>
    public static T? Of<T>(StudyResult result, string question, Func<T> work)
        where T : class
    {
        var kept = Asked.GetOrCreateValue(result);
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

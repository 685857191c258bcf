using System.Text.Json.Serialization;

namespace Heatwright.Quantities;

/// <summary>An answer about something that is not right: what, where, the value, the limit and the next step, blaming nobody.</summary>
/// <param name="What">What is not right, in trade words.</param>
/// <param name="Where">The reading, part, file or line it concerns.</param>
/// <param name="Value">The value met, with its unit, as it was typed or read.</param>
/// <param name="Limit">What would be right.</param>
/// <param name="Next">What to do now.</param>
public record Problem(string What, string Where, string Value, string Limit, string Next)
{
    /// <summary>The same as a page says it, by the names of its lists and buttons; null: the words serve both.</summary>
    [JsonIgnore]
    public Problem? OnPage { get; init; }

    /// <inheritdoc/>
    public override string ToString() => $"{What} Where: {Where}. Value: {Value}. Limit: {Limit}. Next: {Next}";
}

/// <summary>A value, or everything that stands in its way, all of it at once.</summary>
public sealed record Checked<T>
{
    private readonly T? value;

    /// <summary>A value with nothing in its way.</summary>
    public Checked(T value)
    {
        this.value = value;
        Problems = [];
    }

    /// <summary>No value, and why.</summary>
    public Checked(IReadOnlyList<Problem> problems) =>
        Problems = problems.Count > 0 ? problems : throw new ArgumentException("No value needs at least one problem.", nameof(problems));

    /// <summary>No value, and why.</summary>
    public Checked(Problem problem)
        : this([problem])
    {
    }

    /// <summary>What stands in the way; empty when there is a value.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>True when there is a value.</summary>
    public bool IsFine => Problems.Count == 0;

    /// <summary>The value; asking for it when there is none is a bug.</summary>
    public T Value => IsFine ? value! : throw new InvalidOperationException(Problems[0].ToString());

    /// <summary>The next step, unless something already stands in the way.</summary>
    public Checked<TNext> Then<TNext>(Func<T, Checked<TNext>> next) => IsFine ? next(value!) : new(Problems);

    /// <summary>The value changed, unless something stands in the way.</summary>
    public Checked<TNext> Map<TNext>(Func<T, TNext> change) => IsFine ? new(change(value!)) : new(Problems);
}

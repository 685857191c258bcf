namespace Heatwright.Quantities;

/// <summary>What the reader made of a text.</summary>
public abstract record Answer
{
    private Answer() { }

    /// <summary>It means this and nothing else.</summary>
    /// <param name="Values">At least one; the one that the field asked for stands first.</param>
    public sealed record Fine(IReadOnlyList<TypedValue> Values) : Answer
    {
        /// <summary>The value that the field asked for.</summary>
        public TypedValue Value => Values[0];
    }

    /// <summary>It may mean several things; nobody but the maker can say which.</summary>
    /// <param name="Asks">The question, in trade words.</param>
    /// <param name="Choices">At least two; typing a choice's own spelling gives exactly that choice.</param>
    public sealed record Question(string Asks, IReadOnlyList<Choice> Choices) : Answer;

    /// <summary>It cannot be read, or does not belong into this field.</summary>
    public sealed record Refused(Problem Problem) : Answer;
}

/// <summary>One thing that a text may mean.</summary>
/// <param name="Spelling">What to type to mean this and nothing else.</param>
/// <param name="Values">What it means.</param>
public sealed record Choice(string Spelling, IReadOnlyList<TypedValue> Values);

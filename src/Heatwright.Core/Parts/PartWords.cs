namespace Heatwright.Parts;

/// <summary>The words of a part that something here reads; any other is kept as the maker's own.</summary>
public static class PartWords
{
    /// <summary>Their names.</summary>
    public static IReadOnlyList<string> Read { get; } = ["chemistry", "cells", "size", "type", "place"];

    /// <summary>That nothing reads a word, in a sentence; null: something does.</summary>
    /// <param name="typed">As typed, 'type=K'.</param>
    public static string? Unread(string typed) => typed.Split('=', 2)[0].Trim() is var name && Read.Contains(name, StringComparer.Ordinal) ? null
        : $"'{typed.Trim()}' is kept as a word of your own: nothing here reads '{name}'. Read are {string.Join(", ", Read)}.";
}

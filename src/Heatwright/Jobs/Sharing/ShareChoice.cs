using Heatwright.Quantities;

namespace Heatwright.Jobs.Sharing;

/// <summary>What does not go along when a study is shared.</summary>
/// <param name="Prices">Prices, and the lines of the brief that ask for costs.</param>
/// <param name="Notes">The maker's notes.</param>
/// <param name="Sellers">Sellers' texts and the wording of their claims.</param>
/// <param name="Names">What the maker calls parts, meters and files; with it go notes, sellers' texts and decision cards, whose words hold the names.</param>
public sealed record ShareChoice(bool Prices = false, bool Notes = false, bool Sellers = false, bool Names = false)
{
    /// <summary>The words of the choice, as they are typed.</summary>
    public static IReadOnlyList<string> Words { get; } = ["prices", "notes", "sellers", "names"];

    /// <summary>The choice that was typed.</summary>
    public static Checked<ShareChoice> Of(IReadOnlyList<string> typed)
    {
        string[] words = [.. typed.SelectMany(word => word.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)).Select(word => word.ToLowerInvariant())];
        string[] unknown = [.. words.Where(word => !Words.Contains(word))];
        return unknown.Length > 0
            ? new(new Problem("This cannot be left out.", "--without", string.Join(", ", unknown), string.Join(", ", Words), "Choose of these; location and camera data of photos never go along."))
            : new(new ShareChoice(words.Contains("prices"), words.Contains("notes"), words.Contains("sellers"), words.Contains("names")));
    }
}

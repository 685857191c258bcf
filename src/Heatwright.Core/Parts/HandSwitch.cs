using System.Text.RegularExpressions;

namespace Heatwright.Parts;

/// <summary>Switches that close contacts and have no gate: known by the word 'type', else by what the part is called.</summary>
public static partial class HandSwitch
{
    /// <summary>True for a switch with contacts: a slide, toggle, rocker or push-button switch, or a relay.</summary>
    /// <param name="part">The part; any but a switch is none.</param>
    public static bool HasContacts(Part part) => Kind(part) is not null;

    /// <summary>True where a finger moves it, so that no controller can.</summary>
    /// <param name="part">The part.</param>
    public static bool IsMovedByHand(Part part) => Kind(part) is { } kind && kind != "relay";

    /// <summary>What kind of contacts it has, as one word; null: a transistor, or nothing says so.</summary>
    internal static string? Kind(Part part) => part.Kind != PartKind.Switch ? null
        : part.Word("type") is { Length: > 0 } type ? Kind(type)
        : Kind($"{part.Name} {part.Listing}");

    /// <summary>The same of a text.</summary>
    internal static string? Kind(string text) => Transistors().IsMatch(text) ? null : Contacts().Match(text) is { Success: true } match ? match.Value.ToLowerInvariant().Replace(' ', '-') : null;

    [GeneratedRegex(@"mosfet|transistor|\bfet\b|solid.state", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Transistors();

    [GeneratedRegex(@"\b(slide|sliding|toggle|rocker|push[- ]?button|lever|micro-?switch|reed|rotary|tactile|mechanical|relay)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Contacts();
}

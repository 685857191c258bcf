using Heatwright.Logs;
using Heatwright.Quantities;

namespace Heatwright.Instruments;

/// <summary>An instrument to listen to.</summary>
/// <param name="Name">What it is called in this session.</param>
/// <param name="Address">Where it is.</param>
public sealed record SourcePlan(string Name, SourceAddress Address)
{
    /// <summary>Asked of a network instrument that says nothing by itself: IEEE 488.2 leaves it to the instrument what is measured.</summary>
    public const string UsualQuestion = "READ?";

    /// <summary>What to send for each reading; null: only listen, and ask a silent network instrument <see cref="UsualQuestion"/>.</summary>
    public string? Ask { get; init; }

    /// <summary>Seconds from one question to the next.</summary>
    public double EveryS { get; init; } = 1;

    /// <summary>Answers to what the lines leave open.</summary>
    public LogMapping? Answers { get; init; }

    /// <summary>File that takes all bytes as they pass, or null.</summary>
    public string? Frames { get; init; }

    /// <summary>Reads a source as typed: an address, with a name and '=' before it if the maker wants one.</summary>
    /// <param name="typed">Such as meter=tcp:127.0.0.1:5025.</param>
    /// <param name="number">Which source of the session it is, from 0; without a name it is called a, b, c.</param>
    public static Checked<SourcePlan> Read(string typed, int number)
    {
        int equals = typed.IndexOf('=', StringComparison.Ordinal), colon = typed.IndexOf(':', StringComparison.Ordinal);
        bool named = equals > 0 && equals < colon;
        string name = named ? typed[..equals].Trim() : number < 26 ? ((char)('a' + number)).ToString() : $"source {(number + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}";
        return named && !name.All(c => char.IsLetterOrDigit(c) || c is '-' or '_' or ' ')
            ? new(new Problem("This is no name for an instrument.", "the source", name, "letters, digits, blanks, - and _", "Give it another name before the '='."))
            : SourceAddress.Read(named ? typed[(equals + 1)..].Trim() : typed).Map(address => new SourcePlan(name, address));
    }
}

using System.Globalization;
using System.IO.Ports;
using Heatwright.Quantities;

namespace Heatwright.Instruments;

/// <summary>Where an instrument is: a serial port, a network port, or a file of recorded frames.</summary>
public abstract record SourceAddress
{
    private const string Forms = "serial:PORT@SPEED (such as serial:/dev/ttyUSB0@115200), tcp:HOST:PORT (such as tcp:127.0.0.1:5025) or replay:FILE";
    private const int UsualSpeed = 115_200;

    private SourceAddress()
    {
    }

    /// <summary>A serial port; its name is typed, since a machine does not list all it has.</summary>
    /// <param name="Port">Path or name of the port.</param>
    /// <param name="Speed">Bits a second.</param>
    /// <param name="DataBits">7 or 8.</param>
    /// <param name="Parity">Parity bit.</param>
    /// <param name="Stop">Stop bits.</param>
    public sealed record Serial(string Port, int Speed, int DataBits = 8, Parity Parity = Parity.None, StopBits Stop = StopBits.One) : SourceAddress;

    /// <summary>A port on the network.</summary>
    /// <param name="Host">Name or number of the machine.</param>
    /// <param name="Port">1 to 65535.</param>
    public sealed record Tcp(string Host, int Port) : SourceAddress;

    /// <summary>Recorded frames, played as they came.</summary>
    /// <param name="File">A file as docs/formats/live.md describes.</param>
    public sealed record Replay(string File) : SourceAddress;

    /// <summary>Reads an address as it is typed.</summary>
    public static Checked<SourceAddress> Read(string typed)
    {
        int colon = typed.IndexOf(':', StringComparison.Ordinal);
        string rest = colon < 0 ? "" : typed[(colon + 1)..].Trim();
        return rest.Length == 0 ? Refused(typed) : typed[..colon].Trim().ToLowerInvariant() switch
        {
            "serial" => ReadSerial(typed, rest),
            "tcp" => ReadTcp(typed, rest),
            "replay" => new(new Replay(rest)),
            _ => Refused(typed),
        };
    }

    private static Checked<SourceAddress> ReadSerial(string typed, string rest)
    {
        int at = rest.LastIndexOf('@');
        if (at < 0)
        {
            return new(new Serial(rest, UsualSpeed));
        }

        string[] parts = rest[(at + 1)..].Split(',', StringSplitOptions.TrimEntries);
        bool known = int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int speed) && speed is >= 50 and <= 4_000_000;
        var form = parts.Length switch { 1 => Form("8N1"), 2 => Form(parts[1].ToUpperInvariant()), _ => null };
        return at > 0 && known && form is { } bits
            ? new(new Serial(rest[..at].Trim(), speed, bits.Data, bits.Parity, bits.Stop))
            : new(new Problem("This is not a speed of a serial port.", "the source", typed, "50 to 4000000 bits a second, and if need be 8N1, 7E1 or 7N2 behind a comma", "Write it as serial:/dev/ttyUSB0@9600 or serial:/dev/ttyUSB0@600,7N2."));
    }

    private static (int Data, Parity Parity, StopBits Stop)? Form(string form) => form is ['7' or '8', 'N' or 'E' or 'O', '1' or '2']
        ? (form[0] - '0', form[1] switch { 'N' => Parity.None, 'E' => Parity.Even, _ => Parity.Odd }, form[2] == '1' ? StopBits.One : StopBits.Two)
        : null;

    private static Checked<SourceAddress> ReadTcp(string typed, string rest)
    {
        int colon = rest.LastIndexOf(':');
        bool known = int.TryParse(rest[(colon + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port is >= 1 and <= 65535;
        return colon > 0 && known ? new(new Tcp(rest[..colon].Trim('[', ']', ' '), port)) : Refused(typed);
    }

    private static Checked<SourceAddress> Refused(string typed) =>
        new(new Problem("This is not the address of an instrument.", "the source", typed, Forms, "Write it in one of these forms."));
}

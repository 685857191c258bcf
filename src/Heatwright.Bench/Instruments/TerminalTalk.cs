namespace Heatwright.Instruments;

/// <summary>Takes a terminal service's negotiation out of the bytes and declines whatever is offered or asked.</summary>
/// <remarks>Codes: RFC 854 (1983), pages 13 to 15. A doubled 255 is the byte 255 itself.</remarks>
internal sealed class TerminalTalk
{
    private const byte Begin = 250, End = 240, Will = 251, Wont = 252, Do = 253, Dont = 254, Command = 255;

    private enum Place
    {
        Text,
        Command,
        Option,
        Inside,
        InsideCommand,
    }

    private Place place;
    private byte verb;

    /// <summary>Leaves the text at the start of the buffer and says how much of it there is.</summary>
    public int Clean(Span<byte> bytes, out byte[] reply)
    {
        List<byte>? answers = null;
        int kept = 0;
        foreach (byte b in bytes)
        {
            switch (place)
            {
                case Place.Text when b == Command:
                    place = Place.Command;
                    break;
                case Place.Text:
                    bytes[kept++] = b;
                    break;
                case Place.Command when b is Will or Wont or Do or Dont:
                    (place, verb) = (Place.Option, b);
                    break;
                case Place.Command when b == Command:
                    bytes[kept++] = b;
                    place = Place.Text;
                    break;
                case Place.Command:
                    place = b == Begin ? Place.Inside : Place.Text;
                    break;
                case Place.Option:
                    if (verb is Will or Do)
                    {
                        (answers ??= []).AddRange([Command, verb == Will ? Dont : Wont, b]);
                    }

                    place = Place.Text;
                    break;
                case Place.Inside:
                    place = b == Command ? Place.InsideCommand : Place.Inside;
                    break;
                default:
                    place = b == End ? Place.Text : Place.Inside;
                    break;
            }
        }

        reply = answers?.ToArray() ?? [];
        return kept;
    }
}

using System.Text;
using CsCheck;
using Heatwright.Instruments;

namespace Heatwright.Tests.Instruments;

/// <summary>Bytes into lines, frames into text and back, addresses as typed.</summary>
public sealed class FramingTests
{
    private static readonly string[] Pieces = ["1.5", "tip:2", "\n", "\r\n", "\r", "\u00b5", " ", "OL"];

    [Theory]
    [InlineData("a\nb\n", "a|b"), InlineData("a\r\nb\r\n", "a|b"), InlineData("a\rb\r", "a|b"), InlineData("a\n\n\r\n\rb\n", "a|b"), InlineData("a\r\nb", "a"), InlineData("x\0y\u0007\n", "xy"), InlineData("a\tb\n", "a\tb")]
    public void Lines_end_with_LF_or_CR_LF_or_CR(string bytes, string lines) => Assert.Equal(lines, string.Join('|', Cut([Encoding.UTF8.GetBytes(bytes)]).Select(line => line.Text)));

    [Fact]
    public void However_the_bytes_are_packed_the_lines_are_the_same() => Gen.Select(Gen.Int[0, Pieces.Length - 1].Select(i => Pieces[i]).Array[0, 60], Gen.Int[1, 9].Array[1, 200])
        .Sample((pieces, sizes) =>
        {
            byte[] bytes = Encoding.UTF8.GetBytes(string.Concat(pieces));
            // The second method: all ends become LF, empty lines go away, what has no end stays behind.
            string text = string.Concat(pieces).Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n');
            string[] expected = [.. text[..(text.LastIndexOf('\n') + 1)].Split('\n').Select(line => line.Trim(' ')).Where(line => line.Length > 0)];
            var packets = new List<byte[]>();
            for (int at = 0, i = 0; at < bytes.Length; i++)
            {
                int size = Math.Min(sizes[i % sizes.Length], bytes.Length - at);
                packets.Add(bytes[at..(at + size)]);
                at += size;
            }

            Assert.Equal(expected, Cut(packets).Select(line => line.Text));
        }, iter: 2000);

    [Fact]
    public void A_line_without_an_end_in_sight_is_cut_and_said_to_be()
    {
        var lines = Cut([Encoding.ASCII.GetBytes(new string('7', 10_000) + "\n1.5\n")]);
        Assert.Equal([(1024, false), (3, true)], lines.Select(line => (line.Text.Length, line.Whole)));
    }

    [Fact]
    public void A_line_that_may_have_begun_before_is_not_whole()
    {
        var cutter = new LineCutter();
        cutter.MayBeCut();
        var lines = new List<RawLine>();
        cutter.Add("1.5\n231.5\n"u8, 1, lines);
        Assert.Equal([false, true], lines.Select(line => line.Whole));
    }

    [Fact]
    public void Latin_1_degree_signs_are_kept() => Assert.Equal("231 \u00b0C", Cut([[(byte)'2', (byte)'3', (byte)'1', (byte)' ', 0xB0, (byte)'C', (byte)'\n']])[0].Text);

    [Fact]
    public void Frames_survive_their_text() => Gen.Select(Gen.Byte.Array[0, 40], Gen.Double[0, 1e6], Gen.Bool).Sample((bytes, at, sent) =>
    {
        string line = FrameFile.Line(new(at, sent, bytes));
        var back = FrameFile.Read([FrameFile.FirstLine, line]).Single();
        Assert.Equal(bytes, back.Bytes);
        Assert.Equal(sent, back.Sent);
        Assert.Equal(at, back.AtS, 5.1e-7);
        Assert.All(line, c => Assert.InRange(c, ' ', '~'));
        Assert.Equal(line.TrimEnd() + (bytes.Length == 0 ? " " : ""), line);
    }, iter: 2000);

    [Fact]
    public void A_frame_reads_as_the_document_shows_it() =>
        Assert.Equal("12.345000 < tip:231.5,set:240\\r\\n", FrameFile.Line(new(12.345, false, "tip:231.5,set:240\r\n"u8.ToArray())));

    /// <summary>RFC 854, pages 13 to 15: 255 253 x (DO) is declined with 255 252 x (WONT), 255 251 x (WILL) with 255 254 x (DONT); 255 255 is a byte 255.</summary>
    [Fact]
    public void Negotiation_is_taken_out_however_it_is_packed()
    {
        byte[] bytes = [65, 255, 251, 1, 66, 255, 253, 24, 255, 250, 24, 1, 255, 240, 255, 255, 67, 255, 241, 68];
        for (int split = 0; split <= bytes.Length; split++)
        {
            var talk = new TerminalTalk();
            byte[] first = bytes[..split], second = bytes[split..];
            int one = talk.Clean(first, out byte[] replyOne), two = talk.Clean(second, out byte[] replyTwo);
            Assert.Equal([65, 66, 255, 67, 68], (byte[])[.. first[..one], .. second[..two]]);
            Assert.Equal([255, 254, 1, 255, 252, 24], (byte[])[.. replyOne, .. replyTwo]);
        }
    }

    [Theory]
    [InlineData("serial:/dev/ttyUSB0@115200", "Serial { Port = /dev/ttyUSB0, Speed = 115200, DataBits = 8, Parity = None, Stop = One }")]
    [InlineData("serial:COM3", "Serial { Port = COM3, Speed = 115200, DataBits = 8, Parity = None, Stop = One }")]
    [InlineData("Serial: /dev/ttyS0@600,7N2", "Serial { Port = /dev/ttyS0, Speed = 600, DataBits = 7, Parity = None, Stop = Two }")]
    [InlineData("tcp:127.0.0.1:5025", "Tcp { Host = 127.0.0.1, Port = 5025 }"), InlineData("tcp:[::1]:5025", "Tcp { Host = ::1, Port = 5025 }")]
    [InlineData("replay:C:\\bench\\a.frames", "Replay { File = C:\\bench\\a.frames }")]
    public void Addresses_are_read_as_typed(string typed, string meaning) => Assert.Equal(meaning, SourceAddress.Read(typed).Value.ToString());

    [Theory]
    [InlineData(""), InlineData("/dev/ttyUSB0"), InlineData("serial:"), InlineData("serial:@9600"), InlineData("serial:/dev/x@fast"), InlineData("serial:/dev/x@9600,9Z3"), InlineData("serial:/dev/x@9600,8N1,2")]
    [InlineData("tcp:host"), InlineData("tcp:host:0"), InlineData("tcp:host:70000"), InlineData("tcp::5025"), InlineData("usb:1"), InlineData("replay:")]
    public void What_is_no_address_is_refused_with_the_forms(string typed) => Assert.False(SourceAddress.Read(typed).IsFine);

    [Fact]
    public void Sources_may_be_named()
    {
        Assert.Equal(("meter", "b"), (SourcePlan.Read("meter=tcp:127.0.0.1:5025", 0).Value.Name, SourcePlan.Read("tcp:127.0.0.1:5025", 1).Value.Name));
        Assert.Equal("a", SourcePlan.Read("replay:odd=name.frames", 0).Value.Name);
        Assert.False(SourcePlan.Read("a/b=tcp:127.0.0.1:5025", 0).IsFine);
    }

    private static List<RawLine> Cut(IEnumerable<byte[]> packets)
    {
        var cutter = new LineCutter();
        var lines = new List<RawLine>();
        foreach (byte[] packet in packets)
        {
            cutter.Add(packet, 0, lines);
        }

        return lines;
    }
}

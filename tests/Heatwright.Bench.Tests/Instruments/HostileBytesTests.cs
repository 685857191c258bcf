using System.Diagnostics;
using System.Text;
using Heatwright.Instruments;

namespace Heatwright.Tests.Instruments;

/// <summary>Bytes that no instrument should send: nothing falls over, and nothing hangs.</summary>
public sealed class HostileBytesTests
{
    private const int Seed = 20260301;

    /// <summary>A hang, not a slow machine: a test machine may run several builds at once. What is below a second when nothing else runs is measured by the campaign.</summary>
    private const int HangMs = 30_000;

    private static readonly string[] Pieces =
    [
        "1.5", "-", "+", "9.9E37", "OL", "tip:", "set=", ",", ";", "\t", " ", "\n", "\r\n", "\r", "\"", "23:24:14.141 -> ", "[12:00:00] ", "> ", "SCPI> ", "\0", "\u00b0C", "mV", "V", "\u00ff\u00fb\u0001", "e", "1e", "E+",
        "\\x", "{", "}", ":", "=", "12:00", "2024-01-01T00:00:00Z", "nan", "inf", "sep=;", "#", "0", "000000000000000000000", "(", ")", "[", "]", "/",
    ];

    [Fact]
    public void Any_bytes_are_framed_and_read_without_a_fall_or_a_wait()
    {
        var random = new Random(Seed);
        for (int round = 0; round < 1500; round++)
        {
            byte[] bytes = Bytes(random, random.Next(4096));
            var watch = Stopwatch.StartNew();
            Listen(random, bytes);
            Ask(bytes);
            Replay(bytes);
            Assert.True(watch.ElapsedMilliseconds < HangMs, $"seed {Seed}, round {round}: {watch.ElapsedMilliseconds} ms");
        }
    }

    [Theory, InlineData("a"), InlineData("a "), InlineData("a:"), InlineData("1:"), InlineData("1,"), InlineData("\""), InlineData("> "), InlineData("1"), InlineData("- "), InlineData("a:1 b:"), InlineData("[1"), InlineData("{a:1,")]
    public void A_line_that_says_one_thing_over_and_over_does_not_hang(string piece)
    {
        string line = string.Concat(Enumerable.Repeat(piece, LineCutter.LongestLine / piece.Length));
        byte[] bytes = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(line + "\n", 12)));
        var watch = Stopwatch.StartNew();
        Listen(new Random(Seed), bytes);
        Ask(bytes);
        Assert.True(watch.ElapsedMilliseconds < HangMs, $"{watch.ElapsedMilliseconds} ms");
    }

    /// <summary>Lines of garbage between any two that can be read, as a campaign of garbled bytes made them: looking for another form each time costs ten times what reading costs. A look makes tens of kilobytes of garbage.</summary>
    [Fact]
    public void Garbage_between_readings_does_not_have_the_form_looked_for_again_and_again()
    {
        byte[] round = Encoding.Latin1.GetBytes("rs \u00003\nt:0x1 bo1 2 \u00003\n\u00eft\r\n1 bo1 2 \u00003\not\r\n1 2 \u00003\n 2 \u00003\n");
        byte[] bytes = [.. Enumerable.Repeat(round, 4000).SelectMany(one => one)];
        var random = new Random(Seed);
        for (int i = 0; i < 60; i++)
        {
            bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        }

        Foreign.Take(bytes);
        long before = GC.GetAllocatedBytesForCurrentThread();
        long lines = Foreign.Take(bytes);
        long made = (GC.GetAllocatedBytesForCurrentThread() - before) / lines;
        Assert.InRange(lines, 12_000, 28_010);
        Assert.InRange(made, 100, 4000);
    }

    private static void Listen(Random random, byte[] bytes)
    {
        var cutter = new LineCutter();
        var talk = new TerminalTalk();
        var reader = new LineReader("x", null);
        var lines = new List<RawLine>();
        var heard = new List<Heard>();
        for (int at = 0; at < bytes.Length;)
        {
            int size = Math.Min(1 + random.Next(400), bytes.Length - at);
            byte[] packet = bytes[at..(at + size)];
            cutter.Add(packet.AsSpan(0, talk.Clean(packet, out _)), at, lines);
            at += size;
            lines.ForEach(line => reader.Take(line, heard));
            lines.Clear();
            reader.Pause(at, heard);
        }

        cutter.Rest(bytes.Length, true, lines);
        lines.ForEach(line => reader.Take(line, heard));
        reader.End(bytes.Length, heard);
        Assert.All(heard.OfType<Heard.Line>().SelectMany(line => line.Readouts), readout => Assert.True(Math.Abs(readout.Value) < 9.8e37 || double.IsNaN(readout.Value), readout.ToString()));
    }

    private static void Ask(byte[] bytes)
    {
        foreach (string line in Encoding.Latin1.GetString(bytes).Split('\n'))
        {
            string answer = ScpiAnswer.WithoutPrompt(line);
            _ = ScpiAnswer.IsIdentity(answer);
            foreach (var readout in ScpiAnswer.Read("MEAS:VOLT?", answer) ?? [])
            {
                Assert.True(Math.Abs(readout.Value) < 9.8e37 || double.IsNaN(readout.Value), readout.ToString());
            }
        }
    }

    private static void Replay(byte[] bytes)
    {
        try
        {
            foreach (var frame in FrameFile.Read([FrameFile.FirstLine, .. Encoding.Latin1.GetString(bytes).Split('\n').Select((line, i) => i % 2 == 0 ? $"{i} < {line}" : line)]))
            {
                Assert.True(frame.AtS >= 0);
            }
        }
        catch (FrameFault)
        {
            // The answer to a line that is no frame.
        }
    }

    private static byte[] Bytes(Random random, int length)
    {
        if (random.Next(4) == 0)
        {
            byte[] any = new byte[length];
            random.NextBytes(any);
            return any;
        }

        var text = new StringBuilder();
        int variety = 1 + random.Next(Pieces.Length), from = random.Next(Pieces.Length);
        while (text.Length < length)
        {
            text.Append(Pieces[(from + random.Next(variety)) % Pieces.Length]);
        }

        return Encoding.Latin1.GetBytes(text.ToString());
    }
}

using System.Globalization;
using Heatwright.Instruments;

namespace Heatwright.Tests.Instruments;

/// <summary>Serial ports, each a pseudo-terminal of the system. Readings are made up.</summary>
public sealed class SerialTests
{
    private static SourcePlan Plan(PseudoTerminal port, string speed = "") => Ear.Plan("board=serial:" + port.Path + speed);

    [Theory(Skip = PseudoTerminal.Need, SkipUnless = nameof(PseudoTerminal.Here), SkipType = typeof(PseudoTerminal))]
    [InlineData("\n", "@9600"), InlineData("\r\n", "@115200"), InlineData("\r", "")]
    public async Task Lines_are_read_whatever_ends_them(string end, string speed)
    {
        using var port = new PseudoTerminal();
        await using var ear = new Ear(1, Plan(port, speed));
        await Open(ear);
        for (int i = 0; i < 5; i++)
        {
            port.Say(string.Create(CultureInfo.InvariantCulture, $"tip:{230 + i}.5,set:240{end}"));
        }

        await ear.Until(5);
        Assert.Equal([230.5, 231.5, 232.5, 233.5, 234.5], ear.Lines().Select(line => line.Readouts[0].Value));
        Assert.All(ear.Lines(), line => Assert.Equal(("board", "tip", "set", 240.0), (line.Source, line.Readouts[0].Name, line.Readouts[1].Name, line.Readouts[1].Value)));
        Assert.Empty(ear.Unread());
    }

    [Fact(Skip = PseudoTerminal.Need, SkipUnless = nameof(PseudoTerminal.Here), SkipType = typeof(PseudoTerminal))]
    public async Task A_board_that_resets_when_the_port_opens_is_heard_after_its_boot_noise()
    {
        using var port = new PseudoTerminal();
        await using var ear = new Ear(1, Plan(port));
        await Open(ear);
        port.Say([0xFE, 0x00, 0xC3, 0x28, 0x80, (byte)'\n']);
        port.Say("\r\nrst cause 2, boot mode (3,6)\r\nload 0x40, len 1384\r\nready\r\n");
        await Task.Delay(200, TestContext.Current.CancellationToken);
        for (int i = 0; i < 12; i++)
        {
            port.Say(string.Create(CultureInfo.InvariantCulture, $"{231 + i}.5\t3.9{i % 10}\r\n"));
        }

        await ear.Until(12);
        Assert.Equal(Enumerable.Range(0, 12).Select(i => 231.5 + i), ear.Lines().TakeLast(12).Select(line => line.Readouts[0].Value));
        Assert.Equal(12, ear.Lines().Count(line => line.Readouts.Count == 2));
    }

    [Fact(Skip = PseudoTerminal.Need, SkipUnless = nameof(PseudoTerminal.Here), SkipType = typeof(PseudoTerminal))]
    public async Task A_port_that_is_unplugged_and_plugged_in_again_goes_on()
    {
        using var port = new PseudoTerminal();
        await using var ear = new Ear(1, Plan(port));
        await Open(ear);
        Say(port, 1, 2, 3, 4);
        await ear.Until(4);
        port.Unplug();
        await ear.Until(ear => ear.Notes().Contains("Lost", StringComparison.Ordinal));
        await ear.Until(ear => ear.Notes().Contains("no such port", StringComparison.Ordinal));
        port.Plug();
        await ear.Until(ear => ear.All().OfType<Heard.Note>().Count(note => note.State == LinkState.Open) == 2);
        await Task.Delay(100, TestContext.Current.CancellationToken);
        Say(port, 5, 6, 7, 8);
        await ear.Until(8);
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8], ear.Lines().Select(line => line.Readouts[0].Value));
        double[] times = [.. ear.Lines().Select(line => line.AtS)];
        Assert.Equal(times.Order(), times);
    }

    [Fact(Skip = PseudoTerminal.Need, SkipUnless = nameof(PseudoTerminal.Here), SkipType = typeof(PseudoTerminal))]
    public async Task What_is_no_port_is_refused_in_words_once()
    {
        string file = Path.GetTempFileName();
        await using (var ear = new Ear(10, Ear.Plan("serial:" + file)))
        {
            await ear.Until(ear => ear.Notes().Contains("no serial port", StringComparison.Ordinal));
            await Task.Delay(300, TestContext.Current.CancellationToken);
            Assert.Single(ear.All());
        }

        File.Delete(file);
    }

    [Fact(Skip = PseudoTerminal.Need, SkipUnless = nameof(PseudoTerminal.Here), SkipType = typeof(PseudoTerminal))]
    public async Task An_old_meter_is_poked_and_its_frame_understood()
    {
        using var port = new PseudoTerminal();
        await using var ear = new Ear(2, Plan(port, "@600") with { Ask = "D", EveryS = 0.1 });
        await Open(ear);
        var answering = Task.Run(() =>
        {
            for (int i = 0; i < 6; i++)
            {
                while (!port.Hear().Contains('D', StringComparison.Ordinal))
                {
                }

                port.Say($"DC -1.23{i}   V\r");
            }
        }, TestContext.Current.CancellationToken);
        await ear.Until(6);
        await answering;
        Assert.Equal([-1.230, -1.231, -1.232, -1.233, -1.234, -1.235], ear.Lines().Select(line => line.Readouts.Single(readout => readout.Kind == ReadoutKind.Number).Value));
        Assert.Equal("V", ear.Lines()[0].Readouts.Single(readout => readout.Kind == ReadoutKind.Number).Unit?.Symbol);
    }

    [Fact(Skip = PseudoTerminal.Need, SkipUnless = nameof(PseudoTerminal.Here), SkipType = typeof(PseudoTerminal))]
    public async Task A_serial_meter_that_wants_CR_LF_and_remote_mode_is_asked_so()
    {
        using var port = new PseudoTerminal();
        await using var ear = new Ear(4, Plan(port) with { Ask = "READ?", EveryS = 0.2 });
        var stop = false;
        var answering = Task.Run(() =>
        {
            bool remote = false;
            string before = "";
            while (!Volatile.Read(ref stop))
            {
                before += port.Hear();
                for (int end; (end = before.IndexOf("\r\n", StringComparison.Ordinal)) >= 0; before = before[(end + 2)..])
                {
                    string line = before[..end];
                    remote |= line.EndsWith("SYST:REM", StringComparison.Ordinal);
                    port.Say(!remote ? "" : line.EndsWith("*IDN?", StringComparison.Ordinal) ? "Bench,8,1,0.2\r\n" : line.EndsWith("READ?", StringComparison.Ordinal) ? "+3.70E+00\r\n" : "");
                }
            }
        }, TestContext.Current.CancellationToken);
        await ear.Until(3);
        Volatile.Write(ref stop, true);
        await ear.Until(ear.Lines().Length + 1);
        await answering;
        Assert.All(ear.Lines(), line => Assert.Equal(3.7, line.Readouts[0].Value));
        Assert.Contains("CR LF, remote mode set", ear.Notes(), StringComparison.Ordinal);
    }

    [Fact(Skip = PseudoTerminal.Need, SkipUnless = nameof(PseudoTerminal.Here), SkipType = typeof(PseudoTerminal))]
    public async Task A_wrong_speed_is_guessed_from_bytes_that_are_no_text()
    {
        using var port = new PseudoTerminal();
        await using var ear = new Ear(1, Plan(port, "@9600"));
        await Open(ear);
        port.Say([.. Enumerable.Range(0, 600).Select(i => (byte)(0x80 + (i * 7 % 97)))]);
        await ear.Until(ear => ear.Notes().Contains("Is 9600 its speed?", StringComparison.Ordinal));
    }

    [Fact(Skip = PseudoTerminal.Need, SkipUnless = nameof(PseudoTerminal.Here), SkipType = typeof(PseudoTerminal))]
    public async Task Silence_is_told_once_and_its_end_too()
    {
        using var port = new PseudoTerminal();
        await using var ear = new Ear(20, Plan(port));
        await ear.Until(ear => ear.Notes().Contains("Nothing came for", StringComparison.Ordinal));
        Say(port, 1, 2, 3);
        await ear.Until(3);
        Assert.Contains("It speaks again.", ear.Notes(), StringComparison.Ordinal);
    }

    private static void Say(PseudoTerminal port, params int[] values)
    {
        foreach (int value in values)
        {
            port.Say(string.Create(CultureInfo.InvariantCulture, $"{value}.0\r\n"));
        }
    }

    private static async Task Open(Ear ear)
    {
        await ear.Until(ear => ear.Notes().Contains("Open", StringComparison.Ordinal));
        await Task.Delay(100, TestContext.Current.CancellationToken);
    }
}

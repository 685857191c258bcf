using System.Globalization;
using Heatwright.Instruments;

namespace Heatwright.Tests.Instruments;

/// <summary>A network instrument that misbehaves in one way a test. Answers are made up; waits run four times as fast as in life.</summary>
public sealed class ScpiServerTests
{
    private const double Hurry = 4;

    [Fact]
    public async Task A_well_behaved_instrument_is_read_and_named()
    {
        await using var server = new UnrulyServer();
        await using var ear = new Ear(Hurry, Plan(server));
        await ear.Until(3);
        Assert.Equal([1.25, 2.25, 3.25], Values(ear).Take(3));
        Assert.Equal(("volts", "V"), (ear.Lines()[0].Readouts[0].Name, ear.Lines()[0].Readouts[0].Unit!.Symbol));
        Assert.Contains("Bench,7,1,0.1", ear.Notes(), StringComparison.Ordinal);
        Assert.Empty(ear.Unread());
    }

    [Theory, InlineData("\r\n", "\n"), InlineData("\r\n", "\r\n"), InlineData("\r", "\r"), InlineData("\n", "\r\n"), InlineData("\n", "")]
    public async Task Any_line_end_is_found(string wants, string ends)
    {
        await using var server = new UnrulyServer { Wants = wants, Ends = ends };
        await using var ear = new Ear(Hurry, Plan(server));
        await ear.Until(2);
        // Each measurement is given on once, in order.
        double[] values = Values(ear);
        Assert.Equal(values[0] + 1, values[1]);
        Assert.Empty(ear.Unread());
    }

    [Fact]
    public async Task One_that_needs_remote_mode_gets_it()
    {
        await using var server = new UnrulyServer { Needs = "SYST:REM" };
        await using var ear = new Ear(Hurry * 2, Plan(server));
        await ear.Until(2);
        Assert.Contains("remote mode", ear.Notes(), StringComparison.Ordinal);
        Assert.Contains("SYST:REM", server.Asked());
    }

    [Fact]
    public async Task Prompts_and_echoes_are_no_readings()
    {
        await using var server = new UnrulyServer { Prompt = "SCPI> ", Ends = "\r\n", Echoes = true, Greeting = "Welcome to channel 5.\r\n"u8.ToArray() };
        await using var ear = new Ear(Hurry, Plan(server));
        await ear.Until(3);
        Assert.Equal([1.25, 2.25, 3.25], Values(ear).Take(3));
        Assert.Empty(ear.Unread());
    }

    [Fact]
    public async Task A_terminal_service_that_negotiates_is_declined_and_read()
    {
        // RFC 854: WILL ECHO (255 251 1), DO TERMINAL TYPE (255 253 24).
        await using var server = new UnrulyServer { Greeting = [255, 251, 1, 255, 253, 24], Prompt = "> " };
        await using var ear = new Ear(Hurry, Plan(server));
        await ear.Until(2);
        Assert.Empty(ear.Unread());
    }

    [Fact]
    public async Task Answers_in_single_bytes_are_whole_readings()
    {
        await using var server = new UnrulyServer { SplitMs = 5, Measures = n => string.Create(CultureInfo.InvariantCulture, $"-1{n}.5E-01") };
        await using var ear = new Ear(1, Plan(server) with { EveryS = 0.05 });
        await ear.Until(3);
        Assert.All(Values(ear).Take(3), value => Assert.Contains(value, (double[])[-1.05, -1.15, -1.25, -1.35, -1.45]));
        Assert.Empty(ear.Unread());
    }

    [Fact]
    public async Task A_slow_one_is_waited_for()
    {
        // 0.4 s of real time are 0.8 s here: longer than the pace that was asked for, and well under the patience of two seconds on a busy machine too.
        await using var server = new UnrulyServer { SlowMs = 400 };
        await using var ear = new Ear(2, Plan(server) with { EveryS = 0.1 });
        await ear.Until(2);
        Assert.Equal(Values(ear)[0] + 1, Values(ear)[1]);
    }

    // Longer than any patience is, on a busy machine too, in parts of the four seconds that a question and the wait behind it take: one that counts on luck is found out by one of them.
    [Theory, InlineData(2700, false), InlineData(3500, false), InlineData(2700, true)]
    public async Task A_late_answer_is_not_taken_for_the_next_question(int lateMs, bool nameless)
    {
        // Every third answer comes late: it is lost, and the next one still belongs to its own question.
        await using var server = new UnrulyServer { Nameless = nameless, Measures = n => { Thread.Sleep(n % 3 == 2 ? lateMs : 0); return string.Create(CultureInfo.InvariantCulture, $"{n}"); } };
        await using var ear = new Ear(Hurry, Plan(server) with { EveryS = 0.2 });
        await ear.Until(4);
        double[] values = Values(ear);
        Assert.Equal(values.Order().Distinct(), values);
        Assert.DoesNotContain(2.0, values);
        Assert.Contains("No answer", ear.Notes(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Overload_codes_are_overload_and_never_a_number()
    {
        string[] answers = ["9.9E37", "+9.90000000E+37", "-9.9E+37", "9.91E37", "+1.5E+00"];
        await using var server = new UnrulyServer { Measures = n => answers[n % answers.Length] };
        await using var ear = new Ear(Hurry, Plan(server) with { EveryS = 0.1 });
        await ear.Until(10);
        foreach (var readout in ear.Lines().Select(line => line.Readouts[0]))
        {
            var expected = readout.Raw switch { "+1.5E+00" => ReadoutKind.Number, "9.91E37" => ReadoutKind.Missing, _ => ReadoutKind.Overload };
            Assert.Equal(expected, readout.Kind);
            Assert.Equal(expected == ReadoutKind.Number ? 1.5 : double.NaN, readout.Value);
        }
    }

    [Fact]
    public async Task Garbage_is_shown_and_not_taken_for_a_reading()
    {
        await using var server = new UnrulyServer { Measures = n => n % 2 == 1 ? "\u0081\u00fe~~#" : "0.5" };
        await using var ear = new Ear(Hurry, Plan(server) with { EveryS = 0.1 });
        await ear.Until(ear => ear.Lines().Length >= 3 && ear.Unread().Length >= 3);
        Assert.All(Values(ear), value => Assert.Equal(0.5, value));
    }

    [Fact]
    public async Task Silence_is_told_with_what_was_tried()
    {
        await using var server = new UnrulyServer { Wants = "never" };
        await using var ear = new Ear(Hurry * 4, Plan(server));
        await ear.Until(ear => ear.Notes().Contains("No answer to *IDN? nor to MEAS:VOLT:DC?", StringComparison.Ordinal));
        Assert.Empty(ear.Lines());
    }

    [Fact]
    public async Task A_second_client_is_told_that_another_may_be_connected()
    {
        await using var server = new UnrulyServer { One = true };
        await using var first = new Ear(Hurry, Plan(server));
        await first.Until(1);
        await using var second = new Ear(Hurry, Plan(server));
        await second.Until(ear => ear.Notes().Contains("Is another program connected?", StringComparison.Ordinal));
        Assert.Empty(second.Lines());
    }

    [Fact]
    public async Task One_that_hangs_up_is_found_again()
    {
        await using var server = new UnrulyServer { HangsUpAfter = 3 };
        await using var ear = new Ear(Hurry, Plan(server) with { EveryS = 0.1 });
        await ear.Until(5);
        Assert.Contains("Lost", ear.Notes(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_that_does_not_know_its_name_still_measures()
    {
        await using var server = new UnrulyServer { Nameless = true };
        await using var ear = new Ear(Hurry, Plan(server));
        await ear.Until(2);
        Assert.Empty(ear.Unread());
    }

    [Fact]
    public async Task Without_a_question_a_silent_one_is_asked_READ()
    {
        await using var server = new UnrulyServer();
        await using var ear = new Ear(Hurry, Ear.Plan("meter=" + server.Address));
        await ear.Until(2);
        Assert.Contains("READ?", server.Asked());
        Assert.Equal("meter", ear.Lines()[0].Source);
    }

    [Fact]
    public async Task A_bridge_that_sends_lines_by_itself_is_only_listened_to()
    {
        await using var server = new UnrulyServer { Greeting = "tip:231.5,set:240\ntip:232.5,set:240\ntip:233.5,set:240\ntip:234.5,set:240\n"u8.ToArray() };
        await using var ear = new Ear(Hurry, Ear.Plan(server.Address));
        await ear.Until(3);
        await Task.Delay(500, TestContext.Current.CancellationToken);
        Assert.Empty(server.Asked());
    }

    [Fact]
    public async Task Nobody_at_the_address_is_told_once_and_tried_again()
    {
        string address;
        await using (var gone = new UnrulyServer())
        {
            address = gone.Address;
        }

        await using var ear = new Ear(Hurry * 4, Ear.Plan(address));
        await ear.Until(ear => ear.Notes().Contains("Refused", StringComparison.Ordinal));
        await Task.Delay(500, TestContext.Current.CancellationToken);
        Assert.Single(ear.All());
    }

    private static SourcePlan Plan(UnrulyServer server) => Ear.Plan(server.Address) with { Ask = "MEAS:VOLT:DC?", EveryS = 0.3 };

    private static double[] Values(Ear ear) => [.. ear.Lines().Select(line => line.Readouts[0].Value)];
}

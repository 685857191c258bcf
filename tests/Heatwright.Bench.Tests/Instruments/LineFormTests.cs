using System.Globalization;
using Heatwright.Instruments;
using Heatwright.Logs;

namespace Heatwright.Tests.Instruments;

/// <summary>The form of lines is found from the lines. What each line must mean was written down by hand.</summary>
public sealed class LineFormTests
{
    [Theory]
    [InlineData("231.5|232.5|233.5", "reading=231.5|reading=232.5|reading=233.5")]
    [InlineData("231,05|232,5|233,25", "reading=231.05|reading=232.5|reading=233.25")]
    [InlineData("231.5,240|232.5,240|233.5,240", "column 1=231.5 column 2=240|column 1=232.5 column 2=240|column 1=233.5 column 2=240")]
    [InlineData("231.5 3.9|232.5 3.8|OL 3.7", "column 1=231.5 column 2=3.9|column 1=232.5 column 2=3.8|column 1=Overload column 2=3.7")]
    [InlineData("231,5;3,9|232,5;3,8|--.--;3,7", "column 1=231.5 column 2=3.9|column 1=232.5 column 2=3.8|column 1=Missing column 2=3.7")]
    [InlineData("tip:231.5,set:240|tip:232.5,set:240|tip:OL,set:240", "tip=231.5 set=240|tip=232.5 set=240|tip=Overload set=240")]
    [InlineData("tip=231.5 bat_mV=3900|tip=232.5 bat_mV=3890|tip=232.5", "tip=231.5 bat=3900 mV|tip=232.5 bat=3890 mV|tip=232.5")]
    [InlineData("tip\tbat|231.5\t3.9|232.5\t3.8", "!tip\tbat|tip=231.5 bat=3.9|tip=232.5 bat=3.8")]
    [InlineData("23:24:14.141 -> 231.5|23:24:14.341 -> 232.5|23:24:14.541 -> 233.5", "reading=231.5|reading=232.5|reading=233.5")]
    [InlineData("23:24:14.141 -> tip:231.5 set:240|23:24:14.341 -> tip:232.5 set:240|23:24:14.541 -> tip:233.5 set:240", "tip=231.5 set=240|tip=232.5 set=240|tip=233.5 set=240")]
    [InlineData("3.912 V|0.998 V|950 mV", "reading=3.912 V|reading=0.998 V|reading=0.95 V")]
    [InlineData("9.9E37|+1.5E+00|+1.6E+00", "reading=Overload|reading=1.5|reading=1.6")]
    [InlineData("start|cal ok|231.5|232.5|233.5", "!start|!cal ok|reading=231.5|reading=232.5|reading=233.5")]
    [InlineData("231.5|232.5|low battery!|233.5|234.5", "reading=231.5|reading=232.5|!low battery!|reading=233.5|reading=234.5")]
    public void Lines_mean_what_a_maker_sees_in_them(string lines, string meaning) => Assert.Equal(meaning, string.Join('|', Hear(lines.Split('|')).Select(Spoken)));

    [Fact]
    public void A_board_that_changes_its_lines_is_understood_anew_and_none_is_lost()
    {
        string[] lines = [.. Enumerable.Range(0, 10).Select(i => $"{i}.5"), .. Enumerable.Range(0, 10).Select(i => $"tip:{i}.5 set:240")];
        var heard = Hear(lines).ToList();
        Assert.Equal(20, heard.Count);
        Assert.All(heard, one => Assert.IsType<Heard.Line>(one));
        Assert.Equal(Enumerable.Range(0, 20).Select(i => (i % 10) + 0.5), heard.Select(one => ((Heard.Line)one).Readouts[0].Value));
    }

    [Fact]
    public void A_comma_that_can_be_read_in_two_ways_is_asked_and_the_answer_is_kept()
    {
        string[] lines = [.. Enumerable.Range(0, 12).Select(i => string.Create(CultureInfo.InvariantCulture, $"{231 + i},240"))];
        var asked = Run(lines, null);
        Assert.Empty(asked.OfType<Heard.Line>());
        Assert.Single(asked.OfType<Heard.Note>(), note => note.State == LinkState.Question);
        Assert.Equal(12, asked.OfType<Heard.Unread>().Count());
        Assert.Equal(231.24, Run(lines, new() { CommaSeparates = false, DecimalMark = ',' }).OfType<Heard.Line>().First().Readouts[0].Value);
        Assert.Equal(240, Run(lines, new() { CommaSeparates = true }).OfType<Heard.Line>().First().Readouts[1].Value);
    }

    [Fact]
    public void A_slow_instrument_is_understood_from_one_line()
    {
        var reader = new LineReader("a", null);
        var heard = new List<Heard>();
        reader.Take(new(10, "tip:231.5", true), heard);
        reader.Pause(10.5, heard);
        Assert.Empty(heard);
        reader.Pause(12, heard);
        Assert.Equal((10.0, 231.5), (heard.OfType<Heard.Line>().Single().AtS, heard.OfType<Heard.Line>().Single().Readouts[0].Value));
    }

    [Theory]
    [InlineData("MEAS:VOLT:DC?", "+1.23456700E+00", "volts=1.234567 V"), InlineData("MEAS:VOLT:DC?", "1.5 mV", "volts=1.5 mV"), InlineData("READ?", "-5", "READ?=-5")]
    [InlineData("FETC?", "1.5,2.5,9.9E37", "FETC? 1=1.5 FETC? 2=2.5 FETC? 3=Overload"), InlineData("MEAS:VOLT?;:MEAS:CURR?", "3.7;0.5", "volts=3.7 V amps=0.5 A")]
    [InlineData("READ?", "-113,\"Undefined header\"", "-"), InlineData("READ?", "Bench,7,1,0.1", "-"), InlineData("READ?", "garbage", "-"), InlineData("READ?", "", "-")]
    public void Answers_are_read_by_their_question(string question, string answer, string meaning) =>
        Assert.Equal(meaning, ScpiAnswer.Read(question, answer) is { } readouts ? string.Join(' ', readouts.Select(Spoken)) : "-");
    [Fact]
    public void After_a_long_rubbish_the_readings_are_found_and_every_line_is_told_once()
    {
        string[] rubbish = [.. Enumerable.Range(0, 700).Select(i => (i % 3) switch { 0 => "}{", 1 => "~~ boot", _ => "x;;y" })];
        string[] lines = [.. rubbish, .. Enumerable.Range(0, 450).Select(i => string.Create(CultureInfo.InvariantCulture, $"tip:{i}.5 set:240"))];
        var heard = Hear(lines).ToList();
        Assert.Equal(lines.Length, heard.Count);
        // What comes while the rubbish still fills the two hundred lines that are looked at together may be lost for the table, no more.
        Assert.InRange(heard.OfType<Heard.Line>().Count(line => line.Readouts[0].Name == "tip"), 250, 450);
    }

    [Theory]
    [InlineData("SCPI> +1.5", "+1.5"), InlineData("> > +1.5", "+1.5"), InlineData("+1.5", "+1.5"), InlineData("SCPI> ", "")]
    public void Prompts_are_taken_off(string line, string bare) => Assert.Equal(bare, ScpiAnswer.WithoutPrompt(line));

    private static IEnumerable<Heard> Hear(string[] lines) => Run(lines, null).Where(one => one is not Heard.Note);

    private static List<Heard> Run(string[] lines, LogMapping? answers)
    {
        var reader = new LineReader("a", answers);
        var heard = new List<Heard>();
        for (int i = 0; i < lines.Length; i++)
        {
            reader.Take(new(i, lines[i], true), heard);
        }

        reader.End(lines.Length, heard);
        return heard;
    }

    private static string Spoken(Heard heard) => heard switch
    {
        Heard.Line line => string.Join(' ', line.Readouts.Select(Spoken)),
        Heard.Unread line => "!" + line.Text,
        _ => "",
    };

    private static string Spoken(Readout readout) => string.Create(CultureInfo.InvariantCulture,
        $"{readout.Name}={(readout.Kind == ReadoutKind.Number ? readout.Value : readout.Kind)}{(readout is { Kind: ReadoutKind.Number, Unit: { } unit } ? " " + unit.Symbol : "")}");
}

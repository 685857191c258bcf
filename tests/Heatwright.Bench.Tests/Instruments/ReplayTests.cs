using Heatwright.Instruments;

namespace Heatwright.Tests.Instruments;

/// <summary>Recorded frames as instruments. The frames are made up.</summary>
public sealed class ReplayTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("replay-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task Frames_come_again_with_their_pauses_and_lines_cut_over_frames_are_whole()
    {
        string file = Write("0.100 < tip:231.5\\r", "0.200 < \\ntip:23", "0.300 < 2.5\\r\\ntip:233.5\\r\\n");
        await using var ear = new Ear(1, Ear.Plan("replay:" + file));
        await ear.End();
        Assert.Equal([231.5, 232.5, 233.5], ear.Lines().Select(line => line.Readouts[0].Value));
        Assert.All(ear.Lines().Zip([0.1, 0.3, 0.3]), pair => Assert.InRange(pair.First.AtS, pair.Second - 0.001, pair.Second + 0.5));
        Assert.Equal(LinkState.Ended, ear.All().OfType<Heard.Note>().Last().State);
    }

    [Fact]
    public async Task The_board_that_runs_the_bench_code_of_a_build_sheet_is_read_without_any_setting()
    {
        // Line by line what bench.c prints: a heading, then milliseconds, counts, duty and supply counts.
        string file = Write(["0.05 < ms,counts,duty,supply\\r\\n", .. Enumerable.Range(1, 12).Select(i => FormattableString.Invariant($"{0.05 + (0.02 * i):0.00} < {100 * i},{100 + (7 * i)},512,777\\r\\n"))]);
        await using var ear = new Ear(1, Ear.Plan("board=replay:" + file));
        await ear.End();
        Assert.Equal(12, ear.Lines().Length);
        Assert.All(ear.Lines().Select((line, i) => (line, i)), pair => Assert.Equal(["counts", "duty", "supply"], pair.line.Readouts.Select(one => one.Name).TakeLast(3)));
        Assert.Equal(Enumerable.Range(1, 12).Select(i => 100.0 + (7 * i)), ear.Lines().Select(line => line.Readouts.Single(one => one.Name == "counts").Value));
    }

    [Fact]
    public async Task Recorded_questions_are_waited_for()
    {
        string file = Write("0.0 > *IDN?\\n", "0.1 < Bench,9,1,0\\n", "0.2 > READ?\\n", "0.3 < +1.5E+00\\n", "0.4 > READ?\\n", "0.5 < +2.5E+00\\n", "0.6 > READ?\\n", "0.7 < 9.9E37\\n");
        await using var ear = new Ear(2, Ear.Plan("replay:" + file) with { Ask = "READ?", EveryS = 0.2 });
        await ear.End();
        Assert.Equal([1.5, 2.5, double.NaN], ear.Lines().Select(line => line.Readouts[0].Value));
        Assert.Equal(ReadoutKind.Overload, ear.Lines()[2].Readouts[0].Kind);
    }

    [Fact]
    public async Task What_was_recorded_replays_as_it_was_heard()
    {
        string frames = Path.Combine(folder, "live.frames");
        string[] live;
        await using (var server = new UnrulyServer { Greeting = "a:1.5,b:OL\na:2.5,b:3\na:3.5\n\u00a7\u0001a:7.5\na:4.5,b:3"u8.ToArray() })
        await using (var ear = new Ear(1, Ear.Plan("x=" + server.Address) with { Frames = frames }))
        {
            await ear.Until(ear => ear.Unread().Length == 2);
            await ear.DisposeAsync();
            live = [.. ear.All().Where(one => one is not Heard.Note).Select(Spoken)];
        }

        await using var again = new Ear(1, Ear.Plan("x=replay:" + frames));
        await again.End();
        string[] replayed = [.. again.All().Where(one => one is not Heard.Note).Select(Spoken)];
        // Live, the first line came at once and might have been cut short; the record proves that it begins where the connection does.
        Assert.Equal(["Unread a:1.5,b:OL", "Line a Number 2.5, b Number 3", "Line a Number 3.5", "Unread \u00a7a:7.5"], live);
        Assert.Equal(["Line a Number 1.5, b Overload NaN", "Line a Number 2.5, b Number 3", "Line a Number 3.5", "Unread \u00a7a:7.5", "Unread a:4.5,b:3"], replayed);
    }

    [Fact]
    public async Task Several_instruments_stand_on_one_clock()
    {
        string one = Write("0.05 < 1\\n", "0.25 < 3\\n", "0.45 < 5\\n"), other = Write("0.15 < v:2\\n", "0.35 < v:4\\n", "0.55 < v:6\\n");
        await using var ear = new Ear(1, Ear.Plan("p=replay:" + one), Ear.Plan("q=replay:" + other));
        await ear.End();
        var heard = ear.Lines().OrderBy(line => line.Readouts[0].Value).ToArray();
        Assert.Equal([1, 2, 3, 4, 5, 6], heard.Select(line => line.Readouts[0].Value));

        // Line n was sent at 0.1 n - 0.05 s. A busy machine hears it late, never early; a clock of an instrument's own would be off by far more.
        Assert.All(heard.Select((line, i) => line.AtS - ((0.1 * i) + 0.05)), late => Assert.InRange(late, -0.01, 20));
    }

    [Theory]
    [InlineData("1.0 <5"), InlineData("1,0 < 5"), InlineData("-1.0 < 5"), InlineData("NaN < 5"), InlineData("1.0 < \\q"), InlineData("1.0 < \\x4"), InlineData("1.0 < \u00e9"), InlineData("words")]
    public async Task A_line_that_is_no_frame_is_told_with_its_number(string line)
    {
        await using var ear = new Ear(1, Ear.Plan("replay:" + Write("0.5 < 1\\n", line)));
        await ear.End();
        Assert.Contains("Line 3 of the frames", ear.Notes(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_of_something_else_is_told()
    {
        string file = Path.Combine(folder, "other");
        await File.WriteAllTextAsync(file, "t,U\n0,1\n", TestContext.Current.CancellationToken);
        await using var ear = new Ear(1, Ear.Plan("replay:" + file));
        await ear.End();
        Assert.Contains("Line 1 of the frames", ear.Notes(), StringComparison.Ordinal);
    }

    private string Write(params string[] frames)
    {
        string file = Path.Combine(folder, $"{Guid.NewGuid():N}.frames");
        File.WriteAllLines(file, ["heatwright frames 1", .. frames]);
        return file;
    }

    private static string Spoken(Heard heard) => heard switch
    {
        Heard.Line line => "Line " + string.Join(", ", line.Readouts.Select(readout => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{readout.Name} {readout.Kind} {readout.Value}"))),
        Heard.Unread line => "Unread " + line.Text,
        _ => "",
    };
}

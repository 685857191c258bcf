using CsCheck;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.Tests.StudyFile;

/// <summary>A study goes into the post as one file; a damaged one gives what can still be read.</summary>
public class PackAndRescueTests
{
    private const int PageBytes = 4096;

    [Fact]
    public void A_packed_study_is_one_file_without_a_log_and_opens_again()
    {
        using var desk = new Desk();
        var book = StudyBook.Create(desk.At("a.study"), Large, SetClock.Noon).Value;
        book.Write("less", book.Read() with { Trials = Studies.Band.Trials });
        Assert.True(File.Exists(desk.At("a.study-wal")));
        var packed = book.Pack();
        Assert.Empty(packed.Problems);
        Assert.Equal(["a.study"], Directory.GetFiles(desk.Folder).Select(Path.GetFileName));
        byte[] bytes = File.ReadAllBytes(desk.At("a.study"));
        Assert.Equal(bytes.Length, packed.Value);
        // https://www.sqlite.org/fileformat.html section 1.3: 1 and 1 are the journal that needs no second file.
        Assert.Equal((1, 1), (bytes[18], bytes[19]));
        using var again = StudyBook.Open(desk.At("a.study"), readOnly: false).Value;
        Assert.Equal("less", again.Undo().Value!.What);
        Assert.Equal(3000, again.Read().Trials[0].Runs[0].Readings.Count);
    }

    [Fact]
    public void A_study_that_another_window_has_open_is_not_packed_and_loses_nothing()
    {
        using var desk = new Desk();
        var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        using var other = StudyBook.Open(desk.At("a.study"), readOnly: false).Value;
        other.Write("note", other.Read() with { Note = "theirs" });
        Assert.Equal(OpenFault.Locked, Assert.IsType<OpenProblem>(Assert.Single(book.Pack().Problems)).Fault);
        Assert.Equal("theirs", other.Read().Note);
    }

    [Theory]
    [InlineData(1), InlineData(2), InlineData(3)]
    public void A_file_scribbled_on_in_the_middle_gives_most_of_its_readings(int seed)
    {
        using var desk = new Desk();
        Made(desk, "a.study");
        byte[] bytes = File.ReadAllBytes(desk.At("a.study"));
        // Three pages of leaves somewhere behind the first tenth, where the roots of the tables lie.
        var random = new Random(seed);
        for (int i = 0; i < 3; i++)
        {
            bytes.AsSpan(random.Next(bytes.Length / PageBytes / 10, bytes.Length / PageBytes) * PageBytes, PageBytes).Fill(0xAA);
        }
        File.WriteAllBytes(desk.At("a.study"), bytes);
        string before = desk.Listing();
        Assert.Equal(OpenFault.Damaged, Assert.IsType<OpenProblem>(StudyBook.Open(desk.At("a.study"), readOnly: true).Problems[0]).Fault);
        var rescued = StudyRescue.Read(desk.At("a.study"));
        Assert.Empty(rescued.Problems);
        Assert.Equal(before, desk.Listing());
        var readings = rescued.Value.Study.Trials.SelectMany(trial => trial.Runs).SelectMany(run => run.Readings).ToArray();
        int kept = readings.Count(reading => reading.StruckBecause is null && reading.Raw[0].StartsWith("6.", StringComparison.Ordinal));
        Assert.InRange(kept, 2500, 3000);
        Assert.All(readings.Where(reading => reading.StruckBecause is null), reading => Assert.Equal(Text(reading.Number), reading.Raw[0]));
        // What was put together is a study like any other.
        StudyBook.Create(desk.At("rescued.study"), rescued.Value.Study, SetClock.Noon).Value.Dispose();
    }

    [Fact]
    public void A_file_cut_short_gives_what_its_first_part_holds()
    {
        using var desk = new Desk();
        Made(desk, "a.study");
        byte[] bytes = File.ReadAllBytes(desk.At("a.study"));
        File.WriteAllBytes(desk.At("a.study"), bytes[..(bytes.Length * 3 / 5)]);
        var rescued = StudyRescue.Read(desk.At("a.study"));
        Assert.Empty(rescued.Problems);
        // Records lie in the order of their kinds: the head of the study comes late and is cut off, the parts come before.
        Assert.StartsWith("The name and note", rescued.Value.Lost[0], StringComparison.Ordinal);
        Assert.Equal("a", rescued.Value.Study.Name);
        Assert.Contains(rescued.Value.Study.Parts, part => part.Id.Name == "cell");
    }

    [Fact]
    public void A_record_that_is_gone_is_taken_from_the_history()
    {
        using var desk = new Desk();
        StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value.Dispose();
        using (var raw = Raw.Open(desk.At("a.study")))
        {
            Raw.Run(raw, "DELETE FROM record WHERE kind = 'part' AND id = 'band'; UPDATE record SET body = '{' WHERE kind = 'brief'");
        }
        var rescued = StudyRescue.Read(desk.At("a.study")).Value;
        Assert.Contains(rescued.Study.Parts, part => part.Id.Name == "band");
        Assert.Single(rescued.Study.Arrangements);
        Assert.Contains(rescued.Lost, line => line.StartsWith("brief", StringComparison.Ordinal));
        Assert.Contains(rescued.Lost, line => line.StartsWith("1 records were taken from the history", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_a_file_that_is_whole_a_rescue_loses_nothing() => Studies.Any.Sample(LosesNothing, iter: 15);

    /// <summary>What the random studies have none of: a test done by a card, a decision with a prototype's reading, a tool that exists, own things.</summary>
    [Fact]
    public void A_rescue_keeps_decisions_readings_of_the_prototype_tools_and_tests_done_by_a_card()
    {
        var brief = Studies.Band.Brief!;
        LosesNothing(Studies.Band with
        {
            Trials = [.. Studies.Band.Trials, new(new("four"), TrialKind.Bench, new("band"), [new(new("four-1"), [new("volts", "V", "meter"), new("amps", "A", "")], [new(1, ["1,36", "0.2"])])]) { Card = "four-wire-ohms" }],
            Decisions = [new("d1", "2026-11-27", "s", new("two"), "two in series", VerdictWord.GoIf, "it is there", "", [], [new(new("two"), "other", VerdictWord.NoGo, "cold")], [], [], [], [], brief)],
            PrototypeReadings = [new("r1", "d1", "2026-11-28", "ready", 250, 5, "s")],
            Tools = [new("old", "T", "old band", [new("power", 3, "W", 0.1, "meter")])],
            Own = new() { Currency = "EUR" },
        });
    }

    private static void LosesNothing(Study study)
    {
        using var desk = new Desk();
        string before;
        using (var book = StudyBook.Create(desk.At("a.study"), study, SetClock.Noon).Value)
        {
            before = book.Fingerprint;
        }

        var rescued = StudyRescue.Read(desk.At("a.study")).Value;
        Assert.Empty(rescued.Lost);
        using var again = StudyBook.Create(desk.At("b.study"), rescued.Study, SetClock.Noon).Value;
        Assert.Equal(before, again.Fingerprint);
    }

    [Fact]
    public void An_examination_counts_what_is_there_and_changes_nothing()
    {
        using var desk = new Desk();
        using (var book = StudyBook.Create(desk.At("a.study"), Studies.Band with { Files = [KeptFile.Of("p.txt", "p.txt", KeptAbout.Study, "", "", "12345"u8.ToArray())] }, SetClock.Noon).Value)
        {
            book.Write("note", book.Read() with { Note = "x" });
        }
        string before = desk.Listing();
        var examined = StudyExamination.Of(desk.At("a.study")).Value;
        Assert.Equal(before, desk.Listing());
        Assert.True(examined.IsWhole);
        // Counted by hand in the study of the band: 9 parts, 2 trials, 1 run with 3 readings in one block.
        Assert.Equal((9, 2, 1, 1, 1), (examined.Records["part"], examined.Records["trial"], examined.Records["run"], examined.Records["readings"], examined.Records["file"]));
        Assert.Equal((2, 2, 1, 5L, 0), (examined.Format, examined.Changes, examined.Kept, examined.KeptBytes, examined.Beside.Count));
        File.WriteAllText(desk.At("b.study"), "text");
        Assert.Equal(OpenFault.NotSqlite, Assert.IsType<OpenProblem>(Assert.Single(StudyExamination.Of(desk.At("b.study")).Problems)).Fault);
    }

    private static Study Large => StudyBookTests.With(Studies.Band, Studies.Band.Trials[0].Runs[0] with { Readings = [.. Enumerable.Range(1, 3000).Select(number => new Reading(number, [Text(number)]))] });

    private static void Made(Desk desk, string name) => StudyBook.Create(desk.At(name), Large, SetClock.Noon).Value.Dispose();

    private static string Text(int number) => $"6.{number.ToString(System.Globalization.CultureInfo.InvariantCulture)}";
}

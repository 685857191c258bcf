using System.Diagnostics;
using System.Globalization;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Tests.StudyFile;

public class TwoWindowsTests
{
    [Fact]
    public void A_second_window_sees_what_the_first_one_wrote()
    {
        using var desk = new Desk();
        using var first = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        using var second = StudyBook.Open(desk.At("a.study"), readOnly: false).Value;
        using var reader = StudyBook.Open(desk.At("a.study"), readOnly: true).Value;
        first.Write("note", Studies.Band with { Note = "new" });
        Assert.Equal("new", second.Read().Note);
        Assert.Equal("new", reader.Read().Note);
        Assert.Equal(first.Fingerprint, reader.Fingerprint);
        Assert.Equal("note", second.Undo().Value!.What);
        Assert.Equal(Studies.Band.Note, first.Read().Note);
    }

    [Fact]
    public async Task What_is_read_while_another_writes_bears_its_own_fingerprint()
    {
        using var desk = new Desk();
        using var writer = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        using var reader = StudyBook.Open(desk.At("a.study"), readOnly: true).Value;
        var (marks, wrong, reads) = (new Dictionary<string, string>(), new List<string>(), 0);
        var writing = Task.Run(() =>
        {
            for (int i = 0; i < 60; i++)
            {
                writer.Change("note", study => new Checked<Study>(study with { Note = $"{i}" }));
            }
        }, TestContext.Current.CancellationToken);
        for (; !writing.IsCompleted; reads++)
        {
            var (study, mark) = reader.ReadWithFingerprint();
            if (marks.TryGetValue(mark, out string? before) && before != study.Note)
            {
                wrong.Add($"{mark} stands for '{before}' and for '{study.Note}'");
            }

            marks[mark] = study.Note;
        }

        await writing;
        Assert.Empty(wrong);
        Assert.True(reads > 60, $"Only {reads} looks beside 60 changes.");
        Assert.Equal(reader.Fingerprint, reader.ReadWithFingerprint().Fingerprint);
    }

    [Fact]
    public void Two_windows_that_change_two_things_keep_both()
    {
        using var desk = new Desk();
        using var first = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        using var second = StudyBook.Open(desk.At("a.study"), readOnly: false).Value;
        var mine = first.Read();
        var theirs = second.Read();
        Assert.Empty(second.Write("brief", theirs with { Brief = theirs.Brief! with { AirC = -3 } }).Problems);
        mine = mine with { Note = "mine" };
        Assert.Empty(first.Write("note", mine).Problems);
        Assert.Empty(first.Write("note again", mine with { Note = "mine too" }).Problems);
        Assert.Equal((-3, "mine too"), (second.Read().Brief!.AirC, second.Read().Note));
    }

    [Fact]
    public void The_second_of_two_windows_that_change_one_thing_is_told_and_nothing_is_written()
    {
        using var desk = new Desk();
        using var first = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        using var second = StudyBook.Open(desk.At("a.study"), readOnly: false).Value;
        var mine = first.Read();
        second.Write("theirs", second.Read() with { Note = "theirs" });
        var problem = Assert.IsType<OpenProblem>(Assert.Single(first.Write("mine", mine with { Note = "mine" }).Problems));
        Assert.Equal((OpenFault.Overtaken, "study"), (problem.Fault, problem.Value));
        Assert.Equal("theirs", first.Read().Note);
        Assert.Empty(first.Write("mine", first.Read() with { Note = "mine" }).Problems);
    }

    [Fact]
    public void Two_changes_that_only_clash_together_are_not_joined()
    {
        using var desk = new Desk();
        var begun = Studies.Band with { Arrangements = [] };
        using var first = StudyBook.Create(desk.At("a.study"), begun, SetClock.Noon).Value;
        using var second = StudyBook.Open(desk.At("a.study"), readOnly: false).Value;
        var mine = first.Read();
        // Theirs points the trial of the module at the handle; mine renames the handle away by giving its record another id.
        var theirs = second.Read();
        Assert.Empty(second.Write("theirs", theirs with { Trials = [theirs.Trials[0], theirs.Trials[1] with { Part = new("tube") }] }).Problems);
        var clash = first.Write("mine", mine with { Parts = [.. mine.Parts.Where(part => part.Kind != PartKind.Handle)] }).Problems;
        Assert.Equal("the study with what another window wrote, trials[1].part", Assert.Single(clash).Where);
        Assert.Equal(9, second.Read().Parts.Count);
    }

    [Fact]
    public void Callers_that_share_a_book_do_not_lose_each_others_changes()
    {
        using var desk = new Desk();
        using var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        Parallel.For(0, 40, i => Assert.Empty(book.Change("part", study => new Checked<Study>(study with
        {
            Parts = [.. study.Parts, new(new($"extra {i.ToString(CultureInfo.InvariantCulture)}"), PartKind.Leads, "wire", [])],
        })).Problems));
        Assert.Equal(Studies.Band.Parts.Count + 40, book.Read().Parts.Count);
        Assert.Equal(41, book.History().Count);
    }

    [Fact]
    public void A_book_opened_for_reading_changes_nothing_and_leaves_nothing_behind()
    {
        using var desk = new Desk();
        StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value.Dispose();
        string before = desk.Listing();
        using (var book = StudyBook.Open(desk.At("a.study"), readOnly: true).Value)
        {
            book.Read();
            Assert.Equal(OpenFault.NoAccess, Assert.IsType<OpenProblem>(Assert.Single(book.Write("x", Studies.Band with { Note = "x" }).Problems)).Fault);
            Assert.Equal(OpenFault.NoAccess, Assert.IsType<OpenProblem>(Assert.Single(book.Undo().Problems)).Fault);
        }
        Assert.Equal(before, desk.Listing());
    }

    /// <summary>On Unix a process that closes any handle of a file drops its locks on it; another program would then clear away the log under the open book.</summary>
    [Fact]
    public void Opening_a_study_twice_in_one_program_keeps_the_locks_of_the_first()
    {
        Assert.SkipUnless(File.Exists("/proc/locks"), "needs /proc/locks: run on Linux");
        using var desk = new Desk();
        using var first = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        string inode = Inode(desk.At("a.study"));
        Assert.NotEmpty(Locks(inode));
        File.CreateSymbolicLink(desk.At("same.study"), desk.At("a.study"));
        StudyBook.Open(desk.At("a.study"), readOnly: true).Value.Dispose();
        StudyBook.Open(desk.At("same.study"), readOnly: false).Value.Dispose();
        Assert.Equal(OpenFault.Taken, Assert.IsType<OpenProblem>(StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Problems[0]).Fault);
        Assert.NotEmpty(Locks(inode));
    }

    private static string Inode(string path)
    {
        using var stat = Process.Start(new ProcessStartInfo("stat", ["-c", "%i", path]) { RedirectStandardOutput = true })!;
        return stat.StandardOutput.ReadToEnd().Trim();
    }

    private static string[] Locks(string inode) => [.. File.ReadAllLines("/proc/locks").Where(line => line.Contains($":{inode} ", StringComparison.Ordinal) && line.Contains("POSIX", StringComparison.Ordinal))];
}

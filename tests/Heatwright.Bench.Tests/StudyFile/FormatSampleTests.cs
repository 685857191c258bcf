using Heatwright.StudyFile;
using Microsoft.Data.Sqlite;

namespace Heatwright.Tests.StudyFile;

/// <summary>A file of each past format stays and opens for ever. It was made once and is never made again.</summary>
public class FormatSampleTests
{
    [Fact]
    public void The_sample_of_format_1_opens_with_its_content_and_its_history()
    {
        using var desk = new Desk();
        File.Copy(Repository.Reference("studies/format-1.study"), desk.At("a.study"));
        using var book = StudyBook.Open(desk.At("a.study"), readOnly: false).Value;
        // As it was made: begun with the band, a note written and taken back.
        Assert.Equal(Spelled.Out(Studies.Band), Spelled.Out(book.Read()));
        Assert.Equal([("Study begun", false), ("note", true)], book.History().Select(change => (change.What, change.Undone)));
        Assert.Equal("note", book.Redo().Value!.What);
        Assert.Equal("Written once.", book.Read().Note);
        Assert.Equal("note", book.Undo().Value!.What);
    }

    [Fact]
    public void A_sample_of_format_1_is_read_as_it_lies_and_becomes_format_2_when_it_is_opened_for_writing()
    {
        using var desk = new Desk();
        File.Copy(Repository.Reference("studies/format-1.study"), desk.At("a.study"));
        string before = desk.Listing();
        StudyBook.Open(desk.At("a.study"), readOnly: true).Value.Dispose();
        Assert.Equal(before, desk.Listing());
        using (var book = StudyBook.Open(desk.At("a.study"), readOnly: false).Value)
        {
            book.Write("photo", book.Read() with { Files = [KeptFile.Of("a.txt", "a.txt", KeptAbout.Study, "", "", "abc"u8.ToArray())] });
        }
        Assert.Equal(2, File.ReadAllBytes(desk.At("a.study"))[63]);
        using var again = StudyBook.Open(desk.At("a.study"), readOnly: true).Value;
        Assert.Equal("abc"u8.ToArray(), again.ReadWhole().Files[0].Content);
    }

    [Fact]
    public void The_sample_of_format_2_opens_with_its_kept_file_and_its_way_to_read_logs()
    {
        using var desk = new Desk();
        File.Copy(Repository.Reference("studies/format-2.study"), desk.At("a.study"));
        using var book = StudyBook.Open(desk.At("a.study"), readOnly: false).Value;
        var study = book.ReadWhole();
        Assert.Equal(Spelled.Out(Studies.Band), Spelled.Out(study with { Files = [], LogWays = [] }));
        Assert.Equal(("band.txt", "band notes.txt", KeptAbout.Part, "band", "kept"), (study.Files[0].Id, study.Files[0].Name, study.Files[0].About, study.Files[0].Subject, study.Files[0].Note));
        Assert.Equal("wire 0.25 mm\r\n"u8.ToArray(), study.Files[0].Content);
        Assert.Equal(("meter", "comma"), (study.LogWays[0].Instrument, study.LogWays[0].DecimalMark));
        Assert.Equal([("Study begun", false), ("note", true)], book.History().Select(change => (change.What, change.Undone)));
        Assert.Equal("Written once.", book.Redo().Map(_ => book.Read().Note).Value);
    }

    [Fact]
    public void Each_format_up_to_the_last_has_its_step_and_its_sample()
    {
        Assert.True(StudyTables.Steps.Length == StudyBook.Format);
        Assert.All(Enumerable.Range(1, StudyBook.Format), format => Assert.True(File.Exists(Repository.Reference($"studies/format-{format}.study"))));
    }

    [Fact]
    public void A_step_and_its_number_are_taken_together_or_not_at_all()
    {
        using var desk = new Desk();
        using var raw = Raw.Open(desk.At("x.db"));
        Assert.Throws<SqliteException>(() => StudyTables.Upgrade(raw, ["CREATE TABLE one (x)", "CREATE TABLE two (x); CREATE TABLE one (x)"]));
        Assert.Equal(1, StudyTables.Format(raw));
        Assert.Equal(["one"], Raw.Texts(desk.At("x.db"), "SELECT name FROM sqlite_schema"));
        StudyTables.Upgrade(raw, ["", "CREATE TABLE two (x)"]);
        Assert.Equal(2, StudyTables.Format(raw));
        Assert.Equal(["one", "two"], Raw.Texts(desk.At("x.db"), "SELECT name FROM sqlite_schema ORDER BY name"));
    }
}

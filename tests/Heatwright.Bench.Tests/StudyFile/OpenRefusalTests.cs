using Heatwright.StudyFile;
using Heatwright.Trials;
using Microsoft.Data.Sqlite;

namespace Heatwright.Tests.StudyFile;

public class OpenRefusalTests
{
    public static TheoryData<string, OpenFault> Refused => new()
    {
        { "missing", OpenFault.Missing }, { "folder", OpenFault.Folder }, { "empty", OpenFault.Empty }, { "text", OpenFault.NotSqlite }, { "short text", OpenFault.NotSqlite },
        { "other program", OpenFault.OtherProgram }, { "other program, log", OpenFault.OtherProgram }, { "newer", OpenFault.Newer }, { "format 0", OpenFault.Damaged },
        { "head only", OpenFault.Damaged }, { "cut short", OpenFault.Damaged }, { "scribbled on", OpenFault.Damaged }, { "a trigger", OpenFault.Damaged }, { "a table gone", OpenFault.Damaged },
        { "a record gone", OpenFault.Damaged }, { "a record no JSON", OpenFault.Damaged },
    };

    [Theory, MemberData(nameof(Refused))]
    public void A_file_that_is_not_a_whole_study_is_refused_and_not_touched(string kind, OpenFault fault)
    {
        using var desk = new Desk();
        string path = desk.At("a.study");
        Make(kind, path);
        string before = desk.Listing();
        foreach (bool readOnly in new[] { true, false })
        {
            var problem = Assert.IsType<OpenProblem>(Assert.Single(StudyBook.Open(path, readOnly).Problems));
            Assert.Equal((fault, path), (problem.Fault, problem.Where));
            Assert.Equal(2, OpenProblem.ExitCode);
            Assert.False(problem.What.Length == 0 || problem.Value.Length == 0 || problem.Limit.Length == 0 || problem.Next.Length == 0);
            Assert.Equal(before, desk.Listing());
        }
    }

    [Fact]
    public void A_study_cut_short_anywhere_is_refused_and_not_touched()
    {
        using var desk = new Desk();
        Make("whole", desk.At("whole.study"));
        byte[] whole = File.ReadAllBytes(desk.At("whole.study"));
        for (int length = 0; length < whole.Length; length += 4096 / 3)
        {
            File.WriteAllBytes(desk.At("a.study"), whole[..length]);
            string before = desk.Listing();
            Assert.IsType<OpenProblem>(Assert.Single(StudyBook.Open(desk.At("a.study"), readOnly: false).Problems));
            Assert.Equal(before, desk.Listing());
        }
    }

    [Fact]
    public void A_study_whose_records_contradict_each_other_is_told_with_all_its_problems()
    {
        using var desk = new Desk();
        Make("whole", desk.At("a.study"));
        using (var raw = Raw.Open(desk.At("a.study")))
        {
            Raw.Run(raw, """UPDATE record SET body = replace(body, '"unit":"V"', '"unit":"volt"') WHERE kind = 'instrument'""");
            Raw.Run(raw, """UPDATE record SET body = replace(body, '"capacity"', '"room"') WHERE kind = 'part'""");
        }
        Assert.Equal(["instruments[0].specs[0].unit", "parts[0].stated[0].quantity"], StudyBook.Open(desk.At("a.study"), readOnly: true).Problems.Select(problem => problem.Where.Split(", ")[^1]));
    }

    [Fact]
    public void A_study_file_is_never_created_over_something()
    {
        using var desk = new Desk();
        desk.Put("a.study", "mine");
        desk.Put("b.study-wal", "left over");
        Directory.CreateDirectory(desk.At("c.study"));
        string before = desk.Listing();
        Assert.All(["a.study", "b.study", "c.study"], name =>
            Assert.Equal(OpenFault.Taken, Assert.IsType<OpenProblem>(Assert.Single(StudyBook.Create(desk.At(name), Studies.Band, SetClock.Noon).Problems)).Fault));
        Assert.Equal(before, desk.Listing());
    }

    [Fact]
    public void A_study_is_created_beside_the_remains_of_a_broken_off_draft()
    {
        using var desk = new Desk();
        desk.Put("a.study.draft", "half");
        desk.Put("a.study.draft-journal", "half");
        using (var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value)
        {
            Assert.Equal(Spelled.Out(Studies.Band), Spelled.Out(book.Read()));
        }
        Assert.Equal(["a.study"], Directory.GetFiles(desk.Folder).Select(Path.GetFileName));
    }

    [Fact]
    public void A_study_that_contradicts_itself_is_not_created()
    {
        using var desk = new Desk();
        Assert.Equal("the study, name", Assert.Single(StudyBook.Create(desk.At("a.study"), Studies.Band with { Name = " " }, SetClock.Noon).Problems).Where);
        Assert.Equal("", desk.Listing());
    }

    [Fact]
    public void A_folder_that_takes_no_file_is_told()
    {
        using var desk = new Desk();
        // Below a file nobody can make a file, whatever their rights.
        desk.Put("file", "x");
        string before = desk.Listing();
        Assert.Equal(OpenFault.NoAccess, Assert.IsType<OpenProblem>(Assert.Single(StudyBook.Create(desk.At("file/a.study"), Studies.Band, SetClock.Noon).Problems)).Fault);
        var none = Assert.IsType<OpenProblem>(Assert.Single(StudyBook.Create(desk.At("none/a.study"), Studies.Band, SetClock.Noon).Problems));
        Assert.Equal((OpenFault.NoAccess, "The folder of the study file is not there.", desk.At("none")), (none.Fault, none.What, none.Value));
        Assert.Equal(before, desk.Listing());
    }

    [Fact]
    public void A_study_whose_log_cannot_be_written_is_read_but_not_opened_for_writing()
    {
        using var desk = new Desk();
        Make("whole", desk.At("a.study"));
        // Stands where the log would be: nobody can open it as a file, whatever their rights.
        Directory.CreateDirectory(desk.At("a.study-wal"));
        string before = desk.Listing();
        Assert.Equal(OpenFault.NoAccess, Assert.IsType<OpenProblem>(Assert.Single(StudyBook.Open(desk.At("a.study"), readOnly: false).Problems)).Fault);
        using (var book = StudyBook.Open(desk.At("a.study"), readOnly: true).Value)
        {
            Assert.Equal("lens-dew band", book.Read().Name);
        }
        Assert.Equal(before, desk.Listing());
    }

    [Fact]
    public void A_full_disk_is_told_as_one()
    {
        using var desk = new Desk();
        using var raw = Raw.Open(desk.At("x.db"));
        Raw.Run(raw, "CREATE TABLE t (x); PRAGMA max_page_count = 2");
        var full = Assert.Throws<SqliteException>(() => Raw.Run(raw, "INSERT INTO t VALUES (zeroblob(100000))"));
        Assert.True(SqliteFaults.IsExpected(full));
        Assert.Equal(OpenFault.Disk, SqliteFaults.Problem(full, "a.study").Fault);
    }

    [Fact]
    public void The_file_is_marked_as_a_study_of_format_2_and_keeps_a_log()
    {
        using var desk = new Desk();
        Make("whole", desk.At("a.study"));
        byte[] head = File.ReadAllBytes(desk.At("a.study"))[..100];
        // https://www.sqlite.org/fileformat.html section 1.3: 18 and 19 are 2 for a write-ahead log, 60 is user_version, 68 application_id; 'HtWr' in ASCII.
        Assert.Equal((2, 2), (head[18], head[19]));
        Assert.Equal([0, 0, 0, 2], head[60..64]);
        Assert.Equal("HtWr"u8.ToArray(), head[68..72]);
    }

    private static void Make(string kind, string path)
    {
        switch (kind)
        {
            case "missing":
                return;
            case "folder":
                Directory.CreateDirectory(path);
                return;
            case "empty":
                File.WriteAllText(path, "");
                return;
            case "text":
                File.WriteAllText(path, new string('x', 5000));
                return;
            case "short text":
                File.WriteAllText(path, "SQLite, not");
                return;
            case "other program" or "other program, log":
                using (var raw = Raw.Open(path))
                {
                    Raw.Run(raw, $"{(kind.EndsWith("log", StringComparison.Ordinal) ? "PRAGMA journal_mode = WAL;" : "")} CREATE TABLE record (x); PRAGMA user_version = 1");
                }
                return;
        }
        var run = Studies.Band.Trials[0].Runs[0];
        var large = StudyBookTests.With(Studies.Band, run with { Readings = [.. Enumerable.Range(1, 3000).Select(number => new Reading(number, ["6.81"]))] });
        StudyBook.Create(path, large, SetClock.Noon).Value.Dispose();
        byte[] bytes = File.ReadAllBytes(path);
        switch (kind)
        {
            case "newer":
                bytes[63] = 3;
                break;
            case "format 0":
                bytes[63] = 0;
                break;
            case "head only":
                bytes = bytes[..60];
                break;
            case "cut short":
                bytes = bytes[..(bytes.Length * 3 / 5)];
                break;
            case "scribbled on":
                bytes.AsSpan(bytes.Length / 2, 5000).Fill(0xAA);
                break;
            default:
                Rearrange(kind, path);
                return;
        }
        File.WriteAllBytes(path, bytes);
    }

    private static void Rearrange(string kind, string path)
    {
        using var raw = Raw.Open(path);
        Raw.Run(raw, kind switch
        {
            "a trigger" => "CREATE TRIGGER t AFTER INSERT ON change BEGIN DELETE FROM record; END",
            "a table gone" => "PRAGMA foreign_keys = OFF; DROP TABLE change_row",
            "a record gone" => "DELETE FROM record WHERE kind = 'part' AND id = 'band'",
            "a record no JSON" => "UPDATE record SET body = '{' WHERE kind = 'brief'",
            _ => "SELECT 1",
        });
    }
}

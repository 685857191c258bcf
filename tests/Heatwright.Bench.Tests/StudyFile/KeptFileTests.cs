using System.IO.Compression;
using CsCheck;
using Heatwright.StudyFile;

namespace Heatwright.Tests.StudyFile;

/// <summary>Photos and raw logs are kept byte for byte, through undo, redo, bundles and another start.</summary>
public class KeptFileTests
{
    private static readonly byte[] Photo = [.. Enumerable.Range(0, 70_000).Select(i => (byte)(i * 31))];

    private static KeptFile Loop => KeptFile.Of("loop.jpg", "IMG 0031.JPG", KeptAbout.Part, "band", "loop before the swap", Photo);

    [Fact]
    public void A_kept_file_comes_back_byte_for_byte_after_a_new_start()
    {
        using var desk = new Desk();
        using (var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value)
        {
            Assert.Empty(book.Write("photo", book.Read() with { Files = [Loop] }).Problems);
        }
        using var again = StudyBook.Open(desk.At("a.study"), readOnly: true).Value;
        var file = Assert.Single(again.Read().Files);
        // The fingerprint as another tool works it out: sha256sum of bytes (i * 31) mod 256, i from 0 to 69999.
        Assert.Equal("loop before the swap", file.Note);
        Assert.Null(file.Content);
        Assert.Equal(Photo, again.Content(file));
        Assert.Equal(Photo, again.ReadWhole().Files[0].Content);
    }

    [Fact]
    public void Undo_takes_it_away_and_redo_after_a_new_start_brings_its_bytes_back()
    {
        using var desk = new Desk();
        using (var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value)
        {
            book.Write("photo", book.Read() with { Files = [Loop] });
            book.Undo();
            Assert.Empty(book.Read().Files);
        }
        using var again = StudyBook.Open(desk.At("a.study"), readOnly: false).Value;
        Assert.Equal("photo", again.Redo().Value!.What);
        Assert.Equal(Photo, again.ReadWhole().Files[0].Content);
    }

    [Fact]
    public void The_same_bytes_lie_in_the_file_once()
    {
        using var desk = new Desk();
        using (var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value)
        {
            book.Write("two", book.Read() with { Files = [Loop, Loop with { Id = "again.jpg" }] });
        }
        Assert.Equal(["1"], Raw.Texts(desk.At("a.study"), "SELECT CAST(count(*) AS TEXT) FROM content"));
    }

    [Fact]
    public void Every_study_with_its_files_and_ways_comes_back_from_file_and_zip_and_zip_of_file() => Studies.Any.Sample(study =>
    {
        using var desk = new Desk();
        Study whole;
        using (var book = StudyBook.Create(desk.At("a.study"), study, SetClock.Noon).Value)
        {
            whole = book.ReadWhole();
        }
        Assert.Empty(Bundle.Write(whole, desk.At("a.zip")).Problems);
        var back = Bundle.Read(desk.At("a.zip")).Value;
        Assert.Equal(Spelled.Out(study), Spelled.Out(back));
        Assert.Equal(study.Files.Select(file => Convert.ToHexString(file.Content!)), back.Files.Select(file => Convert.ToHexString(file.Content!)));
    }, iter: 25);

    [Fact]
    public void A_bundle_with_a_photo_and_a_way_to_read_logs_can_be_made_by_hand()
    {
        using var desk = new Desk();
        desk.Put("study.json", """
            { "format": "heatwright-bundle-1", "name": "foam bow", "seed": 1,
              "instruments": [ { "id": "meter", "name": "small meter", "specs": [] } ],
              "files": [ { "id": "page.jpg", "name": "photo of a page.jpg", "about": "study", "note": "first readings" } ],
              "logWays": [ { "instrument": "meter", "signature": "", "decimalMark": "comma", "dateOrder": "dayMonthYear", "labels": [ { "column": "U", "name": "volts", "unit": "V" } ] } ] }
            """);
        desk.Put("files/page.jpg", "not really a picture");
        var study = Bundle.Read(desk.Folder);
        Assert.Empty(study.Problems);
        Assert.Equal("not really a picture"u8.ToArray(), study.Value.Files[0].Content);
        Assert.Equal(("comma", ','), (study.Value.LogWays[0].DecimalMark, study.Value.LogWays[0].Mapping().DecimalMark));
    }

    [Theory]
    [InlineData("\"files\": [ { \"id\": \"../x\" } ]", "study.json, files[0].id")]
    [InlineData("\"files\": [ { \"id\": \"x.jpg\" } ]", "files/x.jpg")]
    [InlineData("\"files\": [ { \"id\": \"a.jpg\", \"about\": \"part\", \"subject\": \"gone\" } ]", "study.json, files[0].subject")]
    [InlineData("\"logWays\": [ { \"instrument\": \"gone\", \"signature\": \"\" } ]", "study.json, logWays[0].instrument")]
    [InlineData("\"logWays\": [ { \"instrument\": \"gone\", \"signature\": \"\", \"decimalMark\": \"dot\" } ]", "study.json, logWays[0].decimalMark")]
    public void A_slip_about_a_kept_file_is_told_with_its_place(string field, string where)
    {
        using var desk = new Desk();
        desk.Put("study.json", $$"""{ "format": "heatwright-bundle-1", "name": "n", "seed": 1, {{field}} }""");
        desk.Put("files/a.jpg", "x");
        Assert.Contains(Bundle.Read(desk.Folder).Problems, problem => problem.Where == where);
    }

    [Fact]
    public void A_zip_bomb_among_the_kept_files_is_refused()
    {
        using var desk = new Desk();
        using (var zip = ZipFile.Open(desk.At("a.zip"), ZipArchiveMode.Create))
        {
            using (var text = new StreamWriter(zip.CreateEntry("study.json").Open()))
            {
                text.Write("""{ "format": "heatwright-bundle-1", "name": "n", "seed": 1, "files": [ { "id": "a.bin" } ] }""");
            }
            using var bomb = zip.CreateEntry("files/a.bin", CompressionLevel.SmallestSize).Open();
            byte[] nothing = new byte[1 << 20];
            for (int i = 0; i < 65; i++)
            {
                bomb.Write(nothing);
            }
        }
        Assert.Contains(Bundle.Read(desk.At("a.zip")).Problems, problem => problem.What.Contains("unpacks to more", StringComparison.Ordinal));
    }

    [Fact]
    public void A_study_whose_kept_bytes_are_gone_is_told_as_damaged()
    {
        using var desk = new Desk();
        using (var book = StudyBook.Create(desk.At("a.study"), Studies.Band with { Files = [Loop] }, SetClock.Noon).Value)
        {
            Assert.Single(book.Read().Files);
        }
        using (var raw = Raw.Open(desk.At("a.study")))
        {
            Raw.Run(raw, "DELETE FROM content");
        }
        Assert.Equal(OpenFault.Damaged, Assert.IsType<OpenProblem>(Assert.Single(StudyBook.Open(desk.At("a.study"), readOnly: true).Problems)).Fault);
    }
}

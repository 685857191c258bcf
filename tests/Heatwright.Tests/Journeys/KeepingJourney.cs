using System.Globalization;
using System.Text;
using System.Text.Json;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Tests.Journeys;

/// <summary>Files kept, logs and sheets taken in, readings struck out, studies packed, exported, examined and restored: by the commands as they are typed.</summary>
public sealed class KeepingJourney : IDisposable
{
    private readonly Bench bench = new();

    /// <summary>A study of one wire, written by hand from docs/formats/bundle.md. Its numbers are invented.</summary>
    private string Study
    {
        get
        {
            Directory.CreateDirectory(bench.In("bow/runs"));
            File.WriteAllText(bench.In("bow/study.json"), """
                { "format": "heatwright-bundle-1", "name": "foam bow", "seed": 1,
                  "instruments": [ { "id": "logger", "name": "logger", "specs": [] } ],
                  "parts": [ { "id": "wire", "kind": "heater", "name": "wire", "stated": [] }, { "id": "cell", "kind": "cell", "name": "cell", "stated": [] } ],
                  "trials": [ { "id": "cold", "kind": "coldOhms", "part": "wire", "runs": [ { "id": "cold-1", "columns": [ { "name": "ohms", "unit": "Ω", "instrument": "" } ] } ] },
                              { "id": "empty", "kind": "discharge", "part": "cell", "runs": [] } ] }
                """);
            File.WriteAllText(bench.In("bow/runs/cold-1.csv"), "ohms\n2.71\n9.99\n2.72\n");
            string file = bench.In("bow.study");
            Fine("import", bench.In("bow"), file);
            return file;
        }
    }

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_photo_is_kept_taken_dropped_and_brought_back()
    {
        string file = Study;
        byte[] photo = [.. Enumerable.Range(0, 999).Select(i => (byte)i)];
        File.WriteAllBytes(bench.In("loop.jpg"), photo);
        Assert.Contains("Kept as 'loop.jpg', 999 bytes.", Fine("file", "add", file, bench.In("loop.jpg"), "--about", "part:wire", "--note", "before"), StringComparison.Ordinal);
        Fine("file", "take", file, "loop.jpg", bench.In("copy.jpg"));
        Assert.Equal(photo, File.ReadAllBytes(bench.In("copy.jpg")));
        Assert.Contains("would replace", Refused("file", "take", file, "loop.jpg", bench.In("copy.jpg")), StringComparison.Ordinal);
        Assert.Contains("part:ID", Refused("file", "add", file, bench.In("loop.jpg"), "--about", "wire"), StringComparison.Ordinal);
        Assert.Contains("cell, wire", Refused("file", "add", file, bench.In("loop.jpg"), "--about", "part:gone").Replace("wire, cell", "cell, wire", StringComparison.Ordinal), StringComparison.Ordinal);
        Fine("file", "drop", file, "loop.jpg");
        Assert.Equal(0, Json("file", "list", file).GetArrayLength());
        using (var book = StudyBook.Open(file, readOnly: false).Value)
        {
            Assert.Equal("Let go of loop.jpg", book.Undo().Value!.What);
        }

        Assert.Equal("before", Json("file", "list", file)[0].GetProperty("note").GetString());
    }

    [Fact]
    public void A_picture_is_kept_without_what_the_camera_wrote_beside_it_unless_its_maker_says_otherwise()
    {
        string file = Study;
        File.WriteAllBytes(bench.In("front.bin"), PhotoJourney.OnePixel);
        // By hand: the text chunk is 12 bytes and its 9 of content. Its name says nothing, its content tells that it is a picture.
        Assert.Contains("21 bytes that the camera wrote", Fine("file", "add", file, bench.In("front.bin"), "--about", "trial:cold"), StringComparison.Ordinal);
        Fine("file", "take", file, "front.bin", bench.In("plain.bin"));
        Assert.DoesNotContain("place", System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(bench.In("plain.bin"))), StringComparison.Ordinal);
        Assert.Contains($"{PhotoJourney.OnePixel.Length} bytes.", Fine("file", "add", file, bench.In("front.bin"), "--as-is"), StringComparison.Ordinal);
        Fine("file", "take", file, "front-2.bin", bench.In("whole.bin"));
        Assert.Equal(PhotoJourney.OnePixel, File.ReadAllBytes(bench.In("whole.bin")));
    }

    /// <summary>First bytes of kinds that tell a place and are not taken apart: a HEIF picture or a film (ISO/IEC 14496-12, box 'ftyp'), a raw picture (TIFF 6.0, both byte orders), a JPEG cut short.</summary>
    [Theory]
    [InlineData("\0\0\0\u0018ftypheic")]
    [InlineData("II*\0\u0008\0\0\0")]
    [InlineData("MM\0*\0\0\0\u0008")]
    [InlineData("\u00ff\u00d8\u00ff\u00e1\u0001")]
    public void A_picture_whose_place_cannot_be_cut_off_is_asked_about(string begins)
    {
        string file = Study;
        File.WriteAllBytes(bench.In("shot.bin"), [.. begins.Select(c => (byte)c)]);
        Assert.Contains("--as-is", Refused("file", "add", file, bench.In("shot.bin")), StringComparison.Ordinal);
        Assert.Equal(0, Json("file", "list", file).GetArrayLength());
        Fine("file", "add", file, bench.In("shot.bin"), "--as-is");
        Assert.Equal(1, Json("file", "list", file).GetArrayLength());
    }

    [Fact]
    public void The_history_of_one_thing_tells_value_by_value_what_was_done_to_it()
    {
        string file = Study;
        Fine("part", "state", file, "cell", "--measured", "mass=45.5g (scale)");
        Fine("strike", file, "cold-1", "2", "--because", "clip loose");
        Fine("undo", file);
        string run = Fine("history", file, "--of", "cold-1");
        // A reading struck out and stood up again: one value differs, and it tells both what was done and that it was taken back.
        Assert.Contains("run cold-1: begun with", run, StringComparison.Ordinal);
        Assert.Contains("readings cold-1/1, [2].struckBecause: nothing -> clip loose", run, StringComparison.Ordinal);
        Assert.Equal(1, run.Split('\n').Count(line => line.Contains("(taken back)", StringComparison.Ordinal)));
        Assert.DoesNotContain("mass", run, StringComparison.Ordinal);

        var cell = Json("history", file, "--of", "cell").EnumerateArray().ToList();
        Assert.Equal([true, false], cell.Select(change => change.GetProperty("begun").GetBoolean()));
        Assert.Contains(cell[1].GetProperty("fields").EnumerateArray(), field => field.GetProperty("where").GetString() == "stated[mass].value" && field.GetProperty("after").GetString() == "45.5" && !field.TryGetProperty("before", out _));
        Assert.Contains("ever in the study", Refused("history", file, "--of", "gone"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_log_becomes_a_run_its_bytes_are_kept_and_its_way_is_remembered()
    {
        string file = Study;
        byte[] log = Encoding.Latin1.GetBytes("Zeit;Klemme [V];Strom [A];Gehäuse [°C]\r\n08:15:00;4,100;1,500;21,000\r\n08:15:10;4,050;1,500;21,500\r\n08:15:20;4,000;OL;22,000\r\n");
        File.WriteAllBytes(bench.In("one.csv"), log);
        var done = Json("log", "import", bench.In("one.csv"), file, "--trial", "empty", "--instrument", "logger", "--columns", "cell degrees=Gehäuse", "--decimal-mark", "comma");
        Assert.Equal(("empty-1", 3, "one.csv"), (done.GetProperty("run").GetString(), done.GetProperty("readings").GetInt32(), done.GetProperty("kept").GetString()));
        using (var book = StudyBook.Open(file, readOnly: true).Value)
        {
            var study = book.ReadWhole();
            var run = study.Trials[1].Runs[0];
            var rows = run.Readings.Select(reading => string.Join('|', run.Columns.Zip(reading.Raw, (column, raw) => $"{column.Name}={raw}").Order(StringComparer.Ordinal)));
            Assert.Equal(["amps=1.5|cell degrees=21|time=0|volts=4.1", "amps=1.5|cell degrees=21.5|time=10|volts=4.05", "amps=OL|cell degrees=22|time=20|volts=4"], rows);
            Assert.Equal(log, study.Files[0].Content);
            Assert.Equal("comma", study.LogWays[0].DecimalMark);
        }

        // The second file alone would ask: nothing in it shows what its comma means. Now it is known, and so is the column.
        File.WriteAllText(bench.In("two.csv"), "Zeit;Klemme [V];Strom [A];Gehäuse [°C]\n08:20:00;4,100;1,500;21,000\n08:20:10;4,050;1,500;21,500\n");
        Assert.Contains("--decimal-mark comma", Refused("log", "import", bench.In("two.csv"), file, "--trial", "empty"), StringComparison.Ordinal);
        var second = Json("log", "import", bench.In("two.csv"), file, "--trial", "empty", "--instrument", "logger");
        Assert.Contains(second.GetProperty("pairs").EnumerateArray(), pair => pair.GetProperty("run").GetString() == "cell degrees" && pair.GetProperty("log").GetString() == "Gehäuse");
    }

    [Fact]
    public void A_log_that_does_not_settle_its_columns_asks_once_with_what_to_type()
    {
        string file = Study;
        File.WriteAllText(bench.In("two-volts.csv"), "t (s),A in (V),B in (V),I (A)\n0,4.10,3.90,1.5\n1,4.05,3.85,1.5\n");
        string said = Refused("log", "import", bench.In("two-volts.csv"), file, "--trial", "empty");
        Assert.Contains("volts: A in or B in", said, StringComparison.Ordinal);
        Assert.Contains("--columns 'volts=A in'", said, StringComparison.Ordinal);
        Fine("log", "import", bench.In("two-volts.csv"), file, "--trial", "empty", "--columns", "volts=B in");
        Assert.Contains("cold, empty", Refused("log", "import", bench.In("two-volts.csv"), file, "--trial", "gone"), StringComparison.Ordinal);
    }

    [Fact]
    public void Sheets_of_thirty_learners_become_runs_in_one_change_or_none()
    {
        string file = Study;
        Directory.CreateDirectory(bench.In("handed-in"));
        for (int i = 1; i <= 30; i++)
        {
            // Every third learner writes decimal commas.
            string mark = i % 3 == 0 ? "," : ".";
            File.WriteAllText(bench.In($"handed-in/station {i:00}.csv"), $"time (s);U (V);I (A)\n0;4{mark}10;1{mark}50\n30;4{mark}0{i % 10};1{mark}49\n60;3{mark}95;1{mark}48\n");
        }

        File.WriteAllText(bench.In("handed-in/station 07.csv"), "nothing but words\n");
        string said = Refused("sheets", file, bench.In("handed-in"), "--trial", "empty");
        Assert.Contains("station 07.csv", said, StringComparison.Ordinal);
        Assert.Empty(Runs(file, 1));
        File.WriteAllText(bench.In("handed-in/station 07.csv"), "time (min);U (mV);I (A)\n0;4100;1.50\n0.5;4070;1.49\n1;3950;1.48\n");
        Assert.Equal(30, Json("sheets", file, bench.In("handed-in"), "--trial", "empty").GetArrayLength());
        var runs = Runs(file, 1);
        Assert.Equal(30, runs.Count);
        Assert.Equal("station 01", runs[0].Id.Name);
        Assert.Equal(["30", "4070", "1.49"], Values(runs[6], 1));
        Assert.Equal(["30", "4.09", "1.49"], Values(runs[8], 1));
        using var book = StudyBook.Open(file, readOnly: false).Value;
        Assert.Equal("Imported 30 sheets into empty", book.Undo().Value!.What);
        Assert.Empty(book.Read().Trials[1].Runs);
    }

    [Fact]
    public void A_reading_is_struck_out_with_its_reason_and_stands_again()
    {
        string file = Study;
        Fine("strike", file, "cold-1", "2", "--because", "clip loose");
        Assert.Equal("clip loose", Runs(file, 0)[0].Readings[1].StruckBecause);
        Assert.Equal("9.99", Runs(file, 0)[0].Readings[1].Raw[0]);
        Fine("stand", file, "cold-1", "2");
        Assert.Null(Runs(file, 0)[0].Readings[1].StruckBecause);
        Assert.Contains("1 to 3", Refused("strike", file, "cold-1", "4", "--because", "x"), StringComparison.Ordinal);
        Assert.Contains("--because", Refused("strike", file, "cold-1", "2"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_study_is_exported_packed_and_examined()
    {
        string file = Study;
        File.WriteAllText(bench.In("note.txt"), "kept");
        Fine("file", "add", file, bench.In("note.txt"));
        Fine("export", file, bench.In("bow.zip"));
        Assert.Contains("would replace", Refused("export", file, bench.In("bow.zip")), StringComparison.Ordinal);
        Fine("import", bench.In("bow.zip"), bench.In("again.study"));
        Assert.Equal("kept", Encoding.UTF8.GetString(Whole(bench.In("again.study")).Files[0].Content!));
        Assert.Contains("There is something", Refused("import", bench.In("bow.zip"), file), StringComparison.Ordinal);
        Fine("pack", file);
        Assert.Empty(Directory.GetFiles(bench.Folder, "bow.study-*"));
        var examined = Json("examine", file);
        Assert.True(examined.GetProperty("whole").GetBoolean());
        Assert.Equal((2, 1, 4L), (examined.GetProperty("changes").GetInt32(), examined.GetProperty("kept").GetInt32(), examined.GetProperty("keptBytes").GetInt64()));
    }

    [Fact]
    public void A_damaged_study_is_rescued_and_an_earlier_opening_restored()
    {
        string file = Study;
        Fine("strike", file, "cold-1", "2", "--because", "clip loose");
        Fine("stand", file, "cold-1", "2");
        using (var book = StudyBook.Open(file, readOnly: false).Value)
        {
            book.Pack();
        }

        byte[] bytes = File.ReadAllBytes(file);
        File.WriteAllBytes(file, bytes[..(bytes.Length - 5000)]);
        var (exit, said, _) = bench.Type("examine", file, "--json");
        Assert.Equal(2, exit);
        Assert.False(JsonDocument.Parse(said).RootElement.GetProperty("whole").GetBoolean());
        byte[] damaged = File.ReadAllBytes(file);
        Fine("examine", file, "--rescue", bench.In("rescued.study"));
        Assert.Equal(damaged, File.ReadAllBytes(file));
        Assert.Equal(2, Whole(bench.In("rescued.study")).Parts.Count);
        var openings = Json("openings", file);
        Assert.Equal(2, openings.GetArrayLength());
        Fine("openings", file, "--restore", "2", "--to", bench.In("as-it-was.study"));
        Assert.Equal("clip loose", Runs(bench.In("as-it-was.study"), 0)[0].Readings[1].StruckBecause);
        Assert.Contains("1, 2", Refused("openings", file, "--restore", "9", "--to", bench.In("x.study")), StringComparison.Ordinal);
    }

    [Fact]
    public void Two_logs_are_set_by_each_others_clock_once_the_offset_is_confirmed()
    {
        // A load switched at odd moments, seen by two loggers: the second one's clock is 37.4 s behind. Values are invented.
        double[] switches = [12.3, 20.1, 47.7, 61.2, 90.4, 131.9, 140.2, 171.3];
        bool On(double at) => switches.Count(moment => moment <= at) % 2 == 1;
        var (first, second) = (new StringBuilder("time (s),U (V)\n"), new StringBuilder("time (s),I (A)\n"));
        for (int i = 0; i < 400; i++)
        {
            first.Append(CultureInfo.InvariantCulture, $"{i * 0.5:0.0},{(On(i * 0.5) ? 3.6 : 4.1) + (0.001 * (i % 7)):0.000}\n");
            second.Append(CultureInfo.InvariantCulture, $"{i * 0.5:0.0},{(On((i * 0.5) + 37.4) ? 1.52 : 0.0) + (0.002 * (i % 5)):0.000}\n");
        }

        File.WriteAllText(bench.In("volts.csv"), first.ToString());
        File.WriteAllText(bench.In("amps.csv"), second.ToString());
        var found = Json("log", "offset", bench.In("volts.csv"), bench.In("amps.csv"));
        Assert.Equal(37.4, found.GetProperty("addS").GetDouble(), 0.3);
        Assert.Contains("not confirmed", Refused("log", "offset", bench.In("volts.csv"), bench.In("amps.csv"), "--csv", bench.In("both.csv")), StringComparison.Ordinal);
        Fine("log", "offset", bench.In("volts.csv"), bench.In("amps.csv"), "--offset", "37.4", "--csv", bench.In("both.csv"));
        string[] both = File.ReadAllLines(bench.In("both.csv"));
        Assert.Equal("time [s],U [V],I [A]", both[0]);
        Assert.Contains("37.4,,0", both);
        File.WriteAllText(bench.In("flat.csv"), "time (s),I (A)\n" + string.Concat(Enumerable.Range(0, 50).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i},1.5\n"))));
        Assert.Contains("do not tell", Refused("log", "offset", bench.In("volts.csv"), bench.In("flat.csv")), StringComparison.Ordinal);
    }

    private static string[] Values(Run run, int reading) => [.. ((string[])["time", "volts", "amps"]).Select(name => run.Readings[reading].Raw[run.Columns.ToList().FindIndex(column => column.Name == name)])];

    private static Study Whole(string file)
    {
        using var book = StudyBook.Open(file, readOnly: true).Value;
        return book.ReadWhole();
    }

    private static IReadOnlyList<Run> Runs(string file, int trial) => Whole(file).Trials[trial].Runs;

    private string Fine(params string[] words)
    {
        var (exit, said, error) = bench.Type(words);
        Assert.True(exit == 0, error);
        return said;
    }

    private string Refused(params string[] words)
    {
        var (exit, _, error) = bench.Type(words);
        Assert.Equal(2, exit);
        return error;
    }

    private JsonElement Json(params string[] words) => JsonDocument.Parse(Fine([.. words, "--json"])).RootElement;
}

using CsCheck;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Trials;

namespace Heatwright.Tests.StudyFile;

public class StudyBookTests
{
    [Fact]
    public void A_study_comes_back_from_its_file_as_it_was() => Studies.Any.Sample(study =>
    {
        using var desk = new Desk();
        using (var book = StudyBook.Create(desk.At("a.study"), study, SetClock.Noon).Value)
        {
            Assert.Equal(Spelled.Out(study), Spelled.Out(book.Read()));
        }
        using var again = StudyBook.Open(desk.At("a.study"), readOnly: true).Value;
        Assert.Equal(Spelled.Out(study), Spelled.Out(again.Read()));
    }, iter: 40);

    [Fact]
    public void Undo_walks_back_to_the_beginning_and_redo_to_the_end_across_reopening() => Gen.Select(Studies.Any, Studies.Any, Studies.Any).Sample((a, b, c) =>
    {
        // Drawn studies can be equal, and a change that changes nothing is no step.
        b = b with { Note = a.Note + "b" };
        c = c with { Note = b.Note + "c" };
        using var desk = new Desk();
        string path = desk.At("a.study");
        using (var book = StudyBook.Create(path, a, SetClock.Noon).Value)
        {
            Assert.Empty(book.Write("b", b).Problems);
            Assert.Empty(book.Write("c", c).Problems);
        }
        string[] states = [Spelled.Out(a), Spelled.Out(b), Spelled.Out(c)];
        using (var book = StudyBook.Open(path, readOnly: false).Value)
        {
            Assert.Equal("c", book.Undo().Value!.What);
            Assert.Equal(states[1], Spelled.Out(book.Read()));
        }
        using (var book = StudyBook.Open(path, readOnly: false).Value)
        {
            Assert.Equal("b", book.Undo().Value!.What);
            Assert.Equal(states[0], Spelled.Out(book.Read()));
            Assert.Null(book.Undo().Value);
            Assert.Equal("b", book.Redo().Value!.What);
        }
        using (var book = StudyBook.Open(path, readOnly: false).Value)
        {
            Assert.Equal("c", book.Redo().Value!.What);
            Assert.Null(book.Redo().Value);
            Assert.Equal(states[2], Spelled.Out(book.Read()));
        }
    }, iter: 15);

    [Fact]
    public void After_a_new_change_redo_never_brings_back_what_was_left_behind()
    {
        using var desk = new Desk();
        using var book = StudyBook.Create(desk.At("a.study"), Noted(""), SetClock.Noon).Value;
        book.Write("one", Noted("1"));
        book.Write("two", Noted("2"));
        book.Undo();
        book.Write("three", Noted("3"));
        book.Undo();
        Assert.Equal("three", book.Redo().Value!.What);
        Assert.Equal("3", book.Read().Note);
        Assert.Equal([("Study begun", false), ("one", false), ("two", true), ("three", false)], book.History().Select(change => (change.What, change.Undone)));
    }

    [Fact]
    public void Nothing_that_was_entered_is_lost_when_it_is_changed()
    {
        using var desk = new Desk();
        using (var book = StudyBook.Create(desk.At("a.study"), Noted("first words"), SetClock.Noon).Value)
        {
            book.Write("one", Noted("second words"));
            book.Undo();
            book.Write("two", Noted("third words"));
        }
        string all = string.Join('\n', Raw.Texts(desk.At("a.study"), "SELECT coalesce(before, '') || coalesce(after, '') FROM change_row"));
        Assert.All(["first words", "second words", "third words"], words => Assert.Contains(words, all, StringComparison.Ordinal));
    }

    [Fact]
    public void A_change_keeps_only_what_differs()
    {
        using var desk = new Desk();
        using (var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value)
        {
            var run = Studies.Band.Trials[0].Runs[0];
            Assert.Empty(book.Write("reading 4", With(Studies.Band, run with { Readings = [.. run.Readings, new(4, ["6.9"])] })).Problems);
            Assert.Null(book.Write("nothing", book.Read()).Value);
        }
        Assert.Equal(["readings cold-1/1"], Raw.Texts(desk.At("a.study"), "SELECT kind || ' ' || id FROM change_row WHERE change = 2"));
        Assert.Equal(["1", "2"], Raw.Texts(desk.At("a.study"), "SELECT CAST(number AS TEXT) FROM change"));
    }

    [Fact]
    public void A_captured_log_grows_the_file_by_its_own_size_and_not_by_its_square()
    {
        using var desk = new Desk();
        using var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        var run = Studies.Band.Trials[0].Runs[0];
        long sum = 0;
        for (int batch = 0; batch < 40; batch++)
        {
            run = run with { Readings = [.. run.Readings, .. Enumerable.Range(run.Readings.Count + 1, 25).Select(number => new Reading(number, ["6.812"]))] };
            Assert.Empty(book.Write("captured", With(book.Read(), run)).Problems);
        }
        sum = long.Parse(Raw.Texts(desk.At("a.study"), "SELECT CAST(sum(length(before) + length(after)) AS TEXT) FROM change_row")[0], System.Globalization.CultureInfo.InvariantCulture);
        // By hand: a reading is about 30 characters. 1000 of them, each written at most with 49 others before and 50 after: under 40 * 2 * 2 * 50 * 40 = 320 000.
        // Whole runs would be about 40 * 1000 * 30 = 1 200 000.
        Assert.InRange(sum, 30_000, 320_000);
    }

    [Fact]
    public void The_history_tells_when_by_the_clock_it_was_given()
    {
        using var desk = new Desk();
        using var book = StudyBook.Create(desk.At("a.study"), Studies.Band, new SetClock(new(2026, 3, 1, 14, 30, 0, TimeSpan.FromHours(2)))).Value;
        Assert.Equal(new StudyChange(1, new(2026, 3, 1, 12, 30, 0, TimeSpan.Zero), "Study begun", Undone: false), Assert.Single(book.History()));
    }

    /// <summary>Kept with its setting in the file and in a bundle; where none is said nothing is written, so that older files keep their fingerprints.</summary>
    [Fact]
    public void What_a_setting_may_be_off_by_is_kept_with_it()
    {
        using var desk = new Desk();
        var trial = Studies.Band.Trials.First(one => one.Runs.Any(run => run.Settings.Count > 0));
        string setting = trial.Runs.First(run => run.Settings.Count > 0).Settings.Keys.First();
        var said = Studies.Band with
        {
            Trials = [.. Studies.Band.Trials.Select(one => one.Id != trial.Id ? one : one with { Runs = [.. one.Runs.Select(run => run.Settings.ContainsKey(setting) ? run with { SettingsPlusMinus = new Dictionary<string, double> { [setting] = 0.125 } } : run)] })],
        };
        using (var book = StudyBook.Create(desk.At("a.study"), said, SetClock.Noon).Value)
        {
            Assert.True(Bundle.Write(said, desk.At("a.zip")).IsFine);
        }

        using var again = StudyBook.Open(desk.At("a.study"), readOnly: true).Value;
        Assert.All(new[] { again.Read(), Bundle.Read(desk.At("a.zip")).Value }, study => Assert.Equal(0.125, study.Trials.Single(one => one.Id == trial.Id).Runs.First(run => run.Settings.Count > 0).SettingsPlusMinus[setting]));
        Assert.True(Bundle.Write(Studies.Band, desk.At("bare.zip")).IsFine);
        using var zip = System.IO.Compression.ZipFile.OpenRead(desk.At("bare.zip"));
        using var text = new StreamReader(zip.GetEntry("study.json")!.Open());
        Assert.DoesNotContain("settingsPlusMinus", text.ReadToEnd(), StringComparison.Ordinal);
    }

    [Theory, InlineData("lead", 0.1), InlineData("leads", -0.1)]
    public void A_doubt_without_its_setting_or_below_nothing_is_told(string name, double plusMinus)
    {
        using var desk = new Desk();
        desk.Put("study.json", $$"""
            { "format": "heatwright-bundle-1", "name": "foam bow", "seed": 1, "parts": [ { "id": "wire", "kind": "heater", "name": "bow wire", "stated": [] } ],
              "trials": [ { "id": "cold", "kind": "coldOhms", "part": "wire", "runs": [ { "id": "r1", "columns": [ { "name": "ohms", "unit": "Ω", "instrument": "" } ], "settings": { "leads": 0.3 }, "settingsPlusMinus": { "{{name}}": {{plusMinus.ToString(System.Globalization.CultureInfo.InvariantCulture)}} } } ] } ] }
            """);
        desk.Put("runs/r1.csv", "ohms\n2.2\n");
        Assert.Equal($"study.json, trials[0].runs[0].settingsPlusMinus.{name}", Assert.Single(Bundle.Read(desk.Folder).Problems).Where);
    }

    [Fact]
    public void The_fingerprint_follows_the_content_and_nothing_else()
    {
        using var desk = new Desk();
        using var one = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        var turned = Studies.Band with { Trials = [.. Studies.Band.Trials.Select(trial => trial with { Runs = [.. trial.Runs.Select(run => run with { Settings = run.Settings.Reverse().ToDictionary() })] })] };
        using var other = StudyBook.Create(desk.At("b.study"), Noted("x"), TimeProvider.System).Value;
        string begun = other.Fingerprint;
        other.Write("same", turned);
        Assert.Equal(one.Fingerprint, other.Fingerprint);
        other.Undo();
        Assert.Equal(begun, other.Fingerprint);
        Assert.NotEqual(one.Fingerprint, other.Fingerprint);
    }

    [Fact]
    public void Every_single_change_changes_the_fingerprint()
    {
        using var desk = new Desk();
        var band = Studies.Band;
        var run = band.Trials[0].Runs[0];
        Study[] others =
        [
            band, band with { Seed = 1 }, band with { Invented = false }, band with { Brief = band.Brief! with { AirC = 6 } }, band with { Parts = [.. band.Parts.Reverse()] }, band with { Arrangements = [] },
            band with { Instruments = [band.Instruments[0] with { Name = "other" }] }, With(band, run with { Readings = [run.Readings[0], run.Readings[1] with { StruckBecause = null }, run.Readings[2]] }),
            With(band, run with { Settings = new Dictionary<string, double> { ["leads"] = 0.3 } }),
        ];
        string[] prints = [.. others.Select((study, i) =>
        {
            using var book = StudyBook.Create(desk.At($"{i}.study"), study, SetClock.Noon).Value;
            return book.Fingerprint;
        })];
        Assert.Equal(others.Length, prints.Distinct().Count());
    }

    [Fact]
    public void A_study_that_contradicts_itself_is_not_written()
    {
        using var desk = new Desk();
        using var book = StudyBook.Create(desk.At("a.study"), Studies.Band, SetClock.Noon).Value;
        var problems = book.Write("half", Studies.Band with { Parts = [.. Studies.Band.Parts.Where(part => part.Kind != PartKind.Heater)] }).Problems;
        Assert.Equal(["the study, trials[0].part", "the study, arrangements[0].heater"], problems.Select(problem => problem.Where));
        Assert.Single(book.History());
        Assert.Equal(Spelled.Out(Studies.Band), Spelled.Out(book.Read()));
        Assert.Empty(book.Write("whole", Noted("works on")).Problems);
    }

    private static Study Noted(string note) => Studies.Band with { Note = note };

    internal static Study With(Study study, Run run) => study with { Trials = [study.Trials[0] with { Runs = [run] }, .. study.Trials.Skip(1)] };
}

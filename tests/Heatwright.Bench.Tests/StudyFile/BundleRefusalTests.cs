using System.IO.Compression;
using Heatwright.StudyFile;

namespace Heatwright.Tests.StudyFile;

public class BundleRefusalTests
{
    [Fact]
    public void Everything_wrong_is_told_at_once_with_its_place()
    {
        using var desk = new Desk();
        desk.Put("study.json", """
            {
              "format": "heatwright-bundle-1", "name": "foam bow", "seed": -1, "colour": "red",
              "instruments": [ { "id": "meter", "name": "m", "specs": [ { "unit": "volt", "percent": 1, "offset": -2, "resolution": 0.01 } ] } ],
              "parts": [
                { "id": "wire", "kind": "heter", "name": "w", "stated": [ { "quantity": "resistance", "value": "2.2", "unit": "V", "plusMinus": 1e999, "origin": "heard", "text": "" } ] },
                { "id": "wire", "kind": "cell", "name": "w", "count": 1.5, "from": "found", "stated": [ { "quantity": "mass", "value": 1, "unit": "mm", "plusMinus": 0, "origin": "assumed", "text": "" } ] },
                { "id": "../up", "kind": "cell", "stated": [] }
              ],
              "trials": [ { "id": "t", "kind": "coldOhms", "part": "wier", "runs": [
                { "id": "r1", "columns": [ { "name": "ohms", "unit": "A", "instrument": "scope" }, { "name": "volts", "unit": "V", "instrument": "" } ], "settings": { "lead": 1 }, "struck": [ { "number": 9, "because": "x" } ] },
                { "id": "r2", "columns": [] } ] } ],
              "arrangements": [ { "id": "a", "letter": "A", "name": "n", "cell": "gone", "series": 0, "parallel": 1, "heater": "wire", "switch": "wire", "leads": "wire", "contacts": "wire", "contactCount": 4,
                "sensor": "wire", "controller": "wire", "handle": "wire", "dutyCeiling": 2 } ]
            }
            """);
        desk.Put("runs/r1.csv", "ohms,volts\n1\n2,3\n4,\"5\n");
        desk.Put("runs/r3.csv", "x");
        string[] places =
        [
            "runs/r1.csv, line 2", "runs/r1.csv, line 4", "runs/r2.csv", "runs/r3.csv",
            "study.json, seed", "study.json, colour", "study.json, instruments[0].specs[0].unit", "study.json, instruments[0].specs[0].offset",
            "study.json, parts[0].kind", "study.json, parts[0].stated[0].quantity", "study.json, parts[0].stated[0].value", "study.json, parts[0].stated[0].plusMinus", "study.json, parts[0].stated[0].origin",
            "study.json, parts[1].id", "study.json, parts[1].count", "study.json, parts[1].from", "study.json, parts[1].stated[0].unit", "study.json, parts[1].stated[0].text",
            "study.json, parts[2].id", "study.json, parts[2].name",
            "study.json, trials[0].part", "study.json, trials[0].runs[0].columns[0].unit", "study.json, trials[0].runs[0].columns[0].instrument", "study.json, trials[0].runs[0].columns[1].name",
            "study.json, trials[0].runs[0].settings.lead", "study.json, trials[0].runs[0].struck[0]", "study.json, trials[0].runs[1].columns",
            "study.json, arrangements[0].cell", "study.json, arrangements[0].series", "study.json, arrangements[0].dutyCeiling",
        ];
        var problems = Bundle.Read(desk.Folder).Problems;
        Assert.Equal(places.Order(StringComparer.Ordinal), problems.Select(problem => problem.Where).Order(StringComparer.Ordinal));
        Assert.All(problems, problem => Assert.False(problem.What.Length == 0 || problem.Limit.Length == 0 || problem.Next.Length == 0));
    }

    [Theory]
    [InlineData("{ \"format\": \"heatwright-bundle-1\",\n oops }", "study.json is not JSON.", "study.json, line 2")]
    [InlineData("[]", "A field is of the wrong kind.", "study.json")]
    [InlineData("{ \"format\": \"heatwright-bundle-2\", \"new\": 1 }", "The bundle is of another format.", "study.json, format")]
    [InlineData("{ \"format\": \"heatwright-bundle-1\", \"name\": \"a\", \"name\": \"b\", \"seed\": 1 }", "A field stands twice.", "study.json, name")]
    [InlineData("{ \"format\": \"heatwright-bundle-1\", \"name\": \"\\ud83d\", \"seed\": 1 }", "A text of study.json holds half of a character.", "study.json")]
    [InlineData("{ \"format\": \"heatwright-bundle-1\", \"name\": null, \"seed\": 1 }", "A field is null.", "study.json, name")]
    [InlineData("{ \"format\": \"heatwright-bundle-1\", \"name\": \"a\", \"seed\": NaN }", "study.json is not JSON.", "study.json, line 1")]
    [InlineData("{ \"format\": \"heatwright-bundle-1\", \"name\": \"a\", \"seed\": 1, \"parts\": [ 5 ] }", "A field is of the wrong kind.", "study.json, parts[0]")]
    public void A_slip_in_study_json_is_told(string json, string what, string where)
    {
        using var desk = new Desk();
        desk.Put("study.json", json);
        var problem = Assert.Single(Bundle.Read(desk.Folder).Problems);
        Assert.Equal((what, where), (problem.What, problem.Where));
    }

    [Fact]
    public void Lists_in_lists_without_end_are_refused()
    {
        using var desk = new Desk();
        desk.Put("study.json", new string('[', 100_000));
        Assert.Equal("study.json is not JSON.", Assert.Single(Bundle.Read(desk.Folder).Problems).What);
    }

    [Theory]
    [InlineData("../study.json"), InlineData("/etc/x"), InlineData("runs/../../x.csv"), InlineData("runs\\x.csv"), InlineData("C:\\x")]
    public void A_name_that_leads_out_of_the_zip_is_refused(string name)
    {
        using var zip = Zip(archive => BundleTests.Add(archive, name, "x"));
        var problem = Assert.Single(Bundle.Read(zip).Problems);
        Assert.Equal(("A file of the zip has a name that leads out of it.", name), (problem.What, problem.Value));
    }

    [Fact]
    public void A_zip_that_unpacks_to_far_more_than_it_holds_is_refused()
    {
        using var zip = Zip(archive => BundleTests.Add(archive, "runs/big.csv", ""), cold: new string('9', 80_000_000));
        Assert.True(zip.Length < 1_000_000);
        Assert.Contains(Bundle.Read(zip).Problems, problem => problem is { What: "The bundle unpacks to more than a study can be.", Where: "runs/cold-1.csv" });
    }

    [Fact]
    public void More_files_than_a_bundle_can_have_are_refused()
    {
        using var zip = Zip(archive => Enumerable.Range(0, 10_001).ToList().ForEach(i => archive.CreateEntry($"runs/{i}.csv")));
        Assert.Equal("There are more files than a bundle can have.", Bundle.Read(zip).Problems[0].What);
    }

    [Fact]
    public void Two_files_of_one_name_are_refused()
    {
        using var zip = Zip(archive => BundleTests.Add(archive, "study.json", "{}"));
        Assert.Contains(Bundle.Read(zip).Problems, problem => problem is { What: "Two files of the zip have one name.", Value: "study.json" });
    }

    [Fact]
    public void A_link_out_of_the_folder_is_refused()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "needs links that anyone may make: run on Linux or macOS");
        using var desk = new Desk();
        using var elsewhere = new Desk();
        BundleTests.Unpacked(Studies.Band, desk);
        File.Move(desk.At("runs/cold-1.csv"), elsewhere.At("secret.csv"));
        File.CreateSymbolicLink(desk.At("runs/cold-1.csv"), elsewhere.At("secret.csv"));
        Assert.Contains(Bundle.Read(desk.Folder).Problems, problem => problem is { What: "A file of the bundle is a link.", Where: "runs/cold-1.csv" });
        Directory.Delete(desk.At("runs"), recursive: true);
        Directory.CreateSymbolicLink(desk.At("runs"), elsewhere.Folder);
        Assert.Contains(Bundle.Read(desk.Folder).Problems, problem => problem is { What: "A file of the bundle is a link.", Where: "runs" });
    }

    [Theory]
    [InlineData("ohms\n6,8\n", "A reading of run 'cold-1' has another number of fields than its run has columns.", "runs/cold-1.csv, line 2")]
    [InlineData("ohm\n6\n", "The heading of run 'cold-1' does not match its columns.", "runs/cold-1.csv, line 1")]
    [InlineData("", "The heading of run 'cold-1' does not match its columns.", "runs/cold-1.csv, line 1")]
    [InlineData("ohms\n\n6\n", "A line between readings is empty.", "runs/cold-1.csv, line 2")]
    [InlineData("ohms\n6\"8\n", "A quote stands inside a field without quotes.", "runs/cold-1.csv, line 2")]
    [InlineData("ohms\n\"6\"8\n", "Text follows a closing quote.", "runs/cold-1.csv, line 2")]
    [InlineData("ohms\n6\r7\n", "A carriage return stands alone in a field without quotes.", "runs/cold-1.csv, line 2")]
    [InlineData("ohms\n\"a\nb\"\n\"6\n", "A quote is never closed.", "runs/cold-1.csv, line 4")]
    public void A_slip_in_a_run_is_told_with_its_line(string csv, string what, string where)
    {
        using var desk = new Desk();
        var band = Studies.Band;
        BundleTests.Unpacked(band with { Trials = [band.Trials[0] with { Runs = [band.Trials[0].Runs[0] with { Readings = [] }] }] }, desk);
        desk.Put("runs/cold-1.csv", csv);
        var problem = Assert.Single(Bundle.Read(desk.Folder).Problems);
        Assert.Equal((what, where), (problem.What, problem.Where));
    }

    [Fact]
    public void Text_that_is_not_utf8_is_told_with_its_byte()
    {
        using var desk = new Desk();
        BundleTests.Unpacked(Studies.Band, desk);
        File.WriteAllBytes(desk.At("runs/cold-1.csv"), [.. "ohms\n"u8, 0xB5]);
        Assert.Contains(Bundle.Read(desk.Folder).Problems, problem => problem is { What: "A file is not UTF-8 text.", Where: "runs/cold-1.csv, byte 5", Value: "b5" });
    }

    [Fact]
    public void A_flood_of_problems_is_counted_and_cut()
    {
        using var desk = new Desk();
        BundleTests.Unpacked(Studies.Band, desk);
        desk.Put("runs/cold-1.csv", "ohms\n" + string.Concat(Enumerable.Repeat("1,2\n", 1000)));
        var problems = Bundle.Read(desk.Folder).Problems;
        Assert.Equal(201, problems.Count);
        Assert.Equal("There are 800 more problems of this study that are not listed.", problems[^1].What);
    }

    [Fact]
    public void What_is_no_bundle_at_all_is_told()
    {
        using var desk = new Desk();
        Assert.Equal("There is no bundle here.", Assert.Single(Bundle.Read(desk.At("none")).Problems).What);
        Assert.Equal("This is not a bundle.", Assert.Single(Bundle.Read(desk.Put("a.zip", "no zip")).Problems).What);
        Assert.Equal("This is not a bundle.", Assert.Single(Bundle.Read(desk.Put("b.zip", "")).Problems).What);
        Assert.Equal("The bundle has no study.json.", Assert.Single(Bundle.Read(Directory.CreateDirectory(desk.At("empty")).FullName).Problems).What);
    }

    private static MemoryStream Zip(Action<ZipArchive> more, string? cold = null)
    {
        var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in Bundle.Files(Studies.Band))
            {
                BundleTests.Add(archive, name, cold is not null && name == "runs/cold-1.csv" ? cold : text);
            }
            more(archive);
        }
        zip.Position = 0;
        return zip;
    }
}

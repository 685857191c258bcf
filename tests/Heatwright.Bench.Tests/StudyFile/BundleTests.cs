using System.IO.Compression;
using System.Text;
using CsCheck;
using Heatwright.StudyFile;

namespace Heatwright.Tests.StudyFile;

public class BundleTests
{
    [Fact]
    public void A_study_comes_back_from_a_zip_as_it_was() => Studies.Any.Sample(study =>
    {
        using var desk = new Desk();
        Assert.Empty(Bundle.Write(study, desk.At("a.zip")).Problems);
        var back = Bundle.Read(desk.At("a.zip"));
        Assert.Empty(back.Problems);
        Assert.Equal(Spelled.Out(study), Spelled.Out(back.Value));
    }, iter: 60);

    [Fact]
    public void A_study_comes_back_from_a_folder_as_it_was() => Studies.Any.Sample(study =>
    {
        using var desk = new Desk();
        var back = Bundle.Read(Unpacked(study, desk));
        Assert.Empty(back.Problems);
        Assert.Equal(Spelled.Out(study), Spelled.Out(back.Value));
    }, iter: 60);

    [Fact]
    public void The_same_study_gives_the_same_zip_byte_for_byte()
    {
        using var desk = new Desk();
        Bundle.Write(Studies.Band, desk.At("a.zip"));
        Bundle.Write(Bundle.Read(desk.At("a.zip")).Value, desk.At("b.zip"));
        Assert.Equal(File.ReadAllBytes(desk.At("a.zip")), File.ReadAllBytes(desk.At("b.zip")));
    }

    [Fact]
    public void A_zip_that_comes_by_a_wire_and_cannot_be_wound_back_is_read()
    {
        using var desk = new Desk();
        Bundle.Write(Studies.Band, desk.At("a.zip"));
        using var file = File.OpenRead(desk.At("a.zip"));
        using var wire = new BufferedOneWay(file);
        Assert.Equal(Spelled.Out(Studies.Band), Spelled.Out(Bundle.Read(wire).Value));
    }

    [Fact]
    public void A_zip_with_its_folder_on_top_and_what_desktops_add_is_read()
    {
        using var zip = new MemoryStream();
        using (var archive = new ZipArchive(zip, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var (name, text) in Bundle.Files(Studies.Band).Append(("README.md", "for people")).Append((".DS_Store", "x")))
            {
                Add(archive, $"band/{name}", text);
            }
            Add(archive, "__MACOSX/band/._study.json", "x");
        }
        zip.Position = 0;
        Assert.Equal(Spelled.Out(Studies.Band), Spelled.Out(Bundle.Read(zip).Value));
    }

    [Theory, InlineData("samples/rope-hot-knife"), InlineData("samples/measured-logs"), InlineData("samples/benchmark-mission-1")]
    public void Each_sample_opens(string sample) => Assert.Empty(Bundle.Read(Path.Combine(Repository.Root, sample)).Problems);

    [Fact]
    public void Study_json_reads_the_way_the_documentation_shows_it()
    {
        // Written by hand from docs/formats/bundle.md, with everything left out that may be left out.
        using var desk = new Desk();
        desk.Put("study.json", """
            {
              "format": "heatwright-bundle-1", "name": "foam bow", "seed": 18446744073709551615,
              "parts": [ { "id": "wire", "kind": "heater", "name": "bow wire", "stated": [ { "quantity": "ohms", "value": 2.20, "unit": "Ω", "plusMinus": 0, "origin": "claimed", "text": "label" } ] } ],
              "trials": [ { "id": "cold", "kind": "coldOhms", "part": "wire", "runs": [ { "id": "r1", "columns": [ { "name": "ohms", "unit": "Ω", "instrument": "" } ], "settings": { "leads": 0.3 },
                "struck": [ { "number": 2, "because": "loose clip" } ] } ] } ]
            }
            """);
        desk.Put("runs/r1.csv", "ohms\r\n\"2,2\"\r\nOL\r\n\"\"\r\n\" 2.1 \"\r\n\r\n");
        var study = Bundle.Read(desk.Folder).Value;
        Assert.Equal(ulong.MaxValue, study.Seed);
        Assert.Equal(2.2, study.Parts[0].Stated[0].Value);
        Assert.Equal(1, study.Parts[0].Count);
        var readings = study.Trials[0].Runs[0].Readings;
        Assert.Equal(["2,2", "OL", "", " 2.1 "], readings.Select(reading => reading.Raw[0]));
        Assert.Equal([null, "loose clip", null, null], readings.Select(reading => reading.StruckBecause));
        Assert.Equal([1, 2, 3, 4], readings.Select(reading => reading.Number));
        Assert.Equal(0.3, study.Trials[0].Runs[0].Settings["leads"]);
    }

    [Fact]
    public void A_study_that_could_not_be_read_back_is_not_written()
    {
        using var desk = new Desk();
        var broken = Studies.Band with { Name = "half \ud83d", Parts = [.. Studies.Band.Parts, Studies.Band.Parts[0]] };
        var problems = Bundle.Write(broken, desk.At("a.zip")).Problems;
        Assert.Equal(["the study, name", "the study, parts[9].id"], problems.Select(problem => problem.Where));
        Assert.Equal("", desk.Listing());
    }

    [Fact]
    public void A_bundle_that_cannot_be_put_there_leaves_what_is_there()
    {
        using var desk = new Desk();
        Directory.CreateDirectory(desk.At("a.zip"));
        string before = desk.Listing();
        Assert.Equal("The bundle cannot be written.", Assert.Single(Bundle.Write(Studies.Band, desk.At("a.zip")).Problems).What);
        Assert.Equal("The bundle cannot be written.", Assert.Single(Bundle.Write(Studies.Band, desk.At("no/such/a.zip")).Problems).What);
        Assert.Equal(before, desk.Listing());
    }

    internal static string Unpacked(Study study, Desk desk)
    {
        foreach (var (name, text) in Bundle.Files(study))
        {
            desk.Put(name, text);
        }
        foreach (var (name, bytes) in Bundle.Kept(study))
        {
            File.WriteAllBytes(desk.Put(name, ""), bytes);
        }
        return desk.Folder;
    }

    internal static void Add(ZipArchive archive, string name, string text)
    {
        using var stream = archive.CreateEntry(name).Open();
        stream.Write(Encoding.UTF8.GetBytes(text));
    }

    private sealed class BufferedOneWay(Stream inner) : Stream
    {
        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }
        public override int Read(byte[] buffer, int offset, int count) => inner.Read(buffer, offset, Math.Min(count, 7));
        public override void Flush() => inner.Flush();
        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}

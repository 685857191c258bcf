using System.Xml.Linq;
using Heatwright.DemoTruth;

namespace Heatwright.Tests.Samples;

/// <summary>The demo study is made by a generator that shares nothing with the product, and is kept as made.</summary>
public sealed class DemoTruthTests : IDisposable
{
    private static readonly string Kept = Path.Combine(Repository.Root, "samples", "rope-hot-knife");

    private readonly string folder = Path.Combine(Path.GetTempPath(), "demo-truth-" + Guid.NewGuid().ToString("N"));

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory, InlineData("rope-hot-knife"), InlineData("foam-bow"), InlineData("wax-pen"), InlineData("inspection-lamp"), InlineData("lens-band")]
    public void The_generator_makes_each_kept_study_again_byte_for_byte(string scene)
    {
        string keptFolder = Path.Combine(Repository.Root, "samples", scene);
        DemoStudy.Write(folder, new Hidden(scene));
        string[] kept = Files(keptFolder);
        Assert.Equal(kept, Files(folder));
        Assert.True(kept.Length > 6, "The study has its runs.");
        Assert.All(kept, file => Assert.Equal(File.ReadAllBytes(Path.Combine(keptFolder, file)), File.ReadAllBytes(Path.Combine(folder, file))));
    }

    [Fact]
    public void A_scene_that_does_not_exist_is_refused_with_those_that_do()
    {
        Directory.CreateDirectory(folder);
        Assert.Contains("foam-bow", Assert.Throws<ArgumentException>(() => new Hidden("boat")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hidden_value_moves_the_readings()
    {
        var hidden = new Hidden();
        hidden["stick.ohms"] = 3.0;
        DemoStudy.Write(folder, hidden);
        string run = Path.Combine("runs", "stick-cold-1.csv");
        Assert.NotEqual(File.ReadAllText(Path.Combine(Kept, run)), File.ReadAllText(Path.Combine(folder, run)));
    }

    [Fact]
    public void Renaming_changes_names_and_no_reading()
    {
        DemoStudy.Write(folder, new Hidden(), rename: 7);
        Assert.Equal(Readings(Kept), Readings(folder));
        string study = File.ReadAllText(Path.Combine(folder, "study.json"));
        Assert.All((string[])["\"blade\"", "\"cut\"", "round cell", "\"letter\": \"A\"", "stick", "cartridge", "ribbon"],
            name => Assert.DoesNotContain(name, study, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_hidden_value_that_does_not_exist_is_refused() =>
        Assert.Throws<ArgumentException>(() => { Directory.CreateDirectory(folder); new Hidden()["stick.ohm"] = 1; });

    [Fact]
    public void The_generator_references_nothing_of_src()
    {
        Directory.CreateDirectory(folder);
        string project = Path.Combine(Repository.Root, "tests", "Heatwright.DemoTruth", "Heatwright.DemoTruth.csproj");
        var items = XDocument.Load(project).Descendants().Select(element => element.Name.LocalName).ToList();
        Assert.Contains("OutputType", items);
        Assert.DoesNotContain("ProjectReference", items);
        Assert.DoesNotContain("Reference", items);
        Assert.DoesNotContain("Compile", items);
        Assert.DoesNotContain(typeof(DemoStudy).Assembly.GetReferencedAssemblies(), name => name.Name is "Heatwright" or "Heatwright.Core" or "Heatwright.Bench");
    }

    private static string[] Files(string root) =>
        [.. Directory.GetFiles(root, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(root, file)).Order(StringComparer.Ordinal)];

    private static string[] Readings(string root) =>
        [.. Directory.GetFiles(Path.Combine(root, "runs")).Select(File.ReadAllText).Order(StringComparer.Ordinal)];
}

using ArchUnitNET.Domain;
using ArchUnitNET.Loader;

namespace Heatwright.Tests.Architecture;

/// <summary>The arrows of Core point down only. This table is the whole law; docs/decisions/0002 says why.</summary>
public class LayerTests
{
    private static readonly Dictionary<string, string[]> MayUse = new()
    {
        ["Numerics"] = [],
        ["Quantities"] = ["Numerics"],
        ["Physics"] = ["Numerics"],
        ["Handbook"] = ["Quantities", "Physics", "Numerics"],
        ["Plant"] = ["Physics", "Numerics"],
        ["Parts"] = ["Numerics", "Quantities", "Physics", "Handbook", "Plant"],
        ["Trials"] = ["Parts", "Numerics", "Quantities", "Physics", "Handbook", "Plant"],
        ["Arrangements"] = ["Trials", "Parts", "Numerics", "Quantities", "Physics", "Handbook", "Plant"],
        ["Predictions"] = ["Trials", "Arrangements", "Parts", "Numerics", "Quantities", "Physics", "Handbook", "Plant"],
        ["Safety"] = ["Trials", "Predictions", "Arrangements", "Parts", "Numerics", "Quantities", "Physics", "Handbook", "Plant"],
        ["Verdicts"] = ["Safety", "Predictions", "Arrangements", "Trials", "Parts", "Numerics", "Quantities", "Physics", "Handbook", "Plant"],
        ["BuildSheets"] = ["Safety", "Predictions", "Arrangements", "Trials", "Parts", "Numerics", "Quantities", "Physics", "Handbook", "Plant"],
    };

    private static readonly ArchUnitNET.Domain.Architecture Core =
        new ArchLoader().LoadAssemblies(typeof(Heatwright.Quantities.Estimate).Assembly).Build();

    [Fact]
    public void Every_arrow_in_Core_points_down() => Assert.Empty(Arrows().Where(arrow => !Allowed(arrow.From, arrow.To)).Select(arrow => arrow.Words));

    [Fact]
    public void Every_folder_of_Core_stands_in_the_table() =>
        Assert.Empty(Core.Types.Where(type => type.FullName.StartsWith("Heatwright.", StringComparison.Ordinal)).Select(Layer)
            .Where(layer => layer is not null && !MayUse.ContainsKey(layer)).Distinct());

    [Fact]
    public void The_guard_sees_an_arrow_that_points_up() =>
        Assert.False(Allowed("Physics", "Trials"));

    [Fact]
    public void The_guard_sees_the_arrows_that_are_there() =>
        Assert.Contains(Arrows(), arrow => arrow is { From: "Quantities", To: "Numerics" });

    private static bool Allowed(string from, string to) => from == to || (MayUse.TryGetValue(from, out string[]? below) && below.Contains(to));

    private static IEnumerable<(string From, string To, string Words)> Arrows() =>
        from type in Core.Types
        let source = Layer(type)
        where source is not null
        from dependency in type.Dependencies
        let target = Layer(dependency.Target)
        where target is not null
        select (source, target, $"{type.FullName} ({source}) uses {dependency.Target.FullName} ({target})");

    private static string? Layer(IType type)
    {
        string[] parts = type.FullName.Split('.');
        return parts is ["Heatwright", _, _, ..] ? parts[1] : null;
    }
}

using System.Text.Json;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials.Kinds;

/// <summary>Every check fires on one case and keeps silent on a near one; cases by hand in rule-cases.json. Thresholds: common practice, no source.</summary>
public class RuleBookTests
{
    private static readonly JsonElement[] Cases = [.. JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Root, "tests", "Heatwright.Core.Tests", "Trials", "Kinds", "rule-cases.json"))).RootElement.EnumerateArray()];

    public static TheoryData<string> Ids => [.. RuleBook.All.Select(rule => rule.Id)];

    [Theory, MemberData(nameof(Ids))]
    public void A_check_fires_on_its_case(string id)
    {
        var remark = Said(id, "fires").SingleOrDefault(remark => remark.Rule == id);
        Assert.NotNull(remark);
        Assert.NotEmpty(remark.Words);
        Assert.NotEmpty(remark.Remedy);
        Assert.DoesNotContain("?", remark.Words.Replace("loose?", "", StringComparison.Ordinal).Replace("mode?", "", StringComparison.Ordinal).Replace("the other way round?", "", StringComparison.Ordinal).Replace("another unit?", "", StringComparison.Ordinal).Replace("read elsewhere?", "", StringComparison.Ordinal)
            .Replace("in this reading?", "", StringComparison.Ordinal).Replace("point?", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Ids))]
    public void A_check_keeps_silent_on_the_case_beside_it(string id) => Assert.DoesNotContain(Said(id, "silent"), remark => remark.Rule == id);

    [Theory, MemberData(nameof(Ids))]
    public void A_check_without_its_numbers_keeps_silent(string id) =>
        Assert.DoesNotContain(RuleBook.Of(new Dictionary<string, double>()), remark => remark.Rule == id);

    /// <summary>By hand: (4.70 − 3.82)/7 − 0.025 = 0.1007 Ω.</summary>
    [Fact]
    public void A_loose_clip_is_told_in_ohms() => Assert.StartsWith("3.82 V at 7 A means 0.101 Ω more than the last run: clip loose?", Said("clip", "fires").Single(remark => remark.Rule == "clip").Words, StringComparison.Ordinal);

    [Fact]
    public void Checks_run_live_on_readings()
    {
        var remarks = TrialFits.Check("capacity", Given.Readings("capacity", [("time", [0, 60, 120, 180, 240, 300]), ("volts", [4.1, 4.0, 3.6, 3.95, 3900, 3.9]), ("amps", [1, 1, 1, 1, 1, 1])], [("rest", 300)]));
        Assert.True(remarks.IsFine);
        Assert.Contains(remarks.Value, remark => remark is { Rule: "loose", Reading: 3, LeftOut: true });
        Assert.Contains(remarks.Value, remark => remark is { Reading: 5, LeftOut: true });
        Assert.Contains(remarks.Value, remark => remark is { Rule: "S30", Reading: 0 });
        Assert.DoesNotContain(remarks.Value, remark => remark.Reading is 1 or 2 or 4 or 6);
    }

    private static IReadOnlyList<TrialRemark> Said(string id, string which)
    {
        var facts = Cases.Single(one => one.GetProperty("id").GetString() == id).GetProperty(which).EnumerateObject().ToArray();
        return RuleBook.Of(
            facts.Where(fact => fact.Value.ValueKind == JsonValueKind.Number).ToDictionary(fact => fact.Name, fact => fact.Value.GetDouble(), StringComparer.Ordinal),
            facts.Where(fact => fact.Value.ValueKind == JsonValueKind.Array).ToDictionary(fact => fact.Name["series:".Length..], fact => fact.Value.EnumerateArray().Select(v => v.GetDouble()).ToArray(), StringComparer.Ordinal));
    }
}

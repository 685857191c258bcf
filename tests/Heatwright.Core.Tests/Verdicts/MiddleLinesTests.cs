using Heatwright.Parts;
using Heatwright.Plant;
using Heatwright.Predictions;
using Heatwright.Safety;
using Heatwright.Verdicts;
using Told = Heatwright.Verdicts.Told;

namespace Heatwright.Tests.Verdicts;

/// <summary>Lines of a brief by one run, written down.</summary>
public sealed class MiddleLinesTests
{
    private static readonly Duty Work = new(320, 20, 4, 5, 220, 0.22, 0, 40, 0, "by hand");

    private static readonly Outcome Run = new(25, 90, 38, 41, 1800, StopReason.CutOff, default, 0.2)
    {
        HottestC = 330,
        RecoveryS = 6,
        LowestAtWorkC = 305,
        HighestA = 9,
        LowestV = 6.4,
        FullLightS = 1200,
    };

    private static double Tell(RequirementQuantity quantity, Outcome outcome, int parallel = 1) =>
        Told.ByRun(new("r", "", quantity, 0, "", true, true), new Brief("", "tip", "cut", 20, []) { Duty = Work }, parallel)!(outcome);

    [Theory, InlineData(RequirementQuantity.WarmUpTime, 25), InlineData(RequirementQuantity.PiecesPerCharge, 90), InlineData(RequirementQuantity.GripTemperature, 311.15), InlineData(RequirementQuantity.CaseTemperature, 311.15)]
    [InlineData(RequirementQuantity.CellTemperature, 314.15), InlineData(RequirementQuantity.RunTime, 1800), InlineData(RequirementQuantity.EndTemperature, 603.15), InlineData(RequirementQuantity.RecoveryTime, 6)]
    [InlineData(RequirementQuantity.Steadiness, 15), InlineData(RequirementQuantity.WorkRate, 0.05), InlineData(RequirementQuantity.CellCurrent, 9), InlineData(RequirementQuantity.ProtectionTrips, 0)]
    [InlineData(RequirementQuantity.ControllerVolts, 6.4), InlineData(RequirementQuantity.FullLightTime, 1200)]
    public void A_run_tells_its_quantities_in_si(RequirementQuantity quantity, double si) => Assert.Equal(si, Tell(quantity, Run), 1e-9);

    [Fact]
    public void What_did_not_happen_in_a_run_has_its_own_number()
    {
        Assert.Equal(3, Tell(RequirementQuantity.CellCurrent, Run, 3));
        Assert.Equal(1, Tell(RequirementQuantity.ProtectionTrips, Run with { Stop = StopReason.Tripped }));
        Assert.Equal(double.PositiveInfinity, Tell(RequirementQuantity.RecoveryTime, Run with { RecoveryS = double.NaN }));
        Assert.Equal(double.PositiveInfinity, Tell(RequirementQuantity.Steadiness, Run with { LowestAtWorkC = double.NaN }));
        Assert.Equal(0, Tell(RequirementQuantity.WorkRate, Run with { Pieces = 0 }));
        Assert.Equal(0, Tell(RequirementQuantity.ControllerVolts, Run with { LowestV = double.PositiveInfinity }));
        Assert.Equal(0, Tell(RequirementQuantity.FullLightTime, Run with { FullLightS = double.NaN }));
        Assert.Null(Told.ByRun(new("r", "", RequirementQuantity.Mass, 0, "", true, true), new Brief("", "", "", 20, []), 1));
    }

    private static readonly Requirement[] Lines =
    [
        new("ready", "", RequirementQuantity.WarmUpTime, 25, "s", true, true), new("long", "", RequirementQuantity.RunTime, 31, "min", false, true), new("cool", "", RequirementQuantity.GripTemperature, 37, "°C", true, true),
        new("light", "", RequirementQuantity.FullLightTime, 20, "min", false, true), new("mass", "", RequirementQuantity.Mass, 1, "kg", true, true), new("stuck", "", RequirementQuantity.StuckSwitchTemperature, 400, "°C", true, true),
    ];

    private static readonly Brief Brief = new("", "tip", "cut", 20, Lines) { Duty = Work };

    /// <summary>By hand: 25 s are 25 s at most; 30 min are not 31; 38 °C are not 37 °C.</summary>
    [Fact]
    public void Only_lines_that_a_run_tells_and_the_load_knows_are_compared()
    {
        var heater = MiddleLines.ByRun(Brief, WrittenVerdict.Tool("A"), Run);
        Assert.Equal([("ready", 25.0, true), ("long", 30.0, false), ("cool", 38.0, false)], heater.Select(line => (line.Requirement.Id, Math.Round(line.Value!.Value, 9), line.Kept!.Value)));
        var lamp = MiddleLines.ByRun(Brief, WrittenVerdict.Tool("A") with { Heater = null, Lamp = new("light") }, Run);
        Assert.Equal(["long", "cool", "light"], lamp.Select(line => line.Requirement.Id));
        Assert.True(lamp[2].Kept);
        var never = MiddleLines.ByRun(Brief, WrittenVerdict.Tool("A"), Run with { WarmUpS = double.PositiveInfinity })[0];
        Assert.Equal((null, false, "never"), (never.Value, never.Kept, never.Shown));
    }

    [Fact]
    public void Without_a_run_only_what_stands_is_known()
    {
        Part[] parts = [.. new[] { ("cell", PartKind.Cell), ("switch", PartKind.Switch), ("leads", PartKind.Leads), ("contacts", PartKind.Contacts), ("handle", PartKind.Handle), ("tip", PartKind.Heater) }
            .Select(one => new Part(new(one.Item1), one.Item2, one.Item1 == "contacts" ? "holder" : one.Item1, [new(PartQuantities.Mass, 100, "g", 0, "measured", "scale")]))];
        var lines = MiddleLines.Of(Brief, new Heatwright.Arrangements.Shelf(parts, []), WrittenVerdict.Tool("A"), new SafetyFindings([], [], 350), null, 1);
        Assert.Equal(["not known", "not known", "not known", "not known", "600 g", "not known"], lines.Select(line => line.Requirement.Id == "mass" ? "600 g" : line.Shown));
        Assert.Equal((0.6, true), (Math.Round(lines[4].Value!.Value, 9), lines[4].Kept));
        Assert.All(lines.Where(line => line.Requirement.Id != "mass"), line => Assert.Equal((null, null), (line.Value, line.Kept)));
    }

    [Fact]
    public void With_a_run_a_heater_gives_no_light_and_a_stuck_switch_is_told_by_its_findings()
    {
        var tool = new Safety.SafetyTool { CapacityAh = 0.1 };
        var run = Predict.Middle(tool.Builder);
        var lines = MiddleLines.Of(Brief with { Requirements = [Lines[1], Lines[3], Lines[5]] }, tool.Shelf, tool.Arrangement, new SafetyFindings([], [], 350), run, 1);
        Assert.Equal((Math.Round(run.RunTimeS / 60, 6), false), (Math.Round(lines[0].Value!.Value, 6), lines[0].Kept));
        Assert.Equal((null, false, "no light"), (lines[1].Value, lines[1].Kept, lines[1].Shown));
        Assert.Equal((350, true), (Math.Round(lines[2].Value!.Value, 6), lines[2].Kept));
    }
}

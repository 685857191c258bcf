using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>Which parts are told of, in which order, and which trials of them lean on each other. Every expected value by hand.</summary>
public sealed class PartBenchOrderTests
{
    private static Part Heater(string id, PartKind kind = PartKind.Heater) => new(new(id), kind, id, []);

    private static Trial Cold(string part, string id, string meter, string ohms, double at = 20) => new(new(id), TrialKind.ColdOhms, new(part), [new(new(id + "-1"), [new("ohms", "Ω", meter)], [new(1, [ohms])]) { Settings = new Dictionary<string, double> { ["leads"] = 0.1, ["at"] = at } }]);

    private static readonly Instrument[] Meters = [new("cheap", "", [new("Ω", 5, 0.2, 0.1)]), new("better", "", [new("Ω", 0.5, 0.01, 0.01)])];

    /// <summary>5 % of 30 Ω are 1.5 Ω, 0.5 % 0.15 Ω. Of which nobody said how well it was read, 0.8 % and three digits, 0.54 Ω, are assumed.</summary>
    [Theory, InlineData("cheap", "better", "second"), InlineData("better", "cheap", "first"), InlineData("none", "cheap", "first"), InlineData("none", "better", "second"), InlineData("", "better", "second"), InlineData("none", "none", "first")]
    public void The_surer_counts_and_one_of_which_nothing_is_said_is_a_usual_one(string first, string second, string counts)
    {
        var found = PartBench.One(Heater("a"), [Cold("a", "first", first, "30.1"), Cold("a", "second", second, "31.1")], new InstrumentCauses(Meters));
        Assert.Equal(counts, Assert.IsType<Origin.Fitted>(found.Find(PartQuantities.Ohms)!.Origin).Trial.Name);
    }

    /// <summary>10.4 Ω at 30 °C and 18 Ω at 220 °C are 0.004 a kelvin at 20 °C, by 10·(1 + 0.004·(T − 20)); the temperature of the cold ohms is that of the trial that counts.</summary>
    [Theory, InlineData(true), InlineData(false)]
    public void Hot_ohms_take_the_temperature_of_the_cold_ones_that_count(bool first)
    {
        Trial hot = new(new("hot"), TrialKind.HotOhms, new("a"), [new(new("hot-1"), [new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")], [new(1, ["36", "2", "220"])])]);
        Trial sure = Cold("a", "sure", "better", "10.5", 30), vague = Cold("a", "vague", "cheap", "10.9", 5);
        Assert.Equal(0.004, PartBench.One(Heater("a"), first ? [sure, vague, hot] : [hot, vague, sure], new InstrumentCauses(Meters)).Find(PartQuantities.Alpha)!.Value, 1e-9);
    }

    /// <summary>A planned warm-up without runs is nothing to fit; of anything but a heater no hot ohms are told by it.</summary>
    [Theory, InlineData(PartKind.Heater, true), InlineData(PartKind.StepUp, false)]
    public void A_warm_up_tells_hot_ohms_of_a_heater_only(PartKind kind, bool tells)
    {
        Column[] columns = [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", ""), new("degrees", "°C", "")];
        string[] degrees = ["20", "58.8", "82.5", "97", "105.8", "111.2", "114.5", "116.5"];
        Trial planned = new(new("planned"), TrialKind.WarmUp, new("a"), []);
        Assert.Empty(PartBench.One(Heater("a", kind), [planned], new InstrumentCauses(Meters)).Problems);
        Trial up = new(new("up"), TrialKind.WarmUp, new("a"), [new(new("up-1"), columns, [.. degrees.Select((c, i) => new Reading(i + 1, [FormattableString.Invariant($"{100 * i}"), "5", "2", c]))]) { Settings = new Dictionary<string, double> { ["air"] = 20 } }]);
        var found = PartBench.One(Heater("a", kind), [Cold("a", "sure", "better", "2.3"), up], new InstrumentCauses(Meters));
        Assert.Equal(tells, found.Find(PartQuantities.Alpha) is not null);
        Assert.NotNull(found.WarmUp);
        Assert.NotNull(found.Find(PartQuantities.HeatCapacity));
        Assert.Null(found.Cell);
    }
}

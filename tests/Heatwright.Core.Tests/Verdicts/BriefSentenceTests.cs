using CsCheck;
using Heatwright.Quantities;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Verdicts;

/// <summary>Sentences as makers say them; what they mean was written down by hand.</summary>
public sealed class BriefSentenceTests
{
    /// <summary>The pace of a promise is the pace of the work.</summary>
    [Theory]
    [InlineData("40 cuts on one charge, one every 20 s", 20.0)]
    [InlineData("want 2: 40 cuts on one charge, a piece every 1.5 min, in still air", 90.0)]
    [InlineData("40 cuts on one charge", null)]
    [InlineData("40 cuts on one charge, one every now and then", null)]
    [InlineData("grip at most 43 °C, one every 20 s", null)]
    public void One_every_so_often_is_said_of_the_work(string sentence, double? everyS) => Assert.Equal(everyS, BriefSentence.Read(sentence).Value.EveryS);

    [Theory]
    [InlineData("40 cuts on one charge, one every 20 s", 20, "")]
    [InlineData("40 cuts on one charge", 30, "")]
    [InlineData("40 cuts on one charge, one every 20 s", 30, "reckoned with one every 30 s, the pace of the work, and not one every 20 s, as the sentence says")]
    public void A_promise_of_another_pace_than_the_work_has_is_told(string sentence, double everyS, string told)
    {
        var line = BriefSentence.Read(sentence).Value.Line;
        Assert.Equal(told, BriefSentence.OtherThanSaid(line, new("", "blade", "cut", 20, [line]) { Duty = new(320, everyS, 4, 5, 220, 0.2, 0, 40, 0, "by hand") }));
        Assert.Equal("", BriefSentence.OtherThanSaid(line, new("", "lamp head", "use", 20, [line]))); // no work, no pace
    }

    [Theory]
    [InlineData("blade at 320 °C within 25 s from 20 °C", RequirementQuantity.WarmUpTime, 25, "s", true, true)]
    [InlineData("The blade is at 320 °C within 25 s of switching on.", RequirementQuantity.WarmUpTime, 25, "s", true, true)]
    [InlineData("40 cuts on one charge, one every 20 s", RequirementQuantity.PiecesPerCharge, 40, "", false, true)]
    [InlineData("at least 60 inserts per charge", RequirementQuantity.PiecesPerCharge, 60, "", false, true)]
    [InlineData("grip at most 43 °C, held longer than 10 min", RequirementQuantity.GripTemperature, 43, "°C", true, true)]
    [InlineData("The grip stays below 43C", RequirementQuantity.GripTemperature, 43, "°C", true, true)]
    [InlineData("No cell gets hotter than 60 °C.", RequirementQuantity.CellTemperature, 60, "°C", true, true)]
    [InlineData("fits a handle of 34 mm inside diameter", RequirementQuantity.InsideDiameter, 34, "mm", true, true)]
    [InlineData("A USB source charges it in at most 6 h", RequirementQuantity.ChargeTime, 6, "h", true, true)]
    [InlineData("want: all parts cost at most 30", RequirementQuantity.PartsCost, 30, "money", true, false)]
    [InlineData("want 2: weighs at most 250 g", RequirementQuantity.Mass, 250, "g", true, false)]
    [InlineData("runs at least 30 min, from full cells", RequirementQuantity.RunTime, 30, "min", false, true)]
    [InlineData("full light for 5 h", RequirementQuantity.FullLightTime, 5, "h", false, true)]
    [InlineData("It gives its full light for at least 300 min, from full cells", RequirementQuantity.FullLightTime, 300, "min", false, true)]
    [InlineData("full light at least 5", RequirementQuantity.FullLightTime, 5, "h", false, true)]
    [InlineData("6 h on one charge", RequirementQuantity.RunTime, 6, "h", false, true)]
    [InlineData("runs for 6 hours on one charge, from full cells", RequirementQuantity.RunTime, 6, "h", false, true)]
    [InlineData("It lasts at least 45 minutes per charge", RequirementQuantity.RunTime, 45, "min", false, true)]
    [InlineData("lasts 2 h", RequirementQuantity.RunTime, 2, "h", false, true)]
    [InlineData("runs 30 min", RequirementQuantity.RunTime, 30, "min", false, true)]
    [InlineData("cell current at most 10 A", RequirementQuantity.CellCurrent, 10, "A", true, true)]
    [InlineData("charger heat under 1.5 W", RequirementQuantity.ChargerHeat, 1.5, "W", true, true)]
    [InlineData("stand-by at least 30 d", RequirementQuantity.StandByTime, 30, "d", false, true)]
    [InlineData("stuck-on temperature at most 450 °C", RequirementQuantity.StuckSwitchTemperature, 450, "°C", true, true)]
    [InlineData("controller volts at least 3.0 V", RequirementQuantity.ControllerVolts, 3.0, "V", false, true)]
    [InlineData("case at most 50 °C", RequirementQuantity.CaseTemperature, 50, "°C", true, true)]
    public void A_sentence_means_its_requirement(string sentence, RequirementQuantity quantity, double limit, string unit, bool atMost, bool must)
    {
        var read = BriefSentence.Read(sentence);
        Assert.True(read.IsFine, read.IsFine ? "" : read.Problems[0].ToString());
        var line = read.Value.Line;
        Assert.Equal((quantity, unit, atMost, must), (line.Quantity, line.Unit, line.AtMost, line.Must));
        Assert.Equal(limit, line.Limit, 1e-9);
    }

    [Fact]
    public void A_warm_up_sentence_tells_target_and_air_and_a_comma_begins_the_condition()
    {
        var warm = BriefSentence.Read("blade at 320 °C within 25 s from 20 °C").Value;
        Assert.Equal(320, warm.TargetC!.Value, 1e-9);
        Assert.Equal(20, warm.AirC!.Value, 1e-9);
        Assert.Equal("held longer than 10 min", BriefSentence.Read("grip at most 43 °C, held longer than 10 min").Value.Line.Condition);
        Assert.Equal(2, BriefSentence.Read("want 2: weighs at most 250 g").Value.Line.Weight);
        // 608 °F are (608 − 32) · 5/9 = 320 °C, by the definition of the scale.
        Assert.Equal(320, BriefSentence.Read("blade at 608 °F within 25 s").Value.TargetC!.Value, 1e-9);
    }

    /// <summary>A sentence that begins at 20 °C in air of 22 °C names its own start once, and it is said that the air counts.</summary>
    [Theory]
    [InlineData(22, "reckoned from 22 °C, the air, and not from 20 °C, as the sentence says")]
    [InlineData(20, "")]
    public void A_warm_up_that_begins_beside_the_air_says_so_and_has_one_start(double airC, string told)
    {
        var line = BriefSentence.Read("blade at 75 C within 4 min from 20 C").Value.Line;
        var brief = new Brief("", "blade", "cut", airC, [line]) { Duty = new(75, 20, 4, 5, 45, 0.2, 0, 40, 0, "") };
        Assert.Equal("blade at 75 °C within 4 min from 20 °C", BriefSentence.Say(line, brief));
        Assert.Equal(told, BriefSentence.OtherThanSaid(line, brief));
        Assert.Equal($"blade at 75 °C within 4 min from {airC} °C, full cells", BriefSentence.Say(line with { Condition = "full cells" }, brief));
    }

    [Theory]
    [InlineData("blade at 320 °C within 25 mm", "25 mm")]
    [InlineData("grip at most 43 W", "43 W")]
    public void A_unit_of_the_wrong_kind_is_refused_and_named(string sentence, string typed)
    {
        var read = BriefSentence.Read(sentence);
        Assert.False(read.IsFine);
        Assert.Contains(typed, read.Problems[0].ToString(), StringComparison.Ordinal);
        Assert.NotEmpty(read.Problems[0].Next);
    }

    [Fact]
    public void A_sentence_that_promises_nothing_is_refused_with_an_example()
    {
        var read = BriefSentence.Read("it should be nice");
        Assert.False(read.IsFine);
        Assert.Contains("grip at most 43 °C", read.Problems[0].Next, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_lines_of_one_kind_get_ids_of_their_own() =>
        Assert.Equal("grip-2", BriefSentence.Read("grip at most 43 °C", ["grip"]).Value.Line.Id);

    /// <summary>Whatever a brief can hold, what is said of it reads back as the same line.</summary>
    [Fact]
    public void What_is_said_of_a_requirement_reads_back_as_it() =>
        Gen.Select(Gen.Int[0, Enum.GetValues<RequirementQuantity>().Length - 1].Select(i => Enum.GetValues<RequirementQuantity>()[i]), Gen.Int[1, 4000], Gen.Bool, Gen.Bool, Gen.Int[1, 9]).Sample((quantity, limit, atMost, must, weight) =>
        {
            string unit = UnitOf(quantity);
            var line = new Requirement("x", "", quantity, quantity is RequirementQuantity.PiecesPerCharge ? limit : limit / 8.0, unit, atMost, must) { Weight = must ? 1 : weight, Condition = "full cells" };
            var brief = new Brief("", "blade", "cut", 20, [line]) { Duty = new(320, 20, 4, 5, 220, 0.2, 0, 40, 0, "") };
            string said = BriefSentence.Say(line, brief);
            var read = BriefSentence.Read(said);
            Assert.True(read.IsFine, read.IsFine ? "" : said + read.Problems[0]);
            var back = read.Value.Line;
            Assert.Equal((line.Quantity, line.Unit, line.AtMost, line.Must, line.Weight, line.Condition), (back.Quantity, back.Unit, back.AtMost, back.Must, back.Weight, back.Condition));
            Assert.Equal(line.Limit, back.Limit, 1e-9 * line.Limit);
        });

    private static string UnitOf(RequirementQuantity quantity) => quantity switch
    {
        RequirementQuantity.WarmUpTime or RequirementQuantity.RecoveryTime => "s",
        RequirementQuantity.ChargeTime or RequirementQuantity.FullLightTime => "h",
        RequirementQuantity.RunTime => "min",
        RequirementQuantity.StandByTime => "d",
        RequirementQuantity.PiecesPerCharge or RequirementQuantity.ProtectionTrips => "",
        RequirementQuantity.Steadiness => "K",
        RequirementQuantity.WorkRate => "1/h",
        RequirementQuantity.InsideDiameter or RequirementQuantity.ToolLength => "mm",
        RequirementQuantity.Mass => "g",
        RequirementQuantity.ChargerHeat => "W",
        RequirementQuantity.CellCurrent => "A",
        RequirementQuantity.ControllerVolts => "V",
        RequirementQuantity.PartsCost or RequirementQuantity.CostAtTen or RequirementQuantity.CostAtHundred => "money",
        _ => "°C",
    };

    /// <summary>The work was set to another target after the sentence was said, or is tried so: the time is that to the new one.</summary>
    [Theory, InlineData(90, "reckoned to 90 °C, the target of the work, and not to 75 °C, as the sentence says"), InlineData(75, "")]
    public void A_warm_up_that_is_reckoned_to_another_target_than_it_says_is_told(double targetC, string told)
    {
        var line = BriefSentence.Read("blade at 75 °C within 4 min").Value.Line;
        Assert.Equal(told, BriefSentence.OtherThanSaid(line, new("", "blade", "cut", 20, [line]) { Duty = new(targetC, 60, 4, 5, 60, 0.2, 0, 40, 0, "by hand") }));
    }
}

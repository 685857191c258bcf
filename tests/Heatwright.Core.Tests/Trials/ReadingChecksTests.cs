using System.Globalization;
using Heatwright.Trials;

namespace Heatwright.Tests.Trials;

/// <summary>What the checks say of single readings before any fit. Readings are written 'column unit: values; column unit: values', one value alone stands in every row, '-' is none;
/// what is told 'number effect words', one after the other. Every limit is asked just within and just beyond; the ratio or difference that decides stands beside.</summary>
public sealed class ReadingChecksTests
{
    /// <summary>A thousand is 10^3 within a quarter of a decade: 562 to 1778. Ten is 10^1 within 0.15 of one: 7.08 to 14.13. Of two readings it cannot be told which is wrong.</summary>
    [Theory]
    [InlineData(TrialKind.HotOhms, "volts V: 4 4000", "2 kept '4' and '4000' are about a thousand times apart: unit slip")]
    [InlineData(TrialKind.HotOhms, "volts V: 4000 4", "2 kept a thousand times apart")]
    [InlineData(TrialKind.HotOhms, "volts V: -4 4000", "2 kept a thousand times apart")]
    [InlineData(TrialKind.HotOhms, "volts V: 4 2240", "")] // 560
    [InlineData(TrialKind.HotOhms, "volts V: 4 2280", "2 kept a thousand times apart")] // 570
    [InlineData(TrialKind.HotOhms, "volts V: 4 7080", "2 kept a thousand times apart")] // 1770
    [InlineData(TrialKind.HotOhms, "volts V: 4 7160", "")] // 1790
    [InlineData(TrialKind.HotOhms, "volts V: 4 40", "")]
    [InlineData(TrialKind.HotOhms, "volts V: 0 40", "")]
    [InlineData(TrialKind.HotOhms, "degrees °C: 1.5 1500", "")]
    [InlineData(TrialKind.ColdOhms, "ohms Ω: 3.7 37", "2 kept '3.7' and '37' are about ten times apart: decimal point")]
    [InlineData(TrialKind.ColdOhms, "ohms Ω: 1 7.05", "")]
    [InlineData(TrialKind.ColdOhms, "ohms Ω: 1 7.1", "2 kept ten times apart")]
    [InlineData(TrialKind.ColdOhms, "ohms Ω: 14.1 1", "2 kept ten times apart")]
    [InlineData(TrialKind.ColdOhms, "ohms Ω: 1 14.2", "")]
    [InlineData(TrialKind.ColdOhms, "ohms Ω: 1 1000", "2 kept a thousand times apart")]
    public void Two_readings_far_apart_are_asked_about(TrialKind kind, string readings, string told) => Told(kind, readings, told);

    [Fact]
    public void A_remark_names_the_reading_by_its_own_number_when_one_before_it_was_struck_out()
    {
        Run run = new(new("r"), [new("ohms", "Ω", "")], [new(1, ["3.6"], "clip fell off"), new(2, ["3.7"]), new(3, ["37"]), new(4, ["-"])]);
        var read = ReadingTable.Read(run, new(new("t"), TrialKind.ColdOhms, new("p"), [run]));
        Assert.Equal([(1, Remark.LeftOut), (3, Remark.Kept)], read.Remarks.Select(remark => (remark.Reading, remark.Effect)));
        Assert.Contains("clip fell off", read.Remarks[0].Words, StringComparison.Ordinal);
        Assert.Contains("'3.7' and '37'", read.Remarks[1].Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("volts V: 4 4 4000 4 4", "3 left out volts '4000' is about a thousand times what stands around it: unit slip? Where 4 V was meant, type that.")]
    [InlineData("ohms Ω: 3.74 3.75 3750 3.75 3.76", "3 left out ohms '3750' is about a thousand times what stands around it: unit slip? Where 3.75 Ω was meant, type that.")] // it counts in ohms already
    [InlineData("volts V: 4 4 0.004 4 4", "3 left out volts '0.004' is about a thousandth of")]
    [InlineData("time s: 1 2 3000 4 5", "")] // times may run as they like
    [InlineData("degrees °C: 1.5 1.4 1500 1.5 1.6", "")]
    [InlineData("amps A: -4 -4 -4000 4 4", "3 left out a thousand times")]
    [InlineData("volts V: 4 0 4 0 4000", "5 left out a thousand times")] // noughts say nothing: two fours stand around
    [InlineData("volts V: 4 8 6000", "3 left out a thousand times")] // two around agree within a factor of 2: 6000/6
    [InlineData("volts V: 4 8.1 6000", "")]
    [InlineData("volts V: 4 - 8 - 6000", "5 left out a thousand times")]
    [InlineData("volts V: 4 4000 4000 40 40", "")] // 2020 around the first, 505 times
    [InlineData("volts V: 4 4000 4000 40 40 4000", "")] // the sixth stands too far from it
    [InlineData("volts V: 4000 40 40 4000 4000 4", "")]
    [InlineData("volts V: 4 4000 4000 4000 40", "1 left out a thousandth")]
    [InlineData("volts V: 40 4000 4000 4000 4", "5 left out a thousandth")]
    public void A_reading_a_thousand_times_off_those_around_it_is_left_out(string readings, string told) => Told(TrialKind.HotOhms, readings, told);

    /// <summary>By hand: a hundredth of the largest, 4, is 0.04; what is smaller is next to nothing.</summary>
    [Theory]
    [InlineData("amps A: 4 4 4 4 0.004 4 4 4 4 0.004 4 4 4 4 0.004 4 4 4", "")]
    [InlineData("amps A: -4 -4 -4 -4 -0.004 -4 -4 -4 -4 -0.004 -4 -4 -4 -4 -0.004 -4 -4 -4", "")]
    [InlineData("amps A: 4 4 4 4 0.004 4 4 4 4 0.004 4 4 4 4", "5 left out a thousandth; 10 left out a thousandth")]
    [InlineData("amps A: 4 4 4 4 0.004 4 4 4 4 0.04 4 4 4 4 0.04 4 4 4", "5 left out a thousandth")]
    [InlineData("amps A: 4 4 4 4 0.004 4 4 4 4 0.039 4 4 4 4 0.039 4 4 4", "")]
    [InlineData("amps A: 4 4 4 4 0.004 4 4 4 4 0.004 4 4 4 4 0.004 4 4 4 4000", "19 left out a thousand times")]
    public void A_load_that_rests_three_times_is_switched_off_on_purpose(string readings, string told) => Told(TrialKind.HotOhms, readings, told);

    [Theory]
    [InlineData(TrialKind.ColdOhms, "ohms Ω: 3.7 3.7 0.37 3.7 3.7", "3 left out is about a tenth of what stands around it: decimal point? Where 3.7 Ω was meant, type that.")]
    [InlineData(TrialKind.ColdOhms, "ohms Ω: 3.7 3.7 37", "3 left out ten times")]
    [InlineData(TrialKind.ColdOhms, "ohms Ω: 3.7 3.7 29.6", "3 left out ten times")] // eight times, 0.9 of a decade
    [InlineData(TrialKind.HotOhms, "ohms Ω: 3.7 3.7 37 3.7 3.7", "")]
    [InlineData(TrialKind.Discharge, "volts V: 4 4 4 4 40 4 4 4 8", "5 left out ten times")]
    [InlineData(TrialKind.Discharge, "volts V: 4 4 4 4 40 4 4 8 8", "")] // two of eight apart: they do not hold together
    [InlineData(TrialKind.Pulse, "volts V: 4 4 4 40", "4 left out ten times")]
    [InlineData(TrialKind.Pulse, "volts V: 4 4 40", "")] // two around are too few for that
    [InlineData(TrialKind.Discharge, "volts V: 4 4 6 40", "")] // 1.5 times the middle: apart
    [InlineData(TrialKind.Discharge, "volts V: 4 4 5.99 40", "4 left out ten times")]
    [InlineData(TrialKind.Discharge, "volts V: 6 6 4 60", "")]
    [InlineData(TrialKind.Discharge, "volts V: 6 6 4.01 60", "4 left out ten times")]
    [InlineData(TrialKind.Discharge, "amps A: 4 4 4 4 40 4 4 4 4", "")]
    [InlineData(TrialKind.WarmUp, "volts V: 4 4 4 4 40 4 4 4 4", "")] // nobody knows whether it was turned up
    [InlineData(TrialKind.WarmUp, "volts V: 4 4 4 4 40 4 4 4 4; amps A: - - - - 1 - - - -", "")]
    [InlineData(TrialKind.WarmUp, "volts V: 4 4 4 4 40 4 4 4 4; amps A: 1", "5 left out ten times")]
    [InlineData(TrialKind.WarmUp, "amps A: 1; volts V: 4 4 4 4 0.4 4 4 4 4", "5 left out a tenth")]
    [InlineData(TrialKind.WarmUp, "amps A: -1; volts V: 4 4 4 4 40 4 4 4 4", "5 left out ten times")]
    [InlineData(TrialKind.WarmUp, "amps A: 1.5 1.5 1.5 1.5 2.24 1.5 1.5 1.5 1.5; volts V: 4 4 4 4 40 4 4 4 4", "5 left out ten times")]
    [InlineData(TrialKind.WarmUp, "amps A: 1.5 1.5 1.5 1.5 2.25 1.5 1.5 1.5 1.5; volts V: 4 4 4 4 40 4 4 4 4", "")]
    [InlineData(TrialKind.WarmUp, "amps A: 1.5 1.5 1.5 1.5 1.01 1.5 1.5 1.5 1.5; volts V: 4 4 4 4 40 4 4 4 4", "5 left out ten times")]
    [InlineData(TrialKind.WarmUp, "amps A: 1.5 1.5 1.5 1.5 1 1.5 1.5 1.5 1.5; volts V: 4 4 4 4 40 4 4 4 4", "")]
    [InlineData(TrialKind.ModulePoints, "volts out V: 12 12 12 12 1.2; amps out A: 1; amps in A: 1 2 3 4 5", "5 left out a tenth")]
    [InlineData(TrialKind.ModulePoints, "volts out V: 12 12 12 12 1.2; amps out A: 1 1 1 1 0.1; amps in A: 1", "")]
    [InlineData(TrialKind.ModulePoints, "volts in V: 7 7 7 70 7; amps in A: 1; amps out A: 1 2 3 4 5", "4 left out ten times")]
    public void A_decimal_point_is_told_only_where_nothing_else_could_be_the_reason(TrialKind kind, string readings, string told) => Told(kind, readings, told);

    /// <summary>Worse is 10^0.85 = 7.08 times and more, and 'a hundred' beyond 10^1.5 = 31.6; two others must agree within 1.5.</summary>
    [Theory]
    [InlineData("1 1 0.142", ""), InlineData("1 1 0.141", "3 left out drop '0.141' at '1' is about a tenth"), InlineData("1 1 0.032", "3 left out a tenth"), InlineData("1 1 0.0315", "3 left out a hundredth")]
    [InlineData("1 1 7.07", ""), InlineData("1 1 7.09", "3 kept about ten times"), InlineData("1 1 31.5", "3 kept about ten times"), InlineData("1 1 31.7", "3 kept about a hundred times")]
    [InlineData("2 3 0.25", "3 left out a tenth"), InlineData("2 3.01 0.25", ""), InlineData("2 0.2", "")]
    [InlineData("-1 -1 -0.1", "3 left out a tenth"), InlineData("1 1 0", ""), InlineData("1 1 0 0.1", "4 left out a tenth"), InlineData("1 1 1 - 1000", "5 left out a thousand times")]
    public void A_contact_is_held_against_itself(string drop, string told)
    {
        Told(TrialKind.TwoPointDrop, $"amps A: 1; drop V: {drop}", told);
        Told(TrialKind.TwoPointDrop, $"drop V: {drop}; amps A: 1", told);

        // The same readings of anything else say nothing of ohms; without amps there are none.
        string slip = told.Contains("thousand ", StringComparison.Ordinal) ? told : "";
        Told(TrialKind.HotOhms, $"amps A: 1; drop V: {drop}", slip);
        Told(TrialKind.TwoPointDrop, $"drop V: {drop}", slip);
    }

    /// <summary>A leap is more than 15 K and three times what its neighbours differ: between 100 and 102, 21 K. By ten it lands within a fifth of their middle, 101 ± 20.2.</summary>
    [Theory]
    [InlineData("100 123 102", ""), InlineData("100 123.1 102", "2 left out degrees '123.1' stand between '100' and '102': probe off its place"), InlineData("100 79 102", ""), InlineData("102 78.9 100", "2 left out probe")]
    [InlineData("100 8.1 102", "2 left out decimal point?"), InlineData("100 8.0 102", "2 left out probe"), InlineData("100 12.2 102", "2 left out probe"), InlineData("100 1200 102", "2 left out decimal point?")]
    [InlineData("100 1213 102", "2 left out probe"), InlineData("100 807 102", "2 left out probe"), InlineData("-30 -3 -30", "2 left out decimal point?"), InlineData("100 - 150 - 101", "3 left out '100' and '101'")]
    [InlineData("150 100 101 100", ""), InlineData("100 101 100 150", ""), InlineData("100 150 200", "")]
    public void Degrees_that_leap_there_and_back_are_left_out(string degrees, string told)
    {
        string time = string.Join(' ', Enumerable.Range(1, degrees.Split(' ').Length));
        Told(TrialKind.WarmUp, $"time s: {time}; degrees °C: {degrees}", told);
        Told(TrialKind.WarmUp, $"degrees °C: {degrees}; time s: {time}", told);
        Told(TrialKind.HotOhms, $"time s: {time}; degrees °C: {degrees}", "");
        Told(TrialKind.WarmUp, $"degrees °C: {degrees}", "");
        Told(TrialKind.WarmUp, $"time s: {time}", "");
    }

    /// <summary>Volts lie under both sides by more than 0.15 V; of each side two readings and more, within four steps, at the same current to a tenth of the largest.</summary>
    [Theory]
    [InlineData("4 4 3.84 4 4", "1", "3 left out 3.84 V at 1.00 A lies 0.16 V under its neighbours at the same current, 160 mΩ more")]
    [InlineData("4 4 3.85 4 4", "1", "")]
    [InlineData("4 4 3.84 4 4", "-2", "3 left out 3.84 V at -2.00 A lies 0.16 V under its neighbours at the same current, 80 mΩ")]
    [InlineData("4 4 2 4 4", "1", "3 left out lies 2.00 V under its neighbours at the same current, 2000 mΩ more")]
    [InlineData("4 3.5 4 4", "1", ""), InlineData("4 4 3.5 4", "1", "")]
    [InlineData("4 4 3.6 3.7 3.7", "1", ""), InlineData("3.7 3.7 3.6 4 4", "1", "")] // a sag, and a rest after it
    [InlineData("4 4 3.54 3.7 3.7", "1", "3 left out lies 0.16 V under")]
    [InlineData("- 4 4 3.5 4 4", "1", "4 left out lies 0.50 V"), InlineData("- 4 3.5 4 4", "1", ""), InlineData("4 4 - 3.5 - 4 4", "1", "4 left out lies 0.50 V")]
    [InlineData("4 4 3 3 3.8 4 4", "10 10 1 1 10 10 10", "5 left out lies 0.20 V under its neighbours at the same current, 20 mΩ more")]
    [InlineData("4 4 3 3 3 3.8 4 4", "10 10 1 1 1 10 10 10", "")] // the fifth before it is too far away
    [InlineData("4 4 3.8 3 3 3 4 4", "10 10 10 1 1 1 10 10", "")]
    [InlineData("4 4 3.5 4 4 4", "9 9 10 9 9 10", ""), InlineData("4 4 3.5 4 4 4", "9.01 9.01 10 9.01 9.01 10", "3 left out lies 0.50 V"), InlineData("4 4 3.5 4 4 4", "5 5 10 5 5 0", "")]
    [InlineData("4 4 3.5 4 4 4.1", "10 10 10 10 10 0", "3 left out lies 0.50 V")]
    public void A_clip_that_worked_loose_is_told_from_a_sag(string volts, string amps, string told)
    {
        Told(TrialKind.Discharge, $"volts V: {volts}; amps A: {amps}", told);
        Told(TrialKind.Pulse, $"amps A: {amps}; volts V: {volts}", told);
        Told(TrialKind.HotOhms, $"volts V: {volts}; amps A: {amps}", "");
        Told(TrialKind.Discharge, $"volts V: {volts}", "");
    }

    [Theory]
    [InlineData("ohms Ω: 0 -0.1", "2 left out ohms '-0.1' Ω cannot be"), InlineData("time s: 0 -1", "2 left out time '-1' s cannot be"), InlineData("volts in V: 0 -1", "2 left out cannot be"), InlineData("volts out V: 0 -1", "2 left out cannot be")]
    [InlineData("volts V: -1 -1", ""), InlineData("amps A: -1 -1", ""), InlineData("degrees °C: -60 2000 20", ""), InlineData("degrees °C: -60.1 20", "1 left out degrees '-60.1' °C cannot be"), InlineData("grip degrees °C: 20 2000.1", "2 left out grip degrees")]
    [InlineData("volts V: 1; ohms Ω: 3 -3", "2 left out ohms '-3'"), InlineData("ohms Ω: -", "")]
    public void What_cannot_be_is_left_out(string readings, string told) => Told(TrialKind.HotOhms, readings, told);

    /// <summary>A reading that was corrected and typed at the end belongs where its time is: 3.66 V at 40 s lies between 3.68 and 3.60 V, not under the last ones; so does a wrong one.</summary>
    [Theory]
    [InlineData("time s: 0 10 20 30 50 60 70 80 90 85; volts V: 4.1 4.0 3.9 3.8 3.6 3.5 3.3 3.1 2.9 3.0; amps A: 1", "")]
    [InlineData("time s: 0 10 20 30 50 60 70 80 90 40; volts V: 3.0 2.9 3.1 3.3 3.5 3.6 3.8 3.9 4.0 3.4; amps A: 1", "")]
    [InlineData("time s: 0 10 20 30 50 60 70 80 90 40; volts V: 4.1 4.0 3.9 3.8 3.6 3.5 3.3 3.1 2.9 3.2; amps A: 1", "10 left out 3.20 V at 1.00 A lies 0.20 V under its neighbours")]
    [InlineData("time s: 0 20 40 60 80 - 50; volts V: 4.10 4.08 4.06 4.04 4.02 - 3.80; amps A: 1 1 1 1 1 - 1", "7 left out 3.80 V at 1.00 A lies 0.23 V under")]
    public void A_reading_typed_later_is_held_against_those_of_its_time(string readings, string told) => Told(TrialKind.Discharge, readings, told);

    [Fact]
    public void A_corrected_reading_takes_its_place_by_time_and_a_test_done_again_keeps_its_order()
    {
        Assert.Equal([1, 2, 5, 3, 4], Numbers("0 10 30 40 20"));
        Assert.Equal([1, 5, 2, 6, 3, 4], Numbers("0 20 40 60 10 30"));
        Assert.Equal([1, 3, 4, 2], Numbers("0 20 0 10")); // of one time, as they were typed
        Assert.Equal([1, 2, 4, 5], Numbers("0 10 20x 20 30"));
        Assert.Equal([1, 2, 5, 4, 6], Numbers("0 10 20x 30 20 40")); // one struck out, one typed again before the next
        Assert.Equal([1, 2, 3, 4, 5], Numbers("0 20 10 30 40")); // a clock that goes back amid a log
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8], Numbers("0 10 20 30 40 0 10 20")); // from the beginning and half as long: done again

        static int[] Numbers(string times)
        {
            Run run = new(new("r"), [new("time", "s", ""), new("volts", "V", ""), new("amps", "A", "")], [.. times.Split(' ').Select((time, i) => new Reading(i + 1, [time.TrimEnd('x'), "4", "1"], time.EndsWith('x') ? "wrong" : null))]);
            return ReadingTable.Read(run, new(new("t"), TrialKind.Discharge, new("p"), [run])).Numbers;
        }
    }

    /// <summary>Times that go back and are no correction: told, since such readings are not counted.</summary>
    [Theory, InlineData("time s: 0 20 10 30 40; volts V: 4; amps A: 1", "3 kept time '10' lies before '20' above it: readings whose time goes back are not counted"), InlineData("time s: 0 20 30 40 10; volts V: 4; amps A: 1", "")]
    public void A_time_that_goes_back_is_told(string readings, string told) => Told(TrialKind.Pulse, readings, told);

    /// <summary>3565 for 3.565 is the one that is wrong; 3.68 and 3.62 beside it fall as a cell does. Volts and amps of one reading changed over are told with what to type.</summary>
    [Theory]
    [InlineData("volts V: 4.0 3.9 3.8 3.74 3.68 3.62 3565; amps A: 1.01", "7 left out volts '3565' is about a thousand times")]
    [InlineData("volts V: 4.0 3.9 3.8 3.74 3.68 3.62 3565 3.5; amps A: 1.01", "7 left out volts '3565' is about a thousand times")]
    [InlineData("volts V: 6 6 6 0.03 0.03 0.06 0.03; amps A: 1 1 1 0.06 0.06 0.03 0.06", "")] // the load is off
    [InlineData("volts V: 4.1 4.05 1.01 3.95 3.9; amps A: 1.01 1.01 4.0 1.01 1.01", "3 left out volts '1.01' and amps '4.0' are off the readings around")]
    [InlineData("volts V: 1.1 1.1 1 1.1; amps A: 1 1 1.1 1", "")] // too near each other to tell
    public void The_reading_that_is_wrong_is_named_and_not_those_beside_it(string readings, string told) => Told(TrialKind.Discharge, readings, told);

    [Theory]
    [InlineData(TrialKind.WarmUp, "volts V: 5.20 5.20 5.19 1.29; amps A: 1.29 1.29 1.29 5.20", "4 left out swapped? Type it again as 5.20 V and 1.29 A.")]
    [InlineData(TrialKind.ModulePoints, "volts in V: 3.9 3.8 2.1 3.7; amps in A: 2.1 2.1 3.8 2.1; volts out V: 12; amps out A: 0.5", "3 left out volts in '2.1' and amps in '3.8'")]
    [InlineData(TrialKind.WarmUp, "volts V: 3.7 3.7 3.7 0.03 0.03 0.04 0.03 0.03; amps A: 0.7 0.7 0.7 0.04 0.04 0.03 0.04 0.04", "")] // switched off: what flickers is no swap
    [InlineData(TrialKind.HotOhms, "volts V: 5.2 1.29; amps A: 1.29 5.2", "")] // of two it cannot be told
    public void Volts_and_amps_changed_over_in_one_reading_are_told(TrialKind kind, string readings, string told) => Told(kind, readings, told);

    /// <summary>A bare number counts in the column's unit. Where the other of two was typed with its unit and is a thousand times smaller, the unit was forgotten; both bare, nobody knows.</summary>
    [Theory]
    [InlineData("73mV 73", "2 left out drop '73' counts in V and is about a thousand times '73mV': its unit forgotten? Type it again with its unit.")]
    [InlineData("73 73mV", "1 left out drop '73' counts in V and is about a thousand times '73mV'")]
    [InlineData("0.073 73V", "1 left out drop '0.073' counts in V and is about a thousandth of '73V'")]
    [InlineData("0.073 73", "2 kept a thousand times apart")]
    [InlineData("73mV 73V", "2 kept a thousand times apart")]
    [InlineData("73e-3 73", "2 kept a thousand times apart")] // that e is no unit
    [InlineData("73 73m", "2 kept a thousand times apart")] // nor is a letter for the decimal mark, or a prefix alone
    public void Of_two_a_thousand_times_apart_the_one_without_its_unit_is_left_out(string drop, string told) => Told(TrialKind.TwoPointDrop, $"amps A: 3.04; drop V: {drop}", told);

    [Theory, InlineData(TrialKind.Discharge), InlineData(TrialKind.Pulse), InlineData(TrialKind.TwoPointDrop), InlineData(TrialKind.WarmUp), InlineData(TrialKind.ColdOhms)]
    public void A_run_of_which_nothing_was_read_says_nothing(TrialKind kind) => Told(kind, "time s: -; amps A: -; volts V: -; drop V: -; degrees °C: -; ohms Ω: -", "");

    private static void Told(TrialKind kind, string readings, string told)
    {
        var columns = readings.Split(';').Select(column => column.Split(':')).Select(pair => (Name: pair[0].Trim(), Values: pair[1].Trim().Split(' '))).ToArray();
        int count = columns.Max(column => column.Values.Length);
        Run run = new(new("r"), [.. columns.Select(column => new Column(column.Name[..column.Name.LastIndexOf(' ')], column.Name[(column.Name.LastIndexOf(' ') + 1)..], ""))],
            [.. Enumerable.Range(0, count).Select(i => new Reading(i + 1, [.. columns.Select(column => column.Values.Length == 1 ? column.Values[0] : column.Values[i])]))]);
        var read = ReadingTable.Read(run, new(new("t"), kind, new("p"), [run]));
        string[] expected = told.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        string said = string.Join(Environment.NewLine, read.Remarks.Select(remark => $"{remark.Reading} {remark.Effect} {remark.Words}"));
        Assert.True(expected.Length == read.Remarks.Count, $"Expected '{told}', said: {said}");
        foreach (var (one, remark) in expected.Zip(read.Remarks))
        {
            int number = int.Parse(one[..one.IndexOf(' ', StringComparison.Ordinal)], CultureInfo.InvariantCulture);
            string rest = one[(one.IndexOf(' ', StringComparison.Ordinal) + 1)..], effect = rest.StartsWith(Remark.Kept, StringComparison.Ordinal) ? Remark.Kept : Remark.LeftOut;
            Assert.Equal((number, effect), (remark.Reading, remark.Effect));
            Assert.Contains(rest[(effect.Length + 1)..], remark.Words, StringComparison.Ordinal);
            Assert.Equal(effect == Remark.Kept, read.Numbers.Contains(number));
        }
    }
}

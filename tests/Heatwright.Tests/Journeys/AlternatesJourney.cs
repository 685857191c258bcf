namespace Heatwright.Tests.Journeys;

/// <summary>What the parts list offers instead of a part: a 2S board in the place of a 1S one over-charges a cell, and was offered.</summary>
public sealed class AlternatesJourney : IDisposable
{
    private readonly Bench bench = new();

    private string Study => bench.In("knife.study");

    public void Dispose() => bench.Dispose();

    public AlternatesJourney()
    {
        Do("import", Path.Combine(Repository.Root, "samples", "rope-hot-knife"), Study);
        Part("b1", "supervision", "another single board", "--word", "cells=1", "chemistry=lithium-ion", "--sheet", "trip current=15A (sheet)");
        Part("b2", "supervision", "2S board", "--word", "cells=2", "chemistry=lithium-ion", "--sheet", "trip current=20A (sheet)");
        Part("b3", "supervision", "early board", "--word", "cells=1", "chemistry=lithium-ion", "--sheet", "trip current=2A (sheet)");
        Part("b4", "supervision", "iron board", "--word", "cells=1", "chemistry=lithium iron phosphate", "--sheet", "trip current=15A (sheet)");
        Part("b5", "supervision", "board of unknown cells", "--sheet", "trip current=15A (sheet)");
        Part("c1", "charger", "slow charger", "--word", "cells=1", "chemistry=lithium-ion", "--sheet", "charge current=0.5A (sheet)");
        Part("c2", "charger", "2S charger", "--word", "cells=2", "chemistry=lithium-ion", "--sheet", "charge current=0.5A (sheet)");
        Part("c3", "charger", "single iron charger", "--word", "cells=1", "chemistry=lithium iron phosphate", "--sheet", "charge current=0.5A (sheet)");
        Part("c4", "charger", "iron pair charger", "--word", "cells=2", "chemistry=lithium iron phosphate", "--sheet", "charge current=0.5A (sheet)");
        Part("c5", "charger", "furious charger", "--word", "cells=1", "chemistry=lithium-ion", "--sheet", "charge current=20A (sheet)");
        Part("c6", "charger", "high charger", "--word", "cells=1", "chemistry=lithium-ion", "--sheet", "full volts=8.4V (sheet)");
        Part("w1", "leads", "thick wire", "--sheet", "rated current=20A (sheet)");
        Part("w2", "leads", "thin wire", "--sheet", "rated current=1A (sheet)");
        Part("w3", "leads", "unknown wire");
        Part("s1", "switch", "logic transistor", "--sheet", "rated current=20A (sheet)", "gate volts=2.5V (sheet)", "rated volts=20V (sheet)");
        Part("s2", "switch", "small transistor", "--sheet", "rated current=1A (sheet)", "gate volts=2.5V (sheet)");
        Part("s3", "switch", "high gate transistor", "--sheet", "rated current=20A (sheet)", "gate volts=10V (sheet)");
        Part("s4", "switch", "low volt transistor", "--sheet", "rated current=20A (sheet)", "gate volts=2.5V (sheet)", "rated volts=2V (sheet)");
        Part("h2", "contacts", "holder for a pair", "--word", "cells=2", "--sheet", "rated current=20A (sheet)");
        Part("t1", "sensor", "other K couple", "--word", "type=K");
        Part("t2", "sensor", "J couple", "--word", "type=J");
    }

    /// <summary>One cell on a ribbon of 0.6 Ω: by hand at the most 4.2 V / 0.6 Ω = 7 A, and with 0.3 Ω around it 3 V / 0.9 Ω = 3.3 A: 1 and 2 A are too few, 15 and 20 A are enough.</summary>
    [Fact]
    public void Only_what_is_made_for_these_cells_and_stands_their_volts_and_amps_may_stand_in()
    {
        var instead = Instead("C");
        Assert.Equal("another single board", instead["one-cell protection board"]);
        Assert.Equal("slow charger", instead["one-cell charger"]);
        Assert.Equal("thick wire; unknown wire (rated current not stated)", instead["silicone leads"]);
        Assert.Equal("welded tabs", instead["spring holder"]);
        Assert.Equal("logic transistor", instead["heater switch"]);
        Assert.Equal("other K couple", instead["type K probe"]);
        Assert.Equal("iron pair charger", Instead("D")["two-cell iron-phosphate charger"]);
    }

    private Dictionary<string, string> Instead(string letter)
    {
        string folder = bench.In("sheet-" + letter);
        Do("build-sheet", Study, "--arrangement", letter, "--out", folder, "--on", "2026-03-01", "--columns", "description=What,alternates=Instead");
        return File.ReadAllLines(Path.Combine(folder, "parts.csv")).Skip(1).Select(line => line.Split(',')).Where(row => row.Length == 2 && row[1].Length > 0).ToDictionary(row => row[0], row => row[1]);
    }

    private void Part(string id, string kind, string name, params string[] more) => Do(["part", "add", Study, id, kind, name, .. more]);

    private void Do(params string[] words)
    {
        var typed = bench.Type(words);
        Assert.True(typed.Exit == 0, typed.Error);
    }
}

using CsCheck;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Packs: circuit algebra. Values computed by an independent script; part values common practice. Tolerance: half of the last printed digit.</summary>
public class PackTests
{
    [Fact]
    public void Everything_between_tab_and_load_adds_up()
    {
        double ohm = Pack.Ohm(2, 2, 0.030, 0.002, 0.040, 0.010);
        Printed.Agree("PA-1", Printed.Computed, "86.0, 6.884", ohm * 1000, Pack.TerminalV(2, 3.7, ohm, 6));
    }

    [Theory]
    [InlineData("PA-2", 3.70, 3.70, 0.030, 0.045, "3.6100, 3.0000, 2.0000")]
    [InlineData("PA-3", 3.70, 3.65, 0.030, 0.030, "3.6000, 3.3333, 1.6667")]
    public void Parallel_cells_share_unevenly(string id, double firstV, double secondV, double firstOhm, double secondOhm, string printed)
    {
        double node = Pack.NodeV([firstV, secondV], [firstOhm, secondOhm], 5);
        Printed.Agree(id, Printed.Computed, printed, node, Pack.CellA(firstV, firstOhm, node), Pack.CellA(secondV, secondOhm, node));
    }

    [Fact]
    public void Joining_unlike_cells_is_a_surge()
    {
        Printed.Agrees("PA-4", Printed.Computed, "4.5455", Pack.JoiningA(4.10, 3.60, 0.050, 0.050, 0.010));
        Assert.False(Pack.MayJoin(4.10, 3.60));
        Assert.True(Pack.MayJoin(4.10, 4.06));
    }

    [Fact]
    public void Rated_energy() => Printed.Agree("WH-1, WH-2", Printed.Computed, "2.2940, 22.200, 11.100",
        Pack.RatedJ(1, 1, 3.7, 0.62 * 3600) / 3600, Pack.RatedJ(2, 1, 3.7, 3.0 * 3600) / 3600, Pack.RatedJ(1, 1, 3.7, 3.0 * 3600) / 3600);

    [Fact]
    public void Shares_of_parallel_cells_add_up_to_the_pack_current() => Gen.Select(Gen.Double[3, 4.2].Array[2, 6], Gen.Double[0.01, 0.2], Gen.Double[0, 20]).Sample((volts, ohm, amps) =>
    {
        double[] ohms = [.. volts.Select((_, i) => ohm * (1 + (0.3 * i)))];
        double node = Pack.NodeV(volts, ohms, amps);
        Assert.Equal(amps, volts.Select((v, i) => Pack.CellA(v, ohms[i], node)).Sum(), 1e-9 * (1 + (volts.Length * 4.2 / ohm)));
    });

    [Fact]
    public void Like_cells_in_parallel_are_one_cell_with_a_share_of_the_ohms() => Gen.Select(Gen.Int[1, 8], Gen.Int[1, 6], Gen.Double[0.005, 0.2]).Sample((m, n, ohm) =>
    {
        // Second method: one group as a node of like cells, n groups in a row.
        double sag = 4.0 - Pack.NodeV([.. Enumerable.Repeat(4.0, m)], [.. Enumerable.Repeat(ohm, m)], 1.0);
        Assert.Equal(n * sag, Pack.Ohm(n, m, ohm), 1e-12);
    });

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Printed.Refuses("series", () => Pack.Ohm(0, 1, 0.03));
        Printed.Refuses("cellOhm", () => Pack.Ohm(1, 1, -0.03));
        Printed.Refuses("fuseOhm", () => Pack.Ohm(1, 1, 0.03, 0, 0, -1));
        Printed.Refuses("cellOhm", () => Pack.NodeV([3.7], [0], 1));
        Printed.Refuses("packOhm", () => Pack.TerminalV(2, 3.7, -1, 1));
        Printed.Refuses("capacityAs", () => Pack.RatedJ(1, 1, 3.7, -1));
    }
}

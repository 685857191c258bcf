using Heatwright.Handbook;
using Heatwright.Physics;
using Heatwright.Quantities;

namespace Heatwright.Tests.Handbook;

/// <summary>Tables from memory are held by what must be true between their own columns, and by second computations.</summary>
public class MaterialTablesTests
{
    private const double AnnealedCopperOhmM = 1.7241e-8;   // [iec-60028]

    /// <summary>[incropera-dewitt] Table A.4, from memory: ν = μ/ρ, α = k/(ρc), Pr = ν/α within 0.3 %, density of an ideal gas within 1.5 %.</summary>
    [Fact]
    public void The_columns_of_air_agree_with_each_other()
    {
        var table = Tables.Find("air");
        Assert.Equal(10, table.Rows.Count);
        Assert.All(table.Rows, row =>
        {
            double density = row.Number("density"), diffusivity = row.Number("diffusivity"), kinematic = row.Number("kinematic viscosity");
            AssertNear(row.Number("viscosity") / density, kinematic, 0.003);
            AssertNear(row.Number("conductivity") / (density * row.Number("specific heat")), diffusivity, 0.003);
            AssertNear(kinematic / diffusivity, row.Number("prandtl"), 0.003);
            AssertNear(101325 / (287.05 * row.Number("temperature")), density, 0.015);
        });
    }

    /// <summary>[incropera-dewitt] Table A.4: 0.0263 W/(m·K) at 300 K, 0.0300 at 350 K; by hand 0.02815 halfway.</summary>
    [Fact]
    public void Between_two_rows_a_straight_line_is_taken()
    {
        Assert.Equal(0.02815, Tables.Find("air").Interpolated("conductivity", 325), 1e-9);
        Assert.Equal(0.0263, Tables.Find("air").Interpolated("conductivity", 300), 1e-12);
        Assert.Equal(0.0223, Tables.Find("air").Interpolated("conductivity", 250), 1e-12);
        Assert.Equal(0.0524, Tables.Find("air").Interpolated("conductivity", 700), 1e-12);
    }

    [Theory]
    [InlineData(249)]
    [InlineData(701)]
    [InlineData(double.NaN)]
    public void Outside_its_rows_a_table_refuses_and_says_its_range(double atK) =>
        Assert.Contains("250 to 700 K", Assert.Throws<ArgumentOutOfRangeException>(() => Tables.Find("air").Interpolated("density", atK)).Message, StringComparison.Ordinal);

    /// <summary>[astm-b258] d = 0.127 mm · 92^((36 − n)/39), by a second program; row by row with the reference file and with the law.</summary>
    [Fact]
    public void Every_wire_gauge_agrees_with_the_reference_and_with_the_law()
    {
        var file = ReferenceCsv.Read("standards/awg_even.csv");
        var table = Tables.Find("wire-gauge");
        Assert.Equal(file.Rows.Length, table.Rows.Count);
        Assert.All(file.Rows, row =>
        {
            string gauge = file.Word(row, "awg");
            var own = table.Row(gauge);
            Assert.Equal(file.Number(row, "diameter_mm"), own.Number("diameter") * 1e3, 1e-9);
            Assert.Equal(file.Number(row, "ohm_per_km_20C"), own.Number("resistance") * 1e3, 1e-6);
            double n = gauge switch { "3/0" => -2, "1/0" => 0, _ => double.Parse(gauge, System.Globalization.CultureInfo.InvariantCulture) };
            AssertNear(Wire.DiameterM(n), own.Number("diameter"), 4e-4);   // four decimals of a millimetre are printed
            AssertNear(AnnealedCopperOhmM / own.Number("area"), own.Number("resistance"), 2e-4);
        });
    }

    /// <summary>[iec-60228] from memory: every limit lies 2 to 12 % above pure copper of the nominal area, and flexible above stranded.</summary>
    [Fact]
    public void Conductor_limits_lie_a_little_above_pure_copper()
    {
        var table = Tables.Find("conductor-sizes");
        var file = ReferenceCsv.Read("standards/iec60228_max_resistance.csv");
        Assert.Equal(file.Rows.Length, table.Rows.Count);
        Assert.All(table.Rows.Zip(file.Rows), pair =>
        {
            double copper = AnnealedCopperOhmM / (pair.First.Number("area") * 1e-6);
            Assert.InRange(pair.First.Number("class 2") / copper, 1.015, 1.125);
            Assert.InRange(pair.First.Number("class 5") / copper, 1.015, 1.16);
            Assert.True(pair.First.Number("class 5") > pair.First.Number("class 2"));
            Assert.Equal(file.Number(pair.Second, "class2_ohm_per_km") * 1e-3, pair.First.Number("class 2"), 1e-9);
            Assert.Equal(Mark.FromMemory, pair.First.Mark);
        });
    }

    /// <summary>Law of Wiedemann and Franz, L = 2.44e-8 W·Ω/K² (Lorenz number, from memory).</summary>
    [Fact]
    public void Copper_conducts_heat_as_its_resistivity_says() =>
        AssertNear(2.44e-8 * 300 / AnnealedCopperOhmM, Tables.Find("solids").Row("copper pure").Number("conductivity"), 0.10);

    [Fact]
    public void Solids_have_heat_capacities_per_volume_that_solids_have() => Assert.All(
        Tables.Find("solids").Rows.Where(row => row.Key is not "cork" and not "wood oak cross grain" and not "glass fibre batt 16 kg/m3"),
        row => Assert.InRange(row.Number("density") * row.Number("specific heat"), 1.0e6, 4.5e6));   // about 3R per atom in 7 to 18 cm³ per mole: common practice

    [Fact]
    public void A_row_of_common_practice_in_a_published_table_is_an_assumption()
    {
        Assert.IsType<Origin.Assumed>(Tables.Find("solids").Row("FR-4 through plane").Origin);
        Assert.IsType<Origin.Published>(Tables.Find("solids").Row("copper pure").Origin);
    }

    [Fact]
    public void Melting_ranges_and_latent_heats_are_ranges() => Assert.All(Tables.Find("melting-heats").Rows, row =>
    {
        Assert.True(row.Number("melt from") <= row.Number("melt to"));
        Assert.True(row.Number("latent heat from") <= row.Number("latent heat to"));
    });

    /// <summary>[preston-thomas-1990] tin freezes at 231.928 °C; heat of fusion 7.03 kJ/mol, 118.71 g/mol (from memory): 59.2 J/g by hand.</summary>
    [Fact]
    public void Tin_melts_with_the_heat_of_the_handbooks()
    {
        var tin = Tables.Find("melting-heats").Row("tin");
        Assert.Equal(231.928, tin.Number("melt from"), 0.05);
        Assert.InRange(7030 / 0.11871, tin.Number("latent heat from"), tin.Number("latent heat to"));
    }

    [Fact]
    public void A_plastic_softens_before_it_melts() => Assert.All(Tables.Find("plastics").Rows.Where(row => row.NumberOrNull("melt from") is not null && row.NumberOrNull("glass transition") is not null), row =>
        Assert.True(row.Number("glass transition") < row.Number("melt from") && row.Number("melt from") <= row.Number("melt to")));

    [Fact]
    public void Resistance_of_tungsten_rises_all_the_way()
    {
        double[] ratios = Tables.Find("tungsten-ratios").Numbers("ratio");
        Assert.Equal(1, ratios[0]);
        Assert.Equal(ratios.Order(), ratios);
    }

    [Fact]
    public void Heating_alloys_resist_fifty_times_as_much_as_copper() => Assert.All(Tables.Find("heater-alloys").Rows, row =>
    {
        Assert.InRange(row.Number("resistivity") / AnnealedCopperOhmM, 25, 90);
        Assert.Equal(Mark.CommonPractice, row.Mark);
    });

    /// <summary>Common practice, no source: a heater label is good to 20 %, half of a cell label may be missing.</summary>
    [Fact]
    public void Labels_are_widened_until_they_are_measured()
    {
        var table = Tables.Find("claim-widenings");
        Assert.Equal((0.8, 1.2), (table.Row("heater watts").Number("lowest"), table.Row("heater watts").Number("highest")));
        Assert.Equal((0.5, 1.0), (table.Row("cell capacity").Number("lowest"), table.Row("cell capacity").Number("highest")));
        Assert.All(table.Rows, row => Assert.IsType<Origin.Assumed>(row.Origin));
    }

    private static void AssertNear(double expected, double actual, double share) => Assert.InRange(actual, expected * (1 - share), expected * (1 + share));
}

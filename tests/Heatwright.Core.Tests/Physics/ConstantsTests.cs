using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Derived constants against the figures printed with the 2018 adjustment of the constants.</summary>
public class ConstantsTests
{
    [Fact]
    public void Derived_constants_are_the_printed_ones()
    {
        Assert.Equal(5.670374419e-8, Constants.StefanBoltzmann, 1e-17);
        Assert.Equal(8.314462618, Constants.GasJPerMolK, 1e-9);
        Assert.Equal(96485.33212, Constants.FaradayCPerMol, 1e-5);
    }
}

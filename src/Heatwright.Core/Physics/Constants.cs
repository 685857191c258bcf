namespace Heatwright.Physics;

/// <summary>Constants of nature: each has one home, all its digits and a source.</summary>
public static class Constants
{
    /// <summary>Planck constant, J·s. Exact. Source: [cgpm-2018-res1].</summary>
    public const double PlanckJs = 6.62607015e-34;

    /// <summary>Boltzmann constant, J/K. Exact. Source: [cgpm-2018-res1].</summary>
    public const double BoltzmannJPerK = 1.380649e-23;

    /// <summary>Avogadro constant, 1/mol. Exact. Source: [cgpm-2018-res1].</summary>
    public const double AvogadroPerMol = 6.02214076e23;

    /// <summary>Speed of light, m/s. Exact. Source: [cgpm-2018-res1].</summary>
    public const double LightMPerS = 299792458;

    /// <summary>Molar gas constant, J/(mol·K): the exact product of two exact constants.</summary>
    public const double GasJPerMolK = BoltzmannJPerK * AvogadroPerMol;

    /// <summary>Elementary charge, C. Exact. Source: [cgpm-2018-res1].</summary>
    public const double ElementaryC = 1.602176634e-19;

    /// <summary>Faraday constant, C/mol: the exact product of two exact constants.</summary>
    public const double FaradayCPerMol = ElementaryC * AvogadroPerMol;

    /// <summary>Stefan–Boltzmann constant, W/(m²·K⁴). Exact: 2π⁵k⁴/(15h³c²).</summary>
    public static readonly double StefanBoltzmann = 2 * Math.Pow(Math.PI, 5) * Math.Pow(BoltzmannJPerK, 4)
        / (15 * Math.Pow(PlanckJs, 3) * Math.Pow(LightMPerS, 2));

    /// <summary>Standard gravity, m/s². Exact by definition (3rd CGPM, 1901).</summary>
    public const double GravityMPerS2 = 9.80665;

    /// <summary>0 °C in kelvin, by definition of the Celsius scale.</summary>
    public const double ZeroCelsiusK = 273.15;
}

namespace Heatwright.Physics;

/// <summary>How a cell's resistance rises in the cold.</summary>
/// <remarks>R(T) = R_ref·exp[(E_a/R_g)(1/T − 1/T_ref)]. Form: charge transfer of lithium cells follows Arrhenius, [jow-low-temperature] (abstract).
/// Typical activation energy, from memory: 20 kJ/mol (15 to 30) above 10 °C, 30 (25 to 50) below 0 °C, nickel-metal hydride 15 (10 to 25).
/// One value cannot fit −10 to 50 °C: ask for two measured temperatures when cold use matters.</remarks>
public static class Arrhenius
{
    /// <summary>25 °C, where cell resistances are quoted.</summary>
    public const double ReferenceK = 25 + Constants.ZeroCelsiusK;

    /// <summary>R(T)/R(reference).</summary>
    public static double Factor(double activationJPerMol, double cellK, double referenceK = ReferenceK) => Math.Exp(
        Impossible.IfNegative(activationJPerMol, "J/mol") / Constants.GasJPerMolK
        * ((1 / Impossible.UnlessKelvin(cellK)) - (1 / Impossible.UnlessKelvin(referenceK))));

    /// <summary>How many times its 25 °C resistance a cell has at a temperature.</summary>
    [Law("cell-cold-factor", "cells", "exp(Ea/Rg·(1/T − 1/298.15 K))", Says = "how many times its 25 °C resistance a cold or warm cell has", Unit = "", Source = "jow-low-temperature", Where = "form only; the 20 kJ/mol default is from memory, 15 to 30",
        Valid = "-10 to 50 °C", Example = "cell=0degC")]
    public static double FactorAtC([In("T", "°C", "cell temperature", Name = "cell", Min = -60, Max = 120, SoftMin = -10, SoftMax = 50)] double cellC,
        [In("Ea", "J/mol", "activation energy", Name = "activation", Min = 0, SoftMin = 10e3, SoftMax = 50e3, Default = 20e3)] double activationJPerMol = 20e3) =>
        Factor(activationJPerMol, cellC + Constants.ZeroCelsiusK);

    /// <summary>Activation energy from resistances at two Celsius temperatures.</summary>
    [Law("cell-activation", "cells", "Ea = Rg·ln(Rcold/Rwarm)/(1/Tcold − 1/Twarm)", Says = "how steeply a cell stiffens in the cold, from two readings", Unit = "J/mol", Source = "jow-low-temperature", Where = "form only",
        Valid = "the same cell, charge and wait at both temperatures", Example = "cold=145mohm cold-at=5degC warm=80mohm warm-at=25degC")]
    public static double ActivationFromC(
        [In("Rcold", "Ω", "resistance when cold", Name = "cold", Min = 0)] double coldOhm,
        [In("Tcold", "°C", "that temperature", Name = "cold-at", Min = -60, Max = 90)] double coldC,
        [In("Rwarm", "Ω", "resistance when warm", Name = "warm", Min = 0)] double warmOhm,
        [In("Twarm", "°C", "that temperature", Name = "warm-at", Min = -60, Max = 90)] double warmC) =>
        ActivationJPerMol(coldOhm, coldC + Constants.ZeroCelsiusK, warmOhm, warmC + Constants.ZeroCelsiusK);

    /// <summary>Activation energy from the resistances measured at two temperatures.</summary>
    public static double ActivationJPerMol(double coldOhm, double coldK, double warmOhm, double warmK)
    {
        double inverse = (1 / Impossible.UnlessKelvin(coldK)) - (1 / Impossible.UnlessKelvin(warmK));
        return inverse == 0
            ? throw Impossible.Outside(nameof(warmK), warmK, "K", "another temperature than the first")
            : Constants.GasJPerMolK * Math.Log(Impossible.UnlessPositive(coldOhm, "Ω") / Impossible.UnlessPositive(warmOhm, "Ω")) / inverse;
    }
}

namespace Heatwright.Plant;

/// <summary>One cell as a source behind ohms with two RC pairs, all over the charge left; ohms fall as the cell warms.</summary>
/// <param name="CapacityC">Charge from full to empty, coulomb.</param>
/// <param name="OpenV">Open-circuit volts over charge.</param>
/// <param name="R0Ohm">Ohms seen at once, at the reference temperature.</param>
/// <param name="R1Ohm">Ohms of the short RC pair.</param>
/// <param name="Tau1S">Time constant of the short pair, seconds.</param>
/// <param name="R2Ohm">Ohms of the long RC pair.</param>
/// <param name="Tau2S">Time constant of the long pair, seconds.</param>
/// <remarks>Equations: Chen and Rincón-Mora [chen-2006]; temperature by Arrhenius, R(T) = R·exp(E/R_g·(1/T − 1/T_ref)).</remarks>
public sealed record CellModel(
    double CapacityC, ChargeCurve OpenV, ChargeCurve R0Ohm, ChargeCurve R1Ohm, double Tau1S, ChargeCurve R2Ohm, double Tau2S)
{
    /// <summary>Above 0.</summary>
    public double CapacityC { get; } = Guard.Positive(CapacityC);

    /// <summary>Above 0.</summary>
    public double Tau1S { get; } = Guard.Positive(Tau1S);

    /// <summary>Above 0.</summary>
    public double Tau2S { get; } = Guard.Positive(Tau2S);

    /// <summary>Time constant of the short pair where it follows the charge; null: <see cref="Tau1S"/> always.</summary>
    public ChargeCurve? ShortTau { get; init; }

    /// <summary>Time constant of the long pair where it follows the charge; null: <see cref="Tau2S"/> always.</summary>
    public ChargeCurve? LongTau { get; init; }

    /// <summary>True: the short pair is a charge transfer, whose volts grow less than the current: v = 2a·asinh(I·R₁/(2a)), a = R_g·T/F.</summary>
    /// <remarks>Butler and Volmer's law for equal transfer both ways; at small currents it is R₁·I. Textbook form, from memory.</remarks>
    public bool ChargeTransfer { get; init; }

    /// <summary>True: the long pair holds a current that lags behind the cell's, di₂/dt = (I − i₂)/τ₂, and its volts are R₂(s)·i₂ at the charge and temperature of the moment;
    /// else it holds its volts, dv₂/dt = (R₂(s)·I − v₂)/τ₂.</summary>
    /// <remarks>What lags in a cell is the charge at the surface of its particles: it needs τ₂ to fall behind, but what it costs in volts follows at once how steep the cell is where it stands.
    /// Towards empty R₂ grows manifold within less than τ₂; held as volts, the pair would not fill in time under a large current. Where R₂ does not change both are the same.
    /// Filtered currents as state: Plett [plett-2004].</remarks>
    public bool LongHoldsAmps { get; init; }

    /// <summary>Charge left of this very cell at the start; null: that of the pack.</summary>
    public double? StartCharge { get; init; }

    /// <summary>Activation energy of all ohms, J/mol; 0: no temperature effect.</summary>
    public double ActivationJPerMol { get; init; }

    /// <summary>Temperature at which the ohms are stated, K.</summary>
    public double ReferenceK { get; init; } = 298.15;

    /// <summary>Ohms that the short pair has at a current: R₁ itself, or what a charge transfer leaves of it.</summary>
    /// <param name="ohm">R₁ at the charge and temperature at hand.</param>
    /// <param name="amps">Mean current of the cell.</param>
    /// <param name="cellK">Its temperature, K.</param>
    public double ShortOhm(double ohm, double amps, double cellK)
    {
        if (!ChargeTransfer)
        {
            return ohm;
        }

        double share = Math.Abs(amps) * ohm / (2 * Physics.Constants.GasJPerMolK / Physics.Constants.FaradayCPerMol * cellK);
        return share < 1e-6 ? ohm : ohm * Math.Asinh(share) / share;
    }

    /// <summary>The same cell with other numbers for what its findings tell: a draw of them, or another piece.</summary>
    /// <param name="capacityC">Its charge, coulomb.</param>
    /// <param name="ohms">Factor on all its ohms.</param>
    /// <param name="liftV">By how much all open-circuit volts are higher.</param>
    public CellModel Altered(double capacityC, double ohms, double liftV) => new(capacityC, OpenV.Plus(liftV), R0Ohm.Times(ohms), R1Ohm.Times(ohms), Tau1S, R2Ohm.Times(ohms), Tau2S)
    {
        ShortTau = ShortTau,
        LongTau = LongTau,
        ChargeTransfer = ChargeTransfer,
        LongHoldsAmps = LongHoldsAmps,
        StartCharge = StartCharge,
        ActivationJPerMol = ActivationJPerMol,
        ReferenceK = ReferenceK,
    };

    /// <summary>Factor on all ohms at a cell temperature.</summary>
    public double OhmsFactor(double cellK) => ActivationJPerMol == 0
        ? 1
        : Math.Exp(ActivationJPerMol / Physics.Constants.GasJPerMolK * ((1 / cellK) - (1 / ReferenceK)));
}

/// <summary>Cells side by side, each its own.</summary>
/// <param name="Members">One or more.</param>
public sealed record CellGroup(IReadOnlyList<CellModel> Members);

/// <summary>n cells in series, m such strings side by side.</summary>
/// <param name="Cell">One cell; all alike.</param>
/// <param name="Series">Cells in series.</param>
/// <param name="Parallel">Strings in parallel.</param>
/// <param name="LoopOhm">Everything in series with the cells up to the power path or the load: links, contacts, protection, fuse, leads, switch.</param>
public sealed record PackModel(CellModel Cell, int Series, int Parallel, double LoopOhm)
{
    /// <summary>1 or more.</summary>
    public int Series { get; } = Guard.Count(Series);

    /// <summary>1 or more.</summary>
    public int Parallel { get; } = Guard.Count(Parallel);

    /// <summary>0 or more.</summary>
    public double LoopOhm { get; init; } = Guard.ZeroOrMore(LoopOhm);

    /// <summary>Charge left at the start, 0 to 1.</summary>
    public double StartCharge { get; init; } = 1;

    /// <summary>Groups in series with cells that differ; empty: all cells are alike, <see cref="Cell"/>.</summary>
    public IReadOnlyList<CellGroup> Groups { get; init; } = [];

    /// <summary>On-state volts of any one cell at which the run ends; 0: none.</summary>
    public double CellCutoffV { get; init; }

    /// <summary>Volts of any one cell while charging at which the run ends; infinite: none.</summary>
    public double CellMostV { get; init; } = double.PositiveInfinity;

    /// <summary>On-state current at which the protection opens, A.</summary>
    public double TripA { get; init; } = double.PositiveInfinity;
}

namespace Heatwright.Physics;

/// <summary>One stretch of a published voltage function: E = Σ cᵢtⁱ, plus a₀·exp(a₁(t − a₂)²) where the publication has it.</summary>
/// <param name="FromC">Lower end, °C.</param>
/// <param name="ToC">Upper end, °C.</param>
/// <param name="CoefficientsMv">c₀, c₁ … in mV and °C, as printed.</param>
/// <param name="Bump">The exponential of type K above 0 °C; null elsewhere.</param>
public sealed record EmfPiece(double FromC, double ToC, IReadOnlyList<double> CoefficientsMv, EmfBump? Bump = null)
{
    /// <summary>Voltage at t, mV, reference junction at 0 °C.</summary>
    internal double EmfMv(double tC)
    {
        double sum = 0;
        for (int i = CoefficientsMv.Count - 1; i >= 0; i--)
        {
            sum = (sum * tC) + CoefficientsMv[i];
        }

        return sum + (Bump?.EmfMv(tC) ?? 0);
    }

    /// <summary>dE/dt at t, mV/K.</summary>
    internal double SlopeMvPerK(double tC)
    {
        double sum = 0;
        for (int i = CoefficientsMv.Count - 1; i >= 1; i--)
        {
            sum = (sum * tC) + (i * CoefficientsMv[i]);
        }

        return sum + (Bump?.SlopeMvPerK(tC) ?? 0);
    }
}

/// <summary>The exponential term a₀·exp(a₁(t − a₂)²): the magnetic change of one leg of type K.</summary>
public sealed record EmfBump(double A0Mv, double A1PerK2, double A2C)
{
    internal double EmfMv(double tC) => A0Mv * Math.Exp(A1PerK2 * (tC - A2C) * (tC - A2C));

    internal double SlopeMvPerK(double tC) => EmfMv(tC) * 2 * A1PerK2 * (tC - A2C);
}

/// <summary>A published approximate inverse, t = Σ dᵢEⁱ, with the error band its publication states.</summary>
/// <param name="FromMv">Lower end, mV.</param>
/// <param name="ToMv">Upper end, mV.</param>
/// <param name="CoefficientsC">d₀, d₁ … in °C and mV, as printed.</param>
/// <param name="BandLowK">Stated lower end of the error, K.</param>
/// <param name="BandHighK">Stated upper end of the error, K.</param>
public sealed record EmfInversePiece(double FromMv, double ToMv, IReadOnlyList<double> CoefficientsC, double BandLowK, double BandHighK)
{
    /// <summary>Approximate temperature, °C.</summary>
    public double ApproximateC(double emfV)
    {
        double emfMv = emfV * 1e3;
        double sum = 0;
        for (int i = CoefficientsC.Count - 1; i >= 0; i--)
        {
            sum = (sum * emfMv) + CoefficientsC[i];
        }

        return sum;
    }
}

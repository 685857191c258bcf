namespace Heatwright.Physics;

/// <summary>Whole discharges over a rested-voltage table at constant resistances, exact piece by piece: no stepping, no step error.</summary>
/// <remarks>Straight rested voltage within a piece makes dt = Q·ds/I integrable in closed form for a resistance and for a constant power through the
/// three-coefficient converter loss. Derived here; checked against fine numerical integration. The cell's slow pairs are taken as settled.</remarks>
public static class Discharge
{
    /// <summary>A resistance straight on the pack. Stops when the terminals reach the cut-off or the cell is empty.</summary>
    public static DischargeResult ThroughHeater(OcvTable cell, double capacityAs, double sourceOhm, double loadOhm, double cutoffV, double fromCharge = 1)
    {
        double loop = Impossible.UnlessPositive(loadOhm, "Ω") + Impossible.IfNegative(sourceOhm, "Ω");
        double stopV = Impossible.IfNegative(cutoffV, "V") * loop / loadOhm;
        return Walk(cell, capacityAs, fromCharge, stopV, DischargeEnd.Cutoff, openV => openV / loop,
            (highV, lowV) => loop * Math.Log(highV / lowV) / (highV - lowV),
            (chemicalJ, _) => chemicalJ * loadOhm / loop);
    }

    /// <summary>A load power held by a converter with the given loss (none: the bare terminals). Stops at the cut-off, at the fold, or empty.</summary>
    /// <remarks>I = 2W/(E + √(E² − 4A·W)) with E = OCV − a1, A = a2 + R_s, W = P + a0; so 1/I = (E + √(E² − 4A·W))/(2W), integrated over E.</remarks>
    public static DischargeResult AtPower(OcvTable cell, double capacityAs, double sourceOhm, LossCoefficients loss, double powerW, double cutoffV, double fromCharge = 1)
    {
        double wanted = Impossible.UnlessPositive(powerW, "W") + loss.FixedW;
        double ohms = Impossible.IfNegative(sourceOhm, "Ω") + loss.SlopeOhm;
        (double stopV, DischargeEnd end) = StopAtPower(sourceOhm, loss, wanted, Impossible.IfNegative(cutoffV, "V"));
        double fold2 = 4 * ohms * wanted;
        return Walk(cell, capacityAs, fromCharge, stopV, end, CurrentA,
            (highV, lowV) => (Primitive(highV - loss.DropV) - Primitive(lowV - loss.DropV)) / (2 * wanted * (highV - lowV)),
            (_, seconds) => powerW * seconds);

        double CurrentA(double openV) => 2 * wanted / (openV - loss.DropV + Root(openV - loss.DropV));
        double Root(double v) => Math.Sqrt(Math.Max(0, (v * v) - fold2));
        double Primitive(double v) => (v * v / 2) + (v / 2 * Root(v)) - (fold2 == 0 ? 0 : fold2 / 2 * Math.Log(v + Root(v)));
    }

    /// <summary>Rested voltage at which a held power ends, and why: the cut-off if it lies on the low-current branch, else the fold.</summary>
    private static (double OpenV, DischargeEnd End) StopAtPower(double sourceOhm, LossCoefficients loss, double wantedW, double cutoffV)
    {
        double foldV = loss.DropV + (2 * Math.Sqrt((loss.SlopeOhm + sourceOhm) * wantedW));
        double atCut = cutoffV - loss.DropV;
        double radicand = (atCut * atCut) - (4 * loss.SlopeOhm * wantedW);
        if (atCut <= 0 || radicand < 0)
        {
            return (foldV, DischargeEnd.Fold);
        }

        // Below this slope the voltage at the terminals would belong to the unstable, high-current root: the fold has come first.
        double currentA = 2 * wantedW / (atCut + Math.Sqrt(radicand));
        return atCut >= ((2 * loss.SlopeOhm) + sourceOhm) * currentA
            ? (cutoffV + (sourceOhm * currentA), DischargeEnd.Cutoff)
            : (foldV, DischargeEnd.Fold);
    }

    private static DischargeResult Walk(OcvTable cell, double capacityAs, double fromCharge, double stopV, DischargeEnd end,
        Func<double, double> currentA, Func<double, double, double> secondsPerCoulomb, Func<double, double, double> loadJ)
    {
        Impossible.UnlessPositive(capacityAs, "C");
        double startV = cell.VoltsAt(Impossible.UnlessFraction(fromCharge));
        if (startV <= stopV)
        {
            return new(0, 0, 0, 0, fromCharge, startV, 0, 0, DischargeEnd.NeverRan);
        }

        double seconds = 0;
        double chemicalJ = 0;
        double s = fromCharge;
        double stopCharge = stopV <= cell.Volts[0] ? 0 : cell.ChargeAt(stopV);
        for (int i = cell.Charges.Length - 1; i >= 0 && s > stopCharge; i--)
        {
            double next = Math.Max(cell.Charges[i], stopCharge);
            if (next >= s)
            {
                continue;
            }

            (double highV, double lowV) = (cell.VoltsAt(s), cell.VoltsAt(next));
            double pieceAs = capacityAs * (s - next);
            seconds += pieceAs * (highV > lowV ? secondsPerCoulomb(highV, lowV) : 1 / currentA(highV));
            chemicalJ += pieceAs * (highV + lowV) / 2;
            s = next;
        }

        // A table that starts above zero charge holds its end value down to empty.
        if (s > stopCharge)
        {
            seconds += capacityAs * (s - stopCharge) / currentA(cell.Volts[0]);
            chemicalJ += capacityAs * (s - stopCharge) * cell.Volts[0];
        }

        double endV = cell.VoltsAt(stopCharge);
        return new(seconds, loadJ(chemicalJ, seconds), chemicalJ, capacityAs * (fromCharge - stopCharge), stopCharge, endV,
            currentA(startV), currentA(endV), stopV <= cell.Volts[0] ? DischargeEnd.Empty : end);
    }
}

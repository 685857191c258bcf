using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector256;
using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>The stepper's equations once more, in lanes and for the common tool: alike cells, straight or stepped up, a heater, up to four nodes, fixed duty or PI.</summary>
/// <remarks>Second-order exponential scheme with one look at the algebra a step: conduction, linear losses and RC pairs exactly; power, contact and curved losses with
/// their value in the middle of the step, drawn on from the last two (exponential Adams and Bashforth, Hochbruck and Ostermann [hochbruck-2010]); the duty, which jumps, is taken as it is.
/// A test holds it equal to the stepper and to a scheme of short steps.</remarks>
internal static class SwiftKernel
{
    /// <summary>Up to so many steps; fewer where a lane needs a look: cut-off, target, end of a stretch of its curves, no steady point.</summary>
    /// <returns>Steps taken. The state stands before the step that was not taken.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static int Advance<TForm>(SwiftCoefs c, SwiftState s, int steps)
        where TForm : struct, ISwiftForm
    {
        var shape = c.Shape;
        Lanes half = Create(0.5);
        Lanes zero = Create(0.0);
        Lanes one = Create(1.0);
        Lanes two = Create(2.0);
        Lanes charge = s.Charge, v1 = s.ShortV, v2 = s.LongV, t0 = s.T0, t1 = s.T1, t2 = s.T2, t3 = s.T3, sensor = s.Sensor, integral = s.IntegralW, duty = s.Duty;
        Lanes lastA = s.LastA, lastW = s.LastW, lastPathW = s.LastPathW, l0 = s.LastT0, l1 = s.LastT1, l2 = s.LastT2, l3 = s.LastT3, lastV = s.LastV, lastCharge = s.LastCharge;
        Lanes now = s.NowS, left = s.WorkLeftJ;
        Lanes high0 = s.High0, high1 = s.High1, high2 = s.High2, high3 = s.High3, lowV = s.LowV, highA = s.HighA, lowAtWork = s.LowAtWork, stepLow = s.StepLow, loadJ = s.LoadJ, workJ = s.WorkJ;
        Lanes amps = s.PackA, watts = s.LoadW, loadV = s.LoadV, pathW = zero;
        Lanes perCellK = s.PerCellK, factor = s.Factor;
        int phase = s.Phase;
        bool fresh = s.Fresh;
        int k = 0;
        for (; k < steps; k++)
        {
            Lanes working = TForm.WorksAtSecond(shape) ? t1 : t0;
            Lanes newPerCellK = perCellK;
            Lanes newFactor = factor;
            if (TForm.HasCells(shape))
            {
                // Cells warm slowly: one over their kelvin by two Newton steps from the last, and the factor of their ohms by the series of its change.
                Lanes cellK = c.AirK + (shape.CellAt == 1 ? t1 : shape.CellAt == 2 ? t2 : t3);
                newPerCellK *= FusedMultiplyAdd(zero - cellK, newPerCellK, two);
                newPerCellK *= FusedMultiplyAdd(zero - cellK, newPerCellK, two);
                if (TForm.Warms(shape))
                {
                    Lanes change = c.Activation * (newPerCellK - perCellK);
                    newFactor *= FusedMultiplyAdd(change, FusedMultiplyAdd(change, FusedMultiplyAdd(change, Create(1.0 / 6), half), one), one);
                }
            }

            Lanes cellOhm = FusedMultiplyAdd(c.OhmSlope, charge, c.OhmAt) * newFactor;
            Lanes openV = c.Series * (FusedMultiplyAdd(c.OpenSlope, charge, c.OpenAt) - v1 - v2);
            Lanes pathV = TForm.Drains(shape) ? openV - (c.DrainOnA * cellOhm) : openV;
            Lanes heater = MaxNative(c.LeastOhm, FusedMultiplyAdd(c.HeaterSlope, t0, c.HeaterAt));
            Lanes none = zero;
            if (TForm.StepsUp(shape))
            {
                Lanes perHeater = one / heater;
                SwiftPath.StepUp(c, pathV, cellOhm + c.LoopOhm, heater, perHeater, out amps, out loadV, out pathW, out none);
                watts = loadV * loadV * perHeater;
            }
            else
            {
                amps = pathV / (cellOhm + c.LoopOhm + heater);
                loadV = amps * heater;
                watts = amps * loadV;
            }

            Lanes newV = pathV - (amps * cellOhm);

            // The controller looks, and the lanes are looked at, before anything of this step is kept.
            Lanes newIntegral = integral;
            Lanes newDuty = duty;
            if (TForm.Regulates(shape) && (!TForm.Samples(shape) || phase == 0))
            {
                Lanes celsius = (TForm.Lags(shape) ? sensor : working) + c.AirC;
                celsius = TForm.Quantised(shape) ? Floor(FusedMultiplyAdd(celsius, c.PerReadingStep, half)) * c.ReadingStep : celsius;
                Lanes error = c.TargetC - celsius;
                Lanes volts = TForm.StepsUp(shape) ? loadV : newV;
                Lanes full = TForm.FixedNominal(shape) ? c.NominalFullW : MaxNative(volts * volts * c.PerNominalOhm, Create(1e-9));
                Lanes wanted = FusedMultiplyAdd(c.Gain, error, integral);
                Lanes most = MinNative(c.MaxDuty * full, c.MostW);
                Lanes given = MinNative(MaxNative(wanted, zero), most);
                if (TForm.Tracks(shape))
                {
                    newIntegral = FusedMultiplyAdd(c.PeriodS, FusedMultiplyAdd(c.Integral, error, c.Tracking * (given - wanted)), integral);
                }
                else
                {
                    Lanes stands = BitwiseOr(BitwiseAnd(LessThan(most, wanted), LessThan(zero, error)), BitwiseAnd(LessThan(wanted, zero), LessThan(error, zero)));
                    newIntegral = ConditionalSelect(stands, integral, FusedMultiplyAdd(c.PeriodS * c.Integral, error, integral));
                }

                newDuty = TForm.FixedNominal(shape) ? given * c.PerNominalFull : given / full;
            }

            Lanes cut = LessThan(newV, c.CutoffV);
            Lanes acts = LessThan(zero, MaxNative(duty, newDuty));
            none = BitwiseAnd(acts, BitwiseOr(none, LessThan(c.TripA, amps)));
            cut = TForm.OnlyWhileOn(shape) ? BitwiseAnd(cut, acts) : cut;
            Lanes alert = BitwiseOr(BitwiseOr(cut, LessThan(charge, c.StretchEnd)), BitwiseOr(LessThan(c.TargetRise, working), none));
            if (TForm.Works(shape))
            {
                alert = BitwiseOr(alert, LessThan(s.WorkEndS, now + Create(1e-9)));
            }

            if (BitwiseAnd(alert, s.Alive).ExtractMostSignificantBits() != 0)
            {
                (s.Alert, s.Cut, s.Gone, s.PackV) = (BitwiseAnd(alert, s.Alive), cut, none, newV);
                break;
            }

            (integral, duty, lastV, lastCharge, perCellK, factor) = (newIntegral, newDuty, newV, charge, newPerCellK, newFactor);
            if (fresh)
            {
                (lastA, lastW, lastPathW, l0, l1, l2, l3) = (amps, watts, pathW, t0, t1, t2, t3);
                fresh = false;
            }

            // What happened up to here counts; what the step to come does, only once no lane has ended within it.
            (high0, high1, high2, high3) = (MaxNative(high0, t0), MaxNative(high1, t1), MaxNative(high2, t2), MaxNative(high3, t3));
            lowAtWork = TForm.Works(shape) ? MinNative(lowAtWork, stepLow) : lowAtWork;
            Lanes on = LessThan(zero, duty);
            lowV = MinNative(lowV, ConditionalSelect(on, newV, lowV));
            highA = MaxNative(highA, BitwiseAnd(on, amps));
            Lanes midA = FusedMultiplyAdd(half, amps - lastA, amps);
            Lanes midW = FusedMultiplyAdd(half, watts - lastW, watts);
            (lastA, lastW) = (amps, watts);

            // Current of one cell, mean over the pulses of the switch, and what each pair is driven towards.
            Lanes onA = TForm.Drains(shape) ? midA + c.DrainOnA : midA;
            Lanes meanA = (TForm.Drains(shape) ? FusedMultiplyAdd(duty, onA - c.DrainOffA, c.DrainOffA) : duty * onA) * c.PerString;
            Lanes shortOhm = FusedMultiplyAdd(c.ShortSlope, charge, c.ShortAt) * factor;
            if (TForm.Transfers(shape))
            {
                Lanes share = MaxNative(meanA * shortOhm * c.KPerTransfer * perCellK, Create(1e-6));
                shortOhm *= SwiftAsinh.Ratio(c, share);
            }

            Lanes longOhm = FusedMultiplyAdd(c.LongSlope, charge, c.LongAt) * factor;
            Lanes loadW = duty * midW;
            loadJ = FusedMultiplyAdd(loadW, c.StepS, loadJ);

            // Losses of the working node: their value now, drawn on to the middle of the step by how fast the node moves now, so that a piece of work may begin abruptly.
            Lanes kelvin = c.AirK + working;
            Lanes cube = kelvin * kelvin * kelvin;
            Lanes radiating = TForm.WorksAtSecond(shape) ? c.Rad1 : c.Rad0;
            Lanes lossW = radiating * FusedMultiplyAdd(cube, kelvin, zero - c.AirK4);
            Lanes steepness = Create(4.0) * radiating * cube;
            if (TForm.Convects(shape))
            {
                Lanes convected = (TForm.WorksAtSecond(shape) ? c.Con1 : c.Con0) * Sqrt(Sqrt(Abs(working)));
                lossW = FusedMultiplyAdd(convected, working, lossW);
                steepness = FusedMultiplyAdd(Create(1.25), convected, steepness);
            }

            Lanes contact = zero;
            Lanes worked = TForm.Works(shape) ? MaxNative(zero, MinNative(s.WorkEndS, now + c.StepS) - MaxNative(s.WorkStartS, now)) * c.PerStepS : zero;
            bool any = TForm.Works(shape) && LessThan(zero, worked).ExtractMostSignificantBits() != 0;
            if (any)
            {
                // A piece that has its heat takes no more, but stays until its time is over.
                contact = BitwiseAnd(BitwiseAnd(LessThan(c.AboveRise, working), LessThan(zero, left)), worked * c.ContactWPerK);
                lossW = FusedMultiplyAdd(contact, working - c.AboveRise, lossW);
                steepness += contact;
            }

            Lanes moves = FusedMultiplyAdd(c.A0, t0, FusedMultiplyAdd(c.A1, t1, FusedMultiplyAdd(c.A2, t2, c.A3 * t3)));
            moves = FusedMultiplyAdd(c.PerWorkingJ, TForm.WorksAtSecond(shape) ? zero - lossW : loadW - lossW, moves);
            Lanes ahead = moves * c.HalfStepS;
            lossW = FusedMultiplyAdd(steepness, ahead, lossW);
            if (any)
            {
                // Never more than the piece still takes; what is over is given back.
                Lanes wouldTake = contact * (working + ahead - c.AboveRise) * c.StepS;
                Lanes taken = MinNative(wouldTake, left);
                Lanes over = wouldTake - taken;
                Lanes begins = MinNative(one, MaxNative(zero, s.WorkStartS - now) * c.PerStepS);

                // Lowest where the piece begins, or where it has its heat or ends within the step and the node recovers: how that would move without the work, less the heat it gave.
                Lanes freely = FusedMultiplyAdd(contact * (working - c.AboveRise), c.PerWorkingJ, moves) * c.StepS;
                Lanes served = FusedMultiplyAdd(freely, begins + (worked * (taken / MaxNative(wouldTake, Create(1e-300)))), working - (taken * c.PerWorkingJ));
                Lanes within = BitwiseOr(LessThan(zero, over), LessThan(s.WorkEndS, now + c.StepS));
                stepLow = FusedMultiplyAdd(freely, begins, working);
                stepLow = ConditionalSelect(within, MinNative(stepLow, served), stepLow);
                lossW -= over * c.PerStepS;
                workJ += taken;
                left -= taken;
            }

            Lanes w0 = TForm.WorksAtSecond(shape) ? loadW : loadW - lossW;
            Lanes w1 = TForm.WorksAtSecond(shape) ? zero - lossW : zero;
            Lanes w2 = zero;
            Lanes w3 = zero;
            if (TForm.CurvedElsewhere(shape))
            {
                Lanes m0 = FusedMultiplyAdd(half, t0 - l0, t0);
                Lanes m1 = FusedMultiplyAdd(half, t1 - l1, t1);
                Lanes m2 = FusedMultiplyAdd(half, t2 - l2, t2);
                Lanes m3 = FusedMultiplyAdd(half, t3 - l3, t3);
                w0 -= TForm.WorksAtSecond(shape) ? Curved(c, c.Rad0, c.Con0, m0) : zero;
                w1 -= TForm.WorksAtSecond(shape) ? zero : Curved(c, c.Rad1, c.Con1, m1);
                w2 -= Curved(c, c.Rad2, c.Con2, m2);
                w3 -= Curved(c, c.Rad3, c.Con3, m3);
            }

            if (TForm.HasCells(shape))
            {
                Lanes offA = c.DrainOffA;
                Lanes instantOhm = cellOhm * c.PackOverCell;
                Lanes square = FusedMultiplyAdd(duty, (onA * onA) - (offA * offA), offA * offA) * c.PerString * c.PerString;
                Lanes ofShort = MaxNative(shortOhm, Create(1e-12)), ofLong = MaxNative(longOhm, Create(1e-12));
                Lanes heat = (square * instantOhm) + (FusedMultiplyAdd(v1 * v1, ofLong, v2 * v2 * ofShort) / (ofShort * ofLong));
                heat *= c.CellsTimesOhm;
                w1 = shape.CellAt == 1 ? w1 + heat : w1;
                w2 = shape.CellAt == 2 ? w2 + heat : w2;
                w3 = shape.CellAt == 3 ? w3 + heat : w3;
            }

            if (TForm.HasElectronics(shape))
            {
                Lanes midPathW = FusedMultiplyAdd(half, pathW - lastPathW, pathW);
                lastPathW = pathW;
                Lanes lost = duty * FusedMultiplyAdd(midA * midA, c.LoopOhm, midPathW);
                w0 = shape.ElectronicsAt == 0 ? w0 + lost : w0;
                w1 = shape.ElectronicsAt == 1 ? w1 + lost : w1;
                w2 = shape.ElectronicsAt == 2 ? w2 + lost : w2;
                w3 = shape.ElectronicsAt == 3 ? w3 + lost : w3;
            }

            charge = FusedMultiplyAdd(zero - meanA, c.PerCapacity, charge);
            v1 = FusedMultiplyAdd(c.ShortKeep, v1, c.ShortTake * (shortOhm * meanA));
            v2 = FusedMultiplyAdd(c.LongKeep, v2, c.LongTake * (longOhm * meanA));
            if (TForm.Lags(shape))
            {
                Lanes moved = FusedMultiplyAdd(c.S0, t0, FusedMultiplyAdd(c.S1, t1, FusedMultiplyAdd(c.S2, t2, c.S3 * t3)));
                Lanes driven = FusedMultiplyAdd(c.SP0, w0, FusedMultiplyAdd(c.SP1, w1, FusedMultiplyAdd(c.SP2, w2, c.SP3 * w3)));
                sensor = FusedMultiplyAdd(c.SS, sensor, moved + driven);
            }

            (l0, l1, l2, l3) = (t0, t1, t2, t3);
            t0 = FusedMultiplyAdd(c.E00, l0, FusedMultiplyAdd(c.E01, l1, FusedMultiplyAdd(c.E02, l2, c.E03 * l3))) + FusedMultiplyAdd(c.P00, w0, c.P01 * w1);
            t1 = FusedMultiplyAdd(c.E10, l0, FusedMultiplyAdd(c.E11, l1, FusedMultiplyAdd(c.E12, l2, c.E13 * l3))) + FusedMultiplyAdd(c.P10, w0, c.P11 * w1);
            t2 = FusedMultiplyAdd(c.E20, l0, FusedMultiplyAdd(c.E21, l1, FusedMultiplyAdd(c.E22, l2, c.E23 * l3))) + FusedMultiplyAdd(c.P20, w0, c.P21 * w1);
            t3 = FusedMultiplyAdd(c.E30, l0, FusedMultiplyAdd(c.E31, l1, FusedMultiplyAdd(c.E32, l2, c.E33 * l3))) + FusedMultiplyAdd(c.P30, w0, c.P31 * w1);
            if (TForm.HasCells(shape) || TForm.HasElectronics(shape) || TForm.CurvedElsewhere(shape))
            {
                t0 += FusedMultiplyAdd(c.P02, w2, c.P03 * w3);
                t1 += FusedMultiplyAdd(c.P12, w2, c.P13 * w3);
                t2 += FusedMultiplyAdd(c.P22, w2, c.P23 * w3);
                t3 += FusedMultiplyAdd(c.P32, w2, c.P33 * w3);
            }

            if (!any)
            {
                stepLow = TForm.Works(shape) ? Create(double.PositiveInfinity) : stepLow;
            }
            else
            {
                // A piece that lasts through the step is also as low as at its end.
                stepLow = ConditionalSelect(LessThan(s.WorkEndS, now + c.StepS), stepLow, MinNative(stepLow, TForm.WorksAtSecond(shape) ? t1 : t0));
                stepLow = ConditionalSelect(LessThan(zero, worked), stepLow, Create(double.PositiveInfinity));
            }

            now += c.StepS;
            if (TForm.Samples(shape))
            {
                phase = phase + 1 == shape.StepsPerSample ? 0 : phase + 1;
            }
        }

        (s.Charge, s.ShortV, s.LongV, s.T0, s.T1, s.T2, s.T3, s.Sensor, s.IntegralW, s.Duty) = (charge, v1, v2, t0, t1, t2, t3, sensor, integral, duty);
        (s.LastA, s.LastW, s.LastPathW, s.LastT0, s.LastT1, s.LastT2, s.LastT3) = (lastA, lastW, lastPathW, l0, l1, l2, l3);
        (s.High0, s.High1, s.High2, s.High3, s.LowV, s.HighA, s.LowAtWork, s.StepLow, s.LoadJ, s.WorkJ) = (high0, high1, high2, high3, lowV, highA, lowAtWork, stepLow, loadJ, workJ);
        (s.PerCellK, s.Factor) = (perCellK, factor);
        (s.LastV, s.LastCharge, s.PackA, s.LoadW, s.LoadV, s.Phase, s.Fresh, s.NowS, s.WorkLeftJ) = (lastV, lastCharge, amps, watts, loadV, phase, fresh, now, left);
        return k;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Radiated(SwiftCoefs c, Lanes coefficient, Lanes rise)
    {
        Lanes kelvin = c.AirK + rise;
        Lanes square = kelvin * kelvin;
        return coefficient * FusedMultiplyAdd(square, square, Create(0.0) - c.AirK4);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Convected(Lanes coefficient, Lanes rise)
    {
        Lanes size = MaxNative(rise, Create(0.0) - rise);
        return coefficient * rise * Sqrt(Sqrt(size));
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Curved(SwiftCoefs c, Lanes radiating, Lanes convecting, Lanes rise) => Radiated(c, radiating, rise) + (c.Shape.Convects ? Convected(convecting, rise) : Create(0.0));
}

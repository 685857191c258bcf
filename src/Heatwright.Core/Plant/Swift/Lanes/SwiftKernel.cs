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
    /// <summary>Up to so many steps; fewer where a lane needs a look: cut-off, target, end of a stretch of its curves, no steady point, end of its piece of work.</summary>
    /// <returns>Steps taken. The state stands before the step that was not taken.</returns>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static int Advance<TForm, TWork>(ref readonly SwiftCoefs c, ref SwiftState s, int steps)
        where TForm : struct, ISwiftForm
        where TWork : struct, ISwiftWork
    {
        ref readonly var shape = ref c.Shape;
        Lanes half = Create(0.5);
        Lanes zero = Create(0.0);
        Lanes one = Create(1.0);
        Lanes two = Create(2.0);
        Lanes onward = s.Onward, minusOnward = s.MinusOnward, stepS = c.StepS;
        Lanes charge = s.Charge, v1 = s.ShortV, held = s.Long, t0 = s.T0, t1 = s.T1, t2 = s.T2, t3 = s.T3, integral = s.IntegralW, duty = s.Duty;
        Lanes sensor = TForm.Lags(shape) ? s.Sensor : zero, lastSensor = TForm.Lags(shape) ? s.LastSensor : zero;
        Lanes lastA = s.LastA, lastW = s.LastW, lastPathW = TForm.ElectronicsAt(shape) >= 0 ? s.LastPathW : zero, l0 = s.LastT0, l1 = s.LastT1, l2 = s.LastT2, l3 = s.LastT3, lastV = s.LastV, lastCharge = s.LastCharge;
        Lanes now = s.NowS, left = TWork.AtHand ? s.WorkLeftJ : zero, stepLow = s.StepLow;
        Lanes amps, watts, loadV, pathW = zero;
        Lanes perCellK = TForm.UsesOhms(shape) ? s.PerCellK : zero, factor = TForm.UsesOhms(shape) ? s.Factor : zero;
        int phase = s.Phase;
        long first = s.Step;
        int k = 0;
        for (; k < steps; k++)
        {
            Lanes working = TForm.WorksAtSecond(shape) ? t1 : t0;
            Lanes newPerCellK = perCellK;
            Lanes newFactor = factor;
            Lanes cellOhm = FusedMultiplyAdd(c.OhmSlope, charge, c.OhmAt);
            if (TForm.CellAt(shape) >= 0)
            {
                // Cells warm slowly: one over their kelvin by two Newton steps from the last, and the factor of their ohms by the series of its change.
                Lanes cellK = c.AirK + (TForm.CellAt(shape) == 1 ? t1 : TForm.CellAt(shape) == 2 ? t2 : t3);
                newPerCellK *= FusedMultiplyAdd(-cellK, newPerCellK, two);
                newPerCellK *= FusedMultiplyAdd(-cellK, newPerCellK, two);
                if (TForm.Scales(shape))
                {
                    Lanes change = c.Activation * (newPerCellK - perCellK);
                    newFactor *= FusedMultiplyAdd(change, FusedMultiplyAdd(change, FusedMultiplyAdd(change, Create(1.0 / 6), half), one), one);
                }
            }

            cellOhm = TForm.Scales(shape) ? cellOhm * newFactor : cellOhm;
            Lanes longOhm = TForm.HoldsAmps(shape) ? LongOhm<TForm>(in c, charge, newFactor) : zero;
            Lanes v2 = TForm.HoldsAmps(shape) ? longOhm * held : held;
            Lanes openV = FusedMultiplyAdd(c.MinusSeries, v1 + v2, FusedMultiplyAdd(c.OpenSlope, charge, c.OpenAt));
            Lanes pathV = TForm.Drains(shape) ? FusedMultiplyAdd(c.MinusDrainOnA, cellOhm, openV) : openV;
            Lanes heater = MaxNative(c.LeastOhm, FusedMultiplyAdd(c.HeaterSlope, t0, c.HeaterAt));
            Lanes none = zero;
            Lanes midW;
            if (TForm.StepsUp(shape))
            {
                Lanes perHeater = one / heater;
                SwiftPath.StepUp(in c, pathV, cellOhm + c.LoopOhm, heater, perHeater, out amps, out loadV, out pathW, out none);
                watts = loadV * loadV * perHeater;
                midW = FusedMultiplyAdd(onward, watts - lastW, watts);
                none = BitwiseAnd(none, s.Alive);
            }
            else
            {
                // What is needed first after the amps, the watts in the middle of the step, hangs on as few operations as can be.
                amps = pathV / (cellOhm + c.LoopOhm + heater);
                loadV = zero;
                Lanes squareA = amps * amps;
                midW = FusedMultiplyAdd(FusedMultiplyAdd(onward, heater, heater), squareA, minusOnward * lastW);
                watts = squareA * heater;
            }

            Lanes newV = FusedMultiplyAdd(-amps, cellOhm, pathV);

            // The controller looks, and the lanes are looked at, before anything of this step is kept.
            Lanes newIntegral = integral;
            Lanes newDuty = duty;
            if (TForm.Regulates(shape) && (!TForm.Samples(shape) || phase == 0))
            {
                SwiftControl.Look<TForm>(in c, TForm.Lags(shape) ? sensor : working, TForm.StepsUp(shape) ? loadV : newV, integral, out newIntegral, out newDuty);
            }

            // Room left until something asks for a look; below nothing: it does.
            Lanes room = MinNative(MinNative(newV - c.CutoffV, charge - c.StretchEnd), MinNative(c.TargetRise - working, c.TripA - amps));
            room = TWork.AtHand ? MinNative(room, s.WorkEndS - now - Create(1e-9)) : room;

            // Last, since a flag is no number, and the lesser of it and a number would be the number.
            room = TForm.StepsUp(shape) ? BitwiseOr(room, none) : room;
            if (room.ExtractMostSignificantBits() != 0)
            {
                // What only counts while the switch acts is looked at here, where one seldom comes.
                Lanes acts = LessThan(zero, MaxNative(duty, newDuty));
                none = BitwiseAnd(acts, BitwiseOr(none, LessThan(c.TripA, amps)));
                Lanes cut = LessThan(newV, c.CutoffV);
                cut = TForm.OnlyWhileOn(shape) ? BitwiseAnd(cut, acts) : cut;
                Lanes asks = BitwiseOr(BitwiseOr(cut, LessThan(charge, c.StretchEnd)), BitwiseOr(LessThan(c.TargetRise, working), none));
                asks = BitwiseAnd(s.Alive, TWork.AtHand ? BitwiseOr(asks, LessThan(s.WorkEndS, now + Create(1e-9))) : asks);
                if (asks.ExtractMostSignificantBits() != 0)
                {
                    (s.Alert, s.Cut, s.Gone, s.PackV, s.PackA) = (asks, cut, none, newV, amps);
                    break;
                }
            }

            (integral, duty, lastV, lastCharge, perCellK, factor) = (newIntegral, newDuty, newV, charge, newPerCellK, newFactor);

            // What happened up to here counts; what the step to come does, only once no lane has ended within it.
            (s.High0, s.High1, s.High2) = (MaxNative(s.High0, t0), MaxNative(s.High1, t1), MaxNative(s.High2, t2));
            if (TForm.FourNodes(shape))
            {
                s.High3 = MaxNative(s.High3, t3);
            }

            if (TWork.AtHand)
            {
                s.LowAtWork = MinNative(s.LowAtWork, stepLow);
            }

            Lanes on = LessThan(zero, duty);
            s.LowV = MinNative(s.LowV, ConditionalSelect(on, newV, s.LowV));
            s.HighA = MaxNative(s.HighA, BitwiseAnd(on, amps));
            Lanes midA = FusedMultiplyAdd(onward, amps - lastA, amps);
            (lastA, lastW) = (amps, watts);

            // Current of one cell, mean over the pulses of the switch, and what each pair is driven towards.
            Lanes onA = TForm.Drains(shape) ? midA + c.DrainOnA : midA;
            Lanes meanA = TForm.Drains(shape) ? FusedMultiplyAdd(duty, onA - c.DrainOffA, c.DrainOffA) : duty * onA;
            meanA = TForm.UsesOhms(shape) ? meanA * c.PerString : meanA;
            Lanes shortOhm = FusedMultiplyAdd(c.ShortSlope, charge, c.ShortAt);
            shortOhm = TForm.Scales(shape) ? shortOhm * factor : shortOhm;
            longOhm = TForm.HoldsAmps(shape) ? longOhm : LongOhm<TForm>(in c, charge, factor);
            if (TForm.Transfers(shape))
            {
                Lanes share = MaxNative(meanA * shortOhm * c.KPerTransfer * perCellK, Create(1e-6));
                shortOhm *= SwiftAsinh.Ratio(in c, share);
            }

            Lanes loadW = duty * midW;
            s.LoadJ = FusedMultiplyAdd(loadW, stepS, s.LoadJ);

            // Losses of the working node, as watts gained: their value now, drawn on to the middle of the step by how fast the node moves now, so that a piece of work may begin abruptly.
            Lanes kelvin = c.AirK + working;
            Lanes square = kelvin * kelvin;
            Lanes radiates = c.WorkingMinusRad * square;
            Lanes gainW = FusedMultiplyAdd(radiates, square, c.WorkingRadAir);
            Lanes slope = radiates * (Create(4.0) * kelvin);
            if (TForm.Convects(shape))
            {
                Lanes convected = c.WorkingMinusCon * Sqrt(Sqrt(Abs(working)));
                gainW = FusedMultiplyAdd(convected, working, gainW);
                slope = FusedMultiplyAdd(Create(1.25), convected, slope);
            }

            // How far the node moves in half a step.
            Lanes ahead = FusedMultiplyAdd(c.Ahead0, t0, TForm.TouchesOthers(shape) ? FusedMultiplyAdd(c.Ahead1, t1, Third<TForm>(shape, c.Ahead2, t2, c.Ahead3, t3)) : c.Ahead1 * t1);
            ahead = TForm.WorksAtSecond(shape) ? ahead : FusedMultiplyAdd(c.AheadPerW, loadW, ahead);
            Lanes worked = zero;
            if (TWork.AtHand)
            {
                SwiftContact.Take<TForm>(in c, ref s, now, working, slope, ahead, ref gainW, ref left, out worked, out stepLow);
            }
            else
            {
                ahead = FusedMultiplyAdd(c.AheadPerW, gainW, ahead);
                gainW = FusedMultiplyAdd(slope, ahead, gainW);
            }

            Lanes w0 = TForm.WorksAtSecond(shape) ? loadW : loadW + gainW;
            Lanes w1 = TForm.WorksAtSecond(shape) ? gainW : zero;
            Lanes w2 = zero;
            Lanes w3 = zero;
            if (TForm.CurvedElsewhere(shape))
            {
                Lanes m0 = FusedMultiplyAdd(onward, t0 - l0, t0);
                Lanes m1 = FusedMultiplyAdd(onward, t1 - l1, t1);
                Lanes m2 = FusedMultiplyAdd(onward, t2 - l2, t2);
                Lanes m3 = FusedMultiplyAdd(onward, t3 - l3, t3);
                w0 -= TForm.WorksAtSecond(shape) ? SwiftLosses.Curved(in c, c.Rad0, c.Con0, m0) : zero;
                w1 -= TForm.WorksAtSecond(shape) ? zero : SwiftLosses.Curved(in c, c.Rad1, c.Con1, m1);
                w2 -= SwiftLosses.Curved(in c, c.Rad2, c.Con2, m2);
                w3 -= SwiftLosses.Curved(in c, c.Rad3, c.Con3, m3);
            }

            if (TForm.CellAt(shape) >= 0)
            {
                Lanes offA = c.DrainOffA;
                Lanes instantOhm = cellOhm * c.PackOverCell;
                Lanes squareA = FusedMultiplyAdd(duty, (onA * onA) - (offA * offA), offA * offA) * c.PerString * c.PerString;
                Lanes ofShort = MaxNative(shortOhm, Create(1e-12)), ofLong = MaxNative(longOhm, Create(1e-12));
                Lanes heat = (squareA * instantOhm) + (FusedMultiplyAdd(v1 * v1, ofLong, v2 * v2 * ofShort) / (ofShort * ofLong));
                heat *= c.CellsTimesOhm;
                w1 = TForm.CellAt(shape) == 1 ? w1 + heat : w1;
                w2 = TForm.CellAt(shape) == 2 ? w2 + heat : w2;
                w3 = TForm.CellAt(shape) == 3 ? w3 + heat : w3;
            }

            if (TForm.ElectronicsAt(shape) >= 0)
            {
                Lanes midPathW = FusedMultiplyAdd(onward, pathW - lastPathW, pathW);
                lastPathW = pathW;
                Lanes lost = duty * FusedMultiplyAdd(midA * midA, c.LoopOhm, midPathW);
                w0 = TForm.ElectronicsAt(shape) == 0 ? w0 + lost : w0;
                w1 = TForm.ElectronicsAt(shape) == 1 ? w1 + lost : w1;
                w2 = TForm.ElectronicsAt(shape) == 2 ? w2 + lost : w2;
                w3 = TForm.ElectronicsAt(shape) == 3 ? w3 + lost : w3;
            }

            charge = FusedMultiplyAdd(c.MinusPerCapacity, meanA, charge);
            v1 = FusedMultiplyAdd(c.ShortKeep, v1, TForm.UsesOhms(shape) ? c.ShortTake * (shortOhm * meanA) : shortOhm * meanA);
            held = FusedMultiplyAdd(c.LongKeep, held, TForm.HoldsAmps(shape) ? c.LongTake * meanA : TForm.UsesOhms(shape) ? c.LongTake * (longOhm * meanA) : longOhm * meanA);
            if (TForm.Lags(shape))
            {
                Lanes moved = FusedMultiplyAdd(c.S0, t0, FusedMultiplyAdd(c.S1, t1, Third<TForm>(shape, c.S2, t2, c.S3, t3)));
                Lanes driven = FusedMultiplyAdd(c.SP0, w0, FusedMultiplyAdd(c.SP1, w1, Third<TForm>(shape, c.SP2, w2, c.SP3, w3)));
                lastSensor = sensor;
                sensor = FusedMultiplyAdd(c.SS, sensor, moved + driven);
            }

            (l0, l1, l2, l3) = (t0, t1, t2, t3);
            t0 = FusedMultiplyAdd(c.E00, l0, FusedMultiplyAdd(c.E01, l1, Third<TForm>(shape, c.E02, l2, c.E03, l3)));
            t1 = FusedMultiplyAdd(c.E10, l0, FusedMultiplyAdd(c.E11, l1, Third<TForm>(shape, c.E12, l2, c.E13, l3)));
            t2 = FusedMultiplyAdd(c.E20, l0, FusedMultiplyAdd(c.E21, l1, Third<TForm>(shape, c.E22, l2, c.E23, l3)));
            t3 = TForm.FourNodes(shape) ? FusedMultiplyAdd(c.E30, l0, FusedMultiplyAdd(c.E31, l1, Third<TForm>(shape, c.E32, l2, c.E33, l3))) : zero;
            if (TForm.CellAt(shape) >= 0 || TForm.ElectronicsAt(shape) >= 0 || TForm.CurvedElsewhere(shape))
            {
                t0 += Third<TForm>(shape, c.P02, w2, c.P03, w3);
                t1 += Third<TForm>(shape, c.P12, w2, c.P13, w3);
                t2 += Third<TForm>(shape, c.P22, w2, c.P23, w3);
                t3 = TForm.FourNodes(shape) ? t3 + Third<TForm>(shape, c.P32, w2, c.P33, w3) : zero;
            }

            // The heater's watts are known last.
            t0 = FusedMultiplyAdd(c.P00, w0, FusedMultiplyAdd(c.P01, w1, t0));
            t1 = FusedMultiplyAdd(c.P10, w0, FusedMultiplyAdd(c.P11, w1, t1));
            t2 = FusedMultiplyAdd(c.P20, w0, FusedMultiplyAdd(c.P21, w1, t2));
            t3 = TForm.FourNodes(shape) ? FusedMultiplyAdd(c.P30, w0, FusedMultiplyAdd(c.P31, w1, t3)) : zero;
            if (TWork.AtHand)
            {
                // A piece that lasts through the step is also as low as at its end.
                stepLow = ConditionalSelect(LessThan(s.WorkEndS, now + stepS), stepLow, MinNative(stepLow, TForm.WorksAtSecond(shape) ? t1 : t0));
                stepLow = ConditionalSelect(LessThan(zero, worked), stepLow, Create(double.PositiveInfinity));
            }

            if (TWork.AtHand)
            {
                now = Create((double)(first + k + 1)) * stepS;
            }

            if (TForm.Samples(shape))
            {
                phase = phase + 1 == shape.StepsPerSample ? 0 : phase + 1;
            }
        }

        if (!TWork.AtHand && k > 0)
        {
            // The step before these was lived through, and no work was in them.
            s.LowAtWork = MinNative(s.LowAtWork, stepLow);
            stepLow = Create(double.PositiveInfinity);
        }

        (s.Charge, s.ShortV, s.Long, s.T0, s.T1, s.T2, s.T3, s.IntegralW, s.Duty) = (charge, v1, held, t0, t1, t2, t3, integral, duty);
        (s.LastA, s.LastW, s.LastT0, s.LastT1, s.LastT2, s.LastT3) = (lastA, lastW, l0, l1, l2, l3);
        (s.StepLow, s.LastV, s.LastCharge, s.Phase) = (stepLow, lastV, lastCharge, phase);
        if (TForm.Lags(shape))
        {
            (s.Sensor, s.LastSensor) = (sensor, lastSensor);
        }

        if (TForm.UsesOhms(shape))
        {
            (s.PerCellK, s.Factor) = (perCellK, factor);
        }

        s.LastPathW = lastPathW;
        s.WorkLeftJ = TWork.AtHand ? left : s.WorkLeftJ;
        s.Step = first + k;
        s.NowS = Create((double)s.Step) * stepS;
        return k;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes LongOhm<TForm>(ref readonly SwiftCoefs c, Lanes charge, Lanes factor)
        where TForm : struct, ISwiftForm => TForm.Scales(c.Shape) ? FusedMultiplyAdd(c.LongSlope, charge, c.LongAt) * factor : FusedMultiplyAdd(c.LongSlope, charge, c.LongAt);

    /// <summary>What the third node adds, and the fourth where there is one.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Lanes Third<TForm>(in SwiftShape shape, Lanes of2, Lanes third, Lanes of3, Lanes fourth)
        where TForm : struct, ISwiftForm => TForm.FourNodes(shape) ? FusedMultiplyAdd(of2, third, of3 * fourth) : of2 * third;
}

using Lanes = System.Runtime.Intrinsics.Vector256<double>;

namespace Heatwright.Plant;

/// <summary>Numbers of the lanes that do not move during a run; those of the present stretch of the cell curves do, rarely.</summary>
internal struct SwiftCoefs
{
    // Curves on the present stretch: value = at + slope·charge: volts and ohms of the whole pack, ohms of one cell's pairs, these times what a step takes of them where no one else asks for them.
    public Lanes OpenAt, OpenSlope, OhmAt, OhmSlope, ShortAt, ShortSlope, LongAt, LongSlope;

    /// <summary>Lower end of the stretch.</summary>
    public Lanes StretchEnd;

    public Lanes MinusSeries, PerString, LoopOhm, MinusPerCapacity, ShortKeep, ShortTake, LongKeep, LongTake, PackOverCell, CellsTimesOhm;
    public Lanes DrainOnA, MinusDrainOnA, DrainOffA, CutoffV, TripA;
    public Lanes Activation, PerReferenceK, KPerTransfer;
    public Lanes Asinh0, Asinh1, Asinh2, Asinh3, Asinh4, Asinh5, Asinh6, Asinh7, Asinh8, Asinh9, Asinh10, Asinh11, Asinh12;
    public Lanes HeaterAt, HeaterSlope, LeastOhm;
    public Lanes SetV, FixedW, DropV, SlopeOhm, LimitA, RestSquared, LockOutV, DiodeV, ChangeA, AboveFixedW, AboveDropV;
    public Lanes Gain, Integral, IntegralStep, Tracking, PeriodS, TargetC, AirC, AirK, MinusAirK4, MinusReadingStep, PerReadingStep, MaxDuty, PerNominalOhm, MostW, NominalFullW, MostNominalW, PerNominalFull;
    public Lanes TargetRise;

    /// <summary>Contact of the work, W/K, and the rise above which it takes heat.</summary>
    public Lanes ContactWPerK, AboveRise;
    public Lanes StepS, PerStepS;

    // One exact step of the four nodes and the sensor, row by row, and what one watt at a node does to each.
    public Lanes E00, E01, E02, E03, E10, E11, E12, E13, E20, E21, E22, E23, E30, E31, E32, E33;
    public Lanes P00, P01, P02, P03, P10, P11, P12, P13, P20, P21, P22, P23, P30, P31, P32, P33;
    public Lanes S0, S1, S2, S3, SS, SP0, SP1, SP2, SP3;

    // How far the working node moves in half a step: by the rises of all, and by a watt.
    public Lanes Ahead0, Ahead1, Ahead2, Ahead3, AheadPerW, PerWorkingJ;

    // Curved losses: of the working node as watts gained; of each node.
    public Lanes WorkingMinusRad, WorkingRadAir, WorkingMinusCon;
    public Lanes Rad0, Rad1, Rad2, Rad3, Con0, Con1, Con2, Con3;

    public SwiftShape Shape;
}

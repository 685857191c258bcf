using Heatwright.Numerics;
using Heatwright.Physics;
using Heatwright.Plant;

namespace Heatwright.Tests.Plant;

/// <summary>Steady points of many arrangements in lanes, each held to the stepper's algebra. Numbers are invented.</summary>
public class SwiftScreenTests
{
    private const int Count = 320, Straight = 160, States = 2;
    private const double AirK = 295.15;

    private static readonly ScreenTable Table = Drawn();

    [Fact]
    public void A_point_that_is_found_gives_as_much_as_it_loses_and_one_that_is_not_found_is_none()
    {
        double[] rises = new double[Count * States];
        SwiftScreen.Rises(Table, rises);
        for (int at = 0; at < rises.Length; at++)
        {
            if (double.IsNaN(rises[at]))
            {
                Assert.False(AnyPoint(at), $"{at} has a steady point.");
            }
            else
            {
                Assert.Equal(0, Over(at, rises[at]) ?? double.NaN, 1e-3);
            }
        }

        Assert.InRange(rises.Count(double.IsNaN), 10, rises.Length / 3);
    }

    [Fact]
    public void Both_widths_find_the_same_bits()
    {
        double[] narrow = new double[Count * States], wide = new double[Count * States];
        SwiftScreen.Rises(Table, narrow);
        Heatwright.Plant.Wide.SwiftScreen.Rises(Table, wide);
        Assert.Equal(narrow.Select(BitConverter.DoubleToInt64Bits), wide.Select(BitConverter.DoubleToInt64Bits));
    }

    /// <summary>Any rise at which what is gained passes through nothing, without a jump.</summary>
    private static bool AnyPoint(int at)
    {
        double? before = Over(at, 0);
        for (double rise = 0.5; rise < 3000; rise += 0.5)
        {
            double? now = Over(at, rise);
            if (before >= 0 && now <= 0 && before - now < 1)
            {
                return true;
            }

            before = now;
        }

        return false;
    }

    /// <summary>Watts given less watts lost, by the stepper's algebra; null: the path gives up.</summary>
    private static double? Over(int at, double rise)
    {
        int i = at % Count;
        PathModel path = i < Straight ? new PathModel.Direct()
            : new PathModel.StepUp(new StepUpModule(Table.SetV[i], new(Table.FixedW[i], Table.DropV[i], Table.SlopeOhm[i]))
            {
                PeakLimitA = Table.LimitA[i],
                MaxDuty = 1 - Math.Sqrt(Table.RestSquared[i]),
                LockoutV = Table.LockOutV[i],
                DiodeV = Table.DiodeV[i],
                ChangeA = Table.ChangeA[i],
                SteeperV = Steeper(i),
            });
        var on = PowerPath.Solve(Table.OpenV[at], Table.CellOhm[at], Table.LoopOhm[i], path, LoadLaw.Ohms(Table.HeaterOhm[i] + (Table.HeaterSlope[i] * rise)));
        return on.Region is Region.LockedOut or Region.Collapsed ? null
            : on.LoadW - (Table.LossWPerK[i] * rise) - (Table.RadiatingWPerK4[i] * (Math.Pow(AirK + rise, 4) - Math.Pow(AirK, 4)));
    }

    /// <summary>Every other module loses steeper above a current.</summary>
    private static double Steeper(int i) => i % 2 == 0 ? 0 : CounterRandom.Uniform(65, 16, (ulong)i);

    private static ScreenTable Drawn()
    {
        double[] Column(int cause, double low, double high, int states = 1) => [.. Enumerable.Range(0, Count * states).Select(i => low + ((high - low) * CounterRandom.Uniform(65, (ulong)cause, (ulong)i)))];
        double[] change = [.. Column(15, 0.5, 6).Select((a, i) => i % 2 == 0 ? double.PositiveInfinity : a)], fixedW = Column(8, 0.02, 0.3), dropV = Column(9, 0.05, 0.4);
        return new(Count, Straight, AirK)
        {
            OpenV = Column(0, 2.2, 4.2, States),
            CellOhm = Column(1, 0.01, 0.08, States),
            LoopOhm = Column(2, 0.02, 0.15),
            HeaterOhm = Column(3, 1, 12),
            HeaterSlope = Column(4, 0, 0.008),
            LossWPerK = Column(5, 0.02, 0.06),
            RadiatingWPerK4 = Column(6, 0, 4e-11),
            SetV = Column(7, 5, 19),
            FixedW = fixedW,
            DropV = dropV,
            SlopeOhm = Column(10, 0.03, 0.1),
            LimitA = Column(11, 3, 12),
            RestSquared = Column(12, 0.002, 0.04),
            LockOutV = Column(13, 2, 2.8),
            DiodeV = Column(14, 0.2, 0.5),
            ChangeA = change,
            AboveFixedW = [.. fixedW.Select((w, i) => i % 2 == 0 ? w : w - (Steeper(i) * change[i]))],
            AboveDropV = [.. dropV.Select((v, i) => v + Steeper(i))],
        };
    }
}

namespace Heatwright.Plant;

/// <summary>Values at the instants asked for; NaN after the end.</summary>
public sealed class Trace
{
    internal Trace(double[] timesS, int nodes, int members)
    {
        TimesS = timesS;
        ChargeLeft = Column();
        ShortV = Column();
        LongV = Column();
        IntegralW = Column();
        TerminalV = Column();
        PackA = Column();
        Duty = Column();
        LoadW = Column();
        SensorK = Column();
        NodesK = [.. Enumerable.Range(0, nodes).Select(_ => Column())];
        CellsCharge = members > 1 ? [.. Enumerable.Range(0, members).Select(_ => Column())] : [];
        Regions = new Region[timesS.Length];

        double[] Column()
        {
            double[] column = new double[timesS.Length];
            Array.Fill(column, double.NaN);
            return column;
        }
    }

    /// <summary>Instants, s.</summary>
    public double[] TimesS { get; }

    /// <summary>Charge left, 0 to 1; of the emptiest cell where cells differ.</summary>
    public double[] ChargeLeft { get; }

    /// <summary>Charge left of each cell, where cells differ; else empty.</summary>
    public double[][] CellsCharge { get; }

    /// <summary>Volts over the short RC pair of one cell, the first.</summary>
    public double[] ShortV { get; }

    /// <summary>Volts over the long RC pair of one cell, the first.</summary>
    public double[] LongV { get; }

    /// <summary>Integral of the controller, W.</summary>
    public double[] IntegralW { get; }

    /// <summary>On-state pack volts at the cells.</summary>
    public double[] TerminalV { get; }

    /// <summary>Mean pack current, A.</summary>
    public double[] PackA { get; }

    /// <summary>Duty.</summary>
    public double[] Duty { get; }

    /// <summary>Mean power into the load, W.</summary>
    public double[] LoadW { get; }

    /// <summary>What the sensor shows, K.</summary>
    public double[] SensorK { get; }

    /// <summary>Temperature of each node, K.</summary>
    public double[][] NodesK { get; }

    /// <summary>Region of the path.</summary>
    public Region[] Regions { get; }

    /// <summary>How many instants were reached before the end.</summary>
    public int Count { get; internal set; }

    internal void Take(int i, Electrics at, Stepper.State state, double ambientK, double sensorK, double duty, double meanA, double loadW, double integralW)
    {
        ChargeLeft[i] = state.ChargeLeft;
        ShortV[i] = state.Cells.ShortV[0];
        LongV[i] = at.LongV[0];
        IntegralW[i] = integralW;
        TerminalV[i] = at.On.TerminalV;
        PackA[i] = meanA;
        Duty[i] = duty;
        LoadW[i] = loadW;
        SensorK[i] = sensorK;
        Regions[i] = at.On.Region;
        for (int node = 0; node < NodesK.Length; node++)
        {
            NodesK[node][i] = ambientK + state.Rises[node];
        }

        for (int cell = 0; cell < CellsCharge.Length; cell++)
        {
            CellsCharge[cell][i] = state.Cells.Charge[cell];
        }
    }
}

namespace Heatwright.Plant;

/// <summary>Watches for the first crossing of each mark.</summary>
/// <param name="tool">Whose marks.</param>
/// <param name="stepper">Knows what the sensor feels.</param>
internal sealed class MarkWatch(AssembledTool tool, Stepper stepper)
{
    private readonly bool[] crossed = new bool[tool.Marks.Count];

    /// <summary>True once: when a mark is crossed for the first time.</summary>
    public bool Crosses(int mark, Stepper.State state)
    {
        bool first = !crossed[mark] && Above(tool.Marks[mark], state) >= 0;
        crossed[mark] |= first;
        return first;
    }

    /// <summary>How far past a mark, in its direction, K.</summary>
    public double Above(HeatMark mark, Stepper.State at)
    {
        double kelvin = mark.Node < 0 ? stepper.SensorK(at) : tool.Network.AmbientK + at.Rises[mark.Node];
        return mark.Falling ? mark.Kelvin - kelvin : kelvin - mark.Kelvin;
    }
}

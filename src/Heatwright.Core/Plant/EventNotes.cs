namespace Heatwright.Plant;

/// <summary>What is told of a run as it goes: regions of the path, the controller at its stop, blocks of the duty; each once where it changes.</summary>
/// <param name="tool">The tool.</param>
/// <param name="every">Tells every event, not only those that a maker asks for.</param>
internal sealed class EventNotes(AssembledTool tool, bool every)
{
    private bool regionKnown;
    private bool saturated;
    private bool everSaturated;

    /// <summary>As they were noted.</summary>
    public List<PlantEvent> Events { get; } = [];

    /// <summary>Region of the path at the last look.</summary>
    public Region Region { get; set; }

    /// <summary>The path's region changes.</summary>
    public void NoteRegion(double nowS, Region at)
    {
        // The first region is told once; the start value is one of them too.
        if (at != Region || (every && !regionKnown))
        {
            Events.Add(new(Happening.RegionChanged, nowS, at));
            Region = at;
        }

        regionKnown = true;
    }

    /// <summary>The controller gives all it may, or no longer; an on-off one switches. Where not every event is told, only the first time after the target was reached.</summary>
    public void NoteSaturation(double nowS, Region at, bool isNow, bool targetReached)
    {
        bool onOff = tool.Controller is ControllerModel.OnOff;
        if (every ? isNow != saturated : !onOff && isNow && !everSaturated && targetReached)
        {
            everSaturated = true;
            Events.Add(new(onOff ? (isNow ? Happening.SwitchedOn : Happening.SwitchedOff) : isNow ? Happening.Saturated : Happening.Unsaturated, nowS, at));
        }

        saturated = isNow;
    }

    /// <summary>A block of the duty begins.</summary>
    public void NoteBlock(double atS)
    {
        if (every)
        {
            Events.Add(new(Happening.BlockBegins, atS, Region));
        }
    }
}

using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>A tool that exists and is known only by what was read on it: no parts, no prediction.</summary>
/// <param name="Id">Unique in the study.</param>
/// <param name="Letter">How tables name it; unique among arrangements, stated plants and tools.</param>
/// <param name="Name">As the maker calls it.</param>
/// <param name="Readings">What was read on it.</param>
public sealed record ExistingTool(string Id, string Letter, string Name, IReadOnlyList<ToolReading> Readings)
{
    /// <summary>The maker's note.</summary>
    public string Note { get; init; } = "";
}

/// <summary>One value read on a tool that exists.</summary>
/// <param name="Quantity">What a requirement can speak of, by its word; or power.</param>
/// <param name="Value">In <paramref name="Unit"/>.</param>
/// <param name="Unit">Unit symbol.</param>
/// <param name="PlusMinus">Half width of the range it may lie in; 0: none stated.</param>
/// <param name="Text">How it was read.</param>
public sealed record ToolReading(string Quantity, double Value, string Unit, double PlusMinus, string Text)
{
    /// <summary>Power that it takes while working.</summary>
    public const string Power = "power";

    /// <summary>Quantities that no requirement speaks of, with their units.</summary>
    public static IReadOnlyDictionary<string, Unit> Others { get; } = new Dictionary<string, Unit>(StringComparer.Ordinal) { [Power] = Units.Watt };

    /// <summary>The requirement's quantity of that word, or null.</summary>
    public static RequirementQuantity? Speaks(string word) => Enum.TryParse<RequirementQuantity>(word, ignoreCase: true, out var quantity) && Enum.IsDefined(quantity) && !char.IsDigit(word[0]) ? quantity : null;
}

/// <summary>How an existing tool stands: line by line where it was read, nothing where it was not.</summary>
/// <param name="Tool">Which.</param>
/// <param name="Lines">A line of the brief each; null: never read, and it neither wins nor loses by it.</param>
public sealed record ToolVerdict(ExistingTool Tool, IReadOnlyList<RequirementVerdict?> Lines)
{
    /// <summary>The worst word of the musts that were read; null: none was.</summary>
    public VerdictWord? Word => Lines.Where(line => line is { Requirement.Must: true }).Select(line => (VerdictWord?)line!.Word).Max();

    /// <summary>Judges a tool by its readings alone.</summary>
    public static ToolVerdict Of(Brief brief, ExistingTool tool) => new(tool, [.. brief.Requirements.Select(line => Line(line, tool))]);

    private static RequirementVerdict? Line(Requirement line, ExistingTool tool)
    {
        var unit = Units.Find(line.Unit) ?? Units.One;
        if (tool.Readings.FirstOrDefault(reading => ToolReading.Speaks(reading.Quantity) == line.Quantity) is not { } reading || Units.Find(reading.Unit) is not { } own || !own.Measures(unit))
        {
            return null;
        }

        var value = Estimate.Within(reading.Value, reading.PlusMinus, own, $"{tool.Id}: {reading.Quantity}", CauseGroup.Instrument, new Origin.Measured(new RunId($"{tool.Name} {reading.Quantity}"), reading.Text)).In(unit);
        double half = reading.PlusMinus * own.Factor / unit.Factor;
        double margin = line.AtMost ? line.Limit - value.Value : value.Value - line.Limit;
        // Any place between the limits of the reading is as likely as any other.
        double probability = half > 0 ? Math.Clamp((margin + half) / (2 * half), 0, 1) : margin >= 0 ? 1 : 0;
        var word = probability >= Judge.Sure ? VerdictWord.Go : probability <= 1 - Judge.Sure ? VerdictWord.NoGo : VerdictWord.NeedMoreReadings;
        return new(line, word, value, Display.Rounded(value), probability, $"read on the tool itself{(reading.Text.Length > 0 ? $": {reading.Text}" : "")}", word == VerdictWord.NeedMoreReadings ? "read it again, more finely" : "") { Margin = margin };
    }
}

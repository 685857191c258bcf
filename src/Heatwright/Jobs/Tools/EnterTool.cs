using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Jobs;

/// <summary>Puts tools that exist beside the arrangements: known only by what was read on them.</summary>
public static class EnterTool
{
    /// <summary>A new tool, or other readings of one that is there.</summary>
    /// <param name="path">The study file.</param>
    /// <param name="letter">How tables name it.</param>
    /// <param name="name">As the maker calls it; empty: as it was.</param>
    /// <param name="typed">'quantity=value (how it was read)'.</param>
    /// <param name="note">The maker's note; null: as it was.</param>
    public static Checked<ExistingTool> Put(string path, string letter, string name, IReadOnlyList<string> typed, string? note)
    {
        ExistingTool? put = null;
        string mark = letter.Trim().ToUpperInvariant();
        return ChangeStudy.Run(path, $"tool {mark} read", study =>
        {
            var old = study.Tools.FirstOrDefault(tool => tool.Letter == mark);
            var read = typed.Select(Read).ToArray();
            List<Problem> problems = [.. read.SelectMany(one => one.Problems)];
            if (mark.Length is 0 or > 3 || !mark.All(char.IsAsciiLetterOrDigit) || study.Arrangements.Any(one => one.Letter == mark) || study.Plants.Any(one => one.Letter == mark))
            {
                problems.Add(new("This letter cannot name the tool.", "LETTER", letter, "up to three letters and digits that no arrangement has", "Choose another, for example X."));
            }

            if (old is null && name.Trim().Length == 0)
            {
                problems.Add(new("The tool has no name.", $"tool {mark}", "empty", "what you call it", "Type it behind the letter."));
            }

            if (problems.Count > 0)
            {
                return new Checked<Study>(problems);
            }

            ToolReading[] fresh = [.. read.Select(one => one.Value)];
            put = new ExistingTool(old?.Id ?? $"tool-{mark}", mark, name.Trim().Length > 0 ? name.Trim() : old!.Name, [.. (old?.Readings ?? []).Where(one => fresh.All(other => other.Quantity != one.Quantity)), .. fresh]) { Note = note ?? old?.Note ?? "" };
            return new(study with { Tools = old is null ? [.. study.Tools, put] : [.. study.Tools.Select(tool => tool.Id == put.Id ? put : tool)] });
        }).Map(_ => put!);
    }

    /// <summary>A quantity in a maker's words: warmUpTime is warm-up time.</summary>
    public static string Words(string quantity) => string.Concat(quantity.Select(c => char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : c.ToString())).Replace("warm up", "warm-up", StringComparison.Ordinal);

    /// <summary>A reading in words: mass 410 g (scale).</summary>
    public static string Said(ToolReading reading) =>
        $"{Words(reading.Quantity)} {Display.Significant(reading.Value, 6)} {reading.Unit}{(reading.PlusMinus > 0 ? $" ± {Display.Significant(reading.PlusMinus, 4)}" : "")}{(reading.Text.Length > 0 ? $" ({reading.Text})" : "")}";

    private static Checked<ToolReading> Read(string typed)
    {
        string[] pair = typed.Split('=', 2, StringSplitOptions.TrimEntries);
        string plain = Plain(pair[0]);
        string? quantity = Known.FirstOrDefault(word => Plain(word) == plain);
        if (pair.Length != 2 || quantity is null)
        {
            return new(new Problem("Nothing of this name is read on a tool.", $"--read \"{typed}\"", pair[0], string.Join(", ", Known.Select(Words)), "Type --read \"warm-up time=25s (stopwatch)\"."));
        }

        int open = pair[1].IndexOf('(', StringComparison.Ordinal);
        var (value, text) = open > 0 && pair[1][^1] == ')' ? (pair[1][..open].Trim(), pair[1][(open + 1)..^1].Trim()) : (pair[1], "");
        return OptionReader.Amount($"--read {Words(quantity)}", value, Expected(quantity)).Map(amount =>
            new ToolReading(quantity, amount.Value, amount.Unit.Symbol, amount.PlusMinus * (amount.IsStandard ? Math.Sqrt(3) : 1), text));
    }

    private static string[] Known { get; } = [.. Enum.GetValues<RequirementQuantity>().Select(quantity => char.ToLowerInvariant(quantity.ToString()[0]) + quantity.ToString()[1..]), .. ToolReading.Others.Keys];

    private static Expect Expected(string quantity) => ToolReading.Speaks(quantity) switch
    {
        RequirementQuantity.WarmUpTime or RequirementQuantity.ChargeTime or RequirementQuantity.RunTime or RequirementQuantity.FullLightTime or RequirementQuantity.RecoveryTime or RequirementQuantity.StandByTime => Expect.Seconds,
        RequirementQuantity.PiecesPerCharge or RequirementQuantity.ProtectionTrips => Expect.Count,
        RequirementQuantity.GripTemperature or RequirementQuantity.CellTemperature or RequirementQuantity.CaseTemperature or RequirementQuantity.EndTemperature
            or RequirementQuantity.StuckSwitchTemperature => Expect.Temperature,
        RequirementQuantity.Steadiness => Expect.Rise,
        RequirementQuantity.WorkRate => Expect.Of(Units.PerHour, "pieces an hour"),
        RequirementQuantity.InsideDiameter or RequirementQuantity.ToolLength => Expect.Length,
        RequirementQuantity.Mass => Expect.Of(Units.Gram, "mass"),
        RequirementQuantity.ChargerHeat => Expect.Watts,
        RequirementQuantity.CellCurrent => Expect.Amps,
        RequirementQuantity.ControllerVolts => Expect.Volts,
        RequirementQuantity.PartsCost or RequirementQuantity.CostAtTen or RequirementQuantity.CostAtHundred => Expect.Money,
        null => Expect.Of(ToolReading.Others[quantity], Words(quantity)),
        var other => throw new InvalidOperationException($"No field for {other}."),
    };

    private static string Plain(string word) => string.Concat(word.Where(char.IsLetter)).ToUpperInvariant();
}

using System.Globalization;
using Heatwright.Plant;
using Heatwright.Quantities;

namespace Heatwright.Verdicts;

/// <summary>Blocks of a duty as a maker types them: 'warm-up; work 12; stand-by 5min at 150C; off 1h; again'.</summary>
public static class BlockWords
{
    private const string How = "warm-up, warm-up 60s, hold 5min, work 12, stand-by 5min at 150C, stand-by 5min, off 1h; at the end 'again', or 'again 4 times'";

    private static readonly (DutyKind Kind, string Word)[] Words =
        [(DutyKind.WarmUp, "warm-up"), (DutyKind.StandBy, "stand-by"), (DutyKind.Hold, "hold"), (DutyKind.Work, "work"), (DutyKind.Off, "off")];

    /// <summary>Reads them; an empty text takes the blocks away.</summary>
    /// <param name="duty">The duty that gets them.</param>
    /// <param name="text">As typed, blocks divided by semicolons.</param>
    public static Checked<Duty> Read(Duty duty, string text)
    {
        string[] said = text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        List<WorkBlock> blocks = [];
        List<Problem> problems = [];
        int? rounds = 1;
        for (int i = 0; i < said.Length; i++)
        {
            if (said[i].StartsWith("again", StringComparison.OrdinalIgnoreCase))
            {
                var again = Again(said[i]["again".Length..], last: i == said.Length - 1);
                problems.AddRange(again.Problems);
                rounds = again.IsFine ? again.Value.Rounds : 1;
                continue;
            }

            var block = Block(said[i], i);
            problems.AddRange(block.Problems);
            if (block.IsFine)
            {
                blocks.Add(block.Value);
            }
        }

        if (problems.Count == 0 && blocks.Count == 0 && said.Length > 0)
        {
            problems.Add(Wrong("Again of what? No block is said.", text));
        }

        return problems.Count > 0 ? new(problems) : new(duty with { Blocks = blocks.Count > 0 ? blocks : null, Rounds = blocks.Count > 0 ? rounds : null });
    }

    /// <summary>The blocks as they would be typed; empty: none.</summary>
    public static string Of(Duty duty)
    {
        if (duty.Blocks is not { } blocks)
        {
            return "";
        }

        string again = duty.Rounds switch { null => "; again", 1 => "", { } rounds => string.Create(CultureInfo.InvariantCulture, $"; again {rounds - 1} times") };
        return string.Join("; ", blocks.Select(Of)) + again;
    }

    private static string Of(WorkBlock block)
    {
        string word = Words.Single(one => one.Kind == block.Does).Word;
        string size = block.Pieces is { } pieces ? pieces.ToString(CultureInfo.InvariantCulture) : block.LastsS is { } lasts ? Time(lasts) : "";
        return $"{word} {size}".TrimEnd() + (block.HoldsC is { } holds ? string.Create(CultureInfo.InvariantCulture, $" at {holds:0.###} °C") : "");
    }

    private static string Time(double seconds) => seconds >= 60 && seconds % 60 == 0
        ? string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0.###} min") : string.Create(CultureInfo.InvariantCulture, $"{seconds:0.######} s");

    private static Checked<(int? Rounds, bool Said)> Again(string rest, bool last)
    {
        string count = rest.Trim().Replace("times", "", StringComparison.OrdinalIgnoreCase).Trim();
        return !last ? new(Wrong("'again' closes the list of blocks.", "again" + rest))
            : count.Length == 0 ? new((null, true))
            : int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out int times) && times is >= 1 and < 100_000 ? new((times + 1, true))
            : new(Wrong("How often again?", "again" + rest));
    }

    private static Checked<WorkBlock> Block(string said, int at)
    {
        var found = Words.SingleOrDefault(one => said.StartsWith(one.Word, StringComparison.OrdinalIgnoreCase) && (said.Length == one.Word.Length || said[one.Word.Length] == ' '));
        if (found.Word is null)
        {
            return new(Wrong("A block is not known.", said));
        }

        string[] sizes = said[found.Word.Length..].Split(" at ", 2, StringSplitOptions.TrimEntries);
        string where = string.Create(CultureInfo.InvariantCulture, $"block {at + 1}");
        if (sizes.Length == 2 && found.Kind != DutyKind.StandBy)
        {
            return new(Wrong("Only stand-by has a temperature of its own; the others have the target or none.", said));
        }

        if (found.Kind == DutyKind.Work)
        {
            string count = sizes[0].Split(' ')[0];
            return int.TryParse(count, NumberStyles.None, CultureInfo.InvariantCulture, out int pieces) && pieces is >= 1 and < 100_000
                ? new(new WorkBlock(found.Kind) { Pieces = pieces }) : new(Wrong("How many pieces?", said));
        }

        if (sizes[0].Length == 0)
        {
            return found.Kind == DutyKind.WarmUp ? new(new WorkBlock(found.Kind)) : new(Wrong("How long?", said));
        }

        return OptionReader.Amount(where, sizes[0], Expect.Of(Units.Second, "how long a block lasts")).Then(lasts => lasts.Si > 0
            ? sizes.Length < 2 ? new Checked<WorkBlock>(new WorkBlock(found.Kind) { LastsS = lasts.Si })
                : OptionReader.Amount(where, sizes[1], Expect.Of(Units.Celsius, "temperature of stand-by")).Map(holds => new WorkBlock(found.Kind) { LastsS = lasts.Si, HoldsC = Units.Celsius.FromSi(holds.Si) })
            : new Checked<WorkBlock>(Wrong("A block lasts longer than 0 s.", said)));
    }

    private static Problem Wrong(string what, string said) => new(what, "blocks of the duty", said, How, "Type the blocks again, divided by semicolons.");
}

using Heatwright.Arrangements;
using Heatwright.BuildSheets;
using Heatwright.Jobs;
using Heatwright.Jobs.BuildSheets;
using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Verdicts;

namespace Heatwright.Tests.Jobs;

/// <summary>What the build sheet says of the handle, the pack and its day: only what is there, and what is assumed as assumed.</summary>
public sealed class HandleSheetTests
{
    private static readonly Study Bow = Bundle.Read(Path.Combine(Repository.Root, "samples", "foam-bow")).Value;

    private static BuildSheet Sheet(Study study, string letter = "C", string day = "2026-03-01")
    {
        var made = MakeBuildSheet.Of(new OpenedStudy(study, "bow.study", "0123456789abcdef"), new SheetRequest { Arrangement = letter, Date = day });
        Assert.True(made.IsFine, string.Join(' ', made.Problems.Select(problem => problem.What)));
        return made.Value.Sheet;
    }

    private static Study With(Func<Part, Part> change) => Bow with { Parts = [.. Bow.Parts.Select(change)] };

    private static Func<Part, Part> Place(string words) => part => part.Kind == PartKind.Charger ? part with { Words = words.Length == 0 ? part.Words.Where(word => word.Key != "place").ToDictionary() : new Dictionary<string, string>(part.Words) { ["place"] = words } } : part;

    private static SheetSection Section(BuildSheet sheet, string key) => sheet.Sections.First(section => section.Key == key);

    private static string[] Inside(BuildSheet sheet) => [.. Section(sheet, "handle").Table!.Rows.Select(row => row[1])];

    private static string Said(BuildSheet sheet, string key, string line) => string.Join(' ', Section(sheet, key).Lines.Where(one => one.Name == line).Select(one => one.Words));

    [Fact]
    public void A_charger_lies_in_the_handle_only_where_its_words_say_so()
    {
        var charger = Bow.Parts.First(part => part.Id.Name == "charger-round");
        var outside = Sheet(With(Place("")));
        Assert.DoesNotContain(charger.Name, Inside(outside));
        Assert.Contains($"'{charger.Name}' stands outside", Said(outside, "handle", "Mass inside"), StringComparison.Ordinal);
        Assert.Contains("stands outside", outside.Parts.Lines.Single(line => line.Description == charger.Name).Value, StringComparison.Ordinal);
        var built = Sheet(With(Place("handle")));
        Assert.Contains(charger.Name, Inside(built));
        Assert.Contains("in the handle", built.Parts.Lines.Single(line => line.Description == charger.Name).Value, StringComparison.Ordinal);
    }

    /// <summary>By hand: a cell of 65 mm in a holder of which no size is stated takes 12 mm more.</summary>
    [Fact]
    public void What_holds_the_cells_is_said_and_takes_its_room()
    {
        var sheet = Sheet(Bow);
        Assert.Contains("in 1 × 'spring holder'", Said(sheet, "power", "Pack"), StringComparison.Ordinal);
        Assert.DoesNotContain("weld", Said(sheet, "power", "Pack"), StringComparison.Ordinal);
        var cell = Section(sheet, "handle").Table!.Rows.First(row => row[1].StartsWith("cell", StringComparison.Ordinal));
        Assert.Equal(("cell in 'spring holder'", "0.0", "77.0", "length and width assumed"), (cell[1], cell[2], cell[3], cell[^1]));
        var sized = Sheet(With(part => part.Id.Name == "holder" ? part with { Stated = [.. part.Stated, new(PartQuantities.Length, 75, "mm", 0, "measured", "callipers"), new(PartQuantities.Width, 20.5, "mm", 0, "measured", "callipers")] } : part));
        Assert.Equal(("75.0", "stated"), (Section(sized, "handle").Table!.Rows.First(row => row[1].StartsWith("cell", StringComparison.Ordinal))[3], Section(sized, "handle").Table!.Rows.First(row => row[1].StartsWith("cell", StringComparison.Ordinal))[^1]));
        var tabs = Sheet(With(part => part.Id.Name == "holder" ? part with { Name = "welded tabs" } : part));
        Assert.Contains("weld or clip tabs", Said(tabs, "power", "Pack"), StringComparison.Ordinal);
        Assert.Contains("cell", Inside(tabs));
    }

    [Fact]
    public void A_handle_and_boards_of_no_stated_size_are_marked_assumed()
    {
        var bare = Sheet(With(part => part.Kind is PartKind.Handle or PartKind.Controller ? part with { Stated = [.. part.Stated.Where(one => one.Quantity is not (PartQuantities.Length or PartQuantities.Height))] } : part));
        string said = Said(bare, "handle", "Sizes assumed, not stated");
        Assert.Contains("handle: length", said, StringComparison.Ordinal);
        Assert.Contains(Section(bare, "handle").Table!.Rows, row => row[^1] == "length and height assumed");
        Assert.Contains("180 (length of the handle assumed)", bare.Drawing, StringComparison.Ordinal);
        Assert.Contains("* size assumed", bare.Drawing, StringComparison.Ordinal);
        Assert.DoesNotContain("handle: ", Said(Sheet(Bow), "handle", "Sizes assumed, not stated"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_bears_the_day_of_its_decision_or_else_this_day()
    {
        var card = new DecisionCard("d", "2026-02-03", "s", Bow.Arrangements.First(one => one.Letter == "C").Id, "", VerdictWord.Go, "", "", [], [], [], [], [], [], Bow.Brief!);
        var decided = Bow with { Decisions = [card] };
        Assert.Equal(["2026-02-03", "2026-02-03", "2026-05-06", "2026-05-06"], new[] { (decided, "C"), (decided, ""), (decided, "A"), (Bow, "C") }.Select(one => MakeBuildSheet.Day(one.Item1, one.Item2, "2026-05-06")));
        Assert.All(Sheet(Bow, day: "2026-02-03").Code, file => Assert.Contains("Written 2026-02-03", file.Text, StringComparison.Ordinal));
    }

    /// <summary>A warm-up that told no grip apart has read all that leaves the end. What is assumed to go into the grip is a part of that, and no number beside it.</summary>
    [Fact]
    public void The_grip_is_counted_once_and_named_where_it_counts()
    {
        foreach (var arrangement in Bow.Arrangements)
        {
            var builder = PlantBuilder.For(arrangement, new Heatwright.Arrangements.Shelf(Bow.Parts, RunStudy.Findings(Bow)), RunStudy.Plan(Bow.Brief!)).Value;
            var line = Section(Sheet(Bow, arrangement.Letter), "control").Lines.First(one => one.Name == "Tool near it: resistance to air");
            var from = Assert.IsType<Origin.WorkedOut>(line.Value!.Origin).From;
            Assert.Equal(!builder.LinkIsInLoss, from.Any(input => input.Name.StartsWith("working end to grip", StringComparison.Ordinal)));
            Assert.Equal(builder.LinkIsInLoss, line.Words.Contains("within its loss", StringComparison.Ordinal));
        }
    }
}

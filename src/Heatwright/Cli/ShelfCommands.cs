using System.CommandLine;
using System.Globalization;
using Heatwright.Cli.Answering;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.StudyFile;

namespace Heatwright.Cli;

/// <summary>Commands about the maker's own shelf, and about carrying parts between it and a study.</summary>
internal static class ShelfCommands
{
    public static Command Take(Screen screen) => Carry(screen, "take", "Copies a part with its pieces, trials and meters from your own shelf into a study. Example: heatwright take knife.study round",
        "Its name on the shelf.", "Its name in the study, where it is to be another.", OwnShelf.Take, "is in");

    public static Command Give(Screen screen) => Carry(screen, "give", "Gives a part with all that was learnt of it back to your own shelf. Example: heatwright give knife.study round",
        "Its name in the study.", "Its name on the shelf, where it is to be another.", OwnShelf.Give, "is on the shelf, from");

    public static Command Shelf(Screen screen) => new("shelf", $"Your own shelf: parts, meters, resistor drawer, prices and constants that outlive a study. It lies in your data folder, or where --shelf or {OwnShelf.Variable} say. Example: heatwright shelf show")
    {
        Show(screen), Compare(screen), Currency(screen), Resistors(screen), Price(screen), Constant(screen),
    };

    private static Option<string?> Where() => new("--shelf") { Description = "The shelf's file." };

    private static Command Carry(Screen screen, string name, string about, string which, string other, Func<string, string, string, string?, bool, Checked<PartCarried>> job, string done)
    {
        var (file, shelf, json) = (Answers.StudyFile(), Where(), Answers.Json<CarriedView>());
        var part = new Argument<string>("PART") { Description = which };
        var called = new Option<string?>("--as") { Description = other };
        var over = new Option<bool>("--over") { Description = "Also over what was changed at the other end; the history keeps it." };
        var command = new Command(name, about) { file, part, called, over, shelf, json };
        command.SetAction(parsed => Answers.Give(screen, job(parsed.GetValue(file)!, OwnShelf.Path(parsed.GetValue(shelf)), parsed.GetValue(part)!, parsed.GetValue(called), parsed.GetValue(over)), parsed.GetValue(json),
            carried => new CarriedView(parsed.GetValue(part)!, carried.Pair.Word, carried.Changed, carried.Pair.Differences, carried.Renamed), carried =>
            {
                screen.Say(carried.Changed ? $"'{parsed.GetValue(part)}' {done} {parsed.GetValue(file)}; it was {carried.Pair.Word}." : $"'{parsed.GetValue(part)}' is the same in both; nothing was changed.");
                Table(screen, carried.Pair.Differences);
                carried.Renamed.ToList().ForEach(one => screen.Say($"  The name was taken: {one} now."));
            }));
        return command;
    }

    private static Command Show(Screen screen)
    {
        var (shelf, json) = (Where(), Answers.Json<OwnShelfView>());
        var command = new Command("show", "Shows what is on your own shelf. Example: heatwright shelf show") { shelf, json };
        command.SetAction(parsed => Answers.Give(screen, OwnShelf.Read(OwnShelf.Path(parsed.GetValue(shelf))), parsed.GetValue(json),
            opened => new OwnShelfView([.. opened.Study.Parts.Select(part => part.Id.Name)], [.. opened.Study.Instruments.Select(meter => meter.Name)], opened.Study.Own ?? new OwnThings()), opened =>
            {
                screen.Say($"Your shelf is {opened.Path}.");
                PartTables.List(screen, PartView.All(opened.Study));
                screen.Say($"Meters: {Listed(opened.Study.Instruments.Select(meter => meter.Name))}");
                Own(screen, opened.Study.Own ?? new OwnThings());
            }));
        return command;
    }

    private static Command Compare(Screen screen)
    {
        var (file, shelf, json) = (Answers.StudyFile(), Where(), Answers.Json<IReadOnlyList<ShelfPairView>>());
        var command = new Command("compare", "Shows which parts are newer there or newer here, with the difference. Example: heatwright shelf compare knife.study") { file, shelf, json };
        command.SetAction(parsed => Answers.Give(screen, OwnShelf.Compare(parsed.GetValue(file)!, OwnShelf.Path(parsed.GetValue(shelf))), parsed.GetValue(json),
            pairs => pairs.Select(pair => new ShelfPairView(pair.Here?.Name, pair.There?.Name, pair.Word, pair.Differences)), pairs =>
            {
                foreach (var pair in pairs)
                {
                    screen.Say($"{pair.Here?.Name ?? pair.There?.Name}: {pair.Word}");
                    Table(screen, pair.Differences);
                }

                if (pairs.Count == 0)
                {
                    screen.Say("No part of the study is on the shelf.");
                }
            }));
        return command;
    }

    private static Command Currency(Screen screen)
    {
        var word = new Argument<string>("WORD") { Description = "Word or sign of your money." };
        return Kept(screen, "currency", "Sets how you write money. Example: heatwright shelf currency EUR", [word], [], (path, parsed) => KeepOwn.Currency(path, parsed.GetValue(word)!));
    }

    private static Command Resistors(Screen screen)
    {
        var values = new Argument<string[]>("VALUES") { Description = "As printed: 10R 4k7 100k.", Arity = ArgumentArity.ZeroOrMore };
        var anew = new Option<bool>("--anew") { Description = "These and no others." };
        return Kept(screen, "resistors", "Puts resistors into your drawer. Example: heatwright shelf resistors 10R 4k7 100k", [values], [anew], (path, parsed) => KeepOwn.Resistors(path, parsed.GetValue(values) ?? [], parsed.GetValue(anew)));
    }

    private static Command Price(Screen screen)
    {
        var (what, price) = (new Argument<string>("WHAT") { Description = "What it is." }, new Argument<string>("PRICE") { Description = "Of one piece." });
        return Kept(screen, "price", "Keeps the price of something that is no part on the shelf. Example: heatwright shelf price \"silicone wire, 1 m\" 0.90", [what, price], [], (path, parsed) => KeepOwn.Price(path, parsed.GetValue(what)!, parsed.GetValue(price)!));
    }

    private static Command Constant(Screen screen)
    {
        var (name, value) = (new Argument<string>("NAME") { Description = "What it is." }, new Argument<string>("VALUE") { Description = "With its unit." });
        var why = new Option<string?>("--why") { Description = "Where it comes from." };
        return Kept(screen, "constant", "Keeps a constant of your own. Example: heatwright shelf constant \"cut of 8 mm rope\" 55J --why \"own trial\"", [name, value], [why],
            (path, parsed) => KeepOwn.Constant(path, parsed.GetValue(name)!, parsed.GetValue(value)!, parsed.GetValue(why) ?? ""));
    }

    private static Command Kept(Screen screen, string name, string about, Argument[] arguments, Option[] options, Func<string, ParseResult, Checked<OwnThings>> job)
    {
        var (shelf, json) = (Where(), Answers.Json<OwnThings>());
        var command = new Command(name, about) { shelf, json };
        arguments.ToList().ForEach(command.Arguments.Add);
        options.ToList().ForEach(command.Options.Add);
        command.SetAction(parsed => Answers.Give(screen, job(OwnShelf.Path(parsed.GetValue(shelf)), parsed), parsed.GetValue(json), own => own, own => Own(screen, own)));
        return command;
    }

    private static void Own(Screen screen, OwnThings own)
    {
        screen.Say($"Money: {(own.Currency.Length > 0 ? own.Currency : "not said")}");
        screen.Say($"Resistors: {Listed(own.Resistors.Select(ohms => ohms.ToString("0.####", CultureInfo.InvariantCulture) + " Ω"))}");
        screen.Say($"Prices: {Listed(own.Prices.Select(one => $"{one.What} {one.Price.ToString("0.00##", CultureInfo.InvariantCulture)}"))}");
        screen.Say($"Constants: {Listed(own.Constants.Select(one => $"{one.Name} {Display.Significant(one.Value, 6)} {one.Unit} ({one.Why})"))}");
    }

    private static void Table(Screen screen, IReadOnlyList<PartDifference> differences)
    {
        if (differences.Count == 0)
        {
            return;
        }

        var table = Answers.Table("what", "here", "there");
        foreach (var one in differences)
        {
            table.Row(one.What, one.Here, one.There);
        }

        screen.Show(table);
    }

    private static string Listed(IEnumerable<string> words) => string.Join(", ", words) is { Length: > 0 } said ? said : "none";
}

using System.CommandLine;
using Heatwright.Arrangements;
using Heatwright.Cli.Answering;
using Heatwright.Jobs;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Commands that wire parts into arrangements and show their loops.</summary>
internal static class WiringCommands
{
    public static Command Arrange(Screen screen) => Wiring(screen, "arrange", "Wires parts of the shelf into an arrangement, and shows at once what its loop does. What is not chosen is the only part of its kind, or the only one that was measured, or a class value, and is marked assumed; protection, step-up, cut-out and charger are there only where they are chosen. Example: heatwright arrange knife.study --cell round --pack 2S1P --heater stick",
        null, (path, _, entry) => WireTool.Arrange(path, entry));

    public static Command Clone(Screen screen) => Wiring(screen, "clone", "Wires the same arrangement again with one part changed, and shows the differences. Example: heatwright clone knife.study A --heater cartridge --step-up module --pack 1S1P",
        new Argument<string>("ARRANGEMENT") { Description = "The letter of the one to clone." }, WireTool.Clone);

    public static Command Rewire(Screen screen) => Wiring(screen, "rewire", "Changes an arrangement in its own place, and shows what that does; 'heatwright undo' brings the old wiring back. Example: heatwright rewire knife.study A --heater cartridge",
        new Argument<string>("ARRANGEMENT") { Description = "The letter of the one to change." }, WireTool.Rewire, lettered: false);

    public static Command Unwire(Screen screen)
    {
        var (file, letter, json) = (Answers.StudyFile(), new Argument<string>("ARRANGEMENT") { Description = "Its letter." }, Answers.Json<ArrangementsLeftView>());
        var command = new Command("unwire", "Takes an arrangement out of a study; its parts and readings stay, and 'heatwright undo' brings it back. Example: heatwright unwire knife.study B") { file, letter, json };
        command.SetAction(parsed => Answers.Give(screen, WireTool.Unwire(parsed.GetValue(file)!, parsed.GetValue(letter)!), parsed.GetValue(json), done => new ArrangementsLeftView([.. done.After.Arrangements.Select(one => one.Letter)]),
            done => screen.Say($"{done.Change?.What[..1].ToUpperInvariant()}{done.Change?.What[1..]}. {(done.After.Arrangements.Count == 0 ? "None is left." : $"Left: {string.Join(", ", done.After.Arrangements.Select(one => one.Letter))}.")} 'heatwright undo' brings it back.")));
        return command;
    }

    public static Command Loop(Screen screen)
    {
        var (file, letter, json) = (Answers.StudyFile(), new Argument<string>("ARRANGEMENT") { Description = "Its letter." }, Answers.Json<LoopJsonView>());
        var command = new Command("loop", "Shows an arrangement's loop: ohms, volts and watts at full and empty pack, and what limits first. Example: heatwright loop knife.study A") { file, letter, json };
        command.SetAction(parsed => Answers.Give(screen, LoopView.Read(parsed.GetValue(file)!, parsed.GetValue(letter)!), parsed.GetValue(json), LoopJsonView.Of, view => Show(screen, view)));
        return command;
    }

    public static Command Differences(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<WiringDifferences>());
        var (one, other) = (new Argument<string>("ONE") { Description = "A letter." }, new Argument<string>("OTHER") { Description = "Another letter." });
        var command = new Command("differences", "Shows in what two arrangements differ, and what that does to their loops. Example: heatwright differences knife.study A B") { file, one, other, json };
        command.SetAction(parsed => Answers.Give(screen, WiringDifferences.Read(parsed.GetValue(file)!, parsed.GetValue(one)!, parsed.GetValue(other)!), parsed.GetValue(json), found => found, found => Show(screen, found)));
        return command;
    }

    private static Command Wiring(Screen screen, string name, string about, Argument<string>? from, Func<string, string, WiringEntry, Checked<Wired>> job, bool lettered = true)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<LoopJsonView>());
        var letter = new Option<string?>("--letter") { Description = "A, B, C; without it the next that is free." };
        var called = new Option<string?>("--name") { Description = "What you call it." };
        var pack = new Option<string?>("--pack") { Description = "Cells in series and side by side: 2S1P." };
        var touches = new Option<string?>("--touches") { Description = "Contacts that the current passes; without it two for each cell in series." };
        var duty = new Option<string?>("--duty") { Description = "Largest duty that the firmware allows: 0.45." };
        Option<string?>[] places = [.. Places.All.Select(place => new Option<string?>("--" + place.Name) { Description = $"Short name of the {place.Words}{(place.MayBeEmpty ? ", or none" : "")}." })];
        var command = new Command(name, about) { file };
        if (from is not null)
        {
            command.Arguments.Add(from);
        }

        foreach (var option in places.Cast<Option>().Concat(lettered ? [pack, touches, duty, letter, called, json] : [pack, touches, duty, called, json]))
        {
            command.Options.Add(option);
        }

        command.SetAction(parsed =>
        {
            var chosen = Places.All.Zip(places).Select(pair => (pair.First.Name, Value: parsed.GetValue(pair.Second))).Where(pair => pair.Value is not null).ToDictionary(pair => pair.Name, pair => pair.Value!, StringComparer.Ordinal);
            var wired = job(parsed.GetValue(file)!, from is null ? "" : parsed.GetValue(from)!, new WiringEntry
            {
                Letter = lettered ? parsed.GetValue(letter) : null,
                Name = parsed.GetValue(called),
                Chosen = chosen,
                Pack = parsed.GetValue(pack),
                Touches = parsed.GetValue(touches),
                Duty = parsed.GetValue(duty),
            });
            return Answers.Give(screen, wired, parsed.GetValue(json), done => LoopJsonView.Of(done.Loop), done =>
            {
                Show(screen, done.Loop);
                if (done.From is { } before)
                {
                    Show(screen, lettered ? WiringDifferences.Of(before, done.Loop) : WiringDifferences.Of(before, done.Loop) with { One = "as it was", Other = "as it is" });
                }
            });
        });
        return command;
    }

    private static void Show(Screen screen, LoopView view)
    {
        var look = view.Look;
        screen.Say($"{view.Arrangement.Letter}  {view.Arrangement.Name}");
        foreach (var (place, part, assumed) in view.Wiring.Where(row => row.Assumed))
        {
            screen.Say($"  Assumed: {part!.Name} as {place.Words}; choose with --{place.Name}.");
        }

        foreach (string guess in look.Guessed)
        {
            screen.Say($"  Assumed: {guess}.");
        }

        if (view.Wiring.FirstOrDefault(row => row.Part is { } part && part.Id == view.Arrangement.Contacts && part.IsHolder()).Part is { } holder)
        {
            screen.Say($"  Counted: {RunWords.Number(view.Arrangement.Pieces(holder), "0")} × {holder.Name}, {(Arrangement.HeldCells(holder) is > 1 and var cells ? $"each for {RunWords.Number(cells, "0")} cells" : "one to a cell")}, for {RunWords.Number(view.Arrangement.ContactCount, "0")} touches.");
        }

        var table = Answers.Table("in series", "ohms", "volts, full", "volts, cut-off", "watts, full", "watts, cut-off", "origin");
        for (int i = 0; i < look.Steps.Count; i++)
        {
            table.Row(look.Steps[i].Name, Shown(look.Steps[i].Ohms), At(look.Full.DropsV, i), At(look.Empty.DropsV, i), At(look.Full.LostW, i), At(look.Empty.LostW, i), look.Steps[i].Ohms.Origin.Weakest().Word);
        }

        table.Row("together", Shown(look.Total), "", "", "", "", look.Total.Origin.Weakest().Word);
        if (look.Full.ModuleW is not null || look.Empty.ModuleW is not null || view.Arrangement.StepUp is not null)
        {
            table.Row("lost in the module", "", "", "", Shown(look.Full.ModuleW), Shown(look.Empty.ModuleW), "");
        }

        table.Row(look.Full.LoadOhms is null || look.HotC == 20 ? "at the load" : $"at the load, {Display.Significant(look.HotC, 4)} °C", Shown(look.Full.LoadOhms ?? look.Empty.LoadOhms), Shown(look.Full.LoadV), Shown(look.Empty.LoadV), Shown(look.Full.LoadW), Shown(look.Empty.LoadW), (look.Full.LoadOhms ?? look.Empty.LoadOhms)?.Origin.Weakest().Word ?? "");
        screen.Show(table);
        if (Fresh(look) is { } fresh)
        {
            screen.Say(fresh);
        }

        foreach (var moment in new[] { look.Start, look.Full, look.Empty })
        {
            screen.Say($"  {Sentence(moment)}");
        }

        screen.Say($"  Limits first: {view.First}.");
        foreach (var pair in view.Pairs)
        {
            screen.Say($"  {(pair.Refused ? "Cannot be" : "Mind")}: {pair.Problem.What} {pair.Problem.Value}; {pair.Problem.Limit}. {pair.Problem.Next}");
        }

        if (view.Arrangement.Series * view.Arrangement.Parallel > 1)
        {
            screen.Say("  Caution: cells of one pack are of one kind, one age and one charge, and those in series are watched one by one; unlike cells are never joined. A shorted lithium cell burns: fuse at its tab, follow the cells' sheet and local codes.");
        }
    }

    private static void Show(Screen screen, WiringDifferences found)
    {
        var table = Answers.Table("what", found.One, found.Other);
        foreach (var row in found.Wiring.Concat(found.Numbers))
        {
            table.Row(row.What, row.One, row.Other);
        }

        screen.Show(table);
    }

    /// <summary>Which ohms of the cells belong to which column: after minutes of load they have more than in the first seconds.</summary>
    private static string? Fresh(LoopLook look) => look.Full.Ohms.Count > 0 && Math.Abs(look.Full.Ohms[0].Si - look.Steps[0].Ohms.Si) > 1e-9 * look.Steps[0].Ohms.Si
        ? $"  Ohms of the cells: {Shown(look.Steps[0].Ohms)} after minutes of load, as in the table and at the cut-off; {Shown(look.Full.Ohms[0])} in the first seconds, as volts and watts of the full pack have it." : null;

    private static string Sentence(LoopMoment moment) => moment.PackA is { } amps
        ? $"{moment.When}{(moment.LoadOhms is { } ohms ? $", load of {Shown(ohms)}" : "")}: {Shown(amps)} from the pack at {Shown(moment.PackV)}, {Shown(moment.LoadW)} at the load{(moment.Region is { } region ? $" ({LoopView.Words(region)})" : "")}"
        : $"{moment.When}: no steady point: {LoopView.Words(moment.Region!.Value)}";

    private static string At(IReadOnlyList<Estimate> values, int i) => values.Count > i ? Shown(values[i]) : "—";

    private static string Shown(Estimate? value) => value is null ? "—" : Display.Rounded(value.Unit == Units.Ohm && value.Value < 0.3 ? value.In(Units.Milliohm) : value);
}

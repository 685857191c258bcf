using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using Heatwright.Cli.Answering;
using Heatwright.Jobs;
using Heatwright.Jobs.Keeping;
using Heatwright.Parts;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Commands about the parts of a study.</summary>
internal static class PartCommands
{
    private static readonly string[] Origins = ["claimed", "measured", "sheet", "published", "assumed"];

    public static Command Part(Screen screen) => new("part", "Parts on the shelf of a study. Example: heatwright part add knife.study stick heater \"stick heater\" --claimed \"rated volts=12V\" \"rated power=40W\"")
    {
        Add(screen), State(screen), Show(screen), List(screen), Photo(screen), Label(screen), Drop(screen),
    };

    private static Command Add(Screen screen)
    {
        var kind = new Argument<string?>("KIND") { Description = $"{string.Join(", ", Enum.GetValues<PartKind>().Select(EnterPart.Typed))}; may be left out with --listing.", Arity = ArgumentArity.ZeroOrOne };
        var name = new Argument<string?>("NAME") { Description = "What you call it.", Arity = ArgumentArity.ZeroOrOne };
        return Entering(screen, "add", "Puts a part on the shelf. Values are typed as quantity=value, with words in brackets behind them. Example: heatwright part add knife.study round cell \"round cell\" --count 2 --claimed \"capacity=3500mAh (label)\" --measured \"mass=46g±0.5g (scale)\"",
            kind, name, EnterPart.Add);
    }

    private static Command State(Screen screen) => Entering(screen, "state", "Says more about a part that is there. Example: heatwright part state knife.study round --sample 2 --measured \"mass=45.5g (scale)\"", null, null, EnterPart.State);

    private static Command Entering(Screen screen, string verb, string about, Argument<string?>? kind, Argument<string?>? name, Func<string, PartEntry, Checked<PartEntered>> job)
    {
        var file = Answers.StudyFile();
        var id = new Argument<string>("PART") { Description = "Its short name." };
        var count = new Option<string?>("--count") { Description = "Pieces on hand; 0: to be bought." };
        var from = new Option<string?>("--from") { Description = "bought, salvaged, borrowed or destroyed." };
        var word = Many("--word", "Words that are no numbers, as name=word: chemistry=lithium-ion, cells=1, type=K, place=handle of a charger that is built in, or of a cut-out that sits there and not on the working end.");
        var note = new Option<string?>("--note") { Description = "Your note." };
        var photo = new Option<string?>("--photo") { Description = "Name of a picture file that lies with the study." };
        var sample = new Option<string?>("--sample") { Description = "The piece these values are of: 1, 2, 3." };
        var state = new Option<string?>("--state") { Description = "How that piece is: sound, suspect or destroyed." };
        var like = new Option<string?>("--class") { Description = "Estimates of a class: 'spring holder'. With nothing else said it is a part to be bought, with a value of its own one on hand." };
        var listing = new Option<string?>("--listing") { Description = "A file with the seller's text; it is kept as it is." };
        var take = Many("--take", "Claims of the text that you confirm: numbers as 'heatwright claims' shows them, or all; 1=output-current where it asks.");
        var called = kind is null ? new Option<string?>("--name") { Description = "What you call it." } : null;
        var values = Origins.Select(origin => Many($"--{origin}", $"Values that are {(origin == "sheet" ? "from its data sheet" : origin)}, as \"quantity=value (words)\".")).ToArray();
        var json = Answers.Json<PartEnteredView>();
        var command = new Command(verb, about) { file, id };
        foreach (var argument in new[] { kind, name }.OfType<Argument<string?>>())
        {
            command.Arguments.Add(argument);
        }

        foreach (var option in new Option?[] { called, count, from, word, note, photo, sample, state, like, listing, take, json }.Concat(values).OfType<Option>())
        {
            command.Options.Add(option);
        }

        command.SetAction(parsed =>
        {
            var text = parsed.GetValue(listing) is { } path ? ReadText.Of(path).Map(string? (read) => read) : new Checked<string?>(value: null);
            var entered = text.Then(pasted => job(parsed.GetValue(file)!, new PartEntry(parsed.GetValue(id)!)
            {
                Kind = kind is null ? "" : parsed.GetValue(kind) ?? "",
                Name = (name is null ? parsed.GetValue(called!) : parsed.GetValue(name)) ?? "",
                Count = parsed.GetValue(count),
                From = parsed.GetValue(from),
                Values = InOrder(parsed),
                Words = parsed.GetValue(word) ?? [],
                Note = parsed.GetValue(note),
                Photo = parsed.GetValue(photo),
                Sample = parsed.GetValue(sample),
                State = parsed.GetValue(state),
                Class = parsed.GetValue(like),
                Listing = pasted,
                Take = parsed.GetValue(take) ?? [],
                KeepsRest = true,
            }));
            int end = Answers.Give(screen, entered, parsed.GetValue(json),
                done => new PartEnteredView(PartView.Of(done.Part, done.Found), [.. done.Left.Select(ClaimView.Of)]), done => PartTables.Entered(screen, done));
            if (end != ExitCodes.Done || entered.Value.NotTaken.Count == 0)
            {
                return end;
            }

            screen.Complain(entered.Value.NotTaken);
            return ExitCodes.BadInput;
        });
        return command;
    }

    private static Command Show(Screen screen)
    {
        var (file, id, json) = (Answers.StudyFile(), new Argument<string>("PART") { Description = "Its short name." }, Answers.Json<PartView>());
        var command = new Command("show", "Shows a part: what was claimed beside what was measured and found. Example: heatwright part show knife.study round") { file, id, json };
        command.SetAction(parsed => Answers.Give(screen, OpenStudy.Read(parsed.GetValue(file)!).Then(opened => PartView.One(opened.Study, parsed.GetValue(id)!)), parsed.GetValue(json),
            view => view, view => PartTables.Show(screen, view)));
        return command;
    }

    private static Command List(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<IReadOnlyList<PartView>>());
        var command = new Command("list", "Lists the parts of a study. Example: heatwright part list knife.study") { file, json };
        command.SetAction(parsed => Answers.Give(screen, OpenStudy.Read(parsed.GetValue(file)!).Map(opened => PartView.All(opened.Study)), parsed.GetValue(json),
            views => views, views => PartTables.List(screen, views)));
        return command;
    }

    private static Command Photo(Screen screen)
    {
        var (file, id, json) = (Answers.StudyFile(), new Argument<string>("PART") { Description = "Its short name." }, Answers.Json<PhotoKeptView>());
        var path = new Argument<string>("PHOTO") { Description = "A JPEG, PNG or WebP picture of at most 8 MB." };
        var note = new Option<string?>("--note") { Description = "Your note." };
        var command = new Command("photo", "Keeps a photo with a part, without the place and camera data that a telephone writes into it. Example: heatwright part photo knife.study stick stick.jpg --note 'label side'") { file, id, path, note, json };
        command.SetAction(parsed => Answers.Give(screen, KeepPhoto.Add(parsed.GetValue(file)!, parsed.GetValue(id)!, parsed.GetValue(path)!, parsed.GetValue(note) ?? ""), parsed.GetValue(json),
            kept => new PhotoKeptView(kept.Id, kept.Subject, kept.Bytes, kept.Note), kept => screen.Say($"Kept as '{kept.Id}' with '{kept.Subject}', {kept.Bytes.ToString(CultureInfo.InvariantCulture)} bytes; 'heatwright file take' gives it back.")));
        return command;
    }

    private static Command Label(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<IReadOnlyList<PartLabel>>());
        var ids = new Argument<string[]>("PARTS") { Description = "Short names; without them, all parts.", Arity = ArgumentArity.ZeroOrMore };
        var to = new Option<string?>("--to") { Description = "Write the strip as a page to print: labels.svg." };
        var command = new Command("label", "Label strips for bags: short name, what tells it apart, date. Example: heatwright part label knife.study round stick --to labels.svg") { file, ids, to, json };
        command.SetAction(parsed => Answers.Give(screen, OpenStudy.Read(parsed.GetValue(file)!).Then(opened => PartLabels.Make(opened.Study, parsed.GetValue(ids) ?? [], TimeProvider.System, parsed.GetValue(to))),
            parsed.GetValue(json), labels => labels, labels => labels.ToList().ForEach(label => screen.Say($"{label.Code}  {label.Line}  {label.Date}"))));
        return command;
    }

    private static Command Drop(Screen screen)
    {
        var (file, id, json) = (Answers.StudyFile(), new Argument<string>("PART") { Description = "Its short name." }, Answers.Json<PartsLeftView>());
        var command = new Command("drop", "Takes a part off the shelf where nothing uses it; 'heatwright undo' brings it back. Example: heatwright part drop knife.study round") { file, id, json };
        command.SetAction(parsed => Answers.Give(screen, EnterPart.Drop(parsed.GetValue(file)!, parsed.GetValue(id)!), parsed.GetValue(json),
            done => new PartsLeftView([.. done.After.Parts.Select(part => part.Id.Name)]), done => screen.Say($"'{parsed.GetValue(id)}' is off the shelf. {done.After.Parts.Count.ToString(CultureInfo.InvariantCulture)} parts are left.")));
        return command;
    }

    /// <summary>Values in the order they were typed, whatever origin each has.</summary>
    private static List<(string Origin, string Typed)> InOrder(ParseResult parsed)
    {
        List<(string, string)> values = [];
        string origin = "";
        foreach (var token in parsed.Tokens)
        {
            if (token.Type == TokenType.Option)
            {
                origin = Origins.FirstOrDefault(name => token.Value == "--" + name) ?? "";
            }
            else if (token.Type == TokenType.Argument && origin.Length > 0)
            {
                values.Add((origin, token.Value));
            }
        }

        return values;
    }

    private static Option<string[]> Many(string name, string about) => new(name) { Description = about, AllowMultipleArgumentsPerToken = true };
}

using System.CommandLine;
using System.Text.Json;
using Heatwright.Cli.Answering;
using Heatwright.Handbook;
using Heatwright.Jobs.Sums;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Quick sums: any law of the handbook as a calculator.</summary>
internal static class SumCommand
{
    /// <summary>Longer results are sentences and stand alone.</summary>
    private const int LongestShort = 24;

    public static Command Sum(Screen screen)
    {
        var name = new Argument<string?>("NAME") { Description = "The law; without it, all of them by topic.", Arity = ArgumentArity.ZeroOrOne };
        var inputs = new Argument<string[]>("INPUTS") { Description = "Inputs as name=value, doubts as name=5A±0.1A.", Arity = ArgumentArity.ZeroOrMore };
        var json = Answers.Json<IReadOnlyList<LawView>>("without a name: all laws").Or<LawView>("of a law without inputs").Or<SumView>("of a law with one result").Or<SumsView>("of a law with several results");
        var pages = new Option<string?>("--write-pages") { Description = "Writes one page a law family into this folder.", Hidden = true };
        var command = new Command("sum", "A law as a calculator with units on both sides. Example: heatwright sum trace-width current=5A rise=20K copper=1oz") { name, inputs, json, pages };
        command.SetAction(parsed =>
        {
            string? law = parsed.GetValue(name);
            string[] typed = parsed.GetValue(inputs) ?? [];
            bool asJson = parsed.GetValue(json);
            if (parsed.GetValue(pages) is { } folder)
            {
                LawPages.Write(folder);
                return ExitCodes.Done;
            }

            if (law is null)
            {
                List(screen, asJson);
                return ExitCodes.Done;
            }

            (law, var given) = LawNames.Joined(law, typed);
            typed = [.. given];

            if (typed.Length == 0 && LawCard.Find(law) is { } card && card.Inputs.Count > 0)
            {
                Card(screen, card, asJson);
                return ExitCodes.Done;
            }

            var answer = QuickSum.Run(law, typed);
            if (!answer.IsFine)
            {
                screen.Complain(Gathered(answer.Problems));
                return ExitCodes.BadInput;
            }

            Answer(screen, answer.Value, asJson);
            return ExitCodes.Done;
        });
        return command;
    }

    /// <summary>Inputs that are missing, in one problem: a list is read faster than the same five lines over and over.</summary>
    private static IReadOnlyList<Problem> Gathered(IReadOnlyList<Problem> problems)
    {
        Problem[] missing = [.. problems.Where(problem => problem.Value == "none" && problem.What.EndsWith(" is not typed.", StringComparison.Ordinal))];
        return missing.Length < 2 ? problems :
        [
            .. problems.Except(missing),
            new($"{missing.Length} inputs are not typed: {string.Join(", ", missing.Select(problem => problem.Where.Split(", ")[^1]))}.", missing[0].Where.Split(", ")[0], "none",
                string.Join("; ", missing.Select(problem => $"{problem.Where.Split(", ")[^1]}: {problem.Limit}")), missing[0].Next[(missing[0].Next.IndexOf("heatwright", StringComparison.Ordinal) is var at and >= 0 ? at : 0)..]),
        ];
    }

    private static void List(Screen screen, bool json)
    {
        if (json)
        {
            Answers.Write(screen, LawCard.All.Select(LawView.Of));
            return;
        }

        foreach (var topic in LawCard.All.GroupBy(card => card.Law.Topic))
        {
            screen.Say(topic.Key);
            screen.Hang("  ", string.Join(", ", topic.Select(card => card.Law.Name)));
        }

        screen.Say("");
        screen.Hang("", "'heatwright sum NAME' shows formula, symbols, range, source and an example.");
    }

    private static void Card(Screen screen, LawCard card, bool json)
    {
        if (json)
        {
            Answers.Write(screen, LawView.Of(card));
            return;
        }

        var results = card.Results();
        int names = Math.Max(card.Inputs.Max(input => input.Name.Length), results.Max(result => result.Name.Length));
        int symbols = card.Inputs.Max(input => input.Card.Symbol.Length);
        screen.Hang($"{card.Law.Name}   ", card.Says);
        screen.Hang("  ", card.Law.Formula);
        foreach (var input in card.Inputs)
        {
            string[] told = [input.Card.Meaning, input.Card.Unit is "word" or "yes/no" ? "" : input.Card.Unit, input.Range, input.Words.Count > 0 ? string.Join(" or ", input.Words) : "",
                input.DefaultText.Length > 0 ? $"{input.DefaultText} if not typed" : input.IsOptional ? "may be left out" : ""];
            screen.Hang($"  {input.Name.PadRight(names)}  {input.Card.Symbol.PadRight(symbols)}  ", string.Join("; ", told.Where(text => text.Length > 0)));
        }

        foreach (var (name, unit, meaning, _) in results)
        {
            screen.Hang($"= {name.PadRight(names)}  ", string.Join("; ", new[] { meaning, unit }.Where(text => text.Length > 0)));
        }

        screen.Hang("  holds for  ", card.Law.Valid);
        screen.Hang("  source     ", card.SourceTitle);
        screen.Hang("  example    ", $"heatwright sum {card.Law.Name} {card.Law.Example}");
    }

    private static void Answer(Screen screen, SumAnswer answer, bool json)
    {
        string source = answer.Law.SourceKey;
        if (json)
        {
            Answers.Write(screen, answer.Results is [_] ? SumView.Of(answer) : SumsView.Of(answer));
            return;
        }

        int names = answer.Results.Max(result => result.Name.Length);
        int values = answer.Results.Where(result => result.Shown.Length <= LongestShort).Select(result => result.Shown.Length).DefaultIfEmpty(0).Max();
        foreach (var result in answer.Results)
        {
            if (answer.Results.Count == 1)
            {
                screen.Hang("", result.Shown);
            }
            else if (result.Shown.Length <= LongestShort)
            {
                screen.Hang($"  {result.Name.PadRight(names)}  {result.Shown.PadRight(values)}  ", result.Meaning);
            }
            else
            {
                screen.Hang($"  {result.Name.PadRight(names)}  ", result.Shown);
            }
        }

        foreach (var input in answer.Inputs.Where(input => input.Value is not null && (!input.Typed || (input.IsBare && input.Unit.Length > 0))))
        {
            screen.Say($"  with {input.Name} = {input.Shown} ({(input.Typed ? "typed without a unit" : "not typed")})");
        }

        foreach (string caveat in answer.Caveats)
        {
            screen.Hang("  Mind: ", caveat);
        }

        screen.Hang("  ", answer.Law.Law.Formula);
        screen.Hang("  ", $"[{source}]");
    }
}

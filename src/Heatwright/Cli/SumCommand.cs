using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using Heatwright.Jobs.Sums;

namespace Heatwright.Cli;

/// <summary>Quick sums: any law of the handbook as a calculator.</summary>
internal static class SumCommand
{
    private static readonly JsonSerializerOptions Pretty = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NumberHandling = JsonNumberHandling.Strict,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static Command Sum(Screen screen)
    {
        var name = new Argument<string?>("NAME") { Description = "The law; without it, all of them by topic.", Arity = ArgumentArity.ZeroOrOne };
        var inputs = new Argument<string[]>("INPUTS") { Description = "Inputs as name=value, doubts as name=5A±0.1A.", Arity = ArgumentArity.ZeroOrMore };
        var json = new Option<bool>("--json") { Description = "Write the result as JSON for machines." };
        var command = new Command("sum", "A law as a calculator with units on both sides. Example: heatwright sum trace-width current=5A rise=20K copper=1oz") { name, inputs, json };
        command.SetAction(parsed =>
        {
            string? law = parsed.GetValue(name);
            string[] typed = parsed.GetValue(inputs) ?? [];
            bool asJson = parsed.GetValue(json);
            if (law is null)
            {
                List(screen, asJson);
                return ExitCodes.Done;
            }

            if (typed.Length == 0 && LawCard.Find(law) is { } card && card.Inputs.Any(input => !input.IsOptional))
            {
                Card(screen, card, asJson);
                return ExitCodes.Done;
            }

            var answer = QuickSum.Run(law, typed);
            if (!answer.IsFine)
            {
                screen.Complain(answer.Problems);
                return ExitCodes.BadInput;
            }

            Answer(screen, answer.Value, asJson);
            return ExitCodes.Done;
        });
        return command;
    }

    private static void List(Screen screen, bool json)
    {
        if (json)
        {
            screen.Output.WriteLine(JsonSerializer.Serialize(LawCard.All.Select(card => new { card.Law.Topic, Law = card.Law.Name, card.Law.Formula, card.Law.Example }), Pretty));
            return;
        }

        foreach (var topic in LawCard.All.GroupBy(card => card.Law.Topic))
        {
            screen.Say(topic.Key);
            screen.Say("  " + string.Join(", ", topic.Select(card => card.Law.Name)));
        }

        screen.Say("");
        screen.Say("'heatwright sum NAME' shows formula, symbols, range, source and an example.");
    }

    private static void Card(Screen screen, LawCard card, bool json)
    {
        if (json)
        {
            screen.Output.WriteLine(JsonSerializer.Serialize(new
            {
                Law = card.Law.Name,
                card.Law.Topic,
                card.Law.Formula,
                card.Law.Source,
                card.Law.Where,
                card.Law.Valid,
                card.Law.Example,
                Inputs = card.Inputs.Select(input => new { input.Name, input.Card.Symbol, input.Card.Unit, input.Card.Meaning, Optional = input.IsOptional }),
            }, Pretty));
            return;
        }

        screen.Say($"{card.Law.Name}   {card.Law.Formula}");
        foreach (var input in card.Inputs)
        {
            string optional = input.IsOptional && double.IsFinite(input.Card.Default) ? $", {input.Card.Default.ToString("G6", CultureInfo.InvariantCulture)} if not typed" : input.IsOptional ? ", may be left out" : "";
            screen.Say($"  {input.Name,-18} {input.Card.Symbol,-6} {input.Card.Meaning}{(input.Card.Unit is "" or "word" ? "" : $", {input.Card.Unit}")}{optional}");
        }

        foreach (var (name, unit, meaning, _) in card.Results())
        {
            screen.Say($"  = {name,-16} {meaning}{(unit.Length > 0 ? $" {unit}" : "")}".TrimEnd());
        }

        screen.Say($"  holds for   {card.Law.Valid}");
        screen.Say($"  source      {card.Law.Source}, {card.Law.Where}");
        screen.Say($"  example     heatwright sum {card.Law.Name} {card.Law.Example}");
    }

    private static void Answer(Screen screen, SumAnswer answer, bool json)
    {
        string source = $"{answer.Law.Law.Source}{(answer.Law.Law.Where.Length > 0 ? ", " + answer.Law.Law.Where : "")}";
        if (json)
        {
            var inputs = answer.Inputs.ToDictionary(input => input.Name, input => (object)new { input.Value, input.Unit, input.StandardDoubt, Words = input.Words.Length > 0 ? input.Words : null, input.Typed });
            object whole = answer.Results is [var only]
                ? new { Law = answer.Law.Law.Name, Inputs = inputs, only.Value, only.Unit, only.StandardDoubt, Words = only.Words.Length > 0 ? only.Words : null, Source = source, answer.Caveats }
                : new { Law = answer.Law.Law.Name, Inputs = inputs, Results = answer.Results.Select(result => new { result.Name, result.Value, result.Unit, result.StandardDoubt, Words = result.Words.Length > 0 ? result.Words : null }), Source = source, answer.Caveats };
            screen.Output.WriteLine(JsonSerializer.Serialize(whole, Pretty));
            return;
        }

        foreach (var result in answer.Results)
        {
            screen.Say(answer.Results.Count == 1 ? result.Shown : $"  {result.Name,-18} {result.Shown,-22} {result.Meaning}".TrimEnd());
        }

        foreach (var input in answer.Inputs.Where(input => !input.Typed && input.Value is not null))
        {
            screen.Say($"  with {input.Name} = {input.Shown} (not typed)");
        }

        foreach (string caveat in answer.Caveats)
        {
            screen.Say($"  Mind: {caveat}");
        }

        screen.Say($"  {answer.Law.Law.Formula}   [{source}]");
    }
}

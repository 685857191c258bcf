using System.CommandLine;
using Heatwright.Logs;
using Heatwright.Quantities;

namespace Heatwright.Cli;

/// <summary>Answers to what a log leaves open, as options of the command line.</summary>
internal sealed record LogAnswers(Option<string> Mark, Option<string> Order, Option<string> Comma, Option<string> Clock, Option<string> TimeUnit)
{
    private static readonly string[] Orders = ["day-first", "month-first", "year-first"];

    public IEnumerable<Option> All => [Mark, Order, Comma, Clock, TimeUnit];

    public static LogAnswers Options() => new(
        new("--decimal-mark") { Description = "What a lone mark before three digits is not proven to be: comma or point." },
        new("--date-order") { Description = "Order of 03/04/2024: day-first, month-first or year-first." },
        new("--comma") { Description = "What a comma between two bare numbers is: separates or decimal." },
        new("--clock") { Description = "What 1:20 counts: hours or minutes first." },
        new("--time-unit") { Description = "Unit of a bare time column: s, ms, min ..." });

    /// <summary>The answers given, or every one of them that is no answer.</summary>
    public Checked<LogMapping?> Given(ParseResult parsed)
    {
        var problems = new List<Problem>();
        string? Word(Option<string> option, params string[] allowed)
        {
            string? word = parsed.GetValue(option);
            if (word is not null && !allowed.Contains(word))
            {
                problems.Add(new("That is no answer to this option.", option.Name, word, string.Join(", ", allowed), "Type one of these."));
            }

            return word;
        }

        string? mark = Word(Mark, "comma", "point", ",", "."), order = Word(Order, Orders), comma = Word(Comma, "separates", "decimal"), clock = Word(Clock, "hours", "minutes");
        string? unit = Word(TimeUnit, "s", "ms", "us", "µs", "min", "h");
        return problems.Count > 0 ? new(problems) : new((LogMapping?)new LogMapping
        {
            DecimalMark = mark is null ? null : mark is "comma" or "," ? ',' : '.',
            DateOrder = order is null ? null : (DateOrder)Array.IndexOf(Orders, order),
            CommaSeparates = comma is null ? null : comma == "separates",
            MinutesAndSeconds = clock is null ? null : clock == "minutes",
            TimeUnit = unit,
        });
    }

    /// <summary>A question of the log, with what to type for each answer.</summary>
    public static Problem Asked(LogQuestion question) => new(
        question.Text,
        "the log",
        "not settled by the file",
        "an answer",
        "Read it again with " + string.Join("; or ", question.Choices.Select(choice => $"{Typed(question, choice.Mapping)} ({choice.Text})")) + ".");

    private static string Typed(LogQuestion question, LogMapping answer)
    {
        bool Differs<T>(Func<LogMapping, T> of) => question.Choices.Select(choice => of(choice.Mapping)).Distinct().Count() > 1;
        return Differs(mapping => mapping.CommaSeparates) ? $"--comma {(answer.CommaSeparates == true ? "separates" : "decimal")}"
            : Differs(mapping => mapping.DateOrder) ? $"--date-order {Orders[(int)answer.DateOrder!]}"
            : Differs(mapping => mapping.MinutesAndSeconds) ? $"--clock {(answer.MinutesAndSeconds == true ? "minutes" : "hours")}"
            : Differs(mapping => mapping.TimeUnit) ? $"--time-unit {answer.TimeUnit}"
            : $"--decimal-mark {(answer.DecimalMark == ',' ? "comma" : "point")}";
    }
}

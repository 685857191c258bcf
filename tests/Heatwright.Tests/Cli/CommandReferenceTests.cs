using System.CommandLine;
using Heatwright.Cli;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Cli;

/// <summary>Help, the page of all commands and their examples tell what the commands take today.</summary>
public sealed class CommandReferenceTests : IDisposable
{
    private static readonly RootCommand Root = CommandLine.Table(new Screen(TextWriter.Null, TextWriter.Null, false, false, 100));

    private static readonly CommandCard[] Cards = [.. new CommandCard(Root).All()];

    private static readonly string Page = Path.Combine(Repository.Root, "docs", "commands.md");

    private readonly Bench bench = new();

    public static TheoryData<string> Commands => [.. Cards.Select(card => card.Words)];

    public void Dispose() => bench.Dispose();

    [Theory, MemberData(nameof(Commands))]
    public void Every_example_is_a_command_without_an_unknown_word(string words)
    {
        var card = Cards.Single(one => one.Words == words);
        if (words.Length == 0)
        {
            return;
        }

        Assert.StartsWith("heatwright " + words, card.Example, StringComparison.Ordinal);
        string[] typed = [.. ShellWords(card.Example).Skip(1)];
        var parsed = Root.Parse(typed);
        Assert.True(parsed.Errors.Count == 0, $"{card.Example}: {string.Join("; ", parsed.Errors.Select(error => error.Message))}");
        var taken = Cards.Single(one => one.Words == Spoken(parsed.CommandResult));
        Assert.True(taken.Commands.Count == 0, $"{card.Example} stops before a whole command.");

        // A list of words would swallow a misspelt option without a complaint.
        Assert.All(typed.Where(word => word.StartsWith("--", StringComparison.Ordinal)), word => Assert.Contains(word, taken.Options.Select(option => option.Name)));
    }

    [Fact]
    public void The_page_is_what_help_says_today()
    {
        string fresh = bench.In("commands.md");
        var written = bench.Type("help", "--write-page", fresh);
        Assert.True(written.Exit == 0, written.Error);
        Assert.True(File.ReadAllText(fresh) == File.ReadAllText(Page).ReplaceLineEndings("\n"), "docs/commands.md is stale: run 'dotnet run --project src/Heatwright -- help --write-page docs/commands.md'.");
    }

    [Theory, MemberData(nameof(Commands))]
    public void Each_command_has_a_heading_its_options_and_its_ends_on_the_page(string words)
    {
        if (words.Length == 0)
        {
            return;
        }

        string page = File.ReadAllText(Page).ReplaceLineEndings("\n");
        string section = page[(page.IndexOf($"# {words}\n", StringComparison.Ordinal) + words.Length + 3)..];
        section = section.IndexOf("\n#", StringComparison.Ordinal) is var end and > 0 ? section[..end] : section;
        var command = words.Split(' ').Aggregate((Command)Root, (at, word) => at.Subcommands.Single(one => one.Name == word));
        Assert.All(command.Options.Where(option => !option.Hidden), option => Assert.Contains($"`{option.Name}", section, StringComparison.Ordinal));
        Assert.All(command.Arguments, argument => Assert.Contains(argument.Name, section, StringComparison.Ordinal));
        Assert.Contains("\nExample:\n", section, StringComparison.Ordinal);
        Assert.Contains("\nEnds with 0, 1, 2", section, StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Commands))]
    public void Asked_either_way_help_says_the_same_and_fits_forty_columns_in_plain_ASCII(string words)
    {
        string[] typed = words.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var one = Narrow([.. typed, "--help", "--ascii"]);
        var other = Narrow(["help", .. typed, "--ascii"]);
        Assert.Equal(one, other);
        Assert.Contains("heatwright", one, StringComparison.Ordinal);
        PlainScreenTests.FitsInAscii(one, 40);
    }

    [Fact]
    public void Only_a_command_that_judges_a_study_says_that_it_can_end_with_a_contradiction()
    {
        Assert.Equal(["build-sheet", "check", "compare", "decide", "demo", "next", "pictures", "report", "study", "try", "why"], Cards.Where(card => card.Words.Length > 0 && card.Ends.Any(end => end.Typed == "3")).Select(card => card.Words).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_command_that_is_not_there_is_refused_with_the_next_step()
    {
        var said = bench.Type("help", "solder");
        Assert.Equal(ExitCodes.BadInput, said.Exit);
        Assert.Contains("There is no command 'solder'.", said.Error, StringComparison.Ordinal);
        Assert.Contains("next   Type 'heatwright help'.", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_version_is_one_line()
    {
        var said = bench.Type("--version");
        Assert.Equal(0, said.Exit);
        Assert.Matches(@"^\d+\.\d+\.\d+\S*\s*$", said.Out);
    }

    private static string Narrow(string[] words)
    {
        using var output = new StringWriter();
        Assert.Equal(0, CommandLine.Run(words, new Screen(output, output, false, false, 40)));
        return output.ToString();
    }

    private static string Spoken(System.CommandLine.Parsing.SymbolResult? at) =>
        at is System.CommandLine.Parsing.CommandResult { Command: not RootCommand } one ? $"{Spoken(one.Parent)} {one.Command.Name}".TrimStart() : "";

    /// <summary>A line split as shells do: at blanks outside of quotes.</summary>
    private static List<string> ShellWords(string line)
    {
        var words = new List<string>();
        string? word = null;
        char quote = '\0';
        foreach (char sign in line)
        {
            if (quote != '\0' ? sign == quote : sign is '\'' or '"')
            {
                quote = quote == '\0' ? sign : '\0';
                word ??= "";
            }
            else if (quote == '\0' && sign == ' ')
            {
                words.AddRange(word is null ? [] : [word]);
                word = null;
            }
            else
            {
                word += sign;
            }
        }

        words.AddRange(word is null ? [] : [word]);
        return quote == '\0' ? words : throw new InvalidDataException($"A quote stays open: {line}");
    }
}

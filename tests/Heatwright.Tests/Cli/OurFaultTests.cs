using System.Text;
using Heatwright.Cli;

namespace Heatwright.Tests.Cli;

/// <summary>A mistake of the program ends with 1 and is told in the shape of every other problem.</summary>
public sealed class OurFaultTests
{
    [Fact]
    public void A_mistake_of_ours_is_told_in_the_one_shape_with_what_helps_to_find_it()
    {
        using var error = new StringWriter();
        using var broken = new BrokenWriter();
        int exit = CommandLine.RunOrTell(["sum", "ohms-law"], new Screen(broken, error, false, false, 100));
        Assert.Equal(1, exit);
        string[] lines = error.ToString().ReplaceLineEndings("\n").Split('\n');
        Assert.Equal("Heatwright made a mistake here; what was saved before is safe.", lines[0]);
        Assert.Equal(["  where  sum ohms-law", "  value  the pen broke", "  limit  none of your making", "  next   Please report this with the lines below."], lines[1..5]);
        Assert.Contains(nameof(BrokenWriter), string.Concat(lines[5..]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_machine_is_told_of_a_mistake_of_ours_as_of_every_other_problem()
    {
        using var error = new StringWriter();
        using var broken = new BrokenWriter();
        Assert.Equal(1, CommandLine.RunOrTell(["sum", "ohms-law", "--json"], new Screen(broken, error, false, false, 100)));
        AnswerCheck.Forms("problems", error.ToString());
        var told = System.Text.Json.Nodes.JsonNode.Parse(error.ToString())!;
        Assert.Equal("the pen broke", told["problems"]![0]!["value"]!.GetValue<string>());
        Assert.Contains(nameof(BrokenWriter), told["trace"]!.GetValue<string>(), StringComparison.Ordinal);
    }

    [Fact]
    public void What_can_be_put_right_is_no_mistake_of_ours()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        Assert.Equal(2, CommandLine.RunOrTell(["study", "nowhere.study"], new Screen(output, error, false, false, 100)));
        Assert.Equal("", output.ToString());
        Assert.Matches("(?s)^.+\n  where  .+\n  value  .+\n  limit  .+\n  next   .+\n$", error.ToString().ReplaceLineEndings("\n"));
    }

    private sealed class BrokenWriter : StringWriter
    {
        public BrokenWriter()
            : base(System.Globalization.CultureInfo.InvariantCulture)
        {
        }

        public override Encoding Encoding => Encoding.UTF8;

        public override void WriteLine(string? value) => throw new InvalidOperationException("the pen broke");

        public override void Write(string? value) => throw new InvalidOperationException("the pen broke");
    }
}

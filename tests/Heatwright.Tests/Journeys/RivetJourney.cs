namespace Heatwright.Tests.Journeys;

/// <summary>What a newcomer with an invented drawer of parts for a rivet setter stumbled over in the browser: docs/decisions/0078.</summary>
public sealed class RivetJourney : IDisposable
{
    private readonly Bench bench = new();

    private string File => bench.In("rivet.study");

    public void Dispose() => bench.Dispose();

    /// <summary>By hand: 12 V over 5.2 Ω are 27.7 W, 31 of 100 less than the label's 40 W.</summary>
    [Fact]
    public void A_label_that_promises_more_watts_than_the_ohms_take_is_contradicted()
    {
        Fine("new", File);
        Fine("part", "add", File, "stick", "heater", "stick heater", "--claimed", "rated volts=12V", "--claimed", "rated power=40W");
        Fine("trial", "add", File, "cold-ohms", "--on", "stick");
        Fine("trial", "enter", File, "stick-cold-ohms", "--set", "leads=0.3", "--read", "5.5", "--read", "5.5", "--read", "5.5");
        string said = Fine("study", File);
        Assert.Contains("27.69", said, StringComparison.Ordinal);
        Assert.Contains("(−31%)", said, StringComparison.Ordinal);
    }

    /// <summary>By hand: 1.08 A for an hour.</summary>
    [Fact]
    public void A_discharge_alone_tells_amp_hours()
    {
        Fine("new", File);
        Fine("part", "add", File, "slim", "cell", "slim cell", "--claimed", "capacity=1200mAh");
        Fine("trial", "add", File, "discharge", "--on", "slim");
        Fine("trial", "enter", File, "slim-discharge", "--columns", "time,volts,amps", "--read", "0 4.15 1.08", "--read", "900 3.85 1.08", "--read", "1800 3.7 1.08", "--read", "2700 3.5 1.08", "--read", "3600 3.0 1.08");
        string said = Fine("study", File);
        Assert.Contains("capacity", said, StringComparison.Ordinal);
        Assert.Contains("1080", said, StringComparison.Ordinal); // in the unit of the claim
    }

    [Fact]
    public void A_price_is_no_word()
    {
        Fine("new", File);
        var refused = bench.Type("part", "add", File, "cell", "cell", "--word", "price=2");
        Assert.NotEqual(0, refused.Exit);
        Assert.Contains("a value, not a word", refused.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_pace_of_a_promise_is_that_of_the_work_and_a_heat_keeps_its_plus_and_minus()
    {
        Fine("new", File);
        Fine("brief", File, "--add", "tip at 200 °C within 110 s from 21 °C");
        Fine("brief", File, "--add", "30 rivets on one charge, one every 20 s");
        Fine("brief", File, "--set", "need=40J±8J");
        string said = string.Join(' ', Fine("brief", File).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("every=20s", said, StringComparison.Ordinal);
        Assert.Contains("need=40J±8J", said, StringComparison.Ordinal);
        Assert.DoesNotContain("contact=0", said, StringComparison.Ordinal);
    }

    private string Fine(params string[] words)
    {
        var (exit, output, error) = bench.Type(words);
        Assert.True(exit == 0, error);
        return output;
    }
}

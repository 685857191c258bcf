using Heatwright.Cli;

namespace Heatwright.Tests.Journeys;

/// <summary>What a newcomer with an invented drawer of parts for a lens-dew band stumbled over: docs/decisions/0068.</summary>
public sealed class NewcomerJourney : IDisposable
{
    private readonly Bench bench = new();

    private string Band => bench.In("band.study");

    public void Dispose() => bench.Dispose();

    [Fact]
    public void A_planned_trial_without_a_run_stops_nothing()
    {
        Begin();
        Fine("trial", "add", Band, "warm-up", "--on", "strip");
        Fine("trial", "add", Band, "discharge", "--on", "round");
        Fine("trial", "add", Band, "pulse", "--on", "round");
        Assert.Contains("strip-warm-up", Fine("trial", "list", Band), StringComparison.Ordinal);
        Fine("trial", "enter", Band, "strip-warm-up", "--run", "strip-warm-up-1"); // begun, and nothing read
        Fine("trial", "enter", Band, "round-pulse", "--run", "round-pulse-1");
        Assert.Contains("need more readings", Fine("study", Band), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sum_of_prices_with_some_missing_keeps_no_limit()
    {
        Begin();
        // By hand: 4.20 and 2.50 are known of eight places; the rest may cost anything. Over the limit is over it whatever the rest costs.
        Fine("part", "state", Band, "strip", "--measured", "price=4.20 (receipt)");
        Fine("part", "state", Band, "round", "--measured", "price=2.50 (receipt)");
        string said = Fine("study", Band);
        Assert.DoesNotContain("6.7", said, StringComparison.Ordinal);
        string why = string.Join(' ', Fine("why", Band, "A").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("have no price: ", why, StringComparison.Ordinal);
        Fine("part", "state", Band, "strip", "--measured", "price=19 (receipt)");
        Assert.Contains("no-go", Fine("compare", Band), StringComparison.Ordinal);
    }

    [Fact]
    public void Hours_on_one_charge_are_a_run_time_and_what_is_surely_enough_stays_open_until_the_loss_is_known()
    {
        Begin();
        Assert.Contains("runTime at least 6 h", Fine("brief", Band, "--add", "6 h on one charge"), StringComparison.Ordinal);
        Assert.Contains("is not known yet", Fine("brief", Band), StringComparison.Ordinal);
        Fine("brief", Band, "--json");
        string advice = Fine("next", Band);
        Assert.Equal(2, advice.Split("cannot be predicted yet").Length); // said once
    }

    [Fact]
    public void A_value_of_an_unknown_name_is_answered_with_those_of_this_kind_first_and_a_recipe_goes_by_the_name_of_the_trial()
    {
        Begin();
        var refused = bench.Type("part", "add", Band, "buck", "stepUp", "blue module", "--claimed", "output volts=5V");
        Assert.Equal(ExitCodes.BadInput, refused.Exit);
        Assert.Contains("limit  perhaps set volts or most output volts", refused.Error, StringComparison.Ordinal);
        Assert.Equal(Fine("trial", "recipe", "capacity"), Fine("trial", "recipe", "discharge"));
    }

    /// <summary>A strip and an old cell; everything is invented.</summary>
    private void Begin()
    {
        Fine("new", Band, "--name", "dew band");
        Fine("brief", Band, "--add", "band at 12 degC within 10 min from 8 degC");
        Fine("brief", Band, "--add", "parts cost at most 18");
        Fine("part", "add", Band, "strip", "heater", "silicone strip", "--claimed", "rated volts=5V", "--measured", "ohms=4.2ohm", "mass=14g");
        Fine("part", "add", Band, "round", "cell", "old round cell", "--claimed", "capacity=3400mAh (print)", "--word", "chemistry=lithium-ion");
        foreach (string kind in (string[])["switch", "leads", "contacts", "sensor", "controller", "handle"])
        {
            Fine("part", "add", Band, "the-" + kind, kind, "some " + kind);
        }

        Fine("arrange", Band, "--cell", "round", "--heater", "strip");
    }

    private string Fine(params string[] words)
    {
        var said = bench.Type(words);
        Assert.True(said.Exit == 0, $"{string.Join(' ', words)}: {said.Error}");
        return said.Out;
    }
}

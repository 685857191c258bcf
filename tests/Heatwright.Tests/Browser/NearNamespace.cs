using System.Diagnostics;
using Heatwright.Tests.Journeys;

namespace Heatwright.Tests.Browser;

/// <summary>The program itself in a network of its own with two private addresses: it asks which, then listens on that one and the loopback address, on no other.</summary>
public sealed class NearNamespace
{
    private const string Script = """
        ip link set lo up && ip addr add 192.168.77.1/24 dev lo && ip addr add 10.9.8.7/24 dev lo || exit 77
        say() { curl -s -m 10 -o /dev/null -w "$1 %{http_code}\n" -H 'Accept: application/json' "$2" ${3:+-H "$3"} || echo "$1 closed"; }
        dotnet "$1" serve "$2" --near --no-browser 2>&1 | tr -s ' \n' ' '; echo
        dotnet "$1" serve "$2" --near 192.168.77.1 --no-browser --port 50123 > "$2.said" & bench=$!
        for i in $(seq 300); do grep -q 'Near devices' "$2.said" && break; sleep 0.1; done
        tr -s ' \n' ' ' < "$2.said"; echo
        say desk http://127.0.0.1:50123/brief
        say near http://192.168.77.1:50123/brief
        say form http://192.168.77.1:50123/pair
        say rebound http://192.168.77.1:50123/pair 'Host: 127.0.0.1:50123'
        say other http://10.9.8.7:50123/pair
        say aside http://127.0.0.2:50123/pair
        kill $bench
        """;

    [Fact]
    public async Task The_program_listens_on_the_address_that_was_picked_and_on_no_other()
    {
        if (!OperatingSystem.IsLinux() || !File.Exists("/usr/bin/unshare") || !File.Exists("/usr/bin/curl") || !(File.Exists("/usr/sbin/ip") || File.Exists("/sbin/ip") || File.Exists("/usr/bin/ip")))
        {
            Assert.Skip("needs unshare, ip and curl: apt-get install util-linux iproute2 curl");
        }

        using var bench = new Bench();
        Assert.Equal(0, bench.Type("new", bench.In("bow.study")).Exit);
        var start = new ProcessStartInfo("unshare") { RedirectStandardOutput = true, UseShellExecute = false };
        foreach (string word in (string[])["-rn", "sh", "-c", Script, "sh", Path.Combine(AppContext.BaseDirectory, "heatwright.dll"), bench.In("bow.study")])
        {
            start.ArgumentList.Add(word);
        }

        start.Environment["XDG_DATA_HOME"] = bench.In("data");
        using var run = Process.Start(start)!;
        string said = await run.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await run.WaitForExitAsync(TestContext.Current.CancellationToken);
        if (run.ExitCode == 77 || said.Length == 0)
        {
            Assert.Skip("needs a network of its own: unshare -rn is not permitted here");
        }

        string[] lines = said.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        Assert.Contains("Which address", lines[0], StringComparison.Ordinal);
        Assert.Contains("192.168.77.1 (lo), 10.9.8.7 (lo)", lines[0], StringComparison.Ordinal);
        Assert.Contains("http://192.168.77.1:50123/", lines[1], StringComparison.Ordinal);
        Assert.Contains("not encrypted", lines[1], StringComparison.Ordinal);
        Assert.Equal(["desk 200", "near 401", "form 200", "rebound 421", "other 000", "other closed", "aside 000", "aside closed"], lines[2..]);
    }
}

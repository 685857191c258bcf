using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Heatwright.Cli.Answering;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.StudyFile;
using Heatwright.Web;
using Heatwright.Web.Near;

namespace Heatwright.Cli;

/// <summary>The command that opens a study in the browser.</summary>
internal static class ServeCommand
{
    /// <summary>A browser on the same machine has read and drawn the first page in about this time.</summary>
    private static readonly TimeSpan HeadStart = TimeSpan.FromMilliseconds(400);

    public static Command Serve(Screen screen)
    {
        var file = new Argument<string?>("FILE") { Description = "The study file; without it, the only one in this folder.", Arity = ArgumentArity.ZeroOrOne };
        var port = new Option<string>("--port") { Description = "Port on this machine, 1 to 65535; without it, the same for this study each time where that is free, so that what waits in a browser finds its way." };
        var quiet = new Option<bool>("--no-browser") { Description = "Print the address and open no browser." };
        var shelf = new Option<string?>("--shelf") { Description = "File of your own shelf, where it is another." };
        var near = new Option<string?>("--near")
        {
            Description = "Also listens on one private address of this machine, for a phone or tablet at the bench that is paired once with six digits; the link is not encrypted. Without an address, the only one there is, or the choice of them.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var json = Answers.Json<ServedView>();
        var command = new Command("serve", "Shows a study in the browser, on this machine only unless --near says more, until Ctrl-C. Example: heatwright serve knife.study") { file, port, quiet, shelf, near, json };
        command.SetAction((parsed, cancel) => Run(screen, parsed.GetValue(file), parsed.GetValue(port), !parsed.GetValue(quiet), parsed.GetValue(shelf), parsed.GetResult(near) is null ? null : parsed.GetValue(near) ?? "", parsed.GetValue(json), cancel));
        return command;
    }

    private static async Task<int> Run(Screen screen, string? file, string? portText, bool browser, string? shelf, string? near, bool json, CancellationToken cancel)
    {
        if (file is null && near is { Length: > 0 } && File.Exists(near))
        {
            (file, near) = (near, ""); // 'serve --near knife.study' means the study, not an address
        }

        var named = file is null ? OnlyStudyHere() : new Checked<string>(file);
        if (!named.IsFine)
        {
            screen.Complain(named.Problems);
            return ExitCodes.BadInput;
        }

        string path = named.Value;
        var port = Port(portText);
        if (!port.IsFine)
        {
            screen.Complain(port.Problems);
            return ExitCodes.BadInput;
        }

        var opened = OpenStudy.Read(path);
        if (!opened.IsFine)
        {
            screen.Complain([.. opened.Problems.Select(one => one is OpenProblem { Fault: OpenFault.Missing } ? one with { Next = $"Check the name, or begin it: 'heatwright new {path}', then 'heatwright serve {path}'." } : one)]);
            return ExitCodes.BadInput;
        }

        var address = near is null ? new Checked<PrivateAddress?>((PrivateAddress?)null) : PrivateAddress.Chosen(near, PrivateAddress.OfThisMachine()).Map(chosen => (PrivateAddress?)chosen);
        if (!address.IsFine)
        {
            screen.Complain(address.Problems);
            return ExitCodes.BadInput;
        }

        var opening = address.Value is { } found ? new NearOpening(found.Address, NearOpening.UsualFile(), TimeProvider.System) : null;
        var study = opened.Value with { Path = Path.GetFullPath(path) };
        var (server, problem) = await Started(study, portText is null ? Usual(study.Path) : port.Value, orAny: portText is null, shelf, opening, cancel);
        if (server is null)
        {
            screen.Complain([problem!]);
            return ExitCodes.BadInput;
        }

        await using var app = server;
        string here = WebBench.Address(app);
        if (json)
        {
            Answers.Write(screen, new ServedView(opened.Value.Study.Name, here, WebBench.NearAddress(app)));
            screen.Output.Flush();
        }
        else
        {
            screen.Say($"'{opened.Value.Study.Name}' is at {here} on this machine. Ctrl-C ends.");
            if (WebBench.NearAddress(app) is { } there)
            {
                screen.Say($"Near devices find it at {there} once they are paired: {here}near shows how. That link is not encrypted.");
            }
        }

        if (browser && !Console.IsOutputRedirected) // whoever keeps the output in a file does not look at it here
        {
            Show(screen, opening is null ? here : here + "near");
        }

        await Task.Delay(Timeout.Infinite, cancel).ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
        await app.StopAsync(CancellationToken.None);
        return ExitCodes.Done;
    }

    private static async Task<(WebApplication? App, Problem? Problem)> Started(OpenedStudy study, int port, bool orAny, string? shelf, NearOpening? near, CancellationToken cancel)
    {
        var app = WebBench.Build(study, port, shelf, near, HeadStart);
        try
        {
            await app.StartAsync(cancel);
            return (app, null);
        }
        catch (Exception error) when (error is IOException or System.Net.Sockets.SocketException)
        {
            await app.DisposeAsync();
            return orAny ? await Started(study, 0, orAny: false, shelf, near, cancel)
                : (null, new Problem("The port is taken.", "--port", port.ToString(CultureInfo.InvariantCulture), error.Message, "Give another port, or leave --port out."));
        }
    }

    /// <summary>The study of this folder; where there are several, a question with its answers.</summary>
    private static Checked<string> OnlyStudyHere()
    {
        string[] there = [.. Directory.GetFiles(Environment.CurrentDirectory, "*.study").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
        return there is [var only] ? new(only) : new(new Problem(there.Length == 0 ? "There is no study file in this folder." : "Which study shall be shown?", "FILE", "none named",
            there.Length == 0 ? "a study file" : string.Join(", ", there), there.Length == 0 ? "Begin one with 'heatwright new my.study', then 'heatwright serve my.study'; or name one that is elsewhere." : $"Type one of them: heatwright serve {there[0]}"));
    }

    /// <summary>A port of the private range that belongs to this path: a browser keeps unsent lines by address.</summary>
    private static int Usual(string path)
    {
        byte[] hash = SHA256.HashData(Encoding.UTF8.GetBytes(path));
        return 49152 + (BitConverter.ToUInt16(hash) % 16000);
    }

    /// <summary>The same reader as every field: '12,5' is no count, and never 125.</summary>
    private static Checked<int> Port(string? text)
    {
        if (text is null)
        {
            return new(0);
        }

        return OptionReader.Amount("--port", text, Expect.Count).Then(amount => amount.Value is >= 1 and <= 65535
            ? new Checked<int>((int)amount.Value)
            : new(new Problem("This is not a port.", "--port", text, "a whole number from 1 to 65535", "Give another port, or leave it out.")));
    }

    /// <summary>A machine without a browser still serves: the address is on the screen.</summary>
    private static void Show(Screen screen, string address)
    {
        try
        {
            using var started = Process.Start(new ProcessStartInfo(address) { UseShellExecute = true });
        }
        catch (Exception error) when (error is System.ComponentModel.Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
            screen.Say("No browser could be opened; type the address into one.");
        }
    }
}

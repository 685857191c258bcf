using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Heatwright.Jobs;
using Heatwright.Quantities;
using Heatwright.Web;

namespace Heatwright.Cli;

/// <summary>The command that opens a study in the browser.</summary>
internal static class ServeCommand
{
    public static Command Serve(Screen screen)
    {
        var file = Answers.StudyFile();
        var port = new Option<string>("--port") { Description = "Port on this machine, 1 to 65535; without it, the same for this study each time where that is free, so that what waits in a browser finds its way." };
        var quiet = new Option<bool>("--no-browser") { Description = "Print the address and open no browser." };
        var shelf = new Option<string?>("--shelf") { Description = "File of your own shelf, where it is another." };
        var command = new Command("serve", "Shows a study in the browser, on this machine only, until Ctrl-C. Example: heatwright serve knife.study") { file, port, quiet, shelf };
        command.SetAction((parsed, cancel) => Run(screen, parsed.GetValue(file)!, parsed.GetValue(port), !parsed.GetValue(quiet), parsed.GetValue(shelf), cancel));
        return command;
    }

    private static async Task<int> Run(Screen screen, string path, string? portText, bool browser, string? shelf, CancellationToken cancel)
    {
        var port = Port(portText);
        if (!port.IsFine)
        {
            screen.Complain(port.Problems);
            return ExitCodes.BadInput;
        }

        var opened = OpenStudy.Read(path);
        if (!opened.IsFine)
        {
            screen.Complain(opened.Problems);
            return ExitCodes.BadInput;
        }

        var study = opened.Value with { Path = Path.GetFullPath(path) };
        var (server, problem) = await Started(study, portText is null ? Usual(study.Path) : port.Value, orAny: portText is null, shelf, cancel);
        if (server is null)
        {
            screen.Complain([problem!]);
            return ExitCodes.BadInput;
        }

        await using var app = server;
        string address = WebBench.Address(app);
        screen.Say($"'{opened.Value.Study.Name}' is at {address} on this machine. Ctrl-C ends.");
        if (browser)
        {
            Show(screen, address);
        }

        await Task.Delay(Timeout.Infinite, cancel).ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
        await app.StopAsync(CancellationToken.None);
        return ExitCodes.Done;
    }

    private static async Task<(WebApplication? App, Problem? Problem)> Started(OpenedStudy study, int port, bool orAny, string? shelf, CancellationToken cancel)
    {
        var app = WebBench.Build(study, port, shelf);
        try
        {
            await app.StartAsync(cancel);
            return (app, null);
        }
        catch (IOException error)
        {
            await app.DisposeAsync();
            return orAny ? await Started(study, 0, orAny: false, shelf, cancel)
                : (null, new Problem("The port is taken.", "--port", port.ToString(CultureInfo.InvariantCulture), error.Message, "Give another port, or leave --port out."));
        }
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

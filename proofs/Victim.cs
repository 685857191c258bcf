using System.Globalization;
using Heatwright.Cli;
using Heatwright.StudyFile;

namespace Heatwright.Proofs;

/// <summary>What the process that is killed does: one kind of work over and over, each piece told on its output once it is acknowledged.</summary>
internal static class Victim
{
    public static int Run(string[] words)
    {
        switch (words)
        {
            case ["typing", var study]:
                return Typing(study);
            case ["listening", var study, var frames]:
                return Type("listen", $"load=replay:{frames}", "--into", study, "--trial", "empty", "--columns", "volts=load.U,amps=load.I", "--json");
            case ["import", var study, var log]:
                return Import(study, log);
            case ["migration", var study]:
                Say("ready");
                using (var book = StudyBook.Open(study, readOnly: false).Value)
                {
                    Say("ack 1");
                    return 0;
                }

            case ["export", var study, var folder]:
                return Export(study, folder);
            default:
                return 2;
        }
    }

    /// <summary>A reading typed is one change; once Write has returned it is acknowledged.</summary>
    private static int Typing(string path)
    {
        using var book = StudyBook.Open(path, readOnly: false).Value;
        Say("ready");
        for (int i = 1; ; i++)
        {
            var study = book.Read();
            var run = study.Trials[1].Runs[0];
            var next = run with { Readings = [.. run.Readings, new(run.Readings.Count + 1, [i.ToString(CultureInfo.InvariantCulture)])] };
            if (!book.Write("reading", study with { Trials = [study.Trials[0], study.Trials[1] with { Runs = [next] }] }).IsFine)
            {
                return 1;
            }

            Say($"ack {i.ToString(CultureInfo.InvariantCulture)}");
        }
    }

    private static int Import(string study, string log)
    {
        string[] rows = File.ReadAllLines(log);
        Say("ready");
        for (int i = 1; ; i++)
        {
            // A log of its own each time: the same one is taken in once only.
            rows[1] = string.Create(CultureInfo.InvariantCulture, $"0,{4.1 + (i * 1e-5):0.00000},1.5");
            File.WriteAllLines(log, rows);
            if (Type("log", "import", log, study, "--trial", "empty", "--json") != 0)
            {
                return 1;
            }

            Say($"ack {i.ToString(CultureInfo.InvariantCulture)}");
        }
    }

    private static int Export(string study, string folder)
    {
        Say("ready");
        for (int i = 1; ; i++)
        {
            string name = i.ToString(CultureInfo.InvariantCulture);
            if (Type("export", study, Path.Combine(folder, name + ".zip"), "--json") != 0)
            {
                return 1;
            }

            Say($"ack {name}");
        }
    }

    private static int Type(params string[] words) => CommandLine.Run(words, new Screen(Console.Out, Console.Error, outputIsTerminal: false, errorIsTerminal: false, width: 100));

    private static void Say(string text)
    {
        Console.Out.WriteLine(text);
        Console.Out.Flush();
    }
}

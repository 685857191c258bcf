using System.Diagnostics;
using System.Globalization;
using System.Reflection;

namespace Heatwright.Proofs.Mutants;

/// <summary>A process of its own that runs tests with one change switched on, and can be killed.</summary>
internal static class MutantWorker
{
    /// <summary>What a test may use of the processor before it counts as long; and after which it is ended while one looks what it passes.</summary>
    private const double LongS = 3, CoverS = 12;

    /// <summary>Tests that need a browser, a server, other programs or the sources as they are, and those of whole jobs, which are long.</summary>
    private static readonly string[] Apart = [".Architecture.", ".Browser.", ".Web.", ".Posed.", ".Journeys.", ".Report.", ".Cli.", ".Samples.", "EmittedCode"];

    private static readonly Dictionary<string, double> Clean = new(StringComparer.Ordinal);
    private static long lateTicks = long.MaxValue;
    private static TestFolder folder = null!;
    private static string[] asked = [];
    private static TextWriter answers = null!;

    /// <summary>Reads what to do from its input, a line each, until it ends.</summary>
    /// <param name="words">Folder of the tests, and parts of the names of the classes that are asked where not all are.</param>
    public static int Run(string[] words)
    {
        answers = Console.Out;
        Console.SetOut(TextWriter.Null);
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        folder = new TestFolder(words[0]);
        asked = words[1..];
        new Thread(Watch) { IsBackground = true, Priority = ThreadPriority.AboveNormal }.Start();
        while (Console.In.ReadLine() is { } line)
        {
            string[] order = line.Split('\t');
            switch (order[0])
            {
                case "cover":
                    Cover(int.Parse(order[1], CultureInfo.InvariantCulture), [.. order.Skip(2)]);
                    break;
                default:
                    Try(int.Parse(order[1], CultureInfo.InvariantCulture), clean: order[0] == "try", [.. order.Skip(2)]);
                    break;
            }
        }

        return 0;
    }

    /// <summary>Runs every test twice, and says of each how long it takes and which changes it passes, at first and again.</summary>
    private static void Cover(int changes, HashSet<string> without)
    {
        foreach (var test in folder.Tests(name => !Apart.Any(left => name.Contains(left, StringComparison.Ordinal)) && (asked.Length == 0 || asked.Any(part => name.Contains(part, StringComparison.Ordinal)))).Where(test => !without.Contains(test.Name)))
        {
            answers.WriteLine("begin\t" + test.Name);
            answers.Flush();
            var (first, took, once) = Passed(test, changes);
            // What a test passes only once stands in a table that is made once: another run shows which.
            var (second, again, twice) = first == "" && took < LongS ? Passed(test, changes) : (first, took, once);
            answers.WriteLine(string.Join('\t', "test", test.Name, first == "" && second == "" ? "well" : first == "" ? second : first, Math.Min(took, again).ToString("R", CultureInfo.InvariantCulture), string.Join(',', twice), string.Join(',', once.Except(twice))));
            answers.Flush();
        }

        answers.WriteLine("end");
        answers.Flush();
    }

    private static (string Wrong, double TookS, List<int> Passed) Passed(OneTest test, int changes)
    {
        byte[] passed = new byte[changes];
        folder.Set("Passed", passed);
        folder.Set("Watched", true);
        var (wrong, took) = Run(test, CoverS, watched: true);
        folder.Set("Watched", false);
        return (wrong, took, [.. Enumerable.Range(0, changes).Where(i => passed[i] != 0)]);
    }

    /// <summary>Runs tests with one change on until one fails; what is kept from earlier runs is made beforehand, without the change, where asked.</summary>
    private static void Try(int change, bool clean, string[] names)
    {
        var wanted = names.Select((name, i) => (name, i)).ToDictionary(pair => pair.name, pair => pair.i, StringComparer.Ordinal);
        var classes = names.Select(name => name[..name[..(name.IndexOf('#', StringComparison.Ordinal) is var cut and >= 0 ? cut : name.Length)].LastIndexOf('.')]).ToHashSet(StringComparer.Ordinal);
        if (!clean)
        {
            folder.Set("On", change);
        }

        string said = "survived";
        foreach (var test in Tests(classes).Where(test => wanted.ContainsKey(test.Name)).OrderBy(test => wanted[test.Name]))
        {
            if (clean && !Clean.ContainsKey(test.Name))
            {
                var (bad, took) = Run(test, double.PositiveInfinity);
                if (bad != "")
                {
                    said = "poisoned\t" + test.Name;
                    break;
                }

                Clean[test.Name] = took;
            }

            folder.Set("On", change);
            var (wrong, _) = Run(test, 5 + (10 * Clean.GetValueOrDefault(test.Name, 3)));
            if (clean)
            {
                folder.Set("On", -1);
            }

            if (wrong != "")
            {
                said = clean && Run(test, double.PositiveInfinity).Wrong != "" ? "poisoned\t" + test.Name : $"killed\t{test.Name}\t{wrong}";
                break;
            }
        }

        answers.WriteLine(said);
        answers.Flush();
    }

    private static readonly Dictionary<string, List<OneTest>> Known = new(StringComparer.Ordinal);

    private static IEnumerable<OneTest> Tests(HashSet<string> classes)
    {
        foreach (string one in classes)
        {
            if (!Known.TryGetValue(one, out var tests))
            {
                Known[one] = tests = folder.Tests(name => name == one);
            }

            foreach (var test in tests)
            {
                yield return test;
            }
        }
    }

    private static (string Wrong, double TookS) Run(OneTest test, double limitS, bool watched = false)
    {
        double before = UsedS();
        Volatile.Write(ref lateTicks, double.IsPositiveInfinity(limitS) ? long.MaxValue : (long)((before + limitS) * 1e7));
        string wrong = "";
        object? made = null;
        try
        {
            if (test.Row is null)
            {
                return ("rows", 0);
            }

            made = test.Method.IsStatic ? null : TestFolder.Made(test.Type);
            Wait(test.Method.Invoke(made, test.Row));
        }
        catch (Exception failure) when (failure is not ThreadAbortException)
        {
            var inner = failure is TargetInvocationException { InnerException: { } cause } ? cause : failure;
            // A test that finds no compiler, say, ends itself as skipped.
            wrong = inner.GetType().Name == "SkipException" ? limitS is double.PositiveInfinity or CoverS ? "skipped" : "" : inner.GetType().Name;
        }
        finally
        {
            (made as IDisposable)?.Dispose();
            Volatile.Write(ref lateTicks, long.MaxValue);
            folder.Set("Late", false);
            folder.Set("Watched", watched);
        }

        return (wrong, UsedS() - before);
    }

    private static void Wait(object? given)
    {
        switch (given)
        {
            case Task task:
                task.GetAwaiter().GetResult();
                break;
            case ValueTask task:
                task.AsTask().GetAwaiter().GetResult();
                break;
        }
    }

    /// <summary>Ends a test that uses far more of the processor than without the change: by the switches it passes, else with the process.</summary>
    private static void Watch()
    {
        while (true)
        {
            Thread.Sleep(100);
            long now = (long)(UsedS() * 1e7), late = Volatile.Read(ref lateTicks);
            if (late == long.MaxValue || now < late)
            {
                continue;
            }

            folder.Set("Late", true);
            folder.Set("Watched", true);
            if (now > late + 50_000_000)
            {
                answers.WriteLine("hung");
                answers.Flush();
                Environment.Exit(3);
            }
        }
    }

    private static double UsedS() => Process.GetCurrentProcess().TotalProcessorTime.TotalSeconds;
}

using System.Buffers;
using System.Text.Json;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.StudyFile;

/// <summary>Makes a study of a bundle's files, or tells everything that stands in the way.</summary>
internal static class BundleReader
{
    public static Checked<Study> Read(BundleSource source, ProblemList problems)
    {
        if (!source.Has(BundleSource.StudyName))
        {
            problems.Add("The bundle has no study.json.", "the bundle", "absent", "study.json at the top", "Add it; docs/formats/bundle.md says what stands in it.");
            return new(problems.All());
        }
        if (source.Text(BundleSource.StudyName) is { } text && Document(text, problems) is var (document, mend))
        {
            var study = document.With(run => Readings(run, source, problems), file => Content(file, source, problems));
            StudyCheck.Check(study, new CheckDesk(BundleSource.StudyName, mend.StandsIn, problems));
            CheckStruck(study, document, problems);
            TellStrangers(document, source, problems);
            if (problems.IsEmpty)
            {
                return new(study);
            }
        }
        return new(problems.All());
    }

    private static (BundleDocument Document, JsonMend Mend)? Document(string text, ProblemList problems)
    {
        try
        {
            using var json = JsonDocument.Parse(text, new JsonDocumentOptions { MaxDepth = StudyJson.MaxDepth });
            if (json.RootElement.ValueKind == JsonValueKind.Object && json.RootElement.TryGetProperty("format", out var format)
                && format.ValueKind == JsonValueKind.String && format.GetString() != BundleDocument.Current)
            {
                problems.Add("The bundle is of another format.", $"{BundleSource.StudyName}, format", format.GetString()!, BundleDocument.Current, "Get a newer Heatwright, or export the bundle in this format.");
                return null;
            }
            var mended = new ArrayBufferWriter<byte>();
            using var writer = new Utf8JsonWriter(mended);
            var mend = new JsonMend(BundleSource.StudyName, problems, writer);
            mend.Mend(json.RootElement, StudyJson.Options.GetTypeInfo(typeof(BundleDocument)), "");
            writer.Flush();
            return mend.Hopeless ? null : (JsonSerializer.Deserialize<BundleDocument>(mended.WrittenSpan, StudyJson.Options)!, mend);
        }
        catch (JsonException error)
        {
            string line = CheckDesk.Number((error.LineNumber ?? 0) + 1);
            problems.Add("study.json is not JSON.", $"{BundleSource.StudyName}, line {line}", error.Message.Split(" LineNumber:")[0], "JSON without comments or trailing commas", "Correct the line, or the one before it.");
        }
        catch (InvalidOperationException)
        {
            problems.Add("A text of study.json holds half of a character.", BundleSource.StudyName, "a lone \\uD800 to \\uDFFF", "whole characters", "Write the character itself instead of its escape.");
        }
        return null;
    }

    private static List<Reading> Readings(BundleRun run, BundleSource source, ProblemList problems)
    {
        var readings = new List<Reading>();
        if (!source.Has(run.FileName))
        {
            problems.Add($"The readings of run '{run.Id}' are missing.", run.FileName, "absent", "a CSV file, perhaps with its heading only", "Add the file, or take the run out of study.json.");
        }
        else if (source.Text(run.FileName) is { } text)
        {
            var lines = RunCsv.Read(text, run.FileName, problems);
            string[] names = [.. run.Columns.Select(column => column.Name)];
            if (lines.Count == 0 || lines[0].Line != 1 || !lines[0].Fields.SequenceEqual(names, StringComparer.Ordinal))
            {
                problems.Add($"The heading of run '{run.Id}' does not match its columns.", $"{run.FileName}, line 1", lines is [{ Line: 1 }, ..] ? string.Join(',', lines[0].Fields) : "absent", string.Join(',', names), "Correct the heading, or the columns in study.json.");
            }
            var struck = run.Struck.GroupBy(strike => strike.Number).ToDictionary(group => group.Key, group => group.First().Because);
            foreach (var (line, fields) in lines.Skip(1))
            {
                if (fields.Count != names.Length)
                {
                    problems.Add($"A reading of run '{run.Id}' has another number of fields than its run has columns.", $"{run.FileName}, line {CheckDesk.Number(line)}", CheckDesk.Number(fields.Count), CheckDesk.Number(names.Length), "Correct the line; a text that holds a comma stands in quotes.");
                }
                readings.Add(new(readings.Count + 1, fields.Count == names.Length ? fields : [.. names], struck.GetValueOrDefault(readings.Count + 1)));
            }
        }
        return readings;
    }

    private static byte[] Content(BundleFile file, BundleSource source, ProblemList problems)
    {
        if (source.Has(file.FileName))
        {
            return source.Bytes(file.FileName) ?? [];
        }
        problems.Add($"The kept file '{file.Id}' is missing.", file.FileName, "absent", "the file itself", "Add the file, or take it out of study.json.");
        return [];
    }

    private static void CheckStruck(Study study, BundleDocument document, ProblemList problems)
    {
        foreach (var (run, i, j) in document.Trials.SelectMany((trial, i) => trial.Runs.Select((run, j) => (run, i, j))))
        {
            int count = study.Trials[i].Runs[j].Readings.Count;
            for (int k = 0; k < run.Struck.Count; k++)
            {
                int number = run.Struck[k].Number;
                string where = $"{BundleSource.StudyName}, {CheckDesk.At($"{CheckDesk.At($"{CheckDesk.At("trials", i)}.runs", j)}.struck", k)}";
                if (number < 1 || number > count)
                {
                    problems.Add($"A reading of run '{run.Id}' is struck out that is not there.", where, CheckDesk.Number(number), $"1 to {CheckDesk.Number(count)}", "Correct the number.");
                }
                else if (run.Struck.Take(k).Any(other => other.Number == number))
                {
                    problems.Add($"A reading of run '{run.Id}' is struck out twice.", where, CheckDesk.Number(number), "once", "Put both reasons into one.");
                }
            }
        }
    }

    private static void TellStrangers(BundleDocument document, BundleSource source, ProblemList problems)
    {
        var known = document.Trials.SelectMany(trial => trial.Runs).Select(run => run.FileName).Concat((document.Files ?? []).Select(file => file.FileName)).Append(BundleSource.StudyName).ToHashSet(StringComparer.Ordinal);
        foreach (string name in source.Names.Where(name => !known.Contains(name)).Order(StringComparer.Ordinal))
        {
            problems.Add("A file of the bundle belongs to no run.", name, "not named in study.json", "study.json, runs/RUN-ID.csv for each run, files/ID for each kept file", "Add the run or the file to study.json, or remove it.");
        }
    }
}

using Heatwright.Jobs;
using Spectre.Console;

namespace Heatwright.Cli;

/// <summary>Brief, comparison, reasons and advice as a maker reads them in a terminal.</summary>
internal static class VerdictTables
{
    public static void Promise(Screen screen, PromiseView promise, string done, string typed, string beside = "")
    {
        // The maker's own words first: what the program made of them stands behind, where it differs.
        string said = typed.Trim().TrimEnd('.'), read = string.Equals(said, promise.Sentence, StringComparison.OrdinalIgnoreCase) ? "" : $"; it counts as '{promise.Sentence}'";
        screen.Say($"{done}: {said}  ({(promise.Must ? "must" : "want")}, {promise.Quantity} {(promise.AtMost ? "at most" : "at least")} {RunWords.Number(promise.Limit, "0.######")}{(promise.Unit is "" or "money" ? "" : " " + promise.Unit)}; short name {promise.Id}{read})");
        if (beside.Length > 0)
        {
            screen.Say(beside);
        }
    }

    public static void Brief(Screen screen, BriefView view)
    {
        if (view.Promise.Length > 0)
        {
            screen.Say(view.Promise);
        }

        foreach (var line in view.Requirements)
        {
            string[] ranked = !line.Must && line.Sentence.StartsWith("want", StringComparison.Ordinal) ? line.Sentence.Split(": ", 2) : [line.Must ? "must" : "want", line.Sentence];
            screen.Say($"  {ranked[0],-6} {ranked[^1]}  [{line.Id}]");
        }

        if (view.Work.Count > 0)
        {
            screen.Hang("  work  ", $"{string.Join(", ", view.Work)}; change any with --set");
        }

        if (view.Blocks.Length > 0)
        {
            screen.Say($"  duty  {view.Blocks}");
        }

        screen.Say("");
        foreach (var answer in view.FirstAnswers)
        {
            screen.Say(answer.Sentence);
            screen.Say($"   from {string.Join("; ", answer.RestsOn)}");
        }

        foreach (string note in view.Notes)
        {
            screen.Say(note);
        }
    }

    public static void Comparison(Screen screen, ComparisonView view, string? written)
    {
        var table = Plain(["requirement", .. view.Arrangements.Select(one => one.Letter), .. view.Tools.Select(tool => tool.Letter)]);
        for (int i = 0; i < view.Arrangements[0].Cells.Count; i++)
        {
            table.AddRow([Text(view.Arrangements[0].Cells[i].Requirement), .. view.Arrangements.Select(one => Text(Cell(one.Cells[i]))), .. view.Tools.Select(tool => Text(tool.Cells[i].Verdict.Length > 0 ? Cell(tool.Cells[i]) : ""))]);
        }

        table.AddRow([Text("all musts at once"), .. view.Arrangements.Select(one => Text(one.OddsOfAllMusts is { } odds ? $"{ComparisonText.Odds(odds)} of 100" : "")), .. view.Tools.Select(_ => Text(""))]);
        table.AddRow([Text("weighted wants"), .. view.Arrangements.Select(one => Text(one.Value is { } value ? RunWords.Number(value, "0.00") : "")), .. view.Tools.Select(_ => Text(""))]);
        table.AddRow([Text("parts"), .. view.Arrangements.Select(one => Text(RunWords.Number(one.PartsCount, "0"))), .. view.Tools.Select(_ => Text(""))]);
        table.AddRow([Text("verdict"), .. view.Arrangements.Select(one => Text(Spoken(one.Verdict))), .. view.Tools.Select(tool => Text(Spoken(tool.Verdict ?? "")))]);
        screen.Show(table);
        foreach (var tool in view.Tools)
        {
            screen.Say($"{tool.Letter} is {tool.Name}, as read on it; what was not read is left empty.");
        }

        foreach (var one in view.Arrangements.Where(one => one.Kills.Length > 0))
        {
            screen.Say($"{one.Letter} is killed by: {one.Kills}");
        }

        foreach (var pair in view.Beats.GroupBy(beat => (beat.Winner, beat.Loser)))
        {
            screen.Say($"{pair.Key.Winner} beats {pair.Key.Loser} on {string.Join(", ", pair.Select(beat => beat.Requirement))}");
        }

        if (written is not null)
        {
            screen.Say($"Written: {written}");
        }
    }

    private static string Spoken(string verdict) => verdict.Replace('-', ' ').Replace("go if", "go-if", StringComparison.Ordinal).Replace("no go", "no-go", StringComparison.Ordinal);

    public static void Why(Screen screen, WhyView view)
    {
        screen.Say($"{view.Letter}  {view.Name}: {view.Verdict}");
        screen.Say($"   {view.Because}");
        screen.Say("");
        foreach (var line in view.Requirements)
        {
            screen.Say($"{line.Requirement}: {line.Verdict}{(line.Probability is { } odds ? $", {ComparisonText.Odds(odds)} of 100" : "")}{(line.Margin is { } margin ? $", margin {RunWords.Number(margin, "0.##")} {(line.Unit switch { "°C" => "K", "money" => "", var unit => unit })}".TrimEnd() : "")}");
            screen.Say($"   {line.Because}{(line.Remedy.Length > 0 ? $" -> {line.Remedy}" : "")}");
            foreach (string way in line.WouldHaveToBeTrue)
            {
                screen.Say($"   it flips with {way}");
            }
        }

        screen.Say("");
        screen.Say($"It rests on {view.Readings} numbers from readings, {view.Claims.Count} claims and {view.Assumptions.Count} assumptions.");
        foreach (string claim in view.Claims)
        {
            screen.Say($"   claimed: {claim}");
        }

        foreach (string guess in view.Assumptions)
        {
            screen.Say($"   assumed: {guess}");
        }

        foreach (var matters in view.Matters ?? [])
        {
            var table = Plain($"doubt of {matters.Requirement}", "alone", "with all it touches");
            foreach (var share in matters.Shares.Where(share => share.Total >= 0.01))
            {
                table.AddRow(Text(share.Source == Verdicts.WhatMatters.AllElse ? share.Source : $"{share.Group}: {share.Source}"), Text(RunWords.Number(share.First, "0.00")), Text(RunWords.Number(share.Total, "0.00")));
            }

            screen.Show(table);
        }
    }

    public static void Next(Screen screen, NextView view)
    {
        screen.Say(view.Advice);
        var table = Plain("trial", "min", "wrong choice falls by", "stage");
        foreach (var trial in view.Trials.Where(trial => trial.Drop > 0).Take(10))
        {
            table.AddRow(Text(trial.Part.Length > 0 ? $"{trial.Trial}, {trial.Part}" : trial.Trial), Text(RunWords.Number(trial.Minutes, "0")), Text($"{RunWords.Number(100 * trial.Drop, "0.0")} of 100"),
                Text(trial.Risk.Length > 0 ? $"{trial.Stage}: {trial.Risk}" : trial.Stage));
        }

        if (table.Rows.Count > 0)
        {
            screen.Show(table);
        }

        foreach (var step in view.Evening)
        {
            screen.Say($"  {RunWords.Number(step.StartMinute, "0"),4} to {RunWords.Number(step.EndMinute, "0"),3} min  {step.Trial}{(step.WaitMinutes > 0 ? $" (the part rests {RunWords.Number(step.WaitMinutes, "0")} min after)" : "")}");
        }

        if (view.Evening.Count > 0 && view.WrongAfterEvening is { } after)
        {
            screen.Say($"After that the choice is wrong in about {RunWords.Number(100 * after, "0")} of 100. Ask again after each reading.");
        }

        foreach (string left in view.LeftOut.Where(left => left != view.Advice))
        {
            screen.Say(left);
        }
    }

    public static void Search(Screen screen, SearchView view)
    {
        screen.Say($"{RunWords.Number(view.Tried, "0")} arrangements tried.");
        foreach (string told in view.FirstLook())
        {
            screen.Say(told);
        }

        foreach (var one in view.Best)
        {
            if (one == view.Best[0] || (one.ToBuy.Count > 0 && one == view.Best.First(other => other.ToBuy.Count > 0)))
            {
                screen.Say(one.ToBuy.Count > 0 ? "After buying:" : "From what is on hand:");
            }

            screen.Say($"{one.Name}{(one.AsWired() is { Length: > 0 } wired ? $" ({wired})" : "")}: {one.Verdict}");
            if (one.ToBuy.Count > 0)
            {
                screen.Say($"   to buy: {string.Join(", ", one.ToBuy)}");
            }

            screen.Say($"   {one.Because}");
            foreach (string warning in one.Warnings)
            {
                screen.Say($"   mind: {warning}");
            }
        }

        foreach (string wired in view.Wired)
        {
            screen.Say(wired);
        }

        foreach (string buy in view.Buy)
        {
            screen.Say($"{(view.Best.Count > 0 ? "Put aside, but near" : "Nothing here will do")}. {buy}");
        }

        screen.Say("");
        var table = Plain("put aside", "how many", "because");
        foreach (var family in view.Discarded)
        {
            table.AddRow(Text(family.Family), Text(RunWords.Number(family.Count, "0")), Text(family.Reason));
        }

        screen.Show(table);
    }

    private static string Cell(ComparisonCell cell) =>
        cell.Probability is { } odds ? $"{cell.Shown}\n{ComparisonText.Odds(odds)} of 100, {Spoken(cell.Verdict)}" : $"{cell.Shown}\n{Spoken(cell.Verdict)}";

    private static Table Plain(params string[] headings)
    {
        var table = new Table { Border = TableBorder.Simple };
        foreach (string heading in headings)
        {
            table.AddColumn(new TableColumn(new Cell(heading)));
        }

        return table;
    }

    private static Cell Text(string text) => new(text);
}

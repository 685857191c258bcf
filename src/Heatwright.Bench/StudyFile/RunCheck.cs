using Heatwright.Parts;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.StudyFile;

/// <summary>Whether trials, their runs and readings hang together.</summary>
internal static class RunCheck
{
    public static void Check(Study study, CheckDesk desk)
    {
        desk.Ids("trials", study.Trials.Select((trial, i) => (trial.Id.Name ?? "", $"{CheckDesk.At("trials", i)}.id")));
        desk.Ids("runs", study.Trials.SelectMany((trial, i) => trial.Runs.Select((run, j) => (run.Id.Name ?? "", $"{CheckDesk.At($"{CheckDesk.At("trials", i)}.runs", j)}.id"))));
        var shelf = new Shelf(study.Parts, desk);
        var instruments = study.Instruments.Select(instrument => instrument.Id).ToHashSet(StringComparer.Ordinal);
        for (int i = 0; i < study.Trials.Count; i++)
        {
            var trial = study.Trials[i];
            string at = CheckDesk.At("trials", i);
            shelf.Check($"{at}.part", trial.Part, kind: null);
            if ((trial.Kind == TrialKind.Bench) != (trial.Card is not null) || (trial.Card is { } name && TrialCard.Find(name)?.Name != name))
            {
                desk.Say($"{at}.card", trial.Kind == TrialKind.Bench ? "A trial's card is not known." : "Only a trial of kind 'bench' has a card.", trial.Card ?? "none",
                    trial.Kind == TrialKind.Bench ? string.Join(", ", TrialCard.All.Select(card => card.Name)) : "none", trial.Kind == TrialKind.Bench ? "Choose one of them." : "Remove it, or make the kind 'bench'.");
                continue;
            }
            for (int j = 0; j < trial.Runs.Count; j++)
            {
                string path = CheckDesk.At($"{at}.runs", j);
                CheckColumns(trial, trial.Runs[j], path, instruments, desk);
                CheckReadings(trial.Runs[j], path, desk);
                if (!desk.StandsIn($"{at}.kind"))
                {
                    CheckKind(trial, trial.Runs[j], path, desk);
                }
            }
        }
    }

    private static void CheckColumns(Trial trial, Run run, string path, HashSet<string> instruments, CheckDesk desk)
    {
        for (int k = 0; k < run.Columns.Count; k++)
        {
            var column = run.Columns[k];
            string at = CheckDesk.At($"{path}.columns", k);
            if (!StudyWords.IsWord(trial, column.Name))
            {
                desk.Unit($"{at}.unit", column.Unit, StudyWords.UnitOf(trial, column.Name));
            }
            if (run.Columns.Take(k).Any(other => other.Name == column.Name))
            {
                desk.Say($"{at}.name", $"Two columns of run '{run.Id}' have one name.", column.Name, "once", "Remove or rename one of them.");
            }
            if (column.Instrument.Length > 0 && !instruments.Contains(column.Instrument))
            {
                desk.Say($"{at}.instrument", "A column names an instrument that the study does not have.", column.Instrument, instruments.Count > 0 ? string.Join(", ", instruments) : "an instrument of the study", "Add the instrument, or leave the field empty.");
            }
        }
    }

    private static void CheckKind(Trial trial, Run run, string path, CheckDesk desk)
    {
        string[] named = [.. run.Columns.Select(column => column.Name)];
        var (needed, perhaps, settings) = StudyWords.Of(trial, named);
        foreach (string missing in RunFromLog.Needed(trial, run.Settings.Keys, named).Except(named, StringComparer.Ordinal))
        {
            desk.Say($"{path}.columns", $"Run '{run.Id}' lacks a column that its trial needs.", string.Join(", ", run.Columns.Select(column => column.Name)), missing, "Add the column, or choose the right kind of trial.");
        }
        for (int k = 0; k < run.Columns.Count; k++)
        {
            desk.Word($"{CheckDesk.At($"{path}.columns", k)}.name", $"A column of run '{run.Id}'", run.Columns[k].Name, [.. needed, .. perhaps]);
        }
        foreach (var (name, value) in run.Settings)
        {
            if (!settings.Contains(name, StringComparer.Ordinal))
            {
                desk.Say($"{path}.settings.{name}", $"A setting of run '{run.Id}' is not known.", name, settings.Length > 0 ? string.Join(", ", settings) : "none for this kind of trial", "Correct its name, or remove it.");
            }
            desk.Range($"{path}.settings.{name}", "A setting", value, true, "a number");
        }
        foreach (var (name, value) in run.SettingsPlusMinus)
        {
            if (!run.Settings.ContainsKey(name))
            {
                desk.Say($"{path}.settingsPlusMinus.{name}", $"Run '{run.Id}' says by how much a setting may be off that it does not have.", name, run.Settings.Count > 0 ? string.Join(", ", run.Settings.Keys) : "none", "Add the setting, or remove this.");
            }
            desk.Range($"{path}.settingsPlusMinus.{name}", "What a setting may be off by", value, value >= 0, "0 or more");
        }
    }

    private static void CheckReadings(Run run, string path, CheckDesk desk)
    {
        for (int k = 0; k < run.Readings.Count; k++)
        {
            var reading = run.Readings[k];
            string at = CheckDesk.At($"{path}.readings", k);
            if (reading.Number != k + 1)
            {
                desk.Say($"{at}.number", $"The readings of run '{run.Id}' are not numbered in order.", CheckDesk.Number(reading.Number), CheckDesk.Number(k + 1), "Number them 1, 2, 3; strike a bad one out and keep its number.");
            }
            if (reading.Raw.Count != run.Columns.Count)
            {
                desk.Say($"{at}.raw", $"A reading of run '{run.Id}' has another number of fields than its run has columns.", CheckDesk.Number(reading.Raw.Count), CheckDesk.Number(run.Columns.Count), "Correct the reading.");
            }
            if (reading.StruckBecause is { } because && string.IsNullOrWhiteSpace(because))
            {
                desk.Say($"{at}.struckBecause", $"Reading {CheckDesk.Number(reading.Number)} of run '{run.Id}' is struck out without a reason.", because, "why, in words", "Say why it does not count.");
            }
        }
    }
}

/// <summary>The parts that references may lead to.</summary>
internal sealed class Shelf
{
    private readonly CheckDesk desk;
    private readonly Dictionary<PartId, (PartKind Kind, string Path)> parts = [];
    private readonly bool hasUnnamed;

    public Shelf(IReadOnlyList<Part> shelf, CheckDesk desk)
    {
        this.desk = desk;
        for (int i = 0; i < shelf.Count; i++)
        {
            string at = CheckDesk.At("parts", i);
            parts.TryAdd(shelf[i].Id, (shelf[i].Kind, $"{at}.kind"));
            hasUnnamed |= desk.StandsIn($"{at}.id");
        }
    }

    /// <summary>The part is on the shelf and of that kind; null kind: any, null part: none.</summary>
    public void Check(string path, PartId? part, PartKind? kind)
    {
        if (part is not { } id)
        {
            return;
        }
        if (!parts.TryGetValue(id, out var found))
        {
            // Where a part's own id was unreadable it may be the one that is meant: one problem is enough.
            if (!hasUnnamed)
            {
                desk.Say(path, "A part is not on the shelf.", id.Name ?? "", "the id of a part of this study", "Add the part, or correct the id.");
            }
        }
        else if (kind is { } wanted && found.Kind != wanted && !desk.StandsIn(found.Path))
        {
            desk.Say(path, $"Part '{id}' is of another kind than its place.", Word(found.Kind), Word(wanted), "Choose a part of that kind, or correct the kind of the part.");
        }
    }

    private static string Word(PartKind kind) => System.Text.Json.JsonNamingPolicy.CamelCase.ConvertName(kind.ToString());
}

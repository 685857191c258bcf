using System.Globalization;
using Heatwright.Quantities;

namespace Heatwright.Trials;

/// <summary>Bench tests that are done by a card: their runs through the fit of their kind, their findings onto the part.</summary>
internal static class CardBench
{
    /// <summary>Findings of one trial. Several runs are averaged: what their instruments share stays shared, what they scatter is a doubt of its own.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="instruments">The meters.</param>
    /// <param name="tells">True: what the fit says in sentences stands among the remarks; false: its findings say it all, and only what is wrong is remarked.</param>
    public static PartFindings Findings(Trial trial, InstrumentCauses instruments, bool tells = true)
    {
        if (TrialCard.Find(trial.Card ?? "") is not { } card)
        {
            return new(trial.Part, [], [], [new($"There is no kind of trial '{trial.Card}'.", $"trial {trial.Id}", trial.Card ?? "none", "a name that 'heatwright trial kinds' lists", "Correct the kind.")]);
        }

        List<Remark> remarks = [];
        List<Problem> problems = [];
        List<(Run Run, TrialAnswer Answer)> answers = [];
        foreach (var run in trial.Runs.Where(run => run.Readings.Count > 0))
        {
            remarks.AddRange(run.Readings.Where(reading => reading.StruckBecause is not null).Select(reading => new Remark(trial.Id, run.Id, reading.Number, $"struck out: {reading.StruckBecause}", Remark.LeftOut)));
            var answer = TrialFits.Run(card.Name, Input(card, run, instruments));
            if (!answer.IsFine)
            {
                problems.AddRange(answer.Problems.Select(problem => problem with { Where = $"trial {trial.Id}, run {run.Id}" }));
                continue;
            }

            answers.Add((run, answer.Value));
            var struck = run.Readings.Where(reading => reading.StruckBecause is not null).Select(reading => reading.Number).ToHashSet();
            remarks.AddRange(answer.Value.Remarks.Where(remark => !struck.Contains(remark.Reading)).Select(remark => new Remark(trial.Id, run.Id, remark.Reading, $"{remark.Words} {remark.Remedy}".Trim(), remark.LeftOut ? Remark.LeftOut : Remark.Kept)));
            remarks.AddRange((tells ? answer.Value.Says.Concat(answer.Value.Next) : []).Select(words => new Remark(trial.Id, run.Id, 0, words, Remark.Kept)));
        }

        var names = answers.SelectMany(pair => pair.Answer.Findings).Select(finding => finding.Name).Distinct(StringComparer.Ordinal);
        return new(trial.Part, [.. names.Select(name => One(trial, name, answers))], remarks, problems)
        {
            Pictures = [.. answers.Where(pair => pair.Answer.Picture is not null).Select(pair => Picture(trial, pair.Run, pair.Answer.Picture!))],
        };
    }

    /// <summary>The readings of a run as the fits take them: a struck reading keeps its place and says nothing.</summary>
    internal static TrialInput Input(TrialCard card, Run run, InstrumentCauses instruments)
    {
        var columns = run.Columns.Select((column, i) =>
        {
            var unit = card.Column(column.Name) is { IsWord: true } ? null : Units.Find(column.Unit);
            string[] texts = [.. run.Readings.Select(reading => reading.StruckBecause is null ? reading.Raw[i] : "")];
            var film = FilmTimes.Of(run, i);
            var read = film?.Read ?? [.. texts.Select(text => ReadingText.Read(text, unit, column.Name))];
            return new RawColumn(column.Name, unit, [.. read.Select(one => unit is null || unit.IsLevel ? one.Value : unit.FromSi(one.Value))],
                unit is null ? texts : [])
            {
                Film = film,
                Overload = [.. read.Select(one => one.Says == ReadingSays.Overload)],
            };
        });
        var settings = card.Settings.Where(setting => run.Settings.ContainsKey(setting.Name)).ToDictionary(setting => setting.Name, setting =>
        {
            var unit = Units.Find(setting.Unit)!;
            double value = run.Settings[setting.Name];
            double plusMinus = run.SettingsPlusMinus.GetValueOrDefault(setting.Name) / unit.Factor;
            return Estimate.Within(unit.IsLevel ? value : unit.FromSi(value), plusMinus, unit, $"{card.Name} {setting.Name}", CauseGroup.Assumption, new Origin.Assumed("typed with the run"));
        }, StringComparer.Ordinal);
        var meters = run.Columns.Select((column, i) => (column.Name, Said: instruments.Promise(column, [.. run.Readings.Where(reading => reading.StruckBecause is null).Select(reading => reading.Raw[i])]))).Where(pair => pair.Said is not null).ToDictionary(pair => pair.Name, pair => pair.Said!, StringComparer.Ordinal);
        return new([.. columns], settings, meters);
    }

    private static Finding One(Trial trial, string name, List<(Run Run, TrialAnswer Answer)> answers)
    {
        var found = answers.Select(pair => (pair.Run, Finding: pair.Answer.Findings.FirstOrDefault(finding => finding.Name == name))).Where(pair => pair.Finding is not null).ToArray();
        found = LowerBound.Is(name) ? [found.MaxBy(pair => pair.Finding!.Value.Si)] : found; // of several the largest holds
        var unit = found[0].Finding!.Value.Unit;
        double[] values = [.. found.Select(pair => pair.Finding!.Value.In(unit).Value)];
        double mean = values.Average();
        var doubts = Doubts.None;
        foreach (var (run, finding) in found)
        {
            // What a trial scatters is its own; what an instrument or a guess brings is one cause wherever it acts.
            doubts = finding!.Value.In(unit).Doubts.Pushes.Aggregate(doubts, (sum, push) => sum.With(push.Cause.Group == CauseGroup.Trial ? push.Cause with { Id = $"{run.Id} {push.Cause.Id}" } : push.Cause, push.By / values.Length));
        }

        double spread = values.Length > 1 ? Math.Sqrt(values.Sum(value => Math.Pow(value - mean, 2)) / (values.Length - 1) / values.Length) : 0;
        double own = Math.Sqrt(doubts.Pushes.Where(push => push.Cause.Group == CauseGroup.Trial).Sum(push => push.By * push.By));
        if (spread > own)
        {
            doubts = doubts.With(Cause.Normal($"{trial.Id} {name} between runs", CauseGroup.Trial), Math.Sqrt((spread * spread) - (own * own)));
        }

        return new(trial.Part, name, new Estimate(mean, unit, doubts, new Origin.Fitted(trial.Id, [.. found.Select(pair => pair.Run.Id)])));
    }

    private static FitPicture Picture(Trial trial, Run run, TrialPicture picture) =>
        new($"{trial.Id}, {run.Id}", picture.XName, picture.XUnit, picture.YName, picture.YUnit, picture.X, picture.Read, picture.Fitted) { Doubt = picture.Band };

    /// <summary>Where two trials of a part speak of one quantity: by how much they agree, and which of them counts.</summary>
    internal static IEnumerable<Remark> Compared(IReadOnlyList<Finding> findings, IReadOnlyList<Trial> trials)
    {
        foreach (var group in findings.GroupBy(finding => finding.Quantity, StringComparer.Ordinal).Where(group => group.Count() > 1 && !LowerBound.Is(group.Key)))
        {
            var first = group.First();
            foreach (var other in group.Skip(1))
            {
                if (Source(other) is not { } from || Source(first) is not { } before || trials.FirstOrDefault(trial => trial.Id == from.Trial) is not { Runs: [var run, ..] } || from.Trial == before.Trial)
                {
                    continue;
                }

                var there = other.Value.In(first.Value.Unit);
                double gap = there.Value - first.Value.Value;
                double doubt = (there.Doubts - first.Value.Doubts).Combined;
                string size = doubt > 0 ? string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(gap) / doubt:0.0} standard doubts apart") : "without doubt";
                string words = Math.Abs(gap) <= 2 * doubt ? $"it agrees with {before.Trial}, {size}" : $"it contradicts {before.Trial}, {size}: do one of them again before relying on either";
                yield return new(from.Trial, run.Id, 0, $"{group.Key} {Display.Rounded(other.Value)}: {words}. Predictions take the one of {before.Trial}, {Display.Rounded(first.Value)}.", Remark.Kept);
            }
        }
    }

    private static Origin.Fitted? Source(Finding finding) => finding.Value.Origin as Origin.Fitted;
}

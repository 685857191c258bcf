using System.CommandLine;
using System.Globalization;
using System.Text.Json;
using Heatwright.Cli.Answering;
using Heatwright.Jobs;
using Heatwright.Jobs.Trials;
using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.Cli;

/// <summary>Commands that put meters, bench tests and readings into a study.</summary>
internal static class EnterCommands
{
    public static Command Meter(Screen screen) => new("meter", "Meters of a study, with what they promise. Example: heatwright meter add knife.study bench \"bench meter\" --reads \"V=0.5%+2mV\" \"A=1%+5mA\"") { AddMeter(screen), ListMeters(screen), DropMeter(screen) };

    private static Command DropMeter(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<ChangeTaken>());
        var id = new Argument<string>("METER") { Description = "Its short name." };
        var unit = new Argument<string?>("UNIT") { Description = "Only what it promises for this unit; without it, the whole meter, with which no run may have been read.", Arity = ArgumentArity.ZeroOrOne };
        var command = new Command("drop", "Takes a line of a meter's promise out again, or the whole meter; 'undo' brings it back. Example: heatwright meter drop knife.study probe degC") { file, id, unit, json };
        command.SetAction(parsed => Answers.Give(screen, PlanTrial.DropMeter(parsed.GetValue(file)!, parsed.GetValue(id)!, parsed.GetValue(unit) ?? ""), parsed.GetValue(json), ChangeTaken.Of, done => screen.Say($"{done.Change?.What}.")));
        return command;
    }

    private static Command AddMeter(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<Instrument>());
        var id = new Argument<string>("METER") { Description = "Its short name; columns of readings name it." };
        var name = new Argument<string?>("NAME") { Description = "What you call it.", Arity = ArgumentArity.ZeroOrOne };
        var reads = Many("--reads", "What it promises for each unit, as its leaflet has it: \"V=0.5%+2mV\", \"A=1%+3d\", \"s=exact\".");
        var step = Many("--step", "The smallest step it shows for each unit: \"V=1mV\".");
        var command = new Command("add", "Puts a meter, probe, watch or logger into a study, or states it anew. Example: heatwright meter add knife.study probe \"thermometer\" --reads \"degC=1%+2K\" --step \"degC=0.1K\"") { file, id, name, reads, step, json };
        command.SetAction(parsed => Answers.Give(screen, PlanTrial.Meter(parsed.GetValue(file)!, new(parsed.GetValue(id)!, parsed.GetValue(name) ?? "", parsed.GetValue(reads) ?? [], parsed.GetValue(step) ?? [])), parsed.GetValue(json), meter => meter, meter => Say(screen, meter)));
        return command;
    }

    private static Command ListMeters(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<IReadOnlyList<Instrument>>());
        var command = new Command("list", "Lists the meters of a study. Example: heatwright meter list knife.study") { file, json };
        command.SetAction(parsed => Answers.Give(screen, OpenStudy.Read(parsed.GetValue(file)!).Map(opened => opened.Study.Instruments), parsed.GetValue(json), meters => meters, meters =>
        {
            meters.ToList().ForEach(meter => Say(screen, meter));
            if (meters.Count == 0)
            {
                screen.Say("No meter yet: a reading without one is taken with what a usual meter promises, or without doubt of its own.");
                screen.Hang("", $"Add one with 'heatwright meter add {parsed.GetValue(file)} METER --reads \"V=0.5%+2mV\" --step \"V=1mV\"', as its leaflet has it.");
            }
        }));
        return command;
    }

    private static void Say(Screen screen, Instrument meter)
    {
        screen.Say($"{meter.Id}  {meter.Name}");
        foreach (var spec in meter.Specs)
        {
            screen.Say($"  {spec.Unit}: {MeterWords.Promise(spec, spec.Unit)}");
        }
    }

    public static Command Add(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<TrialPlanned>());
        var kind = new Argument<string>("KIND") { Description = "One of 'heatwright trial kinds', or discharge or hot-ohms." };
        var on = new Option<string>("--on") { Description = "The part that is tried.", Required = true };
        var name = new Option<string?>("--name") { Description = "Short name of the trial; without it, the part and the kind." };
        var purpose = new Option<string?>("--purpose") { Description = "What it is to show." };
        var (law, result, find) = TrialCommands.OwnLaw();
        var command = new Command("add", "Plans a bench test of a part. Example: heatwright trial add knife.study cold-ohms --on stick") { file, kind, on, name, purpose, law, result, find, json };
        command.SetAction(parsed => Answers.Give(screen, PlanTrial.KindOf(parsed.GetValue(kind)!, parsed.GetValue(law), parsed.GetValue(result), parsed.GetValue(find))
                .Then(wanted => PlanTrial.Add(parsed.GetValue(file)!, parsed.GetValue(name) ?? "", wanted, parsed.GetValue(on)!, parsed.GetValue(purpose) ?? ""))
                .Then(made => OpenStudy.Read(parsed.GetValue(file)!).Map(opened => (Trial: made, Doubt: SuitedKinds.Doubt(opened.Study, made)))), parsed.GetValue(json),
            planned => new TrialPlanned(planned.Trial.Id.Name, TrialKinds.Of(planned.Trial), planned.Trial.Part.Name, planned.Doubt),
            planned =>
            {
                var trial = planned.Trial;
                screen.Say($"{trial.Id}: {TrialKinds.Of(trial)} of {trial.Part}.");
                if (planned.Doubt is { } doubt)
                {
                    screen.Hang("  ! ", $"{doubt} 'heatwright trial drop {parsed.GetValue(file)} {trial.Id}' takes it out again.");
                }

                if (TrialKinds.CardOf(trial) is { } card)
                {
                    card.Recipe.Stops.ToList().ForEach(stop => screen.Hang("  stop  ", stop));
                }

                screen.Say($"Read it with 'heatwright trial enter {parsed.GetValue(file)} {trial.Id}'; how it is done: 'heatwright trial recipe {Asked(TrialKinds.CardOf(trial)?.Name ?? TrialKinds.Of(trial))}'.");
            }));
        return command;
    }

    public static Command Drop(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<ChangeTaken>());
        var name = new Argument<string>("TRIAL") { Description = "The trial." };
        var run = new Option<string?>("--run") { Description = "Only this run of it, which must have no reading." };
        var command = new Command("drop", "Takes a planned trial without readings out again, or one run of it. Example: heatwright trial drop knife.study stick-cold-ohms") { file, name, run, json };
        command.SetAction(parsed => Answers.Give(screen, parsed.GetValue(run) is { } one ? SetRun.Drop(parsed.GetValue(file)!, parsed.GetValue(name)!, one) : PlanTrial.Drop(parsed.GetValue(file)!, parsed.GetValue(name)!), parsed.GetValue(json), ChangeTaken.Of, done => screen.Say($"{done.Change?.What}.")));
        return command;
    }

    public static Command Set(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<RunHeld>());
        var run = new Argument<string>("RUN") { Description = "The run." };
        var columns = new Option<string?>("--columns") { Description = "Its columns in the order in which they are typed, with commas between; only while nothing is read." };
        var meter = Many("--meter", "Which meter reads which column: \"volts=bench\"; \"volts=none\" names none.");
        var set = Many("--set", "What holds for the whole run: \"air=24C\"; \"air=none\" takes it out.");
        var command = new Command("set", "Says anew which meters a run was read with and what held for it; the readings stay. Example: heatwright trial set knife.study stick-cold-ohms-1 --meter ohms=bench --set leads=0.2ohm") { file, run, columns, meter, set, json };
        command.SetAction(parsed => Answers.Give(screen, SetRun.Set(parsed.GetValue(file)!, new RunEntry("", parsed.GetValue(run)!, Listed(parsed.GetValue(columns)), parsed.GetValue(meter) ?? [], parsed.GetValue(set) ?? []))
                .Then(held => OpenStudy.Read(parsed.GetValue(file)!).Map(opened => RunHeld.Of(opened.Study.Trials.First(trial => trial.Runs.Any(one => one.Id == held.Id)), held))), parsed.GetValue(json), held => held, held =>
            screen.Say($"{held.Run}: {string.Join("; ", held.Columns.Select(column => $"{column.Name} {(column.Meter is { } on ? $"on {on}" : "on no meter")}").Concat(held.Settings))}.")));
        return command;
    }

    private static string[] Listed(string? columns) => [.. (columns ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];

    public static Command List(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<IReadOnlyList<TrialRow>>());
        var command = new Command("list", "Lists the trials of a study with their runs and what they found. Example: heatwright trial list knife.study") { file, json };
        command.SetAction(parsed => Answers.Give(screen, OpenStudy.Read(parsed.GetValue(file)!).Map(opened => (opened.Study, Found: RunStudy.Findings(opened.Study))), parsed.GetValue(json),
            told => told.Study.Trials.Select(trial => TrialRow.Of(trial, told.Found)),
            told =>
            {
                if (told.Study.Trials.Count == 0)
                {
                    screen.Hang("", $"There is no trial yet. 'heatwright trial kinds' tells what there is to measure; plan one with 'heatwright trial add {parsed.GetValue(file)} KIND --on PART'.");
                    return;
                }

                var table = Answers.Table("trial", "kind", "part", "runs", "readings", "findings");
                foreach (var trial in told.Study.Trials)
                {
                    var row = TrialRow.Of(trial, told.Found);
                    table.Row(row.Trial, row.Kind, row.Part, Number(row.Runs.Count), Number(row.Readings), row.Findings.Count > 0 ? string.Join("\n", row.Findings.Select(finding => $"{finding.Name} {finding.Says}")) : row.Problems is [var first, ..] ? first
                        : row.Readings == 0 ? "not read yet" : TrialRow.Untold(trial, told.Found) ?? "fitted together with the others of its part");
                }

                screen.Show(table);
            }));
        return command;
    }

    private static string Asked(string kind) => kind.Contains(' ', StringComparison.Ordinal) ? $"\"{kind}\"" : kind;

    public static Command Enter(Screen screen)
    {
        var (file, json) = (Answers.StudyFile(), Answers.Json<ReadingsEntered>());
        var trial = new Argument<string>("TRIAL") { Description = "The trial." };
        var run = new Option<string?>("--run") { Description = "A run that is there, to type more into it; or the name of the new one." };
        var columns = new Option<string?>("--columns") { Description = "The columns in the order in which you type them, with commas between: time,volts,amps. Without it, those that the kind needs." };
        var meter = Many("--meter", "Which meter reads which column: \"volts=bench\".");
        var set = Many("--set", "What holds for the whole run: \"air=24C\".");
        var read = Many("--read", "Readings, one line each: \"3.82 0.41\". Without it they are read from the input, line by line.");
        var command = new Command("enter", "Types readings into a trial, one line each; each is understood, checked and kept at once. Example: heatwright trial enter knife.study stick-cold-ohms --set leads=0.2ohm --read 7.41 7.43") { file, trial, run, columns, meter, set, read, json };
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(file)!;
            var entry = new RunEntry(parsed.GetValue(trial)!, parsed.GetValue(run) ?? "", Listed(parsed.GetValue(columns)), parsed.GetValue(meter) ?? [], parsed.GetValue(set) ?? []);
            entry = Waiting(path, entry);
            var begun = Begun(path, entry);
            if (!begun.IsFine)
            {
                screen.Complain(begun.Problems);
                return ExitCodes.BadInput;
            }

            return Taken(screen, path, entry, begun.Value, parsed.GetValue(read) is { Length: > 0 } typed ? typed : Lines(screen, begun.Value), parsed.GetValue(json));
        });
        return command;
    }

    /// <summary>Where no run is named, the one that waits for its readings: the empty twin of a bundle, or one that was begun and not read yet.</summary>
    private static RunEntry Waiting(string path, RunEntry entry) => entry.Run.Length == 0 && OpenStudy.Read(path) is { IsFine: true, Value.Study: var study }
        && study.Trials.Where(trial => trial.Id.Name == entry.Trial).SelectMany(trial => trial.Runs).Where(run => run.Readings.Count == 0).ToArray() is [var waits] ? entry with { Run = waits.Id.Name } : entry;

    /// <summary>The run that is there, as it is said anew; or the new one, stored with its first reading only: lines that nobody can read leave no empty run.</summary>
    private static Checked<Run> Begun(string path, RunEntry entry) => OpenStudy.Read(path).Then(opened =>
    {
        var there = opened.Study.Trials.Where(trial => trial.Id.Name == entry.Trial).SelectMany(trial => trial.Runs).FirstOrDefault(run => run.Id.Name == entry.Run);
        return there is null ? TypeReadings.Plan(path, entry)
            : entry.Columns.Count + entry.Meters.Count + entry.Settings.Count > 0 ? SetRun.Set(path, entry) : new(there);
    });

    private static IEnumerable<string> Lines(Screen screen, Run run)
    {
        if (screen.InputIsTerminal)
        {
            screen.Say($"{run.Id}: type {string.Join(' ', run.Columns.Select(column => column.Name))}, Enter after each line; an empty line ends.");
        }

        while (screen.Input.ReadLine() is { } line && (line.Trim().Length > 0 || !screen.InputIsTerminal))
        {
            if (line.Trim().Length > 0 && line.TrimStart()[0] != '#')
            {
                yield return line;
            }
        }
    }

    private static int Taken(Screen screen, string path, RunEntry entry, Run run, IEnumerable<string> lines, bool json)
    {
        List<ReadingTaken> all = [];
        int refused = 0, typed = 0, alike = 0;
        HashSet<string> told = new(StringComparer.Ordinal);
        Func<string, Checked<string?>>? order = null;
        foreach (string line in lines)
        {
            typed++;
            if (order is null && TypeReadings.Headed(path, entry.Trial, run, line) is { IsFine: true } headed)
            {
                run = headed.Value;
            }

            order ??= TypeReadings.Orderly(path, entry.Trial, run);
            var ordered = order(line);
            if (ordered is { IsFine: true, Value: null })
            {
                continue;
            }

            var taken = ordered.Then(text => TypeReadings.Take(path, entry.Trial, run, text!));
            if (!taken.IsFine)
            {
                refused++;
                // At the keyboard each line has its answer; of lines that are piped one stands for all that are refused like it.
                string[] unlike = [.. taken.Problems.Select(TypeReadings.Alike).Where(told.Add)];
                if (unlike.Length > 0 || screen.InputIsTerminal)
                {
                    screen.Complain(taken.Problems);
                }
                else
                {
                    alike++;
                }

                if (!ordered.IsFine && !screen.InputIsTerminal)
                {
                    break; // nothing below a heading that is not understood is taken; at the keyboard the maker types on
                }

                continue;
            }

            all.Add(taken.Value);
            if (!json)
            {
                screen.Say($"{taken.Value.Number.ToString(CultureInfo.InvariantCulture),4}  {string.Join("  ", taken.Value.Fields.Select(field => $"{field.Column} {field.Understood}"))}");
                taken.Value.Remarks.ToList().ForEach(remark => screen.Hang("      ! ", remark.Reading is 0 || remark.Reading == taken.Value.Number ? remark.Words : $"reading {remark.Reading}: {remark.Words}"));
            }
        }

        // A run that was named and has nothing to read yet is begun all the same: its meters and settings stand, and readings follow.
        if (typed == 0 && entry.Run.Length > 0 && TypeReadings.Find(path, run.Id.Name) is null && TypeReadings.Begin(path, entry) is { IsFine: false } failed)
        {
            screen.Complain(failed.Problems);
            return ExitCodes.BadInput;
        }

        if (alike > 0)
        {
            screen.Complain([new($"{Number(alike)} more line{(alike == 1 ? " is" : "s are")} refused like one above.", $"trial {entry.Trial}", $"{Number(refused)} of {Number(typed)} lines", $"{string.Join(' ', run.Columns.Select(column => column.Name))} in each line", "Other columns are named with --columns, in the order in which they are typed.")]);
        }

        var now = TypeReadings.Find(path, run.Id.Name);
        if (json)
        {
            Answers.Write(screen, new ReadingsEntered(now is null ? "" : run.Id.Name, [.. all.Select(ReadingEntered.Of)], refused));
        }
        else
        {
            screen.Say(now is null ? $"No reading was taken{(refused > 0 ? $": {Refused(refused)}" : "")}. No run was begun."
                : $"{all.Count} reading{(all.Count == 1 ? "" : "s")} into {run.Id}{(refused > 0 ? $"; {Refused(refused)}" : "")}.");

            // What was asked of a reading while it was the last one may have been answered by those behind it.
            var named = all.SelectMany(taken => taken.Remarks).Select(remark => remark.Reading).Where(number => number > 0).Intersect((now?.Remarks ?? []).Select(remark => remark.Reading)).Order().Take(MostStruck).ToArray();
            if (named.Length > 0)
            {
                screen.Say($"A reading that is wrong: 'heatwright strike {path} {run.Id} {NumberSpans.Told(named, "-", " ")} --because WHY' leaves it out; it stays in the study.");
            }
        }

        return refused > 0 ? ExitCodes.BadInput : ExitCodes.Done;
    }

    private static string Refused(int lines) => lines == 1 ? "1 line was not taken" : $"{Number(lines)} lines were not taken";

    /// <summary>So many readings are named to be struck out.</summary>
    private const int MostStruck = 5;

    private static string Number(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static Option<string[]> Many(string name, string about) => new(name) { Description = about, AllowMultipleArgumentsPerToken = true };
}

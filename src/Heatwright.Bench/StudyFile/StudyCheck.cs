using Heatwright.Quantities;
using Heatwright.Trials;

namespace Heatwright.StudyFile;

/// <summary>What a study must be to be worked with: units and names that exist, ids that stand once.</summary>
public static class StudyCheck
{
    private static readonly string[] Origins = ["measured", "sheet", "claimed", "published", "assumed"];

    private static readonly Dictionary<TrialKind, string[]> Needed = new()
    {
        [TrialKind.Discharge] = ["time", "volts", "amps"],
        [TrialKind.Pulse] = ["time", "volts", "amps"],
        [TrialKind.ColdOhms] = ["ohms"],
        [TrialKind.HotOhms] = ["volts", "amps", "degrees"],
        [TrialKind.WarmUp] = ["time", "volts", "amps", "degrees"],
        [TrialKind.ModulePoints] = ["volts in", "amps in", "volts out", "amps out"],
        [TrialKind.TwoPointDrop] = ["amps", "drop"],
    };

    /// <summary>All that is wrong, at once; empty: nothing.</summary>
    public static IReadOnlyList<Problem> Of(Study study, string where)
    {
        List<Problem> problems = [];
        Twice(study.Parts.Select(part => part.Id.Name), "part");
        Twice(study.Trials.Select(trial => trial.Id.Name), "trial");
        Twice(study.Trials.SelectMany(trial => trial.Runs).Select(run => run.Id.Name), "run");
        Twice(study.Arrangements.Select(arrangement => arrangement.Id.Name), "arrangement");
        Twice(study.Instruments.Select(instrument => instrument.Id), "instrument");
        var parts = study.Parts.Select(part => part.Id).ToHashSet();
        var instruments = study.Instruments.Select(instrument => instrument.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var part in study.Parts)
        {
            foreach (var stated in part.Stated)
            {
                Unit(stated.Unit, $"part '{part.Id}', {stated.Quantity}");
                if (!Origins.Contains(stated.Origin))
                {
                    problems.Add(new("A value has an origin that is not known.", $"{where}, part '{part.Id}', {stated.Quantity}", stated.Origin, string.Join(", ", Origins), "Choose one of them."));
                }

                if (!double.IsFinite(stated.Value) || stated.PlusMinus < 0 || !double.IsFinite(stated.PlusMinus))
                {
                    problems.Add(new("A value cannot be.", $"{where}, part '{part.Id}', {stated.Quantity}", $"{stated.Value} ± {stated.PlusMinus}", "a finite number, ± 0 or more", "Correct it."));
                }
            }
        }

        foreach (var trial in study.Trials)
        {
            if (!parts.Contains(trial.Part))
            {
                problems.Add(new("A trial is of a part that is not on the shelf.", $"{where}, trial '{trial.Id}'", trial.Part.Name, "a part of the study", "Add the part, or correct its name."));
            }

            foreach (var run in trial.Runs)
            {
                foreach (string column in Needed[trial.Kind].Except(run.Columns.Select(column => column.Name)))
                {
                    problems.Add(new("A run lacks a column that its trial needs.", $"{where}, run '{run.Id}'", "absent", column, "Add the column."));
                }

                foreach (var column in run.Columns)
                {
                    Unit(column.Unit, $"run '{run.Id}', column '{column.Name}'");
                    if (column.Instrument.Length > 0 && !instruments.Contains(column.Instrument))
                    {
                        problems.Add(new("A column names an instrument that the study does not have.", $"{where}, run '{run.Id}', column '{column.Name}'", column.Instrument, "an instrument of the study", "Add the instrument, or leave the name empty."));
                    }
                }
            }
        }

        foreach (var spec in study.Instruments.SelectMany(instrument => instrument.Specs.Select(spec => (instrument.Id, spec.Unit))))
        {
            Unit(spec.Unit, $"instrument '{spec.Id}'");
        }

        return problems;

        void Twice(IEnumerable<string> ids, string what)
        {
            foreach (var group in ids.GroupBy(id => id, StringComparer.Ordinal).Where(group => group.Count() > 1))
            {
                problems.Add(new($"Two of the study's {what}s have one name.", $"{where}, {what} '{group.Key}'", $"{group.Count()} times", "once", "Rename one of them."));
            }
        }

        void Unit(string symbol, string at)
        {
            if (Units.Find(symbol) is null)
            {
                problems.Add(new("A unit is not known.", $"{where}, {at}", symbol.Length == 0 ? "empty" : symbol, "a unit such as V, A, Ω, mΩ, W, °C, K, s, mAh, Ah, g, mm", "Correct the unit."));
            }
        }
    }
}

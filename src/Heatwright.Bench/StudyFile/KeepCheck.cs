using Heatwright.Quantities;

namespace Heatwright.StudyFile;

/// <summary>Whether kept files and remembered ways of reading logs speak of things that the study has.</summary>
internal static class KeepCheck
{
    private static readonly string[] Marks = ["comma", "point"];

    public static void Check(Study study, CheckDesk desk)
    {
        desk.Ids("files", study.Files.Select((file, i) => (file.Id, $"{CheckDesk.At("files", i)}.id")));
        for (int i = 0; i < study.Files.Count; i++)
        {
            var file = study.Files[i];
            string at = CheckDesk.At("files", i);
            if (!desk.StandsIn($"{at}.about"))
            {
                desk.Word($"{at}.subject", "What a kept file is about", file.Subject, Subjects(study, file.About));
            }
        }

        for (int i = 0; i < study.LogWays.Count; i++)
        {
            var way = study.LogWays[i];
            string at = CheckDesk.At("logWays", i);
            desk.Word($"{at}.instrument", "The instrument of a way to read logs", way.Instrument, study.Instruments.Select(instrument => instrument.Id));
            if (study.LogWays.Take(i).Any(other => other.Instrument == way.Instrument))
            {
                desk.Say($"{at}.instrument", "An instrument has two ways to read its logs.", way.Instrument, "once", "Remove one of them.");
            }

            if (way.DecimalMark is { } mark)
            {
                desk.Word($"{at}.decimalMark", "A decimal mark", mark, Marks);
            }

            for (int j = 0; j < way.Labels.Count; j++)
            {
                if (way.Labels[j].Unit.Length > 0)
                {
                    desk.Unit($"{CheckDesk.At($"{at}.labels", j)}.unit", way.Labels[j].Unit, null);
                }
            }
        }
    }

    private static IEnumerable<string> Subjects(Study study, KeptAbout about) => about switch
    {
        KeptAbout.Part => study.Parts.Select(part => part.Id.Name),
        KeptAbout.Trial => study.Trials.Select(trial => trial.Id.Name),
        KeptAbout.Run => study.Trials.SelectMany(trial => trial.Runs).Select(run => run.Id.Name),
        KeptAbout.Arrangement => study.Arrangements.Select(arrangement => arrangement.Id.Name),
        _ => [""],
    };
}

using Heatwright.Quantities;

namespace Heatwright.Jobs.Showing;

/// <summary>A run that was read off a film, and where in the film its own clock stood at zero.</summary>
/// <param name="Run">The run.</param>
/// <param name="AtS">Seconds from the beginning of the film.</param>
public sealed record FilmClock(string Run, double AtS)
{
    /// <summary>Reads 'RUN=2:10' or 'RUN=130 s', each.</summary>
    /// <param name="texts">As typed.</param>
    public static Checked<IReadOnlyList<FilmClock>> Read(IReadOnlyList<string> texts)
    {
        List<FilmClock> clocks = [];
        List<Problem> problems = [];
        foreach (string text in texts)
        {
            int at = text.LastIndexOf('=');
            if (at < 1)
            {
                problems.Add(new("This does not say where in the film a run begins.", "--film", text, "RUN=TIME, such as stick-up-1=2:10", "Write the run's name, '=', and the film's time at which the run's clock stood at zero."));
                continue;
            }

            var time = OptionReader.Amount("--film", text[(at + 1)..], Expect.Seconds).Then(amount => amount.Si >= 0
                ? new Checked<double>(amount.Si)
                : new(new Problem("A film has no time before its beginning.", "--film", text, "0 s or later", "Give the film's time at which the run's clock stood at zero.")));
            if (time.IsFine)
            {
                clocks.Add(new(text[..at].Trim(), time.Value));
            }
            else
            {
                problems.AddRange(time.Problems);
            }
        }

        return problems.Count > 0 ? new(problems) : new(clocks);
    }
}

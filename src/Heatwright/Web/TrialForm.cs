using Heatwright.Quantities;

namespace Heatwright.Web;

/// <summary>What was typed into a form of the trial pages, and what stands in its way.</summary>
/// <param name="About">Which form: 'plan', 'meter', 'run', 'set', 'line', 'block', 'log' or 'strike'; empty: none was sent.</param>
/// <param name="Run">The run it was about.</param>
/// <param name="Typed">Fields as they were typed.</param>
/// <param name="Problems">What stands in the way.</param>
public sealed record TrialForm(string About, string Run, IReadOnlyDictionary<string, string> Typed, IReadOnlyList<Problem> Problems)
{
    /// <summary>Nothing was sent.</summary>
    public static readonly TrialForm None = new("", "", new Dictionary<string, string>(), []);

    /// <summary>A field as it was typed.</summary>
    public string this[string name] => Typed.GetValueOrDefault(name) ?? "";

    /// <summary>A form that was refused, as it was sent.</summary>
    public static TrialForm Refused(string about, IFormCollection form, IReadOnlyList<Problem> problems) =>
        new(about, form.Field("run"), form.Keys.Where(key => key != "token").ToDictionary(key => key, key => form[key].ToString(), StringComparer.Ordinal), problems);
}

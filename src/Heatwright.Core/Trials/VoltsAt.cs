using System.Globalization;

namespace Heatwright.Trials;

/// <summary>Where the volts of a heater were read: at the part, behind the ammeter, as the recipes ask, or at the supply, where ammeter and leads lie between.</summary>
/// <remarks>Rejected: taking 'burden' off wherever it is noted. A maker who follows the recipe notes it beside volts that hold nothing of it.</remarks>
internal static class VoltsAt
{
    /// <summary>The setting that says it.</summary>
    public const string Setting = "volts at";

    private const double Part = 1, Supply = 2;

    /// <summary>Ohms of meter and leads that volts over amps hold too.</summary>
    /// <param name="setting">A setting of the run, or what counts where it is not said.</param>
    public static double BesideOhm(Func<string, double, double> setting) => setting(Setting, Part) == Supply ? NotedOhm(setting) : 0;

    /// <summary>What to say where meter or leads are noted and nothing tells whether the volts hold them, or the other way round; null: nothing.</summary>
    /// <param name="setting">A setting of the run, or what counts where it is not said.</param>
    public static string? Open(Func<string, double, double> setting)
    {
        double noted = NotedOhm(setting), at = setting(Setting, double.NaN);
        return at == Supply ? noted > 0 ? null : "The volts were read at the supply, and what ammeter and leads take of them is not noted: it counts as nothing. Note 'burden' and 'leads'."
            : at == Part || noted <= 0 ? null
            : string.Create(CultureInfo.InvariantCulture, $"Ammeter and leads of {noted * 1000:0} mΩ are noted; the volts count as read at the part and nothing is taken off. Were they read at the supply? Say 'volts at' = 2.");
    }

    private static double NotedOhm(Func<string, double, double> setting) => setting("burden", 0) + setting("leads", 0);
}

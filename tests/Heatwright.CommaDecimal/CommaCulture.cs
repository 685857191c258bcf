using System.Globalization;
using System.Runtime.CompilerServices;

namespace Heatwright.Tests;

internal static class CommaCulture
{
    /// <summary>Runs before any test: every thread of this pass writes 12,5 for twelve and a half.</summary>
    [ModuleInitializer]
    internal static void Set()
    {
        var german = CultureInfo.GetCultureInfo("de-DE");
        CultureInfo.DefaultThreadCurrentCulture = german;
        CultureInfo.DefaultThreadCurrentUICulture = german;
        CultureInfo.CurrentCulture = german;
        CultureInfo.CurrentUICulture = german;
    }
}

using System.Reflection;

namespace Heatwright.Tests;

/// <summary>Where this checkout lies, so that tests can read sources and published data.</summary>
internal static class Repository
{
    public static string Root { get; } = typeof(Repository).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>()
        .Single(attribute => attribute.Key == "RepositoryRoot").Value!;

    public static string Reference(string path) => Path.Combine(Root, "tests", "reference", path);
}

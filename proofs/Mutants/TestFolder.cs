using System.Reflection;
using System.Runtime.Loader;

namespace Heatwright.Proofs.Mutants;

/// <summary>One test with one row of its values.</summary>
/// <param name="Type">The class.</param>
/// <param name="Method">The method.</param>
/// <param name="Row">The values; null: they could not be listed.</param>
/// <param name="Name">Class, method and number of the row: the same in every process.</param>
internal sealed record OneTest(Type Type, MethodInfo Method, object?[]? Row, string Name);

/// <summary>The built tests, with the changed Core beside them, apart from the Core of this program.</summary>
internal sealed class TestFolder : AssemblyLoadContext
{
    private const BindingFlags Everything = BindingFlags.Public | BindingFlags.Static;

    private readonly string folder;
    private readonly AssemblyDependencyResolver resolver;

    /// <summary>Opens the tests of a folder.</summary>
    /// <param name="folder">Where tests and changed Core stand.</param>
    public TestFolder(string folder)
        : base("mutants")
    {
        this.folder = folder;
        resolver = new AssemblyDependencyResolver(Path.Combine(folder, "Heatwright.Tests.dll"));
        Switches = LoadFromAssemblyPath(Path.Combine(folder, "Heatwright.Core.dll")).GetType(MutantSwitches.Type, throwOnError: true)!;
    }

    /// <summary>The switches of the changed Core.</summary>
    private Type Switches { get; }

    /// <summary>Sets one of the switches.</summary>
    public void Set(string name, object value) => Switches.GetField(name, Everything)!.SetValue(null, value);

    private static readonly string[] Files = ["Heatwright.Core.Tests.dll", "Heatwright.Tests.dll"];

    /// <summary>All tests that need no other program and are not skipped, in a fixed order.</summary>
    /// <param name="classes">True for the classes asked for.</param>
    public List<OneTest> Tests(Func<string, bool> classes)
    {
        List<OneTest> tests = [];
        var types = Files.SelectMany(file => LoadFromAssemblyPath(Path.Combine(folder, file)).GetTypes());
        foreach (var type in types.Where(type => type is { IsClass: true, IsAbstract: false, IsPublic: true } && classes(type.FullName!)))
        {
            foreach (var method in type.GetMethods().OrderBy(method => method.MetadataToken))
            {
                tests.AddRange(Rows(type, method));
            }
        }

        return tests;
    }

    /// <summary>A new object of a test class; what it would write beside its result goes nowhere.</summary>
    public static object Made(Type type) => Activator.CreateInstance(type, [.. type.GetConstructors()[0].GetParameters().Select(parameter => DispatchProxy.Create(parameter.ParameterType, typeof(Silence)))])!;

    /// <inheritdoc/>
    protected override Assembly? Load(AssemblyName assemblyName)
    {
        string file = resolver.ResolveAssemblyToPath(assemblyName) ?? Path.Combine(folder, assemblyName.Name + ".dll");
        return File.Exists(file) ? LoadFromAssemblyPath(file) : null;
    }

    /// <inheritdoc/>
    protected override nint LoadUnmanagedDll(string unmanagedDllName) =>
        resolver.ResolveUnmanagedDllToPath(unmanagedDllName) is { } file ? LoadUnmanagedDllFromPath(file) : 0;

    private static IEnumerable<OneTest> Rows(Type type, MethodInfo method)
    {
        object[] marks = method.GetCustomAttributes(inherit: true);
        dynamic? fact = marks.FirstOrDefault(mark => mark.GetType().Name is "FactAttribute" or "TheoryAttribute");
        if (fact is null || fact.Skip is not null)
        {
            yield break;
        }

        if (method.GetParameters().Length == 0)
        {
            yield return new(type, method, [], $"{type.FullName}.{method.Name}");
            yield break;
        }

        int number = 0;
        foreach (object mark in marks.Where(mark => Giving(mark) is not null))
        {
            object?[][]? rows = null;
            try
            {
                rows = Values(mark, method);
            }
            catch (Exception wrong) when (wrong is TargetInvocationException or InvalidOperationException or ArgumentException)
            {
                // A change that keeps the rows from being made is noticed too: the test fails at once.
            }

            foreach (object?[]? row in rows ?? new object?[]?[] { null })
            {
                yield return new(type, method, row is null ? null : Suited(row, method.GetParameters()), $"{type.FullName}.{method.Name}#{number++}");
            }
        }
    }

    private static MethodInfo? Giving(object mark) => mark.GetType().GetInterfaces().Select(kind => kind.GetMethod("GetData")).FirstOrDefault(method => method is not null);

    private static object?[][] Values(object mark, MethodInfo method)
    {
        // Without the class a member is not looked for, and gives no rows.
        mark.GetType().GetProperty("MemberType")?.SetValue(mark, mark.GetType().GetProperty("MemberType")!.GetValue(mark) ?? method.ReflectedType);
        var get = Giving(mark)!;
        object given = get.Invoke(mark, [method, Activator.CreateInstance(get.GetParameters()[1].ParameterType)])!;
        var task = (Task)given.GetType().GetMethod("AsTask")!.Invoke(given, [])!;
        var rows = (System.Collections.IEnumerable)task.GetType().GetProperty("Result")!.GetValue(task)!;
        return [.. rows.Cast<object>().Select(row => (object?[])row.GetType().GetInterface("Xunit.ITheoryDataRow")!.GetMethod("GetData")!.Invoke(row, [])!)];
    }

    private static object?[] Suited(object?[] row, ParameterInfo[] parameters) => [.. parameters.Select((parameter, i) =>
    {
        if (parameter.IsDefined(typeof(ParamArrayAttribute), false) && !(row.Length == parameters.Length && parameter.ParameterType.IsInstanceOfType(row[i])))
        {
            object?[] rest = [.. row.Skip(i)];
            var array = Array.CreateInstance(parameter.ParameterType.GetElementType()!, rest.Length);
            Array.Copy(rest, array, rest.Length);
            return array;
        }

        object? value = i < row.Length ? row[i] : parameter.DefaultValue;
        var wanted = Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType;
        return value is null || wanted.IsInstanceOfType(value) || wanted.IsEnum || value is not IConvertible ? value : Convert.ChangeType(value, wanted, System.Globalization.CultureInfo.InvariantCulture);
    })];

#pragma warning disable CA1852 // the proxy made at run time derives from it
    /// <summary>Stands in for where a test writes to.</summary>
    public class Silence : DispatchProxy
#pragma warning restore CA1852
    {
        /// <inheritdoc/>
        protected override object? Invoke(MethodInfo? targetMethod, object?[]? args) => targetMethod?.ReturnType == typeof(string) ? "" : null;
    }
}

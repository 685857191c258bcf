using System.Reflection;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>What the quick sums are made from: every law must describe itself, its inputs and its results.</summary>
public class LawCardTests
{
    private static readonly (MethodInfo Method, LawAttribute Law)[] Laws =
    [
        .. typeof(LawAttribute).Assembly.GetTypes().SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(method => method.GetCustomAttribute<LawAttribute>() is not null).Select(method => (method, method.GetCustomAttribute<LawAttribute>()!)),
    ];

    [Fact]
    public void No_two_laws_share_a_name() => Assert.Equal(Laws.Length, Laws.Select(law => law.Law.Name).Distinct().Count());

    [Theory]
    [InlineData("trace-width")]
    [InlineData("step-up-point")]
    [InlineData("runtime")]
    [InlineData("wire-resistance")]
    [InlineData("pack-resistance")]
    [InlineData("heater-power")]
    [InlineData("thermocouple-voltage")]
    [InlineData("thermocouple-temperature")]
    [InlineData("resistor-pair")]
    public void The_sums_a_maker_asks_for_are_there(string name) => Assert.Single(Laws, law => law.Law.Name == name);

    [Fact]
    public void Every_law_names_a_known_source_and_describes_every_input_and_result() => Assert.All(Laws, law =>
    {
        string name = law.Law.Name;
        Assert.True(Bibliography.Own.Knows(law.Law.Source), $"{name}: source '{law.Law.Source}'");
        Assert.True(law.Law.Formula.Length > 0 && law.Law.Example.Length > 0 && law.Law.Topic.Length > 0, name);
        Assert.All(law.Method.GetParameters(), parameter =>
        {
            var described = parameter.GetCustomAttribute<InAttribute>();
            Assert.True(described is not null, $"{name}: {parameter.Name} is not described");
            Assert.True(parameter.ParameterType == typeof(double) || parameter.ParameterType == typeof(int) || parameter.ParameterType == typeof(bool) || parameter.ParameterType == typeof(string) || parameter.ParameterType.IsEnum,
                $"{name}: {parameter.Name} is a {parameter.ParameterType.Name}");
            // The default that is shown is the default that is used.
            Assert.True(!parameter.HasDefaultValue || double.IsNaN(described.Default)
                || Convert.ToDouble(parameter.DefaultValue, System.Globalization.CultureInfo.InvariantCulture) == described.Default, $"{name}: default of {parameter.Name}");
        });
        Type answer = Nullable.GetUnderlyingType(law.Method.ReturnType) ?? law.Method.ReturnType;
        Assert.True(answer == typeof(double) || answer == typeof(bool) || answer == typeof(int)
            || answer.GetProperties().Any(property => property.GetCustomAttribute<OutAttribute>() is not null), $"{name}: results of {answer.Name} are not described");
    });

    [Fact]
    public void Every_example_names_only_inputs_of_its_law_and_all_that_must_be_typed() => Assert.All(Power(), law =>
    {
        string[] typed = [.. law.Law.Example.Split(' ').Select(pair => pair.Split('=')[0])];
        string[] known = [.. law.Method.GetParameters().Select(NameOf)];
        Assert.True(typed.All(known.Contains), $"{law.Law.Name}: example '{law.Law.Example}', inputs {string.Join(' ', known)}");
        Assert.All(law.Method.GetParameters().Where(parameter => double.IsNaN(parameter.GetCustomAttribute<InAttribute>()!.Default) && parameter.GetCustomAttribute<InAttribute>()!.DefaultWord.Length == 0 && !parameter.HasDefaultValue),
            parameter => Assert.True(typed.Contains(NameOf(parameter)), $"{law.Law.Name}: example lacks {NameOf(parameter)}"));
    });

    private static IEnumerable<(MethodInfo Method, LawAttribute Law)> Power() => Laws.Where(law => law.Law.Topic is "cells" or "packs" or "power paths" or "heaters" or "switch"
        or "controller supply" or "charging" or "wires and traces" or "size and mass" or "sensors" or "amplifier" or "calibration" or "readings");

    /// <summary>The typed name, or the parameter's own without its unit (the last capitals and what follows).</summary>
    private static string NameOf(ParameterInfo parameter)
    {
        if (parameter.GetCustomAttribute<InAttribute>()!.Name is { Length: > 0 } name)
        {
            return name;
        }

        string own = parameter.Name!;
        int unit = own.Length - 1;
        while (unit > 0 && !char.IsUpper(own[unit]))
        {
            unit--;
        }

        return string.Concat((unit > 0 ? own[..unit] : own).Select(letter => char.IsUpper(letter) ? "-" + char.ToLowerInvariant(letter) : letter.ToString()));
    }
}

using System.Reflection;
using System.Text.RegularExpressions;
using Heatwright.Handbook;
using Heatwright.Physics;

namespace Heatwright.Tests.Physics;

/// <summary>Every heat law that the calculator offers describes itself wholly.</summary>
public partial class HeatLawListTests
{
    private static readonly Type[] Families =
    [
        typeof(WarmUp), typeof(Plateau), typeof(TwoNodeTool), typeof(VoltageDriven), typeof(PowerHistory), typeof(TwoMarks), typeof(PlateauPair), typeof(Probe), typeof(Fin), typeof(Air),
        typeof(Convection), typeof(Radiation), typeof(SurfaceLoss), typeof(Touch), typeof(Spreading), typeof(ThinPlate), typeof(ContactConductance), typeof(HeatSoak), typeof(PlaneWall),
        typeof(MeltingFront), typeof(MeltEnergy), typeof(WorkDroop), typeof(EnoughPower), typeof(HotWire), typeof(SensingWindow), typeof(HalfRule), typeof(PiTuning), typeof(LoopMargins),
        typeof(PowerFeedForward), typeof(OnOffCycle), typeof(RelayTest),
    ];

    private static (MethodInfo Method, LawAttribute Law)[] Laws { get; } =
        [.. from family in Families from method in family.GetMethods() let law = method.GetCustomAttribute<LawAttribute>() where law is not null select (method, law)];

    [Fact]
    public void Every_family_offers_a_law_under_a_name_of_its_own()
    {
        Assert.All(Families, family => Assert.Contains(Laws, law => law.Method.DeclaringType == family));
        Assert.Equal(Laws.Length, Laws.Select(law => law.Law.Name).Distinct().Count());
        Assert.All(Laws, law => Assert.Matches("^[a-z0-9-]+$", law.Law.Name));
    }

    [Fact]
    public void Every_law_says_formula_source_place_and_range()
    {
        Assert.All(Laws, law =>
        {
            Assert.NotEmpty(law.Law.Formula);
            Assert.NotEmpty(law.Law.Where);
            Assert.NotEmpty(law.Law.Valid);
            Assert.True(law.Law.Source is "definition" or "common practice" || Bibliography.Own.Find(law.Law.Source) is not null, law.Law.Source);
        });
    }

    [Fact]
    public void Every_input_is_described_and_every_example_types_what_has_no_default() => Assert.All(Laws, law =>
    {
        var inputs = law.Method.GetParameters().Select(parameter => parameter.GetCustomAttribute<InAttribute>()!).ToArray();
        Assert.All(law.Method.GetParameters(), parameter => Assert.Equal(typeof(double), parameter.ParameterType));
        Assert.DoesNotContain(null, inputs);
        string[] typed = [.. law.Law.Example.Split(' ').Select(word => word.Split('=')[0])];
        Assert.All(typed, name => Assert.Contains(inputs, input => input.Name == name));
        Assert.All(inputs.Where(input => double.IsNaN(input.Default)), input => Assert.Contains(input.Name, typed));
        Assert.Equal(inputs.Length, inputs.Select(input => input.Name).Distinct().Count());
    });

    [Fact]
    public void Every_result_is_a_number_with_a_unit_or_a_record_of_them() => Assert.All(Laws, law =>
        Assert.True(law.Method.ReturnType == typeof(double) || law.Method.ReturnType.GetProperties().Any(property => property.GetCustomAttribute<OutAttribute>() is not null), law.Law.Name));

    /// <summary>Examples are typed in units that carry a prefix or none; here only plain numbers are fed, so that no law refuses its own example by a slip.</summary>
    [Fact]
    public void Every_law_answers_its_own_example()
    {
        Assert.All(Laws, law =>
        {
            var typed = law.Law.Example.Split(' ').Select(word => word.Split('=')).ToDictionary(pair => pair[0], pair => Si(pair[1]));
            object[] arguments = [.. law.Method.GetParameters().Select(parameter => parameter.GetCustomAttribute<InAttribute>()!)
                .Select(input => (object)(typed.TryGetValue(input.Name, out double value) ? value : input.Default))];
            object? answer = law.Method.Invoke(null, arguments);
            Assert.True(answer is not double number || double.IsFinite(number), law.Law.Name);
        });
    }

    private static double Si(string typed)
    {
        var match = NumberAndUnit().Match(typed);
        Assert.True(match.Success, typed);
        double factor = match.Groups[2].Value switch
        {
            "mm" or "ms" or "mV" => 1e-3,
            "mm²" => 1e-6,
            "cm²" => 1e-4,
            "um" => 1e-6,
            "nF" => 1e-9,
            "kΩ" or "kJ/kg" => 1e3,
            "MPa" => 1e6,
            "GPa" => 1e9,
            "mm/s" => 1e-3,
            "/min" => 1.0 / 60,
            _ => 1,
        };
        return Printed.Number(match.Groups[1].Value) * factor;
    }

    [GeneratedRegex(@"^(-?[0-9.]+(?:e-?[0-9]+)?)(.*)$")]
    private static partial Regex NumberAndUnit();
}

using System.Reflection;
using Heatwright.Physics;

namespace Heatwright.Jobs.Sums;

/// <summary>One input of a law as a maker types it.</summary>
/// <param name="Name">Name to type.</param>
/// <param name="Card">What the law says of it.</param>
/// <param name="Parameter">The parameter it fills.</param>
public sealed record LawInput(string Name, InAttribute Card, ParameterInfo Parameter)
{
    /// <summary>True where nothing need be typed.</summary>
    public bool IsOptional => !double.IsNaN(Card.Default) || Parameter.HasDefaultValue;
}

/// <summary>A law that can be called as a quick sum: made from what the law says of itself, written nowhere twice.</summary>
/// <param name="Law">Name, topic, formula, source, range, example.</param>
/// <param name="Method">The pure function.</param>
/// <param name="Inputs">In the order of its parameters.</param>
public sealed record LawCard(LawAttribute Law, MethodInfo Method, IReadOnlyList<LawInput> Inputs)
{
    /// <summary>All laws, by topic and name.</summary>
    public static IReadOnlyList<LawCard> All { get; } =
    [
        .. typeof(LawAttribute).Assembly.GetExportedTypes()
            .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Select(method => (Method: method, Law: method.GetCustomAttribute<LawAttribute>()))
            .Where(pair => pair.Law is not null)
            .Select(pair => new LawCard(pair.Law!, pair.Method, [.. pair.Method.GetParameters().Select(Input)]))
            .OrderBy(card => card.Law.Topic, StringComparer.Ordinal).ThenBy(card => card.Law.Name, StringComparer.Ordinal),
    ];

    /// <summary>The law of this name, or null.</summary>
    public static LawCard? Find(string name) => All.FirstOrDefault(card => string.Equals(card.Law.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The results it gives: name, unit, meaning and how to take it from what the method returns.</summary>
    public IReadOnlyList<(string Name, string Unit, string Meaning, Func<object, object?> Take)> Results()
    {
        Type type = Nullable.GetUnderlyingType(Method.ReturnType) ?? Method.ReturnType;
        var outs = type.GetProperties().Select(property => (Property: property, Out: property.GetCustomAttribute<OutAttribute>())).Where(pair => pair.Out is not null).ToArray();
        if (outs.Length == 0)
        {
            return [(Law.Name, Law.Unit, "", answer => answer)];
        }

        string[] names = [.. outs.Select(pair => Kebab(WithoutUnit(pair.Property.Name, pair.Out!.Unit)))];
        return [.. outs.Select((pair, i) => (names.Count(name => name == names[i]) > 1 ? names[i] + Kind(pair.Out!.Unit) : names[i],
            pair.Out!.Unit, pair.Out.Meaning, (Func<object, object?>)(answer => pair.Property.GetValue(answer))))];
    }

    /// <summary>Tells two results of one name apart by what they measure.</summary>
    private static string Kind(string unit) => unit switch
    {
        "A" => "-current",
        "V" => "-voltage",
        "W" => "-power",
        "Ω" => "-ohms",
        "J" => "-energy",
        "s" => "-time",
        "°C" or "K" => "-temperature",
        "J/kg" => "-per-mass",
        "J/m³" => "-per-volume",
        _ => "",
    };

    private static LawInput Input(ParameterInfo parameter)
    {
        var card = parameter.GetCustomAttribute<InAttribute>() ?? throw new InvalidOperationException($"{parameter.Member.Name}: {parameter.Name} is not described.");
        return new(card.Name.Length > 0 ? card.Name : Kebab(WithoutUnit(parameter.Name!, card.Unit)), card, parameter);
    }

    /// <summary>A name without the unit it ends in: the last capital and what follows.</summary>
    private static string WithoutUnit(string name, string unit)
    {
        if (unit is "" or "word")
        {
            return name;
        }

        int end = name.Length - 1;
        while (end > 0 && !char.IsUpper(name[end]))
        {
            end--;
        }

        return end > 0 ? name[..end] : name;
    }

    private static string Kebab(string name) =>
        string.Concat(name.Select((letter, i) => char.IsUpper(letter) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(letter) : letter.ToString()));
}

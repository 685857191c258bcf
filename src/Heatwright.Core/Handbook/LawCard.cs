using System.Globalization;
using System.Reflection;
using Heatwright.Physics;

namespace Heatwright.Handbook;

/// <summary>One input of a law as a maker types it.</summary>
/// <param name="Name">Name to type.</param>
/// <param name="Card">What the law says of it.</param>
/// <param name="Parameter">The parameter it fills.</param>
public sealed record LawInput(string Name, InAttribute Card, ParameterInfo Parameter)
{
    /// <summary>True where nothing need be typed.</summary>
    public bool IsOptional => !double.IsNaN(Card.Default) || Parameter.HasDefaultValue || Card.DefaultWord.Length > 0;

    /// <summary>True for an answer of yes or no, also where the law takes 1 or 0.</summary>
    public bool IsYesNo => Parameter.ParameterType == typeof(bool) || Card.Unit == "yes/no";

    /// <summary>The words it takes; empty: a number, or free text.</summary>
    public IReadOnlyList<string> Words => IsYesNo ? ["yes", "no"]
        : Parameter.ParameterType.IsEnum ? [.. Enum.GetNames(Parameter.ParameterType).Select(LawCard.Kebab)]
        : Card.Words.Length > 0 ? Card.Words.Split(' ') : [];

    /// <summary>What the law takes where nothing is typed; null: nothing.</summary>
    public object? DefaultArgument => double.IsNaN(Card.Default) && Parameter.HasDefaultValue ? Parameter.DefaultValue
        : Parameter.ParameterType == typeof(int) && double.IsFinite(Card.Default) ? (int)Card.Default
        : Parameter.ParameterType == typeof(bool) ? Card.Default == 1
        : Parameter.ParameterType == typeof(string) ? Card.DefaultWord : Card.Default;
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
            .Select(pair => new LawCard(pair.Law!, pair.Method, [.. pair.Method.GetParameters().Select(Described)]))
            .OrderBy(card => card.Law.Topic, StringComparer.Ordinal).ThenBy(card => card.Law.Name, StringComparer.Ordinal),
    ];

    /// <summary>The law of this name, or null.</summary>
    public static LawCard? Find(string name) => All.FirstOrDefault(card => string.Equals(card.Law.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The input of this name, or of this symbol where no other input wears it.</summary>
    public LawInput? Input(string name) => Inputs.FirstOrDefault(input => string.Equals(input.Name, name, StringComparison.OrdinalIgnoreCase))
        ?? (Inputs.Count(input => input.Card.Symbol == name) == 1 ? Inputs.First(input => input.Card.Symbol == name) : null);

    /// <summary>What it works out, in trade words.</summary>
    public string Says => Law.Says;

    /// <summary>Where it comes from, by its key.</summary>
    public string SourceKey => $"{Law.Source}{(Law.Where.Length > 0 ? ", " + Law.Where : "")}";

    /// <summary>Where it comes from, with the title of the publication.</summary>
    public string SourceTitle => Bibliography.Own.Find(Law.Source) is { } source
        ? $"{source.By}: {source.Title}, {source.Year.ToString(CultureInfo.InvariantCulture)}{(Law.Where.Length > 0 ? $"; {Law.Where}" : "")}"
        : $"{(Law.Source == Bibliography.CommonPractice ? "common practice, no source" : Law.Source)}{(Law.Where.Length > 0 ? $"; {Law.Where}" : "")}";

    /// <summary>True where every word typed stands in the name, the topic, the words or the formula.</summary>
    public bool Answers(string find)
    {
        ArgumentNullException.ThrowIfNull(find);
        string all = string.Join(' ', [Law.Name, Law.Topic, Law.Says, Law.Formula, Law.Valid, .. Inputs.Select(input => $"{input.Name} {input.Card.Meaning} {input.Card.Unit}"), .. Results().Select(result => $"{result.Name} {result.Meaning} {result.Unit}")]);
        return find.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(word => all.Contains(word, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The results it gives: name, unit, meaning and how to take it from what the method returns.</summary>
    public IReadOnlyList<(string Name, string Unit, string Meaning, Func<object, object?> Take)> Results()
    {
        Type type = Nullable.GetUnderlyingType(Method.ReturnType) ?? Method.ReturnType;
        var outs = type.GetProperties().Select(property => (Property: property, Out: property.GetCustomAttribute<OutAttribute>())).Where(pair => pair.Out is not null).ToArray();
        if (outs.Length == 0)
        {
            return [(Law.Name, Law.Unit, "", answer => answer)];
        }

        string[] names = [.. outs.Select(pair => pair.Out!.Name.Length > 0 ? pair.Out.Name : Kebab(WithoutUnit(pair.Property.Name, pair.Out.Unit)))];
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

    private static LawInput Described(ParameterInfo parameter)
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

        // A composed unit is spelled with Per: GainWPerK is a gain in W/K.
        int per = name.IndexOf("Per", StringComparison.Ordinal);
        if (per > 0 && unit.Contains('/', StringComparison.Ordinal))
        {
            name = name[..per];
        }

        int end = name.Length - 1;
        while (end > 0 && !char.IsUpper(name[end]))
        {
            end--;
        }

        return end > 0 ? name[..end] : name;
    }

    /// <summary>A name of the sources as it is typed: heaterOhms, heater-ohms.</summary>
    public static string Kebab(string name) =>
        string.Concat(name.Select((letter, i) => char.IsUpper(letter) ? (i > 0 ? "-" : "") + char.ToLowerInvariant(letter) : letter.ToString()));
}

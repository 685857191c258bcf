using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Heatwright.Cli.Answering;

/// <summary>What a record and each of its fields means, out of the documentation that is written beside them in the code.</summary>
internal sealed partial class FieldWords
{
    /// <summary>Fields that mean the same wherever they stand; a record that says more is heeded first.</summary>
    private static readonly Dictionary<string, string> Everywhere = new(StringComparer.Ordinal)
    {
        ["arrangement"] = "Letter of the arrangement.",
        ["atMost"] = "True: the value may be at most the limit; false: at least.",
        ["because"] = "Why, with the numbers.",
        ["condition"] = "Under what it holds, in words; empty: always.",
        ["dutyCeiling"] = "Largest share of the time that the heater may be on, 0 to 1.",
        ["letter"] = "Letter of the arrangement.",
        ["limit"] = "The limit, in the unit beside it.",
        ["must"] = "True: it must hold; false: it is wanted.",
        ["name"] = "What it is called.",
        ["note"] = "The maker's note; empty: none.",
        ["origin"] = "Where the number comes from: measured, fitted, claimed, sheet, published, worked out, predicted or assumed.",
        ["parallel"] = "Cells side by side.",
        ["part"] = "Short name of the part.",
        ["plusMinus"] = "Half width of the range that it may lie in, in the same unit; 0: none was stated.",
        ["probability"] = "Chance that it is kept, 0 to 1; absent or null: not known.",
        ["quantity"] = "What it speaks of.",
        ["remedy"] = "What to do; empty: nothing.",
        ["remarks"] = "What the checks noticed.",
        ["requirement"] = "Short name of the line of the brief.",
        ["run"] = "Short name of the run.",
        ["series"] = "Cells in series.",
        ["standardDoubt"] = "Standard doubt of the value (one standard deviation), in the same unit.",
        ["stopReason"] = "What ends it.",
        ["study"] = "Name of the study.",
        ["text"] = "In words, as it was said.",
        ["trial"] = "Short name of the trial.",
        ["unit"] = "Unit symbol of the numbers beside it; empty: a plain number.",
        ["value"] = "In the unit beside it; absent or null: there is none.",
        ["verdict"] = "go, go-if, no-go or need-more-readings.",
        ["words"] = "In words.",
    };

    private readonly Dictionary<string, XElement> members = new(StringComparer.Ordinal);

    /// <summary>The words of our own assemblies.</summary>
    public FieldWords()
    {
        foreach (string path in Directory.GetFiles(AppContext.BaseDirectory, "Heatwright*.xml").Concat(Directory.GetFiles(AppContext.BaseDirectory, "heatwright.xml")).Distinct(StringComparer.OrdinalIgnoreCase))
        {
            foreach (var member in XDocument.Load(path).Descendants("member"))
            {
                members[(string)member.Attribute("name")!] = member;
            }
        }
    }

    /// <summary>What a record is.</summary>
    public string Of(Type type) => Said(Member("T:" + Name(type))?.Element("summary"));

    /// <summary>What a field is; empty: nobody has said.</summary>
    /// <param name="property">The field in the code.</param>
    /// <param name="name">Its name in JSON.</param>
    public string Of(PropertyInfo property, string name)
    {
        var owner = property.DeclaringType!;
        string own = Said(Member("T:" + Name(owner))?.Elements("param").FirstOrDefault(one => (string?)one.Attribute("name") == property.Name)) is { Length: > 0 } param
            ? param : Said(Member($"P:{Name(owner)}.{property.Name}")?.Element("summary"));
        return own.Length > 0 ? own : Everywhere.GetValueOrDefault(name, "");
    }

    private XElement? Member(string key) => members.GetValueOrDefault(key);

    private static string Name(Type type) => (type.IsGenericType ? type.GetGenericTypeDefinition() : type).FullName!.Replace('+', '.');

    private static string Said(XElement? element) => element is null ? "" : Blanks().Replace(string.Concat(element.Nodes().Select(Word)), " ").Trim();

    /// <summary>A reference to another field is said by the name that it has in JSON.</summary>
    private static string Word(XNode node) => node switch
    {
        XElement { Name.LocalName: "paramref" or "typeparamref" } at => JsonNamingPolicy.CamelCase.ConvertName((string)at.Attribute("name")!),
        XElement { Name.LocalName: "see" } at when (string?)at.Attribute("cref") is { } cref => cref.StartsWith("T:", StringComparison.Ordinal) ? cref.Split('.')[^1] : JsonNamingPolicy.CamelCase.ConvertName(cref.Split('.')[^1]),
        XElement at => string.Concat(at.Nodes().Select(Word)),
        XText text => text.Value,
        _ => "",
    };

    [GeneratedRegex(@"\s+")]
    private static partial Regex Blanks();
}

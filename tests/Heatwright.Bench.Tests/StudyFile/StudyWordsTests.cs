using Heatwright.Parts;
using Heatwright.StudyFile;
using Heatwright.Trials;
using Heatwright.Verdicts;

namespace Heatwright.Tests.StudyFile;

public class StudyWordsTests
{
    [Fact]
    public void Every_quantity_of_a_part_has_its_unit() =>
        Assert.Equal(typeof(PartQuantities).GetFields().Select(field => (string)field.GetRawConstantValue()!).Order(StringComparer.Ordinal), StudyWords.Quantities.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void Every_kind_of_trial_has_its_columns_and_every_column_its_unit() =>
        Assert.All(Planned(), trial => Assert.All([.. StudyWords.Of(trial).Needed, .. StudyWords.Of(trial).Perhaps], column => Assert.True(StudyWords.IsWord(trial, column) || StudyWords.UnitOf(trial, column) is not null)));

    /// <summary>A trial of each kind, and of each card.</summary>
    private static IEnumerable<Trial> Planned() => Enum.GetValues<TrialKind>().Where(kind => kind != TrialKind.Bench).Select(kind => new Trial(new("t"), kind, new("p"), []))
        .Concat(TrialCard.All.Select(card => new Trial(new("t"), TrialKind.Bench, new("p"), []) { Card = card.Name }));

    [Fact]
    public void Every_requirement_has_its_unit() => Assert.All(Enum.GetValues<RequirementQuantity>(), quantity => Assert.NotNull(StudyWords.Of(quantity)));

    /// <summary>The documentation lists the words by hand; this compares it with the program.</summary>
    [Fact]
    public void The_documentation_names_every_word()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs/formats/bundle.md"));
        string[] words =
        [
            .. StudyWords.Quantities.Keys, .. StudyWords.Columns.Keys, .. StudyWords.Origins, .. StudyWords.From, .. Planned().Where(trial => trial.Kind != TrialKind.Bench).SelectMany(trial => StudyWords.Of(trial).Settings),
            .. Camel<PartKind>(), .. Camel<TrialKind>(), .. Camel<RequirementQuantity>(),
        ];
        Assert.All(words, word => Assert.Contains($"`{word}`", page, StringComparison.Ordinal));
    }

    [Fact]
    public void The_schema_in_the_documentation_is_fresh() =>
        Assert.Equal(File.ReadAllText(Path.Combine(Repository.Root, "docs/formats/bundle.schema.json")), BundleSchema.Text());

    [Fact]
    public void The_schema_names_every_field_that_the_documentation_names()
    {
        string schema = BundleSchema.Text();
        // By hand from docs/formats/bundle.md.
        Assert.All(["format", "seed", "invented", "everyS", "needPlusMinusJ", "atMost", "resolution", "plusMinus", "struck", "because", "contactCount", "supervision", "dutyCeiling"],
            field => Assert.Contains($"\"{field}\":", schema, StringComparison.Ordinal));
        Assert.Single(schema.Split("\"readings\":").Skip(1)); // those of a tool that exists; readings of runs stand in CSV files
        Assert.DoesNotContain("fileName", schema, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Camel<T>()
        where T : struct, Enum => Enum.GetNames<T>().Select(name => char.ToLowerInvariant(name[0]) + name[1..]);
}
